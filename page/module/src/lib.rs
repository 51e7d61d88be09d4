//! The model as a WebAssembly module: one question as JSON in, one answer as JSON out.
//!
//! The page writes a question into the memory at `room_for(length)`, calls `ask()`, and reads as many bytes as that
//! returns at `answer_at()`. The laboratory keeps what was read and solved between questions.

use std::cell::RefCell;
use torquill::explore::Laboratory;

#[derive(Default)]
struct Desk {
    laboratory: Laboratory,
    question: Vec<u8>,
    answer: String,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::default();
}

/// Where a question of this many bytes is written.
#[unsafe(no_mangle)]
pub extern "C" fn room_for(length: usize) -> *mut u8 {
    DESK.with_borrow_mut(|desk| {
        desk.question.clear();
        desk.question.resize(length, 0);
        desk.question.as_mut_ptr()
    })
}

/// Answers the question; returns the length of the answer in bytes.
#[unsafe(no_mangle)]
pub extern "C" fn ask() -> usize {
    DESK.with_borrow_mut(|desk| {
        let question = String::from_utf8_lossy(&desk.question).into_owned();
        desk.answer = desk.laboratory.ask(&question);
        desk.answer.len()
    })
}

/// Where the answer stands until the next question.
#[unsafe(no_mangle)]
pub extern "C" fn answer_at() -> *const u8 {
    DESK.with_borrow(|desk| desk.answer.as_ptr())
}
