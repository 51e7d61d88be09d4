//! What bands and chains do over their own length: tension over length, weight over height.
//!
//! In: a band, a chain. Out: figures of their laws.

use super::sheet::Sheet;
use crate::movement::Measure;
use crate::narrative::load_law_words::{
    BAND_LENGTH, BAND_PULL, CHAIN_HEIGHT, CHAIN_WEIGHT, DOUBLED, LOOPED, SINGLE, STRAIGHT, TAUT,
    band_law_words, chain_law_words, told_length_m, told_pull,
};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Extent, Fill, LineChart, Marker, Panel, Role, Series};
use crate::resistance::{Band, Chain, ChainHang, Hang};
use crate::units::{STANDARD_GRAVITY_M_S2, System};

/// Points of a law.
const POINTS: u32 = 120;

/// Places from nothing to a length, m.
fn places(most_m: f64) -> impl Iterator<Item = f64> {
    (0..=POINTS).map(move |step| most_m * f64::from(step) / f64::from(POINTS))
}

/// Tension over the distance from anchor to bar, single and doubled, with the scatter of bands of one label.
#[must_use]
pub fn band_law(band: &Band, units: System) -> Sheet {
    let (length, force) = (units.length_unit(), units.load_unit(Measure::Force));
    let most_m = band.safe_stretch() * band.rest_length().as_m();
    let hangs = [
        (Hang::Doubled, DOUBLED, most_m / 2.0),
        (Hang::Single, SINGLE, most_m),
    ];
    let (mut series, mut fills, mut markers) = (Vec::new(), Vec::new(), Vec::new());
    for (index, (hang, name, far_m)) in hangs.into_iter().enumerate() {
        let curve = |value: &dyn Fn(f64) -> f64| -> Vec<[f64; 2]> {
            let point = |m: f64| [length.of(m), force.of(value(band.force_n(m, hang)))];
            places(far_m).map(point).collect()
        };
        let role = Role::Series(index);
        fills.push(Fill {
            upper: curve(&|n| band.spread_n(n).1),
            lower: curve(&|n| band.spread_n(n).0),
            role,
        });
        series.push(Series::new(name, curve(&|n| n), role));
        let taut = length.of(band.taut_length_m(hang));
        // Named once: so near to each other two words leave no room for the names of the curves.
        let named = if index == 0 { TAUT } else { "" };
        markers.push(Marker::new([taut, 0.0], named, role));
        let told_m = told_length_m(band);
        let pull = force.of(band.force_n(told_m, hang));
        let words = told_pull(pull, force);
        markers.push(Marker::new([length.of(told_m), pull], words, role));
    }
    let panel = Panel {
        fills,
        markers,
        ..Panel::new(Axis::new(BAND_PULL, force.symbol), series)
    };
    let level = Axis::new(BAND_LENGTH, length.symbol).reaching(Extent::Data);
    Sheet::lines(
        &band_law_words(band, units),
        LineChart::new(level, vec![panel]),
    )
}

/// Weight of the part in the air over the height of the hook, hung by its end and by its middle.
#[must_use]
pub fn chain_law(chain: &Chain, units: System) -> Sheet {
    let (length, force) = (units.length_unit(), units.load_unit(Measure::Force));
    let most_m = 1.25 * (chain.length().as_m() + chain.leader().length.as_m());
    let hangs = [
        (ChainHang::Straight, STRAIGHT),
        (ChainHang::DoubleLooped, LOOPED),
    ];
    let series = hangs.into_iter().enumerate().map(|(index, (hang, name))| {
        let point = |m: f64| {
            let kg = chain.hanging_at(m, hang).mass_kg;
            [length.of(m), force.of(kg * STANDARD_GRAVITY_M_S2)]
        };
        Series::new(
            name,
            places(most_m).map(point).collect(),
            Role::Series(index),
        )
    });
    let panel = Panel::new(Axis::new(CHAIN_WEIGHT, force.symbol), series.collect());
    let level = Axis::new(CHAIN_HEIGHT, length.symbol).reaching(Extent::Data);
    Sheet::lines(
        &chain_law_words(chain, units),
        LineChart::new(level, vec![panel]),
    )
}
