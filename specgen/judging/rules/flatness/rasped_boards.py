"""Rasped boards pass the straightedge, and lines the chalk line, before anything is cut into them or put on them.

Why: base coat and smoothing follow the board. What is not plane or straight in the foam stands in the gloss, and can be
mended there no more.

passes
    elevations: {E1: {wall: W1}}
    inspection:
      - {step: board_straightedge, elevation: E1, done_on: 2027-05-20, outcome: accepted}
      - {step: sight_lines, elevation: E1, done_on: 2027-05-20, outcome: accepted}
    log: [{step: aesthetic_joints, elevation: E1, date: 2027-05-21, started_at: 07:00}]
fails PLN-03a at log.0.step
    elevations: {E1: {wall: W1}}
    inspection: [{step: sight_lines, elevation: E1, done_on: 2027-05-20, outcome: accepted}]
    log: [{step: aesthetic_joints, elevation: E1, date: 2027-05-21, started_at: 07:00}]
fails PLN-03b at log.0.step
    elevations: {E1: {wall: W1}}
    inspection:
      - {step: board_straightedge, elevation: E1, done_on: 2027-05-20, outcome: accepted}
      - {step: sight_lines, elevation: E1, done_on: 2027-05-20, outcome: refused}
    log: [{step: mesh, elevation: E1, date: 2027-05-21, started_at: 07:00}]
"""

from functools import cache

from specgen.judging.entry_view import FoundFact, ask_fact
from specgen.judging.released_before import Point, find_unreleased
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import Absent
from specgen.model.typed_views import SiteRecordEntry
from specgen.model.value_text import words

RULE = Rule(
    "PLN-03",
    "Rasped boards and lines accepted",
    remedy="Rasp and level the face, check it with straightedges, and snap edges, joints, and corners in white chalk.",
    steps="rasp aesthetic_joints",
    documents="D11 D12",
)

# Work that is cut into the boards or put on them. The hold point of rasping takes in both.
OVER_BOARDS = ("aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "primer", "gloss")
PLANE = Point(of=("rasp",), releases=("rasp",), inspections=("board_straightedge", "rasp"))
LINES = Point(of=("rasp",), releases=("rasp",), inspections=("sight_lines", "rasp"))


@RULE.test(
    "a",
    STOP,
    "Work on {found} began before the rasped boards were accepted by straightedge.",
    at="log.step",
    basis="practice",
    remedy=(
        "Stop at this elevation. Check the face with straightedges; where gaps are too wide, rasp bare boards, or "
        "level the base coat as the architect directs, and have it accepted before work goes on."
    ),
)
def boards_not_passed(log: SiteRecordEntry) -> Violations:
    """Boards were cut or covered before they passed the straightedge."""
    return _tell_lapse(log, PLANE)


@RULE.test(
    "b",
    STOP,
    "Work on {found} began before the lines were accepted by chalk line.",
    at="log.step",
    basis="practice",
    step="aesthetic_joints",
    remedy=(
        "Stop at this elevation. Snap edges, joints, and corners in white chalk, correct lines out of true, and have "
        "them accepted before work goes on."
    ),
    why="a line that runs out of true cannot be moved once it is coated",
)
def lines_not_passed(log: SiteRecordEntry) -> Violations:
    """Boards were cut or covered before edges, joints and corners were seen to run true."""
    return _tell_lapse(log, LINES)


def _tell_lapse(log: SiteRecordEntry, point: Point) -> Violations:
    """The first work over boards of an elevation that did not wait for a point, and how many days of it there were."""
    if log.step not in OVER_BOARDS or log.elevation.wall.attachment.method == "direct_applied":
        return
    lapse = ask_fact(log, _lapse_of(point))
    if lapse is not None and lapse.missing:
        raise Absent(*lapse.missing)
    if lapse is not None:
        yield violation(words(log.step) + (f" (first of {lapse.days} days)" if lapse.days > 1 else ""))


@cache
def _lapse_of(point: Point) -> FoundFact:
    """What an entry has to tell of work before a point; the same question for the same point."""
    return FoundFact(lambda project: find_unreleased(project, point, OVER_BOARDS))
