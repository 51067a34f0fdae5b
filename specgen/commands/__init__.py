"""One file for each command; the file name is its verb, presence is registration."""

import importlib
import pkgutil
from argparse import SUPPRESS, ArgumentParser, HelpFormatter, Namespace
from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple, Protocol, cast

from specgen import __version__
from specgen.model.problem import Problem, Refused, refuse
from specgen.terminal.command_line import CommandLine, CommandList, HelpPage

DONE, AGAINST, NOT_DONE = 0, 1, 2  # AGAINST: done, and something stands against it
QUIET, VERSION = ("-q", "--quiet"), "--version"
_QUIET_HELP = "no messages, only results"
# Each argument declared makes a formatter; without a width that loads archive libraries to ask the terminal for it.
_DECLARING = partial(HelpFormatter, width=80)
_ENDS = {DONE: "done", NOT_DONE: "not done; one line says why"}
_PAGE = HelpPage(
    (
        ("new project.yaml", "write a starter: each field with what it means"),
        ("check project.yaml", "what stands against the job, and what is still open"),
        ("build project.yaml --draft --out draft", "write the documents as far as they are known"),
    ),
    {
        DONE: "done",
        AGAINST: "done, and something stands against it: a stop, a difference",
        NOT_DONE: "not done; one line says why",
    },
    "specgen COMMAND --help, with examples of each; specgen fields and specgen rules are the manual",
)


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
    """What a command file holds: HELP is its line in `specgen --help`, ORDER its place there.

    Beside these it tells EXAMPLES, calls with what each does; READ_ON, where to read on; and ENDS, what its exit codes
    mean, where they are more than done and not done.
    """

    HELP: str
    ORDER: int

    def arguments(self, parser: ArgumentParser) -> None:
        """Declare the arguments."""

    def run(self, args: Namespace) -> Outcome:
        """Do what is asked for; raises Refused where that cannot be done.

        `args.quiet` is whether messages are left out; `args.show` prints an outcome before the last one.
        """


def read_file_name(text: str) -> Path:
    """The path of a file as it is typed; raises Refused where a slash behind the name says that it is a folder.

    A single hyphen is refused too: it is standard input, where that can be read.
    """
    if text == "-":
        raise refuse("- stands for standard input, and only a project is read from there", "give the name of a file")
    if text.endswith(("/", "/.", "\\")) and not Path(text).is_dir():
        bare = text.rstrip("/.\\")
        raise Refused(Problem("a slash follows the name of the file", f"write {bare}" if bare else "", file=text))
    path = Path(text)
    return path.absolute() if path == Path("-") else path  # ./- is a file of that name


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


def make_parser(commands: Mapping[str, Command]) -> CommandLine:
    """The parser of these commands, each with its own arguments and page of help."""
    parser = CommandLine(
        prog="specgen",
        description="Judges an exterior wall with a spray-applied metallic gloss finish and writes its submittal.",
        allow_abbrev=False,
        formatter_class=_DECLARING,
        page=_PAGE,
    )
    parser.add_argument(VERSION, action="version", version=f"specgen {__version__}")
    parser.add_argument(*QUIET, action="store_true", help=_QUIET_HELP)
    verbs = parser.add_subparsers(dest="command", required=True, metavar="COMMAND", prog=parser.prog)
    for name, command in commands.items():
        about = f"{command.HELP[0].upper()}{command.HELP[1:]}."
        own = verbs.add_parser(
            name,
            help=command.HELP,
            description=about,
            formatter_class=_DECLARING,
            allow_abbrev=False,
            conflict_handler="resolve",  # a command may tell more of itself than the library does
            page=_make_page(command),
        )
        command.arguments(own)
        own.add_argument(*QUIET, action="store_true", default=SUPPRESS, help=_QUIET_HELP)
        own.set_defaults(run=command.run)
        own.formatter_class = HelpFormatter
    parser.formatter_class = CommandList
    return parser


def _make_page(command: Command) -> HelpPage:
    examples: Sequence[tuple[str, str]] = getattr(command, "EXAMPLES", ())
    return HelpPage(examples, getattr(command, "ENDS", _ENDS), getattr(command, "READ_ON", ""))
