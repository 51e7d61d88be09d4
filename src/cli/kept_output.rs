//! What a call prints, kept for a program that calls this one inside itself instead of as a process.
//!
//! In: a call. Out: its exit status with all that it would have printed. One call at a time, whatever the threads.

use std::sync::{Mutex, MutexGuard, PoisonError};

/// What a call gave.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Called {
    /// Exit status: 0 done, 1 the question has no answer, 2 bad arguments or a bad file.
    pub status: u8,
    /// What went to standard output.
    pub stdout: String,
    /// What went to standard error.
    pub stderr: String,
}

/// Which of the two streams.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stream {
    Output,
    Errors,
}

/// Standard output and standard error of the call that is kept, if one is.
static KEPT: Mutex<Option<[String; 2]>> = Mutex::new(None);
/// Held by the call whose turn it is.
static TURN: Mutex<()> = Mutex::new(());

/// A lock, also behind a call that broke off.
pub(super) fn taken<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Runs a call and keeps what it prints.
pub(super) fn kept(call: impl FnOnce() -> u8) -> Called {
    let _turn = taken(&TURN);
    *taken(&KEPT) = Some(Default::default());
    let status = call();
    let [stdout, stderr] = taken(&KEPT).take().unwrap_or_default();
    Called {
        status,
        stdout,
        stderr,
    }
}

/// Keeps a text if a call is kept; whether it did.
pub(super) fn keep(stream: Stream, text: &str) -> bool {
    match taken(&KEPT).as_mut() {
        None => false,
        Some([output, errors]) => {
            match stream {
                Stream::Output => output.push_str(text),
                Stream::Errors => errors.push_str(text),
            }
            true
        }
    }
}

/// Whether what is printed is kept: nobody sits at a terminal then.
pub(super) fn is_kept() -> bool {
    taken(&KEPT).is_some()
}
