//! A formula over numbered quantities: one tree that is computed and written out.
//!
//! In: quantities by number, exact numbers, and how they are joined. Out: its value, and its text with
//! whatever stands for each quantity, a symbol or a printed number; so both texts tell the same sum.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A formula.
#[derive(Debug, Clone, PartialEq)]
pub enum Formula {
    /// The quantity of this number.
    Quantity(usize),
    /// A number that is exact, such as 1 or 0.5.
    Exact(f64),
    /// A sum.
    Sum(Vec<Formula>),
    /// The opposite.
    Minus(Box<Formula>),
    /// A product.
    Product(Vec<Formula>),
    /// A quotient.
    Over(Box<Formula>, Box<Formula>),
    /// A square.
    Square(Box<Formula>),
    /// A square root.
    Root(Box<Formula>),
    /// The exponential.
    Exp(Box<Formula>),
    /// The natural logarithm.
    Ln(Box<Formula>),
}

/// How tightly the parts of a written formula hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Grip {
    Sum,
    Product,
    Whole,
}

impl Formula {
    /// The square of it.
    #[must_use]
    pub fn square(self) -> Self {
        Self::Square(Box::new(self))
    }

    /// Its square root.
    #[must_use]
    pub fn root(self) -> Self {
        Self::Root(Box::new(self))
    }

    /// Its exponential.
    #[must_use]
    pub fn exp(self) -> Self {
        Self::Exp(Box::new(self))
    }

    /// Its natural logarithm.
    #[must_use]
    pub fn ln(self) -> Self {
        Self::Ln(Box::new(self))
    }

    /// The sum of these; nothing is 0.
    #[must_use]
    pub fn sum(terms: Vec<Self>) -> Self {
        match terms.len() {
            0 => Self::Exact(0.0),
            1 => terms.into_iter().next().unwrap_or(Self::Exact(0.0)),
            _ => Self::Sum(terms),
        }
    }

    /// Its value when the quantities have these.
    ///
    /// **Fails.** Never; what has no value is not a number.
    #[must_use]
    pub fn value(&self, of: &dyn Fn(usize) -> f64) -> f64 {
        match self {
            Self::Quantity(number) => of(*number),
            Self::Exact(value) => *value,
            Self::Sum(terms) => terms.iter().map(|term| term.value(of)).sum(),
            Self::Minus(term) => -term.value(of),
            Self::Product(factors) => factors.iter().map(|factor| factor.value(of)).product(),
            Self::Over(top, below) => top.value(of) / below.value(of),
            Self::Square(base) => base.value(of).powi(2),
            Self::Root(inner) => inner.value(of).sqrt(),
            Self::Exp(inner) => inner.value(of).exp(),
            Self::Ln(inner) => inner.value(of).ln(),
        }
    }

    /// The quantities in it, each once, in their order.
    #[must_use]
    pub fn quantities(&self) -> Vec<usize> {
        let mut found = Vec::new();
        self.collect(&mut found);
        found.sort_unstable();
        found.dedup();
        found
    }

    fn collect(&self, found: &mut Vec<usize>) {
        match self {
            Self::Quantity(number) => found.push(*number),
            Self::Exact(_) => {}
            Self::Sum(parts) | Self::Product(parts) => {
                parts.iter().for_each(|part| part.collect(found));
            }
            Self::Over(top, below) => {
                top.collect(found);
                below.collect(found);
            }
            Self::Minus(inner)
            | Self::Square(inner)
            | Self::Root(inner)
            | Self::Exp(inner)
            | Self::Ln(inner) => inner.collect(found),
        }
    }

    /// The formula as a line of text, `−` for minus and `·` for times.
    ///
    /// **Shape.** Reads back to the same value by the usual rules; brackets only where they are needed.
    #[must_use]
    pub fn written(&self, name: &dyn Fn(usize) -> String) -> String {
        match self {
            Self::Quantity(number) => name(*number),
            Self::Exact(value) => format!("{value}").replace('-', "−"),
            Self::Sum(terms) => written_sum(terms, name),
            Self::Minus(inner) => format!("−{}", inner.bracketed(Grip::Product, false, name)),
            Self::Product(factors) => {
                let factor = |(index, factor): (usize, &Self)| {
                    factor.bracketed(Grip::Product, index == 0, name)
                };
                let factors: Vec<String> = factors.iter().enumerate().map(factor).collect();
                factors.join("·")
            }
            Self::Over(top, below) => format!(
                "{}/{}",
                top.bracketed(Grip::Product, true, name),
                below.bracketed(Grip::Whole, false, name)
            ),
            Self::Square(base) => format!("{}²", base.bracketed(Grip::Whole, false, name)),
            Self::Root(inner) => format!("√({})", inner.written(name)),
            Self::Exp(inner) => format!("exp({})", inner.written(name)),
            Self::Ln(inner) => format!("ln({})", inner.written(name)),
        }
    }

    fn grip(&self) -> Grip {
        match self {
            Self::Sum(_) | Self::Minus(_) => Grip::Sum,
            Self::Product(_) | Self::Over(..) => Grip::Product,
            _ => Grip::Whole,
        }
    }

    /// The text in brackets where it holds less tightly than it must, or begins with a minus inside.
    fn bracketed(&self, least: Grip, first: bool, name: &dyn Fn(usize) -> String) -> String {
        let text = self.written(name);
        let minus_inside = text.starts_with('−') && !first;
        if self.grip() < least || minus_inside {
            format!("({text})")
        } else {
            text
        }
    }
}

fn written_sum(terms: &[Formula], name: &dyn Fn(usize) -> String) -> String {
    let mut sum = String::new();
    for term in terms {
        let text = term.written(name);
        match (sum.is_empty(), text.strip_prefix('−')) {
            (true, _) => sum.push_str(&text),
            (false, Some(size)) => sum += &format!(" − {size}"),
            (false, None) => sum += &format!(" + {text}"),
        }
    }
    sum
}

impl From<f64> for Formula {
    fn from(value: f64) -> Self {
        Self::Exact(value)
    }
}

impl Add for Formula {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        match self {
            Self::Sum(mut terms) => {
                terms.push(other);
                Self::Sum(terms)
            }
            first => Self::Sum(vec![first, other]),
        }
    }
}

impl Sub for Formula {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul for Formula {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        match self {
            Self::Product(mut factors) => {
                factors.push(other);
                Self::Product(factors)
            }
            first => Self::Product(vec![first, other]),
        }
    }
}

impl Div for Formula {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        Self::Over(Box::new(self), Box::new(other))
    }
}

impl Neg for Formula {
    type Output = Self;
    fn neg(self) -> Self {
        Self::Minus(Box::new(self))
    }
}
