"""What the project provides meets the contract, or a deviation declares the difference.

Why: a reviewer approves only what he is shown. A difference he was not told of is never approved, and comes
off the wall at the applicator's cost.

passes
    contract:
      demands:
        - {paragraph: 2.3.B, field: walls.*.base_coat.dry_thickness, relation: ">=", value: 3/32 in}
    walls: {W1: {base_coat: {dry_thickness: 1/8 in}}}
fails SUB-05a at walls.W1.base_coat.dry_thickness
    contract:
      demands:
        - {paragraph: 2.3.B, field: walls.*.base_coat.dry_thickness, relation: ">=", value: 3/32 in}
    walls: {W1: {base_coat: {dry_thickness: 1/16 in}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.applies import subjects
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import Absent, if_given
from specgen.model.field import Path
from specgen.model.project import Project, View, asked_once
from specgen.model.typed_views import Demand, Description
from specgen.model.value_text import value_text
from specgen.reading.demand import convert_demand, meets

RULE = Rule(
    "SUB-05",
    "Specification requirements met, or deviation declared",
    remedy=(
        "Meet the requirement, or declare a deviation with its reason and its effects on cost, time, fire, "
        "and warranty."
    ),
    steps="site_conditions",
    documents="D03",
)

MISSING = object()  # the key of places where nothing is given

_SAID = {"=": "", "<=": "at most ", ">=": "at least ", "in": "one of "}


@RULE.test(
    "a",
    STOP,
    "The contract requires {wanted}; this project provides {found}, and no deviation is declared.",
    at="demand.field",
    basis="contract_review guide_submittals_memory",
)
def undeclared(demand: Demand, project: Description) -> Violations:
    """A value that the contract fixes is another one, and no deviation names the paragraph."""
    pattern, relation = tuple(demand.field.split(".")), demand.relation
    field = demand.project.schema.field_at(pattern)
    assert field is not None, pattern
    asked = convert_demand(field, relation, demand.value)
    said = _SAID[relation] + value_text(asked, field, project.package.units, project.package.both_units)
    if _declared(demand, project):
        return

    standing = _find_standing(project, pattern)
    wrong = [value for value in standing if value is not MISSING and not meets(value, relation, asked)]
    places = sorted(place for value in wrong for place in _held_for(demand, pattern, standing[value]))
    missing = [] if places else _held_for(demand, pattern, standing.get(MISSING, []))
    if missing:
        raise Absent(*dict.fromkeys(path for _, path in missing))
    for _, path in places:
        yield violation(demand.project.value(path), wanted=said, at=path)


def _declared(demand: Demand, project: Description) -> bool:
    """Whether a deviation names the paragraph of a demand, alone or behind its section."""
    paragraph, section = if_given(lambda: demand.paragraph), if_given(lambda: demand.section)
    return paragraph is not None and not _answered(project).isdisjoint({paragraph.strip(), f"{section} {paragraph}"})


@asked_once
def _answered(project: Description) -> frozenset[str]:
    """The paragraphs and rules that the deviations answer."""
    return frozenset(answer.strip() for deviation in project.deviations for answer in deviation.answers)


@asked_once
def _find_standing(project: Description, pattern: Path) -> dict[Any, list[tuple[int, Path]]]:
    """The places of a field in their order, by the value that stands there; under MISSING, what is not given.

    Members with the same value are compared with a demand once, so that many demands on many walls stay linear.
    """
    standing: dict[Any, list[tuple[int, Path]]] = {}
    for number, place in enumerate(_places(project.project, pattern)):
        try:
            if isinstance(place, Absent):
                raise place
            value, path = project.project.value(place), place
        except Absent as absent:
            value, path = MISSING, absent.path
        standing.setdefault(value.mark if isinstance(value, View) else value, []).append((number, path))
    return standing


def _places(project: Project, pattern: Path) -> Iterator[Path | Absent]:
    """Where a field stands for each member; a collection that is absent comes as Absent."""
    if "*" not in pattern:
        yield pattern
        return
    last = len(pattern) - 1 - pattern[::-1].index("*")
    for member in subjects(project, pattern[:last]):
        yield member if isinstance(member, Absent) else member + pattern[last + 1 :]


def _held_for(demand: Demand, pattern: Path, places: list[tuple[int, Path]]) -> list[tuple[int, Path]]:
    """The places whose members the demand is for; a demand that names none is for all."""
    marks = set(demand.get("for") or ())
    depths = [depth for depth, name in enumerate(pattern) if name == "*"]
    if not marks or not depths:
        return places
    held = []
    for number, path in places:
        through = {path[depth] for depth in depths if depth < len(path)}
        if not through or marks & through:
            held.append((number, path))
    return held
