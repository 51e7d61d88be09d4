"""The notebook and the recipes run from top to bottom."""

import pathlib
import re

import nbclient
import nbformat

HERE = pathlib.Path(__file__).resolve().parents[1]


def test_the_notebook_runs_and_says_what_it_shows(tmp_path):
    notebook = nbformat.read(HERE / "lecture_figures.ipynb", as_version=4)
    assert all(not cell.get("outputs") for cell in notebook.cells if cell.cell_type == "code"), "it is kept without outputs"
    client = nbclient.NotebookClient(notebook, timeout=120, resources={"metadata": {"path": tmp_path}})
    client.execute()
    outputs = [output for cell in notebook.cells for output in cell.get("outputs", [])]
    pictures = [output for output in outputs if {"image/png", "image/svg+xml"} & set(output.get("data", {}))]
    assert len(pictures) >= 4
    said = "".join(output.get("text", "") for output in outputs)
    assert said.count("line:") == 3, said
    assert not [output for output in outputs if output.output_type == "error"]


def blocks(path):
    """The blocks of Python of a page."""
    return re.findall(r"```python\n(.*?)```", path.read_text(encoding="utf-8"), re.DOTALL)


def test_the_recipes_run_as_pasted(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    found = 0
    for page in [HERE / "README.md", HERE.parent / "README.md"]:
        for block in blocks(page):
            exec(compile(block, str(page), "exec"), {"__name__": "recipe"})
            found += 1
    assert found >= 2
