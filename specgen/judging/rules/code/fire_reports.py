"""Where foam stands in an exterior wall of types I to IV, fire reports of this very wall are at hand.

Why: foam burns, and fire spread depends on board thickness, WRB and coats together. The International
Building Code asks for both tests whatever the height and the fire separation: the way out of a one-story building needs
metal-faced foam and sprinklers, and no EIFS has metal over its foam. The 40 ft of the code belong to other claddings.
Type V and the International Residential Code ask for neither test. Under a local code the authority says which fire
class the wall needs; its answer stands under `code.local_amendments`, its topic naming fire. A report of another
build-up is no report of this one.

passes
    package: {purpose: mockup_submittal}
    code: {model: ibc, construction_type: IIB}
    walls: {W1: {insulation: {kind: eps}}}
    attachments:
      A1: {kind: test_report, standard: NFPA 285, assembly: W1}
      A2: {kind: test_report, standard: NFPA 268, assembly: W1}
passes
    package: {purpose: mockup_submittal}
    code: {model: ibc, construction_type: VB}
fails COD-03a at code.construction_type
    package: {purpose: mockup_submittal}
    code: {model: ibc, construction_type: IIB}
    walls: {W1: {insulation: {kind: eps}}}
    building: {stories: 1}
fails COD-03c at code.construction_type
    package: {purpose: mockup_submittal}
    code: {model: ibc, construction_type: IIB}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {fire_separation: 60 ft}}
fails COD-03d at code.model
    code: {model: other}
"""

from specgen.judging.choice_groups import names
from specgen.judging.fire_tests import PROPAGATION, RADIANT
from specgen.judging.papers import Paper, by_standard, of_wall, to_list
from specgen.judging.rule import CAUTION, STOP, LookedUp, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented
from specgen.model.absence import all_known, if_given
from specgen.model.typed_views import Description, LocalAmendment, Wall

RULE = Rule(
    "COD-03",
    "Fire test reports of this wall",
    remedy="Submit an NFPA 285 report covering this board thickness, WRB, and coating, or an engineer's signed "
    "extension of one.",
    steps="site_conditions",
    documents="D02 D18",
)


@RULE.test(
    "a",
    STOP,
    "Foam plastic in an exterior wall of type {found} requires an NFPA 285 report of this wall; none is listed.",
    each="walls",
    at="code.construction_type",
    document="NFPA 285 report of this wall",
    basis="ibc_foam_walls",
)
def no_propagation_report(wall: Wall, project: Description, fire_propagation_due: LookedUp) -> Violations:
    """No report shows how fire climbs this wall."""
    yield from _unreported(wall, project, fire_propagation_due, PROPAGATION)


@RULE.test(
    "c",
    STOP,
    "Foam plastic in an exterior wall of type {found} requires an NFPA 268 report of this wall; none is listed.",
    each="walls",
    at="code.construction_type",
    document="NFPA 268 report of this wall",
    basis="ibc_foam_ignition_memory ibc_ignition",
    remedy="Submit an NFPA 268 report covering this board thickness and coating, or an engineer's signed "
    "extension of one.",
    why="heat from a burning building nearby can ignite the wall",
)
def no_radiant_report(wall: Wall, project: Description, radiant_heat_due: LookedUp) -> Violations:
    """No report shows that a fire next door does not light this wall."""
    yield from _unreported(wall, project, radiant_heat_due, RADIANT)


@RULE.test(
    "d",
    CAUTION,
    "The local code governs, and the fire class it requires of the wall is not given.",
    at="code.model",
    basis="practice",
    remedy="Ask the authority having jurisdiction in writing which fire class the wall requires, and record the answer "
    "in the next revision.",
    why="a local code sets a fire class of its own",
)
def unknown_fire_class(project: Description) -> Violations:
    """The wall is built under a local code, and nobody says what it asks of the wall in a fire."""
    if project.code.model == "other" and not _tells_of_fire(project):
        yield violation(project.code.model)


def _unreported(wall: Wall, project: Description, due: LookedUp, standard: str) -> Violations:
    """The type of construction, where a test is due and no document by its standard is of this wall."""
    report = (by_standard(standard), of_wall(wall))
    if not is_draft(project) and all_known(lambda: due().result, lambda: not _is_listed(project, wall, report)):
        yield violation(project.code.construction_type, to_add=to_list(report))


def _is_listed(project: Description, wall: Wall, report: Paper) -> bool:
    """Whether a report of this wall is among the attachments."""
    among = project.attachments.find_referring("assembly", wall.mark) if project.attachments.is_given() else ()
    return is_documented(project, report, among)


def _tells_of_fire(project: Description) -> bool:
    """Whether a local amendment is on fire."""
    amendments = project.code.local_amendments
    return any(map(_is_on_fire, amendments if amendments.is_given() else ()))


def _is_on_fire(amendment: LocalAmendment) -> bool:
    return names(if_given(lambda: amendment.topic) or "", "fire")
