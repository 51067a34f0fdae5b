"""The mockup stands in the light of the wall it stands for, and shows a recoated patch and a day stop.

Why: gloss is accepted by eye, and an eye is led by the light. How a repair and a stopped coat look is best
known before the first of them is needed.

passes
    elevations: {E1: {critical_light: yes, facing: W}}
    mockup: {facing: SW, includes: [recoat_patch, day_stop]}
fails MOC-04a at mockup.width
    joints: {}
    elevations:
      E1:
        {width: 10 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft], horizontal_lines: [4 ft]}}
    mockup: {width: 6 ft, includes: [recoat_patch, day_stop]}
fails MOC-04b at mockup.height
    joints: {}
    elevations:
      E1:
        {width: 10 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft], horizontal_lines: [4 ft]}}
    mockup: {height: 5 ft, includes: [recoat_patch, day_stop]}
fails MOC-04c at mockup.facing
    elevations: {E1: {critical_light: yes, facing: W}}
    mockup: {facing: N}
fails MOC-04d at mockup.includes
    mockup: {includes: [day_stop]}
fails MOC-04e at mockup.includes
    mockup: {includes: [recoat_patch]}
"""

from collections.abc import Callable
from functools import partial

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.three_valued import members_where
from specgen.model.absence import all_known, any_known, read_all
from specgen.model.typed_views import Description, Elevation, Mockup
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity

Measured = Callable[[], Quantity]

RULE = Rule(
    "MOC-04",
    "Mockup in the light of the wall, with a recoat and a day stop",
    remedy="Place the mockup in the light of the critical face, and show a recoated patch and a day stop.",
    steps="mockup",
    documents="D09",
)


@RULE.test(
    "a",
    CAUTION,
    "The mockup is {found} wide; minimum {wanted}, the widest panel and {mockup.margin}.",
    at="mockup.width",
    limit="mockup.margin",
    remedy="Widen the mockup to a minimum of {wanted}, or turn it.",
)
def narrower_than_panel(project: Description, limit: Quantity, widest_panel: Measured) -> Violations:
    """The mockup does not hold the widest panel and what is beside it."""
    width, needed = read_all(lambda: project.mockup.width, lambda: widest_panel() + limit)
    if less(width, needed):
        yield violation(width, wanted=needed)


@RULE.test(
    "b",
    CAUTION,
    "The mockup is {found} high; minimum {wanted}, the highest panel and {mockup.margin}.",
    at="mockup.height",
    limit="mockup.margin",
    remedy="Raise the mockup to a minimum of {wanted}.",
)
def lower_than_panel(project: Description, limit: Quantity, highest_panel: Measured) -> Violations:
    """The mockup does not hold the highest panel and what is above it."""
    height, needed = read_all(lambda: project.mockup.height, lambda: highest_panel() + limit)
    if less(height, needed):
        yield violation(height, wanted=needed)


@RULE.test(
    "c",
    CAUTION,
    "The mockup faces {found}; the critical face is {wanted}.",
    at="mockup.facing",
    limit="mockup.turned",
    remedy="Turn the mockup to within {mockup.turned} of a critical face.",
)
def other_light(project: Description, limit: Quantity) -> Violations:
    """The mockup is turned away from every face in critical light."""
    faces = project.elevations
    if all_known(
        lambda: any_known(*(partial(_critical, face) for face in faces)),
        lambda: not any_known(*(partial(_like, face, project.mockup, limit) for face in faces)),
    ):
        critical = tuple(dict.fromkeys(face.facing for face in members_where(faces, _critical)))
        yield violation(project.mockup.facing, wanted=critical, say=_SEVERAL if len(critical) > 1 else "")


@RULE.test(
    "d",
    CAUTION,
    "The mockup shows no recoated patch.",
    at="mockup.includes",
    basis="memory",
    remedy="Recoat one patch after the last coat has dried, and leave it in view.",
    why="a repair shows on the wall sooner or later, and only the mockup tells how it looks",
)
def no_recoat(project: Description) -> Violations:
    """No patch is coated again."""
    if "recoat_patch" not in project.mockup.includes:
        yield violation(project.mockup.includes)


@RULE.test(
    "e",
    CAUTION,
    "The mockup shows no day stop.",
    at="mockup.includes",
    basis="memory",
    remedy="Include one end-of-day stop at a joint or corner.",
    why="a day ends on every wall, and only the mockup tells how that looks",
)
def no_day_stop(project: Description) -> Violations:
    """No coat is stopped and taken up again."""
    if "day_stop" not in project.mockup.includes:
        yield violation(project.mockup.includes)


_SEVERAL = "The mockup faces {found}; the critical faces are {wanted:and}."


def _critical(face: Elevation) -> bool:
    return bool(face.critical_light)


def _like(face: Elevation, mockup: Mockup, limit: Quantity) -> bool:
    """Whether a face is in critical light and the mockup looks its way, as far as the limit allows."""
    return all_known(lambda: face.critical_light, lambda: not more(_turned(face.facing, mockup.facing), limit))


def _turned(one: Quantity, other: Quantity) -> Quantity:
    """The angle between two bearings, the shorter way round the compass."""
    apart = abs(one.to("deg") - other.to("deg")) % 360
    return Quantity.of(min(apart, 360 - apart), "deg")
