"""The mockup is accepted with every line passed before work on the walls begins.

Why: work that runs ahead of acceptance has nothing to be held against. A line that failed and was signed all the same
is a dispute on every elevation.

passes
    mockup: {accepted_on: 2027-04-05}
    elevations: {E1: {wall: W1}}
    log: [{step: boards, elevation: E1, date: 2027-04-05}]
    result: [{criterion: gloss, passed: yes}]
fails MOC-06a at log.0.date
    mockup: {accepted_on: 2027-04-05}
    elevations: {E1: {wall: W1}}
    log: [{step: boards, elevation: E1, date: 2027-04-02}]
fails MOC-06b at result.0.passed
    mockup: {accepted_on: 2027-04-05}
    result: [{criterion: gloss, passed: no}]
fails MOC-06b at result.0.passed
    mockup: {accepted_on: 2027-04-05}
    gloss: {coats: 2}
    result:
      - {criterion: primer_gloss_cup, part: coat 1, passed: no}
      - {criterion: primer_gloss_cup, part: coat 2, passed: yes}
"""

from datetime import date

from specgen.judging.choice_groups import BEFORE_MOCKUP, names, normalize
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.site_work import area_of, entry_of, is_told_at
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.project import Project, asked_once
from specgen.model.record import Entry
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, Result, SiteRecordEntry
from specgen.recording.history import History, is_same_place
from specgen.recording.mockup_results import find_row

RULE = Rule(
    "MOC-06",
    "Acceptance of the mockup",
    remedy="Stop work on the walls until the mockup passes and its acceptance form is complete and signed.",
    steps="mockup",
    documents="D10 D11",
)

# How an area names the mockup itself, wherever it stands.
OF_MOCKUP = ("mockup", "mock-up", "mock up")


@RULE.test(
    "a",
    STOP,
    "Work was done on {found}; the mockup was accepted on {wanted}.",
    at="log.date",
    basis="practice",
    remedy=(
        "Hold the work done before acceptance for the architect, and compare it with the accepted mockup; replace or "
        "recoat to a natural break what differs."
    ),
)
def ahead_of_acceptance(log: SiteRecordEntry, project: Description) -> Violations:
    """Work was done on a wall before the mockup was accepted."""
    if log.step in BEFORE_MOCKUP or not is_told_at(log) or _is_on_mockup(log, project):
        return
    accepted = _find_acceptance(project)
    if log.date < accepted:
        yield violation(log.date, wanted=accepted)


@RULE.test(
    "b",
    STOP,
    "The mockup was accepted although this line failed: {found}.",
    at="result.passed",
    basis="practice",
    remedy=(
        "Correct the mockup and read the line again, or list a deviation that the architect approves for it; sign the "
        "acceptance form anew."
    ),
    why="a line that failed on the accepted mockup has no standard on the wall",
)
def accepted_with_failure(result: Result, history: History, project: Description, standards: Standards) -> Violations:
    """A line failed, was not passed later, and is answered by no approved deviation, and the mockup was accepted."""
    if result.passed:
        return
    own = if_given(lambda: result.own)
    criterion, _ = read_all(lambda: f"own {own}" if own else result.criterion, lambda: _find_acceptance(project))
    entry = entry_of(result)
    row = find_row(project.project, standards, entry)
    if entry.number < _find_last_passed(project.project, standards).get(row, -1):
        return
    title = f"Project criterion {own}" if own else standards.criteria[criterion].title
    if not _is_deviated(project, (criterion, title)):
        yield violation(title)


def _is_on_mockup(log: SiteRecordEntry, project: Description) -> bool:
    """Whether an entry tells of work on the mockup itself, by the area that it names."""
    area = area_of(log)
    place = if_given(lambda: project.mockup.location) or ""
    return any(names(area, word) for word in OF_MOCKUP) or bool(area and place and is_same_place(area, place))


@asked_once
def _find_acceptance(project: Description) -> date:
    """The day on which the mockup was first accepted; raises Absent.

    A repeat of the mockup, as after a change of batch, does not put work out of order that the first one allowed.
    """
    inspections = project.project.records.of("inspection")
    days: list[date] = [entry.values["done_on"] for entry in inspections if _accepts_mockup(entry)]
    given = if_given(lambda: project.mockup.accepted_on)
    days += [given] if given is not None else []
    if not days:
        raise Absent(("mockup", "accepted_on"))
    return min(days)


def _accepts_mockup(entry: Entry) -> bool:
    told = entry.values
    return told.get("step") == "mockup" and told.get("outcome") == "accepted" and "done_on" in told


def _find_last_passed(project: Project, standards: Standards) -> dict[str, int]:
    """The number of the last result by which each row of the acceptance form passed."""

    def find() -> dict[str, int]:
        passed = (entry for entry in project.records.of("result") if entry.get("passed") is True)
        return {find_row(project, standards, entry): entry.number for entry in passed}

    return project.remember(_find_last_passed, find)


def _is_deviated(project: Description, wanted: tuple[str, ...]) -> bool:
    """Whether an approved deviation answers a line by its name or its title; one that answers the rule lifts it."""
    words = set(map(normalize, wanted))
    return any(words & set(map(normalize, one.answers)) and one.get("approved_on") for one in project.deviations)
