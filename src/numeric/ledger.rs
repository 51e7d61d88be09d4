//! A calculation written out: every quantity with as many digits as the lines below it need.
//!
//! In: given quantities, and quantities that follow by a [`Formula`] from those above. Out: digits, so that every
//! line can be computed again from the digits printed above it.

use super::formula::Formula;

/// Most digits behind the point.
const MOST_DECIMALS: usize = 12;

/// One quantity.
#[derive(Debug, Clone)]
struct LedgerLine {
    value: f64,
    decimals: usize,
    formula: Option<Formula>,
}

/// A calculation, line by line.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    lines: Vec<LedgerLine>,
}

impl Ledger {
    /// Adds a given quantity with at least so many decimals; one that is exact with fewer is written so.
    pub fn given(&mut self, value: f64, decimals: usize) -> usize {
        let exact = (0..=decimals).find(|few| is_exact(value, *few));
        self.add(value, exact.unwrap_or(decimals), None)
    }

    /// Adds a quantity that follows from those above.
    pub fn follows(&mut self, value: f64, decimals: usize, formula: Formula) -> usize {
        self.add(value, decimals, Some(formula))
    }

    fn add(&mut self, value: f64, decimals: usize, formula: Option<Formula>) -> usize {
        self.lines.push(LedgerLine {
            value,
            decimals,
            formula,
        });
        self.lines.len() - 1
    }

    /// Gives quantities more digits until every line agrees with what its formula makes of the digits above it.
    ///
    /// # Algorithm
    /// From the last line to the first: while the line computed from printed digits is off by more than one of its
    /// own last digit, the quantity whose rounding moves it most is written with one digit more. A quantity that
    /// several lines use may move one that agreed before, so this is done again until nothing changes.
    ///
    /// **Shape.** Digits are added and never taken away, so it ends. **Fails.** Never: a formula that is none of its
    /// value's own is left with the most digits.
    pub fn settle(&mut self) {
        while self.has_sharpened() {}
    }

    /// Whether a quantity has got a digit more, looking once at every line.
    fn has_sharpened(&mut self) -> bool {
        let mut has = false;
        for index in (0..self.lines.len()).rev() {
            while !self.agrees(index) {
                let Some(worst) = self.worst_input(index) else {
                    break;
                };
                self.lines[worst].decimals += 1;
                has = true;
            }
        }
        has
    }

    /// A quantity as it is printed, `−` for minus.
    #[must_use]
    pub fn printed(&self, index: usize) -> String {
        let line = &self.lines[index];
        let text = format!("{:.*}", line.decimals, line.value);
        let is_nothing = text.bytes().all(|byte| !(b'1'..=b'9').contains(&byte));
        if is_nothing {
            text.replace('-', "")
        } else {
            text.replace('-', "−")
        }
    }

    /// The formula of a quantity, if it follows from others.
    #[must_use]
    pub fn formula(&self, index: usize) -> Option<&Formula> {
        self.lines[index].formula.as_ref()
    }

    fn rounded(&self, index: usize) -> f64 {
        let line = &self.lines[index];
        let text = format!("{:.*}", line.decimals, line.value);
        text.parse().unwrap_or(line.value)
    }

    fn agrees(&self, index: usize) -> bool {
        let line = &self.lines[index];
        let Some(formula) = &line.formula else {
            return true;
        };
        let again = formula.value(&|input| self.rounded(input));
        let last_digit = 0.1_f64.powi(i32::try_from(line.decimals).unwrap_or(0));
        (again - self.rounded(index)).abs() <= 0.999 * last_digit
    }

    /// The input whose rounding moves a line most.
    fn worst_input(&self, index: usize) -> Option<usize> {
        let formula = self.lines[index].formula.as_ref()?;
        let printed = formula.value(&|input| self.rounded(input));
        let moved = |sharp: usize| {
            let value = |input: usize| {
                if input == sharp {
                    self.lines[input].value
                } else {
                    self.rounded(input)
                }
            };
            (formula.value(&value) - printed).abs()
        };
        let inputs = formula.quantities().into_iter();
        inputs
            .filter(|input| self.lines[*input].decimals < MOST_DECIMALS)
            .map(|input| (input, moved(input)))
            .filter(|(_, by)| *by > 0.0 || by.is_nan())
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(input, _)| input)
    }
}

fn is_exact(value: f64, decimals: usize) -> bool {
    let text = format!("{value:.decimals$}");
    let again: f64 = text.parse().unwrap_or(f64::NAN);
    (again - value).abs() <= 1.0e-13 * value.abs()
}
