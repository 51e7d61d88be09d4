//! The slides of the lecture, opened as an archive of XML: every part is there, every slide has picture, title, notes and
//! alternative text, as the files beside it say. `python/tests/test_slides.py` opens them with a reader of presentations.

use crate::calling::call_on;
use roxmltree::{Document, Node};
use std::collections::BTreeMap;
use std::io::{Cursor, Read};
use std::path::Path;
use torquill::draw::{Face, lettering};
use torquill::lecture::{LECTURE, ONE_LIFT};
use torquill::narrative::speaker_notes::NOTES;
use torquill::plot::{Look, Size};
use torquill::study::Desk;
use torquill::units::System;

/// The parts of an archive by name.
fn parts(bytes: Vec<u8>) -> BTreeMap<String, Vec<u8>> {
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).expect("an archive");
    (0..archive.len())
        .map(|index| {
            let mut file = archive.by_index(index).expect("a part");
            let mut content = Vec::new();
            file.read_to_end(&mut content).expect("it can be read");
            let name = file.name().expect("a name").into_owned();
            (name, content)
        })
        .collect()
}

fn text<'a>(parts: &'a BTreeMap<String, Vec<u8>>, name: &str) -> &'a str {
    let part = parts.get(name).unwrap_or_else(|| panic!("no {name}"));
    std::str::from_utf8(part).expect("UTF-8")
}

/// Where a relation of a part leads, from the root of the archive.
fn resolved(part: &str, target: &str) -> String {
    let (folder, _) = part.rsplit_once('/').unwrap_or(("", part));
    let mut path: Vec<&str> = folder.split('/').filter(|step| !step.is_empty()).collect();
    for step in target.split('/') {
        match step {
            ".." => {
                path.pop();
            }
            step => path.push(step),
        }
    }
    path.join("/")
}

/// The relations of a part: identifier to the part that it leads to.
fn relations(parts: &BTreeMap<String, Vec<u8>>, part: &str) -> BTreeMap<String, String> {
    let (folder, name) = part.rsplit_once('/').unwrap_or(("", part));
    let list = match folder {
        "" => format!("_rels/{name}.rels"),
        folder => format!("{folder}/_rels/{name}.rels"),
    };
    let document = Document::parse(text(parts, &list)).expect("XML");
    let relation = |node: Node<'_, '_>| {
        let of = |name| node.attribute(name).expect("an attribute").to_owned();
        (of("Id"), resolved(part, &of("Target")))
    };
    let nodes = document.descendants();
    nodes
        .filter(|node| node.has_tag_name_anywhere("Relationship"))
        .map(relation)
        .collect()
}

/// Names without their namespace.
trait AnyNamespace {
    fn has_tag_name_anywhere(&self, name: &str) -> bool;
}

impl AnyNamespace for Node<'_, '_> {
    fn has_tag_name_anywhere(&self, name: &str) -> bool {
        self.is_element() && self.tag_name().name() == name
    }
}

/// The texts of the paragraphs of a part.
fn paragraphs(xml: &str) -> Vec<String> {
    let document = Document::parse(xml).expect("XML");
    paragraphs_of(document.root())
}

/// The words of every paragraph of a part.
fn paragraphs_of(part: Node<'_, '_>) -> Vec<String> {
    let in_paragraph = |node: Node<'_, '_>| -> String {
        let texts = node.descendants().filter(|n| n.has_tag_name_anywhere("t"));
        texts.filter_map(|n| n.text()).collect()
    };
    let nodes = part.descendants();
    nodes
        .filter(|node| node.has_tag_name_anywhere("p"))
        .map(in_paragraph)
        .filter(|text| !text.is_empty())
        .collect()
}

fn read(folder: &Path, name: &str) -> String {
    let text = std::fs::read_to_string(folder.join(name)).expect("a file of the set");
    text.trim().to_owned()
}

#[test]
fn law_slides_hold_what_the_files_beside_them_say() {
    let folder = tempfile::tempdir().expect("a folder");
    let into = folder.path().to_str().expect("a plain path");
    let answer = call_on(
        "2",
        Path::new("."),
        &["lecture", "-o", into, "--size", "960x540"],
    );
    assert_eq!(answer.status, 0, "{}", answer.complaint);
    let bytes = std::fs::read(folder.path().join("lecture.pptx")).expect("the slides");
    let parts = parts(bytes);
    check_package(&parts);
    let mut names: Vec<String> = std::fs::read_dir(folder.path())
        .expect("the folder")
        .filter_map(|entry| entry.expect("an entry").file_name().into_string().ok())
        .filter_map(|name| name.strip_suffix(".svg").map(str::to_owned))
        .collect();
    names.sort();
    let slides = parts
        .keys()
        .filter(|name| name.starts_with("ppt/slides/slide"));
    // Behind the figures stands the list of sources.
    let count = slides.count();
    assert!(count > names.len(), "no sources");
    check_sources(&parts, names.len() + 1..=count, folder.path());
    for (number, name) in (1..).zip(&names) {
        let part = format!("ppt/slides/slide{number}.xml");
        let xml = text(&parts, &part);
        let title = paragraphs(xml).remove(0);
        let caption = read(folder.path(), &format!("{name}.caption.txt"));
        assert!(
            caption.starts_with(title.trim_end_matches('.')),
            "{name}: {title}"
        );
        let document = Document::parse(xml).expect("XML");
        let described = document
            .descendants()
            .find_map(|node| node.attribute("descr"));
        assert_eq!(
            described.unwrap_or_default(),
            read(folder.path(), &format!("{name}.alt.txt"))
        );
        let leads = relations(&parts, &part);
        let notes = leads.values().find(|to| to.contains("notesSlides"));
        let notes = paragraphs(text(&parts, notes.expect("notes")));
        assert_eq!(
            notes.join("\n"),
            read(folder.path(), &format!("{name}.notes.txt"))
        );
        assert!(notes.len() >= 4, "{name}: {notes:?}");
        let picture = leads
            .values()
            .find(|to| to.contains("media"))
            .expect("a picture");
        let decoder = png::Decoder::new(Cursor::new(parts[picture].clone()));
        let reader = decoder.read_info().expect("a picture");
        assert_eq!(
            (reader.info().width, reader.info().height),
            (1920, 930),
            "{name}"
        );
    }
}

/// Whose name is long has pictures without room for every word: those stand on the slide itself, in 14 points at the least.
#[test]
fn law_words_without_room_in_a_picture_stand_on_its_slide() {
    let folder = tempfile::tempdir().expect("a folder");
    let title = "A tall novice whose name is as long as names of people and places can be";
    let novice = include_str!("../../models/lifters/tall-novice.ron");
    let novice = novice.replace("Tall novice (invented)", title);
    std::fs::write(folder.path().join("long.ron"), novice).expect("a file");
    let answer = call_on(
        "2",
        folder.path(),
        &[
            "lecture", "-o", "out", "--lifter", "long.ron", "--size", "960x540",
        ],
    );
    assert_eq!(answer.status, 0, "{}", answer.complaint);
    let bytes = std::fs::read(folder.path().join("out/lecture.pptx")).expect("the slides");
    let parts = parts(bytes);
    check_package(&parts);
    let library = torquill::library::Library::built_in();
    let file = folder.path().join("long.ron");
    let file = file.to_str().expect("a plain path");
    let desk = Desk::open(&library, file, System::Metric).expect("a sound lifter");
    let drawable = LECTURE.iter().filter(|figure| figure.can_be_drawn(&desk));
    let look = Look {
        size: Size::UnderTitle,
        ..Look::default()
    };
    let mut kept = 0;
    for (number, figure) in (1..).zip(drawable) {
        let sheet = (figure.build)(&desk).expect("a figure");
        let scene = sheet.untitled_scene(look).expect("it has room");
        let words = sheet.words_left_off(&scene);
        let xml = text(&parts, &format!("ppt/slides/slide{number}.xml"));
        let told = paragraphs(xml);
        let expected: Vec<String> = [sheet.title().to_owned()]
            .into_iter()
            .chain((!words.is_empty()).then(|| words.join(" ")))
            .collect();
        assert_eq!(told, expected, "{}", figure.name);
        let document = Document::parse(xml).expect("XML");
        let sizes = document
            .descendants()
            .filter_map(|node| node.attribute("sz"));
        for size in sizes {
            assert!(
                size.parse::<u32>().expect("a size") >= 1400,
                "{}",
                figure.name
            );
        }
        kept += words.len();
    }
    assert!(kept > 0, "every word found room");
}

/// The last slides have every publication of the lecture once, as the page has them, and mark those cited from memory; their
/// words are of 14 points at the least and find room at a fifth more than their width.
fn check_sources(
    parts: &BTreeMap<String, Vec<u8>>,
    numbers: std::ops::RangeInclusive<usize>,
    folder: &Path,
) {
    let pages = numbers.clone().count();
    let mut told: Vec<String> = Vec::new();
    for (page, number) in (1..).zip(numbers) {
        let xml = text(parts, &format!("ppt/slides/slide{number}.xml"));
        let words = paragraphs(xml);
        let title = match pages {
            1 => "Sources".to_owned(),
            _ => format!("Sources {page}/{pages}"),
        };
        assert_eq!(words[0], title);
        let document = Document::parse(xml).expect("XML");
        let sizes = document
            .descendants()
            .filter_map(|node| node.attribute("sz"));
        for size in sizes {
            assert!(size.parse::<u32>().expect("a size") >= 1400, "{size}");
        }
        // At most two columns of 884 pixels, each with whole entries; 14 points are 28 pixels, a line 1.2 times that.
        let lists = document.descendants().filter(|node| {
            node.has_tag_name_anywhere("cNvPr") && node.attribute("name") == Some("List")
        });
        let shapes = lists.filter_map(|name| name.parent()?.parent());
        let columns: Vec<Vec<String>> = shapes.map(paragraphs_of).collect();
        assert!((1..=2).contains(&columns.len()), "{title}");
        assert_eq!(columns.concat(), words[1..], "{title}");
        for column in &columns {
            let lines = column.iter().map(|line| {
                let fitted = lettering::fit(line, 28.0, 28.0, Face::Regular, 0.82 * 870.0, 99);
                fitted.lines.len() as f64 * 33.6 + 8.0
            });
            let height: f64 = lines.sum();
            assert!(height <= 884.0, "a column of {title} takes {height} pixels");
        }
        told.extend_from_slice(&words[1..]);
    }
    let sources = torquill::library::Library::built_in()
        .sources()
        .expect("the publications");
    let cites = LECTURE.iter().flat_map(|figure| figure.cites);
    let cited: std::collections::BTreeSet<&str> = cites.copied().collect();
    assert_eq!(told.len(), cited.len() + 1, "{told:?}");
    let page = read(folder, "index.html");
    for key in cited {
        let publication = &sources[key];
        let mark = match publication.seen {
            torquill::source::Seen::Recalled => "†",
            _ => "",
        };
        let line = format!("{}{mark}", publication.citation);
        assert!(told.contains(&line), "{line}");
        let escaped = line.replace('&', "&amp;");
        assert!(page.contains(&format!("<li>{escaped}</li>")), "{line}");
    }
}

/// Every part is XML or a picture, has a type, and every relation leads to a part.
fn check_package(parts: &BTreeMap<String, Vec<u8>>) {
    let types = text(parts, "[Content_Types].xml");
    let types = Document::parse(types).expect("XML");
    let named = |attribute: &str| -> Vec<String> {
        let values = types
            .descendants()
            .filter_map(|node| node.attribute(attribute));
        values.map(str::to_owned).collect()
    };
    let (extensions, overridden) = (named("Extension"), named("PartName"));
    for name in parts.keys().filter(|name| *name != "[Content_Types].xml") {
        let ending = name.rsplit('.').next().unwrap_or_default().to_owned();
        let has_own = overridden.contains(&format!("/{name}"));
        assert!(
            has_own || (ending != "xml" && extensions.contains(&ending)),
            "{name} has no type"
        );
        if ending != "png" {
            Document::parse(text(parts, name)).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        }
    }
    for part in overridden {
        assert!(parts.contains_key(part.trim_start_matches('/')), "{part}");
    }
    for list in parts.keys().filter(|name| name.ends_with(".rels")) {
        let part = list.replace("_rels/", "").replace(".rels", "");
        for target in relations(parts, &part).values() {
            assert!(parts.contains_key(target), "{list}: no {target}");
        }
    }
}

#[test]
fn law_every_figure_of_the_lecture_has_speakers_notes() {
    for figure in LECTURE {
        let notes = NOTES.iter().filter(|notes| notes.figure == figure.name);
        assert_eq!(notes.count(), 1, "{}", figure.name);
    }
    for figure in ONE_LIFT {
        let notes = NOTES.iter().filter(|notes| notes.figure == figure.notes);
        assert_eq!(notes.count(), 1, "{}", figure.notes);
    }
    for notes in NOTES {
        let known = LECTURE.iter().any(|figure| figure.name == notes.figure);
        assert!(known, "no figure {}", notes.figure);
        assert!(
            notes.ask.contains('?') && notes.ask.ends_with(')'),
            "{}",
            notes.figure
        );
        assert!(
            notes.say.len() > 40 && notes.mistake != notes.right && notes.right.len() > 20,
            "{}",
            notes.figure
        );
    }
}

#[test]
fn law_every_citation_of_the_lecture_is_a_known_publication() {
    let sources = torquill::library::Library::built_in()
        .sources()
        .expect("the publications");
    for figure in LECTURE.iter().chain(ONE_LIFT) {
        for key in figure.cites {
            assert!(sources.contains_key(*key), "{}: {key}", figure.name);
        }
    }
}
