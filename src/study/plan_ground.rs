//! What a session is planned on: strength, gym, simulated repetition, band and chain setups.
//!
//! In: a [`PlanQuestion`] and the model. Out: [`PlanGround`], from which every method's request is made.

use super::adult_body::check_adult;
use super::model_maximum::one_rm_of_model;
use super::person_asked::reference_of;
use super::plan_question::{PersonTold, PlanNote, PlanQuestion};
use super::planned_log::{differing_lifter, one_rm_of_log};
use super::possible_maximum::{impossible, odd_maximum};
use super::question::Question;
use super::session_oracle::{carried_body, lifter_of_one_rm};
use super::session_setup::{SessionSetup, best_setup, named_setup};
use super::solve::SolvedLift;
use super::weight_resists::check_weight_resists;
use crate::anatomy::{Lifter, LifterRecord, Sex, Training};
use crate::bounds::bounds;
use crate::error::{Error, JudgedBy, PlanFault, Result};
use crate::grammar::Stock;
use crate::library::{Library, Model};
use crate::movement::Carrier;
use crate::resistance::{Item, Setup};
use crate::session::method::Method;
use crate::session::published::EccentricTable;
use crate::session::status::{Level, Permission, Trainee, may_do};
use crate::session::strength::{OneRmSource, PlannedLift, UnlikelyOneRm};
use crate::setups::{ArmsStand, Gym, Loadings, Watch, usual_gym_with_light_bars};
use crate::units::Mass;

/// Gym that is taken when none is named.
const USUAL_GYM: &str = "college-weight-room";
/// Months of steady training that are taken for granted of somebody of whom nothing is known: none, the careful side.
const UNKNOWN_MONTHS: f64 = 0.0;
/// Months that a lifter's file stands for which says no more than "intermediate" or "advanced" (assumed: a year, and
/// more than two).
const INTERMEDIATE_FILE_MONTHS: f64 = 12.0;
const ADVANCED_FILE_MONTHS: f64 = 36.0;

/// What every request of a question shares.
pub(super) struct PlanGround {
    /// The lift with its 1RM.
    pub lift: PlannedLift,
    /// The lifter scaled to the 1RM, where that was possible.
    pub lifter: Option<Lifter>,
    /// What can be loaded.
    pub loading: Loadings,
    /// Setups by method, or why there is none.
    pub setups: Vec<(Method, Result<SessionSetup>)>,
    /// Whether a gym is named that has no safety arms that stand right below the lift.
    pub without_arms: bool,
    /// Where the gym's safety arms stand below the lift, where something has to catch the load.
    pub arms: Option<ArmsStand>,
    /// What was taken for granted.
    pub notes: Vec<PlanNote>,
}

/// Finds all of it for the methods of the question.
pub(super) fn plan_ground(
    asked: &PlanQuestion,
    library: &Library,
    model: &Model,
    watch: &Watch,
) -> Result<PlanGround> {
    let question = &Question::new(&asked.movement, &model.movement, &model.lifter);
    check_weight_resists(question)?;
    check_adult(question)?;
    let carrier = question.movement.carrier()?;
    let mut notes = Vec::new();
    let files = asked.lifter.as_ref();
    let record = files.map(|name| library.lifter_files(name)).transpose()?;
    let record = record.map(|files| files.record);
    let trainee = trainee(asked, record.as_ref(), &mut notes);
    let told = (question, model);
    let mut lift = planned_lift(asked, library, told, trainee, &mut notes)?;
    lift.unlikely = unlikely_maximum(asked, library, model, &lift)?;
    check_records(&lift, &carrier)?;
    notes.extend(differing_lifter(question, record.as_ref(), &lift)?);
    let scaled = lifter_of_one_rm(question, lift.one_rm).map(|scaled| Lifter {
        training: training_of(lift.level()),
        ..scaled
    });
    if let Err(fault) = &scaled {
        notes.push(PlanNote::NothingPredicted(fault.clone()));
    }
    let joins_hands = question.movement.handling.bar_joins_hands;
    let whole = gym(asked, library, &carrier)?.map(|gym| gym.for_hands(joins_hands));
    let gym = whole.clone().map(|gym| with_one_bar(gym, lift.one_rm));
    let loading = match whole.as_ref().zip(gym.as_ref()) {
        Some((whole, gym)) => {
            with_heavier_bars(Loadings::of(gym, &carrier)?, whole, gym, &carrier)?
        }
        None => usual_loads(asked, lift.one_rm, &carrier)?,
    };
    notes.push(gym.as_ref().map_or(PlanNote::UsualPlates, |gym| {
        PlanNote::GymLoads(gym.title.clone())
    }));
    let search = SetupSearch {
        asked,
        question: &Question {
            age_years: lift.trainee.age_years,
            ..question.clone()
        },
        lifter: scaled.as_ref().ok(),
        one_rm: lift.one_rm,
        table: &library.published()?.eccentric,
        gym: gym.as_ref(),
        loading: &loading,
    };
    let known = library.pieces()?;
    let stock = known.stock();
    let own = Stock {
        anchors: gym.as_ref().map_or(stock.anchors, |gym| &gym.anchors),
        ..stock
    };
    let pieces = asked.pieces.setup(&own)?;
    let setups = search.setups(pieces, &lift.trainee, watch)?;
    let arms = gym.as_ref().and_then(|gym| arms_in(question, gym));
    Ok(PlanGround {
        lift,
        lifter: scaled.ok(),
        without_arms: asked.gym.is_some() && arms.is_none(),
        arms,
        loading,
        setups,
        notes,
    })
}

/// The training that a status stands for.
const fn training_of(level: Level) -> Training {
    match level {
        Level::Novice => Training::Novice,
        Level::Intermediate => Training::Intermediate,
        Level::Advanced => Training::Advanced,
    }
}

/// Training and health: as told, else as the named lifter's file says, else as of a novice.
fn trainee(
    asked: &PlanQuestion,
    record: Option<&LifterRecord>,
    notes: &mut Vec<PlanNote>,
) -> Trainee {
    let told: &PersonTold = &asked.person;
    let months = match (told.training_months, record) {
        (Some(months), _) => months,
        (None, Some(record)) => record.training_months.unwrap_or(match record.training {
            Training::Novice => 0.0,
            Training::Intermediate => INTERMEDIATE_FILE_MONTHS,
            Training::Advanced => ADVANCED_FILE_MONTHS,
        }),
        (None, None) => {
            notes.push(PlanNote::UnknownTraining);
            UNKNOWN_MONTHS
        }
    };
    Trainee {
        injured: told.injured,
        unwell_or_sore: told.unwell,
        age_years: told
            .age_years
            .or(record.and_then(|record| record.age_years)),
        days_since_overload: told.days_since_overload,
        ..Trainee::with_training_months(months)
    }
}

/// The lift with its 1RM, as told, from the log, or simulated.
fn planned_lift(
    asked: &PlanQuestion,
    library: &Library,
    (question, model): (&Question<'_>, &Model),
    trainee: Trainee,
    notes: &mut Vec<PlanNote>,
) -> Result<PlannedLift> {
    let body = carried_body(&question.movement.carrier()?, question.lifter);
    let mut log_facts = None;
    let (one_rm, one_rm_from) = match (asked.one_rm, &asked.log) {
        (Some(one_rm), _) => {
            let from = asked
                .of_set
                .map_or(OneRmSource::Given, |set| OneRmSource::OfSet {
                    load: set.0,
                    repetitions: set.1,
                });
            (that_somebody_has(one_rm)?, from)
        }
        (None, Some(log)) => {
            let (one_rm, from, facts) = one_rm_of_log(log, asked, library, question)?;
            notes.extend(
                facts
                    .body
                    .map(|(body, leaves_out)| PlanNote::LogAndBody { body, leaves_out }),
            );
            let (rows, more) = &facts.left_out;
            notes.extend(rows.iter().cloned().map(PlanNote::RowLeftOut));
            notes.extend((*more > 0).then_some(PlanNote::MoreRowsLeftOut(*more)));
            log_facts = Some(facts);
            (one_rm, from)
        }
        (None, None) => {
            let overloads = asked.methods().contains(&Method::OverloadedLowering);
            one_rm_of_model(model, question, overloads)?
        }
    };
    let trainee = match log_facts {
        Some(facts) => Trainee {
            back_from_break: facts.back_from_break,
            failed: facts.failed,
            days_since_all_out: facts.days_since_all_out,
            ..trainee
        },
        None => trainee,
    };
    Ok(PlannedLift {
        movement: asked.movement.clone(),
        title: question.movement.title.clone(),
        handling: question.movement.handling.clone(),
        one_joint: question.movement.moves_one_joint(),
        lower_body: question.movement.lifts_with_legs(),
        from_floor: question.movement.starts_on_floor(),
        trainee,
        one_rm,
        body,
        one_rm_from,
        unlikely: None,
    })
}

/// A 1RM that is told or read, and that hardly anybody of that kind has.
///
/// **Fails** where nobody has it.
fn unlikely_maximum(
    asked: &PlanQuestion,
    library: &Library,
    model: &Model,
    lift: &PlannedLift,
) -> Result<Option<UnlikelyOneRm>> {
    if matches!(lift.one_rm_from, OneRmSource::Simulated { .. }) {
        return Ok(None);
    }
    let told = asked.person.training_months;
    let most = told.unwrap_or(bounds().training_months.most());
    // The reference persons are untrained; what another file holds may be the strength of years.
    let references = [Sex::Man, Sex::Woman].map(reference_of);
    let is_reference = |name: &String| references.contains(&name.as_str());
    let fewest = match asked.lifter.as_ref().is_none_or(is_reference) {
        true => told.unwrap_or(UNKNOWN_MONTHS),
        false => UNKNOWN_MONTHS,
    };
    let odd = odd_maximum(
        library,
        model,
        (fewest, most),
        (lift.one_rm + lift.body, lift.body),
    )?;
    match odd {
        Some(odd) if odd.is_impossible() => {
            let fault = impossible(&lift.movement, lift.one_rm, odd, JudgedBy::Kind);
            Err(Error::bad(fault))
        }
        odd => Ok(odd.map(|odd| UnlikelyOneRm {
            over_expected: odd.over_expected,
            deviations: odd.deviations,
            in_pounds: odd.in_pounds.map(|total| total - lift.body),
        })),
    }
}

/// Refuses a 1RM with a barbell that is told and above every one that was lifted.
fn check_records(lift: &PlannedLift, carrier: &Carrier) -> Result<()> {
    let is_told = matches!(
        lift.one_rm_from,
        OneRmSource::Given | OneRmSource::OfSet { .. }
    );
    let most = Mass::from_kg(bounds().barbell_maximum.most());
    if is_told && *carrier == Carrier::Bar && lift.one_rm > most {
        let one_rm = lift.one_rm;
        return Err(Error::bad(PlanFault::OneRmOutside { one_rm, most }));
    }
    Ok(())
}

/// A 1RM that is told.
///
/// **Fails** above every load that is planned.
fn that_somebody_has(one_rm: Mass) -> Result<Mass> {
    let most = Mass::from_kg(bounds().planned_load.most());
    if one_rm > most {
        return Err(Error::bad(PlanFault::OneRmOutside { one_rm, most }));
    }
    Ok(one_rm)
}

/// The gym: the named one; a usual one where bar and plates are not enough.
fn gym(asked: &PlanQuestion, library: &Library, carrier: &Carrier) -> Result<Option<Gym>> {
    if let Some(name) = &asked.gym {
        return library.gym(name).map(Some);
    }
    let named = !(asked.pieces.bands.is_empty() && asked.pieces.chains.is_empty());
    if *carrier == Carrier::Bar && (!asked.searches() || named) {
        return Ok(None);
    }
    library.gym(USUAL_GYM).map(Some)
}

/// Where the safety arms of a gym stand below a lift whose load they catch; nothing where they do not reach it, and where no
/// pose of the lift is known.
fn arms_in(question: &Question<'_>, gym: &Gym) -> Option<ArmsStand> {
    let lift = SolvedLift::of(question).ok()?;
    let height = lift.arms(Some(gym))?;
    let handling = &question.movement.handling;
    Some(ArmsStand::under(&lift.points, height, handling))
}

/// Share of the 1RM that an empty bar may weigh (assumed: more leaves no room for warm-up sets).
const LIGHT_BAR_SHARE: f64 = 0.4;

/// The usual bar and plates; a lighter bar where the usual one leaves no room to warm up.
fn usual_loads(asked: &PlanQuestion, one_rm: Mass, carrier: &Carrier) -> Result<Loadings> {
    let usual = Loadings::usual(asked.plates);
    if usual.lightest().as_kg() <= LIGHT_BAR_SHARE * one_rm.as_kg() {
        return Ok(usual);
    }
    let lighter = usual_gym_with_light_bars(asked.plates);
    Loadings::of(&with_one_bar(lighter, one_rm), carrier)
}

/// Shares of the 1RM between which a working load is looked for when a bar is chosen: where novices begin, and what may
/// be missed (ACSM 2009: 60 to 70 %; the margin is assumed).
const WORKING_SHARES: [f64; 3] = [0.55, 0.60, 0.65];

/// Whether one bar of the gym makes a load near a novice's.
fn makes_working_load(gym: &Gym, bar: usize, one_rm: Mass) -> bool {
    let alone = Gym {
        bars: gym.bars.get(bar).cloned().into_iter().collect(),
        ..gym.clone()
    };
    let [least, usual, most] = WORKING_SHARES.map(|share| one_rm * share);
    Loadings::of(&alone, &Carrier::Bar).is_ok_and(|loads| {
        loads.at_most(usual).is_ok_and(|load| load.total >= least)
            || loads.at_least(usual, most).is_some()
    })
}

/// The gym with one bar, so that nobody changes bars between sets: the heaviest that leaves room to warm up,
/// else the lightest; a heavier one where only that makes a working load.
fn with_one_bar(mut gym: Gym, one_rm: Mass) -> Gym {
    gym.bars
        .sort_by(|a, b| a.mass.as_kg().total_cmp(&b.mass.as_kg()));
    let most_kg = LIGHT_BAR_SHARE * one_rm.as_kg();
    let index = gym.bars.iter().rposition(|bar| bar.mass.as_kg() <= most_kg);
    let light = index.unwrap_or(0);
    let heavier = || (light + 1..gym.bars.len()).find(|bar| makes_working_load(&gym, *bar, one_rm));
    let keep = match makes_working_load(&gym, light, one_rm) {
        true => light,
        false => heavier().unwrap_or(light),
    };
    gym.bars = gym.bars.into_iter().skip(keep).take(1).collect();
    gym
}

/// The loads of the one bar, and those between them that only a heavier bar of the gym makes, such as that bar alone.
fn with_heavier_bars(
    loads: Loadings,
    whole: &Gym,
    one_bar: &Gym,
    carrier: &Carrier,
) -> Result<Loadings> {
    let (Carrier::Bar, Some(bar)) = (carrier, one_bar.bars.first()) else {
        return Ok(loads);
    };
    let mut heavier = whole.clone();
    heavier.bars.retain(|other| other.mass > bar.mass);
    match heavier.bars.is_empty() {
        true => Ok(loads),
        false => Ok(loads.and_another_bar(Loadings::of(&heavier, carrier)?)),
    }
}

/// Where the setups of a session are looked for.
struct SetupSearch<'a> {
    asked: &'a PlanQuestion,
    question: &'a Question<'a>,
    /// The lifter of that 1RM, if there is one: what hangs beside the bar is judged by nobody else's strength.
    lifter: Option<&'a Lifter>,
    one_rm: Mass,
    table: &'a EccentricTable,
    gym: Option<&'a Gym>,
    loading: &'a Loadings,
}

impl SetupSearch<'_> {
    /// The setups that the methods need: the named pieces, or the best of the gym.
    ///
    /// A fault of the only method ends the plan; beside others it is kept as the reason.
    fn setups(
        &self,
        pieces: Setup,
        trainee: &Trainee,
        watch: &Watch,
    ) -> Result<Vec<(Method, Result<SessionSetup>)>> {
        let mut wanted = self.asked.methods();
        wanted.retain(|method| method.is_accommodating());
        if wanted.is_empty() && !pieces.items.is_empty() {
            return Err(Error::bad(PlanFault::PiecesWithoutMethod));
        }
        wanted.retain(|method| may_do(trainee, *method) == Permission::Granted);
        let setup = |method| (method, self.setup(&pieces, method, watch));
        Ok(wanted.into_iter().map(setup).collect())
    }

    fn setup(&self, pieces: &Setup, method: Method, watch: &Watch) -> Result<SessionSetup> {
        let one_rm = self.one_rm;
        let nobody = || Error::no_answer(PlanFault::NobodyOfOneRm { one_rm });
        let question = &Question {
            lifter: self.lifter.ok_or_else(nobody)?,
            ..self.question.clone()
        };
        let effort = self.asked.effort();
        let named = pieces.items.iter().any(|item| belongs(item, method));
        if !named && self.asked.methods().len() == 1 && !pieces.items.is_empty() {
            let method = method.name();
            return Err(Error::bad(PlanFault::OtherPieces { method }));
        }
        if named {
            return named_setup(
                question,
                pieces.clone(),
                self.loading,
                effort,
                (self.gym, self.table),
            );
        }
        match self.gym {
            Some(gym) => best_setup(question, gym, method, effort, (self.table, watch)),
            None => Err(Error::bad(PlanFault::NoPieces {
                method: method.name().to_owned(),
            })),
        }
    }
}

fn belongs(item: &Item, method: Method) -> bool {
    match item {
        Item::Band(_) => method == Method::Bands,
        Item::Chain(_) => method == Method::Chains,
        _ => false,
    }
}
