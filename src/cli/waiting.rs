//! A search with a progress bar, stopped by Ctrl-C.
//!
//! In: work that tells how far it is. Out: its result. The bar shows on a terminal only.

use super::kept_output::is_kept;
use crate::error::Result;
use crate::setups::Watch;
use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering::Relaxed};
use std::time::Duration;

/// How often the bar is redrawn.
const TICK: Duration = Duration::from_millis(100);

/// Runs work that a watch follows; called inside another program it leaves Ctrl-C to that one. A first Ctrl-C stops it, a second one ends the program.
pub fn watched<T>(work: impl FnOnce(&Watch) -> Result<T>) -> Result<T> {
    let watch = Arc::new(Watch::default());
    let stopping = Arc::clone(&watch);
    if is_kept() {
        return work(&watch);
    }
    // A handler that cannot be set leaves the usual one, which ends the program: no harm.
    let _ = ctrlc::set_handler(move || {
        if stopping.stop.swap(true, Relaxed) {
            std::process::exit(130);
        }
    });
    if !std::io::stderr().is_terminal() {
        return work(&watch);
    }
    let ended = AtomicBool::new(false);
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
