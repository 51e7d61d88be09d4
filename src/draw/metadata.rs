//! A text that a picture carries about itself, unseen: in SVG the element `<metadata>`, in PNG a chunk of text.
//!
//! In: a text in ASCII without control characters; bytes of a picture. Out: the element, or the text back.

/// Name of the element and keyword of the chunk.
pub(super) const METADATA: &str = "provenance";

/// What a picture in PNG begins with.
#[cfg(feature = "program")]
const PNG_BEGINS: &[u8] = b"\x89PNG\r\n\x1a\n";

/// Signs that XML reserves, and how they are written.
const RESERVED: [(char, &str); 3] = [('&', "&amp;"), ('<', "&lt;"), ('>', "&gt;")];

/// The element that carries a text; nothing for an empty one.
#[must_use]
pub fn metadata_element(text: &str) -> String {
    if text.is_empty() {
        return String::new();
    }
    let mut safe = String::with_capacity(text.len());
    for sign in text.chars() {
        match RESERVED.iter().find(|(reserved, _)| *reserved == sign) {
            Some((_, written)) => safe.push_str(written),
            None => safe.push(sign),
        }
    }
    format!("<metadata id=\"{METADATA}\">{safe}</metadata>\n")
}

/// The text that an SVG carries, if it carries one.
#[cfg(any(feature = "program", test))]
#[must_use]
pub fn metadata_of_svg(svg: &str) -> Option<String> {
    let begin = format!("<metadata id=\"{METADATA}\">");
    let (_, behind) = svg.split_once(&begin)?;
    let (written, _) = behind.split_once("</metadata>")?;
    // `&` comes last, so that "&amp;lt;" becomes "&lt;" and no further.
    let plain = RESERVED.iter().rev();
    Some(plain.fold(written.to_owned(), |text, (sign, written)| {
        text.replace(written, &sign.to_string())
    }))
}

/// The text that a PNG carries, if it carries one.
#[cfg(feature = "program")]
fn metadata_of_png(bytes: &[u8]) -> Option<String> {
    let limits = png::Limits { bytes: 16 << 20 };
    let decoder = png::Decoder::new_with_limits(std::io::Cursor::new(bytes), limits);
    let reader = decoder.read_info().ok()?;
    let mut texts = reader.info().uncompressed_latin1_text.iter();
    let own = texts.find(|chunk| chunk.keyword == METADATA)?;
    Some(own.text.clone())
}

/// The text that a picture carries, SVG or PNG; `None` for another file, and for a picture without one.
#[cfg(feature = "program")]
#[must_use]
pub fn metadata(bytes: &[u8]) -> Option<String> {
    if bytes.starts_with(PNG_BEGINS) {
        return metadata_of_png(bytes);
    }
    metadata_of_svg(std::str::from_utf8(bytes).ok()?)
}
