//! The recipe of a plan: model, ground, repetition, then a session for every method or day.
//!
//! In: a [`PlanQuestion`] and the library. Out: [`PlanAnswer`].

use super::plan_ground::{PlanGround, plan_ground};
use super::plan_question::{
    MethodChoice, PlanAnswer, PlanNote, PlanQuestion, PlannedSession, SessionName,
};
use super::question::Question;
use super::session_oracle::simulated_oracle;
use crate::bounds::bounds;
use crate::error::{Error, FaultKind, PersonFault, PlanFault, Result};
use crate::library::{Library, assemble};
use crate::person::longer_than_life;
use crate::resistance::Setup;
use crate::session::block::{block, check_weeks};
use crate::session::draft::SessionPlan;
use crate::session::heeded::Wished;
use crate::session::method::Method;
use crate::session::oracle::RepOracle;
use crate::session::planned_set::LOWERING;
use crate::session::published::Published;
use crate::session::remark::Remark;
use crate::session::request::SessionRequest;
use crate::session::schemes;
use crate::session::status::ADULT_YEARS;
use crate::setups::Watch;

/// Lifter that is taken when none is named.
const USUAL_LIFTER: &str = "reference-man";

/// Plans the sessions of a question; a search for setups tells how far it is.
///
/// **Fails** where the model, the 1RM or the gym cannot be had, and where no method can be planned.
pub fn plan(asked: &PlanQuestion, library: &Library, watch: &Watch) -> Result<PlanAnswer> {
    check(asked)?;
    schemes::check_wishes(&asked.wishes, &library.published()?.rests)?;
    let lifter = asked.lifter.as_deref().unwrap_or(USUAL_LIFTER);
    let model = assemble(library, lifter, &asked.movement, &asked.set)?;
    let question = Question::new(&asked.movement, &model.movement, &model.lifter);
    let ground = plan_ground(asked, library, &model, watch)?;
    let is_of_one_joint = question.movement.moves_one_joint();
    let overstated = if is_of_one_joint {
        library.misses()?.one_joint_repetitions()
    } else {
        None
    };
    let base = Base::of(asked, library.published()?, &question, &ground, overstated);
    let mut answer = match asked.weeks {
        Some(weeks) => base.weeks(weeks)?,
        None => base.sessions()?,
    };
    answer.notes.splice(..0, ground.notes.clone());
    answer.notes.extend(base.shared());
    Ok(answer)
}

/// Most repetitions of one lift in a session, assumed: twelve sets of ten; hundreds break muscle down (common practice).
const MOST_REPETITIONS: u32 = 120;

/// Refuses wishes that cannot be, and those that nothing heeds.
fn check_wishes(asked: &PlanQuestion) -> Result<()> {
    let wishes = &asked.wishes;
    let bounds = bounds();
    let loss = wishes.velocity_loss;
    let fault = if let Some(share) = loss.filter(|share| !bounds.velocity_loss.holds(*share)) {
        PlanFault::LossOutside { share }
    } else if let Some(reserve) = wishes
        .reserve
        .filter(|reserve| !bounds.log_reserve.holds(f64::from(*reserve)))
    {
        let most = bounds.log_reserve.most_of_them();
        PlanFault::ReserveOutside { reserve, most }
    } else if let (Some(sets), Some(repetitions)) = (wishes.sets, wishes.repetitions)
        && sets.saturating_mul(repetitions) > MOST_REPETITIONS
    {
        let most = MOST_REPETITIONS;
        PlanFault::ManyRepetitions {
            sets,
            repetitions,
            most,
        }
    } else if wishes.sets_a_week == Some(0) {
        PlanFault::NoSetsAWeek
    } else if let (Some(sets), Some(most)) = (wishes.sets, wishes.sets_a_week)
        && sets > most
    {
        PlanFault::SetsAboveWeek { sets, most }
    } else if let Some(wished) = unheeded(asked) {
        let in_block = asked.weeks.is_some();
        PlanFault::Unheeded {
            option: wished.option(),
            planned: asked.methods().into_iter().map(Method::name).collect(),
            in_block,
            heeding: wished.heeding(in_block),
        }
    } else {
        return Ok(());
    };
    Err(Error::bad(fault))
}

/// The first wish that nothing in the plan heeds.
fn unheeded(asked: &PlanQuestion) -> Option<Wished> {
    let of_plan = [
        (Wished::Effort, asked.effort.is_some()),
        (
            Wished::LastOverload,
            asked.person.days_since_overload.is_some(),
        ),
    ];
    let of_plan = of_plan.into_iter().filter(|(_, is_told)| *is_told);
    let mut told = Wished::told(&asked.wishes);
    told.extend(of_plan.map(|(wished, _)| wished));
    let methods = asked.methods();
    let is_heeded = |wished: Wished| {
        let mut methods = methods.iter();
        methods.any(|method| wished.is_heeded(*method, asked.weeks.is_some()))
    };
    told.into_iter().find(|wished| !is_heeded(*wished))
}

/// Refuses people and wishes that nothing is planned for.
pub(super) fn check(asked: &PlanQuestion) -> Result<()> {
    let effort = asked.effort();
    if !bounds().planned_effort.holds(effort) {
        return Err(Error::bad(PlanFault::EffortOutside { effort }));
    }
    let years = asked.person.age_years;
    if let Some(years) = years.filter(|age| !bounds().trainee_age.holds(*age)) {
        return Err(Error::bad(PlanFault::AgeOutside { years }));
    }
    if let Some(age) = years.filter(|age| *age < ADULT_YEARS) {
        let least = ADULT_YEARS;
        return Err(Error::bad(PersonFault::NoAdult { age, least }));
    }
    let bound = &bounds().training_months;
    let months = asked.person.training_months;
    if let Some(months) = months.filter(|months| !bound.holds(*months)) {
        let most = bound.most();
        return Err(Error::bad(PlanFault::MonthsOutside { months, most }));
    }
    let lived = years.zip(months);
    if let Some(fault) = lived.and_then(|(age, months)| longer_than_life(age, months)) {
        return Err(Error::bad(fault));
    }
    check_wishes(asked)?;
    asked.weeks.map_or(Ok(()), check_weeks)?;
    if asked.start.is_some() && asked.weeks.is_none() && asked.log.is_none() {
        return Err(Error::bad(PlanFault::StartOfNothing));
    }
    if asked.methods == MethodChoice::All && asked.weeks.is_some() {
        return Err(Error::bad(PlanFault::BlockOfAll));
    }
    Ok(())
}

/// What every request of a question shares, with the repetitions it predicts from.
struct Base<'a> {
    asked: &'a PlanQuestion,
    ground: &'a PlanGround,
    published: &'a Published,
    methods: Vec<Method>,
    oracle: Option<RepOracle<'a>>,
    hung: Vec<(Method, RepOracle<'a>)>,
}

impl<'a> Base<'a> {
    fn of(
        asked: &'a PlanQuestion,
        published: &'a Published,
        question: &Question<'a>,
        ground: &'a PlanGround,
        overstated: Option<f64>,
    ) -> Self {
        let oracle = |hung: &Setup| {
            let lifter = ground.lifter.as_ref()?;
            let oracle = simulated_oracle(published, question, lifter, hung, LOWERING).ok()?;
            Some(RepOracle {
                repetitions_overstated: overstated,
                ..oracle
            })
        };
        let hung = ground.setups.iter().filter_map(|(method, setup)| {
            let hung = &setup.as_ref().ok()?.hung;
            oracle(hung).map(|oracle| (*method, oracle))
        });
        Self {
            asked,
            ground,
            published,
            methods: asked.methods(),
            oracle: oracle(&Setup::default()),
            hung: hung.collect(),
        }
    }

    fn request(&self, method: Method) -> Result<SessionRequest<'_>> {
        let ground = self.ground;
        let mut request =
            SessionRequest::usual(self.published, ground.lift.clone(), method, &ground.loading);
        request.wishes = self.asked.wishes;
        if let (Some(PlanNote::SetsShared { each, .. }), None) = (self.shared(), self.asked.weeks) {
            request.wishes.sets_a_week = Some(each);
        }
        request.without_arms = ground.without_arms;
        request.arms = ground.arms;
        request.oracle = self.oracle.as_ref();
        let hung = self.hung.iter().find(|(known, _)| *known == method);
        request.setup_oracle = hung.map(|(_, oracle)| oracle);
        let setup = ground.setups.iter().find(|(known, _)| *known == method);
        if let Some((_, setup)) = setup {
            request.setup = Some(&setup.as_ref().map_err(Clone::clone)?.setup);
        }
        Ok(request)
    }

    /// How the sets that a week allows are shared out on the days of this lift.
    fn shared(&self) -> Option<PlanNote> {
        let most = self.asked.wishes.sets_a_week?;
        let lift = &self.ground.lift;
        let table = &self.published.straight;
        let guidance = table.guidance_for(lift.level(), lift.one_joint);
        // A block has two days whatever the guidance.
        let days = self
            .asked
            .weeks
            .map_or(guidance.days_a_week.0, |_| 2)
            .max(1);
        let each = (most / days).max(1);
        Some(PlanNote::SetsShared { most, days, each })
    }

    fn sessions(&self) -> Result<PlanAnswer> {
        let mut answer = PlanAnswer {
            sessions: Vec::new(),
            refused: Vec::new(),
            notes: Vec::new(),
        };
        let mut there_too = Vec::new();
        for method in &self.methods {
            let planned = self
                .request(*method)
                .and_then(|request| schemes::plan(&request));
            match planned {
                // What is planned for everything a novice asks for stands there once.
                Ok(plan) if is_there(&answer.sessions, *method, &plan) => {
                    there_too.push((*method, plan.draft.method));
                }
                Ok(plan) => answer.sessions.push(PlannedSession {
                    name: named(*method, plan.draft.method),
                    plan,
                }),
                Err(fault) if self.methods.len() > 1 && fault.kind() == FaultKind::NoAnswer => {
                    answer.refused.push((*method, fault));
                }
                Err(fault) => return Err(fault),
            }
        }
        for session in &mut answer.sessions {
            session.plan.draft.remarks.extend(self.days_off());
        }
        answer.notes.extend(self.in_place_too(&there_too));
        match answer.refused.first() {
            Some((_, fault)) if answer.sessions.is_empty() => Err(fault.clone()),
            _ => Ok(answer),
        }
    }

    /// That there were weeks without a session before the first one.
    fn days_off(&self) -> Option<Remark> {
        let days = self.ground.lift.days_off()?;
        Some(Remark::DaysOff { days })
    }

    /// That one session stands in place of several methods.
    fn in_place_too(&self, methods: &[(Method, Method)]) -> Option<PlanNote> {
        let (_, planned) = methods.first()?;
        Some(PlanNote::InPlaceToo {
            planned: *planned,
            of: methods.iter().map(|(method, _)| *method).collect(),
            comes_back: self.ground.lift.trainee.comes_back(),
        })
    }

    fn weeks(&self, weeks: u32) -> Result<PlanAnswer> {
        let mut block = block(&self.request(self.methods[0])?, weeks)?;
        let first = block
            .weeks
            .iter_mut()
            .flat_map(|week| &mut week.days)
            .next();
        if let Some(first) = first {
            first.plan.draft.remarks.extend(self.days_off());
        }
        let start = self.asked.start;
        let days = block.weeks.into_iter().flat_map(|week| {
            week.days.into_iter().map(move |day| PlannedSession {
                name: SessionName::Day {
                    weeks: (week.week, week.until),
                    day: day.day,
                    purpose: day.purpose,
                    date: start.and_then(|start| start.after(7 * (week.week - 1) + day.day - 1)),
                },
                plan: day.plan,
            })
        });
        Ok(PlanAnswer {
            sessions: days.collect(),
            refused: Vec::new(),
            notes: Vec::new(),
        })
    }
}

/// Whether the sessions hold already what is planned in place of a method.
fn is_there(sessions: &[PlannedSession], asked: Method, plan: &SessionPlan) -> bool {
    let planned = plan.draft.method;
    asked != planned
        && sessions
            .iter()
            .any(|known| known.plan.draft.method == planned)
}

/// The session of a method, or the one that takes its place.
fn named(asked: Method, planned: Method) -> SessionName {
    if asked == planned {
        SessionName::Of(asked)
    } else {
        SessionName::InPlace { of: asked, planned }
    }
}
