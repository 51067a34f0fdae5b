"""Lines proposed are never worse than the best of all, found by trying every choice of the same places."""

import random

import pytest

from specgen.laying_out.search import Search
from tests.laying_out.by_hand import best_of_all, score
from tests.laying_out.plans import draw_places, draw_plan, problem_of


@pytest.mark.parametrize("seed", range(300))
def test_no_choice_of_the_same_places_is_better(seed: int) -> None:
    chance = random.Random(seed)
    plan = draw_plan(chance)
    places = draw_places(chance, plan, 4)
    found = Search(problem_of(plan, *places)).find()
    lines = set(found.upright) - set(plan.upright_joints), set(found.level) - set(plan.level_joints)
    own = score(plan, tuple(lines[0]), tuple(lines[1]))
    assert own == best_of_all(plan, *places)
    assert found.is_proved
    assert found.key[:3] == own[:3]
    assert found.key.length == own.length
