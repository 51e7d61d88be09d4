//! Sums of known functions fitted to data by least squares.
//!
//! In: data. Out: coefficients, or which data are missing to fix them.

use crate::error::{Error, FitFault, Result};
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
        return Err(Error::no_answer(FitFault::TermsAlike { rank, count }));
    }
    let scaled = decomposition
        .solve(&DVector::from_column_slice(data), 0.0)
        .expect("both factors of the decomposition were asked for");
    Ok(scaled
        .iter()
        .zip(&lengths)
        .map(|(c, length)| c / length)
        .collect())
}

fn check_table(terms: &[Vec<f64>], data: &[f64], count: usize) -> Result<()> {
    if count == 0 || terms.len() != data.len() || terms.iter().any(|row| row.len() != count) {
        let data = data.len();
        return Err(Error::bad(FitFault::UnevenTerms { data }));
    }
    if data.len() < count {
        let data = data.len();
        return Err(Error::bad(FitFault::TooFewData { data, count }));
    }
    if !terms.iter().flatten().chain(data).all(|x| x.is_finite()) {
        return Err(Error::bad(FitFault::NotFinite));
    }
    Ok(())
}
