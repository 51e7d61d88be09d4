//! Scores of the rows, and what the lists and their sources hold of each other.

use super::listing::Compared;
use super::{Kind, papers};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use torquill::library::Library;

/// Rows and met ones by group, as a table.
pub fn scores(rows: &[&Compared], group: &str, of: impl Fn(&Compared) -> String) -> String {
    let mut groups: BTreeMap<String, Vec<&Compared>> = BTreeMap::new();
    for row in rows {
        groups.entry(of(row)).or_default().push(row);
    }
    let mut text = format!(
        "| {group} | rows | met | publications | off by |\n| --- | --- | --- | --- | --- |\n"
    );
    for (name, rows) in &groups {
        let met = rows.iter().filter(|row| row.is_met).count();
        let keys: BTreeSet<&str> = rows.iter().map(|row| row.key.as_str()).collect();
        let off = match misfit(rows.iter().map(|row| row.line.as_str())) {
            Some((_, off)) => format!("{:.0} %", 100.0 * off),
            None => String::new(),
        };
        let _ = writeln!(
            text,
            "| {name} | {} | {met} | {} | {off} |",
            rows.len(),
            keys.len()
        );
    }
    text
}

/// Number of lines of the list that give a size, and the root mean square of the logarithm of computed over published.
///
/// Directions, and rows without an answer, say nothing of a size.
fn misfit<'a>(lines: impl Iterator<Item = &'a str>) -> Option<(usize, f64)> {
    let squares: Vec<f64> = lines
        .filter_map(|line| {
            let cells: Vec<&str> = line.split(" | ").collect();
            let size = |cell: &str| cell.parse::<f64>().ok().filter(|value| *value > 0.0);
            let (published, computed) = (size(cells[3])?, size(cells[5])?);
            let is_direction =
                cells[4] == "± 0" || (published == 1.0 && !cells[4].starts_with('±'));
            (!is_direction).then(|| (computed / published).ln().powi(2))
        })
        .collect();
    let count = squares.len();
    (count > 0).then(|| (count, (squares.iter().sum::<f64>() / count as f64).sqrt()))
}

/// The model's own error by lift and by quantity, as the calibration's file of it: predicted rows of the list.
pub fn errors_as_ron(lines: &BTreeSet<String>) -> String {
    let group = |column: usize| {
        let mut groups: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for line in lines {
            let cells: Vec<&str> = line.split(" | ").collect();
            if cells.len() == 10 && cells[2] == Kind::Predicted.word() {
                groups.entry(cells[column]).or_default().push(line);
            }
        }
        let mut text = String::new();
        for (name, lines) in groups {
            if let Some((count, off)) = misfit(lines.into_iter()) {
                let _ = writeln!(
                    text,
                    "        \"{name}\": (rows: {count}, error: {off:.2}),"
                );
            }
        }
        text
    };
    let overstated = one_joint_repetitions(lines);
    format!(
        "// The model's own error beside the posterior: what published values that nothing was set by are off by.\n\
         // Root mean square of the logarithm of computed over published, from tests/evidence.md; written by its tests.\n\
         (\n    source: Assumed(\"computed: predicted rows of tests/evidence.md\"),\n    by_lift_or_thing: {{\n{}    }},\n    \
         by_quantity: {{\n{}    }},\n    \
         // Repetitions to failure of lifts of one joint over published ones: geometric mean.\n    \
         one_joint_repetitions: {},\n)\n",
        group(7),
        group(8),
        overstated,
    )
}

/// Repetitions to failure of lifts of one joint: rows of predicted evidence, and the mean factor by which they are too many.
fn one_joint_repetitions(lines: &BTreeSet<String>) -> String {
    let library = Library::built_in();
    let is_of_one_joint = |on: &str| {
        let movement = library.movement(&on.replace(' ', "-"));
        movement.is_ok_and(|movement| movement.moves_one_joint())
    };
    let factors: Vec<f64> = lines
        .iter()
        .map(|line| line.split(" | ").collect::<Vec<&str>>())
        .filter(|cells| cells.len() == 10 && cells[2] == Kind::Predicted.word())
        .filter(|cells| cells[8] == "repetitions" && is_of_one_joint(cells[7]))
        .filter_map(|cells| {
            let size = |cell: &str| cell.parse::<f64>().ok().filter(|value| *value > 0.0);
            Some((size(cells[5])? / size(cells[3])?).ln())
        })
        .collect();
    if factors.is_empty() {
        return "None".to_owned();
    }
    let mean = factors.iter().sum::<f64>() / factors.len() as f64;
    format!("Some((rows: {}, factor: {:.2}))", factors.len(), mean.exp())
}

/// The misses with their reasons, predicted ones first.
pub fn misses(all: &BTreeMap<(String, String), Compared>) -> String {
    let mut text = String::new();
    for kind in Kind::ALL {
        for ((paper, quantity), row) in all {
            if row.kind == kind && !row.is_met {
                let reason = match row.reason.as_str() {
                    "" => "not looked for yet",
                    reason => reason,
                };
                let _ = writeln!(text, "- {} ({paper}), {quantity}: {reason}", kind.word());
            }
        }
    }
    text
}

/// What the front page tells.
#[derive(Default)]
pub struct Tally {
    pub predicted: usize,
    pub met: usize,
    pub publications: usize,
    /// Rows about implements, and met ones: they say nothing of lifts and bodies.
    pub gear: (usize, usize),
    /// Predicted rows and met ones by lift.
    pub by_lift: BTreeMap<String, (usize, usize)>,
    /// Predicted rows and met ones by what is told: classes, directions, sizes.
    pub by_form: BTreeMap<&'static str, (usize, usize)>,
}

/// Lifts by name; other rows are of joints, implements and sets.
pub const LIFTS: [&str; 14] = [
    "bench press",
    "overhead press",
    "squat",
    "deadlift",
    "leg press",
    "hip thrust",
    "row",
    "pull-up",
    "leg curl",
    "knee extension",
    "calf raise",
    "lateral raise",
    "biceps curl",
    "triceps extension",
];

/// What is no lift and no body.
const GEAR: [&str; 2] = ["bands", "chains"];

impl Tally {
    /// Counted from the files: a row without a reason for a miss is met, as its test holds it to.
    pub fn of_the_files() -> Self {
        let mut tally = Self::default();
        let mut keys = BTreeSet::new();
        for paper in papers() {
            for row in paper.rows().filter(|row| row.kind() == Kind::Predicted) {
                let met = usize::from(!row.is_missed());
                let count = |score: &mut (usize, usize)| {
                    score.0 += 1;
                    score.1 += met;
                };
                let on = row.own_or_head("on");
                if GEAR.contains(&on) {
                    count(&mut tally.gear);
                    continue;
                }
                tally.predicted += 1;
                tally.met += met;
                keys.insert(paper.head("key").to_owned());
                count(tally.by_form.entry(row.form()).or_default());
                if LIFTS.contains(&on) {
                    count(tally.by_lift.entry(on.to_owned()).or_default());
                }
            }
        }
        tally.publications = keys.iter().filter(|key| !key.starts_with("none")).count();
        tally
    }
}

impl super::Row<'_> {
    /// Whether it tells a class, a direction or a size.
    pub(super) fn form(&self) -> &'static str {
        match (self.own_or_head("about"), self.own_or_head("scatter")) {
            ("class", _) => "classes",
            (_, "order") => "directions",
            _ => "sizes",
        }
    }
}

/// The lines of the front page and of the guide.
pub fn lines_about(tally: &Tally) -> String {
    let percent = |(all, met): (usize, usize)| 100.0 * met as f64 / (all as f64).max(1.0);
    let weak: Vec<String> = tally
        .by_lift
        .iter()
        .filter(|(_, (all, met))| 4 * met < 3 * all)
        .map(|(lift, (all, met))| format!("{lift} ({met} of {all})"))
        .collect();
    let weak = if weak.is_empty() {
        "none".to_owned()
    } else {
        weak.join(", ")
    };
    let forms: Vec<String> = tally
        .by_form
        .iter()
        .map(|(form, score)| {
            format!(
                "{form} {} of {} ({:.0} %)",
                score.1,
                score.0,
                percent(*score)
            )
        })
        .collect();
    format!(
        "{} published values of lifts and bodies from {} publications could have failed; {} are met ({:.0} %): {}.\nOf bands \
         and chains {} of {} are met. All stand in [tests/evidence.md](tests/evidence.md), the missed ones with their cause, whole \
         lifts in\n[tests/predictions.md](tests/predictions.md). Lifts of which fewer than three in four are met:\n{weak}.\n",
        tally.predicted,
        tally.publications,
        tally.met,
        percent((tally.predicted, tally.met)),
        forms.join(", "),
        tally.gear.1,
        tally.gear.0,
    )
}

/// Every cited publication has its entry.
#[test]
fn law_every_cited_publication_is_in_the_sources() {
    let known = Library::built_in().sources().expect("sources.ron is sound");
    let mut cited: BTreeSet<String> = crate::predictions::sources().into_iter().collect();
    for paper in papers() {
        let key = paper.head("key");
        assert!(!key.is_empty(), "{} names no key", paper.name);
        assert!(
            !paper.head("source").is_empty(),
            "{} names no source",
            paper.name
        );
        for row in paper.rows() {
            assert!(
                !row.own_or_head("on").is_empty() && !row.own_or_head("about").is_empty(),
                "{}, {}: on what, about what",
                paper.name,
                row.quantity()
            );
        }
        if !key.starts_with("none: ") {
            cited.insert(key.to_owned());
        }
    }
    cited.remove("common practice");
    let unknown: Vec<_> = cited
        .iter()
        .filter(|key| !known.contains_key(*key))
        .collect();
    assert!(unknown.is_empty(), "{unknown:?}");
}

/// What the calibration is held to is no prediction.
#[test]
fn law_no_predicted_row_is_of_a_target_of_the_calibration() {
    /// The targets take the shapes of torque at joints from it; the rows are classes of whole lifts.
    const OF_LIFTS: &str = "kulig_1984";
    let place = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/models/calibration/targets.ron"
    );
    let targets = std::fs::read_to_string(place).expect("the targets can be read");
    let both: Vec<String> = papers()
        .iter()
        .filter(|paper| paper.rows().any(|row| row.kind() == Kind::Predicted))
        .map(|paper| paper.head("key").to_owned())
        .filter(|key| key != OF_LIFTS && targets.contains(&format!("(\"{key}\"")))
        .collect();
    assert!(both.is_empty(), "{both:?}");
}
