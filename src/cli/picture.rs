//! Where a picture goes and how it looks: options that all drawing commands share.
//!
//! In: a file name, size, theme, letters. Out: the look for the figure, and the file written.

use super::output;
use super::whole_set;
use crate::draw::{Scene, Theme, layered_svg, outlined_svg, png};
use crate::error::{CommandFault, Error, Result};
use crate::narrative::figure_words::left_off_in_words;
use crate::plot::{Look, Size};
use clap::{Args, ValueEnum};
use std::path::{Path, PathBuf};

/// Size, theme, letters, and whether files may be replaced.
#[derive(Debug, Clone, Args)]
pub struct LookOptions {
    /// slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels
    #[arg(long, value_name = "SIZE", default_value = "slide")]
    pub size: String,
    /// Light or dark ground, or black and grey with thin lines for print
    #[arg(long, value_enum, default_value_t = ThemeOption::Light)]
    pub theme: ThemeOption,
    /// Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines
    #[arg(long)]
    pub live_text: bool,
    /// Replace files that exist
    #[arg(long)]
    pub force: bool,
}

/// Light, dark or print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ThemeOption {
    /// Dark on light
    Light,
    /// Light on dark
    Dark,
    /// Black and grey on white, thin lines
    Print,
}

/// Makes SVG of a scene.
pub type SvgWriter = fn(&Scene) -> Result<String>;

impl LookOptions {
    /// The same look for one file.
    #[must_use]
    pub fn picture(&self, output: PathBuf) -> Picture {
        Picture {
            output,
            look: self.clone(),
        }
    }

    /// Size and theme.
    pub fn look(&self) -> Result<Look> {
        Ok(Look {
            size: self.size.parse::<Size>()?,
            theme: match self.theme {
                ThemeOption::Light => Theme::Light,
                ThemeOption::Dark => Theme::Dark,
                ThemeOption::Print => Theme::Print,
            },
        })
    }

    /// The writer of SVG that keeps letters as letters, or the one that outlines them.
    #[must_use]
    pub fn svg_writer(&self) -> SvgWriter {
        if self.live_text {
            layered_svg
        } else {
            outlined_svg
        }
    }
}

/// A file that goes with a picture.
pub type Beside = (PathBuf, Vec<u8>);

/// One picture to write.
#[derive(Debug, Args)]
pub struct Picture {
    /// File to write: its ending, .svg or .png, decides the format
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    /// How it looks
    #[command(flatten)]
    pub look: LookOptions,
}

impl Picture {
    /// Checks ending, target and look before anything is computed.
    pub fn check(&self) -> Result<()> {
        output::check_target(&self.output, self.look.force)?;
        PictureFormat::of(&self.output)?;
        self.look.look().map(|_| ())
    }

    /// A file beside the picture, of the same name but for its ending.
    #[must_use]
    pub fn beside(&self, ending: &str) -> PathBuf {
        self.output.with_extension(ending)
    }

    /// Writes a scene in the format of the file's ending.
    pub fn write(&self, scene: &Scene) -> Result<()> {
        tell_left_off(scene);
        whole_set::write_file(&self.output, &self.bytes(scene)?)
    }

    /// Writes a scene and the files beside it, all or none.
    pub fn write_with(&self, scene: &Scene, beside: Vec<Beside>) -> Result<()> {
        for (path, _) in &beside {
            output::check_target(path, self.look.force)?;
        }
        tell_left_off(scene);
        let mut files = vec![(self.output.clone(), self.bytes(scene)?)];
        files.extend(beside);
        whole_set::write_files(&files)
    }

    fn bytes(&self, scene: &Scene) -> Result<Vec<u8>> {
        Ok(match PictureFormat::of(&self.output)? {
            PictureFormat::Svg => self.look.svg_writer()(scene)?.into_bytes(),
            PictureFormat::Png => png(scene, 1.0)?,
        })
    }
}

/// Says what found no room in a picture.
fn tell_left_off(scene: &Scene) {
    if let Some(words) = left_off_in_words(&scene.left_off) {
        output::note(&words);
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
            _ => Err(Error::bad(CommandFault::NoPicture {
                file: path.display().to_string(),
                as_png: path.with_extension("png").display().to_string(),
            })),
        }
    }
}
