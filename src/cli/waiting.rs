//! A search with a progress bar, stopped by Ctrl-C.
//!
//! In: work that tells how far it is. Out: its result. The bar shows on a terminal only.

use super::kept_output::is_kept;
use super::whole_set::end_now;
use crate::error::Result;
use crate::setups::Watch;
use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering::Relaxed};
use std::time::Duration;

/// How often the bar is redrawn.
const TICK: Duration = Duration::from_millis(100);

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
    if !std::io::stderr().is_terminal() {
        return work(&watch);
    }
    std::thread::scope(|scope| {
        scope.spawn(|| show(&watch, &ended));
        let _end = Ending(&ended);
        work(&watch)
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
        std::thread::sleep(TICK);
        bar.set_length(watch.all.load(Relaxed));
        bar.set_position(watch.done.load(Relaxed));
    }
    bar.finish_and_clear();
}
