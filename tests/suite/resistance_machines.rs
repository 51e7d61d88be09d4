//! Laws of `resistance`: wear, help, lowering-only loads, cams, levers, friction, rigging, cautions.

use crate::resistance::{at_height, band_with, straight_lift};
use crate::resistance_laws::{BAR, LIFT, LOWER, anchored, band, chain, load, total};
use torquill::demand::DemandCurve;
use torquill::movement::{Carrier, LoadPoint};
use torquill::narrative::cautions::caution_in_words;
use torquill::resistance::{
    Anchor, Assistance, Band, Cable, Cam, EccentricOnly, Hang, HangingSide, HungBand, HungChain,
    Item, Lead, LeverMachine, Motion, Setup, Sled, Turns,
};
use torquill::setups::setup_cautions;
use torquill::units::{Angle, Force, Length, Mass, STANDARD_GRAVITY_M_S2, System};

#[test]
fn law_worn_bands_pull_less_and_spread_brackets_the_label() {
    let new = band(45.0);
    let size = [
        Length::from_mm(45.0),
        Length::from_mm(4.5),
        Length::from_cm(104.0),
    ];
    let worn = |share: &str| band_with("loop", size, &format!(", worn: {share}"));
    assert!(worn("1.2").is_err() && worn("NaN").is_err());
    let worn = worn("0.2").expect("wear");
    let at = |band: &Band| band.force_n(1.6, Hang::Single);
    assert!((at(&worn) / at(&new) - 0.8).abs() < 1e-12);
    let (low, high) = new.spread_n(100.0);
    assert!((high / low - 1.0) > 0.19 && (high - low - 19.0).abs() < 1e-9);
}

#[test]
fn law_load_of_the_lowering_phase_is_gone_in_lifting() {
    let items = vec![
        load(80.0),
        Item::EccentricOnly(EccentricOnly::Hung(Mass::from_kg(20.0))),
    ];
    let setup = Setup::new("", items);
    let at = |motion| setup.total_at(&at_height(1.0), &BAR, motion);
    assert!((at(LOWER).force.z_n + 100.0 * STANDARD_GRAVITY_M_S2).abs() < 1e-9);
    assert!((at(LIFT).force.z_n + 80.0 * STANDARD_GRAVITY_M_S2).abs() < 1e-9);
    assert_eq!(
        (at(LOWER).moving_mass_kg, at(Motion::Hold).moving_mass_kg),
        (100.0, 80.0)
    );
}

#[test]
fn law_help_takes_away_and_a_spotter_never_turns_the_load_round() {
    let with = |help| {
        Setup::new("", vec![load(50.0), Item::Assistance(help)]).total_at(
            &at_height(1.0),
            &BAR,
            LIFT,
        )
    };
    let strong = with(Assistance::Spotter {
        force: Force::from_n(4000.0),
        in_lowering: false,
    });
    assert_eq!(strong.force.magnitude_n(), 0.0);
    let half = with(Assistance::SpotterShare {
        share: 0.5,
        in_lowering: false,
    });
    assert!((half.force.z_n + 25.0 * STANDARD_GRAVITY_M_S2).abs() < 1e-9);
    let counter = with(Assistance::Counterweight(Mass::from_kg(20.0)));
    assert!((counter.force.z_n + 30.0 * STANDARD_GRAVITY_M_S2).abs() < 1e-9);
    assert_eq!(counter.moving_mass_kg, 70.0, "a counterweight moves along");
}

#[test]
fn law_a_cam_fitted_to_capacity_makes_effort_even() {
    let capacity = |rad: f64| 60.0 + 40.0 * (1.3 * rad).sin();
    let angles: Vec<Angle> = (0..=36)
        .map(|i| Angle::from_deg(f64::from(i) * 3.0))
        .collect();
    let values: Vec<f64> = angles
        .iter()
        .map(|angle| capacity(angle.as_rad()))
        .collect();
    let cam = Cam::fitted(&angles, &values, Length::from_cm(12.0)).expect("a cam");
    let carrier = Carrier::Lever {
        pad_m: 0.35,
        cam_m: 0.12,
    };
    let spread = |items: Vec<Item>| {
        let setup = Setup::new("", items);
        let efforts: Vec<f64> = (0..=100)
            .map(|i| {
                let lever_rad = f64::from(i) / 100.0 * 108_f64.to_radians();
                let point = LoadPoint {
                    lever_rad,
                    dz_ds_m: 1.0,
                    ..LoadPoint::default()
                };
                setup.total_at(&point, &carrier, LIFT).force.magnitude_n() * 0.35
                    / capacity(lever_rad)
            })
            .collect();
        let mean = efforts.iter().sum::<f64>() / efforts.len() as f64;
        (efforts.iter().map(|e| (e - mean).powi(2)).sum::<f64>() / efforts.len() as f64).sqrt()
            / mean
    };
    let flattening =
        100.0 * (1.0 - spread(vec![load(40.0), Item::Cam(cam)]) / spread(vec![load(40.0)]));
    assert!(flattening > 95.0, "{flattening} %");
}

#[test]
fn law_friction_costs_both_ways() {
    let sled = |motion| {
        total(
            vec![
                Item::Sled(Sled::new(Mass::from_kg(50.0), 0.1).expect("a sled")),
                load(100.0),
            ],
            &at_height(0.5),
            &Carrier::Sled { angle_rad: 0.7 },
            motion,
        )
        .magnitude_n()
    };
    let free = 150.0 * STANDARD_GRAVITY_M_S2 * 0.7_f64.sin();
    assert!(sled(LIFT) > free && sled(LOWER) < free && sled(Motion::Hold) == sled(LIFT));
    let cable = Cable::new(
        Mass::from_kg(40.0),
        1.0,
        0.08,
        Lead::Direction(Angle::from_deg(-90.0)),
    )
    .expect("a cable");
    let pull =
        |motion| total(vec![Item::Cable(cable)], &at_height(0.5), &BAR, motion).magnitude_n();
    assert!(
        pull(LIFT) > 40.0 * STANDARD_GRAVITY_M_S2 && pull(LOWER) < 40.0 * STANDARD_GRAVITY_M_S2
    );
}

#[test]
fn law_a_lever_does_the_work_of_its_plates() {
    // Virtual work: the force on the handle times its travel is the plates' weight times their rise.
    let (arm_m, pivot) = (0.5, (-0.9, 1.1));
    let machine = LeverMachine::new(
        Mass::from_kg(60.0),
        Length::from_m(arm_m),
        Turns::AboutPivot {
            pivot: Anchor::at(Length::from_m(pivot.1), Length::from_m(pivot.0)).expect("a place"),
            plates_ahead: Angle::from_deg(-15.0),
        },
    )
    .expect("a lever");
    let point = |z_m: f64| LoadPoint {
        z_m,
        dz_ds_m: 1.0,
        ..LoadPoint::default()
    };
    let setup = Setup::new("", vec![Item::Lever(machine)]).rigged_over(&[point(0.9)]);
    let plates_z = |z: f64| {
        let handle_rad = f64::atan2(z - pivot.1, -pivot.0);
        arm_m * (handle_rad - 15_f64.to_radians()).sin()
    };
    let step = 1e-6;
    for z in [0.9, 1.0, 1.2, 1.4] {
        let rise = (plates_z(z + step) - plates_z(z - step)) / (2.0 * step);
        let force = setup.total_at(&point(z), &BAR, LIFT).force.z_n;
        assert!(
            (force + 60.0 * STANDARD_GRAVITY_M_S2 * rise).abs() < 1e-4,
            "{force} at {z}"
        );
    }
}

#[test]
fn law_rigging_doubles_what_would_be_slack_and_keeps_anchors_still() {
    let hang = |bottom, top| {
        let setup = Setup::new("", vec![Item::Band(HungBand::from_floor(band(29.0), 1))]);
        match &setup.rigged_over(&straight_lift(bottom, top, 11)).items[0] {
            Item::Band(hung) => hung.hang,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(hang(0.7, 1.1), Hang::Doubled, "bench press");
    assert_eq!(
        hang(0.95, 1.5),
        Hang::Single,
        "squat: doubled would be overstretched"
    );
    let mut points = straight_lift(0.7, 1.1, 11);
    points[10].x_m = 0.3;
    let setup = Setup::new("", vec![anchored(29.0, 0.0, 0.0, Hang::Doubled)]);
    let force = DemandCurve::over(&setup, &points, &BAR).samples[10]
        .up
        .force;
    assert!(
        force.x_n < 0.0,
        "the anchor stays where the lift began: {force:?}"
    );
}

#[test]
fn fault_uneven_sides_overstretch_and_slack_are_said() {
    let points = straight_lift(0.4, 1.6, 21);
    let said = |items: Vec<Item>| {
        let setup = Setup::new("", items).rigged_over(&points);
        let cautions = setup_cautions(&setup, &points, &BAR);
        let said = cautions.iter().map(|c| caution_in_words(c, System::Metric));
        said.collect::<Vec<_>>().join("\n")
    };
    let mut left = HungBand::from_floor(band(64.0), 1);
    left.side = HangingSide::Left;
    assert!(said(vec![load(60.0), Item::Band(left)]).contains("Left and right differ"));
    assert!(
        said(vec![anchored(64.0, 0.0, 0.0, Hang::Doubled)]).contains("more than 2.5 is not safe")
    );
    assert!(
        said(vec![anchored(64.0, 100.0, 0.0, Hang::Single)]).contains("slack over the whole range")
    );
    assert!(
        said(vec![load(20.0), anchored(102.0, 300.0, 0.0, Hang::Doubled)]).contains("outweighs")
    );
    assert!(!said(vec![load(60.0)]).contains("band"));
    let hanging = Item::Chain(HungChain::to_floor(chain(3.8, 0.3), 1));
    assert!(said(vec![hanging]).contains("hangs free"));
}
