"""The mockup stands in the light of the wall it stands for, and shows a recoated patch and a day stop.

Why: gloss is accepted by eye, and an eye is led by the light. How a repair and a stopped coat look is best
known before the first of them is needed.

passes
    elevations: {E1: {critical_light: yes, facing: W}}
    mockup: {facing: SW, includes: [recoat_patch, day_stop]}
fails MOC-04c at mockup.facing
    elevations: {E1: {critical_light: yes, facing: W}}
    mockup: {facing: N}
fails MOC-04d at mockup.includes
    mockup: {includes: [day_stop]}
fails MOC-04e at mockup.includes
    mockup: {includes: [recoat_patch]}
"""

from collections.abc import Iterator
from functools import partial
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.judging.three_valued import every, some, which
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "MOC-04",
    "Mockup in the light of the wall, with a recoat and a day stop",
    remedy="Enlarge, turn, add.",
    steps="mockup",
    documents="D09",
    manual=__doc__,
)


@RULE.clause(
    "c",
    CAUTION,
    "The mockup stands in other light: it faces {found}, the critical face {wanted}.",
    needs="elevations.*.critical_light elevations.*.facing mockup.facing",
    limit="mockup.turned",
)
def other_light(project: Any, limit: Any) -> Iterator[Found]:
    """The mockup is turned away from every face in critical light."""
    faces = project.elevations
    if every(
        lambda: some(*(partial(_critical, face) for face in faces)),
        lambda: not some(*(partial(_like, face, project.mockup, limit) for face in faces)),
    ):
        yield found(project.mockup.facing, wanted=tuple(face.facing for face in which(faces, _critical)))


@RULE.clause(
    "d",
    CAUTION,
    "The mockup shows no recoated patch.",
    needs="mockup.includes",
    basis="memory",
)
def no_recoat(project: Any) -> Iterator[Found]:
    """No patch is coated again."""
    if "recoat_patch" not in project.mockup.includes:
        yield found(project.mockup.includes)


@RULE.clause(
    "e",
    CAUTION,
    "The mockup shows no day stop.",
    needs="mockup.includes",
    basis="memory",
)
def no_day_stop(project: Any) -> Iterator[Found]:
    """No coat is stopped and taken up again."""
    if "day_stop" not in project.mockup.includes:
        yield found(project.mockup.includes)


def _critical(face: Any) -> bool:
    return bool(face.critical_light)


def _like(face: Any, mockup: Any, limit: Any) -> bool:
    """Whether a face is in critical light and the mockup looks its way, as far as the limit allows."""
    return every(lambda: face.critical_light, lambda: not more(_turned(face.facing, mockup.facing), limit))


def _turned(one: Any, other: Any) -> Any:
    """The angle between two bearings, the shorter way round the compass."""
    apart = abs(one.to("deg") - other.to("deg")) % 360
    return Quantity.of(min(apart, 360 - apart), "deg")
