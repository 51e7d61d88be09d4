//! A search with a progress bar, stopped by Ctrl-C.
//!
//! In: work that tells how far it is. Out: its result. The bar shows on a terminal; elsewhere lines tell how far long work is.

use super::kept_output::is_kept;
use super::output::note;
use super::whole_set::end_now;
use crate::error::Result;
use crate::narrative::waiting_words::waiting_in_words;
use crate::setups::Watch;
use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering::Relaxed};
use std::time::{Duration, Instant};

/// How often the bar is redrawn.
const TICK: Duration = Duration::from_millis(100);

/// When a line first tells how far the work is, where there is no bar.
const FIRST_TOLD: Duration = Duration::from_secs(5);

/// How long a first Ctrl-C waits for what was found so far: any call ends within a second.
const GRACE: Duration = Duration::from_millis(900);

/// Runs work that a watch follows; called inside another program it leaves Ctrl-C to that one. A first Ctrl-C stops it, and
/// ends the program where the work does not heed it soon; a second one ends the program.
pub fn watched<T>(work: impl FnOnce(&Watch) -> Result<T>) -> Result<T> {
    let watch = Arc::new(Watch::default());
    if is_kept() {
        return work(&watch);
    }
    let ended = Arc::new(AtomicBool::new(false));
    let (stopping, over) = (Arc::clone(&watch), Arc::clone(&ended));
    // A handler that cannot be set leaves the usual one, which ends the program: no harm.
    let _ = ctrlc::set_handler(move || {
        if stopping.stop.swap(true, Relaxed) {
            end_now();
        }
        std::thread::sleep(GRACE);
        if !over.load(Relaxed) {
            end_now();
        }
    });
    let _end = Ending(&ended);
    std::thread::scope(|scope| {
        let teller = if std::io::stderr().is_terminal() {
            scope.spawn(|| show(&watch, &ended))
        } else {
            scope.spawn(|| tell(&watch, &ended))
        };
        let _end = Ending(&ended);
        let found = work(&watch);
        // Nobody waits for a tick behind the work.
        ended.store(true, Relaxed);
        teller.thread().unpark();
        found
    })
}

/// Ends the bar when the work ends, in whichever way.
struct Ending<'a>(&'a AtomicBool);

impl Drop for Ending<'_> {
    fn drop(&mut self) {
        self.0.store(true, Relaxed);
    }
}

fn show(watch: &Watch, ended: &AtomicBool) {
    let bar = ProgressBar::new(0);
    if let Ok(style) =
        ProgressStyle::with_template("working {wide_bar} {percent} %  {eta} left (Ctrl-C stops)")
    {
        bar.set_style(style);
    }
    while !ended.load(Relaxed) {
        std::thread::park_timeout(TICK);
        bar.set_length(watch.all.load(Relaxed));
        bar.set_position(watch.done.load(Relaxed));
    }
    bar.finish_and_clear();
}

/// Tells in lines, where no bar can be redrawn, how far the work is: first after five seconds, then ever more rarely.
fn tell(watch: &Watch, ended: &AtomicBool) {
    let begun = Instant::now();
    let mut next = FIRST_TOLD;
    while !ended.load(Relaxed) {
        std::thread::park_timeout(TICK);
        let passed = begun.elapsed();
        if passed < next {
            continue;
        }
        next *= 3;
        let progress = [&watch.done, &watch.all].map(|count| count.load(Relaxed));
        if let Some(words) = waiting_in_words(passed, progress) {
            note(&words);
        }
    }
}
