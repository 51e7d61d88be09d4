//! What a session is planned on: strength, gym, simulated repetition, band and chain setups.
//!
//! In: arguments of `plan` and the model. Out: [`Ground`], from which every method's request is made.

use super::hung::hung;
use super::plan::Arguments;
use super::progress::log;
use super::waiting::watched;
use crate::anatomy::{Lifter, Training};
use crate::error::{Error, Result};
use crate::library::Library;
use crate::movement::Carrier;
use crate::narrative::faults::told;
use crate::narrative::quantities::mass_in;
use crate::progress::trend::trend;
use crate::rep::RepOptions;
use crate::resistance::{Item, Setup};
use crate::session::method::Method;
use crate::session::status::{ADVANCED_MONTHS, OVERLOAD_MONTHS, Permission, Trainee, may_do};
use crate::session::strength::OneRmSource;
use crate::setups::{Gym, Loadings};
use crate::study::{
    Question, SessionSetup, USUAL_STEP_KG, best_setup, carried_body, lifter_of_one_rm, maximum,
    named_setup,
};
use crate::units::{Mass, System};

/// Gym that is taken when none is named.
const USUAL_GYM: &str = "college-weight-room";
/// Months of steady training when nothing is known of the lifter (assumed: who has stalled has trained).
const USUAL_MONTHS: f64 = 36.0;

/// What every request of a call shares.
pub struct Ground {
    /// The 1RM, body apart.
    pub one_rm: Mass,
    /// Where it comes from.
    pub from: OneRmSource,
    /// Body mass that is part of the load.
    pub body: Mass,
    /// Training and health.
    pub status: Trainee,
    /// The lifter scaled to the 1RM, where that was possible.
    pub lifter: Option<Lifter>,
    /// What can be loaded.
    pub loading: Loadings,
    /// Setups by method, or why there is none.
    pub setups: Vec<(Method, Result<SessionSetup>)>,
    /// What was taken for granted, in sentences.
    pub notes: Vec<String>,
}

/// Finds all of it for these methods.
pub fn ground(
    arguments: &Arguments,
    library: &Library,
    question: &Question<'_>,
    methods: &[Method],
) -> Result<Ground> {
    let carrier = question.movement.carrier()?;
    let body = carried_body(&carrier, question.lifter);
    let mut notes = Vec::new();
    let status = status(arguments, question.lifter.training, &mut notes);
    let (one_rm, from) = one_rm(arguments, library, question, body)?;
    let lifter = match lifter_of_one_rm(question, one_rm, Mass::from_kg(USUAL_STEP_KG)) {
        Ok(lifter) => Some(lifter),
        Err(fault) => {
            notes.push(format!(
                "Nothing is predicted: {}.",
                first_line(&fault, arguments.units.into())
            ));
            None
        }
    };
    let own = Question {
        lifter: lifter.as_ref().unwrap_or(question.lifter),
        ..question.clone()
    };
    let gym = gym(arguments, library, &carrier, methods)?.map(|gym| with_one_bar(gym, one_rm));
    let units: System = arguments.units.into();
    let loading = match &gym {
        Some(gym) => Loadings::of(gym, &carrier)?,
        None => Loadings::usual(units),
    };
    notes.push(gym.as_ref().map_or_else(
        || "Loads: a bar and the usual plates; --gym takes those of a gym.".to_owned(),
        |gym| format!("Loads: {}.", gym.title),
    ));
    let setups = setups(
        arguments,
        library,
        &own,
        (gym.as_ref(), &loading),
        methods,
        &status,
    )?;
    Ok(Ground {
        one_rm,
        from,
        body,
        status,
        lifter,
        loading,
        setups,
        notes,
    })
}

fn first_line(fault: &Error, units: System) -> String {
    let first = fault.faults().first();
    first.map_or_else(String::new, |fault| told(fault, units).message)
}

/// Training and health: as told, else as the named lifter's file says, else as usual.
fn status(arguments: &Arguments, training: Training, notes: &mut Vec<String>) -> Trainee {
    let months = match (arguments.training_months, &arguments.who.lifter) {
        (Some(months), _) => months,
        (None, Some(_)) => match training {
            Training::Novice => 0.0,
            Training::Intermediate => OVERLOAD_MONTHS,
            Training::Advanced => ADVANCED_MONTHS.max(USUAL_MONTHS),
        },
        (None, None) => {
            notes.push(format!(
                "Planned for {USUAL_MONTHS} months of steady training; --training-months tells better."
            ));
            USUAL_MONTHS
        }
    };
    Trainee {
        injured: arguments.injured,
        unwell_or_sore: arguments.unwell,
        age_years: arguments.age,
        days_since_overload: arguments.last_overload,
        ..Trainee::with_training_months(months)
    }
}

/// The maximum and where it comes from.
fn one_rm(
    arguments: &Arguments,
    library: &Library,
    question: &Question<'_>,
    body: Mass,
) -> Result<(Mass, OneRmSource)> {
    if let Some(text) = &arguments.one_rm {
        let mass = Mass::from_text(text).map_err(Error::bad)?;
        return Ok((mass, OneRmSource::Given));
    }
    if let Some(name) = &arguments.log {
        let log = log(name, false, library)?.of_lift(Some(&arguments.movement))?;
        let trend = trend(
            &log,
            library.lift_facts(&arguments.movement),
            &library.published()?.estimates,
        )?;
        let added = trend.one_rm_now() - body;
        if added.as_kg() < 0.0 {
            return Err(Error::bad(format!(
                "the log's 1RM of {} is less than the body of {}: loads of this lift hold the body mass",
                mass_in(System::Metric, trend.one_rm_now()),
                mass_in(System::Metric, body)
            ))
            .hint("write body and added load together in the log, or choose the --lifter it belongs to"));
        }
        return Ok((
            added,
            OneRmSource::Log {
                verdict: trend.verdict,
                sureness: trend.sureness,
                line: Box::new(trend.recent),
            },
        ));
    }
    let step = Mass::from_kg(USUAL_STEP_KG);
    let (found, _) = maximum(question, &Setup::default(), &RepOptions::default(), step)?;
    Ok((
        found.load,
        OneRmSource::Simulated(question.lifter.title.clone()),
    ))
}

/// The gym: the named one; a usual one where bar and plates are not enough.
fn gym(
    arguments: &Arguments,
    library: &Library,
    carrier: &Carrier,
    methods: &[Method],
) -> Result<Option<Gym>> {
    if let Some(name) = &arguments.gym {
        return library.gym(name).map(Some);
    }
    let hangs = methods.iter().any(|method| method.is_accommodating());
    let named = !(arguments.hung.band.is_empty() && arguments.hung.chain.is_empty());
    if *carrier == Carrier::Bar && (!hangs || named) {
        return Ok(None);
    }
    library.gym(USUAL_GYM).map(Some)
}

/// Share of the 1RM that an empty bar may weigh (assumed: more leaves no room for warm-up sets).
const LIGHT_BAR_SHARE: f64 = 0.4;

/// The gym with one bar, so that nobody changes bars between sets: the heaviest that leaves room to warm up,
/// else the lightest.
fn with_one_bar(mut gym: Gym, one_rm: Mass) -> Gym {
    gym.bars
        .sort_by(|a, b| a.mass.as_kg().total_cmp(&b.mass.as_kg()));
    let most_kg = LIGHT_BAR_SHARE * one_rm.as_kg();
    let index = gym.bars.iter().rposition(|bar| bar.mass.as_kg() <= most_kg);
    let keep = index.unwrap_or(0);
    gym.bars = gym.bars.into_iter().skip(keep).take(1).collect();
    gym
}

/// The setups that the methods need: the named pieces, or the best of the gym.
///
/// A fault of the only method ends the command; beside others it is kept as the reason.
fn setups(
    arguments: &Arguments,
    library: &Library,
    question: &Question<'_>,
    (gym, loading): (Option<&Gym>, &Loadings),
    methods: &[Method],
    status: &Trainee,
) -> Result<Vec<(Method, Result<SessionSetup>)>> {
    let pieces = hung(&arguments.hung, library)?;
    let wanted: Vec<Method> = methods
        .iter()
        .copied()
        .filter(|method| method.is_accommodating())
        .filter(|method| may_do(status, *method) == Permission::Granted)
        .collect();
    if wanted.is_empty() && !pieces.items.is_empty() {
        return Err(
            Error::bad("--band and --chain belong to the methods bands and chains")
                .hint("add --method bands, or leave them out"),
        );
    }
    let mut found = Vec::new();
    for method in wanted {
        let named = pieces.items.iter().any(|item| belongs(item, method));
        let setup = if named || (methods.len() == 1 && !pieces.items.is_empty()) {
            named_setup(question, pieces.clone(), loading, arguments.effort)
        } else {
            match gym {
                Some(gym) => {
                    watched(|watch| best_setup(question, gym, method, arguments.effort, watch))
                }
                None => Err(Error::bad(format!("no {} were named", method.name()))
                    .hint("--gym college-weight-room finds the best setup of a gym")),
            }
        };
        found.push((method, setup));
    }
    Ok(found)
}

fn belongs(item: &Item, method: Method) -> bool {
    match item {
        Item::Band(_) => method == Method::Bands,
        Item::Chain(_) => method == Method::Chains,
        _ => false,
    }
}
