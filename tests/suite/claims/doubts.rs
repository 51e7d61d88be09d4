//! What is said of hollow lines, against the stretches in which they are drawn.

use super::{Claim, Drawn, anywhere, check, holds, says};
use torquill::figures::{Chart, Sheet};
use torquill::plot::{Extent, Series};

/// The curves of a figure that are hollow somewhere, with those stretches in percent of the range.
pub fn hollow_curves(sheet: &Sheet) -> Vec<(String, Vec<[f64; 2]>)> {
    let named = |panel: &str, series: &Series| {
        let [from, to] = [
            series.points[0][0],
            series.points[series.points.len() - 1][0],
        ];
        let percent = |x: f64| 100.0 * (x - from) / (to - from);
        let stretches = series.doubted.iter().map(|ends| {
            let [a, b] = ends.map(percent);
            [a.min(b), a.max(b)]
        });
        let name = match series.name.as_str() {
            "capacity" if !panel.is_empty() => panel,
            name => name,
        };
        (name.to_owned(), stretches.collect::<Vec<_>>())
    };
    let all: Vec<(String, Vec<[f64; 2]>)> = match &sheet.chart {
        Chart::Lines(chart) => {
            let series = chart.panels.iter().flat_map(|panel| &panel.series);
            series.map(|series| named("", series)).collect()
        }
        Chart::Panels(chart) => {
            let panels = chart.panels.iter();
            panels
                .flat_map(|panel| panel.series.iter().map(|s| named(&panel.title, s)))
                .collect()
        }
        _ => Vec::new(),
    };
    all.into_iter()
        .filter(|(_, stretches)| !stretches.is_empty())
        .collect()
}

/// Whether a line is hollow at a place, % of the range.
pub fn is_hollow_at(drawn: &Drawn, name: &str, percent: f64) -> bool {
    let own = drawn.hollow.iter().filter(|(known, _)| known == name);
    own.flat_map(|(_, stretches)| stretches)
        .any(|[from, to]| (*from..=*to).contains(&percent))
}

/// Whether a hollow stretch lies in the axes of its panel.
fn is_in_view(sheet: &Sheet) -> bool {
    let Chart::Lines(chart) = &sheet.chart else {
        return !hollow_curves(sheet).is_empty();
    };
    // Beside an axis that ends before the curve does, the whole curve is drawn small.
    let whole = chart.whole.iter().flat_map(|whole| &whole.series);
    if whole.clone().any(|series| !series.doubted.is_empty()) {
        return true;
    }
    let stretch_seen = |series: &Series, top: f64| {
        series.doubted.iter().any(|[a, b]| {
            let stretch = a.min(*b)..=a.max(*b);
            let mut inside = series.points.iter().filter(|p| stretch.contains(&p[0]));
            inside.any(|point| point[1] <= top)
        })
    };
    chart.panels.iter().any(|panel| {
        let top = match panel.axis.extent {
            Extent::FromZeroTo(top) => top,
            _ => f64::INFINITY,
        };
        panel.series.iter().any(|series| stretch_seen(series, top))
    })
}

/// A hollow line is told at the foot or below the title where it is in view, and in the caption, and only where there is one.
pub fn is_told(sheet: &Sheet) -> Result<(), String> {
    let has_hollow = !hollow_curves(sheet).is_empty();
    let heading = sheet.chart.heading();
    let around = [&heading.footnote, &heading.subtitle];
    let foot = around.iter().any(|words| words.contains("Double line"));
    let caption = sheet.caption.contains("Double, and less sure")
        || sheet.caption.contains("trust the curve less");
    holds(
        is_in_view(sheet) == foot && has_hollow == caption,
        &format!("hollow {has_hollow}, around it {foot}, in the caption {caption}"),
    )
}

/// "from 3 % to 29 % and at 98 %" are the stretches of a curve.
fn stretches_are(text: &str, stretches: &[[f64; 2]]) -> Result<(), String> {
    let reads = anywhere(r"from (\d+) % to (\d+) %|at (\d+) %");
    let told: Vec<[String; 2]> = reads
        .captures_iter(text)
        .map(|told| match told.get(3) {
            Some(only) => [only.as_str().to_owned(), only.as_str().to_owned()],
            None => [told[1].to_owned(), told[2].to_owned()],
        })
        .collect();
    holds(told.len() == stretches.len(), "every stretch is told")?;
    for (printed, drawn) in told.iter().zip(stretches) {
        // A line is hollow from half a sample before.
        says(&printed[0], drawn[0], 0.6, "begin")?;
        says(&printed[1], drawn[1], 0.6, "end")?;
    }
    Ok(())
}

/// What is said of hollow lines.
pub const DOUBTS: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Double line: less sure, unmeasured fibre lengths",
        holds: |_, drawn| holds(!drawn.hollow.is_empty(), "a line is hollow"),
    },
    Claim {
        reads: r"Double, and less sure, because fibres leave the lengths of living ones \(0\.5 to 1\.6 times the optimal one\): (.+) of the range",
        holds: |told, drawn| {
            holds(!drawn.hollow.is_empty(), "a line is hollow")?;
            // The axis of a track is no range.
            if drawn.hollow.iter().all(|(name, _)| name == "this lift") {
                return Ok(());
            }
            if told[1].starts_with("from ") || told[1].starts_with("at ") {
                let mut all = drawn.hollow.iter();
                return all.try_for_each(|(_, stretches)| stretches_are(&told[1], stretches));
            }
            let parts: Vec<&str> = told[1].split("; ").collect();
            holds(
                parts.len() == drawn.hollow.len(),
                "every hollow line is told",
            )?;
            parts.iter().try_for_each(|part| {
                let mut known = drawn.hollow.iter();
                let own = known.find(|(name, _)| {
                    let behind = part.strip_prefix(&format!("{name} "));
                    behind.is_some_and(|told| told.starts_with("from ") || told.starts_with("at "))
                });
                stretches_are(part, &own.ok_or(format!("no hollow line for {part}"))?.1)
            })
        },
    },
];

#[test]
fn fault_a_wrong_stretch_of_a_hollow_line_is_found() {
    let drawn = Drawn {
        hollow: vec![
            ("Squat".to_owned(), vec![[0.0, 30.7], [97.8, 98.3]]),
            ("Pull-up".to_owned(), vec![[70.8, 93.2]]),
        ],
        ..Drawn::default()
    };
    let told = |places: &str| {
        let text = format!(
            "Double, and less sure, because fibres leave the lengths of living ones (0.5 to 1.6 times the optimal one): \
             {places} of the range."
        );
        check(&text, DOUBTS, &drawn)
    };
    let right = "Squat from 0 % to 31 % and at 98 %; Pull-up from 71 % to 93 %";
    assert_eq!(told(right), Ok(()));
    for wrong in [
        "Squat from 0 % to 34 % and at 98 %; Pull-up from 71 % to 93 %",
        "Squat from 0 % to 31 %; Pull-up from 71 % to 93 %",
        "Squat from 0 % to 31 % and at 98 %",
        "Squat from 71 % to 93 %; Pull-up from 0 % to 31 % and at 98 %",
        "from 0 % to 31 % and at 98 %",
    ] {
        assert!(told(wrong).is_err(), "{wrong}");
    }
    let foot = "Double line: less sure, unmeasured fibre lengths.";
    assert_eq!(check(foot, DOUBTS, &drawn), Ok(()));
    assert!(check(foot, DOUBTS, &Drawn::default()).is_err());
}
