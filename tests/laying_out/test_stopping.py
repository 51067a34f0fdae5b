"""Lines that stop at openings: runs are left out where that joins a strip to the panel beside it, and nowhere else.

The walls are small, in feet; what is joined is counted by hand.
"""

import random

from specgen.laying_out.assembling import assemble
from specgen.laying_out.face import Face, Limits, Movement, Opening
from specgen.laying_out.runs import Run
from specgen.laying_out.scoring import Wishes
from specgen.laying_out.search import Search
from specgen.laying_out.stopping import Stopped, Wall, find_stopped
from tests.laying_out.by_hand import best_of_all_stretches, stretches_of
from tests.laying_out.plans import draw_places, draw_plan, problem_of

# A line 1 ft from the right end, broken by an opening 6 to 8 ft from the left and 4 to 6 ft up.
OPENING = (Opening("B", 6, 4, 8, 6),)
LOWER, UPPER = Run(True, 7, 0, 4), Run(True, 7, 6, 10)


def stop(face: Face, upright: int) -> Stopped:
    """The lines that may stop, of an upright line that has a place of its own."""
    return find_stopped(Wall(face, Wishes(), (upright,), (), frozenset()), [((upright,), ())])


def test_a_line_that_only_cuts_off_strips_is_left_out_whole() -> None:
    face = Face("E1", 1, 8, 10, OPENING, Limits(8, 10, 80, 2))
    assert stop(face, 7) == ((), (), frozenset())
    through = assemble(face, (7,), (), Wishes(), "through")
    stopped = assemble(face, (7,), (), Wishes(), "stopped", left_out=frozenset({LOWER, UPPER}))
    assert (through.score.slivers, stopped.score.slivers) == (2, 0)
    assert (len(through.panels), len(stopped.panels)) == (3, 1)
    assert (through.score.joint_length, stopped.score.joint_length) == (8, 0)
    assert stopped.panels[0].net_area == 76


def test_a_run_stays_where_the_panel_would_be_past_a_limit() -> None:
    face = Face("E1", 1, 8, 10, OPENING, Limits(7, 10, 80, 2))
    assert stop(face, 7) == ((7,), (), frozenset())


def test_a_run_ends_at_a_movement_joint_too() -> None:
    # Above the joint at 5 ft the panel would have 42 sq ft, past the limit of 40, below it 35.
    face = Face("E1", 1, 7, 11, (), Limits(7, 11, 40, 2), level=(Movement("J1", "floor_line", 5),))
    assert stop(face, 6) == ((6,), (), {Run(True, 6, 0, 5)})
    stopped = assemble(face, (6,), (), Wishes(), "stopped", left_out=frozenset({Run(True, 6, 0, 5)}))
    assert [(j.mark, j.y1, j.y2) for j in stopped.joints if j.x1 == j.x2] == [("E1-V1", 5, 11)]
    assert sorted((p.x, p.y, p.width, p.height) for p in stopped.panels) == [(0, 0, 7, 5), (0, 5, 6, 6), (6, 5, 1, 6)]


def test_no_other_stretches_of_lines_at_the_same_places_are_better() -> None:
    compared = 0
    for seed in range(300):
        chance = random.Random(seed)
        plan = draw_plan(chance)
        places = draw_places(chance, plan, 2)
        problem = problem_of(plan, *places)
        through = Search(problem).find()
        # Lines stop where those that run through leave narrow panels; all choices of more stretches take too long.
        if not through.key.slivers or through.key.over or len(stretches_of(plan, *places)) > 8:
            continue
        starts = [through, Search(problem, slivers=False).find()]
        pairs = [(off(plan.upright_joints, one.upright), off(plan.level_joints, one.level)) for one in starts]
        free = off(plan.upright_joints, problem.upright), off(plan.level_joints, problem.level)
        best = find_stopped(Wall(problem.face, problem.wishes, *free, frozenset()), pairs)
        laid = assemble(problem.face, best.upright, best.level, problem.wishes, left_out=best.left_out)
        own = (laid.score.over_limits, laid.score.slivers, laid.score.missed, laid.score.joint_length)
        assert own == best_of_all_stretches(plan, *places), seed
        compared += 1
    assert compared > 30


def off(joints: tuple[int, ...], lines: tuple[int, ...]) -> tuple[int, ...]:
    """The lines that are on no joint."""
    return tuple(at for at in lines if at not in joints)


def test_a_joint_with_one_panel_at_both_hands_is_left_out_too() -> None:
    # Without the upper run alone, the lower one would end up within the panel it no longer divides.
    face = Face("E1", 1, 8, 10, (Opening("B", 6, 5, 8, 6),), Limits(8, 10, 80, 2))
    best = find_stopped(Wall(face, Wishes(), (7,), (), frozenset()), [((7,), ())])
    assert best == ((), (), frozenset())


def test_level_lines_stay_at_a_corner_where_another_elevation_is_met() -> None:
    # The line 1 ft up leaves a strip all along; on one side it goes on round the corner.
    face = Face("E1", 1, 8, 4, (), Limits(8, 8, 64, 2))
    free = find_stopped(Wall(face, Wishes(), (), (1,), frozenset()), [((), (1,))])
    held = find_stopped(Wall(face, Wishes(), (), (1,), frozenset({8})), [((), (1,))])
    assert (free.level, held.level) == ((), (1,))
