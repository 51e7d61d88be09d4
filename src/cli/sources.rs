//! `torquill sources`: the publications behind the numbers.

use super::options::Format;
use super::output;
use crate::error::Result;
use crate::library::Library;
use crate::report;
use crate::source::Seen;
use clap::Args;

/// Arguments of `sources`.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  torquill sources --format csv")]
pub struct Arguments {
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    let sources = library.sources()?;
    let header = ["key", "how known", "used for", "publication"];
    let rows = || {
        sources.iter().map(|(key, publication)| {
            vec![
                key.clone(),
                seen(publication.seen).to_owned(),
                publication.used_for.clone(),
                publication.citation.clone(),
            ]
        })
    };
    match arguments.format {
        Format::Json => output::print(&report::pretty(&sources)?),
        Format::Csv => output::print(&report::rows_to_csv(&header, rows())?),
        Format::Table => {
            let mut text = String::new();
            for row in rows() {
                text += &format!(
                    "{} ({})\n  {}\n  used for: {}\n\n",
                    row[0], row[1], row[3], row[2]
                );
            }
            text += &format!(
                "{} publications. Numbers without one are marked in the model files as assumed,\ncommon practice or invented.\n",
                sources.len()
            );
            output::print(&text)
        }
    }
}

fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::Read => "read",
        Seen::Partly => "partly read, partly from memory",
        Seen::Recalled => "from memory",
    }
}
