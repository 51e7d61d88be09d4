//! What `src/progress/written_date.rs` does, from inside.

use torquill::error::{DateFault, DateOrder};
use torquill::progress::day::Day;
use torquill::progress::written_date::WrittenDate;

fn read(text: &str) -> WrittenDate {
    WrittenDate::from_text(text).expect(text)
}

#[test]
fn law_one_day_in_many_hands() {
    let day = Day::from_date(2024, 8, 1).expect("a day");
    for text in [
        "2024-08-01",
        "2024/8/1",
        "2024.08.01",
        "2024-08-01T07:30:00Z",
        "2024-08-01 07:30",
        "1 Aug 2024",
        "Aug 1, 2024, 7:30 PM",
        "Thu 1 August 2024",
        "01-Aug-24",
        "1st August 2024",
    ] {
        assert_eq!(read(text), WrittenDate::Clear(day), "{text}");
    }
}

#[test]
fn law_two_numbers_are_two_days_until_one_is_no_month() {
    for text in ["1/8/2024", "01.08.2024", "1-8-24", "1/8/2024 10:00"] {
        assert!(read(text).is_open(), "{text}");
        assert_eq!(read(text).proves(), None);
        let day = |order| read(text).in_order(order, text).expect("a day").date();
        assert_eq!(day(DateOrder::DayFirst), (2024, 8, 1));
        assert_eq!(day(DateOrder::MonthFirst), (2024, 1, 8));
    }
    assert_eq!(read("25/3/2024").proves(), Some(DateOrder::DayFirst));
    assert_eq!(read("3/25/2024").proves(), Some(DateOrder::MonthFirst));
    assert!(!read("5/5/2024").is_open());
    let wrong = read("25/3/2024").in_order(DateOrder::MonthFirst, "25/3/2024");
    assert!(wrong.is_err());
}

#[test]
fn fault_a_year_of_two_digits_at_either_end_is_asked_for() {
    let fault = WrittenDate::from_text("26-04-06").expect_err("two days");
    assert_eq!(
        fault,
        DateFault::ShortYear {
            written: "26-04-06".to_owned(),
            year_first: "2026-04-06".to_owned(),
            year_last: "2006-04-26".to_owned(),
        }
    );
    for text in ["26.04.06", "26/4/06", "26-Apr-06", "26-04-2006"] {
        assert!(WrittenDate::from_text(text).is_ok(), "{text}");
    }
}

#[test]
fn fault_what_is_no_date_is_none() {
    for text in [
        "",
        "soon",
        "2024",
        "1/8",
        "1/8/20244",
        "45123",
        "2024-13-01",
        "x/y/2024",
        "1/8/2024/5",
    ] {
        assert!(WrittenDate::from_text(text).is_err(), "{text}");
    }
}
