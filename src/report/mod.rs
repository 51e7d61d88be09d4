//! Results to table, CSV and JSON.
