"""Arguments in, messages and exit codes out; nothing else prints.

Exit codes: 0 done; 1 done, and something stands against it; 2 not done.
Only the command asked for is imported, so that a sum does not load the rules.
"""

import gc
import json
import signal
import sys
from argparse import SUPPRESS, ArgumentParser, HelpFormatter
from collections.abc import Sequence
from functools import partial
from typing import NoReturn

from specgen import __version__
from specgen.commands import NOT_DONE, Command, Outcome, list_verbs, load_command, load_commands
from specgen.model.forbidden_characters import show_unseen
from specgen.model.problem import Refused

_QUIET, _VERSION = "--quiet", "--version"
_QUIET_HELP = "no messages, only results"
# Each argument declared makes a formatter; without a width that loads archive libraries to ask the terminal for it.
_DECLARING = partial(HelpFormatter, width=80)
_MOST_PRINTED = 1_000  # characters of one message


class _Parser(ArgumentParser):
    """A parser that echoes no word as it came."""

    def error(self, message: str) -> NoReturn:
        """Tell what is wrong with the words, in one line, and end."""
        super().error(_as_line(message))


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    words = sys.argv[1:] if arguments is None else arguments
    try:
        args = _parser(_load_asked(words)).parse_args(words)
        outcome: Outcome = args.run(args)
        _print_outcome(outcome, args.quiet)
    except Refused as refused:
        outcome = Outcome(NOT_DONE, problems=refused.problems)
        _print_outcome(outcome)
    except BrokenPipeError:  # the reader of our output has left
        sys.stderr.close()
        return NOT_DONE
    except KeyboardInterrupt:
        print("specgen: stopped; nothing was written", file=sys.stderr)
        return NOT_DONE
    return outcome.code


def _load_asked(words: Sequence[str]) -> dict[str, Command]:
    """The command that the words begin with; where they begin with none, all, for help and for what can be chosen."""
    verb = next((word for word in words if word != _QUIET), "")
    if verb == _VERSION:  # answered before any command is looked for
        return {}
    return {verb: load_command(verb)} if verb in list_verbs() else load_commands()


def _parser(commands: dict[str, Command]) -> ArgumentParser:
    parser = _Parser(
        prog="specgen",
        description="Judges and writes the submittal of an exterior wall with a sprayed gloss metal-look finish.",
        allow_abbrev=False,
        formatter_class=_DECLARING,
    )
    parser.add_argument(_VERSION, action="version", version=f"specgen {__version__}")
    parser.add_argument(_QUIET, action="store_true", help=_QUIET_HELP)
    verbs = parser.add_subparsers(dest="command", required=True, metavar="COMMAND", prog=parser.prog)
    for name, command in commands.items():
        own = verbs.add_parser(name, help=command.HELP, formatter_class=_DECLARING)
        command.arguments(own)
        own.add_argument(_QUIET, action="store_true", default=SUPPRESS, help=_QUIET_HELP)
        own.set_defaults(run=command.run)
        own.formatter_class = HelpFormatter
    parser.formatter_class = HelpFormatter
    return parser


def _print_outcome(outcome: Outcome, quiet: bool = False) -> None:
    """Results to standard output, messages and problems to standard error."""
    if outcome.data is not None:
        print(show_unseen(json.dumps(outcome.data, ensure_ascii=False, indent=1), kept="\n"))
    else:
        print(show_unseen(outcome.text, kept="\n"), end="")
    for message in (*(() if quiet else outcome.messages), *outcome.problems):
        print(f"specgen: {_as_line(message)}", file=sys.stderr)


def _as_line(message: object) -> str:
    """A message as one line of bounded length, in which no word of the user steers the terminal."""
    line, half = show_unseen(str(message)), _MOST_PRINTED // 2
    return line if len(line) <= _MOST_PRINTED else f"{line[:half]} ... {line[-half:]}"


def run() -> None:
    """The entry point of the command."""
    # The process is short and keeps what it reads; the cyclic collector would walk it all again and again.
    gc.set_threshold(100_000, 50, 50)
    # A request to end and a closed terminal stop the work as Ctrl-C does: by way of the clearing up.
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) == signal.SIG_DFL:
            signal.signal(number, signal.default_int_handler)
    sys.exit(main())


if __name__ == "__main__":
    run()
