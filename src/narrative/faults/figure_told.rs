//! Words for: why a figure cannot be drawn.
//!
//! In: a [`FigureFault`]. Out: [`Told`].

use super::told::{TellInner, Told};
use crate::error::{FigureFault, PictureFault, PlotFault, Plotted, What};
use crate::narrative::comparison::compared_in_words;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &FigureFault<What>, units: System, of: TellInner) -> Told {
    match fault {
        FigureFault::Picture(fault) => picture(fault),
        FigureFault::Plot(fault) => plot(fault),
        FigureFault::NothingMoves => Told::new("nothing moves in this repetition"),
        FigureFault::NothingPredicted => Told::new(
            "nothing was predicted for this session, so there is no figure of it",
        )
        .hint(
            "overloaded lowering and lifts without a simulated repetition have none; --loads draws loads and repetitions",
        ),
        FigureFault::PageFull => Told::new("this session is too long for one page")
            .hint("plan fewer sets, or print the HTML sheet, which may take two"),
        FigureFault::LoadWithoutPart => Told::new(
            "muscles are drawn in best efforts, in which a load has no part",
        )
        .hint("leave the load out, or draw what it asks for: --draw free-body, --draw holders"),
        FigureFault::NoJointInView => Told::new(
            "no joint of this lift turns in the plane of its picture, so its muscles cannot be drawn on it",
        ),
        FigureFault::NoPair(compared) => Told::new(format!(
            "no pair of values has a {}",
            compared_in_words(*compared)
        )),
        FigureFault::Within { figure, what } => {
            let inner = of(what, units);
            Told {
                message: format!("figure {figure}: {}", inner.message),
                ..inner
            }
        }
    }
}

fn picture(fault: &PictureFault) -> Told {
    match fault {
        PictureFault::NoRange { least, most } => {
            Told::new(format!("an axis cannot run from {least} to {most}"))
                .hint("the lower end must be smaller than the upper end, both finite")
        }
        PictureFault::NoExtent { pixels } => {
            Told::new(format!("a picture cannot be {pixels} pixels wide or high"))
                .hint("1 to 100000 pixels are possible")
        }
        PictureFault::NoPixels { pixels, factor } => Told::new(format!(
            "a picture of {pixels} pixels cannot be drawn at {factor} times its size"
        ))
        .hint("each side may have 1 to 16384 pixels"),
        PictureFault::NoMemory { width, height } => {
            Told::new(format!("no room for {width} × {height} pixels"))
        }
        PictureFault::Unwritable(reason) => {
            Told::new(format!("the picture could not be written: {reason}"))
        }
        PictureFault::UnwritablePng(reason) => {
            Told::new(format!("the picture could not be written as PNG: {reason}"))
        }
        PictureFault::Unreadable(reason) => {
            Told::new(format!("the picture could not be read back: {reason}"))
        }
    }
}

fn plot(fault: &PlotFault) -> Told {
    match fault {
        PlotFault::UnknownSize(text) => Told::new(format!("`{text}` is no size of a figure"))
            .hint("sizes are slide, page, or width x height in pixels such as 1200x800"),
        PlotFault::SizeOutside {
            width,
            height,
            widths,
            heights,
            shapes,
        } => Told::new(format!("a figure cannot be {width}x{height} pixels")).hint(format!(
            "width {} to {}, height {} to {}, width over height {} to {}; or `slide`, `page`. In less height the curves \
             would get less than their share of it",
            widths[0], widths[1], heights[0], heights[1], shapes[0], shapes[1]
        )),
        PlotFault::TooSmall(of) => too_small(*of),
        PlotFault::Nothing { of, quantity } => nothing(*of, quantity),
        PlotFault::NoNumber { of, quantity } => no_number(*of, quantity),
        PlotFault::PointNoNumber { point, curve } => {
            Told::new(format!("point {point} of the curve `{curve}` is no number"))
        }
        PlotFault::PanelCount { of, count, most } => Told::new(match of {
            Plotted::SmallPanels => {
                format!("small panels come in numbers from 1 to {most}, not {count}")
            }
            Plotted::Bodies => {
                format!("bodies side by side come in numbers from 1 to {most}, not {count}")
            }
            _ => format!("a chart of curves has 1 or {most} panels, not {count}"),
        }),
        PlotFault::NotRising { quantity } => Told::new(format!(
            "the places on `{quantity}` must be two or more rising numbers"
        )),
        PlotFault::ValueCount { columns, rows } => Told::new(format!(
            "a map of {columns} by {rows} places needs as many values"
        )),
    }
}

fn too_small(of: Plotted) -> Told {
    let (what, hint) = match of {
        Plotted::SmallPanels => (
            "so many panels",
            "choose a larger size or show fewer of them",
        ),
        Plotted::Map => ("a map", "choose a larger size"),
        Plotted::Sarcomeres => ("drawn sarcomeres", "choose a larger size"),
        Plotted::Bodies => ("drawn bodies", "choose a larger size"),
        Plotted::Words => ("so many words", "choose a larger size"),
        Plotted::Curves | Plotted::Marks | Plotted::Bars => (
            "what it shows",
            "choose a larger size, a shorter title or fewer panels",
        ),
    };
    Told::new(format!("the figure is too small for {what}")).hint(hint)
}

fn nothing(of: Plotted, quantity: &str) -> Told {
    Told::new(match of {
        Plotted::Curves => format!("nothing to draw for `{quantity}`: no curve has two points"),
        Plotted::Map => format!("no value of `{quantity}` to draw"),
        _ => format!("nothing to draw for `{quantity}`"),
    })
}

fn no_number(of: Plotted, quantity: &str) -> Told {
    Told::new(match of {
        Plotted::Marks => format!("an area or a marked point of `{quantity}` is no number"),
        Plotted::Map => format!("a value of `{quantity}` is no number"),
        _ => format!("a bar of `{quantity}` is no number"),
    })
}
