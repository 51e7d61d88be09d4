//! How a repetition is done: lowering, pause, part of the range; for `rep` and `max`.

use super::number_words::share;
use crate::error::{CommandFault, Error, Result};
use crate::movement::Movement;
use crate::rep::{RepOptions, TurnRound};
use crate::units::Duration;
use clap::Args;

/// How a repetition is done.
#[derive(Debug, Args)]
pub struct Manner {
    /// Time of the lowering; "0 s" starts from a hold at the bottom
    ///
    /// Without it 2 s, and no lowering in lifts that begin at the floor or in a hang.
    #[arg(long, value_name = "TIME")]
    lowering: Option<String>,
    /// Hold at the bottom for this long; touch and go without it
    #[arg(long, value_name = "TIME")]
    pause: Option<String>,
    /// Start of the lift in the range: 25% or 0.25
    #[arg(long, value_name = "SHARE", default_value_t = 0.0, value_parser = share)]
    from: f64,
    /// End of the lift in the range: 75% or 0.75
    #[arg(long, value_name = "SHARE", default_value_t = 1.0, value_parser = share)]
    to: f64,
    /// Leave out the extra force that lowering leaves behind
    #[arg(long)]
    no_enhancement: bool,
}

impl Manner {
    /// The options of the simulation of a movement.
    pub fn options(&self, movement: &Movement) -> Result<RepOptions> {
        let time = |text: &String| Duration::from_text(text).map_err(Error::bad);
        let usual = RepOptions::usual_for(movement);
        let options = RepOptions {
            from: self.from,
            to: self.to,
            lowering: match &self.lowering {
                Some(text) => Some(time(text)?),
                None => usual.lowering,
            },
            turn: match &self.pause {
                Some(text) => TurnRound::Pause(time(text)?),
                None => usual.turn,
            },
            enhancement: !self.no_enhancement,
            ..usual
        };
        options.check()?;
        if self.no_enhancement && options.lowering_s().is_none() {
            return Err(without_lowering("no-enhancement"));
        }
        Ok(options)
    }
}

/// An option that changes nothing in a lift that is not lowered first.
pub fn without_lowering(option: &str) -> Error {
    Error::bad(CommandFault::IdleUnlowered {
        option: option.to_owned(),
    })
}
