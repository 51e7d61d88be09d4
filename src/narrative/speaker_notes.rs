//! What a speaker says to each figure of the lecture, asks, and clears up.
//!
//! In: the name of a figure. Out: [`SpeakerNotes`]: how the picture is read, a question with its answer, a usual
//! mistake and what is right. Numbers stand in title, caption and alternative text, which follow from the data; none stands here.

/// Notes to one figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SpeakerNotes {
    /// Name of the figure.
    pub figure: &'static str,
    /// How to lead the audience through the picture.
    pub say: &'static str,
    /// A question to ask, with its answer in brackets.
    pub ask: &'static str,
    /// What is often believed and is not so.
    pub mistake: &'static str,
    /// What is so instead.
    pub right: &'static str,
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
        format!("Mistake: {} Right: {}", notes.mistake, notes.right),
        format!("In the picture: {alt}"),
    ]
}

const fn notes(
    figure: &'static str,
    say: &'static str,
    ask: &'static str,
    mistake: &'static str,
    right: &'static str,
) -> SpeakerNotes {
    SpeakerNotes {
        figure,
        say,
        ask,
        mistake,
        right,
    }
}

/// The notes in the order of the lecture.
pub const NOTES: &[SpeakerNotes] = &[
    notes(
        "strength-curve",
        "Along the bottom is the way of the bar, from start to end; upward is the largest load that could be held still \
         at that place. The stick figures show where the body is.",
        "If you may stop the bar at one place and hold it there, where do you choose? (Where the line is highest.)",
        "A strength curve is the force of one repetition.",
        "A strength curve is not the force of one repetition: each of its points is a separate best effort, held still.",
    ),
    notes(
        "sarcomere-overlap",
        "Below, four sarcomeres to one scale; above, the force that each can make. Follow the letters from left to right.",
        "Why is there less force when the sarcomere is short, although more filament lies beside more filament? (Thin \
         filaments of both sides get into each other's way, and thick ones meet the discs.)",
        "More overlap is always more force.",
        "What counts is heads that find a free place on the right thin filament.",
    ),
    notes(
        "sarcomere-species",
        "Two diagrams of the same law with filaments of different length.",
        "Which part of the filaments differs between the two? (The thin ones; thick filaments are nearly alike.)",
        "The numbers of the textbook's diagram are those of people.",
        "Those that most textbooks print are the frog's.",
    ),
    notes(
        "active-passive-total",
        "Active force is what the filaments make; passive force is what stretched tissue gives for nothing; the sum is what \
         the tendon feels. The shaded stretch is what this lift uses.",
        "A muscle feels strong in a deep stretch. Which of the two forces is it? (The passive one.)",
        "The rise on the far right shows strength in a stretch.",
        "That part is there in a relaxed muscle too.",
    ),
    notes(
        "force-velocity",
        "In the middle stands a fibre that keeps its length; to the right it shortens, to the left it is pulled longer.",
        "Why can a load be lowered that cannot be lifted? (Lengthening fibres hold more than shortening ones make.)",
        "People have the whole surplus of isolated fibres when a load goes down.",
        "Only a part of it is found in whole people, who hold back.",
    ),
    notes(
        "curve-at-speed",
        "Each line is the same lift at another speed of the joint; the line that is held still is the one to compare with.",
        "Does speed only lower the curve, or does it change its shape as well? (Compare where each line has its peak.)",
        "One strength curve holds for every speed.",
        "A curve that was measured at one speed must not be laid over a load that moves at another.",
    ),
    notes(
        "muscles-on-skeleton",
        "The limb with its muscles at three places of the lift, on one scale: the line from the joint \
         that ends in a right angle is the moment arm of the muscle that the title names, square to its line of pull.",
        "Where does the same force of that muscle make the greatest moment? (Where its arm is longest.)",
        "A moment arm is measured along the bone.",
        "It is measured square to the muscle's line of pull.",
    ),
    notes(
        "moment-arms",
        "Along the bottom is the angle of the joint, upward the moment arm of each muscle about it.",
        "Two muscles pull with the same force: which one turns the joint harder? (The one with the longer moment arm.)",
        "A long moment arm is only an advantage.",
        "It also uses up the muscle's length and speed sooner.",
    ),
    notes(
        "fibre-lengths",
        "The level line is the length at which a fibre makes most force; the curves show how near to it each muscle's fibres work.",
        "Which muscle changes its length most, and why? (The one whose moment arm is longest beside the length of its fibres.)",
        "The angle of this joint alone sets the length of a two-joint muscle.",
        "Turn the other joint, and the whole curve moves.",
    ),
    notes(
        "track-on-lengths",
        "The faint line is the fibre's own law; the strong stretch is the part of it that this lift uses, from start to end.",
        "What would move the stretch to the left? (Another angle of a second joint that the muscle crosses.)",
        "Every lift uses the whole curve.",
        "A lift uses the piece that its joint angles reach, a short or a long one.",
    ),
    notes(
        "track-on-speeds",
        "The same muscle on its other law: how fast its fibres shorten while the joint turns at constant speed.",
        "Why is the stretch not a single point, although the speed of the joint is constant? (The moment arm changes with the angle.)",
        "The speed of the bar is the speed of the fibres.",
        "The moment arm stands between them, and it changes.",
    ),
    notes(
        "force-times-arm",
        "Three curves, each in percent of its own greatest value: force, moment arm, and what both make together.",
        "Why does the product not peak where force does? (Because the moment arm still grows there.)",
        "The length-tension curve is the strength curve.",
        "Neither it nor the moment arm alone is: it is their product, summed over the muscles, less what limb and tissue take.",
    ),
    notes(
        "muscles-add-up",
        "The layers are the moments of the muscles, one upon the other; the line is what is left for the load.",
        "Why does the line not follow the top edge? (The limb's own weight and the tissue of the joint take from the muscles' moment, or add to it.)",
        "The largest layer is the largest muscle of the limb.",
        "Moment arm counts as much as size.",
    ),
    notes(
        "classes",
        "Every curve runs from the start of the lift, at the left, to its end.",
        "Which class is your favourite lift? (Vote first, then show the next figures.)",
        "A muscle has a class.",
        "A class belongs to the lift as it is done: another grip or stance can change it.",
    ),
    notes(
        "ascending-lifts",
        "All curves are drawn over the same range and in percent of their own median, so only the shape counts.",
        "Where will a plain weight feel lightest in these lifts? (Where the curve is highest, towards the end.)",
        "Ascending means that the muscles become stronger.",
        "Mostly the load's moment arm shrinks at the joint that limits.",
    ),
    notes(
        "descending-lifts",
        "The same axes as before; in the end these curves fall.",
        "Would you hang a chain on such a lift? (It adds load just where strength fades.)",
        "Hard at the end means tired at the end.",
        "Strength is less there already in the first repetition.",
    ),
    notes(
        "bell-shaped-lifts",
        "The same axes again; these curves rise and fall.",
        "Which implement follows such a curve? (A cam whose radius changes with the angle.)",
        "A weight is hardest where a curve is low.",
        "With a weight in the hand the load may be bell-shaped too: a bell over a bell may be quite even.",
    ),
    notes(
        "u-shaped-lifts",
        "The same axes; the weak place lies inside the range.",
        "Does another joint give way at the weak place? (Read in the caption which joint gives way there, and which at the end.)",
        "Every dip in a measured curve is a weak place.",
        "It may be noise: it has to return in every trial.",
    ),
    notes(
        "limits-in-a-press",
        "How much more could be held if the muscles at one joint were one percent stronger: the higher its \
         line, the more its strength counts there.",
        "Which muscles would you train for the start of this lift? (Those of the joint whose line is highest there.)",
        "The joint with the smallest muscles is the weak link.",
        "What counts is strength beside what is asked: a joint with strength to spare is none.",
    ),
    notes(
        "limits-in-a-squat",
        "The same question for the legs: where a joint has no line, more strength of that joint helps nothing.",
        "Why does a stronger joint not help where it has no line? (Each joint has to hold its own moment, and another gives way there first.)",
        "More strength of any joint helps everywhere.",
        "Where a joint has no line, more of its strength changes nothing.",
    ),
    notes(
        "who-holds-the-load",
        "One joint of the lift: the layers are the moments of its muscles, the thick line is what load and limbs ask for.",
        "Why does the stack follow the line so closely? (Statics: what is held is in balance at every place; tissue of the joint and \
         muscles that pull the other way are the rest.)",
        "What helps at one joint helps at all.",
        "A muscle may stand in the stack at one joint and work against it at the next.",
    ),
    notes(
        "free-body",
        "Three instants of the lift as a free body: the arrows are forces to scale, the dashed lines the load's line of action and its \
         longer moment arms about the joints, and the rounded moments below are in balance.",
        "Which joint has the longest moment arm at the hardest place? (Read the column of centimetres below the body.)",
        "The same weight asks for the same at every place.",
        "What changes is its distance from the joints.",
    ),
    notes(
        "load-over-class",
        "The unbroken line is what can be held still, the dashed one what the drawn weight asks for: where they come close it is hard.",
        "Where would you put more load, if you could? (Where the gap is wide.)",
        "The heaviest weight tells how strong somebody is over the range.",
        "Held still it tells that of one place; lifted, speed may carry it past a weaker one.",
    ),
    notes(
        "sticking-region",
        "The shaded stretch is where the load, held still, takes nearly as much of the strength as at its hardest place. Below the title \
         stands what the simulated lift does in motion.",
        "Is this stretch the sticking region of a repetition? (No: that one is of a moving bar, from the first peak of its velocity to the slowest place.)",
        "The hardest place is a property of the bar's height.",
        "Another grip or stance moves it, and so does a band; more plain weight held still does not.",
    ),
    notes(
        "sticking-in-motion",
        "Velocity of the bar over its way, with a plain load and with bands at the same hardest effort.",
        "Is the slowest place the hardest place held still? (It need not be: one is of a moving bar, the other of one at rest.)",
        "The slowest place is the hardest place held still.",
        "The bar brings speed along, and needs way to lose it.",
    ),
    notes(
        "grip-width",
        "One value is changed, all others stay: the family of curves shows what it does.",
        "Which grip is best? (That depends on the place of the range that you ask about.)",
        "The strongest grip of a curve is the best one.",
        "Strongest at one place is not strongest everywhere, and nothing here says how a shoulder bears it.",
    ),
    notes(
        "limb-length",
        "The same muscles on longer and shorter limbs.",
        "Is a person with long thighs a bad squatter? (Weaker by this much in the same stance, and free to choose another.)",
        "Long limbs make weak muscles.",
        "Limb length changes moment arms of the load, not the strength of the muscles.",
    ),
    notes(
        "band-law",
        "Tension over length: nothing while the band is slack, a steep beginning, then a flatter rise. Doubling scales \
         the curve: at the same stretch half the length, twice the pull.",
        "Why do two bands with the same name pull differently? (Thickness and rubber scatter; measure your own.)",
        "A band weighs so many kilograms.",
        "Its pull depends on how long it is at that place.",
    ),
    notes(
        "chain-law",
        "Weight of the chain in the air over the height of its hook, in steps as links leave the floor, drawn smooth.",
        "When does a chain stop adding load? (When its last link hangs free.)",
        "The whole chain is load.",
        "What lies on the floor is none, and a chain that never touches it is plain weight.",
    ),
    notes(
        "band-over-ascending",
        "Both setups are equally hard at their hardest place. Compare the gaps elsewhere.",
        "Where are both loads farthest apart? (Compare the gap between them at start and end: a band pulls most where it is longest.)",
        "A band on top of the same plates makes the lift more even only.",
        "It also makes the lift heavier wherever it pulls: where it pulls at the hardest place, take plates off first.",
    ),
    notes(
        "chain-over-ascending",
        "The same comparison with chains instead of bands; both setups are again equally hard at their hardest place.",
        "How does it differ from the band? (A chain's load is a weight: it grows evenly with height.)",
        "The heavier the chain, the more it does over the range.",
        "A chain that hangs free from the start on is plain weight: links that leave the floor on the way count.",
    ),
    notes(
        "flattening",
        "Effort over the range for each setup: a level line would be equally hard everywhere.",
        "Is the most even setup the best one? (For an even effort; strength at one place needs load at that place.)",
        "Even effort comes for nothing.",
        "The hardest effort is the same, but the effort over the whole range is greater.",
    ),
    notes(
        "band-over-descending",
        "A band on a lift whose strength falls: both setups are equally hard where they are hardest.",
        "Where does the band put its load? (At the end, where the lifter is weakest.)",
        "Bands make every lift better.",
        "They fit lifts that grow stronger on the way.",
    ),
    notes(
        "cam",
        "Orange is a stack over a round pulley, brown a stack over a cam that was cut to the strength curve, blue what can be held. At the \
         right the cam turns with the lever: the thick line is the moment arm of the stack, from the axis to its cable's line.",
        "What shape must such a cam have? (A large radius where the lifter is strong, a small one where weak.)",
        "A good cam fits everybody.",
        "The shape of a curve depends on the body: what fits one person need not fit the next.",
    ),
    notes(
        "lowered-held-lifted",
        "Three capacities of the same lifter: lowering slowly, holding, lifting slowly; the level lines are the \
         heaviest load that is lifted, and one above it.",
        "How would you load more than can be lifted, safely? (With weights that are released or lifted by others.)",
        "What can be held can be lifted.",
        "At one slow speed less is lifted than held, and less held than lowered; a whole lift may pass a weak place with its speed.",
    ),
    notes(
        "plateau",
        "Each point is the best set of a day, told as a one-repetition maximum; the straight lines are \
         what remains when the scatter of single days is taken off.",
        "From which week on would you have called it a plateau? (Cover the right half first.)",
        "Two bad sessions in a row are a plateau.",
        "Look at the interval of the slope.",
    ),
    notes(
        "clusters",
        "Mean velocity of every repetition of the same load: in one go, and in small groups with short rests.",
        "What do the short rests give back? (A part of the fatigue, so the next repetitions are faster again.)",
        "Clusters are less work.",
        "The same load is moved as often, only with more speed.",
    ),
    notes(
        "pyramid",
        "One bar a set: w for the warm-up, numbers for the working sets, the repetitions inside each bar.",
        "Why do the repetitions fall? (The load comes nearer to the maximum, and fatigue is left from the sets before.)",
        "The top set is the only one that counts.",
        "Most repetitions are done below it.",
    ),
    notes(
        "people-differ",
        "The same lift of many invented people: same rules, other bodies.",
        "Where do curves differ most between people? (In height first; compare the shapes in percent.)",
        "The average curve is somebody's curve.",
        "It need not be the curve of anybody.",
    ),
    notes(
        "how-sure",
        "Predictions that could have failed, by kind of question: by which factor the model misses the published values.",
        "Would you use it for a question at the top of the list? (To compare two setups perhaps, not for a single number.)",
        "A model that meets the values it was fitted to is right.",
        "That proves nothing; these were not fitted to.",
    ),
    notes(
        "cannot-tell",
        "Questions that are asked of such curves, and cannot be answered by them.",
        "Which of these matters most to your athletes? (Discuss.)",
        "A curve drawn sharply is known sharply.",
        "Its lines are sharper than what is known.",
    ),
];
