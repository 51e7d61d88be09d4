//! What it means how sure a verdict on a log is.
//!
//! In: a verdict, how sure it is. Out: words behind it.

use super::prose::weeks;
use super::quantities::rounded;
use crate::progress::verdict::{CLEAR_WEEKS, FLAT_BANDS, FLAT_SHARE_A_WEEK, Sureness, Verdict};

/// How sure a change is: how often a log without one would look so. How sure a plateau is: which changes its interval leaves out.
pub(super) fn what_sureness_means(verdict: Verdict, sureness: Sureness) -> String {
    let within = |bands: f64| {
        let percent = rounded(100.0 * bands * FLAT_SHARE_A_WEEK, 3);
        format!("the 95 % interval stays within {percent} % of the 1RM a week")
    };
    match (verdict, sureness) {
        (Verdict::Unclear, _) => "the log does not tell whether the 1RM changes".to_owned(),
        (Verdict::Flat, Sureness::Clear) => {
            format!("{}, for {} or more", within(1.0), weeks(CLEAR_WEEKS))
        }
        (Verdict::Flat, Sureness::Likely) => within(FLAT_BANDS.0),
        (Verdict::Flat, Sureness::Weak) => "a hint only: a slow change is not excluded".to_owned(),
        (_, Sureness::Clear) => "one in a hundred logs without a change would look so".to_owned(),
        (_, Sureness::Likely) => "one in twenty logs without a change would look so".to_owned(),
        (_, Sureness::Weak) => "a hint only: that nothing changes is not excluded".to_owned(),
    }
}
