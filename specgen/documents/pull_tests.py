"""How many pull tests the old surface of each wall asks for."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.required_documents import list_pending
from specgen.documents.wall_areas import tell_gross_area
from specgen.model.absence import Absent
from specgen.model.block import Blank
from specgen.model.working import Working

# The rule on how an old wall is prepared, whose figures are the EIFS manufacturer's.
_PREPARED = "ATT-06"
# The fault that is mended by new pointing, a kind of surface of its own.
_POINTED = "open_joints"
MOISTURE = "Maximum moisture of the wall"


def find_moisture_limit(context: DocumentContext) -> DisplayValue | Blank:
    """A place for the EIFS manufacturer's limit; open in a draft until the written instructions are there."""
    if context.draft and any(entry.code == _PREPARED for entry in list_pending(context)):
        return DisplayValue(f"[{MOISTURE}]", open=True)
    return Blank("EIFS manufacturer's limit", field="form.moisture_limit.f")


def tell_pull_tests(context: DocumentContext) -> str:
    """`minimum 9 on W1, 1364 sq ft, 3 of them on new pointing; 6 on W2, 1800 sq ft`; empty where no area is known."""
    told = "; ".join(_list_numbers(context))
    return f"minimum {told}" if told else ""


def _list_numbers(context: DocumentContext) -> Iterator[str]:
    """The walls of which surface and area are known, each with its number of tests, a set more on new pointing."""
    pulls = context.standards.limits["substrate.pulls"].value
    for mark in context.project.members[("walls",)]:
        area = tell_gross_area(context, mark)
        try:
            working = context.resolve(("walls", mark), "bond-pulls") if area else None
        except Absent:
            continue
        if isinstance(working, Working):
            pointed = _POINTED in map(str, context.project.get(("walls", mark, "substrate", "condition")) or ())
            more = round(float(str(pulls))) if pointed else 0
            told = f", {more} of them on new pointing" if pointed else ""
            yield f"{round(working.result) + more} on {mark}, {area}{told}"
