"""The verdict of each wall, from what fired and what was left unjudged."""

from collections.abc import Iterable

from ..vocabulary.finding import Finding, NotJudged, Severity, Verdict

# The groups that say whether a wall suits the finish; of clauses on the project itself only the
# clash with local fasteners speaks of every wall.
_OF_A_WALL = {"ATT", "PLN", "INS", "BAS", "HEA", "COD"}
_MUST_BE_JUDGED = {"ATT", "INS", "COD", "HEA"}
_OF_EVERY_WALL = {"ATT-03"}


def deciding(walls: tuple[str, ...], findings: Iterable[Finding]) -> dict[str, tuple[Finding, ...]]:
    """The findings that decide the verdict of each wall; a note decides nothing."""
    told = [f for f in findings if f.severity is not Severity.NOTE and _speaks_of_walls(f)]
    return {wall: tuple(f for f in told if wall in f.walls) for wall in walls}


def _speaks_of_walls(finding: Finding) -> bool:
    return finding.rule in _OF_EVERY_WALL or (finding.rule[:3] in _OF_A_WALL and finding.subjects != ("project",))


def undecided(walls: tuple[str, ...], waiting: Iterable[NotJudged]) -> dict[str, tuple[str, ...]]:
    """The rules that each wall needs judged before it can have a plain yes, and that wait for a field."""
    counting = [n for n in waiting if n.rule[:3] in _MUST_BE_JUDGED]
    return {wall: tuple(dict.fromkeys(n.rule for n in counting if wall in n.walls)) for wall in walls}


def verdict(findings: tuple[Finding, ...], waits: bool) -> Verdict:
    """`no` where a stop stands, `with_measures` where only cautions do, `yes` where nothing fired and nothing
    that counts was left unjudged, else `not_yet_known`."""
    severities = {f.severity for f in findings}
    if Severity.STOP in severities:
        return Verdict.NO
    if Severity.CAUTION in severities:
        return Verdict.WITH_MEASURES
    return Verdict.NOT_YET_KNOWN if waits else Verdict.YES
