//! All files of the source as tokens, and which file uses which: every path is followed through `pub use` to the
//! file that defines what it names.

use super::tokens::{Kind, Token, behind, of_the_program};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Names from the root of the source down: `["movement", "pose", "Pose"]`.
pub type Names = Vec<String>;

/// One file of the source.
pub struct File {
    /// From the source's root, `movement/pose.rs`.
    pub name: String,
    /// Its module.
    pub module: Names,
    /// How many lines it has, tests included.
    pub lines: usize,
    pub tokens: Vec<Token>,
    /// What it takes in, by the name it has here.
    uses: Vec<(Names, String)>,
    /// What it passes on, by the name it has here.
    passes: BTreeMap<String, Names>,
}

impl File {
    /// The room that the file stands in; none for `lib.rs` and `main.rs`.
    pub fn room(&self) -> Option<&str> {
        self.module.first().map(String::as_str)
    }
}

/// The whole source.
pub struct House {
    pub files: Vec<File>,
    modules: BTreeMap<Names, usize>,
}

/// Who uses whom, and by which names: file index to file index.
pub type Edges = BTreeMap<usize, BTreeMap<usize, BTreeSet<String>>>;

/// All Rust files under a folder, sorted.
pub fn listed(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("the source can be listed") {
        let path = entry.expect("entries can be read").path();
        if path.is_dir() {
            files.extend(listed(&path));
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

impl House {
    pub fn read() -> Self {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
        let mut house = Self {
            files: Vec::new(),
            modules: BTreeMap::new(),
        };
        for path in listed(&root) {
            let name = path
                .strip_prefix(&root)
                .expect("in the source")
                .to_string_lossy()
                .replace('\\', "/");
            if name == "main.rs" {
                continue;
            }
            let code = fs::read_to_string(&path).expect("source is text");
            let mut module: Names = name[..name.len() - 3]
                .split('/')
                .map(str::to_owned)
                .collect();
            if module
                .last()
                .is_some_and(|last| last == "mod" || last == "lib")
            {
                module.pop();
            }
            house.modules.insert(module.clone(), house.files.len());
            house.files.push(File {
                name,
                module,
                lines: code.lines().count(),
                tokens: of_the_program(&code),
                uses: Vec::new(),
                passes: BTreeMap::new(),
            });
        }
        for index in 0..house.files.len() {
            house.read_uses(index);
        }
        house
    }

    /// Takes the `use` items out of a file's tokens.
    fn read_uses(&mut self, index: usize) {
        let tokens = std::mem::take(&mut self.files[index].tokens);
        let module = self.files[index].module.clone();
        let (mut rest, mut uses, mut passes, mut at) = (Vec::new(), Vec::new(), BTreeMap::new(), 0);
        while at < tokens.len() {
            if !tokens[at].is("use") {
                rest.push(tokens[at].clone());
                at += 1;
                continue;
            }
            let end = (at..tokens.len())
                .find(|i| tokens[*i].is(";"))
                .unwrap_or(tokens.len());
            let is_public = rest
                .last()
                .is_some_and(|token: &Token| token.is("pub") || token.is(")"));
            let mut found = Vec::new();
            tree(&tokens[at + 1..end], &[], &mut found);
            for (path, alias) in found {
                let Some(path) = self.absolute(&module, &path) else {
                    continue;
                };
                if is_public {
                    passes.insert(alias, path);
                } else {
                    uses.push((path, alias));
                }
            }
            at = end + 1;
        }
        let file = &mut self.files[index];
        (file.tokens, file.uses, file.passes) = (rest, uses, passes);
    }

    /// A path as written in a module, from the root; none if it leads out of the crate.
    fn absolute(&self, module: &[String], path: &[String]) -> Option<Names> {
        let first = path.first()?;
        let mut here = module.to_vec();
        let mut rest = path;
        match first.as_str() {
            "crate" | "torquill" => return Some(path[1..].to_vec()),
            "self" => rest = &path[1..],
            "super" => {
                while rest.first().is_some_and(|name| name == "super") {
                    here.pop();
                    rest = &rest[1..];
                }
            }
            _ => {
                here.push(first.clone());
                if !self.modules.contains_key(&here) {
                    return None;
                }
                here.pop();
            }
        }
        here.extend_from_slice(rest);
        Some(here)
    }

    fn defines(&self, index: usize, name: &str) -> bool {
        const ITEMS: [&str; 8] = [
            "fn", "struct", "enum", "const", "static", "type", "trait", "mod",
        ];
        let pairs = self.files[index].tokens.windows(2);
        pairs
            .filter(|pair| pair[1].is(name))
            .any(|pair| ITEMS.contains(&pair[0].text.as_str()))
    }

    /// The file that defines what a path names, and the name.
    fn resolve(&self, path: &[String], tries: usize) -> Option<(usize, String)> {
        let mut module = Names::new();
        for (index, name) in path.iter().enumerate() {
            module.push(name.clone());
            if self.modules.contains_key(&module) {
                continue;
            }
            module.pop();
            let file = *self.modules.get(&module)?;
            let passed = self.files[file].passes.get(name).or_else(|| {
                let taken = self.files[file]
                    .uses
                    .iter()
                    .find(|(_, alias)| alias == name);
                taken
                    .map(|(path, _)| path)
                    .filter(|_| !self.defines(file, name))
            });
            return match passed {
                Some(target) if tries > 0 => {
                    let whole: Names = target.iter().chain(&path[index + 1..]).cloned().collect();
                    self.resolve(&whole, tries - 1)
                }
                _ => Some((file, name.clone())),
            };
        }
        // A whole module: `mod.rs` itself is not used, a file is.
        let file = *self.modules.get(&module)?;
        (!self.files[file].name.ends_with("mod.rs")).then(|| (file, "(module)".to_owned()))
    }

    /// All paths that a file names, in `use` items and in its code.
    pub fn paths(&self, index: usize) -> Vec<Names> {
        let file = &self.files[index];
        let mut paths: Vec<Names> = file.uses.iter().map(|(path, _)| path.clone()).collect();
        let taken: BTreeMap<&str, &Names> = file
            .uses
            .iter()
            .filter(|(path, _)| self.modules.contains_key(path))
            .map(|(path, alias)| (alias.as_str(), path))
            .collect();
        for path in inline_paths(&file.tokens) {
            if let Some(module) = taken.get(path[0].as_str()) {
                paths.push(module.iter().chain(&path[1..]).cloned().collect());
            } else if let Some(path) = self.absolute(&file.module, &path) {
                paths.push(path);
            }
        }
        paths
    }

    pub fn edges(&self) -> Edges {
        let mut edges = Edges::new();
        for index in 0..self.files.len() {
            for path in self.paths(index) {
                if let Some((target, name)) = self.resolve(&path, 8)
                    && target != index
                {
                    let names = edges.entry(index).or_default().entry(target).or_default();
                    names.insert(name);
                }
            }
        }
        edges
    }
}

/// A use tree as paths with the names they get.
fn tree(tokens: &[Token], before: &[String], found: &mut Vec<(Names, String)>) {
    let mut path = before.to_vec();
    let mut alias = None;
    let mut at = 0;
    while at < tokens.len() {
        let token = &tokens[at];
        if token.is("{") {
            let end = behind(tokens, at);
            tree(&tokens[at + 1..end - 1], &path, found);
            path.clear();
            at = end;
        } else if token.is(",") {
            end_of_path(&mut path, alias.take(), found);
            path = before.to_vec();
            at += 1;
        } else if token.is("as") {
            alias = tokens.get(at + 1).map(|token| token.text.clone());
            at += 2;
        } else {
            if token.kind == Kind::Word || token.is("*") {
                path.push(token.text.clone());
            }
            at += 1;
        }
    }
    if path.len() > before.len() {
        end_of_path(&mut path, alias, found);
    }
}

fn end_of_path(path: &mut Names, alias: Option<String>, found: &mut Vec<(Names, String)>) {
    if path.last().is_some_and(|last| last == "self") {
        path.pop();
    }
    if let Some(last) = path.last().cloned() {
        found.push((std::mem::take(path), alias.unwrap_or(last)));
    }
}

/// Paths of two names or more in code: `super::x::Y`, `places::nearest`.
fn inline_paths(tokens: &[Token]) -> Vec<Names> {
    let (mut paths, mut at) = (Vec::new(), 0);
    let colons = |at: usize| {
        tokens.get(at).is_some_and(|token| token.is(":"))
            && tokens.get(at + 1).is_some_and(|token| token.is(":"))
    };
    while at < tokens.len() {
        if tokens[at].kind != Kind::Word {
            at += 1;
            continue;
        }
        let mut path = vec![tokens[at].text.clone()];
        at += 1;
        while colons(at) && tokens.get(at + 2).is_some_and(|t| t.kind == Kind::Word) {
            path.push(tokens[at + 2].text.clone());
            at += 3;
        }
        if path.len() > 1 {
            paths.push(path);
        }
    }
    paths
}

/// Groups of files that need each other in a ring (Tarjan 1972, SIAM J. Comput. 1:146-160).
pub fn circles(count: usize, edges: &Edges) -> Vec<Vec<usize>> {
    let mut walk = Walk {
        edges,
        number: vec![None; count],
        low: vec![0; count],
        stack: Vec::new(),
        next: 0,
        found: Vec::new(),
    };
    for node in 0..count {
        if walk.number[node].is_none() {
            walk.visit(node);
        }
    }
    walk.found
}

struct Walk<'a> {
    edges: &'a Edges,
    number: Vec<Option<usize>>,
    low: Vec<usize>,
    stack: Vec<usize>,
    next: usize,
    found: Vec<Vec<usize>>,
}

impl Walk<'_> {
    fn visit(&mut self, node: usize) {
        self.number[node] = Some(self.next);
        self.low[node] = self.next;
        self.next += 1;
        self.stack.push(node);
        for &other in self.edges.get(&node).into_iter().flat_map(BTreeMap::keys) {
            if let Some(number) = self.number[other] {
                if self.stack.contains(&other) {
                    self.low[node] = self.low[node].min(number);
                }
            } else {
                self.visit(other);
                self.low[node] = self.low[node].min(self.low[other]);
            }
        }
        if Some(self.low[node]) == self.number[node] {
            let from = self
                .stack
                .iter()
                .position(|n| *n == node)
                .expect("on the stack");
            let mut part = self.stack.split_off(from);
            if part.len() > 1 {
                part.sort_unstable();
                self.found.push(part);
            }
        }
    }
}
