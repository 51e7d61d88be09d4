//! Results to table, CSV and JSON.
//!
//! In: plain results of `study`. Out: text; keys are snake_case with the unit as suffix.

mod account_rows;
mod cohort_report;
mod contract;
mod csv;
mod curve_report;
mod detail;
mod family_report;
mod json;
mod lecture_page;
mod lecture_set;
mod maximum_report;
mod movements_report;
mod pair_report;
mod parameters_report;
mod pick_report;
mod plan_record;
mod plan_text;
mod ranks_report;
mod repetition_report;
mod run_record;
mod sample;
mod setup_rows;
mod sheet_html;
mod sources_report;
mod summary;
mod table;
mod trend_report;
mod warnings;
mod worked_report;
mod wrapping;

pub use cohort_report::{cohort_csv, cohort_json, cohort_text};
pub use csv::rows_to_csv;
pub use curve_report::{curve_csv, curve_json, curve_table};
pub use family_report::{family_csv, family_json, family_table, why_csv, why_table};
pub use json::{list_with_provenance, pretty, with_provenance};
pub use lecture_set::{LectureSet, PAGE, PictureWriters};
pub use maximum_report::{maximum_csv, maximum_json, maximum_text};
pub use movements_report::{movements_csv, movements_json, movements_table};
pub use pair_report::{grid_csv, grid_json, grid_table};
pub use parameters_report::{found_values, parameters_csv, parameters_json, parameters_table};
pub use pick_report::{pick_card_text, ranking_table};
pub use plan_record::PlanRecord;
pub use plan_text::{plan_cautions, plan_csv, plan_text};
pub use ranks_report::{rank_csv, rank_json, rank_table};
pub use repetition_report::{
    repetition_csv, repetition_json, repetition_text, versus_json, versus_text,
};
pub use run_record::{ModelFileRecord, ReadFileRecord, RunRecord};
pub use sample::{Sample, samples};
pub use setup_rows::{SetupRow, ranking_csv, ranking_json, setup_row};
pub use sheet_html::{one_sheet_html, sheet_html};
pub use sources_report::{sources_csv, sources_json, sources_text};
pub use summary::{CurveSummary, summary};
pub use trend_report::{trend_csv, trend_json, trend_text};
pub use worked_report::{SheetForm, worked_pose_sheet};
