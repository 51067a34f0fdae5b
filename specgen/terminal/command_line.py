"""The parser of the command line: help that goes on to examples, and a slip told in one line, with the nearest word."""

import re
from argparse import ArgumentParser, HelpFormatter, Namespace
from collections.abc import Iterator, Mapping, Sequence
from itertools import takewhile
from typing import Any, NamedTuple, NoReturn

from specgen.model.problem import Problem, Refused

_CHOICE = re.compile(
    r"(?:argument (?P<name>\S+): )?invalid choice: '(?P<given>.*)' \(choose from (?P<words>.*)\)", re.S
)
_MISSING = re.compile(r"the following arguments are required: (?P<names>.*)", re.S)
_VALUE = re.compile(r"argument (?P<name>\S+): expected (?:one|at least one) argument")
_SHORT = re.compile(r"-\w/(?=--)")  # before the long name of the same option
_VERB = "COMMAND"


class HelpPage(NamedTuple):
    """What help tells below the arguments: calls with what each does, exit codes with their meaning, where to read on.

    The calls stand without the name of the program.
    """

    examples: Sequence[tuple[str, str]] = ()
    exits: Mapping[int, str] = {}
    read_on: str = ""


class CommandList(HelpFormatter):
    """Help of a parser with commands: the library forgets that their names stand further in than options."""

    def __init__(self, *args: Any, **how: Any) -> None:
        super().__init__(*args, **how)
        self._action_max_length = 16


class CommandLine(ArgumentParser):
    """A parser whose messages are those of every other room."""

    def __init__(self, *args: Any, page: HelpPage = HelpPage(), **how: Any) -> None:  # noqa: B008 (never changed)
        super().__init__(*args, **how)
        self.page = page
        # What begins with a minus and a figure is a reading, `-5C`, and no option.
        self._negative_number_matcher = re.compile(r"-\.?\d")

    def format_help(self) -> str:
        """The library's help, then examples, exit codes and where to read on, as wide as the terminal."""
        import shutil  # help alone asks for it

        width = shutil.get_terminal_size().columns - 2
        return "\n".join([super().format_help(), *_tell(self.page, self.prog.split()[0], width)])

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> tuple[Namespace, list[str]]:  # type: ignore[override]
        """Raises Refused for an option that there is not, before anything is told to be missing."""
        words = list(args or ())
        own = takewhile(lambda word: word.startswith("-"), words) if self._has_commands() else iter(words)
        for word in takewhile(lambda word: word != "--", own):
            name = word.partition("=")[0]
            # A word with a space is a text to the library, whatever it begins with.
            if name.startswith("--") and " " not in word and name not in self._option_string_actions:
                self._refuse_option(name)
        namespace, left = super().parse_known_args(words, namespace)
        if left:
            self._refuse_left(words, left)
        return namespace, left

    def error(self, message: str) -> NoReturn:
        """Raise Refused with what is wrong with the words, in place of the library's usage and message."""
        hint = f"{self.prog} --help tells what there is"
        message = _SHORT.sub("", message)
        if slip := _CHOICE.fullmatch(message):
            from specgen.model.suggest import suggest  # imported here: most words are right

            words = re.findall(r"[\w-]+", slip["words"])
            is_verb = slip["name"] == _VERB
            what = (
                f"there is no command {slip['given']!r}" if is_verb else f"{slip['name']} cannot be {slip['given']!r}"
            )
            raise Refused(Problem(what, suggest(slip["given"], words)))
        if slip := _MISSING.fullmatch(message):
            names = slip["names"]
            raise Refused(Problem(f"{names} must be given", self._show_call(names.split(", ")) or hint))
        if slip := _VALUE.fullmatch(message):
            raise Refused(Problem(f"{slip['name']} stands without a value", self._show_call([slip["name"]]) or hint))
        raise Refused(Problem(message, hint))

    def _show_call(self, names: Sequence[str]) -> str:
        """The first call of the page with some options, to be written likewise; empty where no call has them all."""
        options = [name for name in names if name.startswith("--")]
        calls = (call for call, _ in self.page.examples if all(name in call.split() for name in options))
        call = "" if self._has_commands() else next(calls, "")
        return f"write for example {self.prog.split()[0]} {call}" if call else ""

    def _has_commands(self) -> bool:
        return any(action.metavar == _VERB for action in self._actions)

    def _refuse_left(self, words: Sequence[str], left: Sequence[str]) -> NoReturn:
        """Tell of words that belong to no argument; a file behind an option would belong to one before it."""
        before = words[: words.index(left[0])] if left[0] in words else ()
        is_late = not left[0].startswith("-") and any(word.startswith("-") for word in before)
        hint = f"{'write files before the options; ' if is_late else ''}{self.prog} --help tells what there is"
        raise Refused(Problem(f"{' '.join(left)!r} belongs to no argument", hint))

    def _refuse_option(self, name: str) -> NoReturn:
        from specgen.model.suggest import find_slip, suggest

        known = [option for option in self._option_string_actions if option.startswith("--")]
        slip = find_slip(name, known) or next((option for option in known if option.startswith(name)), "")
        # What is merely alike is another option; the list is what helps.
        raise Refused(Problem(f"there is no option {name!r}", suggest(slip or "", known)))


def _tell(page: HelpPage, program: str, width: int) -> Iterator[str]:
    """The parts of a page, each with its head; none for one that says nothing."""
    import textwrap  # help alone asks for it

    def wrap(text: str, first: str, then: str) -> list[str]:
        # Options and names of files stay whole where a line ends.
        return textwrap.wrap(text, max(width, 30), initial_indent=first, subsequent_indent=then, break_on_hyphens=False)

    if page.examples:
        yield "examples:"
        for call, about in page.examples:
            yield f"  {program} {call}"
            yield from wrap(about, "      ", "      ")
        yield ""
    if page.exits:
        yield "exit codes:"
        for code, meaning in page.exits.items():
            yield from wrap(meaning, f"  {code}  ", "     ")
        yield ""
    if page.read_on:
        yield "read on:"
        yield from wrap(page.read_on, "  ", "  ")
        yield ""
