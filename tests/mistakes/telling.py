"""A mistake and what is told of it, as the lines of a golden text."""

import io
from collections.abc import Callable, Iterable
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from tempfile import TemporaryDirectory

from specgen.cli import main
from specgen.model.problem import Problem, Refused

MOST_SHOWN = 120  # characters of an input
FOLDER = "FOLDER"  # stands for the temporary folder in what is told


def tell(mistake: str | bytes, *said: tuple[str, str]) -> str:
    """A mistake, and below it each message with its remedy."""
    shown = ascii(mistake)
    shown = shown if len(shown) <= MOST_SHOWN else f"{shown[:MOST_SHOWN]}... ({len(mistake)} characters)"
    return "\n".join([shown, *(f"  {message}\n    -> {hint}" for message, hint in said), ""])


def tell_refused(mistake: str | bytes, run: Callable[[Path], object]) -> str:
    """A mistake in a file or template, and what is told of it; `run` is given an empty folder."""
    with TemporaryDirectory() as name:
        try:
            run(Path(name))
        except Refused as refused:
            return tell(mistake, *map(place, refused.problems)).replace(name, FOLDER)
    return tell(mistake)


def place(problem: Problem) -> tuple[str, str]:
    """The message with the line and path it stands at, and the remedy."""
    return f"line {problem.line} {problem.path}: {problem.message}".replace(" :", ":"), problem.hint


def in_file(problem: Problem) -> tuple[str, str]:
    """The message with its file or cell, and the remedy."""
    message, hint = place(problem)
    return f"{problem.file}, {message}", hint


def noted(mistake: str | bytes, notes: Iterable[str]) -> str:
    """What was read all the same, and the notes on it."""
    return "\n".join([tell(mistake).rstrip("\n"), *(f"  note: {note}" for note in notes), ""])


def call(*words: str) -> tuple[str, str]:
    """What a command prints, and what it tells on the way."""
    printed, told = io.StringIO(), io.StringIO()
    with redirect_stdout(printed), redirect_stderr(told):
        main(words)
    return printed.getvalue(), told.getvalue()
