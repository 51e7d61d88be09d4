//! A text that a picture carries about itself, unseen: in SVG the element `<metadata>`, in PNG a chunk of text.
//!
//! In: a text in ASCII without control characters; bytes of a picture. Out: the element, or the text back.

#[cfg(feature = "program")]
use crate::error::PictureDamage;

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
///
/// **Fails** where a chunk is not as it was written, or the end is missing: what a damaged picture says is not trusted.
#[cfg(feature = "program")]
fn metadata_of_png(bytes: &[u8]) -> Result<Option<String>, PictureDamage> {
    let mut at = PNG_BEGINS.len();
    let mut found = None;
    loop {
        let chunk = PngChunk::at(bytes, at)?;
        if chunk.kind == b"tEXt"
            && let Some(text) = chunk.text_of(METADATA)
        {
            found.get_or_insert(text);
        }
        if chunk.kind == b"IEND" {
            return Ok(found);
        }
        at += CHUNK_FRAME + chunk.data.len();
    }
}

/// Bytes of a chunk beside its data: length, kind, checksum.
#[cfg(feature = "program")]
const CHUNK_FRAME: usize = 12;

/// A chunk of a PNG.
#[cfg(feature = "program")]
struct PngChunk<'a> {
    kind: &'a [u8],
    data: &'a [u8],
}

#[cfg(feature = "program")]
impl<'a> PngChunk<'a> {
    /// The chunk that begins at a byte.
    ///
    /// **Fails** where the file ends before it does, and where its checksum is another.
    fn at(bytes: &'a [u8], at: usize) -> Result<Self, PictureDamage> {
        let cut = || PictureDamage::CutShort { bytes: bytes.len() };
        let rest = bytes.get(at..).ok_or_else(cut)?;
        let number = |place: usize| {
            let four = rest.get(place..place + 4)?;
            Some(u32::from_be_bytes(four.try_into().ok()?))
        };
        let length = number(0).ok_or_else(cut)? as usize;
        let summed = rest.get(4..8 + length).ok_or_else(cut)?;
        let told = number(8 + length).ok_or_else(cut)?;
        if told != crc32fast::hash(summed) {
            return Err(PictureDamage::CheckSum { byte: at + 1 });
        }
        let (kind, data) = summed.split_at(4);
        Ok(Self { kind, data })
    }

    /// The text behind a keyword, in ASCII as it was written.
    fn text_of(&self, keyword: &str) -> Option<String> {
        let text = self.data.strip_prefix(keyword.as_bytes())?;
        let text = text.strip_prefix(&[0])?;
        Some(text.iter().map(|byte| char::from(*byte)).collect())
    }
}

/// The text that a picture carries, SVG or PNG; `None` for another file, and for a picture without one.
///
/// **Fails** for a PNG that is damaged.
#[cfg(feature = "program")]
pub fn metadata(bytes: &[u8]) -> Result<Option<String>, PictureDamage> {
    if bytes.starts_with(PNG_BEGINS) {
        return metadata_of_png(bytes);
    }
    Ok(std::str::from_utf8(bytes).ok().and_then(metadata_of_svg))
}
