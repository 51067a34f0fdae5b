"""Starters filled in as a person would: a value typed behind each colon, a # taken away before a key."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from specgen.model.field import Field, Path
from specgen.reading.schema import project_schema
from specgen.terminal.field_lines import example_text

# A key on a line of its own, behind blanks and perhaps a # with an even number of blanks behind it; a comment that goes
# on stands three blanks in.
_KEY = re.compile(r"^(?P<before> *)(?P<sign>#?)(?P<inside>(?:  )*)(?P<name>[\w./-]+?)(?P<colon>:?)(?P<value> \S.*)?$")
SIDES = ("firm", "coating_system")


class Key(NamedTuple):
    """A line of a starter that holds a key: its number from 0, its path, and whether a # stands before it."""

    line: int
    path: Path
    off: bool
    value: str

    @property
    def field(self) -> Field | None:
        return project_schema().node(self.path).field


def list_keys(text: str) -> list[Key]:
    """Every key of a starter in its order, those behind a # too."""
    return list(_walk(text))


def _walk(text: str) -> Iterator[Key]:
    above: list[tuple[int, str]] = []
    for number, line in enumerate(text.splitlines()):
        found = _KEY.match(line)
        if found is None or not (found["colon"] or found["name"] == "-"):
            continue
        indent = len(found["before"]) + len(found["inside"])
        above = [(at, name) for at, name in above if at < indent]
        above.append((indent, "0" if found["name"] == "-" else found["name"]))
        yield Key(number, tuple(name for _, name in above), bool(found["sign"]), (found["value"] or "").strip())


def fill(text: str, units: str, keys: list[Key], given: dict[Path, str] | None = None) -> str:
    """The starter with the example of each of these fields typed behind its key, every # before a key taken away."""
    lines = text.splitlines()
    for key in keys:
        if key.off:
            lines[key.line] = lines[key.line].replace("#", "", 1)
        if key.field is not None and not key.value:
            typed = (given or {}).get(key.path) or example_text(key.field, units)
            lines[key.line] += f" {typed}"
    return "\n".join(lines) + "\n"
