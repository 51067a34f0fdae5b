"""The verdict of each wall, from the findings and the clauses not judged."""

from collections.abc import Iterable

from specgen.model.finding import Finding, NotJudged, Severity, Verdict

# Groups of rules that decide whether a wall can take the finish. Of the clauses on the project itself only that on
# local fasteners counts for every wall.
_OF_A_WALL = {"ATT", "PLN", "INS", "BAS", "HEA", "COD", "WAT"}
_MUST_BE_JUDGED = {"ATT", "INS", "COD", "HEA"}
_OF_EVERY_WALL = {"ATT-03"}


def find_deciding(walls: tuple[str, ...], findings: Iterable[Finding]) -> dict[str, tuple[Finding, ...]]:
    """The findings that decide the verdict of each wall; notes do not count."""
    relevant = [f for f in findings if f.severity is not Severity.NOTE and _speaks_of_walls(f)]
    by_wall: dict[str, list[Finding]] = {wall: [] for wall in walls}
    for finding in relevant:
        for wall in by_wall.keys() & set(finding.walls):
            by_wall[wall].append(finding)
    return {wall: tuple(found) for wall, found in by_wall.items()}


def _speaks_of_walls(finding: Finding) -> bool:
    return finding.rule in _OF_EVERY_WALL or (finding.rule[:3] in _OF_A_WALL and finding.subjects != ("project",))


def find_undecided(walls: tuple[str, ...], waiting: Iterable[NotJudged]) -> dict[str, tuple[str, ...]]:
    """The rules that must be judged before a wall can have a plain yes, and that still wait for a field."""
    counting = [n for n in waiting if n.rule[:3] in _MUST_BE_JUDGED]
    by_wall: dict[str, dict[str, None]] = {wall: {} for wall in walls}
    for clause in counting:
        for wall in by_wall.keys() & set(clause.walls):
            by_wall[wall][clause.rule] = None
    return {wall: tuple(rules) for wall, rules in by_wall.items()}


def verdict(findings: tuple[Finding, ...], waits: bool) -> Verdict:
    """`no` for a stop, `with_measures` for cautions only, `not_yet_known` if a rule still waits, else `yes`."""
    severities = {f.severity for f in findings}
    if Severity.STOP in severities:
        return Verdict.NO
    if Severity.CAUTION in severities:
        return Verdict.WITH_MEASURES
    return Verdict.NOT_YET_KNOWN if waits else Verdict.YES
