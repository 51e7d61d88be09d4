//! How pictures look, for commands that may draw several.

use super::figure::{Picture, ThemeOption};
use crate::error::Result;
use crate::plot::Look;
use clap::Args;
use std::path::PathBuf;

/// Size, theme, letters, and whether files may be replaced.
#[derive(Debug, Args)]
pub struct LookOptions {
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

impl LookOptions {
    /// The same look for one file.
    #[must_use]
    pub fn picture(&self, output: PathBuf) -> Picture {
        Picture {
            output,
            size: self.size.clone(),
            theme: self.theme,
            live_text: self.live_text,
            force: self.force,
        }
    }

    /// Size and theme.
    pub fn look(&self) -> Result<Look> {
        self.picture(PathBuf::new()).look()
    }
}
