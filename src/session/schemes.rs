//! From a request to a planned session: who may do it, which scheme builds it.
//!
//! In: a [`SessionRequest`]. Out: a [`SessionPlan`], or a refusal. Each scheme stands in its own file.

use super::alone::stands_alone;
use super::draft::{Draft, SessionPlan};
use super::fitting::fitted;
use super::heeded::Wished;
use super::maximum_test::TestedMaximum;
use super::method::Method;
use super::novice_start::{begin, begins_today, start_today};
use super::planned_set::{PlannedSet, SetKind};
use super::published::{DeloadRule, RestTable};
use super::remark::Remark;
use super::request::{DayAim, NOVICE_RESERVE, SessionRequest, SessionWishes, first_time};
use super::rests::checked_between_sets;
use super::status::{Permission, may_do};
use super::straight::RESERVE;
use crate::bounds::{Bound, bounds};
use crate::error::{Counted, Error, Result, SchemeFault, SessionFigureFault};
use crate::setups::FULL_SIZE_KG;
use crate::units::Mass;

/// Repetitions more in reserve on an easier day (common practice).
pub(super) const EASIER_RESERVE: u32 = 2;

/// Plans a session.
///
/// Every set is simulated and keeps its reserve, or there is no plan. A novice gets plain progressive overload whatever the method asked for, with the reason among the
/// remarks. **Fails** when the lifter may not do it (no answer, with what to do instead), when a figure
/// asked for makes no sense (bad input), and as the scheme does.
///
/// ```
/// use torquill::library::Library;
/// use torquill::session::method::Method;
/// use torquill::session::request::SessionRequest;
/// use torquill::session::schemes::plan;
/// use torquill::session::status::Trainee;
/// use torquill::session::strength::{OneRmSource, PlannedLift};
/// use torquill::setups::{Caution, Loadings};
/// use torquill::units::{Mass, System};
///
/// let library = Library::built_in();
/// let lift = PlannedLift {
///     movement: "bench-press".to_owned(),
///     title: "Bench press".to_owned(),
///     handling: library.movement("bench-press")?.handling,
///     one_joint: false,
///     lower_body: false,
///     from_floor: false,
///     trainee: Trainee::with_training_months(48.0),
///     one_rm: Mass::from_kg(140.0),
///     body: Mass::ZERO,
///     one_rm_from: OneRmSource::Given,
///     unlikely: None,
/// };
/// let gym = Loadings::usual(System::Metric);
/// let session = plan(&SessionRequest::usual(
///     library.published()?,
///     lift,
///     Method::OverloadedLowering,
///     &gym,
/// ))?;
/// assert!(session.working_sets().all(|set| (147.0..=154.0).contains(&set.load.total.as_kg())));
/// assert_eq!(session.cautions()[0], Caution::Disclaimer);
/// # Ok::<(), torquill::error::Error>(())
/// ```
pub fn plan(request: &SessionRequest) -> Result<SessionPlan> {
    check(request)?;
    let draft = match may_do(&request.lift.trainee, request.method) {
        Permission::Refused(fault) => return Err(Error::no_answer(fault)),
        Permission::PlainInstead => {
            let mut plain = request.with_method(Method::Straight);
            plain.aim = request.aim;
            plain.wishes.reserve = request.wishes.reserve;
            plain.wishes.rest_between = request.wishes.rest_between;
            plain.wishes.sets_a_week = request.wishes.sets_a_week;
            let mut draft = as_permitted(&plain)?;
            let remark = Remark::PlannedInstead {
                of: request.method,
                months: request.lift.trainee.training_months,
                years: request.lift.trainee.novice_by_age(),
            };
            draft.remarks.insert(0, remark);
            let is_lighter = request.lift.trainee.comes_back() && !begins_today(&plain);
            let kept = match is_lighter {
                true => &[Wished::SetsAWeek][..],
                false => &[Wished::SetsAWeek, Wished::Reserve],
            };
            draft.remarks.extend(left_out(request, kept));
            draft
        }
        Permission::Granted => {
            let planned = as_it_may_be_asked(request);
            let mut draft = as_permitted(&planned)?;
            if request.lift.trainee.comes_back() {
                let kept = match begins_today(&planned) {
                    true => &[Wished::SetsAWeek, Wished::Sets, Wished::Reserve][..],
                    false => &[Wished::SetsAWeek],
                };
                draft.remarks.extend(left_out(request, kept));
            }
            draft
        }
    };
    let mut draft = draft;
    draft
        .remarks
        .extend(stands_alone(request, &draft).map(Remark::Alone));
    draft.remarks.extend(request.arms.map(Remark::ArmsAt));
    draft.remarks.extend(not_tested_yet(request, &draft));
    draft.remarks.extend(low_plates(&draft));
    draft.remarks.extend(not_made(request, &draft));
    draft.remarks.extend(to_failure(&draft));
    Ok(SessionPlan::new(draft))
}

/// The request without load, repetitions and loss of velocity where somebody comes back: the lighter session has its own.
fn as_it_may_be_asked<'a>(request: &SessionRequest<'a>) -> SessionRequest<'a> {
    let mut planned = request.with_method(request.method);
    planned.wishes = request.wishes;
    if request.lift.trainee.comes_back() {
        planned.wishes.load = None;
        planned.wishes.repetitions = None;
        planned.wishes.velocity_loss = None;
    }
    planned
}

/// The draft of a method that may be done: a novice's as the first of the weeks, lighter for who comes back.
fn as_permitted(request: &SessionRequest) -> Result<Draft> {
    let start = start_today(request)?;
    let mut asked = request.with_method(request.method);
    asked.wishes = request.wishes;
    asked.aim = start.map_or(request.aim, |start| Some(start.aim));
    let mut draft = match request.lift.trainee.comes_back() {
        true => lighter_session(&asked, start.is_some())?,
        false => fitted(&asked)?,
    };
    if let Some(start) = start {
        begin(&asked, &start, &mut draft)?;
    }
    Ok(draft)
}

/// What was asked for and does not stand in the session that is planned instead, but for what is kept.
pub(super) fn left_out(request: &SessionRequest, kept: &[Wished]) -> Option<Remark> {
    // A block says it once for all of its days.
    if request.aim.is_some() {
        return None;
    }
    let told = Wished::told(&request.wishes).into_iter();
    let left = told.filter(|wished| !kept.contains(wished));
    let options: Vec<&str> = left.map(Wished::option).collect();
    (!options.is_empty()).then_some(Remark::LeftOut { options })
}

fn not_tested_yet(request: &SessionRequest, draft: &Draft) -> Option<Remark> {
    draft.lift.untested()?;
    let eased = first_time(request.published, &draft.lift);
    let trainee = &draft.lift.trainee;
    let may_test = !trainee.injured && !trainee.unwell_or_sore;
    Some(Remark::NotTestedYet {
        eased: (eased < 1.0).then_some(eased),
        finds: may_test.then(|| TestedMaximum::of(trainee)),
    })
}

fn to_failure(draft: &Draft) -> Option<Remark> {
    let work = || draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    let sets = work().filter(|set| set.is_to_failure()).count();
    let of = work().count();
    (sets > 0).then_some(Remark::ToFailure { sets, of })
}

/// Loads that differ by less are one, kg: less than any scale shows.
const SAME_KG: f64 = 0.01;

/// A load that was asked for and cannot be set up as asked; where plates end, or something lighter is planned, that is told.
fn not_made(request: &SessionRequest, draft: &Draft) -> Option<Remark> {
    let asked = request.wishes.load?;
    let means_the_bar = [Method::Straight, Method::Pyramid, Method::Clusters];
    let is_told = draft
        .remarks
        .iter()
        .any(|remark| matches!(remark, Remark::PlatesEnd { .. }));
    let is_other = draft.method != request.method || request.lift.trainee.comes_back();
    if is_told || is_other || !means_the_bar.contains(&draft.method) {
        return None;
    }
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    let taken = work.map(|set| set.load.total).reduce(Mass::max)?;
    let is_made = (asked.as_kg() - taken.as_kg()).abs() < SAME_KG;
    (!is_made).then_some(Remark::LoadNotMade { asked, taken })
}

fn low_plates(draft: &Draft) -> Option<Remark> {
    let mut sets = draft.sets.iter();
    let low = draft.lift.from_floor && sets.any(|set| !set.load.has_full_size());
    low.then_some(Remark::LowPlates {
        full: Mass::from_kg(FULL_SIZE_KG),
    })
}

/// A session for somebody ill, unusually sore or back from a break: straight sets as in an easier week; `begins` is whether it is
/// where a novice begins, who keeps what was asked for in reserve or more.
fn lighter_session(request: &SessionRequest, begins: bool) -> Result<Draft> {
    let mut well = request.with_method(Method::Straight);
    well.wishes.rest_between = request.wishes.rest_between;
    well.wishes.sets_a_week = request.wishes.sets_a_week;
    // In a block it is the day's own load that gets lighter.
    well.aim = request.aim;
    let usual = fitted(&well)?;
    let (heaviest, sets) = work_of(&usual).ok_or_else(|| {
        let reserve = request.reserve(RESERVE);
        Error::no_answer(SchemeFault::NothingHolds { reserve })
    })?;
    let aim = DayAim {
        share: heaviest.share,
        repetitions: heaviest.repetitions(),
        reserve: heaviest.reserve,
        sets,
    };
    let mut lighter = well.with_method(Method::Straight);
    lighter.wishes = well.wishes;
    lighter.aim = Some(eased(aim, &request.published.straight.weeks.deload));
    let mut draft = fitted(&lighter)?;
    let now = work_of(&draft).map_or((heaviest.load.total, sets), |(set, sets)| {
        (set.load.total, sets)
    });
    let remark = Remark::LighterWhileUnwell {
        of: request.method,
        loads: (heaviest.load.total, now.0),
        sets: (sets, now.1),
    };
    draft.remarks.insert(0, remark);
    let asked = request.wishes.reserve.filter(|_| begins);
    let kept = work_of(&draft).map(|(set, _)| set.reserve);
    if let (Some(asked), Some(kept)) = (asked, kept)
        && asked < NOVICE_RESERVE
    {
        draft.remarks.push(Remark::ReserveRaised { asked, kept });
    }
    Ok(draft)
}

/// The heaviest working set of a draft, and how many there are.
fn work_of(draft: &Draft) -> Option<(&PlannedSet, u32)> {
    let work = || draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    let heaviest = work().max_by(|a, b| a.share.total_cmp(&b.share))?;
    Some((heaviest, work().count() as u32))
}

/// The same day in an easier week: less load, fewer sets, more in reserve.
pub(super) fn eased(aim: DayAim, rule: &DeloadRule) -> DayAim {
    let (share, sets) = rule.left;
    DayAim {
        share: aim.share * share,
        reserve: aim.reserve + EASIER_RESERVE,
        sets: ((f64::from(aim.sets) * sets).ceil() as u32).max(1),
        ..aim
    }
}

fn check(request: &SessionRequest) -> Result<()> {
    let one_rm_kg = request.lift.one_rm.as_kg();
    let whole_kg = one_rm_kg + request.lift.body.as_kg();
    // Nothing added to the body is a maximum too.
    if !(one_rm_kg.is_finite() && one_rm_kg >= 0.0 && whole_kg > 0.0) {
        return Err(Error::bad(SessionFigureFault::NoOneRm {
            one_rm: request.lift.one_rm,
        }));
    }
    let months = request.lift.trainee.training_months;
    if months.is_nan() || months < 0.0 {
        return Err(Error::bad(SessionFigureFault::NoMonths { months }));
    }
    check_wishes(&request.wishes, &request.published.rests)
}

/// Refuses figures that are no session.
///
/// **Fails** with the first count or rest that is none, or more than is planned.
pub fn check_wishes(wishes: &SessionWishes, rests: &RestTable) -> Result<()> {
    let bounds = bounds();
    for (what, asked, bound) in [
        (Counted::Sets, wishes.sets, &bounds.planned_sets),
        (Counted::InASet, wishes.repetitions, &bounds.set_repetitions),
        (Counted::InAGroup, wishes.group, &bounds.group_repetitions),
        (
            Counted::InAll,
            wishes.total_repetitions,
            &bounds.session_repetitions,
        ),
    ] {
        within(what, asked, bound)?;
    }
    if let Some(rest) = wishes.rest_between {
        checked_between_sets(rest)?;
    }
    rests
        .in_cluster(wishes.rest_within, rests.in_cluster.least)
        .map(|_| ())
}

fn within(what: Counted, asked: Option<u32>, bound: &Bound) -> Result<()> {
    let most = bound.most_of_them() as u32;
    match asked {
        Some(0) => Err(Error::bad(SessionFigureFault::NoneOf { what })),
        Some(count) if count > most => Err(Error::bad(SessionFigureFault::TooMany {
            what,
            count,
            most,
        })),
        _ => Ok(()),
    }
}
