//! The lecture: which figures make the set, in teaching order, as one list.
//!
//! In: a [`Desk`]. Out: [`LECTURE`], from which the command, the page of all figures and the tests
//! are derived.

use super::lecture_figure::LectureFigure;
use super::stories::{
    MEASURED_GRIPS, can_hang, clusters, evener_or_not, grips, hardest_part, lowered_over_lifted,
    plateau, pyramid,
};
use crate::capacity::CurveShape;
use crate::error::Result;
use crate::figures::{self, Sheet};
use crate::narrative::evenness_words::hung_name;
use crate::rep::RepOptions;
use crate::study::{
    AgainstPlain, ClassLifts, Desk, FibreTrack, FibreUse, Heaviness, HungKind, MovingStudy, People,
    SpeedCost, Study, ThreeCapacities, at_usual_speeds, class_examples, loaded_examples,
    thigh_family, versus_plain,
};

/// The lift of one joint that is taken apart.
const CURL: &str = "biceps-curl";
/// The ascending lift on which bands and chains are shown.
const PRESS: &str = "bench-press";
/// A press that sticks in motion.
const OVERHEAD: &str = "overhead-press";
/// A lift of the whole leg.
const SQUAT: &str = "squat";
/// A descending lift that bands can be hung on.
const ROW: &str = "row";
/// A descending lift on a machine with a cam.
const LEG_CURL: &str = "leg-curl";
/// The lift whose curve is shown at several speeds.
const EXTENSION: &str = "knee-extension";

/// The figures in teaching order.
pub const LECTURE: &[LectureFigure] = &[
    LectureFigure::new(
        "strength-curve",
        "What a strength curve is.",
        &[PRESS],
        |desk| unloaded(desk, PRESS),
    )
    .citing(&["kulig_1984"]),
    LectureFigure::new(
        "sarcomere-overlap",
        "Overlap of filaments makes active force.",
        &[],
        |desk| Ok(figures::sarcomere_overlap(desk.models.sarcomere("human")?)),
    )
    .citing(&["walker_schrodt_1974", "gordon_1966"]),
    LectureFigure::new(
        "sarcomere-species",
        "Filament lengths shift the diagram.",
        &[],
        sarcomere_species,
    )
    .citing(&["walker_schrodt_1974", "gordon_1966"]),
    LectureFigure::new(
        "active-passive-total",
        "Active and passive force add up.",
        &[CURL],
        active_passive_total,
    )
    .citing(&["de_groote_2016"]),
    LectureFigure::new("force-velocity", "Speed costs force.", &[], |desk| {
        let cost = SpeedCost::of(desk.curves().velocity);
        Ok(figures::force_velocity(&cost))
    })
    .citing(&["hill_1938", "katz_1939", "thelen_2003"]),
    LectureFigure::new(
        "curve-at-speed",
        "Speed moves the whole strength curve.",
        &[EXTENSION],
        curve_at_speed,
    )
    .citing(&["thelen_2003", "westing_1988"]),
    LectureFigure::new(
        "muscles-on-skeleton",
        "Muscles pull at moment arms.",
        &[CURL],
        |desk| figures::muscles_on_skeleton(&desk.lift(CURL)?.study, desk.units),
    )
    .citing(&["murray_2000", "holzbaur_2005"]),
    LectureFigure::new(
        "moment-arms",
        "Moment arms change with the joint angle.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::moment_arms),
    )
    .citing(&["murray_2000"]),
    LectureFigure::new(
        "fibre-lengths",
        "Fibres shorten as the joint turns.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::fibre_lengths),
    )
    .citing(&["murray_2000", "holzbaur_2005"]),
    LectureFigure::new(
        "track-on-lengths",
        "A lift on the length-tension curve.",
        &[CURL],
        |desk| track(desk, |held, _, track| figures::track_on_length(held, track)),
    )
    .citing(&["de_groote_2016"]),
    LectureFigure::new(
        "track-on-speeds",
        "A lift on the force-velocity curve.",
        &[CURL],
        |desk| {
            track(desk, |_, moving, track| {
                figures::track_on_speed(moving, track)
            })
        },
    )
    .citing(&["hill_1938", "thelen_2003"]),
    LectureFigure::new(
        "force-times-arm",
        "A curve's shape is force times moment arm.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::force_times_arm),
    )
    .citing(&["kulig_1984", "zajac_1989"]),
    LectureFigure::new(
        "muscles-add-up",
        "Muscles add up to the joint's moment.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::muscles_add_up),
    )
    .citing(&["zajac_1989", "holzbaur_2005"]),
    LectureFigure::new(
        "classes",
        "Strength curves come in few classes.",
        &[],
        |desk| {
            let published = desk.models.published_classes()?;
            Ok(figures::classes(
                desk.who(),
                &class_examples(desk),
                &published,
            ))
        },
    )
    .citing(&["kulig_1984"]),
    LectureFigure::of_class(
        CurveShape::Ascending,
        "ascending-lifts",
        "Lifts that grow stronger towards the end.",
        |desk| class_lifts(desk, CurveShape::Ascending),
    )
    .citing(&["kulig_1984"]),
    LectureFigure::of_class(
        CurveShape::Descending,
        "descending-lifts",
        "Lifts that grow weaker towards the end.",
        |desk| class_lifts(desk, CurveShape::Descending),
    )
    .citing(&["kulig_1984"]),
    LectureFigure::of_class(
        CurveShape::BellShaped,
        "bell-shaped-lifts",
        "Lifts that are strongest in between.",
        |desk| class_lifts(desk, CurveShape::BellShaped),
    )
    .citing(&["kulig_1984"]),
    LectureFigure::of_class(
        CurveShape::UShaped,
        "u-shaped-lifts",
        "Lifts that are weakest in between.",
        |desk| class_lifts(desk, CurveShape::UShaped),
    ),
    LectureFigure::new(
        "limits-in-a-press",
        "Whose strength counts where: the press.",
        &[PRESS],
        |desk| of_lift(desk, PRESS, figures::joint_limits),
    ),
    LectureFigure::new(
        "limits-in-a-squat",
        "Whose strength counts where: the squat.",
        &[SQUAT],
        |desk| of_lift(desk, SQUAT, figures::joint_limits),
    ),
    LectureFigure::new(
        "who-holds-the-load",
        "Muscles share a joint's moment.",
        &[SQUAT],
        |desk| Ok(figures::load_holders(&desk.lift(SQUAT)?.study, desk.units)),
    )
    .citing(&["arnold_2010", "de_leva_1996"]),
    LectureFigure::new("free-body", "A lift as a free body.", &[SQUAT], free_body)
        .citing(&["de_leva_1996"]),
    LectureFigure::new(
        "load-over-class",
        "Where a plain weight is heavy and where it is light.",
        &[],
        |desk| {
            let loaded = loaded_examples(desk)?;
            let errors = desk.models.lift_errors()?;
            Ok(figures::load_over_class(
                desk.who(),
                &loaded,
                &errors,
                desk.units,
            ))
        },
    )
    .citing(&["kulig_1984"]),
    LectureFigure::new(
        "sticking-region",
        "A load that is held still is hardest in one stretch.",
        &[PRESS],
        |desk| hardest_part(desk, PRESS),
    )
    .citing(&["elliott_1989", "van_den_tillaar_2010"]),
    LectureFigure::new(
        "sticking-in-motion",
        "The sticking region in motion.",
        &[OVERHEAD],
        sticking_in_motion,
    )
    .citing(&["elliott_1989", "van_den_tillaar_2010"]),
    LectureFigure::new(
        "grip-width",
        "Technique moves the curve: grip width.",
        &[PRESS],
        |desk| grips(desk, PRESS),
    )
    .citing(&[MEASURED_GRIPS]),
    LectureFigure::new(
        "limb-length",
        "The body moves the curve: limb length.",
        &[SQUAT],
        |desk| {
            Ok(figures::thigh_sheet(
                &thigh_family(desk, SQUAT)?,
                desk.units,
            ))
        },
    )
    .citing(&["de_leva_1996"]),
    LectureFigure::new("band-law", "How hard a band pulls.", &[], band_law)
        .citing(&["treloar_1944", "mcmaster_2010"]),
    LectureFigure::new("chain-law", "How much of a chain is load.", &[], chain_law)
        .citing(&["din_766", "neelly_2010"]),
    LectureFigure::new(
        "band-over-ascending",
        "A band follows an ascending curve.",
        &[PRESS],
        |desk| over_ascending(desk, HungKind::Band),
    )
    .citing(&["treloar_1944", "mcmaster_2010"]),
    LectureFigure::new(
        "chain-over-ascending",
        "A chain follows an ascending curve.",
        &[PRESS],
        |desk| over_ascending(desk, HungKind::Chain),
    )
    .citing(&["din_766", "neelly_2010"]),
    LectureFigure::new(
        "flattening",
        "How even a load makes the effort.",
        &[PRESS],
        flattening,
    )
    .citing(&["mcmaster_2009", "treloar_1944"]),
    LectureFigure::new(
        "band-over-descending",
        "A band works against a descending curve.",
        &[ROW],
        |desk| evener_or_not(desk, ROW, HungKind::Band),
    )
    .only_if(|desk| can_hang(desk, ROW, HungKind::Band))
    .citing(&["treloar_1944", "mcmaster_2010"]),
    LectureFigure::new("cam", "A cam can follow any curve.", &[LEG_CURL], |desk| {
        evener_or_not(desk, LEG_CURL, HungKind::Cam)
    })
    .only_if(|desk| can_hang(desk, LEG_CURL, HungKind::Cam))
    .citing(&["kulig_1984"]),
    LectureFigure::new(
        "lowered-held-lifted",
        "More can be lowered than lifted.",
        &[PRESS],
        |desk| {
            let three = ThreeCapacities::of(&desk.question(PRESS)?)?;
            let measured = lowered_over_lifted(desk, PRESS)?;
            Ok(figures::three_capacities(&three, &measured, desk.units))
        },
    )
    .citing(&["westing_1988", "hollander_2007", "kelly_2015"]),
    LectureFigure::new("plateau", "A plateau told from a log.", &[], plateau)
        .citing(&["epley_1985"]),
    LectureFigure::new(
        "clusters",
        "Small groups with short rests stay fast.",
        &[PRESS],
        clusters,
    )
    .of_invented()
    .citing(&["haff_2003", "haff_2008", "xia_frey_law_2008"]),
    LectureFigure::new(
        "pyramid",
        "Load rises, repetitions fall.",
        &[PRESS],
        pyramid,
    )
    .of_invented(),
    LectureFigure::new("people-differ", "People differ.", &[PRESS], |desk| {
        let people = People::around(&desk.question(PRESS)?, &desk.models.person_table()?)?;
        let study = &desk.lift(PRESS)?.study;
        Ok(figures::people_differ(study, &people))
    })
    .citing(&["bazyler_2015"]),
    LectureFigure::new("how-sure", "How sure we are.", &[], |desk| {
        Ok(figures::model_errors(&desk.models.lift_errors()?))
    }),
    LectureFigure::new("cannot-tell", "What this model cannot tell.", &[], |_| {
        Ok(figures::cannot_tell())
    }),
];

fn class_lifts(desk: &Desk<'_>, shape: CurveShape) -> Result<Sheet> {
    let lifts = ClassLifts::of(desk, shape)?;
    let published = desk.models.published_classes()?;
    Ok(figures::class_lifts(
        desk.who(),
        shape,
        &lifts,
        &published,
        desk.units,
    ))
}

/// A figure of one unloaded lift.
fn of_lift(
    desk: &Desk<'_>,
    movement: &str,
    figure: fn(&str, &Study, crate::units::System) -> Sheet,
) -> Result<Sheet> {
    Ok(figure(desk.who(), &desk.lift(movement)?.study, desk.units))
}

/// The curve of a lift without a load.
fn unloaded(desk: &Desk<'_>, movement: &str) -> Result<Sheet> {
    let study = &desk.lift(movement)?.study;
    Ok(figures::strength_sheet(study.told(desk.units)))
}

/// Share of the maximum that is lifted in motion: heavy, and not the last repetition that there is (assumed).
const HEAVY_SHARE: f64 = 0.95;

/// The press in motion with a band, beside plain weight of the same hardest effort.
fn sticking_in_motion(desk: &Desk<'_>) -> Result<Sheet> {
    let hung = AgainstPlain::of(desk, OVERHEAD, &[HungKind::Band], hung_name)?;
    let question = desk.question(OVERHEAD)?;
    let options = RepOptions::usual_for(question.movement);
    let heavy = Heaviness::Share(HEAVY_SHARE);
    let both = versus_plain(&question, &hung.setups[0], heavy, &options)?;
    Ok(figures::versus_sheet(&both, desk.units))
}

/// The band and the chain whose laws are shown: those that the first choices over the press hang.
const SHOWN_BAND: &str = "loop-22mm";
const SHOWN_CHAIN: &str = "chain-13mm";

fn band_law(desk: &Desk<'_>) -> Result<Sheet> {
    let pieces = desk.models.pieces()?;
    let band = pieces.stock().bands.get(SHOWN_BAND);
    let band = band.expect("a library holds the built-in bands");
    Ok(figures::band_law(band, desk.units))
}

fn chain_law(desk: &Desk<'_>) -> Result<Sheet> {
    let pieces = desk.models.pieces()?;
    let chain = pieces.stock().chains.get(SHOWN_CHAIN);
    let chain = chain.expect("a library holds the built-in chains");
    Ok(figures::chain_law(chain, desk.units))
}

/// The curl on its strongest muscle's own curves: held still, and at the fastest of the usual speeds.
fn track(desk: &Desk<'_>, figure: fn(&Study, &MovingStudy, &FibreTrack) -> Sheet) -> Result<Sheet> {
    let held = &desk.lift(CURL)?.study;
    let moving = at_usual_speeds(desk, CURL)?;
    let fastest = &moving[moving.len() - 1];
    let track = FibreTrack::of(held, fastest, desk.curves());
    Ok(figure(held, fastest, &track))
}

/// The squat under a hard weight as a free body.
fn free_body(desk: &Desk<'_>) -> Result<Sheet> {
    let setup = desk.hard(SQUAT, Vec::new())?;
    let study = desk.under(SQUAT, &[setup])?;
    Ok(figures::free_bodies(&study, desk.units))
}

fn sarcomere_species(desk: &Desk<'_>) -> Result<Sheet> {
    let (human, frog) = (
        desk.models.sarcomere("human")?,
        desk.models.sarcomere("frog")?,
    );
    Ok(figures::sarcomere_species(&human, &frog))
}

fn active_passive_total(desk: &Desk<'_>) -> Result<Sheet> {
    let used = FibreUse::of(&desk.lift(CURL)?.study);
    Ok(figures::active_passive_total(desk.curves(), &used))
}

fn curve_at_speed(desk: &Desk<'_>) -> Result<Sheet> {
    let held = &desk.lift(EXTENSION)?.study;
    let moving = at_usual_speeds(desk, EXTENSION)?;
    Ok(figures::curve_at_speed(
        desk.who(),
        held,
        &moving,
        desk.units,
    ))
}

fn against_plain(desk: &Desk<'_>, kinds: &[HungKind]) -> Result<AgainstPlain> {
    AgainstPlain::of(desk, PRESS, kinds, hung_name)
}

fn over_ascending(desk: &Desk<'_>, kind: HungKind) -> Result<Sheet> {
    let both = against_plain(desk, &[HungKind::Plain, kind])?;
    Ok(figures::against_plain(desk.who(), &both, desk.units))
}

fn flattening(desk: &Desk<'_>) -> Result<Sheet> {
    let kinds = [
        HungKind::Plain,
        HungKind::Chain,
        HungKind::Band,
        HungKind::Both,
    ];
    let all = against_plain(desk, &kinds)?;
    Ok(figures::flattening(desk.who(), &all, desk.units))
}
