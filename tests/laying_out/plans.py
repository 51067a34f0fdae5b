"""Small elevations at random, and the same in the product's own terms."""

import random

from hypothesis import strategies as st

from specgen.laying_out.face import Face, Limits, Movement, Opening
from specgen.laying_out.scoring import Wishes
from specgen.laying_out.search import Problem
from tests.laying_out.by_hand import Plan


def draw_plan(chance: random.Random) -> Plan:
    """An elevation with up to three openings, up to one joint each way, and limits that bind now and then."""
    width, height = chance.randint(6, 30), chance.randint(6, 24)
    openings: list[tuple[int, int, int, int]] = []
    for _ in range(chance.choice((0, 1, 1, 2, 2, 3))):
        left, low = chance.randrange(0, width - 1), chance.randrange(0, height - 1)
        one = (left, low, chance.randint(left + 1, width), chance.randint(low + 1, height))
        if all(one[2] <= a or c <= one[0] or one[3] <= b or d <= one[1] for a, b, c, d in openings):
            openings.append(one)
    most = (chance.randint(4, 12), chance.randint(4, 12))
    return Plan(
        width,
        height,
        tuple(openings),
        tuple(chance.sample(range(1, width), chance.choice((0, 0, 1)))),
        tuple(chance.sample(range(1, height), chance.choice((0, 0, 1)))),
        (*most, chance.randint(most[0] * most[1] // 2, most[0] * most[1])),
        chance.randint(1, 4),
        tuple(sorted(chance.sample(range(1, width), chance.choice((0, 0, 1, 2))))),
        tuple(sorted(chance.sample(range(1, height), chance.choice((0, 1, 1))))),
    )


def draw_places(chance: random.Random, plan: Plan, most: int) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Places for lines, some on edges of openings and on wishes."""
    liked = ({*plan.wanted_upright}, {*plan.wanted_level})
    for a, b, c, d in plan.openings:
        liked[0].update((a, c))
        liked[1].update((b, d))
    found = []
    for end, edges in zip((plan.width, plan.height), liked, strict=True):
        inside = [at for at in edges if 0 < at < end]
        some = set(chance.sample(inside, min(len(inside), most // 2))) | set(
            chance.sample(range(1, end), min(end - 1, most - most // 2))
        )
        found.append(tuple(sorted(some)))
    return found[0], found[1]


def face_of(plan: Plan) -> Face:
    """A plan as a face, a tick to the unit and a unit to the meter."""
    return Face(
        mark="E1",
        scale=1,
        width=plan.width,
        height=plan.height,
        openings=tuple(Opening(f"O{number}", *box) for number, box in enumerate(plan.openings)),
        limits=Limits(*plan.most, plan.least),
        upright=tuple(Movement(f"V{at}", "building_expansion", at) for at in plan.upright_joints),
        level=tuple(Movement(f"H{at}", "floor_line", at) for at in plan.level_joints),
    )


def problem_of(plan: Plan, upright: tuple[int, ...], level: tuple[int, ...]) -> Problem:
    """A plan as a problem over some places."""
    wishes = Wishes(tuple((at, 1) for at in plan.wanted_upright), tuple((at, 1) for at in plan.wanted_level))
    fixed = frozenset(plan.upright_joints), frozenset(plan.level_joints)
    return Problem(
        face_of(plan), wishes, tuple(sorted({*upright, *fixed[0]})), tuple(sorted({*level, *fixed[1]})), *fixed
    )


plans = st.integers(0, 2**32).map(lambda seed: draw_plan(random.Random(seed)))
