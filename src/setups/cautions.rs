//! What to watch for wherever a setup is recommended; there is no switch for it.
//!
//! In: whether a bar, bands, chains are used. Out: sentences, the disclaimer first. Sources: usual rules of
//! the weight room (common practice), spotting guidelines (from memory), studies of who used bands.

/// What a recommended setup uses, as far as cautions depend on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Uses {
    /// A bar in free hands or on the back.
    pub bar: bool,
    /// Elastic bands.
    pub bands: bool,
    /// Chains.
    pub chains: bool,
    /// A lifter without training.
    pub novice: bool,
}

/// The sentence that comes first.
const DISCLAIMER: &str = "This is education, no medical advice; local rules and a qualified professional on the spot come first.";

/// The cautions that apply, in a fixed order.
#[must_use]
pub fn cautions(uses: Uses) -> Vec<&'static str> {
    let table = [
        (true, DISCLAIMER),
        (
            uses.novice && (uses.bands || uses.chains),
            "Bands and chains are for experienced lifters: a novice gains as much from plain weight that grows a little each week.",
        ),
        (
            uses.bar,
            "Collars on, safety arms at the lowest point of the bar's path, spotters who know the plan; never alone without either.",
        ),
        (
            uses.bands,
            "Look over every band before every use for nicks, whitening and sticky spots, and retire worn ones.",
        ),
        (
            uses.bands,
            "Tie bands to something that cannot move or tip and has no sharp edge; keep faces out of the line of recoil.",
        ),
        (
            uses.bands,
            "Bands of one label differ by 8-19 % (McMaster 2010): weigh yours at two lengths, and hang equal ones left and right.",
        ),
        (
            uses.chains,
            "Hang chains evenly on both sides, inside the collars, some links always on the floor, feet clear of them.",
        ),
        (
            uses.bands || uses.chains,
            "Start lighter than computed and try each setup slowly first: the figures are those of a model lifter.",
        ),
    ];
    let apply = table.into_iter().filter(|(applies, _)| *applies);
    apply.map(|(_, sentence)| sentence).collect()
}
