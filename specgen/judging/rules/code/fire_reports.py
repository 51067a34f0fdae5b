"""Where the building is tall, or stands close to the next, fire reports of this very wall are at hand.

Why: foam burns, and how fire climbs a wall hangs on board thickness, barrier and coats together. A report
of another build-up is no report of this one.

passes
    package: {purpose: mockup_submittal}
    code: {construction_type: IIB}
    building: {stories: 4, eifs_top: 50 ft}
    elevations: {E1: {fire_separation: 12 ft}}
    attachments:
      A1: {kind: test_report, standard: NFPA 285, assembly: W1}
      A2: {kind: test_report, standard: NFPA 268, assembly: W1}
fails COD-03a at building.stories
    package: {purpose: mockup_submittal}
    code: {construction_type: IIB}
    building: {stories: 4}
fails COD-03b at building.eifs_top
    package: {purpose: mockup_submittal}
    code: {construction_type: IIB}
    building: {eifs_top: 50 ft}
fails COD-03c at elevations.E1.fire_separation
    package: {purpose: mockup_submittal}
    elevations: {E1: {fire_separation: 12 ft}}
"""

from specgen.judging.fire_tests import PROPAGATION, RADIANT, may_not_burn, names_standard
from specgen.judging.rule import STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Elevation, Number, Wall
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "COD-03",
    "Fire reports of this very wall",
    remedy="Report covering board thickness, weather barrier and coats, or engineer's extension.",
    steps="site_conditions",
    documents="D02 D18",
)


@RULE.test(
    "a",
    STOP,
    "The building has {found} stories and no fire propagation report of this wall.",
    each="walls",
    at="building.stories",
    limit="fire.stories",
    document="fire propagation report of this wall",
)
def tall_without_report(wall: Wall, project: Description, limit: Number) -> Violations:
    """The building has more than one story and no report shows how fire climbs this wall."""
    if not is_draft(project) and all_known(
        lambda: more(project.building.stories, limit),
        lambda: may_not_burn(project),
        lambda: not _reported(project, wall, PROPAGATION),
    ):
        yield violation(project.building.stories)


@RULE.test(
    "b",
    STOP,
    "EIFS reaches {found}, above {wanted}, and no fire propagation report of this wall is given.",
    each="walls",
    at="building.eifs_top",
    limit="fire.top",
    document="fire propagation report of this wall",
)
def high_without_report(wall: Wall, project: Description, limit: Quantity) -> Violations:
    """EIFS reaches high up and no report shows how fire climbs this wall."""
    if not is_draft(project) and all_known(
        lambda: more(project.building.eifs_top, limit),
        lambda: may_not_burn(project),
        lambda: not _reported(project, wall, PROPAGATION),
    ):
        yield violation(project.building.eifs_top, wanted=limit)


@RULE.test(
    "c",
    STOP,
    "Fire separation is {found}; under {wanted} a radiant heat report is due and none is given.",
    at="elevation.fire_separation",
    limit="fire.separation",
    document="radiant heat report of this wall",
    lift="never",
)
def close_without_report(elevation: Elevation, project: Description, limit: Quantity) -> Violations:
    """The next building is near and no report shows that its fire does not light this wall."""
    if not is_draft(project) and all_known(
        lambda: less(elevation.fire_separation, limit),
        lambda: not _reported(project, elevation.wall, RADIANT),
    ):
        yield violation(elevation.fire_separation, wanted=limit)


def _reported(project: Description, wall: Wall, standard: str) -> bool:
    """Whether a paper by a standard is of this wall."""
    return is_documented(
        project,
        lambda paper: names_standard(paper.standard, standard),
        lambda paper: paper.assembly == wall,
    )
