//! A command's table as a file: CSV or a workbook by the ending of its name.
//!
//! In: a file name, a table, the record of its making. Out: the file's bytes, or a fault before anything is computed.

use super::output;
use crate::error::{CommandFault, Error, Result};
use crate::report::{RunRecord, TidyTable, workbook};
use clap::Args;
use std::path::{Path, PathBuf};

/// The table as a file, for commands that say elsewhere whether files may be replaced.
#[derive(Debug, Clone, Args)]
pub struct DataOption {
    /// Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it
    #[arg(long, value_name = "FILE")]
    pub data: Option<PathBuf>,
}

/// The table as a file, and whether it may be replaced.
#[derive(Debug, Clone, Args)]
pub struct DataFile {
    #[command(flatten)]
    data: DataOption,
    /// Replace files that exist
    #[arg(long)]
    force: bool,
}

/// The two kinds of files of tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum DataFormat {
    Csv,
    Workbook,
}

impl DataFormat {
    fn of(path: &Path) -> Result<Self> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("csv") => Ok(Self::Csv),
            Some("xlsx") => Ok(Self::Workbook),
            _ => Err(Error::bad(CommandFault::NoDataFile {
                file: path.display().to_string(),
                as_csv: path.with_extension("csv").display().to_string(),
            })),
        }
    }
}

/// Checks ending and target before anything is computed.
pub fn check(path: &Path, replace: bool) -> Result<()> {
    output::check_target(path, replace)?;
    DataFormat::of(path).map(|_| ())
}

/// The bytes of the file: CSV under the record as commented lines, or a workbook with the record on a sheet.
///
/// **Fails** if the table is too large for a workbook.
pub fn bytes(path: &Path, data: &TidyTable, record: &RunRecord) -> Result<Vec<u8>> {
    match DataFormat::of(path)? {
        DataFormat::Csv => Ok((record.csv_head() + &data.csv()).into_bytes()),
        DataFormat::Workbook => workbook(data, record).map_err(|cause| {
            Error::bad(CommandFault::Unwritable {
                file: path.display().to_string(),
                cause,
            })
        }),
    }
}
