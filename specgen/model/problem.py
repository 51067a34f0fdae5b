"""Problems of an input, each with place and remedy, reported together."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem of an input file; line and column count from 1, 0 means the whole file."""

    message: str
    hint: str = ""
    path: str = ""
    file: str = ""
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        counts = [str(count) for count in (self.line, self.column) if self.line and count]
        place = f"{':'.join((self.file, *counts))}: " if self.file or counts else ""
        about = f"{self.path}: " if self.path else ""
        hint = f" ({self.hint})" if self.hint else ""
        return f"{place}{about}{self.message}{hint}"


class Refused(Exception):
    """The request cannot be carried out; holds every problem found."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("; ".join(str(p) for p in problems))
        self.problems = problems


class Stopped(Refused):
    """A signal asked to end while files were written, and what was begun has been cleared away."""

    def __init__(self, number: int) -> None:
        super().__init__(Problem("stopped; nothing was written"))
        self.number = number


def refuse(message: str, hint: str = "") -> Refused:
    """A refusal, to be raised, for one problem that belongs to no file."""
    return Refused(Problem(message, hint))
