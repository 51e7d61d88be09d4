//! What `src/numeric/ledger.rs` does, from inside.

use proptest::array::uniform4;
use proptest::prelude::{prop_assert, proptest};
use torquill::numeric::Formula;
use torquill::numeric::ledger::Ledger;

fn q(number: usize) -> Formula {
    Formula::Quantity(number)
}

#[test]
fn law_formulas_are_written_with_the_brackets_they_need() {
    let name = |number: usize| ["a", "−2", "c"][number].to_owned();
    for (formula, text) in [
        ((q(0) + q(1)) * q(2), "(a − 2)·c"),
        (q(0) * q(1), "a·(−2)"),
        (q(1) * q(0), "−2·a"),
        (q(0) - (q(1) + q(2)), "a − (−2 + c)"),
        (q(0) / (q(1) * q(2)), "a/(−2·c)"),
        (q(1).square() + q(0), "(−2)² + a"),
        ((q(0) * q(2)).root() / q(1), "√(a·c)/(−2)"),
        (Formula::from(1.0) - (q(0) + q(2)).square(), "1 − (a + c)²"),
    ] {
        assert_eq!(formula.written(&name), text);
    }
}

proptest! {
    #[test]
    fn law_every_line_follows_from_the_digits_above_it(given in uniform4(0.5_f64..10.0)) {
        let mut ledger = Ledger::default();
        for value in given {
            ledger.given(value, 1);
        }
        let mut value: Vec<f64> = given.to_vec();
        for (formula, decimals) in [
            (q(0) * q(1) * q(2) - q(3), 2),
            ((q(4) * q(4) + q(1)).root(), 3),
            (q(5) / q(2) - q(4) * (-q(3)).exp(), 1),
        ] {
            let next = formula.value(&|index| value[index]);
            value.push(next);
            ledger.follows(next, decimals, formula);
        }
        ledger.settle();
        let printed = |index: usize| -> f64 { ledger.printed(index).replace('−', "-").parse().unwrap() };
        for index in 4..value.len() {
            let again = ledger.formula(index).unwrap().value(&printed);
            let text = ledger.printed(index);
            let decimals = text.split_once('.').map_or(0, |(_, digits)| digits.len());
            let last_digit = 0.1_f64.powi(i32::try_from(decimals).unwrap());
            prop_assert!((again - printed(index)).abs() < last_digit, "{again} and {text}");
        }
    }
}
