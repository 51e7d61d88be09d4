//! A speed as it is written: of a load, or of a joint.
//!
//! In: "0.3 m/s", "60 deg/s". Out: [`Pace`].

use crate::capacity::Pace;
use crate::error::{Error, OptionFault, Result};
use crate::units::{AngularSpeed, Speed};

/// The pace of a speed as text; held still without one.
///
/// **Fails** for what is neither a speed of a load nor one of a joint; whether anybody moves so fast is judged with the
/// curve.
pub fn asked_pace(text: Option<&str>) -> Result<Pace> {
    let Some(text) = text else {
        return Ok(Pace::Isometric);
    };
    if text.contains("deg") || text.contains('°') || text.contains("rad") {
        let speed = AngularSpeed::from_text(text).map_err(Error::bad)?;
        return Ok(Pace::Angular(speed.as_rad_s()));
    }
    let speed = Speed::from_text(text).map_err(|fault| Error::bad(OptionFault::NoSpeed(fault)))?;
    Ok(Pace::Linear(speed.as_m_s()))
}
