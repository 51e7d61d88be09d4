//! What `src/report/lecture_page.rs` does, from inside.

use torquill::report::lecture_page::*;

#[test]
fn law_words_are_escaped() {
    let head = PageHead {
        lifter: "A & B".to_owned(),
        is_dark: false,
        sources: vec!["C & D (1999)".to_owned()],
    };
    let figure = PageFigure {
        file: "01-x".to_owned(),
        idea: "a < b".to_owned(),
        title: "T.".to_owned(),
        caption: "c".to_owned(),
        alt: "say \"x\"".to_owned(),
        notes: vec!["Ask: a < b?".to_owned()],
        live: Some("lab.html#lift=squat&at=1".to_owned()),
        pixels: (10, 5),
    };
    let page = lecture_page(&head, &[figure]);
    assert!(page.contains("A &amp; B") && page.contains("a &lt; b"));
    assert!(page.contains("alt=\"say &quot;x&quot;\"") && page.contains("<strong>T.</strong>"));
    assert!(page.contains("<a href=\"lab.html#lift=squat&amp;at=1\">live page</a>"));
    assert!(page.contains("<a href=\"#sources\">Sources</a>"));
    assert!(page.contains("<h2>Sources</h2>\n<ul>\n<li>C &amp; D (1999)</li>"));
    assert!(!page.contains("http"), "nothing from outside");
}
