//! Linear scales: data to pixels, round ticks, numbers in words, and lines cut at the plot's edge.
//!
//! In: a range of data and the pixels it covers. Out: positions, ticks, labels, clipped lines.

use super::scene::{PixelPoint, Rect};
use crate::error::{Error, PictureFault, Result};
use plotters::coord::ranged1d::{BoldPoints, Ranged};
use plotters::coord::types::RangedCoordf64;

/// A linear scale from a range of data to a range of pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    least: f64,
    most: f64,
    from_px: f64,
    to_px: f64,
}

impl Scale {
    /// A scale from `range` (data) to `pixels`; the pixels may run either way.
    ///
    /// # Errors
    /// If the range is empty, runs backwards or is no number.
    pub fn new(range: [f64; 2], pixels: [f64; 2]) -> Result<Self> {
        let [least, most] = range;
        if !(least.is_finite() && most.is_finite() && (most - least).is_finite() && least < most) {
            return Err(Error::bad(PictureFault::NoRange { least, most }));
        }
        Ok(Self {
            least,
            most,
            from_px: pixels[0],
            to_px: pixels[1],
        })
    }

    /// The range of data.
    #[must_use]
    pub fn range(&self) -> [f64; 2] {
        [self.least, self.most]
    }

    /// Position of a value in pixels; values outside the range lie outside the pixels.
    #[must_use]
    pub fn px(&self, value: f64) -> f64 {
        let share = (value - self.least) / (self.most - self.least);
        self.from_px + share * (self.to_px - self.from_px)
    }

    /// The value at a share of the range: 0 its lower end, 1 its upper end.
    #[must_use]
    pub fn at(&self, share: f64) -> f64 {
        self.least + share * (self.most - self.least)
    }

    /// Whether the value lies in the range, ends included.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        value >= self.least && value <= self.most
    }
}

/// Round values inside a range, at most `most` of them.
#[must_use]
pub fn ticks(range: [f64; 2], most: usize) -> Vec<f64> {
    let slack = (range[1] - range[0]) * 1e-9;
    let rough =
        RangedCoordf64::from(range[0] - slack..range[1] + slack).key_points(BoldPoints(most));
    let step = match rough.as_slice() {
        [first, second, ..] => second - first,
        _ => return rough,
    };
    // Adding up steps leaves 0.6000000000000001; the value nearest to the written figure is meant.
    let power = 10_f64.powi(i32::try_from(decimals_of_step(step)).unwrap_or(0));
    if step * power < 0.5 {
        return rough;
    }
    rough
        .into_iter()
        .map(|tick| {
            let written = (tick * power).round() / power;
            if written.abs() < slack { 0.0 } else { written }
        })
        .collect()
}

/// Distance between neighbouring ticks; the whole range if there are fewer than two.
#[must_use]
pub fn tick_step(range: [f64; 2], most: usize) -> f64 {
    match ticks(range, most).as_slice() {
        [first, second, ..] => second - first,
        _ => range[1] - range[0],
    }
}

/// The range widened to whole tick steps, so that it begins and ends with a tick.
///
/// A range without extent is opened around its value first.
#[must_use]
pub fn rounded_out(range: [f64; 2], most: usize) -> [f64; 2] {
    let [mut least, mut most_value] = range;
    if least == most_value {
        let half = if least == 0.0 { 0.5 } else { least.abs() * 0.1 };
        least -= half;
        most_value += half;
    }
    let step = tick_step([least, most_value], most);
    [
        (least / step + 1e-9).floor() * step,
        (most_value / step - 1e-9).ceil() * step,
    ]
}

/// How many decimals the ticks of a given step need.
#[must_use]
pub fn decimals_of_step(step: f64) -> usize {
    (0..9)
        .find(|decimals| {
            let scaled = step.abs() * 10_f64.powi(*decimals);
            scaled >= 0.999 && (scaled - scaled.round()).abs() < 1e-6 * scaled.max(1.0)
        })
        .map_or(9, |decimals| decimals.unsigned_abs() as usize)
}

/// A number for people: fixed decimals, a true minus sign (U+2212), thin spaces (U+2009) between
/// groups of three digits from 10 000 on, powers of ten from 10⁹ on and below 10⁻⁶.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    if value != 0.0 && !(1e-6..1e9).contains(&value.abs()) {
        return power_of_ten(value);
    }
    let plain = format!("{:.decimals$}", value.abs());
    let (whole, fraction) = plain.split_once('.').unwrap_or((&plain, ""));
    let is_zero = plain.chars().all(|letter| matches!(letter, '0' | '.'));
    let mut text = String::new();
    if value < 0.0 && !is_zero {
        text.push('\u{2212}');
    }
    text.push_str(&grouped(whole));
    if !fraction.is_empty() {
        text.push('.');
        text.push_str(fraction);
    }
    text
}

/// A number with as many decimals as are not zero, at most `most`.
#[must_use]
pub fn short_number(value: f64, most: usize) -> String {
    let text = number(value, most);
    if text.contains('.') && !text.contains('×') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

fn power_of_ten(value: f64) -> String {
    let exponent = value.abs().log10().floor();
    let mantissa = number(value / 10_f64.powf(exponent), 1);
    let mantissa = mantissa.strip_suffix(".0").unwrap_or(&mantissa).to_owned();
    let raised: String = format!("{exponent:.0}")
        .chars()
        .map(|letter| match letter {
            '-' => '⁻',
            '1' => '¹',
            '2' => '²',
            '3' => '³',
            digit => char::from_u32('⁰' as u32 + digit.to_digit(10).unwrap_or(0)).unwrap_or('⁰'),
        })
        .collect();
    format!("{mantissa} × 10{raised}")
}

fn grouped(digits: &str) -> String {
    if digits.len() < 5 {
        return digits.to_owned();
    }
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push('\u{2009}');
        }
        text.push(digit);
    }
    text
}

/// The pieces of a line that lie inside the area, cut exactly at its edges.
#[must_use]
pub fn clipped(points: &[PixelPoint], area: &Rect) -> Vec<Vec<PixelPoint>> {
    let mut pieces: Vec<Vec<PixelPoint>> = Vec::new();
    let mut open: Vec<PixelPoint> = Vec::new();
    for pair in points.windows(2) {
        let Some((from, to)) = segment_inside(pair[0], pair[1], area) else {
            keep(&mut pieces, &mut open);
            continue;
        };
        if open.last() != Some(&from) {
            keep(&mut pieces, &mut open);
            open.push(from);
        }
        open.push(to);
        if to != pair[1] {
            keep(&mut pieces, &mut open);
        }
    }
    keep(&mut pieces, &mut open);
    pieces
}

fn keep(pieces: &mut Vec<Vec<PixelPoint>>, open: &mut Vec<PixelPoint>) {
    if open.len() > 1 {
        pieces.push(std::mem::take(open));
    }
    open.clear();
}

/// The part of a segment inside an upright rectangle (Liang & Barsky 1984, ACM TOG 3:1-22), or none.
#[must_use]
pub fn segment_inside(
    from: PixelPoint,
    to: PixelPoint,
    area: &Rect,
) -> Option<(PixelPoint, PixelPoint)> {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    let sides = [
        (-dx, from[0] - area.left),
        (dx, area.right - from[0]),
        (-dy, from[1] - area.top),
        (dy, area.bottom - from[1]),
    ];
    for (speed, room) in sides {
        if speed == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if speed < 0.0 {
            enter = enter.max(room / speed);
        } else {
            leave = leave.min(room / speed);
        }
    }
    if enter > leave {
        return None;
    }
    let at = |share: f64| [from[0] + share * dx, from[1] + share * dy];
    let first = if enter == 0.0 { from } else { at(enter) };
    let last = if leave == 1.0 { to } else { at(leave) };
    Some((first, last))
}

/// The part of a closed area inside an upright rectangle (Sutherland & Hodgman 1974, CACM 17:32-42).
#[must_use]
pub fn clipped_area(corners: &[PixelPoint], area: &Rect) -> Vec<PixelPoint> {
    let mut now = corners.to_vec();
    for (axis, edge, sign) in [
        (0, area.left, 1.0),
        (0, area.right, -1.0),
        (1, area.top, 1.0),
        (1, area.bottom, -1.0),
    ] {
        now = cut(&now, axis, edge, sign);
    }
    now
}

fn cut(corners: &[PixelPoint], axis: usize, edge: f64, sign: f64) -> Vec<PixelPoint> {
    let inside = |point: PixelPoint| sign * (point[axis] - edge) >= 0.0;
    let mut kept = Vec::with_capacity(corners.len() + 2);
    for (index, &to) in corners.iter().enumerate() {
        let from = corners[(index + corners.len() - 1) % corners.len()];
        if inside(from) != inside(to) {
            let share = (edge - from[axis]) / (to[axis] - from[axis]);
            let mut crossing = [
                from[0] + share * (to[0] - from[0]),
                from[1] + share * (to[1] - from[1]),
            ];
            crossing[axis] = edge;
            kept.push(crossing);
        }
        if inside(to) {
            kept.push(to);
        }
    }
    kept
}
