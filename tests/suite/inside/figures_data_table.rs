//! What `src/figures/data_table.rs` does, from inside.

use torquill::figures::data_table::{column, figure};

#[test]
fn law_columns_are_snake_case_with_their_unit() {
    assert_eq!(
        column("Torque at the elbow", "N·m"),
        "torque_at_the_elbow_nm"
    );
    assert_eq!(
        column("Force, share of peak", "%"),
        "force_share_of_peak_percent"
    );
    assert_eq!(column("Range", ""), "range");
}

#[test]
fn law_figures_of_data_files_hide_the_last_bits() {
    assert_eq!(figure(0.1 + 0.2), "0.3");
    assert_eq!(figure(-0.0), "0");
    assert_eq!(figure(1234.5), "1234.5");
}
