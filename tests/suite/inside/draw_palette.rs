//! What `src/draw/palette.rs` does, from inside.

use torquill::draw::colour::{BLACK, Colour, contrast};
use torquill::draw::palette::*;
use torquill::draw::ramp::{grey_of, to_oklab};

const THEMES: [Theme; 3] = [Theme::Light, Theme::Dark, Theme::Print];

#[test]
fn law_contrast_of_black_and_white_is_21() {
    assert!((contrast(BLACK, Colour::hex(0xFF_FFFF)) - 21.0).abs() < 1e-9);
}

#[test]
fn law_every_text_colour_reads_on_ground_and_shade() {
    for theme in THEMES {
        let colours = theme.colours();
        let grounds = [colours.background, colours.shade.over(colours.background)];
        let texts = [colours.ink, colours.muted, colours.shade_text];
        for text in texts.iter().chain(&colours.series_text) {
            for ground in grounds {
                let ratio = contrast(*text, ground);
                assert!(ratio >= TEXT_CONTRAST, "{theme:?}: {text:?} has {ratio:.2}");
            }
        }
    }
}

#[test]
fn law_an_ordered_family_reaches_the_contrast_of_graphics() {
    for theme in THEMES {
        let colours = theme.colours();
        for step in 0..=10 {
            let line = colours.ordered_line(f64::from(step) / 10.0);
            let ratio = contrast(line, colours.background);
            assert!(ratio >= MARK_CONTRAST, "{theme:?} {step}: {ratio:.2}");
            let text = colours.on_ground(line);
            assert!(contrast(text, colours.background) >= TEXT_CONTRAST);
        }
    }
}

#[test]
fn law_the_scale_of_filled_lines_is_even_in_lightness_and_its_ends_differ_in_grey() {
    for theme in THEMES {
        let colours = theme.colours();
        let light = |share: f64| to_oklab(colours.scale_colour(share))[0];
        let whole = light(1.0) - light(0.0);
        for step in 0..20 {
            let share = f64::from(step) / 20.0;
            let rise = light(share + 0.05) - light(share);
            // Channels are whole numbers, so a step may be off by one 255th.
            assert!((rise - whole / 20.0).abs() < 0.004, "{theme:?} {share}");
        }
        let [nothing, half, all] = [0.0, 0.5, 1.0].map(|share| colours.scale_colour(share));
        let ends = contrast(grey_of(nothing), grey_of(all));
        assert!(ends >= TEXT_CONTRAST, "{theme:?}: {ends:.2}");
        assert!(
            contrast(nothing, half) > 1.5 && contrast(half, all) > 1.5,
            "{theme:?}"
        );
        assert!(contrast(nothing, colours.ink) >= MARK_CONTRAST, "{theme:?}");
    }
}

#[test]
fn law_every_series_and_rule_is_seen_on_ground_and_shade() {
    for theme in THEMES {
        let colours = theme.colours();
        let grounds = [colours.background, colours.shade.over(colours.background)];
        for line in colours.series.iter().chain([&colours.rule]) {
            for ground in grounds {
                let ratio = contrast(*line, ground);
                assert!(ratio >= MARK_CONTRAST, "{theme:?}: {line:?} has {ratio:.2}");
            }
        }
    }
}

#[test]
fn law_no_two_series_share_colour_and_dashes_and_weight() {
    for theme in THEMES {
        let colours = theme.colours();
        for one in 0..7 {
            for other in 0..one {
                let alike = colours.series_dashes(one) == colours.series_dashes(other);
                assert!(!alike, "{theme:?}: {one} and {other}");
            }
        }
    }
}

#[test]
fn law_print_has_no_colour() {
    let colours = Theme::Print.colours();
    let grey = |colour: Colour| colour.red == colour.green && colour.green == colour.blue;
    let mapped = (0..=10).map(|step| colours.map_colour(f64::from(step) / 10.0));
    let scale = (0..=10).map(|step| colours.scale_colour(f64::from(step) / 10.0));
    let all = colours.series.into_iter().chain(colours.series_text);
    assert!(all.chain(mapped).chain(scale).all(grey));
}
