//! The module `torquill._torquill`: one function that runs a command of the program and returns what it prints.
//!
//! Everything else of the package is Python: `torquill/commands.py` is made from the program's own definitions.

use pyo3::prelude::{Bound, PyModule, PyResult, Python, pyfunction, pymodule, wrap_pyfunction};
use pyo3::types::PyModuleMethods;

/// Runs a command: the words behind the program's name. Returns exit status, standard output, standard error.
#[pyfunction]
fn run(python: Python<'_>, arguments: Vec<String>) -> (u8, String, String) {
    let called = python.detach(|| torquill::cli::call_inside(&arguments));
    (called.status, called.stdout, called.stderr)
}

/// The program torquill inside Python.
#[pymodule]
fn _torquill(module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_function(wrap_pyfunction!(run, module)?)
}
