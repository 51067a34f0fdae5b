"""How long each step dries or cures before the next: where the project gives it, else the row of the trade for it."""

from fractions import Fraction
from typing import NamedTuple

from specgen.model.condition import parse_condition, terms
from specgen.model.field import Path, bind_path, dotted_path
from specgen.model.project import Project
from specgen.model.source import InForce, Kind, Source
from specgen.model.standard import Standards
from specgen.resolving.answer_sources import answer_source
from specgen.resolving.limits_in_force import limit_in_force, maker_source

# The field of the hours; a star stands for each wall, or for each layer of its mesh.
DRYING: dict[str, Path] = {
    "wrb": ("walls", "*", "wrb", "dry_hours"),
    "boards": ("walls", "*", "attachment", "cure_hours"),
    "heavy_mesh": ("walls", "*", "mesh", "layers", "*", "dry_hours"),
    "mesh": ("walls", "*", "base_coat", "first_pass_dry_hours"),
    "second_pass": ("walls", "*", "base_coat", "cure_hours"),
    "smoothing_2": ("smoothing", "dry_hours"),
    "primer": ("primer", "dry_hours"),
    "gloss": ("gloss", "dry_hours"),
}
BETWEEN: dict[str, Path] = {"smoothing_1": ("smoothing", "between_hours")}
# The row of the limits that stands in for a field not given.
USUAL = {
    "boards": "adhesive.cure",
    "heavy_mesh": "mesh.heavy_dry",
    "second_pass": "base_coat.cure",
    "smoothing_2": "smoothing.dry",
    "primer": "primer.dry",
    "gloss": "gloss.dry",
}


class Drying(NamedTuple):
    """The least hours behind a step, and where they stand: a field, or a row of the limits."""

    hours: Fraction
    source: Source
    path: Path = ()
    row: str = ""
    in_force: InForce | None = None  # of the row


def find_drying(project: Project, standards: Standards, step: str, wall: str = "") -> Drying | None:
    """The least hours behind a step on a wall: the longest that the project gives, else those usual in the trade.

    None where neither is known, as where the manufacturer's instructions alone tell them, and for a step behind which
    nothing dries.
    """
    pattern = DRYING.get(step) or BETWEEN.get(step)
    given = [] if pattern is None else list_drying_paths(project, pattern, wall)
    told = [(Fraction(project.value(path)), path) for path in given if project.get(path) is not None]
    if told:
        hours, path = max(told)
        return Drying(hours, _find_source(project, standards, step, path), path)
    if step not in USUAL:
        return None
    figure = limit_in_force(project, standards.limits[USUAL[step]])
    return Drying(Fraction(figure.value), figure.source, row=USUAL[step], in_force=figure)


def _find_source(project: Project, standards: Standards, step: str, path: Path) -> Source:
    """Whose hours a field holds: those of an answer, the manufacturer, the project, or usual in the trade."""
    if path not in project.values and step in USUAL:
        return limit_in_force(project, standards.limits[USUAL[step]]).source
    maker = maker_source(project, path) if path in project.from_maker else None
    return answer_source(project, path) or maker or Source(Kind.PROJECT, dotted_path(path))


def count_coats_within(project: Project, step: str, wall: str) -> int:
    """How many coats of a step dry one after the other within it: those of the WRB; any other step is one coat."""
    return int(project.get(("walls", wall, "wrb", "coats")) or 1) if step == "wrb" else 1


def list_drying_paths(project: Project, pattern: Path, wall: str) -> list[Path]:
    """The paths of a pattern on one wall; of layers of mesh those of the heavy one."""
    at = ("walls", wall, *pattern[2:]) if pattern[0] == "walls" else pattern
    if "*" not in at:
        return [at]
    star = at.index("*")
    layers = [(*at[:star], mark) for mark in project.members.get(at[:star], ())]
    return [(*layer, *at[star + 1 :]) for layer in layers if project.get((*layer, "kind")) == "high_impact"]


def list_applying(project: Project, step: str, wall: str = "") -> list[Path]:
    """The paths of the hours behind a step on a wall that apply; Absent where it is not known whether they do."""
    pattern = DRYING.get(step) or BETWEEN.get(step)
    if step == "heavy_mesh":
        project.marks(("walls", wall, "mesh", "layers"))
    paths = [] if pattern is None else list_drying_paths(project, pattern, wall)
    applying = [path for path in paths if project.applies(path)]
    for path in paths if not applying else ():
        field = project.schema.node(path).field
        for term in terms(parse_condition(field.condition)) if field is not None and field.condition else ():
            project.value(bind_path(".".join(term.path), path))
    return applying
