"""Strength-curve biomechanics: capacity, demand, effort and sticking regions of a lift, from anatomy.

    >>> import torquill
    >>> curl = torquill.curve("biceps-curl", load="8 kg")
    >>> curl["samples"]["effort"].max() == curl["summary"]["max_effort"]
    True

Every function is a command of the program of the same name. Answers are plain dicts: values as in the program's JSON, tables
as dicts of NumPy columns in SI, the unit at the end of each name. Figures show themselves in a notebook.
Education, not medical advice.
"""

from ._call import BadInput, Figure, NoAnswer, Page, TorquillError, TorquillWarning
from .commands import *  # noqa: F403
from .commands import __all__ as _commands

__all__ = [*_commands, "BadInput", "Figure", "NoAnswer", "Page", "TorquillError", "TorquillWarning"]
