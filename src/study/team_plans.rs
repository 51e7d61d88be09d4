//! The recipe for a team: every person's lifter, strength and sessions, side by side.
//!
//! In: a [`Team`], what is asked of everybody. Out: [`MemberPlans`], in the order of the file.

use super::expected_lifter::expected_lifter;
use super::member_plans::{LiftPlan, MemberLift, MemberPlans, TeamDay};
use super::plan_ground::plan_ground;
use super::plan_question::{MethodChoice, PersonTold, PlanQuestion};
use super::planned_sessions::{check, plan};
use super::row_contradictions::lifts_apart;
use super::team_days::{DAYS_APART, team_days};
use crate::anatomy::Sex;
use crate::error::{Error, FaultKind, PersonFault, PlanFault, Result, TeamFault, What};
use crate::library::{Library, Model, assemble, text_of_file};
use crate::movement::Carrier;
use crate::progress::estimate::estimate;
use crate::progress::log_file::BadRows;
use crate::progress::team_cells::ToldStrength;
use crate::progress::team_file::{Team, TeamMember, read_team};
use crate::session::maximum_test::{Expected, MaximumTest, maximum_test};
use crate::session::method::Method;
use crate::session::request::SessionWishes;
use crate::setups::Watch;
use crate::units::Mass;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::path::Path;
use std::sync::atomic::Ordering::Relaxed;

/// To how much a 1RM that is reckoned from a set is rounded, kg: what is shown of it, typed as a 1RM, gives the same plan.
const SHOWN_KG: f64 = 0.1;

/// Most plans of one call, assumed: ten minutes of work on two cores.
const MOST_PLANS: usize = 2000;

/// Reads a team's file.
///
/// **Fails** as reading files and [`read_team`] do.
pub fn team_of(library: &Library, file: &str, bad_rows: BadRows) -> Result<Team> {
    let text = text_of_file(Path::new(file))?;
    let lifts = (&library.lift_names(), &library.movements()[..]);
    read_team((file, &text), lifts, bad_rows)
}

/// Plans for everybody: the lift of the question, or without one every lift that a column holds.
///
/// # Algorithm
/// 1. A person's lifter is the reference person of the sex at this height and mass; training is as told, else none.
/// 2. Strength is the 1RM as told, or the median of the equations for a set; without either a test is planned.
/// 3. Lifts of a row that do not fit one another are told, and several lifts are put on days.
/// 4. People are planned for side by side; the watch counts them.
///
/// **Fails** where the lift has no column, where more plans are asked for than are made in one call, and with the first person for whom the question is put wrongly.
pub fn team_plans(
    asked: &PlanQuestion,
    team: &Team,
    movement: Option<&str>,
    library: &Library,
    watch: &Watch,
) -> Result<Vec<MemberPlans>> {
    if let Some(movement) = movement.filter(|name| !team.movements.iter().any(|m| m == name)) {
        return Err(Error::bad(TeamFault::NoLift {
            movement: Some(movement.to_owned()),
            known: team.movements.clone(),
        }));
    }
    let is_asked = |lift: &str| movement.is_none_or(|wanted| wanted == lift);
    let lifts = team.members.iter().flat_map(|member| &member.lifts);
    let plans = lifts.filter(|(name, _)| is_asked(name)).count();
    if plans > MOST_PLANS {
        return Err(Error::bad(TeamFault::ManyPlans {
            asked: plans,
            most: MOST_PLANS,
        }));
    }
    watch.all.store(team.members.len() as u64, Relaxed);
    let of_member = |member: &TeamMember| {
        let lifts = member.lifts.iter();
        let lifts = lifts.filter(|(name, _)| is_asked(name));
        let lifts = lifts.map(|(name, told)| lift_of(asked, member, name, *told, library));
        let mut lifts = lifts.collect::<Result<Vec<_>>>()?;
        let days = team_days(&lifts);
        let apart = match lifts_apart(member, library) {
            // What keeps a lift from being judged is told of the lift itself.
            Err(fault) if fault.kind() == FaultKind::NoAnswer || is_of_a_person(&fault) => {
                Vec::new()
            }
            found => found?,
        };
        on_their_days(&mut lifts, &days);
        let plans = MemberPlans {
            member: member.clone(),
            lifts,
            apart,
            days,
        };
        watch.done.fetch_add(1, Relaxed);
        Ok(plans)
    };
    team.members.par_iter().map(of_member).collect()
}

fn lift_of(
    asked: &PlanQuestion,
    member: &TeamMember,
    movement: &str,
    told: ToldStrength,
    library: &Library,
) -> Result<MemberLift> {
    let mut question = question_of(asked, member, movement);
    let planned = one_rm(member, movement, told, library).and_then(|one_rm| match one_rm {
        Some(one_rm) => {
            question.one_rm = Some(one_rm);
            if let ToldStrength::Set {
                load, repetitions, ..
            } = told
            {
                question.of_set = Some((load, repetitions));
            }
            let answer = plan(&question, library, &Watch::default())?;
            Ok(LiftPlan::Sessions(Box::new(answer)))
        }
        None => test(&question, member, library).map(|test| LiftPlan::Test(Box::new(test))),
    });
    let plan = match planned {
        // Somebody for whom nothing can be planned keeps nobody else from a plan.
        Err(fault) if is_of_one_lift(&fault) => LiftPlan::Nothing(of_member(fault, &member.name)),
        // Whose row it is of is known here only.
        other => other.map_err(|error| of_member(error, &member.name))?,
    };
    Ok(MemberLift {
        movement: movement.to_owned(),
        told,
        plan,
    })
}

/// The sessions of a block on the days of their lifts: those of the second day a day later, and so on; of a fourth day and
/// beyond on the days of the first lifts' second session, never on those of their first.
fn on_their_days(lifts: &mut [MemberLift], days: &[TeamDay]) {
    for (later, day) in days.iter().enumerate() {
        for place in &day.lifts {
            if let LiftPlan::Sessions(answer) = &mut lifts[*place].plan {
                for session in &mut answer.sessions {
                    session.name = session.name.later(later.min(DAYS_APART) as u32);
                }
            }
        }
    }
}

/// Whether an error leaves the other lifts and people as they are.
fn is_of_one_lift(error: &Error) -> bool {
    error.kind() == FaultKind::NoAnswer || is_of_the_row(error)
}

/// Whether an error is about what a row tells of a person, not about files.
fn is_of_a_person(error: &Error) -> bool {
    let faults = error.faults();
    faults
        .iter()
        .all(|fault| matches!(fault.what, What::Person(_)))
}

/// Whether an error is about who stands in the row: an age, or a 1RM that nobody has.
fn is_of_the_row(error: &Error) -> bool {
    let is_of_person = |what: &What| {
        matches!(
            what,
            What::Person(
                PersonFault::ImpossibleOneRm { .. }
                    | PersonFault::NoAdult { .. }
                    | PersonFault::LongerThanLife { .. }
            ) | What::Plan(PlanFault::OneRmOutside { .. })
        )
    };
    error.faults().iter().all(|fault| is_of_person(&fault.what))
}

/// The error with the name of whom a 1RM is told that nobody has.
fn of_member(error: Error, name: &str) -> Error {
    error.each(|mut fault| {
        if let What::Person(PersonFault::ImpossibleOneRm { who, .. }) = &mut fault.what {
            *who = Some(name.to_owned());
        }
        fault
    })
}

/// What is asked of everybody, asked of one person's lift.
fn question_of(asked: &PlanQuestion, member: &TeamMember, movement: &str) -> PlanQuestion {
    let reference = match member.sex {
        Sex::Woman => "reference-woman",
        Sex::Man => "reference-man",
    };
    let size = [
        format!("lifter.height={} m", member.height.as_m()),
        format!("lifter.body_mass={} kg", member.mass.as_kg()),
    ];
    PlanQuestion {
        movement: movement.to_owned(),
        lifter: Some(reference.to_owned()),
        set: size.into_iter().chain(asked.set.iter().cloned()).collect(),
        person: PersonTold {
            training_months: Some(member.training_months.unwrap_or(0.0)),
            age_years: member.age_years,
            injured: member.injured,
            unwell: member.unwell,
            ..PersonTold::default()
        },
        one_rm: None,
        of_set: None,
        log: None,
        ..asked.clone()
    }
}

/// The 1RM that is told, body apart; of a set, by the equations.
fn one_rm(
    member: &TeamMember,
    movement: &str,
    told: ToldStrength,
    library: &Library,
) -> Result<Option<Mass>> {
    let (load, repetitions, reserve) = match told {
        ToldStrength::OneRm(one_rm) => return Ok(Some(one_rm)),
        ToldStrength::Untested => return Ok(None),
        ToldStrength::Set {
            load,
            repetitions,
            reserve,
        } => (load, repetitions, reserve),
    };
    let carrier = library.movement(movement)?.carrier()?;
    let body = match carrier {
        Carrier::Body => member.mass,
        _ => Mass::ZERO,
    };
    let equations = &library.published()?.estimates.repetitions;
    let of_set = estimate(equations, Some(movement), load + body, repetitions, reserve);
    let shown = |one_rm: Mass| Mass::from_kg((one_rm.as_kg() / SHOWN_KG).round() * SHOWN_KG);
    Ok(of_set.map(|of_set| shown(of_set.one_rm - body)))
}

/// The session that finds a maximum, laid on what the model expects of a lifter of this size, training, and strength in
/// the other lifts of the row; where these contradict what people show, of an untrained one.
fn test(question: &PlanQuestion, member: &TeamMember, library: &Library) -> Result<MaximumTest> {
    let asked = PlanQuestion {
        methods: MethodChoice::One(Method::Straight),
        weeks: None,
        start: None,
        // Wishes are of the sessions that follow.
        effort: None,
        wishes: SessionWishes::default(),
        ..question.clone()
    };
    check(&asked)?;
    let lifter = asked.lifter.as_deref().unwrap_or_default();
    let model = assemble(library, lifter, &asked.movement, &asked.set)?;
    let expected = expected_lifter(member, &asked.movement, library);
    let (model, expected) = match expected.ok().flatten() {
        Some(expected) => {
            let of_person = Expected::OfPerson {
                lifts: expected.lifts,
                low: expected.low,
                high: expected.high,
            };
            let lifter = expected.lifter;
            (Model { lifter, ..model }, of_person)
        }
        None => (model, Expected::Untrained),
    };
    let ground = plan_ground(&asked, library, &model, &Watch::default())?;
    maximum_test(&ground.lift, &ground.loading, expected)
}
