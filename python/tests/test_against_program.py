"""The package against the program: every number of JSON and CSV, to the bit."""

import csv
import io
import json
import math
import os
import pathlib
import subprocess
import warnings

import numpy as np
import pytest

import torquill

PROGRAM = os.environ["TORQUILL_PROGRAM"]
ROOT = pathlib.Path(__file__).resolve().parents[2]


def answer(*words):
    """What the program prints as JSON."""
    done = subprocess.run([PROGRAM, *words, "--format", "json"], capture_output=True, text=True)
    assert done.stdout, done.stderr
    return json.loads(done.stdout)


def rows(*words):
    """What the program prints as CSV."""
    done = subprocess.run([PROGRAM, *words, "--format", "csv"], capture_output=True, text=True, check=True)
    return list(csv.DictReader(io.StringIO(done.stdout)))


CALLS = [
    (lambda: torquill.movements(), ["movements"]),
    (lambda: torquill.sources(), ["sources"]),
    (lambda: torquill.parameters("biceps-curl", find="arm"), ["parameters", "biceps-curl", "--find", "arm"]),
    (lambda: torquill.curve("biceps-curl", load="8 kg"), ["curve", "biceps-curl", "--load", "8 kg"]),
    (
        lambda: torquill.curve("squat", load="60 kg", detail=True, samples=11),
        ["curve", "squat", "--load", "60 kg", "--detail", "--samples", "11"],
    ),
    (
        lambda: torquill.curve("bench-press", set={"technique.grip_width": "60 cm"}, speed="-0.3 m/s"),
        ["curve", "bench-press", "--set", "technique.grip_width=60 cm", "--speed", "-0.3 m/s"],
    ),
    (
        lambda: torquill.vary("biceps-curl", param="segments.forearm.length", values="-5%,+5%", curves=True, samples=5),
        ["vary", "biceps-curl", "--param", "segments.forearm.length", "--values", "-5%,+5%", "--curves", "--samples", "5"],
    ),
    (lambda: torquill.vary("biceps-curl", rank=True), ["vary", "biceps-curl", "--rank"]),
    (lambda: torquill.rep("bench-press", load="90%", from_=0.1), ["rep", "bench-press", "--load", "90%", "--from", "0.1"]),
    (lambda: torquill.max("bench-press", velocities=True), ["max", "bench-press", "--velocities"]),
    (
        lambda: torquill.plan("bench-press", one_rm="140 kg", training_months=48, method="clusters"),
        ["plan", "bench-press", "--one-rm", "140 kg", "--training-months", "48", "--method", "clusters"],
    ),
    (lambda: torquill.progress(log="stalled"), ["progress", "--log", "stalled"]),
    (
        lambda: torquill.fit(name="a", sex="woman", mass="70 kg", height="168 cm", lifts=["squat=95 kg", "bench-press=60 kg x 3"]),
        ["fit", "--name", "a", "--sex", "woman", "--mass", "70 kg", "--height", "168 cm"]
        + ["--lift", "squat=95 kg", "--lift", "bench-press=60 kg x 3"],
    ),
    (lambda: torquill.pick("bench-press", gym="garage"), ["pick", "bench-press", "--gym", "garage"]),
]


def plain(value):
    """A NumPy value as JSON holds it."""
    if isinstance(value, np.generic):
        value = value.item()
    return None if isinstance(value, float) and math.isnan(value) else value


def same(ours, theirs, place=""):
    """Holds an answer to JSON: columns to the values of their rows, everything else to itself."""
    if isinstance(theirs, list) and theirs and isinstance(theirs[0], dict):
        return sum(same_column(ours, theirs, name, f"{place}.{name}") for name in ours)
    if isinstance(theirs, dict):
        assert set(theirs) <= set(ours), place
        return sum(same(ours[name], inner, f"{place}.{name}") for name, inner in theirs.items())
    assert ours == theirs, place
    return 1


def same_column(columns, theirs, name, place):
    column = columns[name]
    assert len(column) == len(theirs), place
    for index, row in enumerate(theirs):
        value = row
        for key in name.split("."):
            value = value.get(key) if isinstance(value, dict) else None
        held = plain(column[index])
        assert held == value or (value is None and held == ""), f"{place} of row {index}: {held} and {value}"
    return len(theirs)


@pytest.mark.parametrize(("function", "words"), CALLS, ids=[" ".join(words[:2]) for _, words in CALLS])
def test_answers_are_those_of_the_program(function, words):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", torquill.TorquillWarning)
        ours = function()
    theirs = answer(*words)
    if isinstance(theirs, dict) and "provenance" in theirs:
        assert ours["provenance"]["arguments"] == theirs["provenance"]["arguments"]
    if words[0] == "sources":
        theirs = [{"key": key, **row} for key, row in theirs.items()]
    if isinstance(theirs, list):
        theirs = {words[0]: theirs}
    assert same(ours, theirs) > 10


def numbers_alike(columns, table, left_out=()):
    """Holds columns to CSV, number by number."""
    counted = 0
    for name in table[0]:
        if name in left_out:
            continue
        for index, row in enumerate(table):
            value = plain(columns[name][index])
            if isinstance(value, float):
                assert value == float(row[name]), f"{name} of row {index}"
                counted += 1
    assert counted > 100


def test_tables_inside_tables_are_those_of_csv():
    detail = torquill.curve("bench-press", load="55 kg", detail=True, samples=11)
    table = rows("curve", "bench-press", "--load", "55 kg", "--detail", "--samples", "11")
    muscles = detail["samples.muscles"]
    assert len(muscles["muscle"]) == len(table)
    assert list(muscles["muscle"]) == [row["muscle"] for row in table]
    by_joint = [name for name in table[0] if name.startswith(("joint_", "muscle_torques_nm.", "load_lever", "reactions."))]
    numbers_alike(muscles, table, by_joint)
    words = ["vary", "biceps-curl", "--param", "segments.forearm.length", "--values", "-5%,+5%", "--curves"]
    family = torquill.vary("biceps-curl", param="segments.forearm.length", values="-5%,+5%", curves=True)
    varied = [row for row in rows(*words) if row["is_baseline"] == "false"]
    numbers_alike(family["variants.samples"], varied, ["parameter"])


def test_columns_have_the_types_of_their_values():
    samples = torquill.curve("biceps-curl", load="8 kg")["samples"]
    assert samples["effort"].dtype == np.float64
    assert np.isnan(samples["position_m"]).all()
    family = torquill.vary("biceps-curl", param="segments.forearm.length", values="-5%,+5%")
    assert family["variants"]["is_baseline"].dtype == bool
    assert family["variants"]["value"].dtype.kind == "U"
    plan = torquill.plan("bench-press", one_rm="140 kg", training_months=48)
    assert plan["sessions.sets"]["repetitions"].dtype == np.int64
    assert set(plan["sessions.sets"]["session"]) == set(plan["sessions"]["session"])


def test_figures_are_those_of_the_program(tmp_path):
    figure = torquill.figure("bench-press", load="55 kg", versus=[{"load": "35 kg", "band": ["loop-14mm:1"]}])
    words = ["bench-press", "--load", "55 kg", "--versus", "--load", "35 kg", "--band", "loop-14mm:1"]
    subprocess.run([PROGRAM, "figure", *words, "--words", "-o", "f.svg"], cwd=tmp_path, check=True)
    assert figure.svg == (tmp_path / "f.svg").read_text()
    assert figure._repr_svg_() == figure.svg
    assert figure.alternative_text == (tmp_path / "f.alt.txt").read_text().strip()
    assert figure.title and figure.caption.startswith(figure.title)
    assert set(figure.data["setup_number"]) == {1.0, 2.0}
    figure.save(tmp_path / "saved.svg")
    with pytest.raises(FileExistsError):
        figure.save(tmp_path / "saved.svg")
    both = torquill.vary("biceps-curl", param="segments.forearm.length", values="-5%,+5%", output=True, why_figure=True)
    assert both["output"].svg.startswith("<svg") and both["why_figure"].svg != both["output"].svg
    named = tmp_path / "v.svg"
    drawn = torquill.rep("bench-press", load="90%", output=named)
    assert named.exists() and "output" not in drawn


def test_a_page_and_texts_are_those_of_the_program(tmp_path):
    page = torquill.explain("biceps-curl", at="60 deg", load="8 kg")
    subprocess.run([PROGRAM, "explain", "biceps-curl", "--at", "60 deg", "--load", "8 kg", "-o", "p.html"], cwd=tmp_path, check=True)
    assert page._repr_html_() == (tmp_path / "p.html").read_text()
    shown = subprocess.run([PROGRAM, "show", "lifters"], capture_output=True, text=True, check=True)
    assert torquill.show("lifters") == shown.stdout


def test_faults_are_raised_in_the_words_of_the_program():
    with pytest.raises(torquill.BadInput, match="bench-pres"):
        torquill.curve("bench-pres")
    with pytest.raises(ValueError, match="unit"):
        torquill.curve("biceps-curl", load=8)
    with pytest.raises(torquill.NoAnswer):
        torquill.pick("leg-press", gym="garage")
    with pytest.warns(torquill.TorquillWarning):
        failed = torquill.rep("bench-press", load="300 kg")
    assert failed["summary"]["outcome"] != "lockout"
    with pytest.raises(torquill.BadInput, match="setup has no"):
        torquill.figure("bench-press", load="55 kg", versus=[{"weight": "35 kg"}])
    with pytest.raises(TypeError):
        torquill.curve("bench-press", no_such_option=True)


def test_every_function_is_told_and_typed():
    from torquill import commands

    for name in commands.__all__:
        function = getattr(torquill, name)
        text = function.__doc__
        hints = function.__annotations__
        assert "return" in hints and text.splitlines()[0].endswith("."), name
        for parameter in set(hints) - {"return"}:
            assert f":param {parameter}: " in text, f"{name}: {parameter}"


def recipe_of_the_dictionary():
    """The lines of models/DATA.md that read a file of --data."""
    text = (ROOT / "models" / "DATA.md").read_text(encoding="utf-8")
    return text.split("```python\n")[1].split("```")[0]


def test_the_dictionarys_recipe_reads_a_data_file(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    question = ["vary", "biceps-curl", "--param", "segments.forearm.length", "--values", "-5%,+5%"]
    subprocess.run([PROGRAM, *question, "--data", "x.csv"], capture_output=True, check=True)
    assert (tmp_path / "x.csv").read_text(encoding="utf-8").startswith("#")
    names = {}
    exec(recipe_of_the_dictionary(), names)
    told = answer(*question)
    expected = [told["baseline"]] + told["variants"]
    assert names["capacity"].tolist() == [row["peak_capacity_nm"] for row in expected]
