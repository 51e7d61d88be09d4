//! The lecture: every figure for every built-in lifter, the command, and the page in a real browser.

use crate::calling::call_on;
use crate::text_boxes::text_boxes;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::path::{Path, PathBuf};
use std::process::Command;
use torquill::draw::{Layer, Primitive, Theme};
use torquill::figures::{Chart, load_holders, strength_sheet};
use torquill::lecture::{LECTURE, ONE_LIFT};
use torquill::library::{Library, Shelf};
use torquill::narrative::quantities::rounded;
use torquill::plot::{Look, Size};
use torquill::resistance::{Hang, Item};
use torquill::study::{Desk, LoadHolders, fibre_warnings, joint_gain, lifting_sign, muscle_parts};
use torquill::units::System;

/// The looks in which every figure is drawn.
fn looks() -> [Look; 2] {
    [
        Look::default(),
        Look {
            size: Size::Page,
            theme: Theme::Dark,
        },
    ]
}

#[test]
fn law_every_built_in_lifter_gets_the_whole_set() {
    let library = Library::built_in();
    for lifter in library.names(Shelf::Lifters) {
        let desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        assert!(
            desk.left_out().is_empty(),
            "{lifter}: {:?}",
            desk.left_out()
        );
        let drawn: Vec<&str> = LECTURE
            .par_iter()
            .filter(|figure| figure.can_be_drawn(&desk))
            .map(|figure| {
                check_figure(&desk, figure, &lifter);
                figure.name
            })
            .collect();
        assert!(drawn.len() >= 14, "{lifter} gets only {drawn:?}");
    }
}

#[test]
fn law_every_lift_gets_a_lecture_of_its_own() {
    let library = Library::built_in();
    for lift in library.names(Shelf::Movements) {
        let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
        let desk = desk.about(&lift).expect("a built-in lift");
        let drawn: Vec<&str> = ONE_LIFT
            .par_iter()
            .filter(|figure| figure.can_be_drawn(&desk))
            .map(|figure| {
                check_figure(&desk, figure, &lift);
                figure.name
            })
            .collect();
        assert!(drawn.len() >= 8, "{lift} gets only {drawn:?}");
    }
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
    assert!(desk.about("bench-pres").is_err());
}

/// Words and data are there, and no word leaves the picture.
fn check_figure(desk: &Desk<'_>, figure: &torquill::lecture::LectureFigure, lifter: &str) {
    let place = format!("{} of {lifter}", figure.name);
    let sheet = (figure.build)(desk).unwrap_or_else(|error| panic!("{place}: {error}"));
    assert!(
        sheet.title().len() > 10 && sheet.caption.len() > 30 && sheet.alt().len() > 40,
        "{place}"
    );
    for words in [sheet.title(), sheet.caption.as_str(), sheet.alt()] {
        assert!(
            !words.contains("NaN") && !words.contains("inf "),
            "{place}: {words}"
        );
    }
    assert!(sheet.data.rows.len() > 1, "{place} has no data");
    for row in &sheet.data.rows {
        assert_eq!(row.len(), sheet.data.header.len(), "{place}");
        let bad = |cell: &String| cell.parse::<f64>().is_ok_and(|number| !number.is_finite());
        assert!(!row.iter().any(bad), "{place}: {row:?}");
    }
    for look in looks() {
        let scene = sheet
            .chart
            .scene(look)
            .unwrap_or_else(|error| panic!("{place}: {error}"));
        let canvas = scene.canvas();
        for text in text_boxes(&scene) {
            assert!(
                canvas.contains(&text.area),
                "{place}: `{}` is clipped",
                text.content
            );
        }
        // Shares of their own peak touch the upper edge and do not leave there.
        let leaves = text_boxes(&scene)
            .into_iter()
            .any(|text| text.content.starts_with("continues"));
        assert!(
            !(leaves && figure.name == "force-times-arm"),
            "{place}: a curve leaves at its own peak"
        );
        let title = text_boxes(&scene)
            .into_iter()
            .find(|text| text.content.ends_with('…'));
        assert!(title.is_none(), "{place}: cut short: {title:?}");
    }
}

/// No figure of the lecture goes without the words that tell whose it is, under which load, and what is missed.
#[test]
fn law_figures_of_the_lecture_keep_their_words() {
    let library = Library::built_in();
    let lifters = library.names(Shelf::Lifters).into_iter();
    let metric = lifters.map(|lifter| (lifter, System::Metric));
    for (lifter, units) in metric.chain([("reference-man".to_owned(), System::Us)]) {
        let desk = Desk::open(&library, &lifter, units).expect("a built-in lifter");
        let drawable = LECTURE
            .par_iter()
            .filter(|figure| figure.can_be_drawn(&desk));
        let without = drawable.filter_map(|figure| {
            let sheet = (figure.build)(&desk).expect("a figure");
            let look = |size| Look {
                size,
                ..Look::default()
            };
            let whole = sheet.chart.scene(look(Size::Slide)).expect("it has room");
            let slide = sheet
                .untitled_scene(look(Size::UnderTitle))
                .expect("it has room");
            let words = [whole, slide].map(|scene| sheet.words_left_off(&scene));
            (words != [Vec::<String>::new(), Vec::new()]).then_some((figure.name, words))
        });
        let without: Vec<_> = without.collect();
        assert!(without.is_empty(), "{lifter}, {units:?}: {without:?}");
    }
}

/// What is shaded as the hardest part is as wide as the data say, or a hair's breadth that is still seen.
#[test]
fn law_a_hardest_part_is_shaded_as_wide_as_it_is() {
    const LETTERS_PX: f64 = 36.0;
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let mut all = LECTURE.iter();
    let figure = all.find(|figure| figure.name == "load-over-class");
    let sheet = (figure.expect("a weight over the classes").build)(&desk).expect("a figure");
    let Chart::Panels(chart) = &sheet.chart else {
        panic!("no panels");
    };
    let scene = sheet.chart.scene(Look::default()).expect("it has room");
    let mut narrowest = f64::INFINITY;
    for (panel, plot) in chart.panels.iter().zip(&scene.plots) {
        let [shade] = panel.shades.as_slice() else {
            panic!("{}: one stretch", panel.title);
        };
        let told_px = 0.01 * (shade.to - shade.from) * plot.width();
        let shapes = scene.shapes.iter().zip(&scene.layers);
        let drawn = shapes.filter_map(|(shape, layer)| match shape {
            Primitive::Rectangle { area, .. } if *layer == Layer::Region => Some(area),
            _ => None,
        });
        let own = drawn
            .filter(|area| area.left > plot.left - 1.0 && area.right < plot.right + 1.0)
            .map(|area| area.width());
        let own: Vec<f64> = own.collect();
        assert_eq!(own.len(), 1, "{}", panel.title);
        let least_px = told_px.max(0.25 * LETTERS_PX);
        assert!(
            own[0] > told_px - 1.0 && own[0] < least_px + 1.0,
            "{}: {} for {told_px}",
            panel.title,
            own[0]
        );
        narrowest = narrowest.min(told_px);
    }
    assert!(narrowest < 0.5 * LETTERS_PX, "a narrow one is among them");
}

#[test]
fn law_names_and_ideas_of_figures_are_unique() {
    for (index, figure) in LECTURE.iter().enumerate() {
        for other in &LECTURE[..index] {
            assert!(
                figure.name != other.name && figure.idea != other.idea,
                "{}",
                figure.name
            );
        }
    }
}

#[test]
fn law_muscle_torques_add_up_and_one_joint_is_used_wholly() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let study = &desk.lift("biceps-curl").expect("the curl").study;
    let parts = muscle_parts(study, 0);
    let lifting = lifting_sign(study, 0);
    let held = study.capacity.held.iter();
    let total: Vec<f64> = held
        .map(|held| lifting * held.muscle_torques_nm[0])
        .collect();
    for (index, held) in study.capacity.held.iter().enumerate() {
        let lifting: f64 = parts.iter().map(|part| part.torque_nm[index]).sum();
        // What the total lacks is the passive torque of the antagonists, which are no parts.
        let against: f64 = held
            .muscles
            .iter()
            .map(|muscle| (muscle.arms_m[0] * muscle.passive_n).min(0.0))
            .sum();
        assert!(
            (lifting + against - total[index]).abs() < 1e-9,
            "sample {index}"
        );
        assert!(held.capacity < total[index] + 10.0);
    }
    // One joint alone: what the load leaves of a stronger muscle's moment is all gain.
    for (held, gain) in study.capacity.held.iter().zip(joint_gain(study, "elbow")) {
        let expected = held.muscle_torques_nm[0] / held.capacity;
        assert!((gain - expected.abs()).abs() < 1e-6, "{gain} {expected}");
    }
    let squat = &desk.lift("squat").expect("the squat").study;
    for (index, held) in squat.capacity.held.iter().enumerate() {
        let limiting = joint_gain(squat, squat.joint(held.limiting))[index];
        for joint in ["ankle", "knee", "hip", "back"] {
            assert!(
                joint_gain(squat, joint)[index] <= limiting + 1e-9,
                "{joint} {index}"
            );
        }
    }
}

/// Where fibres leave the living lengths the capacity is drawn hollow, and only there; the words say so.
#[test]
fn law_a_doubted_stretch_is_hollow_in_the_strength_curve() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let mut hollow = 0;
    for lift in desk.lifts() {
        let (study, name) = (&lift.study, &lift.model.movement_name);
        let sheet = strength_sheet(study.told(System::Metric));
        let Chart::Lines(chart) = &sheet.chart else {
            panic!("{name}: no curves");
        };
        let warned = fibre_warnings(study);
        let last = (study.range.poses.len() - 1) as f64;
        let doubted = &chart.panels[0].series[0].doubted;
        for sample in 0..study.range.poses.len() {
            let range = sample as f64 / last;
            let is_warned = warned
                .iter()
                .any(|w| range > w.range.0 - 1e-9 && range < w.range.1 + 1e-9);
            let place = study.axis_value(range);
            let is_hollow = doubted
                .iter()
                .any(|[a, b]| place >= a.min(*b) && place <= a.max(*b));
            assert_eq!(is_warned, is_hollow, "{name} at {range}");
        }
        let told = chart.heading.footnote.contains("Double line");
        assert_eq!(
            told,
            !warned.is_empty(),
            "{name}: {}",
            chart.heading.footnote
        );
        let background = Theme::Light.colours().background;
        let scene = sheet.chart.scene(Look::default()).expect("a picture");
        let cores = scene.shapes.iter().filter(|shape| {
            matches!(shape, Primitive::Polyline { stroke, .. } if stroke.colour == background)
        });
        assert!(
            cores.count() >= doubted.len(),
            "{name}: a stretch is not hollow"
        );
        hollow += doubted.len();
    }
    assert!(hollow > 3, "hardly anything is doubted: {hollow}");
}

/// The title's joint limits where the lift is weakest, and the stack is pale just where more strength of the joint gains nothing.
#[test]
fn law_one_sharing_of_several_is_pale() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let (mut pale, mut full) = (0, 0);
    for lift in desk.lifts() {
        let (study, name) = (&lift.study, &lift.model.movement_name);
        let holders = LoadHolders::of(study);
        assert!(holders.limits[holders.weakest], "{name}");
        let stretches = holders.undetermined();
        // The words have every stretch that is drawn pale.
        let told = load_holders(study, System::Metric).caption;
        for ends in &stretches {
            let [from, to] = ends.map(|end| rounded(100.0 * end, 0));
            let words = format!("rom {from} % to {to} %");
            assert!(told.contains(&words), "{name}: {words}: {told}");
        }
        let everywhere = told.contains("limits the lift everywhere");
        assert_eq!(everywhere, stretches.is_empty(), "{name}: {told}");
        let last = (study.range.poses.len() - 1) as f64;
        for (sample, held) in study.capacity.held.iter().enumerate() {
            let range = sample as f64 / last;
            let is_pale = stretches.iter().any(|[a, b]| (*a..=*b).contains(&range));
            let gain = held.duals[holders.joint] * held.muscle_torques_nm[holders.joint];
            assert_eq!(
                is_pale,
                gain.abs() < 1e-6 * held.capacity,
                "{name} at {range}: {gain}"
            );
            pale += usize::from(is_pale);
            full += usize::from(!is_pale);
        }
    }
    assert!(pale > 50 && full > 500, "{pale} {full}");
}

/// Runs the command into a folder; returns whether it succeeded and what it said.
fn lecture(folder: &Path, threads: &str, more: &[&str]) -> (i32, String) {
    let into = folder.to_str().expect("a plain path");
    let arguments = ["lecture", "--size", "960x540", "-o", into];
    let answer = call_on(threads, Path::new("."), &[&arguments, more].concat());
    assert_eq!(answer.out, "", "nothing goes to standard output");
    (answer.status, answer.complaint)
}

fn files(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut files: Vec<(String, Vec<u8>)> = std::fs::read_dir(folder)
        .expect("the folder was made")
        .map(|entry| entry.expect("an entry").path())
        .map(|path| {
            let name = path
                .file_name()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            (name, std::fs::read(&path).expect("a file"))
        })
        .collect();
    files.sort();
    files
}

#[test]
fn law_the_set_is_the_same_byte_for_byte_and_never_replaced_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    let [one, two] = ["one", "two/deep"].map(|name| folder.path().join(name));
    for (path, threads) in [(&one, "1"), (&two, "2")] {
        let (status, said) = lecture(path, threads, &[]);
        assert_eq!(status, 0, "{said}");
    }
    let (first, second) = (files(&one), files(&two));
    assert!(first.len() > 14 * 5, "{} files", first.len());
    for (a, b) in first.iter().zip(&second) {
        assert!(a == b, "{} and {} differ", a.0, b.0);
    }
    let (status, said) = lecture(&one, "2", &[]);
    assert_eq!(status, 2, "{said}");
    assert!(
        said.contains("exists already") && said.contains("--force"),
        "{said}"
    );
    assert_eq!(lecture(&one, "2", &["--force"]).0, 0);
}

/// The browser: the one named by CHROMIUM, or a usual name on the path.
fn browser() -> Option<PathBuf> {
    if let Some(named) = std::env::var_os("CHROMIUM") {
        return Some(PathBuf::from(named));
    }
    let path = std::env::var_os("PATH")?;
    let names = ["chromium", "chromium-browser", "google-chrome"];
    std::env::split_paths(&path)
        .flat_map(|folder| names.map(|name| folder.join(name)))
        .find(|file| file.is_file())
}

/// The page prints its contents on one side and two figures on every other one, none half empty but the last.
fn check_print(browser: &Path, pages: &Path, folder: &Path) {
    let printed = folder.join("printed.pdf");
    let done = Command::new(browser)
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--no-pdf-header-footer",
        ])
        .arg(format!(
            "--user-data-dir={}",
            folder.join("printer").display()
        ))
        .arg(format!("--print-to-pdf={}", printed.display()))
        .arg(format!("file://{}", pages.join("index.html").display()))
        .output()
        .expect("the browser starts");
    let bytes = std::fs::read(&printed)
        .unwrap_or_else(|_| panic!("{}", String::from_utf8_lossy(&done.stderr)));
    let text = String::from_utf8_lossy(&bytes);
    let sides = text.matches("/Type /Page\n").count();
    let figures = files(pages)
        .iter()
        .filter(|(name, _)| name.ends_with(".svg"))
        .count();
    // Behind the figures stand the sources, on two sides at most.
    let behind = sides.checked_sub(1 + figures.div_ceil(2));
    assert!(
        behind.is_some_and(|behind| (1..=2).contains(&behind)),
        "{sides} sides for {figures} figures"
    );
}

#[test]
fn law_a_browser_loads_every_picture_of_the_page() {
    let Some(browser) = browser() else {
        let is_ci = std::env::var("CI").is_ok_and(|value| value == "true");
        assert!(
            !is_ci,
            "no chromium on the path: install it or name it in CHROMIUM"
        );
        println!("skipped: no chromium on the path; install it or name it in CHROMIUM");
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let pages = folder.path().join("pages");
    assert_eq!(lecture(&pages, "2", &[]).0, 0);
    // The page itself, with a few lines at its end that tell what the browser made of it.
    let page = std::fs::read_to_string(pages.join("index.html")).expect("the page");
    let told = page.replace(
        "</body>",
        "<script>addEventListener('load', () => { document.title = 'told ' + \
         [...document.images].map(i => `${i.naturalWidth}x${i.naturalHeight}:${i.alt.length}`).join(' '); });\
         </script></body>",
    );
    let probe = pages.join("probe.html");
    std::fs::write(&probe, told).expect("the probe is written");
    check_print(&browser, &pages, folder.path());
    let output = Command::new(browser)
        .args(["--headless", "--no-sandbox", "--disable-gpu", "--dump-dom"])
        .arg(format!(
            "--user-data-dir={}",
            folder.path().join("profile").display()
        ))
        .arg(format!("file://{}", probe.display()))
        .output()
        .expect("the browser starts");
    let shown = String::from_utf8_lossy(&output.stdout).into_owned();
    let report = shown
        .split("<title>told ")
        .nth(1)
        .and_then(|rest| rest.split("</title>").next())
        .unwrap_or_else(|| panic!("no report: {}", String::from_utf8_lossy(&output.stderr)));
    let pictures: Vec<&str> = report.split(' ').collect();
    let count = files(&pages)
        .iter()
        .filter(|(name, _)| name.ends_with(".svg"))
        .count();
    assert!(count >= 14 && pictures.len() == count, "{report}");
    for picture in pictures {
        let (size, alt) = picture
            .split_once(':')
            .expect("size and length of the words");
        assert_eq!(size, "960x540", "a picture did not load: {report}");
        assert!(alt.parse::<usize>().expect("a length") > 40, "{report}");
    }
}

/// The subtitle says how the band hangs that is drawn, and the page that the figure leads to hangs the same one.
#[test]
fn law_a_figure_tells_and_leads_to_the_band_that_it_draws() {
    let library = Library::built_in();
    let mut desk =
        Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let mut hangs = Vec::new();
    for lift in [
        "bench-press",
        "overhead-press",
        "row",
        "squat",
        "hip-thrust",
    ] {
        desk.about = Some(lift.to_owned());
        let bands = ONE_LIFT.iter().filter(|figure| figure.name == "band");
        for figure in bands.filter(|figure| figure.can_be_drawn(&desk)) {
            let sheet = (figure.build)(&desk).expect("it is drawn");
            let study = desk.under(lift, &sheet.setups).expect("it is lifted");
            let last = study.setups.last().expect("a setup with a band");
            let items = last.demand.setup.items.iter();
            let mut bands = items.filter_map(|item| match item {
                Item::Band(hung) => Some(hung),
                _ => None,
            });
            let hung = bands.next().expect("a band");
            let words = &sheet.chart.heading().subtitle;
            let is_doubled = hung.hang == Hang::Doubled;
            assert_eq!(words.contains("doubled"), is_doubled, "{lift}: {words}");
            let link = torquill::lecture::live_state(figure, &desk, &sheet).expect("a link");
            let wanted = format!("&band={}:{}", hung.band.name(), hung.count);
            assert!(link.contains(&wanted), "{lift}: {wanted} in {link}");
            hangs.push(is_doubled);
        }
    }
    assert!(hangs.contains(&true) && hangs.contains(&false), "{hangs:?}");
}
