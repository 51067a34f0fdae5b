"""The verdict of each wall, from what fired and what was left unjudged."""

from collections.abc import Iterable

from specgen.model.finding import Finding, NotJudged, Severity, Verdict

# The groups that say whether a wall suits the finish; of clauses on the project itself only the
# clash with local fasteners speaks of every wall.
_OF_A_WALL = {"ATT", "PLN", "INS", "BAS", "HEA", "COD"}
_MUST_BE_JUDGED = {"ATT", "INS", "COD", "HEA"}
_OF_EVERY_WALL = {"ATT-03"}


def deciding(walls: tuple[str, ...], findings: Iterable[Finding]) -> dict[str, tuple[Finding, ...]]:
    """The findings that decide the verdict of each wall; a note decides nothing."""
    told = [f for f in findings if f.severity is not Severity.NOTE and _speaks_of_walls(f)]
    made: dict[str, list[Finding]] = {wall: [] for wall in walls}
    for finding in told:
        for wall in made.keys() & set(finding.walls):
            made[wall].append(finding)
    return {wall: tuple(found) for wall, found in made.items()}


def _speaks_of_walls(finding: Finding) -> bool:
    return finding.rule in _OF_EVERY_WALL or (finding.rule[:3] in _OF_A_WALL and finding.subjects != ("project",))


def undecided(walls: tuple[str, ...], waiting: Iterable[NotJudged]) -> dict[str, tuple[str, ...]]:
    """The rules that each wall needs judged before it can have a plain yes, and that wait for a field."""
    counting = [n for n in waiting if n.rule[:3] in _MUST_BE_JUDGED]
    made: dict[str, dict[str, None]] = {wall: {} for wall in walls}
    for clause in counting:
        for wall in made.keys() & set(clause.walls):
            made[wall][clause.rule] = None
    return {wall: tuple(rules) for wall, rules in made.items()}


def verdict(findings: tuple[Finding, ...], waits: bool) -> Verdict:
    """`no` where a stop stands, `with_measures` where only cautions do, `yes` where nothing fired and nothing
    that counts was left unjudged, else `not_yet_known`."""
    severities = {f.severity for f in findings}
    if Severity.STOP in severities:
        return Verdict.NO
    if Severity.CAUTION in severities:
        return Verdict.WITH_MEASURES
    return Verdict.NOT_YET_KNOWN if waits else Verdict.YES
