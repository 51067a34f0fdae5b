"""Arguments in, messages and exit codes out; nothing else prints.

Exit codes: 0 done; 1 done, and something stands against it; 2 not done; by the signal where one ended it.
Only the command asked for is imported, so that a sum does not load the rules.
"""

import gc
import signal
import sys
from collections.abc import Sequence

from specgen.commands import (
    NOT_DONE,
    QUIET,
    VERSION,
    Command,
    Outcome,
    list_verbs,
    load_command,
    load_commands,
    make_parser,
)
from specgen.model.problem import Refused, Stopped
from specgen.terminal.fault import describe_fault
from specgen.terminal.streams import prepare_streams, write_data, write_message, write_result

_BY_SIGNAL = 128  # what a shell adds to the number of the signal that ended a program


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    words = sys.argv[1:] if arguments is None else arguments
    try:
        args = make_parser(_load_asked(words)).parse_args(words)
        args.show = lambda outcome: _print_outcome(outcome, args.quiet)
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
    if verb == VERSION:  # answered before any command is looked for
        return {}
    return {verb: load_command(verb)} if verb in list_verbs() else load_commands()


def _verb(words: Sequence[str]) -> list[str]:
    """The first word that may be a command, if there is one."""
    return [word for word in words if word not in QUIET][:1]


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
    gc.freeze()  # nor is what the process ends with walked once more
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
