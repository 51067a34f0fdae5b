"""What changed, in the words that messages and documents share."""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.model.changes import ArticleChange, Changes, FieldChange
from specgen.model.state import Said
from specgen.model.value_text import count

_NOUNS = {"part": "heading", "article": "heading", "equation": "step", "signature": "signature block"}
NONE = "not given"


class FieldLine(NamedTuple):
    """A line of the data that changed: a field, or a member that is new or dropped as a whole."""

    path: str  # dotted
    label: str  # empty for a member
    owed_by: str
    old: str
    new: str


def tell_said(said: Said | None, first: str) -> str:
    """`4 in (102 mm)`: a value in both systems, that of the `first` before the other."""
    if said is None:
        return NONE
    own, other = said if first == "ip" else (said.si, said.ip)
    return own if own == other else f"{own} ({other})"


def tell_article(change: ArticleChange) -> str:
    """`2 items changed, 1 table added`."""
    told = (("changed", change.changed), ("added", change.added), ("removed", change.removed))
    counts = ((count(number, _NOUNS.get(kind, kind)), what) for what, kinds in told for kind, number in kinds)
    return ", ".join(f"{number} {what}" for number, what in counts)


def name_article(change: ArticleChange) -> str:
    """`2.01 Materials`; what stands above the first heading is the opening."""
    return f"{change.number} {change.title}".strip() or "Opening"


def list_fields(changes: Changes, first: str) -> Iterator[FieldLine]:
    """The fields that changed; those of a member that is new or dropped as a whole in one line."""
    yield from (FieldLine(member, "", "", count_fields(changes, member), "dropped") for member in changes.gone)
    yield from (FieldLine(member, "", "", NONE, count_fields(changes, member)) for member in changes.come)
    for change in below_members(changes):
        old, new = tell_said(change.old, first), tell_said(change.new, first)
        yield FieldLine(change.path, change.label, change.owed_by, old, new)


def count_fields(changes: Changes, member: str) -> str:
    """`12 values`: what was or is given of a member that is new or dropped."""
    return count(sum(change.path.startswith(f"{member}.") for change in changes.fields), "value")


def below_members(changes: Changes) -> Iterator[FieldChange]:
    """The fields that changed of what there was and is."""
    told = tuple(f"{member}." for member in (*changes.gone, *changes.come))
    yield from (change for change in changes.fields if not change.path.startswith(told))
