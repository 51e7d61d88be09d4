//! What `src/progress/log_header.rs` does, from inside.

use torquill::error::LogColumn;
use torquill::progress::log_header::known;

#[test]
fn law_headings_tell_column_and_unit() {
    for (heading, column, unit) in [
        ("Weight (kg)", LogColumn::Load, Some("kg")),
        ("load_lb", LogColumn::Load, Some("lb")),
        ("Load [lbs]", LogColumn::Load, Some("lb")),
        ("weight kg", LogColumn::Load, Some("kg")),
        ("WEIGHT", LogColumn::Load, None),
        ("Load (both sides)", LogColumn::Load, None),
        ("Mean velocity [m/s]", LogColumn::Velocity, Some("m/s")),
        ("velocity_m_s", LogColumn::Velocity, Some("m/s")),
        ("Sets x reps", LogColumn::Repetitions, None),
        ("RIR", LogColumn::Reserve, None),
        ("Exercise", LogColumn::Lift, None),
        ("Übung", LogColumn::Lift, None),
        ("Gewicht (kg)", LogColumn::Load, Some("kg")),
        ("Wdh.", LogColumn::Repetitions, None),
    ] {
        assert_eq!(known(heading), Some((column, unit)), "{heading}");
    }
    for heading in ["Set", "Duration", "kg", "Time", "", "Distance (m)"] {
        assert_eq!(known(heading), None, "{heading}");
    }
}
