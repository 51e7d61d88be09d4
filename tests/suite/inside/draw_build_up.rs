//! What `src/draw/build_up.rs` does, from inside.

use torquill::draw::build_up::*;
use torquill::draw::scene::{Layer, Scene};
use torquill::draw::{Rect, Theme};

#[test]
fn law_each_step_adds_shapes_and_the_title_comes_last() {
    let colours = Theme::default().colours();
    let mut scene = Scene::new(100.0, 100.0, colours.background);
    let mark = Rect::new(0.0, 0.0, 9.0, 9.0);
    for layer in [Layer::Heading, Layer::Region, Layer::Axis, Layer::Curve] {
        scene.begin(layer);
        scene.rectangle(mark, colours.ink);
    }
    let steps = build_up(&scene);
    let counts: Vec<usize> = steps.iter().map(|step| step.shapes.len()).collect();
    assert_eq!(counts, [1, 2, 3]);
    assert!(
        steps
            .iter()
            .all(|step| !step.layers.contains(&Layer::Heading))
    );
    assert!(
        steps
            .iter()
            .all(|step| step.layers.len() == step.shapes.len())
    );
}
