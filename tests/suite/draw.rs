//! Laws of drawing: nothing is clipped, no two texts overlap, the same input gives the same bytes,
//! PNG and SVG are one picture, every text reads on its ground.

use crate::draw_sample_grids;
use crate::draw_samples::{self, line_charts, strength};
use crate::text_boxes::{TextBox, text_boxes};
use torquill::draw::Theme;
use torquill::draw::colour::BLACK;
use torquill::draw::palette::TEXT_CONTRAST;
use torquill::draw::{
    Colour, Face, Primitive, Scene, Text, contrast, layered_svg, lettering, outlined_svg, png, svg,
};
use torquill::error::{PlotFault, What};
use torquill::plot::{Look, Size};

fn sizes() -> Vec<Size> {
    vec![
        Size::Slide,
        Size::Page,
        Size::custom(640, 400).expect("a small size that is allowed"),
        Size::custom(1200, 800).expect("a size that is allowed"),
    ]
}

fn looks() -> Vec<Look> {
    let themed = |theme| sizes().into_iter().map(move |size| Look { size, theme });
    themed(Theme::Light).chain(themed(Theme::Dark)).collect()
}

fn scenes() -> Vec<(String, Scene)> {
    let named = |look: Look| {
        let label = format!("{:?} {:?}", look.size, look.theme);
        draw_samples::scenes(look)
            .into_iter()
            .map(move |(name, scene)| (format!("{name} {label}"), scene))
    };
    looks().into_iter().flat_map(named).collect()
}

/// The first text that leaves the canvas or meets another, in words.
pub fn crowding(scene: &Scene) -> Option<String> {
    let boxes = text_boxes(scene);
    for (index, one) in boxes.iter().enumerate() {
        if !scene.canvas().contains(&one.area) {
            return Some(format!(
                "`{}` at {:?} leaves the canvas",
                one.content, one.area
            ));
        }
        let core = one.area.grown(-0.01);
        if let Some(other) = boxes[index + 1..]
            .iter()
            .find(|other| core.overlaps(&other.area))
        {
            return Some(format!(
                "`{}` {:?} meets `{}` {:?}",
                one.content, one.area, other.content, other.area
            ));
        }
    }
    None
}

#[test]
fn law_no_text_leaves_the_canvas_or_meets_another() {
    for (name, scene) in scenes() {
        if let Some(fault) = crowding(&scene) {
            panic!("{name}: {fault}");
        }
    }
}

#[test]
fn law_every_text_reads_on_its_ground() {
    for (name, scene) in scenes() {
        for text in text_boxes(&scene) {
            let ratio = contrast(text.colour, ground_of(&scene, &text));
            assert!(
                ratio >= TEXT_CONTRAST,
                "{name}: `{}` has {ratio:.2}",
                text.content
            );
        }
    }
}

/// The ground that a text stands on: all rectangles and patches drawn before it that hold its middle.
fn ground_of(scene: &Scene, text: &TextBox) -> Colour {
    let middle = text.area.centre();
    let mut ground = scene.background;
    for shape in &scene.shapes {
        match shape {
            Primitive::Text(own) if own.bounds() == text.area => break,
            Primitive::Rectangle { area, fill } if area.holds(middle) => ground = fill.over(ground),
            Primitive::Polygon { points, fill } if is_inside(points, middle) => {
                ground = fill.over(ground);
            }
            _ => {}
        }
    }
    ground
}

/// Whether a ray to the right crosses the closed line an odd number of times.
fn is_inside(corners: &[[f64; 2]], at: [f64; 2]) -> bool {
    let crossings = (0..corners.len()).filter(|&index| {
        let (a, b) = (corners[index], corners[(index + 1) % corners.len()]);
        (a[1] > at[1]) != (b[1] > at[1])
            && at[0] < a[0] + (at[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossings.count() % 2 == 1
}

#[test]
fn law_the_same_chart_gives_the_same_bytes() {
    let look = Look::default();
    for (name, chart) in line_charts() {
        let (one, other) = (chart.scene(look), chart.scene(look));
        let (one, other) = (one.expect("drawn"), other.expect("drawn"));
        for write in [outlined_svg, svg] {
            let (first, second) = (write(&one), write(&other));
            assert!(
                first.expect("written") == second.expect("written"),
                "{name}"
            );
        }
        assert!(
            png(&one, 0.5).expect("drawn") == png(&other, 0.5).expect("drawn"),
            "{name}"
        );
    }
}

#[test]
fn law_svg_names_and_describes_itself_and_says_its_size() {
    type Writer = fn(&Scene) -> torquill::error::Result<String>;
    let writers: [(Writer, bool); 2] = [(outlined_svg, false), (svg, true)];
    for (write, keeps_letters) in writers {
        let scene = strength().scene(Look::default()).expect("drawn");
        let text = write(&scene).expect("written");
        let head = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1920\" height=\"1080\"";
        assert!(text.starts_with(head), "{}", &text[..200]);
        assert!(text[..300].contains("role=\"img\""));
        let title = text
            .find("<title>Hardest 14 cm off the chest")
            .expect("a title");
        let desc = text
            .find("<desc>Two curves over the height")
            .expect("a description");
        let drawing = text.find("fill=").expect("a drawing");
        assert!(title < desc && desc < drawing);
        assert!(text.contains("Capacity &amp; demand are &lt; 4000 N."));
        assert_eq!(text.contains("<text"), keeps_letters);
    }
}

/// A file of a figure holds its layers from the bottom up, each as a group with a name of its own, and nothing else changes.
#[test]
fn law_files_name_every_layer_in_order() {
    let scene = strength().scene(Look::default()).expect("drawn");
    let runs = scene.layers.chunk_by(|a, b| a == b).enumerate();
    let expected: Vec<String> = runs
        .map(|(index, run)| format!("{}-{}", run[0].name(), index + 1))
        .collect();
    assert!(expected.len() > 3, "{expected:?}");
    let layered = layered_svg(&scene).expect("written");
    for text in [&layered, &outlined_svg(&scene).expect("written")] {
        let ids = text.split("<g id=\"").skip(1);
        let found: Vec<&str> = ids.filter_map(|rest| rest.split('"').next()).collect();
        assert_eq!(found, expected);
    }
    let without: String = layered
        .lines()
        .filter(|line| !line.starts_with("<g id=") && *line != "</g>")
        .flat_map(|line| [line.trim_end_matches("</g>"), "\n"])
        .collect();
    assert!(without.replace("\n\n", "\n") == svg(&scene).expect("written").replace("\n\n", "\n"));
}

/// 0.01 px on the slide is kept: at most two decimals, but for the one scale factor of the grid.
#[test]
fn law_svg_coordinates_have_at_most_two_decimals() {
    let scene = strength().scene(Look::default()).expect("drawn");
    for write in [outlined_svg, svg] {
        let text = write(&scene).expect("written");
        let long: Vec<&str> = text
            .split(|letter: char| !(letter.is_ascii_digit() || letter == '.'))
            .filter(|number| {
                let decimals = number.split_once('.').map_or("", |(_, decimals)| decimals);
                decimals.len() > 2 && *number != "0.125"
            })
            .collect();
        assert!(long.is_empty(), "{long:?}");
    }
}

#[test]
fn law_png_has_the_size_of_the_scene_times_the_factor() {
    for look in looks() {
        let scene = strength().scene(look).expect("drawn");
        for factor in [1.0, 0.5] {
            let bytes = png(&scene, factor).expect("drawn");
            let reader = ::png::Decoder::new(std::io::Cursor::new(bytes)).read_info();
            let info = reader.expect("a PNG file").info().size();
            let wanted = (scene.width * factor, scene.height * factor);
            assert_eq!((f64::from(info.0), f64::from(info.1)), wanted);
        }
    }
}

/// The renderer's own measure of a text agrees with ours; it kerns, we do not, so it may be 2 %
/// narrower, and its box holds only what is inked.
#[test]
fn law_measured_widths_agree_with_the_renderer() {
    for (words, face) in [
        ("Sticking region", Face::Bold),
        ("Bar height above the chest (cm)", Face::Regular),
        ("effort 0.93 at 14 cm, θ = 90°", Face::Regular),
        ("WAVE To Yield −12 345", Face::Bold),
    ] {
        let mut scene = Scene::new(1000.0, 100.0, BLACK);
        let white = Colour::hex(0xFF_FFFF);
        scene.text(Text::new([10.0, 60.0], words, 40.0, face, white));
        let bytes = png(&scene, 1.0).expect("drawn");
        let inked = inked_columns(&bytes);
        let width = lettering::width(words, 40.0, face);
        let ours = (10.0, 10.0 + width);
        assert!(
            inked.0 >= ours.0 - 2.0 && inked.0 <= ours.0 + 8.0,
            "{words}: {inked:?} {ours:?}"
        );
        assert!(inked.1 <= ours.1 + 1.0, "{words}: {inked:?} {ours:?}");
        assert!(
            inked.1 >= ours.1 - 0.035 * width - 4.0,
            "{words}: {inked:?} {ours:?}"
        );
    }
}

/// First and last column of a PNG on black that is not black.
fn inked_columns(bytes: &[u8]) -> (f64, f64) {
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(bytes))
        .read_info()
        .expect("a PNG file");
    let mut pixels = vec![0; reader.output_buffer_size().expect("a size that fits")];
    let info = reader.next_frame(&mut pixels).expect("one picture");
    let width = info.width as usize;
    let inked = |column: &usize| {
        pixels
            .chunks_exact(width * 3)
            .any(|row| row[column * 3] > 40)
    };
    let first = (0..width).find(inked).expect("some ink");
    let last = (0..width).rev().find(inked).expect("some ink");
    (first as f64, last as f64 + 1.0)
}

#[test]
fn fault_sizes_are_read_and_checked() {
    assert_eq!(
        "slide".parse::<Size>().expect("known").pixels(),
        (1920, 1080)
    );
    assert_eq!(
        "Page".parse::<Size>().expect("known").pixels(),
        (1754, 1240)
    );
    assert_eq!(
        "1200x800".parse::<Size>().expect("known").pixels(),
        (1200, 800)
    );
    for bad in [
        "",
        "poster",
        "10x10",
        "4000x400",
        "1200x",
        "-5x300",
        "99999x99999",
    ] {
        let fault = bad.parse::<Size>().expect_err(bad);
        assert_eq!(fault.exit_status(), 2);
        let told =
            torquill::narrative::faults::told(&fault.faults()[0], torquill::units::System::Metric);
        assert!(!told.hints.is_empty(), "{bad}");
    }
}

#[test]
fn fault_a_chart_without_data_or_with_no_numbers_is_refused() {
    let mut chart = strength();
    chart.panels[0].series[0].points[7][1] = f64::NAN;
    let fault = chart.scene(Look::default()).expect_err("NaN is refused");
    let wanted = PlotFault::PointNoNumber {
        point: 8,
        curve: "Capacity".to_owned(),
    };
    assert_eq!(fault.faults()[0].what, What::from(wanted));
    chart.panels[0].series.clear();
    assert!(chart.scene(Look::default()).is_err());
    chart.panels.clear();
    assert!(chart.scene(Look::default()).is_err());
}

#[test]
fn law_a_tornado_has_its_widest_bar_on_top() {
    let scene = draw_sample_grids::tornado()
        .scene(Look::default())
        .expect("drawn");
    let boxes = text_boxes(&scene);
    let top = |name: &str| {
        let found = boxes.iter().find(|text| text.content.starts_with(name));
        found.unwrap_or_else(|| panic!("no `{name}`")).area.top
    };
    let names = [
        "Moment arm",
        "Grip width",
        "Upper arm",
        "Fibre length",
        "Forearm",
        "Pennation",
    ];
    for pair in names.windows(2) {
        assert!(top(pair[0]) < top(pair[1]), "{pair:?}");
    }
}

#[test]
fn fault_maps_and_small_panels_that_cannot_be_drawn_are_refused() {
    let look = Look::default();
    let mut map = draw_sample_grids::heat_map();
    map.xs.swap(0, 1);
    let fault = map.scene(look).expect_err("places that fall are refused");
    let quantity = "Grip width".to_owned();
    let wanted = What::from(PlotFault::NotRising { quantity });
    assert_eq!(fault.faults()[0].what, wanted);
    let mut map = draw_sample_grids::heat_map();
    map.values[3].pop();
    assert_eq!(map.scene(look).expect_err("a short row").exit_status(), 2);
    let mut map = draw_sample_grids::heat_map();
    map.values
        .iter_mut()
        .flatten()
        .for_each(|value| *value = None);
    assert_eq!(map.scene(look).expect_err("no value").exit_status(), 1);
    let mut many = draw_sample_grids::small_multiples();
    many.panels = vec![many.panels[0].clone(); 21];
    assert!(many.scene(look).is_err());
}

/// Figures of one strip stand on one scale: a bar that rises 48 cm in the data rises by as many
/// pixels as the scale of the longest limb says.
#[test]
fn law_figures_of_a_strip_share_one_scale() {
    let scene = strength().scene(Look::default()).expect("drawn");
    let rings: Vec<(f64, f64)> = scene
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Primitive::Ring { centre, radius, .. } => Some((centre[1], *radius)),
            _ => None,
        })
        .collect();
    assert_eq!(rings.len(), 3);
    let px_per_m = rings[0].1 / 0.16;
    let rise_px = rings[0].0 - rings[2].0;
    assert!(
        (rise_px / px_per_m - 0.48).abs() < 1e-9,
        "{}",
        rise_px / px_per_m
    );
}

/// A curve that leaves the axis is cut where it leaves, not pressed against the frame.
#[test]
fn law_a_curve_that_leaves_the_axis_ends_at_the_crossing() {
    let scene = strength().scene(Look::default()).expect("drawn");
    let capacity = scene.shapes.iter().find_map(|shape| match shape {
        Primitive::Polyline { points, stroke } if points.len() > 50 && stroke.dashes.is_empty() => {
            Some(points)
        }
        _ => None,
    });
    let points = capacity.expect("the solid curve");
    let top = points.last().expect("points")[1];
    let at_top = points
        .iter()
        .filter(|point| (point[1] - top).abs() < 1e-6)
        .count();
    assert_eq!(at_top, 1);
    // The words may stand on two lines.
    let words: Vec<String> = text_boxes(&scene)
        .into_iter()
        .map(|text| text.content)
        .collect();
    let words = words.join(" ");
    assert!(words.contains("continues to 3250 N"), "{words}");
}

/// Writes the samples to the folder for temporary files, to be looked at.
#[test]
#[ignore = "writes pictures for people"]
fn regress_samples_to_look_at() {
    let folder = std::env::temp_dir().join("torquill-draw");
    std::fs::create_dir_all(&folder).expect("the folder for temporary files can be written");
    for theme in [Theme::Light, Theme::Dark] {
        for (label, size) in [
            ("slide", Size::Slide),
            ("page", Size::Page),
            ("small", Size::custom(640, 400).expect("allowed")),
        ] {
            for (name, scene) in draw_samples::scenes(Look { size, theme }) {
                let stem = format!("{name}-{label}-{theme:?}").to_lowercase();
                let write = |end: &str, bytes: &[u8]| {
                    std::fs::write(folder.join(format!("{stem}.{end}")), bytes).expect("written");
                };
                write("png", &png(&scene, 1.0).expect("drawn"));
                write("svg", outlined_svg(&scene).expect("drawn").as_bytes());
            }
        }
    }
}
