"""A fault of ours in one line: what failed, where, and what to do."""

import sys
from pathlib import Path

from specgen.model.problem import Problem

_PACKAGE = Path(__file__).parents[1]


def describe_fault(error: Exception, command: str) -> Problem:
    """What a user is told of an error that no room has turned into a refusal."""
    if isinstance(error, MemoryError):
        message, hint = "there is not enough memory", "close other programs, or split the file"
    elif isinstance(error, ModuleNotFoundError) and not (error.name or "specgen").startswith("specgen"):
        message, hint = f"the library {error.name} is missing", "install specgen again"
    elif sys.flags.optimize > 1:  # the validator reads its rules from its docstrings
        message, hint = "Python runs without docstrings", "unset PYTHONOPTIMIZE, and leave -OO out"
    else:
        message = f"`{command}` failed at {_place(error)}"
        hint = "report this with the command and the file"
    return Problem(f"{message}; nothing was written", hint)


def _place(error: Exception) -> str:
    """File and line of the innermost step of ours."""
    step, place = error.__traceback__, "an unknown place"
    while step is not None:
        file = Path(step.tb_frame.f_code.co_filename)
        if file.is_relative_to(_PACKAGE):
            place = f"{file.relative_to(_PACKAGE).as_posix()}:{step.tb_lineno}"
        step = step.tb_next
    return place
