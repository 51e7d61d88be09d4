//! `torquill gym -o FILE`: writes a gym file from a few answers or options, and says what it assumed.

use super::complain::warn;
use super::options::UnitsOption;
use super::output;
use super::whole_set;
use crate::error::{Fault, GymPart, Result};
use crate::library::{Library, Shelf};
use crate::narrative::gym_words::{
    REASON, TITLE, assumed_in_words, question, usual_part, written_in_words,
};
use crate::setups::NewGym;
use crate::units::System;
use clap::Args;
use std::collections::BTreeMap;
use std::io::{BufRead, IsTerminal, Write};
use std::path::PathBuf;

/// GymArguments of `gym`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill gym -o home.ron
  torquill gym -o cellar.ron --bars \"20 kg, light bar = 10 kg\" \\
      --plates \"4 x 20 kg, 2 x 10 kg, 4 x 5 kg, 2 x 2.5 kg\" \\
      --kettlebells \"16 kg\" --bands \"loop-14mm x 2\"
  torquill gym -o school.ron --units us --curl-bars \"bent bar = 15 lb\" \\
      --dumbbells \"5 lb..50 lb by 5 lb\" --belt
  torquill check cellar.ron
  torquill pick bench-press --gym cellar.ron

Without options it asks on a terminal, part by part, and an empty line takes what stands in
brackets; elsewhere it takes that for everything. \"none\" stands for nothing of a part.")]
pub struct GymArguments {
    /// File to write (.ron)
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
    /// What the gym is called
    #[arg(long, value_name = "TEXT", default_value = TITLE)]
    title: String,
    /// Bars: "20 kg, light bar = 10 kg"
    #[arg(long, value_name = "LIST")]
    bars: Option<String>,
    /// Plates, how many of each: "4 x 20 kg, 2 x 10 kg"
    #[arg(long, value_name = "LIST")]
    plates: Option<String>,
    /// Mass of one collar of the pair
    #[arg(long, value_name = "MASS")]
    collars: Option<String>,
    /// Dumb-bells of which there is a pair: "8 kg, 12 kg" or "5 kg..20 kg by 2.5 kg"
    #[arg(long, value_name = "LIST")]
    dumbbells: Option<String>,
    /// Kettlebells of which there is a pair
    #[arg(long, value_name = "LIST")]
    kettlebells: Option<String>,
    /// Short or bent bars for curls and extensions, loaded with the same plates
    #[arg(long, value_name = "LIST")]
    curl_bars: Option<String>,
    /// Weight stack of the machines: its step and all of it, "5 kg..80 kg"
    #[arg(long, value_name = "STEP..ALL")]
    stack: Option<String>,
    /// Empty sled of the leg press
    #[arg(long, value_name = "MASS")]
    sled: Option<String>,
    /// Safety arms of the rack: lowest..highest by the step from hole to hole, "30 cm..120 cm by 5 cm"
    ///
    /// Bands are judged by what happens when they fail; without arms fewer setups are offered.
    #[arg(long, value_name = "LIST")]
    safety_arms: Option<String>,
    /// Bands, how many of each (names: torquill show bands)
    #[arg(long, value_name = "LIST")]
    bands: Option<String>,
    /// Chains, how many of each (names: torquill show chains)
    #[arg(long, value_name = "LIST")]
    chains: Option<String>,
    /// Where bands can be tied: "rack foot = 10 cm, rack pin = 75 cm"
    #[arg(long, value_name = "LIST")]
    anchors: Option<String>,
    /// There is a belt to hang plates from
    #[arg(long)]
    belt: bool,
    /// Replace the file if it is there
    #[arg(long)]
    force: bool,
    /// Units of what is assumed
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
}

/// Runs the command.
pub fn run(arguments: &GymArguments, library: &Library) -> Result<()> {
    let path = &arguments.output;
    output::check_model_file(path)?;
    output::check_target(path, arguments.force)?;
    let units: System = arguments.units.into();
    let mut told = arguments.told();
    if told.is_empty() && std::io::stdin().is_terminal() {
        told = asked(units, &mut std::io::stdin().lock(), &mut std::io::stderr());
    }
    let gym = NewGym::of(
        &arguments.title,
        arguments.belt,
        |part| told.get(&part).cloned(),
        |part| usual_part(part, units),
    )?;
    let text = gym.file(REASON);
    let file = path.display().to_string();
    let checked = library.check_text(Some(Shelf::Gyms), &file, &text);
    // Nobody has written the lines at which the check would point.
    let checked = checked.map_err(|error| {
        error.each(|fault| Fault {
            place: None,
            ..fault
        })
    })?;
    warn(&checked.doubts, units);
    whole_set::write_file(path, text.as_bytes())?;
    for line in assumed_in_words(&gym) {
        output::note(&line);
    }
    whole_set::tell_settled(written_in_words(&file));
    Ok(())
}

impl GymArguments {
    /// The parts that were told.
    fn told(&self) -> BTreeMap<GymPart, String> {
        let parts = [
            (GymPart::Bars, &self.bars),
            (GymPart::Plates, &self.plates),
            (GymPart::Collars, &self.collars),
            (GymPart::Dumbbells, &self.dumbbells),
            (GymPart::Kettlebells, &self.kettlebells),
            (GymPart::CurlBars, &self.curl_bars),
            (GymPart::Stack, &self.stack),
            (GymPart::Sled, &self.sled),
            (GymPart::SafetyArms, &self.safety_arms),
            (GymPart::Bands, &self.bands),
            (GymPart::Chains, &self.chains),
            (GymPart::Anchors, &self.anchors),
        ];
        let told = parts
            .into_iter()
            .filter_map(|(part, text)| Some((part, text.clone()?)));
        told.collect()
    }
}

/// Asks for every part; an empty line, or the end of the input, leaves what is usual.
pub fn asked(
    units: System,
    answers: &mut impl BufRead,
    questions: &mut impl Write,
) -> BTreeMap<GymPart, String> {
    let mut told = BTreeMap::new();
    for part in GymPart::ALL {
        // Nobody is left to ask where standard error is closed.
        let _ = write!(questions, "{}", question(part, &usual_part(part, units)));
        let _ = questions.flush();
        let mut line = String::new();
        match answers.read_line(&mut line) {
            Ok(0) | Err(_) => break,
            Ok(_) if line.trim().is_empty() => {}
            Ok(_) => {
                told.insert(part, line.trim().to_owned());
            }
        }
    }
    told
}
