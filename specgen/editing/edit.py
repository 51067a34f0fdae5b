"""What is to be put into a file, and what came of it."""

from dataclasses import dataclass

from specgen.model.field import Path


@dataclass(frozen=True, slots=True)
class Addition:
    """A value as the user would type it, lists as `[a, b]`, empty for a key without a value.

    For a collection that has no members it is `{}` or `[]`.

    The comment stands in lines above the key; where the section is written in braces there is no place for one. Only
    where `replaces` says so is another value that is given written over.
    """

    path: Path
    text: str
    comment: str = ""
    replaces: bool = False


@dataclass(frozen=True, slots=True)
class Added:
    """A value that was written: its path, its line in the edited file, from 1, and its text as it was typed.

    The line is 0 for a key without a value that belongs into braces: a comment behind those tells of it.
    """

    path: Path
    line: int
    text: str


@dataclass(frozen=True, slots=True)
class Conflict:
    """A value that was not written.

    `line` is where the file says something else, 0 where that is another value to be added; `given` is what stands
    there, `offered` what was to be added. `reason` says in words why, where the two values by themselves do not.
    """

    path: Path
    line: int
    given: str
    offered: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Edit:
    """The bytes of the edited file, what was added in its order, what was not, and what else the user is to know."""

    source: bytes
    added: tuple[Added, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    remarks: tuple[str, ...] = ()
