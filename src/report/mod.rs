//! Results to table, CSV and JSON.
//!
//! In: plain results of `study`. Out: text; keys are snake_case with the unit as suffix.

mod cohort;
mod csv;
mod detail;
mod family;
mod grid;
mod json;
mod lecture_page;
mod maximum;
mod plan_record;
mod plan_text;
mod progress;
mod ranks;
mod repetition;
mod sample;
mod setup_ranking;
mod setup_rows;
mod sheet_html;
mod summary;
mod table;

pub use cohort::{cohort_csv, cohort_json, cohort_text};
pub use csv::{curve_csv, rows_to_csv};
pub use family::{family_csv, family_json, family_table};
pub use grid::{grid_csv, grid_json, grid_table};
pub use json::{curve_json, pretty};
pub use lecture_page::{PageFigure, PageHead, lecture_page};
pub use maximum::{maximum_csv, maximum_json, maximum_text};
pub use plan_record::PlanRecord;
pub use plan_text::{plan_cautions, plan_csv, plan_text};
pub use progress::{trend_csv, trend_json, trend_text};
pub use ranks::{rank_csv, rank_json, rank_table};
pub use repetition::{repetition_csv, repetition_json, repetition_text, versus_json, versus_text};
pub use sample::{Sample, samples};
pub use setup_ranking::ranking_table;
pub use setup_rows::{SetupRow, ranking_csv, ranking_json, setup_row};
pub use sheet_html::sheet_html;
pub use summary::{Summary, summary};
pub use table::{curve_table, findings, table};
