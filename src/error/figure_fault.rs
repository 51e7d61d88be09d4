//! Why a figure cannot be drawn: faults of pictures, of plots, of figures.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::Compared;

/// Why a figure cannot be drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum FigureFault<Inner> {
    /// The picture cannot be made or written.
    Picture(PictureFault),
    /// What is plotted cannot be drawn.
    Plot(PlotFault),
    /// A repetition in which nothing moves.
    NothingMoves,
    /// A session for which nothing was predicted.
    NothingPredicted,
    /// A session that fills more than one page.
    PageFull,
    /// No joint of the lift turns in the plane of its picture, or no muscle crosses one.
    NoJointInView,
    /// A load for a drawing of best efforts, in which a load has no part.
    LoadWithoutPart,
    /// No pair of values has the figure that a map would show.
    NoPair(Compared),
    /// The fault of one figure of a set.
    Within {
        /// Name of the figure.
        figure: String,
        /// What is wrong with it.
        what: Box<Inner>,
    },
}

/// Why a picture cannot be made or written.
#[derive(Debug, Clone, PartialEq)]
pub enum PictureFault {
    /// A range whose lower end is not below its upper end.
    NoRange {
        /// The lower end.
        least: f64,
        /// The upper end.
        most: f64,
    },
    /// A picture with no area, or larger than the format allows.
    NoExtent {
        /// Its width or height, pixels.
        pixels: f64,
    },
    /// A picture that would have no pixels or too many.
    NoPixels {
        /// Its width or height, pixels of the scene.
        pixels: f64,
        /// Pixels of the file for each of the scene.
        factor: f64,
    },
    /// No memory for so many pixels.
    NoMemory {
        /// Pixels across.
        width: u32,
        /// Pixels down.
        height: u32,
    },
    /// The writer of a picture gave up, for the reason that it gave.
    Unwritable(String),
    /// The writer of PNG gave up, for the reason that it gave.
    UnwritablePng(String),
    /// A picture that cannot be read back to outline its letters, for the reason that the reader gave.
    Unreadable(String),
}

/// Why something cannot be plotted.
#[derive(Debug, Clone, PartialEq)]
pub enum PlotFault {
    /// A text that names no size.
    UnknownSize(String),
    /// A size outside what can be drawn.
    SizeOutside {
        /// Pixels across.
        width: u32,
        /// Pixels down.
        height: u32,
        /// Least and most pixels across.
        widths: [u32; 2],
        /// Least and most pixels down.
        heights: [u32; 2],
        /// Least and greatest width over height.
        shapes: [f64; 2],
    },
    /// A canvas without room for what is drawn on it.
    TooSmall(Plotted),
    /// Nothing to draw.
    Nothing {
        /// What is missing.
        of: Plotted,
        /// The quantity that it would show.
        quantity: String,
    },
    /// A value that is no number.
    NoNumber {
        /// What has the value.
        of: Plotted,
        /// The quantity that it shows.
        quantity: String,
    },
    /// A point of a curve that is no number.
    PointNoNumber {
        /// Which point, from 1.
        point: usize,
        /// Name of the curve.
        curve: String,
    },
    /// More or fewer panels than a chart of curves or small panels can have.
    PanelCount {
        /// Curves, or small panels.
        of: Plotted,
        /// Panels asked for.
        count: usize,
        /// Most panels.
        most: usize,
    },
    /// Places of a map that do not rise along its axis.
    NotRising {
        /// What the axis shows.
        quantity: String,
    },
    /// A map whose values do not match its places.
    ValueCount {
        /// Places across.
        columns: usize,
        /// Places up.
        rows: usize,
    },
}

/// What is plotted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plotted {
    /// Curves over one axis.
    Curves,
    /// Areas and marked points.
    Marks,
    /// Small panels side by side.
    SmallPanels,
    /// Bars.
    Bars,
    /// A map of values.
    Map,
    /// Drawn sarcomeres.
    Sarcomeres,
    /// Drawn bodies.
    Bodies,
    /// Words.
    Words,
}

/// What a picture is without because its size has no room for it, in the order in which it goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LeftOff {
    /// Bodies below or inside the chart.
    Poses,
    /// The note at the foot.
    Note,
    /// The line below the title.
    Subtitle,
}
