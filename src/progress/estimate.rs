//! The one-repetition maximum from a set of several repetitions, by every published equation.
//!
//! In: lift, load, repetitions and how many were left in reserve. Out: an [`Estimate`]: the value
//! of each equation, the median of those that hold for any lift and for so many repetitions, and how far they spread.
//! Their shapes stand in [`super::repetition_equations`].

use super::published_equations::{RepetitionEquation, RepetitionEquations};
use super::repetition_equations::Form;
use crate::numeric::median;
use crate::units::Mass;

/// Most repetitions (done and in reserve) from which a 1RM is still estimated.
pub const MOST_REPETITIONS: f64 = 15.0;

/// Most repetitions for which the equations are trusted: "keep r at 10 or less"
/// (LeSuer et al. 1997, J Strength Cond Res 11:211-213, from memory).
pub const MOST_TRUSTED_REPETITIONS: f64 = 10.0;

/// What one equation says of one set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guess<'a> {
    /// The equation.
    pub equation: &'a RepetitionEquation,
    /// Its 1RM.
    pub one_rm: Mass,
    /// Whether the set's repetitions lie in the equation's range.
    pub in_range: bool,
}

/// The 1RM that a set stands for.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimate<'a> {
    /// The median of the general equations whose range holds the repetitions; the load itself after a true single.
    pub one_rm: Mass,
    /// Lowest value of the general equations that were used.
    pub lowest: Mass,
    /// Highest value of the general equations that were used.
    pub highest: Mass,
    /// Repetitions done plus those left in reserve.
    pub repetitions_to_failure: f64,
    /// A single without reserve: nothing was estimated.
    pub measured: bool,
    /// More repetitions than the equations are trusted for.
    pub beyond_range: bool,
    /// Lowest and highest value of the general equations outside their range, which are shown and not used.
    pub others: Option<(Mass, Mass)>,
    /// Each equation that has a value, in the order of the file.
    pub guesses: Vec<Guess<'a>>,
}

impl Estimate<'_> {
    /// Distance of the highest from the lowest general equation, as a share of the estimate.
    #[must_use]
    pub fn spread(&self) -> f64 {
        (self.highest - self.lowest).as_kg() / self.one_rm.as_kg()
    }
}

/// The 1RM that a set stands for.
///
/// `movement` adds the equations made for it alone; they are shown, and never enter the median.
///
/// `None` where it stands for none: no load, no repetition, a negative reserve, and beyond
/// [`MOST_REPETITIONS`], where no equation holds.
///
/// ```
/// use torquill::progress::estimate::estimate;
/// use torquill::units::Mass;
/// use torquill::library::Library;
/// let library = Library::built_in();
/// let equations = &library.published().expect("the tables are sound").estimates.repetitions;
/// let set = estimate(equations, None, Mass::from_kg(100.0), 10, 0.0).expect("ten repetitions are in range");
/// assert!((set.one_rm.as_kg() - 133.3).abs() < 0.1);
/// assert!(set.spread() > 0.05);
/// ```
pub fn estimate<'a>(
    equations: &'a RepetitionEquations,
    movement: Option<&str>,
    load: Mass,
    repetitions: u32,
    reserve: f64,
) -> Option<Estimate<'a>> {
    let to_failure = to_failure(load, repetitions, reserve)?;
    let mut guesses = guesses(equations, movement, load, to_failure);
    let mut general: Vec<f64> = guesses
        .iter()
        .filter(|guess| guess.equation.is_general() && guess.in_range)
        .map(|guess| guess.one_rm.as_kg())
        .collect();
    let measured = to_failure == 1.0;
    if measured {
        general = vec![load.as_kg()];
    }
    general.sort_by(f64::total_cmp);
    let others = guesses
        .iter()
        .filter(|guess| guess.equation.is_general() && !guess.in_range && !measured)
        .map(|guess| guess.one_rm);
    let others = others.fold(None, |ends: Option<(Mass, Mass)>, one_rm| {
        let (low, high) = ends.unwrap_or((one_rm, one_rm));
        let (low_kg, high_kg) = (
            low.as_kg().min(one_rm.as_kg()),
            high.as_kg().max(one_rm.as_kg()),
        );
        Some((Mass::from_kg(low_kg), Mass::from_kg(high_kg)))
    });
    let (lowest, highest) = (*general.first()?, *general.last()?);
    let one_rm_kg = median(&general)?;
    guesses.retain(|guess| was_made_for(&guess.equation.form, load.as_kg() / one_rm_kg));
    Some(Estimate {
        one_rm: Mass::from_kg(one_rm_kg),
        lowest: Mass::from_kg(lowest),
        highest: Mass::from_kg(highest),
        repetitions_to_failure: to_failure,
        measured,
        beyond_range: to_failure > MOST_TRUSTED_REPETITIONS,
        others,
        guesses,
    })
}

/// How far from the share of the 1RM that it was made at an equation is still shown (assumed).
const NEAR_SHARE: f64 = 0.05;

/// Whether an equation was made for sets at this share of the 1RM, by the estimate of the others: one that was made at
/// 70 % would confirm itself by its own.
fn was_made_for(form: &Form, share: f64) -> bool {
    match form {
        Form::FromShare { share: made_at, .. } => (share - made_at).abs() <= NEAR_SHARE,
        _ => true,
    }
}

/// Repetitions done and in reserve, of a set that an equation may be asked about.
fn to_failure(load: Mass, repetitions: u32, reserve: f64) -> Option<f64> {
    let is_set = load.as_kg().is_finite() && load > Mass::ZERO && repetitions > 0;
    let to_failure = f64::from(repetitions) + reserve;
    (is_set && reserve >= 0.0 && to_failure <= MOST_REPETITIONS).then_some(to_failure)
}

fn guesses<'a>(
    equations: &'a RepetitionEquations,
    movement: Option<&str>,
    load: Mass,
    to_failure: f64,
) -> Vec<Guess<'a>> {
    let wanted = |equation: &&RepetitionEquation| match &equation.movement {
        None => true,
        Some(made_for) => movement == Some(made_for.as_str()) && equation.covers(to_failure),
    };
    equations
        .equations
        .iter()
        .filter(wanted)
        .filter_map(|equation| {
            let one_rm_kg = equation.form.one_rm_kg(load.as_kg(), to_failure)?;
            Some(Guess {
                equation,
                one_rm: Mass::from_kg(one_rm_kg),
                in_range: equation.covers(to_failure),
            })
        })
        .collect()
}
