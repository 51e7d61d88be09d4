//! A sheet of equations: symbols, numbers and results from one formula each, with the digits that they need.
//!
//! In: headings, sentences, given quantities and formulas, in their order. Out: [`SheetLine`]s for a report.

use crate::numeric::{Formula, Ledger};

/// One line of a sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SheetLine {
    /// A heading; 1 is the sheet's own, 2 a part's, 3 a muscle's.
    Heading(u8, String),
    /// A sentence.
    Sentence(String),
    /// An equation: the symbol, what it is in symbols, in numbers, its value with unit, what it means.
    Equation {
        /// "F = F0·fL = 624·0.83 = 518 N".
        equation: String,
        /// What the line means; may be empty.
        meaning: String,
    },
}

/// How a quantity is shown.
#[derive(Debug, Clone)]
struct Shown {
    symbol: String,
    unit: &'static str,
    /// Stands for the formula in symbols where that would only repeat many of a kind.
    instead: Option<String>,
}

#[derive(Debug, Clone)]
enum SheetEntry {
    Line(SheetLine),
    Quantity(usize, String),
}

/// A unit and how many decimals a quantity has at least.
pub(super) type InUnit = (&'static str, usize);

/// A sheet in the making.
#[derive(Debug, Clone, Default)]
pub(super) struct WorkedSheet {
    ledger: Ledger,
    shown: Vec<Shown>,
    entries: Vec<SheetEntry>,
}

impl WorkedSheet {
    pub(super) fn heading(&mut self, level: u8, text: impl Into<String>) {
        let line = SheetLine::Heading(level, text.into());
        self.entries.push(SheetEntry::Line(line));
    }

    pub(super) fn sentence(&mut self, text: impl Into<String>) {
        let line = SheetLine::Sentence(text.into());
        self.entries.push(SheetEntry::Line(line));
    }

    /// A quantity that the model gives.
    pub(super) fn given(
        &mut self,
        symbol: impl Into<String>,
        value: f64,
        unit: InUnit,
        meaning: impl Into<String>,
    ) -> Formula {
        let index = self.ledger.given(value, unit.1);
        self.show(symbol.into(), unit.0, None, index, meaning.into())
    }

    /// A quantity that follows from those above; `value` is the model's own.
    pub(super) fn follows(
        &mut self,
        symbol: impl Into<String>,
        formula: Formula,
        value: f64,
        unit: InUnit,
        meaning: impl Into<String>,
    ) -> Formula {
        let index = self.ledger.follows(value, unit.1, formula);
        self.show(symbol.into(), unit.0, None, index, meaning.into())
    }

    /// The same with words in the place of a formula in symbols.
    pub(super) fn summed(
        &mut self,
        symbol: impl Into<String>,
        instead: impl Into<String>,
        formula: Formula,
        value: f64,
        unit: InUnit,
        meaning: impl Into<String>,
    ) -> Formula {
        let index = self.ledger.follows(value, unit.1, formula);
        let instead = Some(instead.into());
        self.show(symbol.into(), unit.0, instead, index, meaning.into())
    }

    /// A quantity whose formula in symbols stands in a sentence above, so that numbers suffice.
    pub(super) fn numbers_only(
        &mut self,
        symbol: impl Into<String>,
        formula: Formula,
        value: f64,
        unit: InUnit,
    ) -> Formula {
        self.summed(symbol, "", formula, value, unit, "")
    }

    fn show(
        &mut self,
        symbol: String,
        unit: &'static str,
        instead: Option<String>,
        index: usize,
        meaning: String,
    ) -> Formula {
        self.shown.push(Shown {
            symbol,
            unit,
            instead,
        });
        self.entries.push(SheetEntry::Quantity(index, meaning));
        Formula::Quantity(index)
    }

    /// The lines, every quantity with the digits that those below it need.
    pub(super) fn lines(mut self) -> Vec<SheetLine> {
        self.ledger.settle();
        let entries = self.entries.clone().into_iter();
        entries
            .map(|entry| match entry {
                SheetEntry::Line(line) => line,
                SheetEntry::Quantity(index, meaning) => SheetLine::Equation {
                    equation: self.equation(index),
                    meaning,
                },
            })
            .collect()
    }

    fn equation(&self, index: usize) -> String {
        let shown = &self.shown[index];
        let mut sides = vec![shown.symbol.clone()];
        if let Some(formula) = self.ledger.formula(index) {
            let symbols = shown
                .instead
                .clone()
                .unwrap_or_else(|| formula.written(&|input| self.shown[input].symbol.clone()));
            let numbers = formula.written(&|input| self.ledger.printed(input));
            sides.extend(Some(symbols).filter(|symbols| !symbols.is_empty()));
            if !matches!(formula, Formula::Quantity(_)) {
                sides.push(numbers);
            }
        }
        sides.push(self.ledger.printed(index));
        let equation = sides.join(" = ");
        if shown.unit.is_empty() {
            equation
        } else {
            format!("{equation} {}", shown.unit)
        }
    }
}
