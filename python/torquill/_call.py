"""How a command is called, and how its JSON becomes NumPy columns.

Every number comes from the program itself; nothing is computed here.
"""

from __future__ import annotations

import csv
import io
import json
import os
import pathlib
import tempfile
import warnings
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from . import _torquill


class TorquillError(Exception):
    """A command that gave no answer; the text says where, what and what to do next."""


class NoAnswer(TorquillError):
    """The question has no answer, such as a load that the lifter cannot hold (exit status 1)."""


class BadInput(TorquillError, ValueError):
    """An argument or a file is wrong (exit status 2)."""


class TorquillWarning(UserWarning):
    """What the program says beside its answer: cautions, unlikely values."""


@dataclass(frozen=True)
class Figure:
    """A figure as SVG, which a notebook shows by itself.

    `caption`, `alternative_text` and `data` are filled where the program writes them beside the figure.
    """

    svg: str
    title: str = ""
    caption: str = ""
    alternative_text: str = ""
    data: dict[str, np.ndarray] = field(default_factory=dict)

    def _repr_svg_(self) -> str:
        return self.svg

    def __repr__(self) -> str:
        return f"Figure({self.title or 'SVG'}, {len(self.svg)} characters)"

    def save(self, path: str | os.PathLike[str]) -> None:
        """Writes the SVG to a file that is not there yet."""
        with open(path, "x", encoding="utf-8") as file:
            file.write(self.svg)


class Page(str):
    """A page of HTML, which a notebook shows by itself."""

    def _repr_html_(self) -> str:
        return str(self)


# ---------------------------------------------------------------- words of a command

# One option: how it is written (nothing for a place), its value as Python gave it, and the program's default.
Option = tuple[str, Any, Any]

_SETUP = ("load", "band", "chain", "item", "setup")


def _words(options: Sequence[Option]) -> list[str]:
    """The words of options: nothing for None and False, the bare name for True, one each for a list."""
    words: list[str] = []
    for name, value, default in options:
        if default is not None and value == default:
            continue
        if name == "--versus":
            for setup in value or ():
                words.append("--versus")
                words.extend(_setup_words(setup))
        elif name == "":
            if value is not None:
                words.append(_text(value))
        elif value is True:
            words.append(name)
        elif value is None or value is False:
            continue
        else:
            # One word each, so that a value may begin with a minus sign.
            words.extend(f"{name}={_text(one)}" for one in _each(value))
    return words


def _setup_words(setup: Mapping[str, Any]) -> list[str]:
    unknown = set(setup) - set(_SETUP)
    if unknown:
        raise BadInput(f"a setup has no {', '.join(sorted(unknown))}; it has {', '.join(_SETUP)}")
    return _words([(f"--{name}", value, None) for name, value in setup.items()])


def _each(value: Any) -> list[Any]:
    if isinstance(value, Mapping):
        return [f"{path}={_text(one)}" for path, one in value.items()]
    if isinstance(value, (list, tuple)):
        return list(value)
    return [value]


def _given(options: Sequence[Option], name: str) -> Any:
    return next((value for own, value, _ in options if own == name), None)


def _text(value: Any) -> str:
    if isinstance(value, os.PathLike):
        return os.fspath(value)
    if isinstance(value, (float, np.floating)):
        return repr(float(value))
    return str(value)


def _run(command: str, options: Sequence[Option], more: Sequence[str] = ()) -> tuple[int, str, str]:
    return _torquill.run([command, *_words(options), *more])


def _answer(status: int, out: str, errors: str, is_told: bool) -> str:
    """What a call printed; faults are raised, what is said beside an answer is warned of."""
    errors = errors.strip()
    if status == 2:
        raise BadInput(errors)
    if status != 0 and not is_told:
        raise NoAnswer(errors)
    if errors:
        warnings.warn(errors, TorquillWarning, stacklevel=4)
    return out


# ---------------------------------------------------------------- pictures

def _drawn(options: Sequence[Option], pictures: Sequence[str], folder: str) -> tuple[list[Option], dict[str, pathlib.Path]]:
    """The options with a file of the folder for every picture that is asked for as True."""
    kept, files = [], {}
    for name, value, default in options:
        if name in pictures and value is True:
            key = name.lstrip("-").replace("-", "_")
            files[key] = pathlib.Path(folder) / f"{key}.svg"
            value = files[key]
        kept.append((name, value, default))
    return kept, files


def _read(path: pathlib.Path) -> str:
    return path.read_text(encoding="utf-8")


# ---------------------------------------------------------------- what commands.py calls

def table(command: str, options: Sequence[Option], pictures: Sequence[str] = ()) -> dict[str, Any]:
    """What a command answers: plain values and objects as in JSON, tables as columns; pictures under their options."""
    with tempfile.TemporaryDirectory() as folder:
        options, files = _drawn(options, pictures, folder)
        status, out, errors = _run(command, options, ["--format=json"])
        answer = json.loads(_answer(status, out, errors, out.strip() != "") or "{}")
        found = tables(answer if isinstance(answer, dict) and command != "sources" else _listed(command, answer))
        for key, path in files.items():
            if path.exists():
                found[key] = Figure(svg=_read(path), title=command)
    return found


def _listed(command: str, answer: Any) -> dict[str, Any]:
    if isinstance(answer, dict):
        answer = [{"key": key, **row} for key, row in answer.items()]
    return {command: answer}


def figure(options: Sequence[Option]) -> Figure:
    """The figure of the command of that name, with caption, alternative text and, of one setup, its data."""
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "figure.svg"
        more = [f"--output={path}", "--words", f"--data={path.with_suffix('.csv')}"]
        status, out, errors = _run("figure", options, more)
        _answer(status, out, errors, False)
        return _figure_at(path)


def lecture(options: Sequence[Option]) -> dict[str, Figure]:
    """The figures of a lecture by name, with captions, alternative texts and data."""
    given = _given(options, "--output")
    options = [option for option in options if option[0] != "--output"]
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder if given is None else given)
        status, out, errors = _run("lecture", options, [f"--output={place}"])
        if status != 0:
            _answer(status, out, errors, False)
        return {path.stem: _figure_at(path) for path in sorted(place.glob("*.svg"))}


def text(command: str, options: Sequence[Option]) -> str:
    """What a command prints for people."""
    return _answer(*_run(command, options), False)


def page(command: str, options: Sequence[Option]) -> Page:
    """What a command writes as a page."""
    kept = [option for option in options if option[0] != "--output"]
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(_given(options, "--output") or pathlib.Path(folder) / "page.html")
        _answer(*_run(command, kept, [f"--output={path}"]), False)
        return Page(_read(path))


def _figure_at(path: pathlib.Path) -> Figure:
    caption = _read(path.with_suffix(".caption.txt")).strip()
    return Figure(
        svg=_read(path),
        title=caption.split(". ")[0],
        caption=caption,
        alternative_text=_read(path.with_suffix(".alt.txt")).strip(),
        data=columns_of_csv(_read(path.with_suffix(".csv"))),
    )


# ---------------------------------------------------------------- columns

def tables(answer: Mapping[str, Any]) -> dict[str, Any]:
    """An object of JSON with every list of objects as columns.

    A list inside the objects of another one becomes a table of its own under both keys ("samples.muscles"); its rows
    carry the plain values of the object that they stood in, as the rows of CSV do.
    """
    found: dict[str, Any] = {}
    for key, value in answer.items():
        if isinstance(value, Mapping):
            found[key] = tables(value)
        elif _is_table(value):
            found[key] = columns([_cells(row) for row in value])
            _inner(found, key, value, [{}] * len(value))
        else:
            found[key] = value
    return found


def _inner(found: dict[str, Any], path: str, rows: Sequence[Mapping[str, Any]], above: Sequence[Mapping[str, Any]]) -> None:
    """Adds the tables inside the rows of a table."""
    keys = [key for row in rows for key, value in row.items() if _is_table(value)]
    for key in dict.fromkeys(keys):
        inner, carried = [], []
        for row, cells in zip(rows, above):
            # What is said of the row itself; objects of figures stay with it.
            own = {**cells, **{name: value for name, value in row.items() if _is_plain(value)}}
            below = row.get(key) or []
            inner.extend(below)
            carried.extend([own] * len(below))
        found[f"{path}.{key}"] = columns([{**own, **_cells(row)} for own, row in zip(carried, inner)])
        _inner(found, f"{path}.{key}", inner, carried)


def _is_table(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(row, Mapping) for row in value)


def _is_plain(value: Any) -> bool:
    return value is None or isinstance(value, (bool, int, float, str))


def _cells(row: Mapping[str, Any], before: str = "") -> dict[str, Any]:
    """The values of a row, objects flattened with dots; lists of objects stand apart."""
    cells: dict[str, Any] = {}
    for key, value in row.items():
        if isinstance(value, Mapping):
            cells.update(_cells(value, f"{before}{key}."))
        elif not _is_table(value):
            cells[before + key] = value
    return cells


def columns(rows: Sequence[Mapping[str, Any]]) -> dict[str, np.ndarray]:
    """Rows as columns: numbers as float64 (int64 where all are whole), true or false as bool, texts as str.

    Nothing is NaN in numbers and the empty text in texts.
    """
    names = dict.fromkeys(name for row in rows for name in row)
    # An object that some rows do not have leaves no column of nothing beside those of its parts.
    inside = {name.rsplit(".", depth)[0] for name in names for depth in range(1, name.count(".") + 1)}
    names = [name for name in names if name not in inside]
    return {name: _column([row.get(name) for row in rows]) for name in names}


def _column(values: Sequence[Any]) -> np.ndarray:
    known = [value for value in values if value is not None]
    if known and all(isinstance(value, bool) for value in known) and len(known) == len(values):
        return np.array(values, dtype=bool)
    if all(isinstance(value, (int, float)) and not isinstance(value, bool) for value in known):
        if known and len(known) == len(values) and all(isinstance(value, int) for value in known):
            return np.array(values, dtype=np.int64)
        return np.array([np.nan if value is None else value for value in values], dtype=np.float64)
    if all(isinstance(value, str) for value in known):
        return np.array(["" if value is None else value for value in values], dtype=str)
    column = np.empty(len(values), dtype=object)
    column[:] = values
    return column


def columns_of_csv(text: str) -> dict[str, np.ndarray]:
    """The columns of CSV of the program: lines behind `#` are left out, numbers are read as such."""
    lines = [line for line in text.splitlines(keepends=True) if not line.startswith("#")]
    rows = list(csv.reader(io.StringIO("".join(lines))))
    if not rows:
        return {}
    header, rows = rows[0], rows[1:]
    return {name: _column([_read_cell(row[place]) for row in rows]) for place, name in enumerate(header)}


def _read_cell(cell: str) -> Any:
    if cell == "":
        return None
    try:
        return float(cell)
    except ValueError:
        return cell
