//! Charts of random curves, words and sizes: nothing is clipped and no two texts overlap.

use crate::draw::crowding;
use crate::draw_samples;
use proptest::prelude::{
    Just, ProptestConfig, Strategy, TestCaseError, any, prop_assert_eq, prop_assume, prop_compose,
    prop_oneof, proptest,
};
use proptest::test_runner::RngSeed;
use torquill::draw::Theme;
use torquill::error::{PlotFault, Plotted, What};
use torquill::plot::{
    Axis, Extent, Heading, Labels, LineChart, Look, Marker, Panel, Role, Series, Shade, Size,
};

/// A name of a few made-up words.
fn words(most: usize) -> impl Strategy<Value = String> {
    let word = proptest::sample::select(vec![
        "bar", "capacity", "with", "Ω²", "torque", "il", "WWWW",
    ]);
    proptest::collection::vec(word, 0..most).prop_map(|words| words.join(" "))
}

prop_compose! {
    fn any_series()(
        name in words(7),
        role in prop_oneof![(0..9_usize).prop_map(Role::Series), (0.0..1.0).prop_map(Role::Ordered), Just(Role::Muted)],
        bends in proptest::collection::vec(-1.0..1.0_f64, 3),
        magnitude in -3.0..7.0_f64,
        many in 2..60_usize,
    ) -> Series {
        let points = (0..many).map(|index| {
            let x = index as f64 / (many - 1) as f64;
            let y = bends[0] + bends[1] * x + bends[2] * (6.0 * x).sin();
            [x, y * 10_f64.powf(magnitude)]
        });
        Series::new(name, points.collect(), role)
    }
}

prop_compose! {
    fn any_chart()(
        series in proptest::collection::vec(any_series(), 1..8),
        titles in (words(40), words(30), words(60), words(9), words(9)),
        markers in proptest::collection::vec((0.0..1.0_f64, words(5), words(9)), 0..4),
        shades in proptest::collection::vec((0.0..1.0_f64, 0.0..1.0_f64, words(5)), 0..4),
        zoom in prop_oneof![Just(Extent::Data), Just(Extent::FromZero), Just(Extent::Exactly([-0.5, 0.5]))],
        posed in any::<bool>(),
    ) -> LineChart {
        let at = |x: f64| series[0].points[(x * (series[0].points.len() - 1) as f64) as usize];
        let markers = markers.into_iter().map(|(x, text, detail)| {
            Marker { at: at(x), text, detail, role: Role::Series(0), is_cross: false }
        });
        let panel = Panel {
            axis: Axis::new(titles.3, "N").reaching(zoom),
            markers: markers.collect(),
            series: series.clone(),
            ..Panel::default()
        };
        let mut poses = draw_samples::poses();
        poses.iter_mut().for_each(|pose| pose.at /= 40.0);
        LineChart {
            heading: Heading {
                title: titles.0,
                subtitle: titles.1,
                footnote: titles.2,
                ..Heading::default()
            },
            x: Axis::new(titles.4, ""),
            panels: vec![panel],
            shades: shades.into_iter().map(|(from, to, label)| Shade { from, to, label, is_hard: true, is_bare: false }).collect(),
            poses: if posed { poses } else { Vec::new() },
            labels: Labels::Auto,
            whole: None,
            beside: Vec::new(),
        beside_title: String::new(),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 200,
        rng_seed: RngSeed::Fixed(7),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Whatever is drawn at whatever size: words stay on the canvas and off each other, or the
    /// chart says that it has no room.
    #[test]
    fn law_any_chart_keeps_its_words_apart(
        chart in any_chart(),
        (width, height) in (640..2500_u32, 400..1600_u32),
    ) {
        prop_assume!(Size::custom(width, height).is_ok());
        let size = Size::custom(width, height).expect("assumed above");
        let look = Look { size, theme: Theme::Light };
        match chart.scene(look) {
            Ok(scene) => {
                if let Some(fault) = crowding(&scene) {
                    return Err(TestCaseError::fail(fault));
                }
            }
            Err(fault) => {
                let crowded = What::from(PlotFault::TooSmall(Plotted::Curves));
                prop_assert_eq!(&fault.faults()[0].what, &crowded);
            }
        }
    }
}
