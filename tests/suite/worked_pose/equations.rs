//! A small reader of equations as they are printed: symbols, numbers, `+ − · / ²`, brackets, √, exp, ln.
//!
//! In: a sheet as text. Out: [`Page`], whose lines can be computed again; it knows nothing of muscles.

use std::collections::{BTreeMap, BTreeSet};

/// One printed equation.
#[derive(Debug, Clone)]
pub struct Equation {
    /// The line without its meaning.
    pub line: String,
    sides: Vec<String>,
    result: f64,
    last_digit: f64,
}

/// All equations of a sheet in their order.
#[derive(Debug, Clone, Default)]
pub struct Page {
    /// The equations.
    pub equations: Vec<Equation>,
}

/// A number at the start of a text as printed, its decimals, and its length in bytes.
fn number(text: &str) -> Option<(f64, i32, usize)> {
    let sign = if text.starts_with('−') {
        '−'.len_utf8()
    } else {
        0
    };
    let digits = text[sign..]
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(text.len() - sign);
    let written = &text[sign..sign + digits];
    let size: f64 = written.parse().ok()?;
    let decimals = written
        .split_once('.')
        .map_or(0, |(_, behind)| behind.len());
    let value = if sign > 0 { -size } else { size };
    Some((value, i32::try_from(decimals).ok()?, sign + digits))
}

impl Equation {
    /// The digits of the result without its sign.
    fn digits(&self) -> &str {
        let last = self.sides.last().map_or("", String::as_str);
        let digits = last.split(' ').next().unwrap_or_default();
        digits.trim_start_matches('−')
    }

    fn read(line: &str) -> Option<Self> {
        let line = line.strip_prefix("  ")?;
        let line = line.split_once("  (").map_or(line, |(before, _)| before);
        let sides: Vec<String> = line.split(" = ").map(str::to_owned).collect();
        let (result, decimals, _) = number(sides.last().filter(|_| sides.len() > 1)?)?;
        Some(Self {
            line: line.to_owned(),
            sides,
            result,
            last_digit: 0.1_f64.powi(decimals),
        })
    }
}

impl Page {
    /// The equations of a sheet.
    pub fn read(sheet: &str) -> Self {
        let indented = sheet.lines().filter(|line| line.starts_with("  "));
        let equations = indented
            .map(|line| Equation::read(line).unwrap_or_else(|| panic!("no equation: `{line}`")));
        Self {
            equations: equations.collect(),
        }
    }

    /// The last line of a symbol holds this value to its last digit.
    #[track_caller]
    pub fn holds(&self, symbol: &str, value: f64) {
        let line = self.equations.iter().rev().find(|e| e.sides[0] == symbol);
        let line = line.unwrap_or_else(|| panic!("no {symbol}"));
        assert!(
            (line.result - value).abs() <= 0.51 * line.last_digit,
            "{}",
            line.line
        );
    }

    /// Computes every line again from the digits above it; returns how many were.
    pub fn check(&self, what: &str) -> usize {
        let mut above: BTreeMap<&str, f64> = BTreeMap::new();
        let mut printed: BTreeSet<String> = BTreeSet::new();
        let mut computed = 0;
        for equation in &self.equations {
            let said = |text: &str| {
                Reader::read(text, &above)
                    .unwrap_or_else(|why| panic!("{what}: {why} in `{}`", equation.line))
            };
            let agree = |value: f64, room: f64| {
                assert!(
                    (value - equation.result).abs() <= room,
                    "{what}: `{}` makes {value}",
                    equation.line
                );
            };
            let room = equation.last_digit * (1.0 + 1.0e-9);
            let between = &equation.sides[1..equation.sides.len() - 1];
            for side in between {
                if let Some(kind) = side.strip_prefix("sum of ") {
                    check_sum(equation, kind, &above, what);
                } else {
                    agree(said(side), room);
                }
            }
            if let [symbols, numbers] = between
                && !symbols.starts_with("sum of ")
            {
                let (a, b) = (said(symbols), Reader::read(numbers, &BTreeMap::new()));
                let b = b.unwrap_or_else(|why| panic!("{what}: {why} in `{}`", equation.line));
                assert!(
                    (a - b).abs() <= 1.0e-9 * b.abs(),
                    "{what}: `{}`",
                    equation.line
                );
            }
            if let Some(numbers) = between
                .last()
                .filter(|side| side.contains(|c: char| c.is_ascii_digit()))
            {
                digits_stand_above(equation, numbers, &printed, what);
            }
            computed += usize::from(!between.is_empty());
            above.insert(&equation.sides[0], equation.result);
            printed.insert(equation.digits().to_owned());
        }
        computed
    }
}

/// Every number with a point in it was printed above with the same digits, those of the published tendon apart.
fn digits_stand_above(equation: &Equation, side: &str, printed: &BTreeSet<String>, what: &str) {
    const OF_THE_LAW: [&str; 4] = ["0.5", "0.33", "0.609", "1.712"];
    let of_number = |c: char| c.is_ascii_digit() || c == '.';
    // A word before a bracket may hold digits: those of symbols do not count here.
    if side.contains(|c: char| c.is_ascii_alphabetic() && !"expln".contains(c)) {
        return;
    }
    for number in side
        .split(|c: char| !of_number(c))
        .filter(|text| text.contains('.'))
    {
        let is_there = printed.contains(number) || OF_THE_LAW.contains(&number);
        assert!(
            is_there,
            "{what}: {number} of `{}` stands nowhere above",
            equation.line
        );
    }
}

/// The terms of a sum told in words are the lines above of that kind, each once.
fn check_sum(equation: &Equation, kind: &str, above: &BTreeMap<&str, f64>, what: &str) {
    let Some((letter, at)) = kind.split_once('(').map(|(letter, rest)| {
        let at = rest
            .trim_end_matches(')')
            .replace("muscle, ", ", ")
            .replace(", limb", ", ");
        (letter.to_owned(), at)
    }) else {
        return;
    };
    let is_one = |symbol: &str| {
        let inner = symbol
            .strip_prefix(&letter)
            .and_then(|rest| rest.strip_prefix('('));
        let inner = inner.and_then(|rest| rest.strip_suffix(')'));
        inner.is_some_and(|inner| {
            if at.starts_with(", ") {
                inner.ends_with(&at)
            } else {
                inner.starts_with(&at) && at.ends_with(", ")
            }
        })
    };
    let terms: Vec<f64> = above.iter().filter(|a| is_one(a.0)).map(|a| *a.1).collect();
    let sum: f64 = terms.iter().sum();
    // A single term is the result itself.
    let numbers = if equation.sides.len() > 3 {
        &equation.sides[2]
    } else {
        ""
    };
    let printed = Reader::read(numbers, &BTreeMap::new()).unwrap_or(equation.result);
    let count = numbers.matches(" + ").count() + numbers.matches(" − ").count() + 1;
    let is_all = (sum - printed).abs() < 1.0e-9 && (terms.is_empty() || terms.len() == count);
    assert!(
        is_all,
        "{what}: `{}` is not the sum of {terms:?}",
        equation.line
    );
}

/// Reads one side of an equation.
struct Reader<'a> {
    rest: &'a str,
    symbols: &'a BTreeMap<&'a str, f64>,
}

impl<'a> Reader<'a> {
    fn read(text: &'a str, symbols: &'a BTreeMap<&'a str, f64>) -> Result<f64, String> {
        let mut reader = Reader {
            rest: text,
            symbols,
        };
        let value = reader.sum()?;
        if reader.rest.trim().is_empty() {
            Ok(value)
        } else {
            Err(format!("`{}` is left over", reader.rest))
        }
    }

    fn takes(&mut self, sign: &str) -> bool {
        let rest = self.rest.trim_start();
        let taken = rest.strip_prefix(sign);
        self.rest = taken.unwrap_or(self.rest);
        taken.is_some()
    }

    fn sum(&mut self) -> Result<f64, String> {
        let mut value = if self.takes("−") {
            -self.product()?
        } else {
            self.product()?
        };
        loop {
            if self.takes("+") {
                value += self.product()?;
            } else if self.takes("−") {
                value -= self.product()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn product(&mut self) -> Result<f64, String> {
        let mut value = self.power()?;
        loop {
            if self.takes("·") {
                value *= self.power()?;
            } else if self.takes("/") {
                value /= self.power()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn power(&mut self) -> Result<f64, String> {
        let value = self.whole()?;
        Ok(if self.takes("²") {
            value * value
        } else {
            value
        })
    }

    fn whole(&mut self) -> Result<f64, String> {
        self.rest = self.rest.trim_start();
        let known = self
            .symbols
            .iter()
            .filter(|(name, _)| self.rest.starts_with(**name));
        if let Some((name, value)) = known.max_by_key(|(name, _)| name.len())
            && !self.rest.starts_with("exp(")
            && !self.rest.starts_with("ln(")
        {
            self.rest = &self.rest[name.len()..];
            return Ok(*value);
        }
        for (word, of) in [
            ("√(", f64::sqrt as fn(f64) -> f64),
            ("exp(", f64::exp),
            ("ln(", f64::ln),
            ("(", |x| x),
        ] {
            if self.takes(word) {
                let inside = self.sum()?;
                if !self.takes(")") {
                    return Err(format!("no `)` before `{}`", self.rest));
                }
                return Ok(of(inside));
            }
        }
        let (value, _, length) =
            number(self.rest).ok_or_else(|| format!("`{}` is no number", self.rest))?;
        self.rest = &self.rest[length..];
        Ok(value)
    }
}
