"""One file for each command; the file name is its verb, presence is registration."""

import importlib
import pkgutil
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any, NamedTuple, Protocol, cast

from specgen.model.problem import Problem, Refused

DONE, AGAINST, NOT_DONE = 0, 1, 2  # AGAINST: done, and something stands against it


class Outcome(NamedTuple):
    """How a command ended: its exit code, and what goes to standard output and standard error.

    Data are printed as JSON in place of the text. Messages are left out by --quiet, problems never. A text is painted
    where it holds the signs of a terminal for color, with nothing of the user's that could be taken for them.
    """

    code: int = DONE
    text: str = ""
    data: Any = None
    messages: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()
    painted: bool = False


class Command(Protocol):
    """What a command file holds: HELP is its line in `specgen --help`, ORDER its place there."""

    HELP: str
    ORDER: int

    def arguments(self, parser: ArgumentParser) -> None:
        """Declare the arguments."""

    def run(self, args: Namespace) -> Outcome:
        """Do what is asked for; raises Refused where that cannot be done."""


def read_file_name(text: str) -> Path:
    """The path of a file as it is typed; raises Refused where a slash behind the name says that it is a folder."""
    if text.endswith(("/", "/.", "\\")) and not Path(text).is_dir():
        bare = text.rstrip("/.\\")
        raise Refused(Problem("a slash stands behind the name of the file", f"write {bare}" if bare else "", file=text))
    return Path(text)


def list_verbs() -> tuple[str, ...]:
    """The verbs there are, read from the folder without importing any file."""
    names = (module.name for module in pkgutil.iter_modules(__path__))
    return tuple(name for name in names if not name.startswith("_"))


def load_command(verb: str) -> Command:
    """The command of a verb; only its file is imported. Raises Refused where the file lacks a part."""
    module = importlib.import_module(f"{__name__}.{verb}")
    lacks = [part for part in ("HELP", "ORDER", "arguments", "run") if not hasattr(module, part)]
    if lacks:
        hint = "a command file has HELP, ORDER, arguments(parser) and run(args)"
        raise Refused(Problem(f"there is no {', '.join(lacks)}", hint, file=str(module.__file__)))
    return cast(Command, module)


def load_commands() -> dict[str, Command]:
    """All commands by their verbs, in the order in which help lists them."""
    every = {verb: load_command(verb) for verb in list_verbs()}
    return dict(sorted(every.items(), key=lambda item: item[1].ORDER))
