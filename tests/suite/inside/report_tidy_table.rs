//! What `src/report/tidy_table.rs` does, from inside.

use serde_json::json;
use torquill::report::tidy_table::{Cells, TidyTable};

#[test]
fn law_rows_are_flattened_and_columns_joined() {
    let first =
        json!({"a": 1, "b": {"c": -0.5, "d": null}, "list": ["x", 2], "objects": [{"e": 1}]});
    let second = json!({"a": true, "f": "=1+1"});
    let table = TidyTable::of([&first, &second].map(Cells::of));
    assert_eq!(
        table.csv(),
        "a,b.c,b.d,list,f\n1,-0.5,,x; 2,\ntrue,,,,'=1+1\n"
    );
}

#[test]
fn law_an_object_that_is_missing_somewhere_leaves_no_empty_column() {
    let rows = [json!({"a": null, "b": 1}), json!({"a": {"c": 2}, "b": 3})];
    let table = TidyTable::of(rows.iter().map(Cells::of));
    assert_eq!(table.csv(), "b,a.c\n1,\n3,2\n");
}

#[test]
fn law_texts_are_guarded_and_numbers_are_not() {
    for (value, cell) in [
        (json!("+10%"), "'+10%"),
        (json!("-20%"), "'-20%"),
        (json!("@x"), "'@x"),
        (json!("\tx"), "'\tx"),
        (json!("\rx"), "\"'\rx\""),
        (json!("a=b"), "a=b"),
        (json!("-1.5"), "'-1.5"),
        (json!(-1.5), "-1.5"),
        (json!(1.0e-7), "1e-7"),
    ] {
        let table = TidyTable::of([Cells::of(&json!({"x": value}))]);
        assert_eq!(table.csv(), format!("x\n{cell}\n"));
    }
}
