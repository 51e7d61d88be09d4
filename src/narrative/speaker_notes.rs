//! What a speaker says to each figure of the lecture, asks, and clears up.
//!
//! In: the name of a figure. Out: [`SpeakerNotes`]: how the picture is read, a question with its answer, the usual
//! mistake. Numbers stand in title, caption and alternative text, which follow from the data; none stands here.

/// Notes to one figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SpeakerNotes {
    /// Name of the figure.
    pub figure: &'static str,
    /// How to lead the audience through the picture.
    pub say: &'static str,
    /// A question to ask, with its answer in brackets.
    pub ask: &'static str,
    /// What is usually misunderstood.
    pub mistake: &'static str,
}

/// The notes to a figure.
#[must_use]
pub fn notes_of(figure: &str) -> Option<&'static SpeakerNotes> {
    NOTES.iter().find(|notes| notes.figure == figure)
}

/// The lines that a speaker sees, in the order of use.
#[must_use]
pub fn notes_in_lines(notes: &SpeakerNotes, title: &str, caption: &str, alt: &str) -> Vec<String> {
    let title = title.trim_end_matches('.');
    vec![
        format!("Say: {} {title}. {caption}", notes.say),
        format!("Ask: {}", notes.ask),
        format!("Common mistake: {}", notes.mistake),
        format!("In the picture: {alt}"),
    ]
}

const fn notes(
    figure: &'static str,
    say: &'static str,
    ask: &'static str,
    mistake: &'static str,
) -> SpeakerNotes {
    SpeakerNotes {
        figure,
        say,
        ask,
        mistake,
    }
}

/// The notes in the order of the lecture.
pub const NOTES: &[SpeakerNotes] = &[
    notes(
        "strength-curve",
        "Along the bottom is the way of the bar, from start to end; upward is the largest load that could be held still \
         at that place. The stick figures show where the body is.",
        "If you may stop the bar at one place and hold it there, where do you choose? (Where the line is highest.)",
        "A strength curve is not the force of one repetition: each of its points is a separate best effort, held still.",
    ),
    notes(
        "sarcomere-overlap",
        "Below, four sarcomeres to one scale; above, the force that each can make. Follow the letters from left to right.",
        "Why is there less force when the sarcomere is short, although more filament lies beside more filament? (Thin \
         filaments of both sides get into each other's way, and thick ones meet the discs.)",
        "More overlap is not always more force: what counts is heads that find a free place on the right thin filament.",
    ),
    notes(
        "sarcomere-species",
        "Two diagrams of the same law with filaments of different length.",
        "Which part of the filaments differs between the two? (The thin ones; thick filaments are nearly alike.)",
        "The numbers that most textbooks print are the frog's.",
    ),
    notes(
        "active-passive-total",
        "Active force is what the filaments make; passive force is what stretched tissue gives for nothing; the sum is what \
         the tendon feels. The shaded stretch is what this lift uses.",
        "A muscle feels strong in a deep stretch. Which of the two forces is it? (The passive one.)",
        "The rise on the far right is no proof of strength in a stretch: it is there in a relaxed muscle too.",
    ),
    notes(
        "force-velocity",
        "In the middle stands a fibre that keeps its length; to the right it shortens, to the left it is pulled longer.",
        "Why can a load be lowered that cannot be lifted? (Lengthening fibres hold more than shortening ones make.)",
        "The surplus of isolated fibres in lengthening is not found in whole people, who hold back.",
    ),
    notes(
        "curve-at-speed",
        "Each line is the same lift at another speed of the joint; the black line is held still, the lightest is the fastest.",
        "Does speed only lower the curve, or does it change its shape as well? (Compare where each line has its peak.)",
        "A curve that was measured at one speed must not be laid over a load that moves at another.",
    ),
    notes(
        "muscles-on-skeleton",
        "The limb with its muscles at three places of the lift: thicker lines pull with more force, and the dashed \
         lines from the joint, square to them, are their moment arms.",
        "Where does the same force make the greatest moment? (Where its dashed line is longest.)",
        "A moment arm is measured square to the muscle's line of pull, not along the bone.",
    ),
    notes(
        "moment-arms",
        "Along the bottom is the angle of the joint, upward the moment arm of each muscle about it.",
        "Two muscles pull with the same force: which one turns the joint harder? (The one with the longer moment arm.)",
        "A long moment arm is not only an advantage: it also uses up the muscle's length and speed sooner.",
    ),
    notes(
        "fibre-lengths",
        "The level line is the length at which a fibre makes most force; the curves show how each muscle runs away from it.",
        "Which muscle changes its length most, and why? (The one with the longest moment arm for its fibres.)",
        "A two-joint muscle's length is not set by this joint alone: turn the other one and the whole curve moves.",
    ),
    notes(
        "track-on-lengths",
        "The faint line is the fibre's own law; the strong stretch is the part of it that this lift uses, from start to end.",
        "What would move the stretch to the left? (Another angle of a second joint that the muscle crosses, or shorter fibres.)",
        "Nobody uses the whole curve: a lift moves along a short piece of it.",
    ),
    notes(
        "track-on-speeds",
        "The same muscle on its other law: how fast its fibres shorten while the joint turns at constant speed.",
        "Why is the stretch not a single point, although the speed of the joint is constant? (The moment arm changes with the angle.)",
        "The speed of the joint or of the bar is not the speed of the fibres.",
    ),
    notes(
        "force-times-arm",
        "Three curves, each in percent of its own greatest value: force, moment arm, and what both make together.",
        "Why does the product not peak where force does? (Because the moment arm still grows there.)",
        "Neither the length-tension curve nor the moment arm alone is the strength curve.",
    ),
    notes(
        "muscles-add-up",
        "The layers are the moments of the muscles, one upon the other; the line is what is left for the load.",
        "Where does the rest between the top edge and the line go? (Into the limb's own weight and the tissue of the joint.)",
        "A muscle that is large in this stack need not be the largest muscle of the limb: moment arm counts as much as size.",
    ),
    notes(
        "three-classes",
        "Time runs from left to right in every curve: the start of the lift is on the left.",
        "Which class is your favourite lift? (Vote first, then show the next figures.)",
        "A class belongs to the lift as it is done, not to the muscle: another grip or stance can change it.",
    ),
    notes(
        "ascending-lifts",
        "All curves are drawn over the same range and in percent of their own median, so only the shape counts.",
        "Where will a plain weight feel lightest in these lifts? (Near the end.)",
        "Ascending does not say that the muscles become stronger: the limbs straighten and the load's moment arms shrink.",
    ),
    notes(
        "descending-lifts",
        "The same axes as before; these curves fall.",
        "Would you hang a chain on such a lift? (It adds load just where strength fades.)",
        "Hard at the end is often taken for tired at the end.",
    ),
    notes(
        "bell-shaped-lifts",
        "The same axes again; these curves rise and fall.",
        "Which implement follows such a curve? (A cam whose radius changes with the angle.)",
        "With a weight in the hand the load is bell-shaped too: a bell over a bell may be quite even.",
    ),
    notes(
        "u-shaped-lifts",
        "The same axes; the weak place lies inside the range.",
        "What changes at the weak place? (Another joint begins to limit the lift.)",
        "A dip in the middle of one measured curve may also be noise: it has to return in every trial.",
    ),
    notes(
        "limits-in-a-press",
        "How much more could be held if the muscles at one joint were one percent stronger: the higher its \
         line, the more its strength counts there.",
        "Which muscles would you train for the start of this lift? (Those of the joint whose line is highest there.)",
        "A joint with strength to spare is no weak link, however small its muscles are.",
    ),
    notes(
        "limits-in-a-squat",
        "The same question for the legs: where a line is at nothing, more strength of that joint helps nothing.",
        "Why can the other joints not help out? (Each joint has to hold its own moment.)",
        "More strength of a joint that does not limit changes nothing at that place.",
    ),
    notes(
        "who-holds-the-load",
        "One joint of the lift: the layers are the moments of its muscles, the thick line is what load and limbs ask for.",
        "Why does the stack follow the line so exactly? (Statics: what is held is in balance at every place.)",
        "A muscle may stand in the stack at one joint and work against it at the next.",
    ),
    notes(
        "free-body",
        "Three instants of the lift as a free body: the arrows are forces to scale, the dashed lines their moment arms about the \
         joints, and the sums below are in balance.",
        "Which joint has the longest moment arm at the hardest place? (Read the column of centimetres below the body.)",
        "The weight of the bar is the same in all three pictures: what changes is its distance from the joints.",
    ),
    notes(
        "load-over-class",
        "The blue line is what can be held, the other what a plain weight asks for: where they come close it is hard.",
        "Where would you put more load, if you could? (Where the gap is wide.)",
        "The heaviest weight says how strong somebody is at one place, not over the range.",
    ),
    notes(
        "sticking-region",
        "The shaded stretch is where the load takes nearly as much of the strength as at its hardest place.",
        "What would you see in a video of a failed attempt? (The bar slows down before or inside that stretch.)",
        "The sticking point is no property of the bar's height alone: another load or grip moves it.",
    ),
    notes(
        "sticking-in-motion",
        "Velocity of the bar over its way, with a plain load and with bands at the same hardest effort.",
        "Why is the slowest place not the hardest place? (The bar brings speed along and needs way to lose it.)",
        "The region of slow movement comes later than the place where strength is least beside the load.",
    ),
    notes(
        "grip-width",
        "One value is changed, all others stay: the family of curves shows what it does.",
        "Which grip is best? (That depends on the place of the range that you ask about.)",
        "The strongest grip of a curve is not the safest one of a shoulder.",
    ),
    notes(
        "limb-length",
        "The same muscles on longer and shorter limbs.",
        "Is a person with long thighs a bad squatter? (Weaker by this much in the same stance, and free to choose another.)",
        "Limb length changes moment arms of the load, not the strength of the muscles.",
    ),
    notes(
        "band-law",
        "Tension over length: nothing while the band is slack, a steep beginning, then a flatter rise. Doubling moves the \
         curve along both axes.",
        "Why do two bands with the same name pull differently? (Thickness and rubber scatter; measure your own.)",
        "A band has no weight in kilograms: its pull depends on how long it is at that place.",
    ),
    notes(
        "chain-law",
        "Weight of the chain in the air over the height of its hook, in steps as links leave the floor, drawn smooth.",
        "When does a chain stop adding load? (When its last link hangs free.)",
        "Chain that lies on the floor is no load, and chain that never touches it is plain weight.",
    ),
    notes(
        "band-over-ascending",
        "Both setups are equally hard at their hardest place. Compare the gaps elsewhere.",
        "Where does the band take load away? (Where it is short: near the start.)",
        "Adding a band to the same plates makes the lift heavier, not more even: take plates off first.",
    ),
    notes(
        "chain-over-ascending",
        "The same comparison with chains instead of bands; both setups are again equally hard at their hardest place.",
        "How does it differ from the band? (A chain's load is a weight: it grows evenly with height.)",
        "The few links in use decide: a heavy chain that hangs free at the start does nothing over the range.",
    ),
    notes(
        "flattening",
        "Effort over the range for each setup: a level line would be equally hard everywhere.",
        "Is the most even setup the best one? (For an even effort; strength at one place needs load at that place.)",
        "Even effort is not the same as more effort.",
    ),
    notes(
        "band-over-descending",
        "The same band on a lift whose strength falls: both setups are equally hard where they are hardest.",
        "Where does the band put its load? (At the end, where the lifter is weakest.)",
        "Bands do not make every lift better: they fit lifts that grow stronger on the way.",
    ),
    notes(
        "cam",
        "The dashed line is a plain stack, the dotted one a stack over a cam that follows the strength curve.",
        "What shape must such a cam have? (A large radius where the lifter is strong, a small one where weak.)",
        "A cam that fits one person need not fit the next: the shape of a curve depends on the body.",
    ),
    notes(
        "lowered-held-lifted",
        "Three capacities of the same lifter: lowering slowly, holding, lifting slowly; the level line is a load above the \
         heaviest that can be lifted.",
        "How would you load more than can be lifted, safely? (With weights that are released or lifted by others.)",
        "More can be lowered than lifted, but in people much less more than in isolated fibres.",
    ),
    notes(
        "plateau",
        "Each point of the blue line is the best set of a day, told as a one-repetition maximum; the straight lines are \
         what remains when the scatter of single days is taken off.",
        "From which week on would you have called it a plateau? (Cover the right half first.)",
        "Two bad sessions in a row are no plateau: look at the interval of the slope.",
    ),
    notes(
        "clusters",
        "Mean velocity of every repetition of the same load: in one go, and in small groups with short rests.",
        "What do the short rests give back? (A part of the fatigue, so the next repetitions are faster again.)",
        "Clusters are not easier training: the same load is moved as often, only with more speed.",
    ),
    notes(
        "pyramid",
        "One bar a set: grey for the warm-up, blue for the working sets, the repetitions above each bar.",
        "Why do the repetitions fall? (The load comes nearer to the maximum, and fatigue is left from the sets before.)",
        "The top set is not the only one that counts: most repetitions are done below it.",
    ),
    notes(
        "people-differ",
        "The same lift of many invented people: same rules, other bodies.",
        "Where do curves differ most between people? (In height first; compare the shapes in percent.)",
        "An average curve need not be the curve of anybody.",
    ),
    notes(
        "how-sure",
        "Published values that could have failed, lift by lift: what the model meets and what it does not.",
        "Would you use it for a lift at the top of the list? (For the shape perhaps, not for a single number.)",
        "Agreement with a value that a model was fitted to proves nothing; these were not fitted to.",
    ),
    notes(
        "cannot-tell",
        "Questions that are asked of such curves, and cannot be answered by them.",
        "Which of these matters most to your athletes? (Discuss.)",
        "A computed curve looks exact: its lines are sharper than what is known.",
    ),
];
