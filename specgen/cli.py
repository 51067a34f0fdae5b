"""Arguments in, messages and exit codes out; nothing else prints.

Exit codes: 0 done; 1 done, and something stands against it; 2 not done; by the signal where one ended it.
Only the command asked for is imported, so that a sum does not load the rules.
"""

import gc
import signal
import sys
from argparse import SUPPRESS, HelpFormatter
from collections.abc import Sequence
from functools import partial

from specgen import __version__
from specgen.commands import NOT_DONE, Command, Outcome, list_verbs, load_command, load_commands
from specgen.model.problem import Refused, Stopped
from specgen.terminal.command_line import CommandLine
from specgen.terminal.fault import describe_fault
from specgen.terminal.streams import prepare_streams, write_data, write_message, write_result

_QUIET, _QUIET_HELP, _VERSION = "--quiet", "no messages, only results", "--version"
# Each argument declared makes a formatter; without a width that loads archive libraries to ask the terminal for it.
_DECLARING = partial(HelpFormatter, width=80)
_BY_SIGNAL = 128  # what a shell adds to the number of the signal that ended a program


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    words = sys.argv[1:] if arguments is None else arguments
    try:
        args = _parser(_load_asked(words)).parse_args(words)
        outcome: Outcome = args.run(args)
        _print_outcome(outcome, args.quiet)
    except Refused as refused:
        code = _BY_SIGNAL + refused.number if isinstance(refused, Stopped) else NOT_DONE
        _print_outcome(Outcome(code, problems=refused.problems))
        return code
    return outcome.code


def _load_asked(words: Sequence[str]) -> dict[str, Command]:
    """The command that the words begin with; where they begin with none, all, for help and for what can be chosen."""
    verb = "".join(_verb(words))
    if verb == _VERSION:  # answered before any command is looked for
        return {}
    return {verb: load_command(verb)} if verb in list_verbs() else load_commands()


def _verb(words: Sequence[str]) -> list[str]:
    """The first word that may be a command, if there is one."""
    return [word for word in words if word != _QUIET][:1]


def _parser(commands: dict[str, Command]) -> CommandLine:
    parser = CommandLine(
        prog="specgen",
        description="Judges an exterior wall with a spray-applied metallic gloss finish and writes its submittal.",
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
        write_data(outcome.data)
    elif outcome.text:
        write_result(outcome.text, outcome.painted)
    for message in (*(() if quiet else outcome.messages), *outcome.problems):
        write_message(message)


def run() -> None:
    """The outermost place: whatever happens inside ends in an exit code, and in one line where it is no result."""
    # The process is short and keeps what it reads; the cyclic collector would walk it all again and again.
    gc.set_threshold(100_000, 50, 50)
    prepare_streams()
    code = _run_guarded()
    if code > _BY_SIGNAL:  # a shell that runs us in a loop stops only where the signal itself ended us
        signal.signal(code - _BY_SIGNAL, signal.SIG_DFL)
        signal.raise_signal(code - _BY_SIGNAL)
    sys.exit(code)


def _run_guarded() -> int:
    """The exit code of the command; a fault of ours is told in one line, with `-X dev` as Python tells it too."""
    try:
        try:
            return main()
        except SystemExit as ended:  # help, the version or a mistyped command
            write_result("")
            return int(ended.code or 0)
    except Refused as refused:
        _print_outcome(Outcome(problems=refused.problems))
        return NOT_DONE
    except Exception as error:
        if sys.flags.dev_mode:
            sys.excepthook(type(error), error, error.__traceback__)
        write_message(describe_fault(error, " ".join(("specgen", *_verb(sys.argv[1:])))))
        return NOT_DONE
