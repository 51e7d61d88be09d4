//! `torquill pick MOVEMENT --gym NAME|FILE`: ranks the setups that a gym can build.

use super::canonical::is_typed;
use super::command_call::{Answer, CommandCall};
use super::complain::warn;
use super::data_file::DataOption;
use super::options::{Format, Sampling, UnitsOption, Who};
use super::output;
use super::picture::LookOptions;
use super::scatter::ScatterOption;
use super::sheet_file;
use super::texts;
use super::waiting::watched;
use crate::error::{CommandFault, Error, OptionFault, Result, Shelf};
use crate::figures::{Paper, setup_ranking};
use crate::movement::Carrier;
use crate::narrative::fit_words::stays_first_in_words;
use crate::narrative::maximum_words::interval_in_words;
use crate::narrative::pick_sheet_words::pick_sheet_words;
use crate::narrative::setups::pick_cautions;
use crate::rep::RepOptions;
use crate::report;
use crate::resistance::Setup;
use crate::setups::{AllowedPieces, Choosing, Goal, LoadLimit, Wish};
use crate::study::{Question, pick, pick_card, untested_lifter};
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// PickArguments of `pick`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill pick bench-press --gym college-weight-room
  torquill pick bench-press --lifter club-lifter --gym garage -o bench.png \\
      --sheet card.html
  torquill pick bench-press --gym strength-lab --share 10%..35% \\
      --only chains --hung 2
  torquill pick bench-press --gym college-weight-room \\
      --goal most-load --at end --limit-at 0.2
  torquill pick bench-press --gym college-weight-room \\
      --goal profile --profile \"0=60%, 0.5=80%, 1=80%\"

Gyms: garage, college-weight-room, strength-lab (all invented), or your own file.")]
pub struct PickArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    /// Gym: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE")]
    gym: String,
    #[command(flatten)]
    wish: WishOptions,
    #[command(flatten)]
    sampling: Sampling,
    #[command(flatten)]
    scatter: ScatterOption,
    /// How many setups to list with --all, in JSON and in CSV
    #[arg(long, value_name = "N", default_value_t = 10)]
    top: usize,
    /// Print the long ranking in place of the card
    #[arg(long)]
    all: bool,
    /// The card as a page to print: .html, .svg or .png
    #[arg(long, value_name = "FILE")]
    sheet: Option<PathBuf>,
    /// Draw the first three against plain weight: .svg or .png
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units that come first
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataOption,
}

/// What is best, and the limits.
#[derive(Debug, Args)]
pub struct WishOptions {
    /// What is best
    #[arg(long, value_enum, default_value_t = GoalOption::Flattest)]
    goal: GoalOption,
    /// Effort at the hardest place, of all that the lifter can hold there
    #[arg(long, value_name = "SHARE", default_value = "80%")]
    effort: String,
    /// Share of the load at the end from bands and chains: 10%..35%, ..35%, or any; for --goal share the one wanted
    #[arg(long, value_name = "SHARES")]
    share: Option<String>,
    /// Where load or share counts (most-load, share): start, middle, end, or 0 to 1
    #[arg(long, value_name = "PLACE", default_value = "end")]
    at: String,
    /// Where --effort is the limit (most-load); elsewhere up to 100 % then
    #[arg(long, value_name = "PLACE")]
    limit_at: Option<String>,
    /// Wanted effort over the range: "0=60%, 0.5=80%, 1=90%"
    #[arg(long, value_name = "POINTS")]
    profile: Option<String>,
    /// Limit of the load at a place: "start=40 kg..60 kg", "end=..120 kg"
    #[arg(long, value_name = "LIMIT")]
    load_at: Vec<String>,
    /// Use only these: bands, chains, plain, or names of pieces
    #[arg(long, value_name = "NAME")]
    only: Vec<String>,
    /// Most bands and chains a side
    #[arg(long, value_name = "N", default_value_t = Wish::default().most_hung)]
    hung: u32,
    /// Most pieces a side, plates included
    #[arg(long, value_name = "N", default_value_t = Wish::default().most_pieces)]
    pieces: u32,
    /// Allow bands that pull a free bar far forward or back
    #[arg(long)]
    askew: bool,
    /// Allow bands from above together with bands from below or chains
    #[arg(long)]
    both_ways: bool,
}

/// What is best.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum GoalOption {
    /// The evenest effort over the range
    Flattest,
    /// The most load at a place (--at), effort limited where --limit-at says
    MostLoad,
    /// The share of bands and chains (--share) at a place (--at)
    Share,
    /// The effort nearest to --profile
    Profile,
}

impl WishOptions {
    /// **Fails** for an option that the goal does not heed: the answer would look as if it had been.
    fn heeds(&self) -> Result<()> {
        let strays = [
            (
                self.profile.is_some(),
                "profile",
                GoalOption::Profile,
                "profile",
            ),
            (
                self.limit_at.is_some(),
                "limit-at",
                GoalOption::MostLoad,
                "most-load",
            ),
        ];
        if let Some(word) = self
            .only
            .iter()
            .find(|word| self.hung == 0 && *word != "plain")
        {
            return Err(Error::bad(OptionFault::OnlyOfNone { word: word.clone() }));
        }
        for (is_given, option, heeded_by, goal) in strays {
            if is_given && self.goal != heeded_by {
                return Err(Error::bad(OptionFault::NotOfGoal { option, goal }));
            }
        }
        Ok(())
    }

    /// **Fails** for an option of bands and chains where none may hang.
    fn check_hung(&self, call: &CommandCall) -> Result<()> {
        let is_plain = !self.only.is_empty() && self.only.iter().all(|word| word == "plain");
        let by = match (is_plain, self.hung) {
            (true, _) => "--only plain",
            (false, 0) => "--hung 0",
            (false, _) => return Ok(()),
        };
        let of_pieces = ["share", "askew", "both_ways", "hung"].into_iter();
        let mut idle =
            of_pieces.filter(|id| is_typed(call.matches, id) && (is_plain || *id != "hung"));
        match idle.next() {
            None => Ok(()),
            Some(id) => Err(Error::bad(OptionFault::NothingHung {
                option: id.replace('_', "-"),
                by: by.to_owned(),
            })),
        }
    }

    /// **Fails** for a place that no goal asks for, for an effort beside a profile, which is one, and for what takes more
    /// pieces or other ones than may hang.
    fn check_idle(&self, call: &CommandCall) -> Result<()> {
        self.check_hung(call)?;
        let is_of_chains = !self.only.is_empty() && self.only.iter().all(|word| word == "chains");
        let has_place = matches!(self.goal, GoalOption::MostLoad | GoalOption::Share);
        let is_profile = self.goal == GoalOption::Profile;
        let idle = [
            ("at", !has_place, &["goal most-load", "goal share"][..]),
            (
                "effort",
                is_profile,
                &["goal flattest", "goal most-load", "goal share"],
            ),
            ("askew", is_of_chains, &["only bands"]),
            ("both_ways", is_of_chains, &["only bands"]),
            ("both_ways", self.hung == 1, &["hung 2"]),
        ];
        let mut typed = idle
            .into_iter()
            .filter(|(id, is_idle, _)| *is_idle && is_typed(call.matches, id));
        match typed.next() {
            None => Ok(()),
            Some((id, _, needed)) => Err(Error::bad(CommandFault::Idle {
                option: id.replace('_', "-"),
                needed: needed.iter().map(|goal| (*goal).to_owned()).collect(),
            })),
        }
    }

    fn wish(&self) -> Result<Wish> {
        self.heeds()?;
        let mut wish = Wish {
            effort: texts::share(&self.effort)?,
            most_hung: self.hung,
            most_pieces: self.pieces,
            ..Wish::default()
        };
        for limit in &self.load_at {
            let (at, [least, most]) = texts::load_limit(limit)?;
            wish.loads.push(LoadLimit { at, least, most });
        }
        let at = texts::place(&self.at)?;
        let share = self.share.as_deref();
        match self.goal {
            GoalOption::Flattest => wish.share = texts::shares(share)?.unwrap_or(wish.share),
            GoalOption::MostLoad => {
                wish.share = texts::shares(share)?.unwrap_or(wish.share);
                let limit_at = self.limit_at.as_deref().map(texts::place).transpose()?;
                wish.goal = Goal::MostLoad { at, limit_at };
            }
            GoalOption::Share => {
                let share = share.ok_or_else(|| Error::bad(OptionFault::NoShareForGoal))?;
                wish.share = [None, None];
                wish.goal = Goal::Share {
                    share: texts::share(share)?,
                    at,
                };
            }
            GoalOption::Profile => {
                let points = texts::profile(self.profile.as_deref())?;
                wish.share = texts::shares(share)?.unwrap_or(wish.share);
                wish.effort = points.iter().map(|point| point.1).fold(0.0, f64::max);
                wish.goal = Goal::Profile(points);
            }
        }
        Ok(wish)
    }
}

/// Runs the command.
pub fn run(arguments: &PickArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let picture = arguments
        .output
        .as_ref()
        .map(|path| arguments.look.picture(path.clone()));
    if let Some(picture) = &picture {
        picture.check()?;
    }
    if let Some(path) = &arguments.sheet {
        sheet_file::check(path, arguments.look.force)?;
    }
    let prints_ranking =
        arguments.all || arguments.format != Format::Table || call.data_path().is_some();
    if is_typed(call.matches, "top") && !prints_ranking {
        return Err(Error::bad(CommandFault::Idle {
            option: "top".to_owned(),
            needed: ["all", "format", "data"].map(str::to_owned).to_vec(),
        }));
    }
    if arguments.top == 0 {
        return Err(Error::bad(OptionFault::NoneListed));
    }
    arguments.wish.check_idle(call)?;
    let model = arguments.who.model(library, &arguments.movement)?;
    if arguments.wish.askew && !matches!(model.movement.carrier()?, Carrier::Bar) {
        // Only a free bar can be drawn away from its path.
        return Err(Error::bad(CommandFault::Idle {
            option: "askew".to_owned(),
            needed: Vec::new(),
        }));
    }
    let mut question = arguments.sampling.question(&arguments.movement, &model)?;
    let untested = untested_lifter(&model, &question)?;
    if let Some(careful) = &untested {
        question = Question {
            lifter: &careful.lifter,
            ..question
        };
    }
    let gym = library.gym(&arguments.gym)?;
    warn(
        &library.doubts_of(Shelf::Gyms, &arguments.gym)?,
        arguments.units.into(),
    );
    let choosing = Choosing {
        gym: &gym,
        wish: arguments.wish.wish()?,
        allowed: AllowedPieces {
            only: arguments.wish.only.clone(),
            askew: arguments.wish.askew,
            both_ways: arguments.wish.both_ways,
            none_above: false,
        },
        top: arguments.top,
    };
    let published = library.published()?;
    let versions = arguments.scatter.versions(&model)?;
    let mut picked = watched(|watch| pick(&question, &choosing, &published.eccentric, watch))?;
    picked.untested = untested.as_ref().map(|careful| careful.range);
    if let Some(picture) = &picture {
        let scene = setup_ranking(&picked, arguments.units.into(), picture.look.look()?)?;
        picture.write(&call.signed("output", scene)?)?;
    }
    let (training, units) = (model.lifter.training, arguments.units.into());
    let wants_card =
        arguments.sheet.is_some() || (arguments.format == Format::Table && !arguments.all);
    let first = picked.answers.first().filter(|_| wants_card);
    let card = first
        .map(|first| pick_card(&question, published, &picked, first))
        .transpose()?;
    if let (Some(path), Some(first), Some(card)) = (&arguments.sheet, picked.answers.first(), &card)
    {
        let (title, words) = pick_sheet_words(&picked, first, card, (training, units));
        let paper = match arguments.units {
            UnitsOption::Metric => Paper::A4,
            UnitsOption::Us => Paper::Letter,
        };
        sheet_file::write_words(path, (&title, &words), paper, call)?;
    }
    let answer = Answer {
        table: &|| match arguments.all {
            true => report::ranking_table(&picked, training, units),
            false => report::pick_card_text(&picked, card.as_ref(), training, units),
        },
        json: &|| report::ranking_json(&picked, training, units),
        data: &|| report::ranking_data(&picked),
    };
    call.give(arguments.format, &answer)?;
    if let Some(versions) = versions.as_ref().filter(|_| untested.is_none()) {
        // Of an untested lift the card's head has the interval.
        let usual = RepOptions::usual_for(question.movement);
        let interval = versions.maximum(&question, &Setup::default(), &usual);
        output::note(&interval_in_words(&interval, "the 1RM", units));
    }
    if let (Some(versions), Some(first)) = (&versions, picked.answers.first()) {
        let setup = &first.loaded.setup;
        let stays = versions.stays_first(&question, &choosing, &published.eccentric, setup);
        output::note(&stays_first_in_words(stays));
    }
    if arguments.format == Format::Csv {
        for caution in pick_cautions(&picked, training, units) {
            output::note(&format!("caution: {caution}"));
        }
    }
    Ok(())
}
