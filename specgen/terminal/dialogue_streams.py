"""Holds a dialogue on standard input and standard error, with a person or with a file of answers."""

import signal
from collections.abc import Iterator
from contextlib import contextmanager

from specgen.model.problem import Stopped
from specgen.terminal.dialogue import Dialogue
from specgen.terminal.streams import is_typed, read_typed_line, write_aside, write_prompt

_SIGN = "> "


def hold_dialogue(dialogue: Dialogue, quiet: bool = False) -> bool:
    """Put the questions until none waits; returns whether all were, False where the input ended before.

    `quiet` leaves out what is said, save what is wrong and, to a person, the questions. A person who
    interrupts is asked once whether to write what was answered. Raises Refused, or Stopped where nothing is to be.
    """
    typed = is_typed()
    with _interrupts_told():
        try:
            return _put_questions(dialogue, typed, quiet)
        except KeyboardInterrupt:
            if not (typed and dialogue.answers and _asks_to_write()):
                raise
            return False


def _put_questions(dialogue: Dialogue, typed: bool, quiet: bool) -> bool:
    write_aside([] if quiet else [*dialogue.greet(), ""])
    asks = True
    while dialogue.waiting is not None:
        if asks and (typed or not quiet):
            write_aside(dialogue.ask())
        line = _read_answer(typed, quiet)
        if line is None:
            return False
        reply = dialogue.take(line)
        asks = reply.asks
        if reply.wrong or not quiet:
            write_aside([*reply.lines, *([""] if asks and not quiet else [])])
    return True


def _asks_to_write() -> bool:
    """Whether a person who has interrupted wants what was answered; the end of the input says so too."""
    write_aside([""])
    write_prompt("Write what was answered? y/n ")
    line = read_typed_line()
    return line is None or line.strip().lower() in ("y", "yes")


def _read_answer(typed: bool, quiet: bool) -> str | None:
    """The next line; one that nobody saw typed is shown behind the question, so that the record can be read."""
    if typed:
        write_prompt(_SIGN)
    line = read_typed_line()
    if line is None:
        write_aside([""] if typed else [])
    elif not typed and not quiet:
        write_aside([f"{_SIGN}{line}".rstrip()])
    return line


@contextmanager
def _interrupts_told() -> Iterator[None]:
    """Let an interrupt raise Stopped, which says that nothing was written, in place of ending without a word."""
    before = signal.getsignal(signal.SIGINT)
    if before is not signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        yield
    except KeyboardInterrupt:
        write_aside([""])
        raise Stopped(signal.SIGINT) from None
    finally:
        signal.signal(signal.SIGINT, signal.SIG_DFL if before is None else before)
