//! The live page as one HTML file: its document with style, script and the model's module inside it.
//!
//! In: what a lecturer froze or added. Out: HTML that asks nothing of any network: its own policy forbids it.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::Serialize;
use sha2::{Digest, Sha256};

const DOCUMENT: &str = include_str!("../../page/src/index.html");
const STYLE: &str = include_str!("../../page/src/style.css");
/// The parts of the script; each uses those before it.
const SCRIPTS: [&str; 9] = [
    include_str!("../../page/src/model.js"),
    include_str!("../../page/src/state.js"),
    include_str!("../../page/src/page.js"),
    include_str!("../../page/src/picture.js"),
    include_str!("../../page/src/dials.js"),
    include_str!("../../page/src/take.js"),
    include_str!("../../page/src/learn.js"),
    include_str!("../../page/src/tasks.js"),
    include_str!("../../page/src/main.js"),
];
/// The letters of the charts, which are placed by their widths, with their weights.
const FONTS: [(u32, &[u8]); 2] = [
    (400, include_bytes!("../draw/fonts/Inter-Regular.ttf")),
    (700, include_bytes!("../draw/fonts/Inter-Bold.ttf")),
];
/// The model as a module of WebAssembly, made by `page/build`.
const MODULE: &[u8] = include_bytes!("../../page/torquill.wasm.gz");

/// What a lecturer froze or added.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct PageOptions<T: Serialize, C: Serialize> {
    /// The only lift of the page.
    pub lift: Option<String>,
    /// The lifter that the page begins with.
    pub lifter: Option<String>,
    /// The groups of dials that are there; all of them without a word.
    pub only: Option<Vec<String>>,
    /// Tasks.
    pub tasks: Vec<T>,
    /// Which lifts, lifters, bands and chains there are, so that the page need not read all files to begin.
    pub catalogue: C,
}

/// The page.
#[must_use]
pub fn live_page<T: Serialize, C: Serialize>(options: &PageOptions<T, C>) -> String {
    let (script, fonts) = (script(), fonts());
    let hash = |text: &str| STANDARD.encode(Sha256::digest(text.as_bytes()));
    let policy = format!(
        "default-src 'none'; script-src 'sha256-{}' 'wasm-unsafe-eval'; style-src 'sha256-{}' 'sha256-{}'; \
         font-src data:; img-src blob:; base-uri 'none'; form-action 'none'",
        hash(&script),
        hash(&fonts),
        hash(STYLE)
    );
    let options = serde_json::to_string(options).expect("options are texts and numbers");
    // Inside an element of a script no sign may begin another element.
    let options = options.replace('<', "\\u003c");
    let module = STANDARD.encode(MODULE);
    let parts = [
        ("{{policy}}", policy.as_str()),
        ("{{fonts}}", &fonts),
        ("{{style}}", STYLE),
        ("{{options}}", &options),
        ("{{module}}", &module),
        ("{{script}}", &script),
    ];
    let mut page = DOCUMENT.to_owned();
    for (mark, content) in parts {
        // The marks stand once, in this order; what is put in is not searched again.
        let at = page.rfind(mark).expect("the document has every mark");
        page.replace_range(at..at + mark.len(), content);
    }
    page
}

/// The letters as a style.
fn fonts() -> String {
    let faces = FONTS.iter().map(|(weight, bytes)| {
        let data = STANDARD.encode(bytes);
        format!(
            "@font-face {{ font-family: Inter; font-weight: {weight}; src: url(data:font/ttf;base64,{data}); }}\n"
        )
    });
    faces.collect()
}

/// The modules as one script: what they take from each other stands above them.
fn script() -> String {
    let lines = SCRIPTS.into_iter().flat_map(str::lines);
    let own = lines.filter(|line| !line.starts_with("import "));
    own.map(|line| line.strip_prefix("export ").unwrap_or(line).to_owned() + "\n")
        .collect()
}
