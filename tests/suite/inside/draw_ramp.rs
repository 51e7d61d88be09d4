//! What `src/draw/ramp.rs` does, from inside.

use torquill::draw::colour::{BLUISH_GREEN, Colour, YELLOW};
use torquill::draw::colour::{REDDISH_PURPLE, VERMILLION};
use torquill::draw::ramp::*;

#[test]
fn law_there_and_back_is_the_same_colour() {
    for colour in [DARK_BLUE, BLUISH_GREEN, YELLOW, VERMILLION, REDDISH_PURPLE] {
        assert_eq!(from_oklab(to_oklab(colour)), colour);
    }
    let [light, a, b] = to_oklab(Colour::hex(0xFF_FFFF));
    assert!((light - 1.0).abs() < 1e-6 && a.abs() < 1e-6 && b.abs() < 1e-6);
}

#[test]
fn law_lightness_rises_evenly() {
    let light = |share: f64| to_oklab(ramp(share))[0];
    let whole = light(1.0) - light(0.0);
    for step in 0..20 {
        let share = f64::from(step) / 20.0;
        let rise = light(share + 0.05) - light(share);
        // Channels are whole numbers, so a step may be off by one 255th.
        assert!((rise - whole / 20.0).abs() < 0.004, "{share}: {rise}");
    }
}
