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
