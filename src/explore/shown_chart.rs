//! Which charts the page wants, how large, and what it gets of them.
//!
//! In: a [`ChartWish`]. Out: [`ShownChart`]: SVG and the place of its axes.

use crate::draw::{self, svg};
use crate::error::Result;
use crate::figures::LiveChart;
use crate::plot::{Look, Size};
use serde::{Deserialize, Serialize};

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum WishedTheme {
    Light,
    Dark,
}

impl From<WishedTheme> for draw::Theme {
    fn from(theme: WishedTheme) -> Self {
        match theme {
            WishedTheme::Light => Self::Light,
            WishedTheme::Dark => Self::Dark,
        }
    }
}

/// What is drawn beside the strength curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum BesideChart {
    Nothing,
    Lengths,
    Arms,
    Moments,
}

/// What the page shows.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ChartWish {
    /// Width and height of the strength curve, pixels; nothing is drawn without.
    pub(super) size: Option<[u32; 2]>,
    pub(super) beside: BesideChart,
    /// Width and height of what is beside it.
    pub(super) beside_size: [u32; 2],
    pub(super) theme: WishedTheme,
    /// Number of the moving joint that arms and moments are shown about.
    pub(super) joint: usize,
    /// Number of the muscle that is looked at.
    pub(super) muscle: Option<usize>,
}

/// Least and most pixels of a side, assumed: from the smallest phone to a wall.
const SIDES: [u32; 2] = [200, 4000];

impl ChartWish {
    /// A look of this size; sizes of no screen are cut.
    pub(super) fn look(&self, size: [u32; 2]) -> Look {
        let [width, height] = size.map(|side| side.clamp(SIDES[0], SIDES[1]));
        Look {
            size: Size::Custom { width, height },
            theme: self.theme.into(),
        }
    }
}

/// A chart as the page gets it.
#[derive(Debug, Clone, Serialize)]
pub(super) struct ShownChart {
    svg: String,
    area_px: [f64; 4],
    across: [f64; 2],
    up: [f64; 2],
}

impl ShownChart {
    pub(super) fn of(chart: &LiveChart) -> Result<Self> {
        Ok(Self {
            svg: svg(&chart.scene)?,
            area_px: chart.area_px,
            across: chart.across,
            up: chart.up,
        })
    }
}
