//! Results to table, CSV, workbook and JSON.
//!
//! In: plain results of `study`. Out: text; keys are snake_case with the unit as suffix.

mod account_rows;
mod cohort_report;
mod contract;
mod csv;
mod curve_report;
#[cfg(feature = "program")]
mod data_dictionary;
mod deck;
mod detail;
mod family_data;
mod family_report;
mod fit_report;
mod json;
pub mod lecture_page;
mod lecture_set;
#[cfg(feature = "program")]
mod live_page;
mod maximum_report;
mod movements_report;
mod pair_report;
mod parameters_report;
mod people_row;
mod person_file;
mod pick_report;
mod plan_record;
mod plan_text;
mod ranks_report;
mod repetition_report;
pub mod run_record;
mod sample;
mod setup_rows;
mod sheet_html;
#[cfg(feature = "program")]
mod slides;
mod sources_report;
mod summary;
mod table;
mod team_report;
pub mod tidy_table;
mod trace_rows;
mod trend_report;
pub mod typed_words;
mod warnings;
#[cfg(feature = "program")]
mod workbook;
mod worked_report;
pub mod wrapping;

pub use cohort_report::{cohort_data, cohort_json, cohort_text};
pub use csv::rows_to_csv;
pub use curve_report::{curve_data, curve_json, curve_table, curves_data};
pub use family_data::{family_curves, family_data, why_data};
pub use family_report::{family_json, family_table, why_table};
pub use fit_report::{fit_data, fit_json, fit_text};
pub use json::{list_with_provenance, pretty, with_provenance};
pub use lecture_set::{LectureSet, PAGE, PictureWriters};
#[cfg(feature = "program")]
pub use live_page::{PageOptions, live_page};
pub use maximum_report::{maximum_data, maximum_json, maximum_text};
pub use movements_report::{movements_data, movements_json, movements_table};
pub use pair_report::{grid_data, grid_json, grid_table};
pub use parameters_report::{found_values, parameters_data, parameters_json, parameters_table};
pub use person_file::person_file;
pub use pick_report::{pick_card_text, ranking_table};
pub use plan_record::{PlanRecord, plan_data};
pub use plan_text::{plan_cautions, plan_text};
pub use ranks_report::{rank_data, rank_json, rank_table};
pub use repetition_report::{
    repetition_data, repetition_json, repetition_text, versus_data, versus_json, versus_text,
};
pub use run_record::{ModelFileRecord, ReadFileRecord, RunRecord};
pub use sample::{Sample, sample, samples};
pub use setup_rows::{SetupRow, ranking_data, ranking_json, setup_row};
pub use sheet_html::{one_sheet_html, pages_html, sheet_html};
#[cfg(feature = "program")]
pub use slides::slides;
pub use sources_report::{sources_data, sources_json, sources_text};
pub use summary::{CurveSummary, summary};
pub use team_report::{team_data, team_json, team_log, team_page, team_text};
pub use tidy_table::{TidyTable, sheet_data};
pub use trend_report::{trend_data, trend_json, trend_text};
pub use typed_words::{typed_words, words_typed};
#[cfg(feature = "program")]
pub use workbook::workbook;
pub use worked_report::{SheetForm, worked_pose_sheet};
pub use wrapping::wrapped;
