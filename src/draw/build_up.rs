//! A picture built up step by step, for a speaker who shows one thing after the other.
//!
//! In: a [`Scene`]. Out: scenes of the same size with less on them; titles, which tell the finding, come last.

use super::scene::{Layer, Scene};

/// When a layer appears.
const fn turn(layer: Layer) -> u8 {
    match layer {
        Layer::Axis | Layer::Pose => 0,
        Layer::Curve => 1,
        Layer::Region => 2,
        Layer::Leader | Layer::Label => 3,
        Layer::Heading => 4,
    }
}

/// The steps before the whole picture; none where nothing is told apart.
#[must_use]
pub fn build_up(scene: &Scene) -> Vec<Scene> {
    let mut turns: Vec<u8> = scene.layers.iter().map(|layer| turn(*layer)).collect();
    turns.sort_unstable();
    turns.dedup();
    turns.pop();
    turns.into_iter().map(|last| until(scene, last)).collect()
}

fn until(scene: &Scene, last: u8) -> Scene {
    let mut step = scene.clone();
    let kept: Vec<bool> = scene
        .layers
        .iter()
        .map(|layer| turn(*layer) <= last)
        .collect();
    let mut keep = kept.iter();
    step.shapes.retain(|_| *keep.next().unwrap_or(&true));
    let mut keep = kept.iter();
    step.layers.retain(|_| *keep.next().unwrap_or(&true));
    step
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::{Rect, Theme};

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
}
