//! What is believed of several numbers at once: most probable values and a covariance, narrowed by what is observed.
//!
//! In: a prior, observations that are linear in the numbers. Out: [`Belief`], its scatter along any direction, and draws
//! from it.

use nalgebra::{DMatrix, DVector};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A normal distribution of several numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    /// The most probable numbers.
    pub mean: DVector<f64>,
    /// Their covariance: symmetric, no variance below zero.
    pub covariance: DMatrix<f64>,
}

/// A value observed with an error of its own: `value = slopes·x + error`.
#[derive(Debug, Clone, PartialEq)]
pub struct Observation {
    /// What the value gains by one of each number.
    pub slopes: DVector<f64>,
    /// The value that was seen.
    pub value: f64,
    /// Variance of its error.
    pub variance: f64,
}

impl Belief {
    /// The belief after observations whose errors know nothing of each other.
    ///
    /// ```text
    /// k = C h/(hᵀC h + r),   m ← m + k (y − hᵀm),   C ← C − k hᵀC        one observation after the other
    /// ```
    /// | symbol | meaning                               | range |
    /// | ------ | ------------------------------------- | ----- |
    /// | `m, C` | mean and covariance                   | –     |
    /// | `h, y` | slopes and value of an observation    | –     |
    /// | `r`    | variance of its error                 | ≥ 0   |
    ///
    /// **Shape.** No variance grows; the order of the observations does not matter.
    /// **Source.** Conditioning of a normal distribution (textbook). **Fails.** Never: an observation without variance of
    /// numbers that are known already changes nothing.
    #[must_use]
    pub fn given(&self, observations: &[Observation]) -> Self {
        let mut belief = self.clone();
        for seen in observations {
            let shared = &belief.covariance * &seen.slopes;
            let variance = seen.slopes.dot(&shared) + seen.variance;
            if variance <= 0.0 {
                continue;
            }
            let miss = seen.value - seen.slopes.dot(&belief.mean);
            belief.mean += &shared * (miss / variance);
            belief.covariance -= &shared * shared.transpose() / variance;
        }
        belief
    }

    /// Most probable value and variance of a sum of the numbers with these weights.
    #[must_use]
    pub fn along(&self, weights: &DVector<f64>) -> (f64, f64) {
        let variance = weights.dot(&(&self.covariance * weights));
        (weights.dot(&self.mean), variance.max(0.0))
    }

    /// What is believed of the first so many numbers.
    #[must_use]
    pub fn leading(&self, count: usize) -> Self {
        Self {
            mean: self.mean.rows(0, count).into_owned(),
            covariance: self.covariance.view((0, 0), (count, count)).into_owned(),
        }
    }

    /// A root of the covariance: `R Rᵀ = C`, by its eigenvectors, so that numbers without scatter are allowed.
    #[must_use]
    pub fn root(&self) -> DMatrix<f64> {
        let parts = self.covariance.clone().symmetric_eigen();
        let mut root = parts.eigenvectors;
        for (mut column, value) in root.column_iter_mut().zip(parts.eigenvalues.iter()) {
            column *= value.max(0.0).sqrt();
        }
        root
    }

    /// The numbered draw of a stream that depends on seed and number alone.
    #[must_use]
    pub fn draw(&self, root: &DMatrix<f64>, seed: u64, number: u64) -> DVector<f64> {
        let mut stream = NormalStream::new(seed, number);
        let z = DVector::from_fn(self.mean.len(), |_, _| stream.next());
        &self.mean + root * z
    }
}

/// A normal distribution made ready to be drawn from and weighed with.
#[derive(Debug, Clone, PartialEq)]
pub struct NormalDensity {
    mean: DVector<f64>,
    /// `L Lᵀ = C`, lower triangle.
    lower: DMatrix<f64>,
}

impl NormalDensity {
    /// The distribution of a belief.
    ///
    /// **Fails.** Never: a covariance that has no root, since some number is known, is widened by what rounding leaves.
    #[must_use]
    pub fn of(belief: &Belief) -> Self {
        let size = belief.mean.len();
        let largest = belief.covariance.diagonal().amax().max(f64::MIN_POSITIVE);
        let mut least = 1.0e-12 * largest;
        loop {
            let widened = &belief.covariance + DMatrix::identity(size, size) * least;
            if let Some(root) = widened.cholesky() {
                let (mean, lower) = (belief.mean.clone(), root.l());
                return Self { mean, lower };
            }
            least *= 100.0;
        }
    }

    /// The numbers that these standard normal ones stand for.
    #[must_use]
    pub fn at(&self, standard: &DVector<f64>) -> DVector<f64> {
        &self.mean + &self.lower * standard
    }

    /// Logarithm of the density, but for the constant of so many numbers.
    ///
    /// ```text
    /// ln p = −½ |L⁻¹(x − m)|² − Σ ln L_ii
    /// ```
    /// **Source.** Textbook. **Fails.** Never.
    #[must_use]
    pub fn log_density(&self, numbers: &DVector<f64>) -> f64 {
        let mut standard = numbers - &self.mean;
        self.lower.solve_lower_triangular_mut(&mut standard);
        let scale: f64 = self.lower.diagonal().iter().map(|root| root.ln()).sum();
        -0.5 * standard.norm_squared() - scale
    }
}

/// A stream of standard normal numbers that depends on seed and number alone.
#[derive(Debug, Clone)]
pub struct NormalStream(ChaCha8Rng);

impl NormalStream {
    /// The stream of this number.
    #[must_use]
    pub fn new(seed: u64, number: u64) -> Self {
        let mut stream = ChaCha8Rng::seed_from_u64(seed);
        stream.set_stream(number);
        Self(stream)
    }

    /// The next number.
    ///
    /// **Source.** Box & Muller 1958, Ann. Math. Stat. 29:610-611 (from memory).
    #[allow(clippy::should_implement_trait)]
    pub fn next(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.0.random::<f64>()).max(1.0e-300).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.0.random::<f64>()).cos()
    }
}
