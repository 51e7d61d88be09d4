//! From a request to a planned session: who may do it, which scheme builds it.
//!
//! In: a [`SessionRequest`]. Out: a [`SessionPlan`], or a refusal. Each scheme stands in its own file.

use super::draft::SessionPlan;
use super::fitting::fitted;
use super::method::Method;
use super::remark::Remark;
use super::request::SessionRequest;
use super::rests::checked_between_sets;
use super::status::{Permission, may_do};
use crate::bounds::{Bound, bounds};
use crate::error::{Counted, Error, Result, SessionFigureFault};

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
///     handling: library.movement("bench-press")?.handling,
///     one_joint: false,
///     lower_body: false,
///     trainee: Trainee::with_training_months(48.0),
///     one_rm: Mass::from_kg(140.0),
///     body: Mass::ZERO,
///     one_rm_from: OneRmSource::Given,
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
            let mut draft = fitted(&plain)?;
            let remark = Remark::PlannedInstead {
                of: request.method,
                months: request.lift.trainee.training_months,
            };
            draft.remarks.insert(0, remark);
            draft
        }
        Permission::Granted => fitted(request)?,
    };
    Ok(SessionPlan::new(draft))
}

fn check(request: &SessionRequest) -> Result<()> {
    let one_rm_kg = request.lift.one_rm.as_kg();
    if !(one_rm_kg.is_finite() && one_rm_kg > 0.0) {
        return Err(Error::bad(SessionFigureFault::NoOneRm {
            one_rm: request.lift.one_rm,
        }));
    }
    let months = request.lift.trainee.training_months;
    if months.is_nan() || months < 0.0 {
        return Err(Error::bad(SessionFigureFault::NoMonths { months }));
    }
    let wishes = &request.wishes;
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
    request.rest_within().map(|_| ())
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
