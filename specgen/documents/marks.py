"""Marks with what they stand for: `E1 South face`, `C1 sample board 2`, `S1 Sealant 61`."""

import re
from collections import Counter
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.members import MOST_NAMED
from specgen.documents.members import marks as first_marks
from specgen.model.series import join_series

# What stands beside the mark of a member: the first of these fields that is given.
_NAMED_BY = {
    "walls": ("substrate.kind",),
    "elevations": ("name", "facing"),
    "colors": ("reference", "number"),
    "sealants": ("product", "chemistry"),
    "joints": ("kind",),
    "access": ("kind",),
    "guns": ("kind",),
    "hoses": ("use",),
    "instruments": ("kind",),
    "details": ("kind",),
    "shade": ("kind",),
    "people": ("name",),
}

_TOLD = ("walls", "elevations", "joints", "sealants", "colors", "access", "details")
_FEW = 8


def name_member(context: DocumentContext, collection: str, mark: str) -> str:
    """The mark and the name of a member: `E1 South face`; the mark alone where nothing names it."""
    for name in _NAMED_BY.get(collection, ()):
        path = (collection, mark, *name.split("."))
        if context.project.is_given(path) and context.project.get(path) != "other":
            return f"{mark} {context.display(path).text}"
    return mark


def name_place(context: DocumentContext, collection: str, mark: str) -> str:
    """The member, and the elevation it stands at: `X2 system scaffold, E2 Street side`."""
    if (collection, mark) not in context.given_sections:
        return mark
    told, node = name_member(context, collection, mark), context.project.schema.node((collection, mark))
    at = context.project.get((collection, mark, "elevation")) if "elevation" in node.children else None
    return told if at is None else f"{told}, {name_member(context, 'elevations', at.mark)}"


def name_linked(context: DocumentContext, path: tuple[str, ...], collection: str) -> Any:
    """As `name_member`, for the member that a reference leads to; the open value where it is absent."""
    linked = context.project.get(path)
    return context.display(path) if linked is None else name_member(context, collection, linked.mark)


def list_marks(context: DocumentContext, collection: str) -> tuple[str, ...]:
    """The marks of a collection; none if it is absent."""
    return context.project.members.get((collection,), ())


def name_opening(context: DocumentContext, face: str, mark: str) -> str:
    """`WD1`; `E0-A` of a mark that openings of other elevations have as well."""
    shared = context.project.remember(("openings of several elevations",), lambda: _find_shared(context))
    return f"{face}-{mark}" if mark in shared else mark


def _find_shared(context: DocumentContext) -> frozenset[str]:
    """The marks that openings of several elevations have."""
    members = context.project.members
    every = Counter(
        mark
        for face in list_marks(context, "elevations")
        for mark in dict.fromkeys(members.get(("elevations", face, "openings"), ()))
    )
    return frozenset(mark for mark, number in every.items() if number > 1)


def name_walls(marks: list[str]) -> str:
    """`wall W1`, `walls W1 and W2`, `walls W1, W2, and W3`: as a caption names them."""
    if len(marks) > MOST_NAMED:
        return f"walls {first_marks(marks)}"
    return f"wall{'s' if len(marks) > 1 else ''} {join_series(marks)}"


def tell_marks(context: DocumentContext, within: str) -> str:
    """`E1 South face, E2 Alley, J1 floor line`: what the marks in a text stand for; those of few members only."""
    named = set(re.findall(r"[\w-]+", within))
    told = ([mark for mark in list_marks(context, collection) if mark in named] for collection in _TOLD)
    few = zip(_TOLD, told, strict=True)
    return ", ".join(_name_placed(context, name, mark) for name, marks in few if len(marks) <= _FEW for mark in marks)


def _name_placed(context: DocumentContext, collection: str, mark: str) -> str:
    """`J2 opening perimeter (E2)`: the member with the mark of the elevation that it stands at."""
    placed = "elevation" in context.project.schema.node((collection, mark)).children
    at = context.project.get((collection, mark, "elevation")) if placed else None
    return name_member(context, collection, mark) + ("" if at is None else f" ({at.mark})")
