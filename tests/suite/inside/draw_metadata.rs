//! What `src/draw/metadata.rs` does, from inside.

use torquill::draw::metadata::{metadata_element, metadata_of_svg};

#[test]
fn law_a_text_comes_back_as_it_was() {
    for text in [
        "{\"a\":[1,2]}",
        "<&>",
        "&amp;lt;",
        "</metadata>",
        "]]>",
        "\\u00e9",
    ] {
        let svg = format!("<svg><title>t</title>\n{}</svg>", metadata_element(text));
        assert_eq!(metadata_of_svg(&svg).as_deref(), Some(text), "{svg}");
    }
    assert_eq!(metadata_element(""), "");
    assert_eq!(metadata_of_svg("<svg></svg>"), None);
    assert_eq!(metadata_of_svg("<svg><metadata id=\"provenance\">"), None);
}
