//! Sums of known functions, and polynomials, fitted to data by least squares.
//!
//! In: data. Out: coefficients, or which data are missing to fix them.

use super::polynomial::Polynomial;
use crate::error::{Error, Result};
use nalgebra::{DMatrix, DVector};

/// Singular values below this share of the largest count as zero. Assumed, well above rounding.
const RANK: f64 = 1e-11;

/// The coefficients that bring `Σ_j c_j · terms[i][j]` nearest to `data[i]`.
///
/// ```text
/// minimise Σ_i ( data_i − Σ_j c_j terms_ij )²
/// ```
/// **Source.** Linear least squares by singular values (textbook), columns brought to one length.
/// **Fails.** When there are fewer data than coefficients, rows of different length, numbers that are
/// none, or terms so alike that the data cannot tell them apart.
///
/// # Errors
/// See **Fails**.
pub fn fit_linear(terms: &[Vec<f64>], data: &[f64]) -> Result<Vec<f64>> {
    let count = terms.first().map_or(0, Vec::len);
    check_table(terms, data, count)?;
    let mut matrix = DMatrix::from_fn(data.len(), count, |i, j| terms[i][j]);
    let lengths: Vec<f64> = matrix.column_iter().map(|column| column.norm()).collect();
    for (mut column, &length) in matrix.column_iter_mut().zip(&lengths) {
        if length > 0.0 {
            column /= length;
        }
    }
    let decomposition = matrix.svd(true, true);
    let largest = decomposition.singular_values.max();
    let rank = decomposition.rank(RANK * largest);
    if rank < count {
        return Err(Error::no_answer(format!(
            "the data fix only {rank} of {count} coefficients: some terms cannot be told apart"
        ))
        .hint("leave a term out, or add data where the terms differ"));
    }
    let scaled = decomposition
        .solve(&DVector::from_column_slice(data), 0.0)
        .map_err(|reason| Error::no_answer(format!("the linear fit failed: {reason}")))?;
    Ok(scaled
        .iter()
        .zip(&lengths)
        .map(|(c, length)| c / length)
        .collect())
}

fn check_table(terms: &[Vec<f64>], data: &[f64], count: usize) -> Result<()> {
    if count == 0 || terms.len() != data.len() || terms.iter().any(|row| row.len() != count) {
        return Err(Error::bad(format!(
            "a linear fit needs one row of terms, all of one length, for each of the {} data",
            data.len()
        )));
    }
    if data.len() < count {
        return Err(Error::bad(format!(
            "{} data cannot fix {count} coefficients",
            data.len()
        )));
    }
    if !terms.iter().flatten().chain(data).all(|x| x.is_finite()) {
        return Err(Error::bad("a linear fit met a number that is not finite"));
    }
    Ok(())
}

/// The polynomial of this degree nearest to the points.
///
/// **Shape.** Fitted in a variable that runs from −1 to 1 over the points, then written in `x`.
/// **Fails.** As [`fit_linear`]; points at fewer different places than there are coefficients.
///
/// # Errors
/// See **Fails**.
pub fn fit_polynomial(points: &[(f64, f64)], degree: usize) -> Result<Polynomial> {
    let (low, high) = points
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), p| {
            (low.min(p.0), high.max(p.0))
        });
    let middle = low + (high - low) / 2.0;
    let half = if high > low { (high - low) / 2.0 } else { 1.0 };
    let powers = |x: f64| {
        (0..=degree)
            .map(|k| ((x - middle) / half).powi(k as i32))
            .collect()
    };
    let terms: Vec<Vec<f64>> = points.iter().map(|p| powers(p.0)).collect();
    let data: Vec<f64> = points.iter().map(|p| p.1).collect();
    let coefficients = fit_linear(&terms, &data)?;
    // Horner's rule on polynomials: p ← p · (x − middle)/half + c.
    let mut written = vec![0.0; degree + 1];
    for c in coefficients.iter().rev() {
        for k in (0..=degree).rev() {
            let below = if k > 0 { written[k - 1] } else { 0.0 };
            written[k] = (below - middle * written[k]) / half;
        }
        written[0] += c;
    }
    Polynomial::new(&written)
}
