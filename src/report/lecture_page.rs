//! The page that shows all figures of a lecture: one HTML file that needs nothing from outside.
//!
//! In: names and words of the figures. Out: HTML with its style inside; works from disk, prints two
//! figures a page, every picture with its alternative text.

use crate::narrative::source_words::SOURCES_TITLE;

/// The presentation beside the page.
pub const SLIDES: &str = "lecture.pptx";

/// The live page beside the page.
pub const LIVE: &str = "lab.html";

/// One figure of the page.
#[derive(Debug, Clone, PartialEq)]
pub struct PageFigure {
    /// Name of its files without ending.
    pub file: String,
    /// The one idea it teaches.
    pub idea: String,
    /// The finding.
    pub title: String,
    /// What is said to it.
    pub caption: String,
    /// What it shows, for those who cannot see it.
    pub alt: String,
    /// What a speaker says to it, a paragraph each.
    pub notes: Vec<String>,
    /// The live page's address of the same lift, where there is one.
    pub live: Option<String>,
    /// Width and height of the picture, pixels.
    pub pixels: (u32, u32),
}

/// What the page says about the whole set.
#[derive(Debug, Clone, PartialEq)]
pub struct PageHead {
    /// Whose curves.
    pub lifter: String,
    /// Whether the pictures have a dark ground.
    pub is_dark: bool,
    /// Publications that the figures rest on, in full, and what their marks mean.
    pub sources: Vec<String>,
}

/// The page.
#[must_use]
pub fn lecture_page(head: &PageHead, figures: &[PageFigure]) -> String {
    let theme = if head.is_dark { "dark" } else { "light" };
    let mut html = format!(
        "<!doctype html>\n<html lang=\"en\" data-theme=\"{theme}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>Strength curves: {count} lecture figures</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n\
         <header>\n<p class=\"kind\">Lecture figures</p>\n<h1>Strength curves</h1>\n\
         <p>{count} figures in teaching order, one idea each, computed for: {lifter}. Every picture comes as SVG for \
         slides and print, as PNG, with its data as CSV; <a href=\"{slides}\">{slides}</a> holds all of them with speaker's notes. \
         Education, not medical advice.</p>\n</header>\n",
        count = figures.len(),
        slides = SLIDES,
        lifter = escaped(&head.lifter)
    );
    html += "<nav aria-label=\"Figures\">\n<ol>\n";
    for (index, figure) in figures.iter().enumerate() {
        html += &format!(
            "<li><a href=\"#figure-{}\">{}</a></li>\n",
            index + 1,
            escaped(&figure.idea)
        );
    }
    if !head.sources.is_empty() {
        html += &format!("<li><a href=\"#sources\">{SOURCES_TITLE}</a></li>\n");
    }
    html += "</ol>\n</nav>\n<main>\n";
    for (index, figure) in figures.iter().enumerate() {
        html += &section(index + 1, figure);
    }
    html += &source_list(&head.sources);
    html += "</main>\n<footer>\n<p>Computed from anatomy by a model that holds its poses still unless a figure says \
             otherwise.</p>\n</footer>\n</body>\n</html>\n";
    html
}

/// The publications behind the figures, a line each; nothing without any.
fn source_list(sources: &[String]) -> String {
    let lines: String = sources
        .iter()
        .map(|line| format!("<li>{}</li>\n", escaped(line)))
        .collect();
    match sources {
        [] => String::new(),
        _ => format!(
            "<section id=\"sources\">\n<h2>{SOURCES_TITLE}</h2>\n<ul>\n{lines}</ul>\n</section>\n"
        ),
    }
}

fn section(number: usize, figure: &PageFigure) -> String {
    let file = escaped(&figure.file);
    let (width, height) = figure.pixels;
    format!(
        "<figure id=\"figure-{number}\">\n<h2><span>{number}</span> {idea}</h2>\n\
         <img src=\"{file}.svg\" width=\"{width}\" height=\"{height}\" alt=\"{alt}\">\n\
         <figcaption><strong>{title}.</strong> {caption}</figcaption>\n\
         <p class=\"files\"><a href=\"{file}.svg\">SVG</a> <a href=\"{file}.png\">PNG</a> \
         <a href=\"{file}.csv\">data (CSV)</a> <a href=\"{file}.caption.txt\">caption</a> \
         <a href=\"{file}.alt.txt\">alternative text</a>{live}</p>\n{notes}</figure>\n",
        live = live_link(figure.live.as_deref()),
        idea = escaped(&figure.idea),
        alt = escaped(&figure.alt),
        title = escaped(figure.title.trim_end_matches('.')),
        caption = escaped(&figure.caption),
        notes = speaker_notes(&figure.notes),
    )
}

/// The way to the figure's lift on the live page.
fn live_link(address: Option<&str>) -> String {
    address.map_or(String::new(), |address| {
        format!(" <a href=\"{}\">live page</a>", escaped(address))
    })
}

/// The notes to a figure, folded away until they are asked for.
fn speaker_notes(notes: &[String]) -> String {
    let lines: String = notes
        .iter()
        .map(|line| format!("<p>{}</p>\n", escaped(line)))
        .collect();
    match notes {
        [] => String::new(),
        _ => format!("<details>\n<summary>Speaker's notes</summary>\n{lines}</details>\n"),
    }
}

/// Text safe inside elements and attributes of HTML and XML.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

const STYLE: &str = "\
:root { --ground: #ffffff; --raised: #f4f6f9; --ink: #161b22; --soft: #55606e; --line: #d5dbe3; --link: #005a91; }
[data-theme=dark] { --ground: #10151c; --raised: #1a212b; --ink: #f3f5f8; --soft: #aeb8c4; --line: #323c49; --link: #7cc4f0; }
* { box-sizing: border-box; }
html { background: var(--ground); color: var(--ink); scroll-behavior: smooth; }
body { max-width: 70rem; margin: 0 auto; padding: 3rem 1.5rem 4rem; font: 1.0625rem/1.55 Inter, system-ui, sans-serif; }
h1 { font-size: 2.6rem; line-height: 1.1; margin: 0 0 0.8rem; letter-spacing: -0.02em; }
h2 { font-size: 1.35rem; line-height: 1.25; margin: 0 0 0.9rem; display: flex; gap: 0.7rem; align-items: baseline; }
h2 span { color: var(--soft); font-variant-numeric: tabular-nums; min-width: 1.6rem; }
header p { max-width: 44rem; margin: 0; color: var(--soft); }
header p.kind { color: var(--ink); font-weight: 600; margin-bottom: 0.4rem; }
a { color: var(--link); text-underline-offset: 0.18em; }
a:focus-visible { outline: 3px solid var(--link); outline-offset: 3px; border-radius: 2px; }
nav { margin: 2rem 0 3rem; padding: 1.3rem 1.5rem; background: var(--raised); border-radius: 0.6rem; }
nav ol { columns: 3 16rem; column-gap: 2.5rem; margin: 0; padding-left: 1.6rem; }
nav li { break-inside: avoid; padding: 0.12rem 0; }
figure { margin: 0 0 4rem; scroll-margin-top: 1.5rem; }
figure img { display: block; width: 100%; height: auto; border: 1px solid var(--line); border-radius: 0.4rem; }
figcaption { margin-top: 0.9rem; max-width: 52rem; }
details { margin: 0.6rem 0 0; max-width: 52rem; }
details p { margin: 0.5rem 0 0; }
summary { cursor: pointer; color: var(--link); }
#sources ul { margin: 0; padding-left: 1.2rem; max-width: 52rem; font-size: 0.9375rem; }
#sources li { padding: 0.15rem 0; }
.files { margin: 0.5rem 0 0; font-size: 0.9375rem; }
.files a { margin-right: 1rem; }
footer { border-top: 1px solid var(--line); padding-top: 1rem; color: var(--soft); font-size: 0.9375rem; }
@media print {
  @page { margin: 12mm; }
  html { background: #ffffff; color: #000000; }
  body { max-width: none; padding: 0; font-size: 10pt; }
  h1 { font-size: 20pt; }
  h2 { font-size: 12pt; margin-bottom: 2mm; }
  nav { background: none; border: 1px solid #999999; padding: 3mm 4mm; margin: 4mm 0 6mm; }
  nav a { color: inherit; text-decoration: none; }
  main { break-before: page; }
  figure { break-inside: avoid; height: 124mm; margin: 0; overflow: hidden; }
  figure:nth-child(2n) { break-after: page; }
  figure:last-child { break-after: auto; }
  figure img { max-height: 86mm; width: auto; max-width: 100%; }
  figcaption { font-size: 9pt; margin-top: 2mm; max-width: none; }
  header p { color: #333333; }
  .files, details, footer { display: none; }
}
";
