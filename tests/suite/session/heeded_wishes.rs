//! Which wishes a plan heeds: what the table says of every method is what its plans do.

use super::equation_oracle::{from_load_velocity, planned_lift};
use super::published;
use super::session_loads::kg;
use torquill::session::accommodating_setup::AccommodatingSetup;
use torquill::session::block::block;
use torquill::session::heeded::Wished;
use torquill::session::method::{METHODS, Method};
use torquill::session::remark::Remark;
use torquill::session::request::{SessionRequest, SessionWishes};
use torquill::session::schemes::plan;
use torquill::session::status::Trainee;
use torquill::setups::Loadings;
use torquill::units::{Duration, System};

/// A wish at values none of which is the usual one of every method.
type Asked = (Wished, Vec<SessionWishes>);

fn asked() -> Vec<Asked> {
    let of = |wishes: &[&dyn Fn(&mut SessionWishes)]| {
        let made = wishes.iter().map(|wish| {
            let mut asked = SessionWishes::default();
            wish(&mut asked);
            asked
        });
        made.collect::<Vec<_>>()
    };
    vec![
        (
            Wished::Load,
            of(&[&|w| w.load = Some(kg(100.0)), &|w| {
                w.load = Some(kg(145.0));
            }]),
        ),
        (
            Wished::Sets,
            of(&[&|w| w.sets = Some(2), &|w| w.sets = Some(3)]),
        ),
        (
            Wished::Repetitions,
            of(&[&|w| w.repetitions = Some(1), &|w| w.repetitions = Some(3)]),
        ),
        (
            Wished::TotalRepetitions,
            of(&[&|w| w.total_repetitions = Some(7)]),
        ),
        (
            Wished::Group,
            of(&[&|w| w.group = Some(1), &|w| w.group = Some(3)]),
        ),
        (
            Wished::RestWithin,
            of(&[&|w| w.rest_within = Some(Duration::from_s(20.0))]),
        ),
        (Wished::Reserve, of(&[&|w| w.reserve = Some(6)])),
        (
            Wished::VelocityLoss,
            [0.05, 0.1, 0.2, 0.3]
                .map(|loss| SessionWishes {
                    velocity_loss: Some(loss),
                    ..SessionWishes::default()
                })
                .to_vec(),
        ),
        (Wished::SetsAWeek, of(&[&|w| w.sets_a_week = Some(2)])),
    ]
}

/// What is planned with these wishes, as a text that tells all of it.
fn planned(method: Method, wishes: SessionWishes, weeks: Option<u32>) -> String {
    let gym = Loadings::usual(System::Metric);
    let oracle = from_load_velocity("bench-press", kg(140.0));
    let setup = AccommodatingSetup {
        hung: Vec::new(),
        anchors: None,
        bar_and_plates: gym.at_most(kg(100.0)).expect("loadable"),
        bottom: kg(104.0),
        middle: kg(110.0),
        top: kg(116.0),
        failure: None,
        arms: None,
        max_effort: 0.8,
        flattening_percent: Some(40.0),
        plain: Some(kg(110.0)),
    };
    let lift = planned_lift(
        "bench-press",
        Trainee::with_training_months(60.0),
        kg(140.0),
    );
    let request = SessionRequest {
        wishes,
        setup: method.is_accommodating().then_some(&setup),
        oracle: Some(&oracle),
        setup_oracle: method.is_accommodating().then_some(&oracle),
        ..SessionRequest::usual(published(), lift, method, &gym)
    };
    match weeks {
        Some(weeks) => format!("{:?}", block(&request, weeks)),
        None => format!("{:?}", plan(&request)),
    }
}

fn heeds_as_told(weeks: Option<u32>) {
    let (mut heeded, mut unheeded) = (0, 0);
    for (method, name) in METHODS {
        let usual = planned(*method, SessionWishes::default(), weeks);
        assert!(usual.starts_with("Ok("), "{name}: {usual}");
        for (wished, wishes) in asked() {
            // What is refused is not answered calmly.
            let changes = wishes.iter().any(|wishes| {
                let now = planned(*method, *wishes, weeks);
                now.starts_with("Ok(") && now != usual
            });
            assert_eq!(
                changes,
                wished.is_heeded(*method, weeks.is_some()),
                "{name}, {wished:?}, {weeks:?}"
            );
            heeded += usize::from(changes);
            unheeded += usize::from(!changes);
        }
    }
    assert!(heeded > 10 && unheeded > 10, "{heeded} {unheeded}");
}

#[test]
fn law_a_session_heeds_the_wishes_that_it_is_said_to() {
    heeds_as_told(None);
}

#[test]
fn law_a_block_heeds_the_wishes_that_it_is_said_to() {
    heeds_as_told(Some(2));
}

/// What a novice gets in place of a method leaves out what was asked of that method, and says so.
#[test]
fn fault_what_is_left_out_of_what_is_planned_instead_is_told() {
    left_out_is_told(Trainee::with_training_months(0.0));
}

/// So does the lighter session of a novice who is ill or unusually sore.
#[test]
fn fault_what_an_unwell_novice_asks_for_in_vain_is_told() {
    left_out_is_told(Trainee {
        unwell_or_sore: true,
        ..Trainee::with_training_months(0.0)
    });
}

fn left_out_is_told(novice: Trainee) {
    let gym = Loadings::usual(System::Metric);
    let oracle = from_load_velocity("bench-press", kg(140.0));
    let asked_of = |method, wishes| {
        let lift = planned_lift("bench-press", novice, kg(140.0));
        SessionRequest {
            wishes,
            oracle: Some(&oracle),
            ..SessionRequest::usual(published(), lift, method, &gym)
        }
    };
    let of = |remarks: &[Remark]| {
        let told = remarks.iter().filter_map(|remark| match remark {
            Remark::LeftOut { options } => Some(options.clone()),
            _ => None,
        });
        told.flatten().collect::<Vec<_>>()
    };
    let (mut left, mut kept) = (0, 0);
    let methods = [Method::Pyramid, Method::Clusters, Method::Straight];
    // Whoever is well gets the straight sets that were asked for.
    let instead = if novice.unwell_or_sore { 3 } else { 2 };
    for method in &methods[..instead] {
        let method = *method;
        let usual = plan(&asked_of(method, SessionWishes::default())).expect("a plan");
        assert!(of(&usual.draft.remarks).is_empty());
        for (wished, wishes) in asked() {
            let plans = wishes.iter().map(|wishes| {
                let now = plan(&asked_of(method, *wishes)).expect("a plan");
                (of(&now.draft.remarks), now.draft.sets == usual.draft.sets)
            });
            let plans: Vec<_> = plans.collect();
            // One of the values may be the usual one.
            let changes = plans.iter().any(|(_, is_alike)| !is_alike);
            for (told, _) in plans {
                let case = format!("{method:?}, {wished:?}: {told:?}");
                assert_eq!(told == [wished.option()], !changes, "{case}");
                left += usize::from(!changes);
                kept += usize::from(changes);
            }
            // A block of straight sets takes its wishes as they are.
            if method == Method::Straight {
                continue;
            }
            let block = block(&asked_of(method, asked_first(wished)), 2).expect("a block");
            let days = block.weeks.iter().flat_map(|week| &week.days);
            let said = days
                .map(|day| of(&day.plan.draft.remarks))
                .filter(|told| !told.is_empty());
            let in_block = [Wished::Reserve, Wished::VelocityLoss, Wished::SetsAWeek];
            assert_eq!(
                said.count(),
                usize::from(!in_block.contains(&wished)),
                "{wished:?}"
            );
        }
    }
    assert!(left > 5 && kept > 1, "{left} {kept}");
}

fn asked_first(wished: Wished) -> SessionWishes {
    let all = asked();
    let own = all.into_iter().find(|(known, _)| *known == wished);
    own.expect("every wish is asked for").1[0]
}
