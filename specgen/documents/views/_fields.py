"""How fields are named where they are asked for."""

import re
from collections.abc import Iterable, Iterator

from specgen.computing.local_wind import is_wind_by_engineer
from specgen.documents.context import DocumentContext
from specgen.model.field import Field, Path, bind_path, dotted_path, matches
from specgen.model.value_text import words


def find_field(context: DocumentContext, dotted: str) -> Field | None:
    """The field of a dotted path; that of the first owed value below it for a collection; None for any other path."""
    schema = context.project.schema
    path = tuple(dotted.split("."))
    field = schema.field_at(path)
    if field is not None:
        return field
    below = (f for f in schema.fields.values() if len(f.path) > len(path) and matches(f.path, path))
    return next((f for f in below if f.ring != "optional"), None)


# What to send for a collection whose label by itself does not tell it.
_SENT = {
    "people": "People with roles and qualifications",
    "items": "Submittals that the specification requires for this work, or none",
    "details": "Water details: top of each wall, heads, jambs, penetrations, fixtures",
    "crews": "Crews: steps of the work, number of people, and people by name",
    "floor_lines": "Floor lines other than those with a joint listed",
    "hoses": "Hoses with length and bore",
    "instruments": "Instruments with calibration dates",
    "openings": "Openings with place, size, and flashing",
    "sealants": "Sealants, product and class",
    "shade": "Shade of each elevation: none, natural, shade cloth, or tent",
}
# The first package is revision 0 without a word.
_TOLD = ("package.revision",)
# The fields that a condition names.
_NAMED = re.compile(r"[a-z_]+(?:\.[a-z0-9_*]+)+")
# What ASCE 7 computes a pressure from. Under a local code that names no such standard the engineer gives the pressure.
OF_ASCE_7 = (
    "code.wind_standard",
    "site.exposure",
    "site.wind_speed",
    "site.risk_category",
    "site.topographic_factor",
    "building.mean_roof_height",
    "building.least_plan_width",
    "building.enclosure",
)
SUCTION = "design_pressure_outward"


def ask_by_code(context: DocumentContext, paths: Iterable[str]) -> list[str]:
    """The dotted paths, each once; the engineer's suction in place of what only ASCE 7 needs, under a local code.

    A field that the project rules out, and what every page tells without it, is asked of nobody.
    """
    paths = [path for path in paths if path not in _TOLD and not _is_ruled_out(context, path)]
    if not is_wind_by_engineer(context.project):
        return list(dict.fromkeys(paths))
    suctions = [dotted_path(path) for path in list_suctions(context)]
    asked = [entry for path in paths for entry in (suctions if path in OF_ASCE_7 else [path])]
    return list(dict.fromkeys(asked))


def list_suctions(context: DocumentContext) -> Iterator[Path]:
    """The fields of the suction on each elevation that the engineer has still to give."""
    for mark in context.project.members.get(("elevations",), ()):
        path = ("elevations", mark, SUCTION)
        if context.project.get(path) is None:
            yield path


def _is_ruled_out(context: DocumentContext, dotted: str) -> bool:
    """Whether what the project gives rules a field out: an old coating on a wall of brick."""
    path = tuple(dotted.split("."))
    project = context.project
    field = project.schema.field_at(path)
    if field is None or not field.condition or project.applies(path):
        return False
    named = (bind_path(tuple(name.split(".")), path) for name in _NAMED.findall(field.condition))
    return all(project.is_given(one) for one in named)


def name_fields(context: DocumentContext, paths: Iterable[str]) -> dict[str, list[str]]:
    """The labels of fields in their order, each with the marks of the members that lack it."""
    marks: dict[str, set[str]] = {}
    for dotted in paths:
        label, mark = _name(context, tuple(dotted.split(".")))
        marks.setdefault(label, set()).update([mark] if mark else ())
    return {label: sorted(found, key=lambda mark: (len(mark), mark)) for label, found in marks.items()}


def say_fields(names: dict[str, list[str]]) -> list[str]:
    """`R-value of the board (W1, W2)`: the labels with their marks."""
    return [f"{label} ({', '.join(marks)})" if marks else label for label, marks in names.items()]


def _name(context: DocumentContext, path: tuple[str, ...]) -> tuple[str, str]:
    """The label of a field or collection, and the mark of its innermost member that bears one, or is one of several."""
    try:
        node = context.project.schema.node(path)
    except KeyError:
        return path[-1].replace("_", " "), ""
    entry = node.field or node.collection
    mark = ""
    for depth in range(1, len(path)):
        mark = _name_member(context, path[: depth + 1], mark) or mark
    label = entry.label if entry is not None else path[-1].replace("_", " ")
    return _SENT.get(path[-1], label) if node.collection else label, mark


def _name_member(context: DocumentContext, member: tuple[str, ...], parent: str) -> str:
    """`W1`; `W1 mesh layer 2` for one of several without a mark, `south gloss` for one of a kind; empty for none."""
    collection = context.project.schema.node(member[:-1]).collection
    if collection is None:
        return ""
    if collection.kind == "items":
        several = len(context.project.members.get(member[:-1], ())) > 1
        return f"{parent} {collection.one} {int(member[-1]) + 1}".strip() if several else ""
    return f"{parent} {words(member[-1])}".strip() if collection.keys else member[-1]
