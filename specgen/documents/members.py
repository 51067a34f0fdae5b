"""How pages name the members of a calculation, and other calculations."""

from collections.abc import Iterable, Sequence

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.model.series import join_series
from specgen.model.value_text import words

MOST_NAMED = 6
# The fields that name a member on the drawings, or say what it is.
_NAMED_BY = ("name", "place", "kind")


def mark(member: Path) -> str:
    """The member as a table names it."""
    return member[-1] if member else "Project"


def full_name(context: DocumentContext, member: Path) -> str:
    """The mark with the name: `E1 South face`, `J2 between EIFS panels`, `primer`."""
    if len(member) < 2:
        return words(mark(member))
    for name in _NAMED_BY:
        field = context.project.schema.field_at((*member, name))
        value = context.project.get((*member, name)) if field is not None else None
        if field is not None and value is not None:
            return f"{mark(member)} {context.text(value, field)}"
    return mark(member)


def marks(names: list[str]) -> str:
    """The first few marks, and the number of the rest."""
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def span_marks(names: Iterable[str]) -> str:
    """All the marks in order, three or more that follow each other as a span: `DR1, LV1, WD1 to WD6`."""
    runs: list[list[str]] = []
    for name in sorted(names, key=split_mark):
        word, number = split_mark(name)
        follows = bool(runs) and number > 0 and split_mark(runs[-1][-1]) == (word, number - 1)
        runs = [*runs[:-1], [*runs[-1], name]] if follows else [*runs, [name]]
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def span_first(names: list[str]) -> str:
    """All the marks as spans where they are few, else the first of them and the number of the rest."""
    spans = span_marks(names)
    return spans if spans.count(", ") < MOST_NAMED else marks(names)


def split_mark(name: str) -> tuple[str, int]:
    """`WD`, 12 of `WD12`; 0 for a mark without a number."""
    word = name.rstrip("0123456789")
    return word, int(name[len(word) :] or 0)


def name_sheets(numbers: Sequence[int]) -> str:
    """The sheets by their numbers: `calculation 3`, `calculations 11, 12, and 13`."""
    return f"calculation{'s' * (len(numbers) > 1)} {join_series(map(str, numbers))}"
