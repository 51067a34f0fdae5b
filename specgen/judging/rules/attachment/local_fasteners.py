"""Local code lets the board stand without fasteners.

Why: an official who wants fasteners and a finish that shows them cannot both be served. The answer
is needed before the design goes on, for it may change the finish. Many local rules hold above a story only:
`code.local_fasteners_above` is the height from which it holds, and an elevation may carry an answer of its own. A lower
wing keeps the finish where it is a wall of its own.

passes
    code: {local_fasteners_required: no}
passes
    code: {local_fasteners_required: yes, local_fasteners_above: 24 ft}
    elevations: {E1: {base_above_grade: 0 ft, height: 22 ft}}
fails ATT-03a at code.local_fasteners_required
    code: {local_fasteners_required: yes}
fails ATT-03b at elevations.E1.height
    code: {local_fasteners_required: yes, local_fasteners_above: 24 ft}
    elevations: {E1: {base_above_grade: 0 ft, height: 46 ft}}
fails ATT-03c at elevations.E1.local_fasteners_required
    code: {local_fasteners_required: no}
    elevations: {E1: {local_fasteners_required: yes}}
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import all_known, any_known, if_given
from specgen.model.project import asked_once
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "ATT-03",
    "No fasteners required by local code",
    remedy="Obtain written approval of an alternative from the authority having jurisdiction before design proceeds, "
    "or choose another finish.",
    steps="site_conditions",
    documents="D03 D02",
)


@RULE.test(
    "a",
    STOP,
    "Local code requires mechanical fasteners, which this finish does not permit.",
    at="code.local_fasteners_required",
    basis="city_fasteners practice",
)
def wanted_everywhere(project: Description) -> Violations:
    """Local code wants fasteners, and says of no part of the building that it does not."""
    if project.code.local_fasteners_required and not _is_narrowed(project):
        yield violation(project.code.local_fasteners_required)


@RULE.test(
    "b",
    STOP,
    "Local code requires mechanical fasteners above {wanted}; this elevation reaches {found}.",
    at="elevation.height",
    basis="city_fasteners practice",
    remedy="Obtain written approval of an alternative from the authority having jurisdiction before design proceeds, "
    "or choose another finish above {wanted}, with the area below it described as a wall of its own.",
)
def wanted_above(elevation: Elevation, project: Description) -> Violations:
    """The elevation reaches above the height from which local code wants fasteners."""
    above = _height_of_rule(project)
    if above is None or _own_answer(elevation) is not None:
        return
    if all_known(
        lambda: project.code.local_fasteners_required,
        lambda: not _ends_below(project, above),
        lambda: any_known(
            lambda: more(elevation.height, above), lambda: more(elevation.height + elevation.base_above_grade, above)
        ),
    ):
        yield violation(_known_top(elevation), wanted=above)


@RULE.test(
    "c",
    STOP,
    "Local code requires mechanical fasteners on this elevation, which this finish does not permit.",
    at="elevation.local_fasteners_required",
    basis="city_fasteners practice",
)
def wanted_here(elevation: Elevation, project: Description) -> Violations:
    """The answer for this elevation wants fasteners; beside elevations with an answer, that for the building counts."""
    own = _own_answer(elevation)
    by_building = own is None and _height_of_rule(project) is None and _is_narrowed(project)
    if own or (by_building and project.code.local_fasteners_required):
        yield violation("yes")


def _height_of_rule(project: Description) -> Quantity | None:
    """The height above which local code wants fasteners; None where it makes no difference of heights."""
    return if_given(lambda: project.code.local_fasteners_above)


def _own_answer(elevation: Elevation) -> bool | None:
    """The answer for an elevation; None where that for the building counts."""
    return if_given(lambda: elevation.local_fasteners_required)


@asked_once
def _is_narrowed(project: Description) -> bool:
    """Whether local code wants fasteners on some of the building only."""
    elevations = project.elevations if project.elevations.is_given() else ()
    return _height_of_rule(project) is not None or any(_own_answer(entry) is not None for entry in elevations)


def _ends_below(project: Description, above: Quantity) -> bool:
    """Whether all EIFS of the building is known to end below a height."""
    top = if_given(lambda: project.building.eifs_top)
    return top is not None and not more(top, above)


def _known_top(elevation: Elevation) -> Quantity:
    """The top of an elevation above grade, as far as it is known; raises Absent without its height."""
    base = if_given(lambda: elevation.base_above_grade)
    return elevation.height if base is None else elevation.height + base
