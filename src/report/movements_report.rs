//! The list of movements as text, CSV and JSON.
//!
//! In: [`ListedMovement`]s. Out: text.

use super::json::pretty_list;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use crate::study::ListedMovement;
use serde::Serialize;

const COLUMNS: [&str; 6] = ["movement", "title", "class", "joints", "axis", "technique"];

#[derive(Serialize)]
struct MovementRow<'a> {
    movement: &'a str,
    title: &'a str,
    class: &'static str,
    joints: Vec<&'static str>,
    axis: &'a str,
    technique: &'a [String],
    limits: &'a str,
    checks: &'a str,
}

/// The list as text.
#[must_use]
pub fn movements_table(movements: &[ListedMovement]) -> String {
    let rows = movements.iter().map(cells).collect();
    table(&COLUMNS, rows, COLUMNS.len())
}

/// The list as a table: a row a movement.
#[must_use]
pub fn movements_data(movements: &[ListedMovement]) -> TidyTable {
    TidyTable::of(
        movements
            .iter()
            .map(|movement| Cells::of(&movement_row(movement))),
    )
}

fn cells(movement: &ListedMovement) -> Vec<String> {
    vec![
        movement.name.clone(),
        movement.title.clone(),
        movement.class.word().to_owned(),
        joints(movement).join(", "),
        movement.axis.clone(),
        movement.technique.join(", "),
    ]
}

/// The list as JSON, with what limits and backs each model.
#[must_use]
pub fn movements_json(movements: &[ListedMovement]) -> String {
    pretty_list(&movements.iter().map(movement_row).collect::<Vec<_>>())
}

fn movement_row(movement: &ListedMovement) -> MovementRow<'_> {
    MovementRow {
        movement: &movement.name,
        title: &movement.title,
        class: movement.class.word(),
        joints: joints(movement),
        axis: &movement.axis,
        technique: &movement.technique,
        limits: &movement.limits,
        checks: &movement.checks,
    }
}

fn joints(movement: &ListedMovement) -> Vec<&'static str> {
    movement.joints.iter().map(|joint| joint.name()).collect()
}
