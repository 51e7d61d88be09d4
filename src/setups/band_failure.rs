//! What is left on the lifter when bands of a setup give way: one first, then all that helped.
//!
//! In: the plain load, the load over the range, what each kind of band makes of it. Out: [`BandFailure`]. Every setup
//! with a band is judged by it, since rubber tears and knots slip.

use crate::units::Mass;

/// Bands of one kind on both sides, over the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandsOverRange<'a> {
    /// What they add to the load at each place, kg of plain load; negative where they help.
    pub kg: &'a [f64],
    /// How many a side.
    pub a_side: u32,
}

/// What is left when bands give way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandFailure {
    /// How much more hangs on one side than on the other when the strongest band goes, at the worst place.
    pub one_side: Mass,
    /// Whether the load grows then: bands that help carry a part of it.
    pub grows: bool,
    /// The place of the range where that is, 0 to 1.
    pub worst_at: f64,
    /// What is felt there after one band went; the body included where it is the load.
    pub after_one: Mass,
    /// The most that is felt over the range when all are gone; of bands that help and bands that add, those that help.
    pub after_all: Mass,
    /// Bar and plates, or what else is the plain load, alone.
    pub on_the_bar: Mass,
}

/// The failure of the bands of a setup; `None` without bands.
///
/// ```text
/// one side = max |k_i(s)| / (2·n_i)          over the bands that help, if there are any, else over all
/// after one = load + one that helps, there    after all = max (load(s) − Σ k_i(s))     over the k_i < 0, if there are any, else over all
/// ```
/// `k_i` load of the bands of a kind, `n_i` how many a side. **Shape.** Grows with what bands carry. **Source.** Statics;
/// that a band goes at the worst place is assumed.
#[must_use]
pub fn band_failure(
    plain_kg: f64,
    load_kg: &[f64],
    bands: &[BandsOverRange<'_>],
) -> Option<BandFailure> {
    if bands.is_empty() {
        return None;
    }
    let grows = bands.iter().any(|band| band.kg.iter().any(|kg| *kg < 0.0));
    let one = |band: &BandsOverRange<'_>, kg: f64| kg / (2.0 * f64::from(band.a_side.max(1)));
    let counts = |kg: f64| if grows { (-kg).max(0.0) } else { kg.abs() };
    let strongest = |place: usize| {
        let each = bands
            .iter()
            .map(|band| one(band, counts(band.kg.get(place).copied().unwrap_or(0.0))));
        each.fold(0.0, f64::max)
    };
    let helped = |place: usize| {
        let each = bands
            .iter()
            .map(|band| -band.kg.get(place).copied().unwrap_or(0.0));
        each.filter(|kg| !grows || *kg > 0.0).sum::<f64>()
    };
    let places = || load_kg.iter().copied().enumerate();
    let most = |each: &dyn Fn((usize, f64)) -> f64| places().map(each).fold(0.0, f64::max);
    let one_kg = most(&|(place, _)| strongest(place));
    let worst = places()
        .map(|(place, _)| place)
        .find(|place| strongest(*place) >= one_kg)
        .unwrap_or(0);
    let change_kg = if grows { one_kg } else { -one_kg };
    let there_kg = load_kg.get(worst).copied().unwrap_or(0.0);
    Some(BandFailure {
        one_side: Mass::from_kg(one_kg),
        grows,
        worst_at: worst as f64 / load_kg.len().saturating_sub(1).max(1) as f64,
        after_one: Mass::from_kg(there_kg + change_kg),
        after_all: Mass::from_kg(most(&|(place, kg)| kg + helped(place))),
        on_the_bar: Mass::from_kg(plain_kg),
    })
}
