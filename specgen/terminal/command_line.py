"""The parser of the command line: a slip is told in one line, with the nearest word."""

import re
from argparse import ArgumentParser
from typing import NoReturn

from specgen.model.problem import Problem, Refused

_CHOICE = re.compile(
    r"(?:argument (?P<name>\S+): )?invalid choice: '(?P<given>.*)' \(choose from (?P<words>.*)\)", re.S
)
_MISSING = re.compile(r"the following arguments are required: (?P<names>.*)", re.S)
_VALUE = re.compile(r"argument (?P<name>\S+): expected one argument")
_UNKNOWN = re.compile(r"unrecognized arguments: (?P<given>.*)", re.S)


class CommandLine(ArgumentParser):
    """A parser whose messages are those of every other room."""

    def error(self, message: str) -> NoReturn:
        """Raise Refused with what is wrong with the words, in place of the library's usage and message."""
        hint = f"{self.prog} --help tells what there is"
        if slip := _CHOICE.fullmatch(message):
            from specgen.model.suggest import suggest  # imported here: most words are right

            words = re.findall(r"[\w-]+", slip["words"])
            is_verb = slip["name"] == "COMMAND"
            what = (
                f"there is no command {slip['given']!r}" if is_verb else f"{slip['name']} cannot be {slip['given']!r}"
            )
            raise Refused(Problem(what, suggest(slip["given"], words)))
        if slip := _MISSING.fullmatch(message):
            raise Refused(Problem(f"{slip['names']} must be given", hint))
        if slip := _VALUE.fullmatch(message):
            raise Refused(Problem(f"{slip['name']} stands without a value", hint))
        if slip := _UNKNOWN.fullmatch(message):
            raise Refused(Problem(f"{slip['given']!r} belongs to no argument", hint))
        raise Refused(Problem(message, hint))
