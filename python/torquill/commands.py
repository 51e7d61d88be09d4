"""One function a command of the program, made from its own definitions.

Do not edit: `UPDATE=1 cargo test --test suite -- python_commands` writes this file.
Quantities are texts with their unit ("80 kg", "60 cm", "30 deg"); answers are in SI with the unit at the end of each
name, and models/DATA.md says what every name means.
"""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from . import _call
from ._call import Figure, Page

Path = str | os.PathLike[str]

__all__ = [
    "movements",
    "curve",
    "explain",
    "figure",
    "vary",
    "rep",
    "max",
    "plan",
    "progress",
    "fit",
    "pick",
    "lecture",
    "parameters",
    "sources",
    "show",
    "check",
]


def movements(
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    data: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> dict[str, Any]:
    """List the named movements: name, class, joints, axis.

    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param force: Replace files that exist.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--data", data, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.table("movements", options)


def curve(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    load: str | Sequence[str] = (),
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    setup: str | Sequence[str] = (),
    samples: int = 101,
    speed: str | None = None,
    region_share: float = 0.95,
    scatter: bool = False,
    people: int | None = None,
    sex: Literal["woman", "man"] | None = None,
    training: Literal["novice", "intermediate", "advanced"] | None = None,
    seed: int = 1,
    detail: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> dict[str, Any]:
    """Capacity, demand and effort over the range of a movement.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param load: Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"; several add up (MASS).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high. Your own by readings of length and pull, "mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg", or by a CSV file of them, "mine: readings.csv" (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, ratio 2, from rack-high", "spotter 150 N", "cam fitted" (kinds: bar, plates, plate, collars, dumbbell, belt, body, band, chain, cable, cam, lever, sled, lowering, spotter, counterweight) (KIND ...).
    :param setup: Setup from a model file (FILE).
    :param samples: Samples of the range (N).
    :param speed: Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers (SPEED).
    :param region_share: Share of the greatest effort from which a place belongs to the hardest part (SHARE).
    :param scatter: Show what plausible versions of a fitted lifter do: the interval that holds four in five (see: torquill fit).
    :param people: Invent this many people and show how they differ: around the lifter, or with --sex women or men of a training (N).
    :param sex: Women or men are invented, around the one of the published tables.
    :param training: Training of these women or men: without one they are novices.
    :param seed: Seed of the people: the same number invents the same ones (N).
    :param detail: Add joint angles, torques, reactions and muscles to each sample of JSON; CSV has a row a sample and muscle then.
    :param units: Units of the table.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param force: Replace files that exist.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--load", load, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--setup", setup, None),
        ("--samples", samples, 101),
        ("--speed", speed, None),
        ("--region-share", region_share, 0.95),
        ("--scatter", scatter, None),
        ("--people", people, None),
        ("--sex", sex, None),
        ("--training", training, None),
        ("--seed", seed, 1),
        ("--detail", detail, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.table("curve", options)


def explain(
    movement: str,
    *,
    at: str,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    load: str | Sequence[str] = (),
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    setup: str | Sequence[str] = (),
    speed: str | None = None,
    units: Literal["metric", "us"] = "metric",
    output: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> Page:
    """Print the whole calculation of one pose, to be followed with a pocket calculator.

    :param movement: Name of the movement (see: torquill movements).
    :param at: Where: from the start along the way ("10 cm"), the angle of the joint ("60 deg"), a share of the range (40%) (PLACE).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param load: Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"; several add up (MASS).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high. Your own by readings of length and pull, "mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg", or by a CSV file of them, "mine: readings.csv" (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, ratio 2, from rack-high", "spotter 150 N", "cam fitted" (kinds: bar, plates, plate, collars, dumbbell, belt, body, band, chain, cable, cam, lever, sled, lowering, spotter, counterweight) (KIND ...).
    :param setup: Setup from a model file (FILE).
    :param speed: Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers (SPEED).
    :param units: Units of place, load and result; the calculation itself is in SI.
    :param output: File to write instead of standard output (FILE).
    :param force: Replace a file that exists.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the page as HTML.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--at", at, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--load", load, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--setup", setup, None),
        ("--speed", speed, None),
        ("--units", units, "metric"),
        ("--output", output, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.page("explain", options)


def figure(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    load: str | Sequence[str] = (),
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    setup: str | Sequence[str] = (),
    versus: Sequence[Mapping[str, Any]] = (),
    as_loaded: bool = False,
    samples: int = 101,
    speed: str | None = None,
    region_share: float = 0.95,
    scatter: bool = False,
    people: int | None = None,
    sex: Literal["woman", "man"] | None = None,
    training: Literal["novice", "intermediate", "advanced"] | None = None,
    seed: int = 1,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    draw: Literal["curve", "muscles", "free-body", "holders"] = "curve",
    units: Literal["metric", "us"] = "metric",
    models: Path | None = None,
) -> Figure:
    """Draw capacity, demand, effort and the hardest part as SVG or PNG.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param load: Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"; several add up (MASS).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high. Your own by readings of length and pull, "mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg", or by a CSV file of them, "mine: readings.csv" (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, ratio 2, from rack-high", "spotter 150 N", "cam fitted" (kinds: bar, plates, plate, collars, dumbbell, belt, body, band, chain, cable, cam, lever, sled, lowering, spotter, counterweight) (KIND ...).
    :param setup: Setup from a model file (FILE).
    :param versus: Further setups to compare with, each a mapping of load, band, chain, item, setup.
    :param as_loaded: Compare setups with the weights as they are, not made equally hard at their hardest place.
    :param samples: Samples of the range (N).
    :param speed: Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers (SPEED).
    :param region_share: Share of the greatest effort from which a place belongs to the hardest part (SHARE).
    :param scatter: Show what plausible versions of a fitted lifter do: the interval that holds four in five (see: torquill fit).
    :param people: Invent this many people and show how they differ: around the lifter, or with --sex women or men of a training (N).
    :param sex: Women or men are invented, around the one of the published tables.
    :param training: Training of these women or men: without one they are novices.
    :param seed: Seed of the people: the same number invents the same ones (N).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param draw: What is drawn.
    :param units: Units of the axes.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the figure as SVG, with caption, alternative text and data.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--load", load, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--setup", setup, None),
        ("--versus", versus, None),
        ("--as-loaded", as_loaded, None),
        ("--samples", samples, 101),
        ("--speed", speed, None),
        ("--region-share", region_share, 0.95),
        ("--scatter", scatter, None),
        ("--people", people, None),
        ("--sex", sex, None),
        ("--training", training, None),
        ("--seed", seed, 1),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--draw", draw, "curve"),
        ("--units", units, "metric"),
        ("--models", models, None),
    ]
    return _call.figure(options)


def vary(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    param: str | Sequence[str] = (),
    values: str | Sequence[str] = (),
    why: bool = False,
    why_figure: Path | bool | None = None,
    curves: bool = False,
    rank: bool = False,
    by: float = 5,
    measure: Literal["heaviest", "peak", "start", "end"] | None = None,
    load: str | Sequence[str] = (),
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    setup: str | Sequence[str] = (),
    samples: int = 101,
    speed: str | None = None,
    region_share: float = 0.95,
    output: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """What a changed value does to the curve, and which values matter most.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param param: Path of the value to change, as --set takes it; twice for a map of two (PATH).
    :param values: Its values: a list such as -20%,0%,+20%, or a range with a count, "50 cm..90 cm:5" (LIST|RANGE).
    :param why: List all parts of every change (muscle by muscle, factor by factor) in place of the curves' figures.
    :param why_figure: Picture of the parts of the largest change (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param curves: The curve of every value, sample by sample, in place of its figures (CSV and --data), or with them (JSON).
    :param rank: Rank every value of the movement by what the same relative change does.
    :param by: Relative change for --rank: 5% or 5 (PERCENT).
    :param measure: What maps show and --rank ranks by; the heaviest weight if capacity is a force, else the peak.
    :param load: Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"; several add up (MASS).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high. Your own by readings of length and pull, "mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg", or by a CSV file of them, "mine: readings.csv" (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, ratio 2, from rack-high", "spotter 150 N", "cam fitted" (kinds: bar, plates, plate, collars, dumbbell, belt, body, band, chain, cable, cam, lever, sled, lowering, spotter, counterweight) (KIND ...).
    :param setup: Setup from a model file (FILE).
    :param samples: Samples of the range (N).
    :param speed: Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers (SPEED).
    :param region_share: Share of the greatest effort from which a place belongs to the hardest part (SHARE).
    :param output: Picture (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of tables and picture.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--param", param, None),
        ("--values", values, None),
        ("--why", why, None),
        ("--why-figure", why_figure, None),
        ("--curves", curves, None),
        ("--rank", rank, None),
        ("--by", by, 5),
        ("--measure", measure, None),
        ("--load", load, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--setup", setup, None),
        ("--samples", samples, 101),
        ("--speed", speed, None),
        ("--region-share", region_share, 0.95),
        ("--output", output, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("vary", options, ["--why-figure", "--output"])


def rep(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    load: str = "100%",
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    lowering: str | None = None,
    pause: str | None = None,
    from_: float = 0,
    to: float = 1,
    no_enhancement: bool = False,
    hand_over: bool = False,
    versus_plain: bool = False,
    output: Path | bool | None = None,
    over_time: Path | bool | None = None,
    animation: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Simulate one repetition: velocity, force, sticking region in motion.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param load: Plain load as a mass, "80 kg", or as a share of the maximum with this setup, 85% (MASS|SHARE).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, from rack-high", "counterweight 20 kg", "sled 60 kg", "spotter 150 N" (KIND ...).
    :param lowering: Time of the lowering; "0 s" starts from a hold at the bottom. Without it 2 s, and no lowering in lifts that begin at the floor or in a hang (TIME).
    :param pause: Hold at the bottom for this long; touch and go without it (TIME).
    :param from_: Start of the lift in the range: 25% or 0.25 (SHARE).
    :param to: End of the lift in the range: 75% or 0.75 (SHARE).
    :param no_enhancement: Leave out the extra force that lowering leaves behind.
    :param hand_over: Spotters take the load at the bottom.
    :param versus_plain: Compare with plain weight of the same hardest effort: velocity, sticking region, end of the lift.
    :param output: Picture of velocity and force over the way of the load (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param over_time: The same over time (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param animation: Animated picture without script (.svg); it stands still where motion is unwelcome; True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of text and axes.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--load", load, "100%"),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--lowering", lowering, None),
        ("--pause", pause, None),
        ("--from", from_, 0),
        ("--to", to, 1),
        ("--no-enhancement", no_enhancement, None),
        ("--hand-over", hand_over, None),
        ("--versus-plain", versus_plain, None),
        ("--output", output, None),
        ("--over-time", over_time, None),
        ("--animation", animation, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("rep", options, ["--output", "--over-time", "--animation"])


def max(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    lowering: str | None = None,
    pause: str | None = None,
    from_: float = 0,
    to: float = 1,
    no_enhancement: bool = False,
    step: str = "2.5 kg",
    eccentric: str | None = None,
    velocities: bool = False,
    to_load: str | None = None,
    scatter: bool = False,
    people: int | None = None,
    sex: Literal["woman", "man"] | None = None,
    training: Literal["novice", "intermediate", "advanced"] | None = None,
    seed: int = 1,
    part: str | None = None,
    output: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Find the one-repetition maximum, the eccentric one, mean velocities over load.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, from rack-high", "counterweight 20 kg", "sled 60 kg", "spotter 150 N" (KIND ...).
    :param lowering: Time of the lowering; "0 s" starts from a hold at the bottom. Without it 2 s, and no lowering in lifts that begin at the floor or in a hang (TIME).
    :param pause: Hold at the bottom for this long; touch and go without it (TIME).
    :param from_: Start of the lift in the range: 25% or 0.25 (SHARE).
    :param to: End of the lift in the range: 75% or 0.75 (SHARE).
    :param no_enhancement: Leave out the extra force that lowering leaves behind.
    :param step: Smallest step that can be loaded (MASS).
    :param eccentric: Also the maximum that is lowered under control in this time (TIME).
    :param velocities: Also mean velocities over 30 to 100 % of the maximum.
    :param to_load: Strength that a known maximum implies, as a factor on this lifter's (MASS).
    :param scatter: Show what plausible versions of a fitted lifter do: the interval that holds four in five (see: torquill fit).
    :param people: Invent this many people and show how they differ: around the lifter, or with --sex women or men of a training (N).
    :param sex: Women or men are invented, around the one of the published tables.
    :param training: Training of these women or men: without one they are novices.
    :param seed: Seed of the people: the same number invents the same ones (N).
    :param part: Of these people only a share, such as 3/100: the shares together are the whole (K/N).
    :param output: Picture of mean velocity over load (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of the text.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--lowering", lowering, None),
        ("--pause", pause, None),
        ("--from", from_, 0),
        ("--to", to, 1),
        ("--no-enhancement", no_enhancement, None),
        ("--step", step, "2.5 kg"),
        ("--eccentric", eccentric, None),
        ("--velocities", velocities, None),
        ("--to-load", to_load, None),
        ("--scatter", scatter, None),
        ("--people", people, None),
        ("--sex", sex, None),
        ("--training", training, None),
        ("--seed", seed, 1),
        ("--part", part, None),
        ("--output", output, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("max", options, ["--output"])


def plan(
    movement: str,
    *,
    lifter: str | None = None,
    set: str | Sequence[str] | Mapping[str, str] = (),
    method: str | None = None,
    one_rm: str | None = None,
    log: str | None = None,
    athlete: str | None = None,
    dates: Literal["day-first", "month-first"] | None = None,
    skip_bad_rows: bool = False,
    team: Path | None = None,
    training_months: float | None = None,
    age: float | None = None,
    injured: bool = False,
    unwell: bool = False,
    last_overload: int | None = None,
    gym: str | None = None,
    load: str | None = None,
    sets: int | None = None,
    reps: int | None = None,
    total_reps: int | None = None,
    group: int | None = None,
    rest_within: str | None = None,
    rest: str | None = None,
    rir: int | None = None,
    velocity_loss: str | None = None,
    max_per_week: int | None = None,
    band: str | Sequence[str] = (),
    chain: str | Sequence[str] = (),
    item: str | Sequence[str] = (),
    effort: float = 0.85,
    weeks: int | None = None,
    start: str | None = None,
    output: Path | bool | None = None,
    fatigue: Path | bool | None = None,
    loads: Path | bool | None = None,
    sheet: Path | None = None,
    paper: Literal["a4", "letter"] | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Loads, rests and cautions of a session.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron; reference-man if left out (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param method: straight, pyramid, clusters, overloaded-lowering, bands, chains, or all. Left out it is straight (METHOD).
    :param one_rm: The one-repetition maximum; simulated if neither this nor a log is given. Of pull-up and calf raise it is what is added to the body (MASS).
    :param log: Training log to take the maximum from (a file, or rising, stalled, gappy) (FILE|NAME).
    :param athlete: Whose sets, where the log holds several athletes (NAME).
    :param dates: What stands first in dates such as 1/8/2024, if no date of the log proves it.
    :param skip_bad_rows: Leave rows out that cannot be read, and say which.
    :param team: Team to plan for: a CSV file with a row a person; -o names the folder of its sheets. Columns: name, sex, mass, height, training_months (if wished age, and yes or no under injured and unwell), and one a lift with its 1RM, a set such as "100 kg x 5", or nothing where it is to be tested. MOVEMENT is one of the lifts, or `all` (FILE).
    :param training_months: Months of steady training; if left out, as the lifter's file says (a named one), or none (MONTHS).
    :param age: Age (YEARS).
    :param injured: The lifter is injured or in pain.
    :param unwell: The lifter is ill, unusually sore, or back from a break.
    :param last_overload: Days since the last overloaded lowering of the same muscles (DAYS).
    :param gym: Gym whose bars, plates, machines, bands and chains are used: a built-in name, or a file ending in .ron (NAME|FILE).
    :param load: Load to use instead of the usual one (MASS).
    :param sets: Sets (N).
    :param reps: Repetitions of a set (N).
    :param total_reps: All repetitions together (clusters) (N).
    :param group: Repetitions of a group (clusters) (N).
    :param rest_within: Rest inside a cluster set (TIME).
    :param rest: Rest between sets (TIME).
    :param rir: Repetitions in reserve at which a set ends (N).
    :param velocity_loss: Loss of velocity against the fastest repetition at which a set ends, such as 20% (SHARE).
    :param max_per_week: Most working sets of the lift in a week (N).
    :param band: Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high (BAND).
    :param chain: Chain: NAME[:COUNT a side], such as chain-10mm:1 (CHAIN).
    :param item: Any other implement: "cable 40 kg, from rack-high", "counterweight 20 kg", "sled 60 kg", "spotter 150 N" (KIND ...).
    :param effort: Hardest effort of a bands or chains setup, share of all the lifter has (SHARE).
    :param weeks: A block of so many weeks (N).
    :param start: Day of the first session, year-month-day: tells how old a log is, and gives a block its dates (DATE).
    :param output: Picture of the predicted velocities (.svg or .png); with --team the folder of the sheets; True for a Figure under this name in the answer (FILE).
    :param fatigue: Picture of the joints' fatigue over time (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param loads: Picture of load and repetitions, set by set (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param sheet: One-page sheet to print: .html (a page a session), .svg or .png (one session) (FILE).
    :param paper: Paper of the sheet; letter with --units us if left out.
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of plates and text.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, None),
        ("--set", set, None),
        ("--method", method, None),
        ("--one-rm", one_rm, None),
        ("--log", log, None),
        ("--athlete", athlete, None),
        ("--dates", dates, None),
        ("--skip-bad-rows", skip_bad_rows, None),
        ("--team", team, None),
        ("--training-months", training_months, None),
        ("--age", age, None),
        ("--injured", injured, None),
        ("--unwell", unwell, None),
        ("--last-overload", last_overload, None),
        ("--gym", gym, None),
        ("--load", load, None),
        ("--sets", sets, None),
        ("--reps", reps, None),
        ("--total-reps", total_reps, None),
        ("--group", group, None),
        ("--rest-within", rest_within, None),
        ("--rest", rest, None),
        ("--rir", rir, None),
        ("--velocity-loss", velocity_loss, None),
        ("--max-per-week", max_per_week, None),
        ("--band", band, None),
        ("--chain", chain, None),
        ("--item", item, None),
        ("--effort", effort, 0.85),
        ("--weeks", weeks, None),
        ("--start", start, None),
        ("--output", output, None),
        ("--fatigue", fatigue, None),
        ("--loads", loads, None),
        ("--sheet", sheet, None),
        ("--paper", paper, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("plan", options, ["--output", "--fatigue", "--loads"])


def progress(
    *,
    log: str,
    lift: str | None = None,
    athlete: str | None = None,
    dates: Literal["day-first", "month-first"] | None = None,
    skip_bad_rows: bool = False,
    output: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Read a training log: rising, flat or falling, and how sure.

    :param log: Training log: a CSV file, or the name of an invented one (rising, stalled, gappy) (FILE|NAME).
    :param lift: Lift to look at, where the log holds several (LIFT).
    :param athlete: Whose sets, where the log holds several athletes (NAME).
    :param dates: What stands first in dates such as 1/8/2024, if no date of the log proves it.
    :param skip_bad_rows: Leave rows out that cannot be read, and say which.
    :param output: Picture of the trend (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of text and picture.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("--log", log, None),
        ("--lift", lift, None),
        ("--athlete", athlete, None),
        ("--dates", dates, None),
        ("--skip-bad-rows", skip_bad_rows, None),
        ("--output", output, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("progress", options, ["--output"])


def fit(
    *,
    name: str,
    sex: Literal["woman", "man"],
    mass: str,
    height: str,
    training_months: float = 0,
    age: float | None = None,
    lifts: str | Sequence[str] = (),
    holds: str | Sequence[str] = (),
    dynamometers: str | Sequence[str] = (),
    limbs: str | Sequence[str] = (),
    log: str | None = None,
    athlete: str | None = None,
    dates: Literal["day-first", "month-first"] | None = None,
    skip_bad_rows: bool = False,
    velocities: str | None = None,
    traces: str | Sequence[str] = (),
    columns: str = "time,position",
    seed: int = 1,
    output: Path | None = None,
    picture: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Write a lifter of one's own from a few measurements: 1RMs, sets, holds, torques.

    :param name: What the person is called in the file (TEXT).
    :param sex: Which published tables of the body are taken.
    :param mass: Body mass (MASS).
    :param height: Standing height (LENGTH).
    :param training_months: Months of steady training (N).
    :param age: Years of age (YEARS).
    :param lifts: A maximum or a set near failure: squat="95 kg", bench-press="60 kg x 3", deadlift="110 kg x 2 @ rir 1" (LIFT=LOAD).
    :param holds: A force held at a height: bench-press@10cm="700 N"; "350 N one hand" for one hand alone (LIFT@HEIGHT=FORCE).
    :param dynamometers: A torque held on a dynamometer: knee-extension@60deg="180 N m" (LIFT@ANGLE=TORQUE).
    :param limbs: A limb measured from joint to joint: forearm="25 cm" (LIMB=LENGTH).
    :param log: Training log: of every lift the best set of the last day that notes what was left (a CSV file, or an invented one) (FILE|NAME).
    :param athlete: Whose sets, where the log holds several athletes (NAME).
    :param dates: What stands first in dates such as 1/8/2024, if no date of the log proves it.
    :param skip_bad_rows: Leave rows out that cannot be read, and say which.
    :param velocities: Load and velocity: a training log with velocities, of lifts that have a published equation (FILE).
    :param traces: A bar's trace of a lift done as fast as possible: squat="80 kg @ bar.csv" (a CSV file, or "invented-squat") (LIFT=LOAD@FILE).
    :param columns: Columns of time and position in a trace; units stand behind their names, else they are s and m (TIME,POSITION).
    :param seed: Seed of the versions that are drawn (N).
    :param output: File of the lifter (.ron), for --lifter of any command (FILE).
    :param picture: Picture of all maxima with their intervals (.svg or .png); True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units of the text.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("--name", name, None),
        ("--sex", sex, None),
        ("--mass", mass, None),
        ("--height", height, None),
        ("--training-months", training_months, 0),
        ("--age", age, None),
        ("--lift", lifts, None),
        ("--hold", holds, None),
        ("--dynamometer", dynamometers, None),
        ("--limb", limbs, None),
        ("--log", log, None),
        ("--athlete", athlete, None),
        ("--dates", dates, None),
        ("--skip-bad-rows", skip_bad_rows, None),
        ("--velocities", velocities, None),
        ("--trace", traces, None),
        ("--columns", columns, "time,position"),
        ("--seed", seed, 1),
        ("--output", output, None),
        ("--picture", picture, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("fit", options, ["--picture"])


def pick(
    movement: str,
    *,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    gym: str,
    goal: Literal["flattest", "most-load", "share", "profile"] = "flattest",
    effort: str = "80%",
    share: str | None = None,
    at: str = "end",
    limit_at: str | None = None,
    profile: str | None = None,
    load_at: str | Sequence[str] = (),
    only: str | Sequence[str] = (),
    hung: int = 2,
    pieces: int = 12,
    askew: bool = False,
    both_ways: bool = False,
    samples: int = 101,
    speed: str | None = None,
    region_share: float = 0.95,
    scatter: bool = False,
    top: int = 10,
    all: bool = False,
    sheet: Path | None = None,
    output: Path | bool | None = None,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    models: Path | None = None,
) -> dict[str, Any]:
    """Rank the setups that a gym can build: plates, bands and chains for this lifter and lift.

    :param movement: Name of the movement (see: torquill movements).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param gym: Gym: a built-in name, or a file ending in .ron (NAME|FILE).
    :param goal: What is best.
    :param effort: Effort at the hardest place, of all that the lifter can hold there (SHARE).
    :param share: Share of the load at the end from bands and chains: 10%..35%, ..35%, or any; for --goal share the one wanted (SHARES).
    :param at: Where load or share counts (most-load, share): start, middle, end, or 0 to 1 (PLACE).
    :param limit_at: Where --effort is the limit (most-load); elsewhere up to 100 % then (PLACE).
    :param profile: Wanted effort over the range: "0=60%, 0.5=80%, 1=90%" (POINTS).
    :param load_at: Limit of the load at a place: "start=40 kg..60 kg", "end=..120 kg" (LIMIT).
    :param only: Use only these: bands, chains, plain, or names of pieces (NAME).
    :param hung: Most bands and chains a side (N).
    :param pieces: Most pieces a side, plates included (N).
    :param askew: Allow bands that pull a free bar far forward or back.
    :param both_ways: Allow bands from above together with bands from below or chains.
    :param samples: Samples of the range (N).
    :param speed: Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers (SPEED).
    :param region_share: Share of the greatest effort from which a place belongs to the hardest part (SHARE).
    :param scatter: Show what plausible versions of a fitted lifter do: the interval that holds four in five (see: torquill fit).
    :param top: How many setups to list with --all, in JSON and in CSV (N).
    :param all: Print the long ranking in place of the card.
    :param sheet: The card as a page to print: .html, .svg or .png (FILE).
    :param output: Draw the first three against plain weight: .svg or .png; True for a Figure under this name in the answer (FILE).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param units: Units that come first.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--gym", gym, None),
        ("--goal", goal, "flattest"),
        ("--effort", effort, "80%"),
        ("--share", share, None),
        ("--at", at, "end"),
        ("--limit-at", limit_at, None),
        ("--profile", profile, None),
        ("--load-at", load_at, None),
        ("--only", only, None),
        ("--hung", hung, 2),
        ("--pieces", pieces, 12),
        ("--askew", askew, None),
        ("--both-ways", both_ways, None),
        ("--samples", samples, 101),
        ("--speed", speed, None),
        ("--region-share", region_share, 0.95),
        ("--scatter", scatter, None),
        ("--top", top, 10),
        ("--all", all, None),
        ("--sheet", sheet, None),
        ("--output", output, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--models", models, None),
    ]
    return _call.table("pick", options, ["--output"])


def lecture(
    *,
    output: Path | None = None,
    lifter: str = "reference-man",
    units: Literal["metric", "us"] = "metric",
    about: str | None = None,
    steps: bool = False,
    size: str = "slide",
    theme: Literal["light", "dark", "print"] = "light",
    live_text: bool = False,
    force: bool = False,
    models: Path | None = None,
) -> dict[str, Figure]:
    """Write the whole set of lecture figures with captions, alternative text, data and a page of all.

    :param output: Folder to write into; made if it is not there (DIR).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param units: Units of axes and words.
    :param about: A lecture on one lift (see: torquill movements) (MOVEMENT).
    :param steps: Write each picture also step by step as it is built up (.step-1.png and so on).
    :param size: slide (1920x1080), page (A4 across) or WIDTHxHEIGHT in pixels (SIZE).
    :param theme: Light or dark ground, or black and grey with thin lines for print.
    :param live_text: Keep letters as letters in SVG (needs the font Inter where it is shown) instead of outlines.
    :param force: Replace files that exist.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the figures by name, with caption, alternative text and data.
    """
    options: list[_call.Option] = [
        ("--output", output, None),
        ("--lifter", lifter, "reference-man"),
        ("--units", units, "metric"),
        ("--for", about, None),
        ("--steps", steps, None),
        ("--size", size, "slide"),
        ("--theme", theme, "light"),
        ("--live-text", live_text, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.lecture(options)


def parameters(
    movement: str | None = None,
    *,
    find: str | None = None,
    lifter: str = "reference-man",
    set: str | Sequence[str] | Mapping[str, str] = (),
    long: bool = False,
    units: Literal["metric", "us"] = "metric",
    data: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> dict[str, Any]:
    """List every value that can be set: path, meaning, value, plausible range, where it comes from.

    :param movement: Name of the movement; all of them without one.
    :param find: Only values with this word, or all of these words, in path or meaning (WORD).
    :param lifter: Lifter: a built-in name, or a file ending in .ron (NAME|FILE).
    :param set: Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%; or a mapping of paths to values (PATH=VALUE).
    :param long: Say of every value what it means and where it comes from, as a short list does anyway.
    :param units: Units of the table.
    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param force: Replace files that exist.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("", movement, None),
        ("--find", find, None),
        ("--lifter", lifter, "reference-man"),
        ("--set", set, None),
        ("--long", long, None),
        ("--units", units, "metric"),
        ("--data", data, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.table("parameters", options)


def sources(
    *,
    data: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> dict[str, Any]:
    """List the publications behind the numbers.

    :param data: Write the table, as --format csv prints it, to this file (.csv or .xlsx) and how it was made with it (FILE).
    :param force: Replace files that exist.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: the keys of the program's JSON; every list of objects is a dict of NumPy columns.
    """
    options: list[_call.Option] = [
        ("--data", data, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.table("sources", options)


def show(
    kind: Literal["lifters", "movements", "muscles", "gyms", "bands", "chains", "logs", "setups", "segments", "curves", "sarcomeres", "published"] | None = None,
    name: str | None = None,
    *,
    fields: bool = False,
    output: Path | None = None,
    force: bool = False,
    models: Path | None = None,
) -> str:
    """List what the program holds by name, and print any file of it as a starting point.

    :param kind: Kind of file: lifters, movements, muscles, gyms, bands, chains, logs and the tables beside them.
    :param name: Name of the file to print, or of a muscle.
    :param fields: Print the records of the kind with their fields instead, as models/README.md explains them.
    :param output: File to write it to (FILE).
    :param force: Replace that file if it is there.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: what the program prints.
    """
    options: list[_call.Option] = [
        ("", kind, None),
        ("", name, None),
        ("--fields", fields, None),
        ("--output", output, None),
        ("--force", force, None),
        ("--models", models, None),
    ]
    return _call.text("show", options)


def check(
    file: Path,
    *,
    models: Path | None = None,
) -> str:
    """Read a model file and say what is wrong, line by line.

    :param file: Model file to read, or a folder: all model files in it.
    :param models: Folder of model files that adds to the built-in ones or replaces those of the same name (DIR).
    :returns: what the program prints.
    """
    options: list[_call.Option] = [
        ("", file, None),
        ("--models", models, None),
    ]
    return _call.text("check", options)
