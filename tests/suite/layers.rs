//! The guard of the house: imports run one way by the map of DEVELOPERS.md, no circle of files, no sentence before
//! `narrative`, one name a type and a file, short files and functions.

mod house;
mod tokens;

use house::{Edges, File, House, circles};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;
use tokens::{Kind, Token, behind};

static HOUSE: LazyLock<House> = LazyLock::new(House::read);

/// Texts of two words before `narrative` that are no sentences for the reader, each with its reason.
const ALLOWED: &[(&str, &str, &str)] = &[
    (
        "grammar/implement_rows.rs",
        "plates 20 kg, pairs 2",
        "an option's own syntax, which is read back",
    ),
    (
        "grammar/implement_rows.rs",
        "plate 5 kg, side left",
        "an option's own syntax, which is read back",
    ),
    (
        "grammar/implement_rows.rs",
        "cable 40 kg, ratio 2",
        "an option's own syntax, which is read back",
    ),
    (
        "grammar/implement_rows.rs",
        "lever 30 kg, arm 50 cm",
        "an option's own syntax, which is read back",
    ),
    (
        "grammar/implement_rows.rs",
        "sled 50 kg, friction 3 %",
        "an option's own syntax, which is read back",
    ),
    (
        "resistance/band.rs",
        "hysteresis of gum",
        "the reason of a source, as a model file holds one",
    ),
    (
        "resistance/band.rs",
        "given by the user",
        "the reason of a source, as a model file holds one",
    ),
    (
        "resistance/band.rs",
        "measured by the user",
        "the reason of a source, as a model file holds one",
    ),
    (
        "resistance/rubber.rs",
        "least squares on",
        "the reason of a source, as a model file holds one",
    ),
    (
        "setups/gym_file.rs",
        "given by the user",
        "the reason of a source, as a model file holds one",
    ),
    (
        "person/told_texts.rs",
        "one hand",
        "an option's own syntax, which is read back",
    ),
    (
        "person/told_texts.rs",
        "both hands",
        "an option's own syntax, which is read back",
    ),
    (
        "person/told_texts.rs",
        "with limb",
        "an option's own syntax, which is read back",
    ),
    (
        "person/told_texts.rs",
        "without limb",
        "an option's own syntax, which is read back",
    ),
    (
        "study/against_plain.rs",
        "cam fitted",
        "an item's own syntax, which is read back",
    ),
    (
        "study/fit_ground.rs",
        "ratio of lifts",
        "the name of a row of a model file",
    ),
    (
        "study/person_data.rs",
        "force by place",
        "the name of a row of a model file",
    ),
    (
        "study/person_forecast.rs",
        "sticking region",
        "the name of a row of a model file",
    ),
    (
        "library/assemble.rs",
        "set by its path",
        "the reason of a source, as a model file holds one",
    ),
    (
        "library/share_units.rs",
        "shoulder breadth",
        "a unit of shares, which is read back",
    ),
    (
        "library/share_units.rs",
        "body height",
        "a unit of shares, which is read back",
    ),
    (
        "library/share_units.rs",
        "of height",
        "a unit of shares, which is read back",
    ),
    (
        "library/read_fault.rs",
        "tuple variant ",
        "a mark of the reader of RON",
    ),
    (
        "library/read_fault.rs",
        "the unsigned integer ",
        "a mark of the reader of RON",
    ),
    (
        "library/read_fault.rs",
        "the signed integer ",
        "a mark of the reader of RON",
    ),
    (
        "library/read_fault.rs",
        "the floating point number ",
        "a mark of the reader of RON",
    ),
    (
        "library/read_fault.rs",
        "a unit value",
        "a mark of the reader of RON",
    ),
    (
        "library/read_fault.rs",
        "the string ",
        "a mark of the reader of RON",
    ),
    (
        "library/set_path.rs",
        "unknown variant",
        "a mark of the reader of trees",
    ),
];

/// Rooms and their numbers. Rooms that share a number may not use each other.
fn map() -> BTreeMap<String, u32> {
    let guide = Path::new(env!("CARGO_MANIFEST_DIR")).join("DEVELOPERS.md");
    let text = fs::read_to_string(guide).expect("DEVELOPERS.md is part of the checkout");
    let map: BTreeMap<String, u32> = text
        .lines()
        .skip_while(|line| !line.starts_with("## The map"))
        .filter_map(|line| {
            let cells: Vec<&str> = line.split('|').map(str::trim).collect();
            let number = cells.get(1)?.parse().ok()?;
            Some((cells.get(2)?.trim_matches('`').to_owned(), number))
        })
        .collect();
    assert!(map.len() > 10, "the table of rooms was not found");
    map
}

/// Whether the map lets a room use another.
fn may_use(map: &BTreeMap<String, u32>, own: &str, used: &str) -> bool {
    let (own_number, number) = (map[own], map[used]);
    own == used
        || number < own_number
            && match own {
                "draw" => number <= 1,
                "plot" => number <= map["numeric"] || used == "draw",
                _ => true,
            }
}

/// **Fails** with every line that was found.
fn judge(what: &str, found: &[(String, String)]) {
    let lines: Vec<&str> = found.iter().map(|(_, line)| line.as_str()).collect();
    assert!(lines.is_empty(), "{what}:\n{}", lines.join("\n"));
}

fn in_rooms() -> impl Iterator<Item = (&'static str, &'static File)> {
    let files = HOUSE.files.iter();
    files.filter_map(|file| file.room().map(|room| (room, file)))
}

#[test]
fn law_imports_run_one_way() {
    let map = map();
    let mut wrong = BTreeSet::new();
    let mut seen = BTreeSet::new();
    for (index, file) in HOUSE.files.iter().enumerate() {
        let Some(room) = file.room() else { continue };
        seen.insert(room);
        if !map.contains_key(room) {
            wrong.insert(format!("{room}: not in the map of DEVELOPERS.md"));
            continue;
        }
        for path in HOUSE.paths(index) {
            let used = path.first().filter(|used| map.contains_key(*used));
            if let Some(used) = used.filter(|used| !may_use(&map, room, used)) {
                wrong.insert(format!("{}: uses {used}", file.name));
            }
        }
    }
    for room in map.keys().filter(|room| !seen.contains(room.as_str())) {
        wrong.insert(format!("{room}: in the map, but not in src"));
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The files of a room and how they need each other in a ring, one line each.
fn ring(part: &[usize], edges: &Edges) -> String {
    let mut lines = String::new();
    for from in part {
        for (to, names) in edges.get(from).into_iter().flatten() {
            if part.contains(to) {
                let (from, to) = (&HOUSE.files[*from].name, &HOUSE.files[*to].name);
                let names: Vec<&str> = names.iter().map(String::as_str).collect();
                let _ = write!(lines, "\n    {from} uses {to}: {}", names.join(", "));
            }
        }
    }
    lines
}

/// Between rooms the map leaves no circle.
#[test]
fn law_no_files_of_a_room_need_each_other_in_a_circle() {
    let mut edges = HOUSE.edges();
    for (from, targets) in &mut edges {
        targets.retain(|to, _| HOUSE.files[*to].room() == HOUSE.files[*from].room());
    }
    let found: Vec<(String, String)> = circles(HOUSE.files.len(), &edges)
        .iter()
        .map(|part| {
            let room = HOUSE.files[part[0]].room().unwrap_or("lib").to_owned();
            let lines = ring(part, &edges);
            let line = format!("{room}: circle of {} files{lines}", part.len());
            (room, line)
        })
        .collect();
    judge("circles of files", &found);
}

/// Whether a text holds two words of small letters, one behind the other.
fn is_prose(text: &str) -> bool {
    let is_word = |word: &str| {
        let bare = word.trim_end_matches([',', ';', ':', '.', '?', '!']);
        bare.len() >= 2 && bare.chars().all(|c| c.is_ascii_lowercase())
    };
    // A line that is continued begins with spaces of the code's own.
    let whole = text.replace("\\\n", " ").replace("\\n", " ");
    let words: Vec<&str> = whole.split_whitespace().collect();
    words
        .windows(2)
        .any(|pair| is_word(pair[0]) && is_word(pair[1]))
}

/// Ranges of tokens that speak to developers only: attributes but `#[error("…")]`, reasons why a value is there
/// (`expect`), assertions.
fn for_developers(tokens: &[Token], room: &str) -> Vec<std::ops::Range<usize>> {
    const MACROS: [&str; 7] = [
        "panic",
        "unreachable",
        "assert",
        "assert_eq",
        "debug_assert",
        "debug_assert_eq",
        "include_str",
    ];
    let at = |index: usize, text: &str| tokens.get(index).is_some_and(|token| token.is(text));
    let mut ranges = Vec::new();
    for (index, token) in tokens.iter().enumerate() {
        let opening = if token.is("#") && at(index + 1, "[") {
            (room == "error" || !at(index + 2, "error")).then_some(index + 1)
        } else if token.is("#") && at(index + 1, "!") {
            Some(index + 2)
        } else if token.is("expect") && at(index + 1, "(") {
            Some(index + 1)
        } else if MACROS.iter().any(|name| token.is(name)) && at(index + 1, "!") {
            Some(index + 2)
        } else {
            None
        };
        ranges.extend(opening.map(|open| open..behind(tokens, open)));
    }
    ranges
}

#[test]
fn law_no_sentence_before_narrative() {
    let map = map();
    let mut found = Vec::new();
    let mut allowed: BTreeSet<(&str, &str)> = BTreeSet::new();
    for (room, file) in in_rooms().filter(|(room, _)| map[*room] < map["narrative"]) {
        let skipped = for_developers(&file.tokens, room);
        for (index, token) in file.tokens.iter().enumerate() {
            let is_told = token.kind == Kind::Text && is_prose(&token.text);
            if !is_told || skipped.iter().any(|range| range.contains(&index)) {
                continue;
            }
            let excused = ALLOWED
                .iter()
                .find(|(name, start, _)| *name == file.name && token.text.starts_with(start));
            if let Some((name, start, _)) = excused {
                allowed.insert((name, start));
                continue;
            }
            let text: String = token.text.chars().take(60).collect();
            let line = format!("src/{}:{}: {text:?}", file.name, token.line);
            found.push((room.to_owned(), line));
        }
    }
    for (name, start, _) in ALLOWED {
        assert!(
            allowed.contains(&(name, start)),
            "no longer needed: {name} {start:?}"
        );
    }
    judge("texts of two words before narrative", &found);
}

/// Names of the types that a file defines; a `type` inside a block belongs to a trait.
fn types(file: &File) -> Vec<&str> {
    let mut depth = 0;
    let mut found = Vec::new();
    for pair in file.tokens.windows(2) {
        match pair[0].text.as_str() {
            "{" if pair[0].kind == Kind::Sign => depth += 1,
            "}" if pair[0].kind == Kind::Sign => depth -= 1,
            "struct" | "enum" | "trait" | "union" if pair[1].kind == Kind::Word => {
                found.push(pair[1].text.as_str());
            }
            "type" if depth == 0 && pair[1].kind == Kind::Word => {
                found.push(pair[1].text.as_str());
            }
            _ => {}
        }
    }
    found
}

/// One line for each name that stands in several files, filed under every room it stands in.
fn doubled(what: &str, named: BTreeMap<&str, Vec<&'static File>>) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (name, files) in named.iter().filter(|(_, files)| files.len() > 1) {
        let places: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
        let rooms: BTreeSet<&str> = files.iter().filter_map(|file| file.room()).collect();
        for room in rooms {
            let line = format!("{what} {name}: {}", places.join(", "));
            found.push((room.to_owned(), line));
        }
    }
    found
}

#[test]
fn law_one_name_a_type_and_a_file() {
    let mut types_by_name: BTreeMap<&str, Vec<&'static File>> = BTreeMap::new();
    let mut files_by_name: BTreeMap<&str, Vec<&'static File>> = BTreeMap::new();
    for (_, file) in in_rooms() {
        for name in types(file) {
            types_by_name.entry(name).or_default().push(file);
        }
        let (folder, name) = file.name.rsplit_once('/').unwrap_or(("", &file.name));
        // Faults and their words bear one name on purpose.
        if name != "mod.rs" && folder != "narrative/faults" {
            files_by_name.entry(name).or_default().push(file);
        }
    }
    let mut found = doubled("type", types_by_name);
    found.extend(doubled("file", files_by_name));
    judge("doubled names", &found);
}

/// Functions of a file with their lines.
fn functions(file: &File) -> Vec<(&str, usize)> {
    let tokens = &file.tokens;
    let mut found = Vec::new();
    for (index, token) in tokens
        .iter()
        .enumerate()
        .filter(|(_, token)| token.is("fn"))
    {
        let Some(name) = tokens.get(index + 1).filter(|t| t.kind == Kind::Word) else {
            continue;
        };
        let Some(open) =
            (index..tokens.len()).find(|at| tokens[*at].is("{") || tokens[*at].is(";"))
        else {
            continue;
        };
        if tokens[open].is("{") {
            let last = behind(tokens, open) - 1;
            found.push((name.text.as_str(), tokens[last].line - token.line + 1));
        }
    }
    found
}

#[test]
fn law_files_are_short() {
    let (mut long_functions, mut long_files, mut wrong) = (Vec::new(), Vec::new(), Vec::new());
    for (_, file) in in_rooms() {
        for (name, lines) in functions(file).into_iter().filter(|(_, lines)| *lines > 40) {
            long_functions.push(format!("{lines} src/{}: {name}", file.name));
        }
        if file.lines > 400 {
            long_files.push(format!("{} src/{}", file.lines, file.name));
        }
        if file.lines > 450 {
            wrong.push(format!("{} src/{}", file.lines, file.name));
        }
    }
    println!("{} functions over 40 lines:", long_functions.len());
    long_functions.iter().for_each(|line| println!("  {line}"));
    println!("{} files over 400 lines:", long_files.len());
    long_files.iter().for_each(|line| println!("  {line}"));
    assert!(wrong.is_empty(), "files over 450 lines: {wrong:#?}");
}

/// The program that finds unused lines holds every room, and so no room escapes it.
#[test]
fn law_no_room_escapes_the_search_for_unused_lines() {
    let rooms = |file: &str| -> BTreeSet<String> {
        let place = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
        let text = fs::read_to_string(place).expect("part of the checkout");
        let modules = text.lines().filter_map(|line| {
            let name = line.trim_start_matches("pub ").strip_prefix("mod ")?;
            name.strip_suffix(';').map(str::to_owned)
        });
        modules.collect()
    };
    assert_eq!(rooms("tests/reached/rooms.rs"), rooms("src/lib.rs"));
}

/// Names of the tests in a text: what follows `#[test]`.
fn tests_of(code: &str) -> Vec<&str> {
    let parts = code.split("#[test]\n").skip(1);
    let named = parts.filter_map(|part| {
        let line = part
            .lines()
            .map(str::trim)
            .find(|line| !line.starts_with("#["))?;
        let name = line.strip_prefix("fn ")?;
        name.split('(').next()
    });
    named.collect()
}

/// No test stands in the source: the library is not built for tests (`[lib] test = false`), so one there would never run.
#[test]
fn law_every_test_stands_in_the_suite() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let inside = |file: &PathBuf| {
        let code = fs::read_to_string(file).expect("source is text");
        code.contains("#[test]") || code.contains("cfg(test)")
    };
    let found: Vec<PathBuf> = house::listed(&source).into_iter().filter(inside).collect();
    assert!(found.is_empty(), "{found:?}");
}

/// A law of physics or of the house, a published number, our own earlier output, or a fault that is answered.
#[test]
fn law_every_test_says_what_kind_it_is() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut wrong, mut count) = (Vec::new(), 0);
    for file in ["src", "tests"]
        .iter()
        .flat_map(|folder| house::listed(&root.join(folder)))
    {
        let code = fs::read_to_string(&file).expect("source is text");
        for name in tests_of(&code) {
            count += 1;
            let kinds = ["law_", "published_", "regress_", "fault_"];
            if !kinds.iter().any(|kind| name.starts_with(kind)) {
                wrong.push(format!("{}: {name}", file.display()));
            }
        }
    }
    assert!(count > 300, "only {count} tests were found");
    assert!(wrong.is_empty(), "{wrong:#?}");
}
