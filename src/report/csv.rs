//! CSV: one row a sample, the header names quantity and unit.

/// Any table as CSV.
#[must_use]
pub fn rows_to_csv(header: &[&str], rows: impl Iterator<Item = Vec<String>>) -> String {
    const IN_MEMORY: &str = "memory can be written, and every row is as long as the header";
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(header).expect(IN_MEMORY);
    for row in rows {
        writer.write_record(row).expect(IN_MEMORY);
    }
    let bytes = writer.into_inner().expect(IN_MEMORY);
    String::from_utf8(bytes).expect("all of it was text")
}
