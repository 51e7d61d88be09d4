//! What `src/progress/log_table.rs` does, from inside.

use torquill::progress::log_table::LogTable;

fn rows(text: &str) -> Vec<(usize, Vec<String>)> {
    let table = LogTable::of("log.csv", text);
    let mut found = Vec::new();
    table.rows(|row| {
        found.push((row.line, row.fields().map(str::to_owned).collect()));
        true
    });
    found
}

#[test]
fn law_rows_know_their_lines_behind_remarks_and_notes() {
    let text = "\u{feff}# mine\r\n\r\na;b;c\r\n1;\"two\r\nlines; \"\"so\"\"\";3\r\n;;\r\n # also mine;;\r\n4;5;6\r\n";
    let found = rows(text);
    let lines: Vec<usize> = found.iter().map(|(line, _)| *line).collect();
    assert_eq!(lines, [3, 4, 8]);
    assert_eq!(found[1].1[1], "two\r\nlines; \"so\"");
}

#[test]
fn law_separators_are_told_by_the_first_row() {
    for (text, width) in [
        ("a,b,c", 3),
        ("a;b,x;c", 3),
        ("a\tb\tc,d", 3),
        ("\"a;b;c;d\",b,c", 3),
        ("alone", 1),
        ("A title, of mine\na;b;c;d", 1),
    ] {
        assert_eq!(rows(text)[0].1.len(), width, "{text}");
    }
    assert_eq!(rows("A title, of mine\na;b;c;d")[1].1.len(), 4);
    assert_eq!(rows("a,b\r1,2\r3,4\r").len(), 3);
}

#[test]
fn law_places_are_those_of_the_fields() {
    let text = "a;b\n  x ; \"y\"\n\"é\"\"; \";2\n";
    let table = LogTable::of("log.csv", text);
    let place = |start: usize, field| {
        let place = table.place(start, field);
        (place.start, place.end, text[place.bytes()].to_owned())
    };
    assert_eq!(place(4, Some(0)), ((2, 3), (2, 4), "x".to_owned()));
    assert_eq!(place(4, Some(1)).2, "\"y\"");
    let third = text.find("\"é").expect("it is there");
    assert_eq!(place(third, Some(1)).2, "2");
    assert_eq!(place(third, None).2, "\"é\"\"; \";2");
    assert!(!table.has_open_quote(third));
    assert!(LogTable::of("f", "a;\"b\nc;d\n").has_open_quote(0));
}
