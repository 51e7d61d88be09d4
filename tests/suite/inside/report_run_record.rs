//! What `src/report/run_record.rs` does, from inside.

use torquill::report::run_record::{ModelFileRecord, RunRecord};

fn odd() -> RunRecord {
    RunRecord {
        arguments: [
            "curve",
            "x",
            "--set",
            "a=\"ü\u{1f4aa}\n\u{7f}\u{85}</metadata>&amp;# b: c\"",
        ]
        .map(str::to_owned)
        .to_vec(),
        setup: vec!["--load \"80 kg\"".to_owned()],
        models: vec![ModelFileRecord {
            name: "lifters/é.ron".to_owned(),
            hash: "sha256:00".to_owned(),
            replaced: true,
        }],
        ..RunRecord::default()
    }
}

#[test]
fn law_a_record_comes_back_from_every_form() {
    let record = odd();
    let line = record.line();
    assert!(
        line.bytes().all(|byte| (b' '..=b'~').contains(&byte)),
        "{line}"
    );
    assert_eq!(RunRecord::from_line(&line), Ok(record.clone()));
    let json = format!("{{\"contract_version\": 2, \"provenance\": {line}, \"x\": []}}");
    assert_eq!(RunRecord::from_json(&json), Ok(Some(record.clone())));
    let csv = format!("{}range,effort\n0,1\n", record.csv_head());
    assert_eq!(RunRecord::from_csv_head(&csv), Ok(Some(record)));
}

#[test]
fn fault_a_text_without_a_record_gives_none_or_says_why() {
    assert_eq!(RunRecord::from_json("{\"a\": 1}"), Ok(None));
    assert_eq!(RunRecord::from_csv_head("range,effort\n0,1\n"), Ok(None));
    for bad in [
        "",
        "[]",
        "{\"provenance\": 3}",
        "{\"provenance\": {\"program\": \"x\"}}",
    ] {
        assert!(RunRecord::from_json(bad).is_err(), "{bad}");
    }
    assert!(RunRecord::from_csv_head("# program: x\n").is_err());
    assert!(RunRecord::from_line("{\"program\": 1}").is_err());
}
