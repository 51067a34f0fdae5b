"""What is proposed for confirmation: figures of the trade, and answers that what the project gives suggests."""

import re
from collections.abc import Callable, Iterable

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.field import Path, dotted_path
from specgen.model.source import Kind, Source
from specgen.quantities.quantity import Quantity

# The figures that the procedure goes by until somebody confirms or corrects them.
_OF_THE_TRADE = {
    "finish.flatness_long": ("flatness.long",),
    "finish.flatness_short": ("flatness.short",),
    "aesthetic_joint.tolerance": ("aesthetic_joint.tolerance",),
    "primer.most_humidity": ("weather.humidity",),
    "gloss.most_humidity": ("weather.humidity",),
    "spray.pattern": ("spray.pattern",),
    "spray.strainer_mesh": ("spray.strainer_least", "spray.strainer_most"),
    "sealants.*.field_tests": ("sealant.field_tests",),
    "weather.max_spray_wind": ("weather.wind_usual",),
    "walls.*.substrate.bond_limit": ("substrate.bond",),
}
_AROUND = "opening_perimeter"
# Which way a joint runs, by what it is.
_RUNS = {_AROUND: "around_opening", "floor_line": "horizontal"}
# The side of its elevation that a joint is as long as, by the way it runs.
_SIDES = {"horizontal": "width", "vertical": "height"}
# Words of a place beside the building, and of one on it.
_APART = re.compile(r"\b(?:trailer|yard|lot|fence|gate|beside|next to|free[- ]standing)\b", re.IGNORECASE)
_ON_WALL = re.compile(r"\b(?:bay|corner|on the (?:wall|building)|in place|story|floor)\b", re.IGNORECASE)
# Walls whose faces turn so far from each other, or from opposite each other, in degrees, show both sides of a plan.
_TURNED = 45


def propose(context: DocumentContext, dotted: str) -> tuple[DisplayValue, ...]:
    """What holds until somebody confirms or corrects it: nothing, one figure or answer, or the ends of a range."""
    path = tuple(dotted.split("."))
    field = context.project.schema.field_at(path)
    if field is None:
        return ()
    pattern = dotted_path(field.path)
    if pattern in _OF_THE_TRADE:
        return tuple(context.limit(row) for row in _OF_THE_TRADE[pattern])
    suggest = _SUGGESTED.get(pattern)
    value = suggest(context, path) if suggest else None
    return () if value is None else (DisplayValue(_tell(context.text(value, field)), value),)


def join_figures(figures: Iterable[DisplayValue]) -> str:
    """`1/8 in`, `60 to 100`; empty for none."""
    return " to ".join(figure.text for figure in figures)


def tell_basis(figures: Iterable[DisplayValue]) -> str:
    """`common practice, no source`: where figures come from, each origin once; empty for none."""
    return "; ".join(dict.fromkeys(_tell_origin(figure.source) for figure in figures if figure.source))


def _tell_origin(source: Source) -> str:
    """`from memory (ASTM C1521)`, or the text that a published figure is in."""
    named = source.short or source.reference
    if source.kind in (Kind.PRACTICE, Kind.MEMORY):
        return f"{source.kind.value} ({named})" if named else source.kind.value
    return named or source.kind.value


def _tell(text: str) -> str:
    return text.replace("free standing", "free-standing")


def _suggest_roof(context: DocumentContext, path: Path) -> object:
    """The top of the EIFS, else the highest elevation."""
    top = context.project.get(("building", "eifs_top"))
    return top if top is not None else max(_list_sides(context, "height"), default=None)


def _suggest_width(context: DocumentContext, path: Path) -> object:
    """The narrowest elevation, where elevations on two sides of the plan are given."""
    project, marks = context.project, context.project.members.get(("elevations",), ())
    facings = [float(facing.amount) for mark in marks if (facing := project.get(("elevations", mark, "facing")))]
    turned = {round(abs(one - other)) % 180 for one in facings for other in facings}
    both = any(_TURNED <= turn <= 180 - _TURNED for turn in turned)
    return min(_list_sides(context, "width"), default=None) if both else None


def _list_sides(context: DocumentContext, side: str) -> list[Quantity]:
    project = context.project
    given = (project.get(("elevations", mark, side)) for mark in project.members.get(("elevations",), ()))
    return [length for length in given if isinstance(length, Quantity)]


def _suggest_length(context: DocumentContext, path: Path) -> object:
    """The width of its elevation for a joint across it, the height for one up it; of its only elevation unless told."""
    project = context.project
    marks = project.members.get(("elevations",), ())
    mark = project.get((*path[:2], "elevation")) or (marks[0] if len(marks) == 1 else None)
    side = _SIDES.get(str(project.get((*path[:2], "runs"))))
    return project.get(("elevations", str(mark), side)) if mark and side else None


def _suggest_run(context: DocumentContext, path: Path) -> object:
    return _RUNS.get(str(context.project.get((*path[:2], "kind"))))


def _suggest_mockup(context: DocumentContext, path: Path) -> object:
    """Free-standing beside the building, in place on it, as its location says; nothing where that says both."""
    said = str(context.project.get(("mockup", "location")) or "")
    apart, on_wall = bool(_APART.search(said)), bool(_ON_WALL.search(said))
    return None if apart == on_wall else "free_standing" if apart else "in_place"


def _suggest_repair(context: DocumentContext, path: Path) -> object:
    """A spot repair remains visible, as the limits of the finish say."""
    return "recoat_to_break"


_SUGGESTED: dict[str, Callable[[DocumentContext, Path], object]] = {
    "building.mean_roof_height": _suggest_roof,
    "building.least_plan_width": _suggest_width,
    "joints.*.length": _suggest_length,
    "joints.*.runs": _suggest_run,
    "mockup.kind": _suggest_mockup,
    "finish.repair_method": _suggest_repair,
}
