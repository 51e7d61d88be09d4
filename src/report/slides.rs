//! Slides: one presentation of Office Open XML (ECMA-376), a picture a slide with title, notes and alternative text.
//!
//! In: a [`Deck`] of titles, words and PNG pictures. Out: the bytes of a .pptx file, the same every time. Of the
//! format's many parts only those that every reader asks for are written; the fixed ones lie beside this file.

use super::deck::{Deck, Slide};
use super::lecture_page::escaped;
use crate::draw::{Colour, Face, Theme, lettering};
use std::io::{Cursor, Write};
use zip::result::ZipResult;
use zip::write::{SimpleFileOptions, ZipWriter};

/// English Metric Units a pixel of a slide of 1920 × 1080 pixels: 914,400 an inch, 13 1/3 inches across.
const EMU_A_PIXEL: u32 = 6350;
/// Size of a slide in pixels.
const SLIDE: [u32; 2] = [1920, 1080];
/// Size of a title, and the least one before it is cut, pixels.
const TITLE: [f64; 2] = [54.0, 36.0];
/// Room for a title across, pixels: that of the master.
const TITLE_WIDTH: f64 = 1776.0;
/// Share of that room in which a title fits: where a reader's machine lacks the letters, wider ones stand in, by up to a fifth.
const WITH_WIDER_LETTERS: f64 = 0.82;

/// Edges of the words of the last slides: left (and right), top and bottom, pixels; columns, and the room between two.
const LAST_EDGES: [u32; 3] = [72, 160, 36];
const LAST_COLUMNS: [u32; 2] = [2, 36];
/// Size of these words, points: what is read from the middle of a lecture room (assumed); a point is two pixels.
const LAST_SIZE: u32 = 14;
/// Room between two of them, points, and a line's height over its size.
const LAST_BETWEEN: u32 = 4;
const LAST_LINE: f64 = 1.2;

const NAMESPACES: &str = "xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"";
const DECLARED: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
const KIND: &str = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const MAIN: &str = "application/vnd.openxmlformats-officedocument.presentationml";

/// The presentation as a .pptx file.
///
/// **Fails** with what the writer of the archive says.
pub fn slides(deck: &Deck) -> Result<Vec<u8>, String> {
    written(deck).map_err(|fault| fault.to_string())
}

fn written(deck: &Deck) -> ZipResult<Vec<u8>> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, text) in fixed_parts(deck) {
        archive.start_file(name, SimpleFileOptions::default())?;
        archive.write_all(text.as_bytes())?;
    }
    for (number, slide) in (1..).zip(&deck.slides) {
        for (name, text) in slide_parts(number, slide) {
            archive.start_file(name, SimpleFileOptions::default())?;
            archive.write_all(text.as_bytes())?;
        }
        // A PNG is packed already.
        let as_it_is =
            SimpleFileOptions::default().compression_method(zip::CompressionMethod::Stored);
        archive.start_file(format!("ppt/media/image{number}.png"), as_it_is)?;
        archive.write_all(&slide.picture)?;
    }
    for (number, (page, lists)) in (deck.slides.len() + 1..).zip(last_pages(deck)) {
        for (name, text) in last_parts(number, &page, &lists) {
            archive.start_file(name, SimpleFileOptions::default())?;
            archive.write_all(text.as_bytes())?;
        }
    }
    Ok(archive.finish()?.into_inner())
}

/// Everything that is there once.
fn fixed_parts(deck: &Deck) -> Vec<(String, String)> {
    let theme = themed(deck.theme);
    let count = deck.slides.len();
    let all = count + last_pages(deck).len();
    let named = |name: &str, text: String| (name.to_owned(), text);
    let fixed = |text: &str| text.to_owned();
    vec![
        named("[Content_Types].xml", content_types([count, all])),
        named(
            "_rels/.rels",
            relations(&[
                ("officeDocument", "ppt/presentation.xml"),
                ("metadata/core-properties", "docProps/core.xml"),
            ]),
        ),
        named("docProps/core.xml", core(deck)),
        named("ppt/presentation.xml", presentation(all)),
        named(
            "ppt/_rels/presentation.xml.rels",
            presentation_relations(all),
        ),
        named("ppt/theme/theme1.xml", theme.clone()),
        named("ppt/theme/theme2.xml", theme),
        named(
            "ppt/slideMasters/slideMaster1.xml",
            fixed(include_str!("slide_parts/master.xml")),
        ),
        named(
            "ppt/slideMasters/_rels/slideMaster1.xml.rels",
            relations(&[
                ("slideLayout", "../slideLayouts/slideLayout1.xml"),
                ("theme", "../theme/theme1.xml"),
            ]),
        ),
        named(
            "ppt/slideLayouts/slideLayout1.xml",
            fixed(include_str!("slide_parts/layout.xml")),
        ),
        named(
            "ppt/slideLayouts/_rels/slideLayout1.xml.rels",
            relations(&[("slideMaster", "../slideMasters/slideMaster1.xml")]),
        ),
        named(
            "ppt/notesMasters/notesMaster1.xml",
            fixed(include_str!("slide_parts/notes_master.xml")),
        ),
        named(
            "ppt/notesMasters/_rels/notesMaster1.xml.rels",
            relations(&[("theme", "../theme/theme2.xml")]),
        ),
    ]
}

/// Slide and notes with what they refer to.
fn slide_parts(number: usize, slide: &Slide) -> [(String, String); 4] {
    [
        (format!("ppt/slides/slide{number}.xml"), slide_part(slide)),
        (
            format!("ppt/slides/_rels/slide{number}.xml.rels"),
            relations(&[
                ("slideLayout", "../slideLayouts/slideLayout1.xml"),
                ("image", &format!("../media/image{number}.png")),
                (
                    "notesSlide",
                    &format!("../notesSlides/notesSlide{number}.xml"),
                ),
            ]),
        ),
        (
            format!("ppt/notesSlides/notesSlide{number}.xml"),
            notes_part(slide),
        ),
        (
            format!("ppt/notesSlides/_rels/notesSlide{number}.xml.rels"),
            relations(&[
                ("notesMaster", "../notesMasters/notesMaster1.xml"),
                ("slide", &format!("../slides/slide{number}.xml")),
            ]),
        ),
    ]
}

/// A slide of words: its title, and the lines of each of its columns.
type LastPage<'d> = (String, Vec<&'d [String]>);

/// The slides of words behind all others, as many as find room in their columns; no line goes on in the next column.
fn last_pages(deck: &Deck) -> Vec<LastPage<'_>> {
    let [left, top, bottom] = LAST_EDGES;
    let [columns, between] = LAST_COLUMNS;
    let size = 2.0 * f64::from(LAST_SIZE);
    let width = f64::from(SLIDE[0] - 2 * left - (columns - 1) * between) / f64::from(columns);
    let most = f64::from(SLIDE[1] - top - bottom);
    let height = |line: &String| {
        let room = WITH_WIDER_LETTERS * width;
        let fitted = lettering::fit(line, size, size, Face::Regular, room, usize::MAX);
        fitted.lines.len() as f64 * LAST_LINE * size + 2.0 * f64::from(LAST_BETWEEN)
    };
    let heights: Vec<f64> = deck.last.iter().map(height).collect();
    let needed = filled_columns(&heights, most).len();
    let pages = needed.div_ceil(columns as usize).max(1);
    // About as much in every column as in the others, of all slides.
    let share = heights.iter().sum::<f64>() / (pages * columns as usize) as f64;
    let even = (0..).map(|step| share + f64::from(step) * LAST_LINE * size);
    let even = even.take_while(|room| *room < most);
    let even = even.map(|room| filled_columns(&heights, room));
    let ends = even
        .into_iter()
        .find(|ends| ends.len() <= pages * columns as usize)
        .unwrap_or_else(|| filled_columns(&heights, most));
    let begins = std::iter::once(0).chain(ends.iter().copied());
    let all: Vec<&[String]> = begins
        .zip(&ends)
        .map(|(from, to)| &deck.last[from..*to])
        .collect();
    let count = all.chunks(columns as usize).count();
    let title = |number: usize| match count {
        1 => deck.last_title.clone(),
        _ => format!("{} {number}/{count}", deck.last_title),
    };
    (1..)
        .zip(all.chunks(columns as usize))
        .map(|(number, columns)| (title(number), columns.to_vec()))
        .collect()
}

/// Where each column ends, behind as many whole lines as fit into its room; a line that is higher stands alone.
fn filled_columns(heights: &[f64], room: f64) -> Vec<usize> {
    let mut ends = Vec::new();
    let mut filled = 0.0;
    for (index, height) in heights.iter().enumerate() {
        if filled > 0.0 && filled + height > room {
            ends.push(index);
            filled = 0.0;
        }
        filled += height;
    }
    if !heights.is_empty() {
        ends.push(heights.len());
    }
    ends
}

/// A slide of words, with what it refers to.
fn last_parts(number: usize, title: &str, lists: &[&[String]]) -> [(String, String); 2] {
    let [left, top, bottom] = LAST_EDGES;
    let [columns, between] = LAST_COLUMNS;
    let emu = |pixels: u32| (pixels * EMU_A_PIXEL).to_string();
    let width = (SLIDE[0] - 2 * left - (columns - 1) * between) / columns;
    let paragraph = |line: &String| {
        format!(
            "<a:p><a:pPr><a:spcAft><a:spcPts val=\"{}\"/></a:spcAft></a:pPr><a:r><a:rPr lang=\"en-GB\" sz=\"{}\"/>\
             <a:t>{}</a:t></a:r></a:p>",
            100 * LAST_BETWEEN,
            100 * LAST_SIZE,
            escaped(line)
        )
    };
    let column = |(index, lines): (u32, &&[String])| {
        include_str!("slide_parts/column.xml")
            .trim_end()
            .replace("{id}", &(3 + index).to_string())
            .replace("{left}", &emu(left + index * (width + between)))
            .replace("{top}", &emu(top))
            .replace("{width}", &emu(width))
            .replace("{height}", &emu(SLIDE[1] - top - bottom))
            .replace(
                "{paragraphs}",
                &lines.iter().map(paragraph).collect::<String>(),
            )
    };
    let lists: String = (0..).zip(lists).map(column).collect();
    let slide = include_str!("slide_parts/sources.xml")
        .replace("{title}", &escaped(title))
        .replace("{columns}", &lists);
    [
        (format!("ppt/slides/slide{number}.xml"), slide),
        (
            format!("ppt/slides/_rels/slide{number}.xml.rels"),
            relations(&[("slideLayout", "../slideLayouts/slideLayout1.xml")]),
        ),
    ]
}

/// A list of what a part refers to; the identifiers are rId1, rId2, …
fn relations(targets: &[(&str, &str)]) -> String {
    let mut text = format!("{DECLARED}<Relationships {NAMESPACES}>");
    for (number, (kind, target)) in (1..).zip(targets) {
        let kind = match *kind {
            "metadata/core-properties" => {
                format!("http://schemas.openxmlformats.org/package/2006/relationships/{kind}")
            }
            kind => format!("{KIND}/{kind}"),
        };
        text += &format!("<Relationship Id=\"rId{number}\" Type=\"{kind}\" Target=\"{target}\"/>");
    }
    text + "</Relationships>"
}

fn presentation_relations(count: usize) -> String {
    let slides: Vec<String> = (1..=count)
        .map(|number| format!("slides/slide{number}.xml"))
        .collect();
    let mut targets = vec![
        ("slideMaster", "slideMasters/slideMaster1.xml"),
        ("notesMaster", "notesMasters/notesMaster1.xml"),
        ("theme", "theme/theme1.xml"),
    ];
    targets.extend(slides.iter().map(|slide| ("slide", slide.as_str())));
    relations(&targets)
}

/// Size, masters, and the slides in order: identifiers of slides begin at 256, their relations behind the three others.
fn presentation(count: usize) -> String {
    let [width, height] = SLIDE.map(|pixels| pixels * EMU_A_PIXEL);
    let slides: String = (1..=count)
        .map(|number| {
            format!(
                "<p:sldId id=\"{}\" r:id=\"rId{}\"/>",
                255 + number,
                3 + number
            )
        })
        .collect();
    format!(
        "{DECLARED}<p:presentation xmlns:a=\"http://schemas.openxmlformats.org/drawingml/2006/main\" xmlns:r=\"{KIND}\" \
         xmlns:p=\"http://schemas.openxmlformats.org/presentationml/2006/main\"><p:sldMasterIdLst>\
         <p:sldMasterId id=\"2147483648\" r:id=\"rId1\"/></p:sldMasterIdLst><p:notesMasterIdLst>\
         <p:notesMasterId r:id=\"rId2\"/></p:notesMasterIdLst><p:sldIdLst>{slides}</p:sldIdLst>\
         <p:sldSz cx=\"{width}\" cy=\"{height}\"/><p:notesSz cx=\"6858000\" cy=\"9144000\"/></p:presentation>"
    )
}

/// Kinds of all parts: so many slides have notes, and so many are there in all.
fn content_types([count, all]: [usize; 2]) -> String {
    let mut text = format!(
        "{DECLARED}<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">\
         <Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>\
         <Default Extension=\"xml\" ContentType=\"application/xml\"/><Default Extension=\"png\" ContentType=\"image/png\"/>"
    );
    let mut part = |name: &str, kind: &str| {
        text += &format!("<Override PartName=\"/{name}\" ContentType=\"{kind}\"/>");
    };
    let theme = "application/vnd.openxmlformats-officedocument.theme+xml";
    part(
        "docProps/core.xml",
        "application/vnd.openxmlformats-package.core-properties+xml",
    );
    part(
        "ppt/presentation.xml",
        &format!("{MAIN}.presentation.main+xml"),
    );
    part("ppt/theme/theme1.xml", theme);
    part("ppt/theme/theme2.xml", theme);
    let parts = [
        ("slideMasters/slideMaster1", "slideMaster"),
        ("slideLayouts/slideLayout1", "slideLayout"),
        ("notesMasters/notesMaster1", "notesMaster"),
    ];
    for (name, kind) in parts {
        part(&format!("ppt/{name}.xml"), &format!("{MAIN}.{kind}+xml"));
    }
    let parts = [
        ("slides", "slide", all),
        ("notesSlides", "notesSlide", count),
    ];
    for (folder, kind, many) in parts {
        for number in 1..=many {
            part(
                &format!("ppt/{folder}/{kind}{number}.xml"),
                &format!("{MAIN}.{kind}+xml"),
            );
        }
    }
    text + "</Types>"
}

fn core(deck: &Deck) -> String {
    format!(
        "{DECLARED}<cp:coreProperties \
         xmlns:cp=\"http://schemas.openxmlformats.org/package/2006/metadata/core-properties\" \
         xmlns:dc=\"http://purl.org/dc/elements/1.1/\"><dc:title>{}</dc:title><dc:description>{}</dc:description>\
         </cp:coreProperties>",
        escaped(&deck.title),
        escaped(&deck.making)
    )
}

/// The theme's colours as those of the presentation.
fn themed(theme: Theme) -> String {
    let colours = theme.colours();
    let mut text = include_str!("slide_parts/theme.xml").to_owned();
    let named = [
        ("{ink}", colours.ink),
        ("{ground}", colours.background),
        ("{muted}", colours.muted),
        ("{grid}", colours.grid),
    ];
    for (mark, colour) in named {
        text = text.replace(mark, &hex(colour));
    }
    for (number, colour) in colours.series.iter().enumerate() {
        text = text.replace(&format!("{{series{number}}}"), &hex(*colour));
    }
    text
}

fn hex(colour: Colour) -> String {
    format!("{:02X}{:02X}{:02X}", colour.red, colour.green, colour.blue)
}

/// The picture stands at the bottom; the title above it is made smaller before it takes more than two lines. Words that the
/// picture found no room for stand between both.
fn slide_part(slide: &Slide) -> String {
    let [size, least] = TITLE;
    let room = WITH_WIDER_LETTERS * TITLE_WIDTH;
    let (width, height) = slide.pixels;
    let top = SLIDE[1] - height;
    let said = slide.words.join(" ");
    let (fitted, place, words) = if said.is_empty() {
        let fitted = lettering::fit(&slide.title, size, least, Face::Bold, room, 2);
        (fitted, String::new(), String::new())
    } else {
        let text = 2.0 * f64::from(LAST_SIZE);
        let lines = lettering::fit(&said, text, text, Face::Regular, room, usize::MAX).lines;
        let high = (LAST_LINE * text * lines.len() as f64).ceil() as u32;
        let left = top.saturating_sub(high);
        // On one line or on two, whichever is larger.
        let most = [1, 2].map(|lines| (lines, f64::from(left) / (LAST_LINE * lines as f64)));
        let ways = most.map(|(lines, most)| {
            let most = most.min(size);
            lettering::fit(&slide.title, most, most.min(least), Face::Bold, room, lines)
        });
        let is_cut = |way: &lettering::Fitted| way.lines.iter().any(|line| line.ends_with('…'));
        let [one, two] = ways;
        let fitted = match is_cut(&one) || (!is_cut(&two) && two.size > one.size) {
            true => two,
            false => one,
        };
        let words = include_str!("slide_parts/words.xml")
            .replace("{place}", &placed(left, high))
            .replace("{size}", &(100 * LAST_SIZE).to_string())
            .replace("{words}", &escaped(&said));
        (fitted, placed(0, left), words)
    };
    // A point is two pixels of a slide that is 540 points high, and sizes are told in hundredths of it.
    let hundredths = (50.0 * fitted.size).round();
    include_str!("slide_parts/slide.xml")
        .replace("{size}", &format!("{hundredths:.0}"))
        .replace("{place}", &place)
        .replace("{top}", &(top * EMU_A_PIXEL).to_string())
        .replace("{width}", &(width * EMU_A_PIXEL).to_string())
        .replace("{height}", &(height * EMU_A_PIXEL).to_string())
        .replace("{name}", &escaped(&slide.name))
        .replace("{title}", &escaped(&slide.title))
        .replace("{words}", &words)
        .replace("{alt}", &escaped(&slide.alt))
}

/// The place of words above the picture, from the top and so high, pixels.
fn placed(top: u32, height: u32) -> String {
    let [left, ..] = LAST_EDGES;
    let [left, top, width, height] =
        [left, top, SLIDE[0] - 2 * left, height].map(|pixels| pixels * EMU_A_PIXEL);
    format!(
        "<a:xfrm><a:off x=\"{left}\" y=\"{top}\"/><a:ext cx=\"{width}\" cy=\"{height}\"/></a:xfrm>"
    )
}

fn notes_part(slide: &Slide) -> String {
    let paragraphs = slide.notes.iter().map(|line| {
        format!(
            "<a:p><a:r><a:rPr lang=\"en-GB\"/><a:t>{}</a:t></a:r></a:p>",
            escaped(line)
        )
    });
    include_str!("slide_parts/notes.xml").replace("{paragraphs}", &paragraphs.collect::<String>())
}
