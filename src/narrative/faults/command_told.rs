//! Words for what is wrong with the arguments of a command, or with where its output is to go.

use super::Told;
use super::again_told;
use super::quantity_told;
use crate::error::{CommandFault, FileForm, OptionFault, RepetitionOptions};
use crate::narrative::prose::either;
use crate::narrative::quantities::rounded;
use crate::units::System;

/// How a place of a pose is written.
const POSE_PLACES: &str = "write a share of the range (40%), a distance from the start (\"10 cm\"), or the angle of a single joint (\"60 deg\")";

/// The fault in words.
pub(super) fn told(fault: &CommandFault, _units: System) -> Told {
    match fault {
        CommandFault::StandardOutput { cause } => {
            Told::new(format!("standard output cannot be written: {cause}"))
        }
        CommandFault::HiddenSign { code, place } => Told::new(format!(
            "word {place} of the command holds the character U+{code:04X}, which cannot be shown"
        ))
        .hint("it often comes along with what is pasted: write the word anew, or rename the file"),
        CommandFault::LongWord {
            letters,
            most,
            place,
        } => Told::new(format!(
            "word {place} of the command is {letters} letters long; at most {most} are read"
        ))
        .hint("long lists belong into a file"),
        CommandFault::TargetIsFolder { folder, example } => {
            Told::new(format!("`{folder}` is a folder, not a file"))
                .hint(format!("name a file in it, such as {example}"))
        }
        CommandFault::TargetIsDevice { file } => {
            Told::new(format!("`{file}` is a device or a pipe, not a file"))
                .hint("name a file; what goes to standard output can be sent anywhere with >")
        }
        CommandFault::NoFolder { folder } => {
            Told::new(format!("the folder `{folder}` does not exist"))
                .hint("make it first, or write elsewhere")
        }
        CommandFault::SameTarget { file, options } => Told::new(format!(
            "--{} and --{} both write `{file}`",
            options[0], options[1]
        ))
        .hint("give each a file of its own"),
        CommandFault::TargetIsRead { file } => Told::new(format!(
            "`{file}` is a file that this call reads, so it is not replaced"
        ))
        .hint("name another file to write"),
        CommandFault::TargetExists { file } => Told::new(format!("`{file}` exists already"))
            .hint("add --force to replace it, or name another file"),
        CommandFault::SetExists { file, others } => {
            Told::new(format!("`{file}` exists already{}", and_more(*others)))
                .hint("add --force to replace them, or name another folder")
        }
        CommandFault::TargetIsFile { file } => {
            Told::new(format!("`{file}` is a file, not a folder"))
                .hint("name a folder; it is made if it is not there")
        }
        CommandFault::FolderNotMade { folder, cause } => {
            Told::new(format!("the folder `{folder}` cannot be made: {cause}"))
                .hint("check its parent and your permissions, or write elsewhere")
        }
        CommandFault::NoPicture { file, as_png } => no_picture(file, as_png),
        CommandFault::NoDataFile { file, as_csv } => {
            Told::new(format!("`{file}` does not end in .csv or .xlsx"))
                .hint(format!("write {as_csv}"))
        }
        CommandFault::NoSheet { file } => {
            Told::new(format!("`{file}` is no sheet that can be written"))
                .hint("sheets end in .html, .svg or .png")
        }
        CommandFault::NoModelFile { file } => {
            Told::new(format!("`{file}` would be no model file")).hint("model files end in .ron")
        }
        CommandFault::Idle { option, needed } => idle(option, needed),
        CommandFault::IdleUnlowered { option } => Told::new(format!(
            "--{option} changes nothing where the load is not lowered first"
        ))
        .hint(format!(
            "add a --lowering of more than 0 s, or leave --{option} out"
        )),
        CommandFault::IdleMeasure => {
            Told::new("--measure changes nothing for one parameter".to_owned())
                .hint("add --rank or a second --param, or leave --measure out")
        }
        CommandFault::OtherEnding { file, holds } => {
            Told::new(format!("`{file}` would hold {}", form_in_words(*holds)))
                .hint(format!("end its name in {}", holds.endings().join(" or ")))
        }
        CommandFault::ManySessions { sessions } => many_sessions(*sessions),
        CommandFault::Option(fault) => of_option(fault),
        CommandFault::Repetition(options) => of_repetition(*options),
        CommandFault::Again(fault) => again_told::told(fault),
        CommandFault::Unwritable { file, cause } => {
            Told::new(format!("`{file}` cannot be written: {cause}"))
                .hint("check the folder's permissions and free space, or write elsewhere")
        }
    }
}

const fn form_in_words(form: FileForm) -> &'static str {
    match form {
        FileForm::Json => "JSON",
        FileForm::Csv => "CSV",
        FileForm::Text => "plain text",
        FileForm::Markdown => "Markdown",
        FileForm::Page => "a page",
        FileForm::Sheet => "a sheet as text, Markdown or a page",
    }
}

fn idle(option: &str, needed: &[String]) -> Told {
    let options: Vec<String> = needed.iter().map(|long| format!("--{long}")).collect();
    if options.is_empty() {
        return Told::new(format!("--{option} changes nothing here")).hint("leave it out");
    }
    let one_of = either(&options);
    Told::new(format!("--{option} changes nothing without {one_of}"))
        .hint(format!("add {one_of}, or leave --{option} out"))
}

fn no_picture(file: &str, as_png: &str) -> Told {
    let bare = [".svg", ".png"].into_iter().find_map(|ending| {
        let folder = file.strip_suffix(ending)?;
        (folder.is_empty() || folder.ends_with(['/', '\\'])).then_some((folder, ending))
    });
    match bare {
        Some((folder, ending)) => Told::new(format!("`{file}` has no name before its ending"))
            .hint(format!("write {folder}figure{ending}")),
        None => Told::new(format!("`{file}` does not end in .svg or .png"))
            .hint(format!("write {as_png}")),
    }
}

fn many_sessions(sessions: usize) -> Told {
    Told::new(format!(
        "a picture holds one session, and these are {sessions}"
    ))
    .hint("end the sheet's name in .html: a page for each session; --fatigue is for one session alone")
}

fn of_repetition(options: RepetitionOptions) -> Told {
    match options {
        RepetitionOptions::ComparisonPictures => {
            Told::new("--versus-plain draws one picture, over the way")
                .hint("give it with -o; leave out --over-time and --animation")
        }
        RepetitionOptions::AnimationNotSvg => {
            Told::new("an animated picture is an .svg file").hint("--animation rep.svg")
        }
    }
}

fn and_more(others: usize) -> String {
    match others {
        0 => String::new(),
        many => format!(", and {many} more of the files to write"),
    }
}

fn of_option(fault: &OptionFault) -> Told {
    match fault {
        OptionFault::ForgottenPercent { text, number } => Told::new(format!(
            "`{text}` is no share: without a sign of percent it is {} %",
            100.0 * number
        ))
        .hint(format!("did you mean {number}%?")),
        OptionFault::NoShare(text) => {
            Told::new(format!("`{text}` is no share")).hint("write 80% or 0.8")
        }
        OptionFault::NoPart(text) => Told::new(format!("`{text}` is no part of the people"))
            .hint("write 3/100 for the third of a hundred parts"),
        OptionFault::NoShares(text) => Told::new(format!("`{text}` is no range of shares"))
            .hint("write 10%..35%, ..35%, 10%.. or any")
            .hint("--goal share comes as near as it can to a single one"),
        OptionFault::NoPlace(text) => Told::new(format!("`{text}` is no place of the range"))
            .hint("write start, middle, end, or a number from 0 to 1"),
        OptionFault::NoPosePlace(text) => {
            Told::new(format!("`{text}` is no place of the range")).hint(POSE_PLACES)
        }
        OptionFault::NoTravel(fault) => quantity_told::told(fault).hint(POSE_PLACES),
        OptionFault::NoLoadLimit(text) => Told::new(format!("`{text}` limits no load"))
            .hint("write PLACE=LEAST..MOST, such as \"end=80 kg..120 kg\" or \"start=..60 kg\""),
        OptionFault::ReversedRange(text) => Told::new(format!("`{text}` runs backward"))
            .hint("write the smaller end first; places of a profile rise from start to end"),
        OptionFault::NoProfilePoint(text) => {
            Told::new(format!("`{text}` is no point of a profile"))
                .hint("write PLACE=EFFORT, such as 0.5=80%")
        }
        lacking => of_lacking_option(lacking),
    }
}

fn of_lacking_option(fault: &OptionFault) -> Told {
    match fault {
        OptionFault::NoProfile => Told::new("--goal profile needs the profile")
            .hint("add --profile \"0=60%, 0.5=80%, 1=90%\""),
        OptionFault::NotOfGoal { option, goal } => {
            Told::new(format!("--{option} is for --goal {goal} alone"))
                .hint(format!("add --goal {goal}, or leave --{option} out"))
        }
        OptionFault::OnlyOfNone { word } => Told::new(format!(
            "--only {word} with --hung 0: nothing may hang, and only that is wanted"
        ))
        .hint("allow a pair, --hung 1, or leave --only out for plain weight"),
        OptionFault::NothingHung { option, by } => Told::new(format!(
            "--{option} is of bands and chains, and {by} hangs none"
        ))
        .hint("leave one of the two out"),
        OptionFault::NoShareForGoal => {
            Told::new("--goal share needs the share that is wanted").hint("add --share 20%")
        }
        OptionFault::FileAndOptions => {
            Told::new("a setup comes from one file or from options, not from both")
                .hint("put load, band or chain into the file, or compare with --versus")
        }
        OptionFault::RegionShare(share) => Told::new(format!(
            "a region share of {} % is outside 50 % to 100 % (100 % left out)",
            rounded(100.0 * share, 2)
        ))
        .hint("95 % is the default"),
        OptionFault::NoneListed => {
            Told::new("--top 0 lists nothing").hint("--top takes the number of setups, from 1 on")
        }
        OptionFault::UnpairedValues {
            parameters: 0,
            lists: 0,
        } => Told::new("nothing is said of what to vary")
            .hint("name a parameter with its --values, two for a map, or ask for --rank"),
        OptionFault::UnpairedValues { parameters, lists } => Told::new(format!(
            "{parameters} --param and {lists} --values do not belong together"
        ))
        .hint("give one or two parameters, each followed by its --values; or --rank"),
        OptionFault::WhyOfMany => {
            Told::new("--why, --why-figure and --curves tell of one parameter")
                .hint("give one --param with its --values")
        }
        OptionFault::ManySetups { asked, most } => Told::new(format!(
            "{asked} setups over one curve cannot be told apart; at most {most} are compared"
        ))
        .hint("leave out some --versus, or make two comparisons"),
        OptionFault::NoSpeed(fault) => {
            quantity_told::told(fault).hint("for a movement of one joint: --speed \"60 deg/s\"")
        }
        _ => Told::new("a setup beside --versus is empty").hint(
            "give each its load: --load \"100 kg\" --versus --load \"70 kg\" --band loop-29mm:1",
        ),
    }
}
