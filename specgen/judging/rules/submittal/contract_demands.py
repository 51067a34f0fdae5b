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

from specgen.judging.applies import subjects
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.three_valued import members_where
from specgen.model.absence import Absent, if_given
from specgen.model.field import Path
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

    def fails(place: Path | Absent) -> bool:
        if isinstance(place, Absent):
            raise place
        return not meets(demand.project.value(place), relation, asked)

    for place in members_where(_places(demand, pattern), fails):
        if not isinstance(place, Absent):
            yield violation(demand.project.value(place), wanted=said, at=place)


def _declared(demand: Demand, project: Description) -> bool:
    """Whether a deviation names the paragraph of a demand, alone or behind its section."""
    paragraph, section = if_given(lambda: demand.paragraph), if_given(lambda: demand.section)
    named = {answer.strip() for deviation in project.deviations for answer in deviation.answers}
    return paragraph is not None and bool(named & {paragraph.strip(), f"{section} {paragraph}"})


def _places(demand: Demand, pattern: Path) -> Iterator[Path | Absent]:
    """Where the demanded field stands for each member it holds for; a collection that is absent comes as Absent."""
    stars = [depth for depth, name in enumerate(pattern) if name == "*"]
    if not stars:
        yield pattern
        return
    marks: set[str] = set(demand.get("for") or ())
    for member in subjects(demand.project, pattern[: stars[-1]]):
        path = member.path if isinstance(member, Absent) else member
        through = {path[depth] for depth in stars if depth < len(path)}
        if not marks or not through or marks & through:
            yield member if isinstance(member, Absent) else member + pattern[stars[-1] + 1 :]
