//! What bands, chains, cables and sleds pull at a worked pose, as equations.
//!
//! In: an item as it hangs, the load's place, what it exerts. Out: lines of the sheet, the item's pull among them.

use super::quantities::rounded;
use super::worked_sheet::WorkedSheet;
use crate::movement::Carrier;
use crate::numeric::Formula;
use crate::resistance::{
    BandPull, Cable, ChainHang, Hang, HungBand, HungChain, PullShape, Rubber, Setup, Sled,
};
use crate::study::WorkedLoad;

/// An item of the load on the sheet.
pub(super) struct HungItem<'a> {
    /// The load.
    pub load: &'a WorkedLoad,
    /// How it is taken.
    pub carrier: &'a Carrier,
    /// Number of the item.
    pub number: usize,
    /// What the item exerts along the load, N.
    pub part_n: f64,
    /// The item in words.
    pub words: String,
}

/// Below this a pull is none, N.
const NOTHING_N: f64 = 1.0e-9;
/// A share that differs from 1 by less is 1.
const WHOLE: f64 = 1.0e-9;

impl HungItem<'_> {
    /// A letter with the item's number.
    pub(super) fn symbol(&self, letter: &str) -> String {
        format!("{letter}({})", self.number)
    }

    /// Nothing but the value and the reason for it.
    fn nothing(&self, sheet: &mut WorkedSheet, why: &str) -> Formula {
        let meaning = format!("{}: {why}", self.words);
        sheet.given(self.symbol("W"), self.part_n + 0.0, ("N", 2), meaning)
    }

    /// What the load feels of a pull: all of it, or a share by direction and by what is lost.
    fn felt(&self, sheet: &mut WorkedSheet, pull: Formula, pull_n: f64, meaning: &str) -> Formula {
        let share = self.part_n / pull_n;
        let formula = if (share - 1.0).abs() <= WHOLE {
            pull
        } else {
            pull * sheet.given(self.symbol("i"), share, ("", 4), meaning)
        };
        sheet.follows(self.symbol("W"), formula, self.part_n, ("N", 2), "")
    }
}

/// A band: its distance, its stretch, what one pulls, what all of them do.
///
/// ```text
/// L = x/taut length,   T = folds·A·2·(L − 1/L²)·(C1 + C2/L),   W = pieces·T·i
/// ```
pub(super) fn band(sheet: &mut WorkedSheet, at: &HungItem<'_>, hung: &HungBand) -> Formula {
    let setup: &Setup = &at.load.setup;
    let distance_m = hung.distance_m(&at.load.point, setup.start_x_m());
    let meaning = format!("{}: from its anchor to the load", at.words);
    let distance = sheet.given(at.symbol("x"), distance_m, ("m", 4), meaning);
    let taut_m = hung.band.taut_length_m(hung.hang);
    let taut = taut_length(sheet, at, hung, taut_m);
    if distance_m <= taut_m || at.part_n.abs() < NOTHING_N {
        return at.nothing(sheet, "it is slack");
    }
    let stretch = hung.band.stretch(distance_m, hung.hang);
    let stretch = sheet.follows(at.symbol("L"), distance / taut, stretch, ("", 4), "stretch");
    let one_n = hung.band.force_n(distance_m, hung.hang);
    let one = one_band(sheet, at, hung, &stretch);
    let one = sheet.follows(at.symbol("T"), one, one_n, ("N", 2), "pull of one band");
    let pieces = hung.side.pieces(hung.count, at.carrier);
    let pull = Formula::from(pieces) * one;
    let all_n = hung.pull_n(&at.load.point, setup.start_x_m(), at.carrier);
    at.felt(
        sheet,
        pull,
        all_n,
        "share of it that the load feels: by its direction, and on the way down less what the rubber keeps",
    )
}

/// Distance at which the band is just taut.
fn taut_length(
    sheet: &mut WorkedSheet,
    at: &HungItem<'_>,
    hung: &HungBand,
    taut_m: f64,
) -> Formula {
    let rest_m = hung.band.rest_length().as_m();
    match hung.hang {
        Hang::Doubled => {
            let rest = sheet.given(
                at.symbol("l"),
                rest_m,
                ("m", 4),
                "length of the band laid flat",
            );
            let meaning = "taut from here on: doubled over the bar";
            sheet.follows(
                at.symbol("L0"),
                rest / 2.0.into(),
                taut_m,
                ("m", 4),
                meaning,
            )
        }
        Hang::Choked => {
            let meaning = "taut from here on: choked round the anchor, which takes up some of it";
            sheet.given(at.symbol("L0"), taut_m, ("m", 4), meaning)
        }
        Hang::Auto | Hang::Single => {
            let meaning = "taut from here on: its length laid flat";
            sheet.given(at.symbol("L0"), taut_m, ("m", 4), meaning)
        }
    }
}

/// The pull of one band at its stretch.
fn one_band(
    sheet: &mut WorkedSheet,
    at: &HungItem<'_>,
    hung: &HungBand,
    stretch: &Formula,
) -> Formula {
    let l = || stretch.clone();
    let bent = |first: Formula, second: Formula| {
        Formula::from(2.0) * (l() - Formula::from(1.0) / l().square()) * (first + second / l())
    };
    let mut pull = match hung.band.pull() {
        BandPull::Dimensions {
            width_m,
            thickness_m,
            layers,
            strands,
            rubber,
        } => {
            let (width_mm, thickness_mm) = (1000.0 * width_m, 1000.0 * thickness_m);
            let count = f64::from(layers * strands);
            let of = format!(
                "unstretched rubber: {count} strands of {} \u{d7} {} mm",
                rounded(width_mm, 2),
                rounded(thickness_mm, 2)
            );
            let section = sheet.given(
                at.symbol("A"),
                width_mm * thickness_mm * count,
                ("mm²", 2),
                of,
            );
            let (first, second) = constants(sheet, at, rubber);
            section * bent(first, second)
        }
        BandPull::Readings(fitted) => match fitted.shape() {
            PullShape::TwoConstants { a_n, b_n } => {
                let first = sheet.given(at.symbol("a"), a_n, ("N", 3), "fitted to its readings");
                let second = sheet.given(at.symbol("b"), b_n, ("N", 3), "");
                bent(first, second)
            }
            PullShape::Bent { scale_n, exponent } => {
                let rubber = Rubber::treloar_1944();
                let scale = sheet.given(
                    at.symbol("K"),
                    scale_n,
                    ("N", 3),
                    "pull at L = 2, fitted to its readings",
                );
                let power = sheet.given(at.symbol("k"), exponent, ("", 4), "");
                let at_two = rubber.nominal_stress_pa(2.0) / 1.0e6;
                let at_two = sheet.given(
                    at.symbol("s2"),
                    at_two,
                    ("N/mm²", 5),
                    "stress of its rubber at L = 2",
                );
                let (first, second) = constants(sheet, at, &rubber);
                let stress = bent(first, second) / at_two;
                scale * (power * stress.ln()).exp()
            }
        },
    };
    if hung.hang == Hang::Doubled {
        pull = Formula::from(2.0) * pull;
    }
    if hung.band.worn() > 0.0 {
        let worn = sheet.given(
            at.symbol("worn"),
            hung.band.worn(),
            ("", 3),
            "share lost to wear",
        );
        pull = (Formula::from(1.0) - worn) * pull;
    }
    pull
}

/// Both constants of a rubber.
fn constants(sheet: &mut WorkedSheet, at: &HungItem<'_>, rubber: &Rubber) -> (Formula, Formula) {
    let [first, second] = [rubber.c1, rubber.c2].map(|constant| constant.as_pa() / 1.0e6);
    (
        sheet.given(
            at.symbol("C1"),
            first,
            ("N/mm²", 4),
            "constants of the rubber",
        ),
        sheet.given(at.symbol("C2"), second, ("N/mm²", 4), ""),
    )
}

/// A chain: how much of it is off the floor, and what that weighs.
///
/// ```text
/// o = clamp(z − leader, 0, length/n),   m = pieces·n·ρ·o + leaders,   W = m·g·i
/// ```
pub(super) fn chain(
    sheet: &mut WorkedSheet,
    at: &HungItem<'_>,
    hung: &HungChain,
    g: &Formula,
) -> Formula {
    let height_m = at.load.point.z_m - hung.floor.as_m();
    let meaning = format!(
        "{}: height of the load above what the chain lies on",
        at.words
    );
    let height = sheet.given(at.symbol("z"), height_m, ("m", 4), meaning);
    let hanging = hung.chain.hanging_at(height_m, hung.hang);
    if hanging.mass_kg <= 0.0 || at.part_n.abs() < NOTHING_N {
        return at.nothing(sheet, "all of it lies");
    }
    let strands = match hung.hang {
        ChainHang::Straight => 1.0,
        ChainHang::DoubleLooped => 2.0,
    };
    let (leader, length_m) = (hung.chain.leader(), hung.chain.length().as_m());
    let leader_m = leader.length.as_m();
    let off_floor = if height_m - leader_m >= length_m / strands {
        let length = sheet.given(at.symbol("l"), length_m, ("m", 4), "its whole length");
        let meaning = "length of a strand off the floor: all of it";
        sheet.follows(
            at.symbol("o"),
            length / strands.into(),
            length_m / strands,
            ("m", 4),
            meaning,
        )
    } else if leader_m > 0.0 {
        let own = sheet.given(at.symbol("l"), leader_m, ("m", 4), "length of its leader");
        let off_m = (height_m - leader_m).max(0.0);
        if off_m > 0.0 {
            sheet.follows(
                at.symbol("o"),
                height - own,
                off_m,
                ("m", 4),
                "length of a strand off the floor",
            )
        } else {
            sheet.given(
                at.symbol("o"),
                0.0,
                ("m", 4),
                "length of a strand off the floor",
            )
        }
    } else {
        sheet.follows(
            at.symbol("o"),
            height,
            height_m,
            ("m", 4),
            "length of a strand off the floor",
        )
    };
    let density = hung.chain.density().as_kg_m();
    let density = sheet.given(
        at.symbol("ρ"),
        density,
        ("kg/m", 4),
        "mass of a metre of chain",
    );
    let pieces = hung.side.pieces(hung.count, at.carrier);
    let mut mass = Formula::from(pieces * strands) * density * off_floor;
    let links_kg = strands
        * hung.chain.density().as_kg_m()
        * (height_m - leader_m).clamp(0.0, length_m / strands);
    let leaders_kg = pieces * (hanging.mass_kg - links_kg);
    if leaders_kg > WHOLE {
        mass = mass
            + sheet.given(
                at.symbol("ml"),
                leaders_kg,
                ("kg", 3),
                "leaders, as far as they hang",
            );
    }
    let mass_kg = hung.mass_kg(&at.load.point, at.carrier);
    let mass = sheet.follows(
        at.symbol("m"),
        mass,
        mass_kg,
        ("kg", 3),
        "off the floor, all pieces",
    );
    let weight_n = mass_kg * crate::units::STANDARD_GRAVITY_M_S2;
    at.felt(
        sheet,
        mass * g.clone(),
        weight_n,
        "share of it that the load feels",
    )
}

/// A stack on a cable.
///
/// ```text
/// T = m·g/(n·(1 − f)),   W = T·i
/// ```
pub(super) fn cable(
    sheet: &mut WorkedSheet,
    at: &HungItem<'_>,
    cable: &Cable,
    g: &Formula,
) -> Formula {
    let stack_kg = cable.stack().as_kg();
    let pull_n = cable.pull_n(1.0);
    if pull_n <= 0.0 || at.part_n.abs() < NOTHING_N {
        return at.nothing(sheet, "nothing pulls");
    }
    let mass = sheet.given(at.symbol("m"), stack_kg, ("kg", 2), at.words.clone());
    let ratio = sheet.given(
        at.symbol("n"),
        cable.ratio(),
        ("", 3),
        "travel of the handle over travel of the stack",
    );
    let lost = sheet.given(
        at.symbol("f"),
        cable.friction(),
        ("", 3),
        "share of the pull lost in the pulleys",
    );
    let pull = mass * g.clone() / (ratio * (Formula::from(1.0) - lost));
    let pull = sheet.follows(
        at.symbol("T"),
        pull,
        pull_n,
        ("N", 2),
        "pull at the handle, drawn straight out",
    );
    at.felt(sheet, pull, pull_n, "share of it that the load feels")
}

/// What rails leave of a weight, with their friction: on the way up or held, or on the way down.
///
/// ```text
/// i = sin a + μ·cos a        i = max(0, sin a − μ·cos a)
/// ```
pub(super) fn rails(
    sheet: &mut WorkedSheet,
    at: &HungItem<'_>,
    (angle_rad, sled): (f64, &Sled),
    (share, lowers): (f64, bool),
) -> Formula {
    if share <= 0.0 {
        let meaning = "share of the weight along the rails: friction alone holds it";
        return sheet.given(at.symbol("i"), 0.0, ("", 4), meaning);
    }
    let (sin, cos) = (angle_rad.sin(), angle_rad.cos().abs());
    let sin = sheet.given(at.symbol("sin"), sin, ("", 4), "sine of the rails' angle");
    let cos = sheet.given(at.symbol("cos"), cos, ("", 4), "cosine of the rails' angle");
    let rubbing = sheet.given(
        at.symbol("μ"),
        sled.friction(),
        ("", 3),
        "friction of the rails",
    ) * cos;
    let formula = if lowers { sin - rubbing } else { sin + rubbing };
    let meaning = "share of the weight along the rails, with friction";
    sheet.follows(at.symbol("i"), formula, share, ("", 4), meaning)
}
