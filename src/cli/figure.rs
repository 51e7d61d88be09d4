//! `torquill figure MOVEMENT -o FILE`: the chart as SVG or PNG, with words and data beside it on request.

use super::options::{Sampling, UnitsOption, Who};
use super::output;
use super::setup_options::{SetupOptions, Versus, setups};
use crate::draw::Theme;
use crate::draw::{Scene, outlined_svg, png, svg};
use crate::error::{Error, Result};
use crate::figures::strength_curve;
use crate::library::Library;
use crate::narrative::strength_words::strength_words;
use crate::plot::{Look, Size};
use crate::report;
use crate::study::{Study, study};
use clap::{ArgMatches, Args, ValueEnum};
use std::path::{Path, PathBuf};

/// Arguments of `figure`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill figure bench-press --lifter reference-man --load \"80 kg\" -o bench.svg
  torquill figure bench-press --load \"100 kg\" --versus --load \"70 kg\" --band loop-29mm:1 -o bands.png
  torquill figure biceps-curl --size page --theme dark --words --data -o curl.png")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    versus: Versus,
    #[command(flatten)]
    sampling: Sampling,
    #[command(flatten)]
    picture: Picture,
    /// Units of the axes
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Write a caption and an alternative text beside the figure (.caption.txt, .alt.txt)
    #[arg(long)]
    words: bool,
    /// Write the data beside the figure (.csv, one file a setup)
    #[arg(long)]
    data: bool,
}

/// Where a picture goes and how it looks.
#[derive(Debug, Args)]
pub struct Picture {
    /// File to write: its ending, .svg or .png, decides the format
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    /// slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels
    #[arg(long, value_name = "SIZE", default_value = "slide")]
    pub size: String,
    /// Light or dark ground
    #[arg(long, value_enum, default_value_t = ThemeOption::Light)]
    pub theme: ThemeOption,
    /// Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines
    #[arg(long)]
    pub live_text: bool,
    /// Replace files that exist
    #[arg(long)]
    pub force: bool,
}

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ThemeOption {
    /// Dark on light
    Light,
    /// Light on dark
    Dark,
}

impl Picture {
    /// Size and theme.
    pub fn look(&self) -> Result<Look> {
        Ok(Look {
            size: self.size.parse::<Size>()?,
            theme: match self.theme {
                ThemeOption::Light => Theme::Light,
                ThemeOption::Dark => Theme::Dark,
            },
        })
    }

    /// Checks ending and target before anything is computed.
    pub fn check(&self) -> Result<()> {
        output::check_target(&self.output, self.force)?;
        PictureFormat::of(&self.output).map(|_| ())
    }

    /// Writes a scene in the format of the file's ending.
    pub fn write(&self, scene: &Scene) -> Result<()> {
        let bytes = rendered(scene, &self.output, svg_writer(self.live_text))?;
        output::write_file(&self.output, &bytes)
    }
}

/// Makes SVG of a scene.
pub type SvgWriter = fn(&Scene) -> Result<String>;

/// The writer of SVG that keeps letters as letters, or the one that outlines them.
#[must_use]
pub fn svg_writer(live_text: bool) -> SvgWriter {
    if live_text { svg } else { outlined_svg }
}

/// The bytes of a scene for a file of this name.
pub fn rendered(scene: &Scene, path: &Path, write_svg: SvgWriter) -> Result<Vec<u8>> {
    match PictureFormat::of(path)? {
        PictureFormat::Svg => Ok(write_svg(scene)?.into_bytes()),
        PictureFormat::Png => png(scene, 1.0),
    }
}

/// The two formats of pictures.
enum PictureFormat {
    Svg,
    Png,
}

impl PictureFormat {
    fn of(path: &Path) -> Result<Self> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("svg") => Ok(Self::Svg),
            Some("png") => Ok(Self::Png),
            _ => Err(
                Error::bad(format!("`{}` does not end in .svg or .png", path.display()))
                    .hint(format!("write {}", path.with_extension("png").display())),
            ),
        }
    }
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library, matches: Option<&ArgMatches>) -> Result<()> {
    arguments.picture.check()?;
    let look = arguments.picture.look()?;
    let model = arguments.who.model(library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(&arguments.setup, library, matches, arguments.units.into())?;
    let study = study(&question, &setups)?;
    let units = arguments.units.into();
    let scene = strength_curve(&study, units, look)?;
    let beside = beside(arguments, &study)?;
    for (path, _) in &beside {
        output::check_target(path, arguments.picture.force)?;
    }
    arguments.picture.write(&scene)?;
    for (path, text) in beside {
        output::write_file(&path, text.as_bytes())?;
    }
    Ok(())
}

/// Caption, alternative text and data files that were asked for.
fn beside(arguments: &Arguments, study: &Study) -> Result<Vec<(PathBuf, String)>> {
    let path = |ending: &str| arguments.picture.output.with_extension(ending);
    let units = arguments.units.into();
    let mut files = Vec::new();
    if arguments.words {
        let words = strength_words(study, units);
        let caption = format!("{}. {}\n", words.title, words.caption);
        files.push((path("caption.txt"), caption));
        files.push((path("alt.txt"), words.description + "\n"));
    }
    if arguments.data {
        if study.setups.is_empty() {
            files.push((path("csv"), report::curve_csv(study, None, false)));
        }
        for (index, setup) in study.setups.iter().enumerate() {
            let ending = if study.setups.len() == 1 {
                "csv".to_owned()
            } else {
                format!("{}.csv", index + 1)
            };
            files.push((path(&ending), report::curve_csv(study, Some(setup), false)));
        }
    }
    Ok(files)
}
