"""The verdict of each wall, from what fired and what was left unjudged."""

from collections.abc import Iterable

from ..vocabulary.finding import Finding, NotJudged, Severity, Verdict

# The groups that say whether a wall suits the finish; of clauses on the project itself only the
# clash with local fasteners speaks of every wall.
_OF_A_WALL = {"ATT", "PLN", "INS", "BAS", "HEA", "COD"}
_MUST_BE_JUDGED = {"ATT", "INS", "COD", "HEA"}
_OF_EVERY_WALL = {"ATT-03"}


def deciding(walls: tuple[str, ...], findings: Iterable[Finding]) -> dict[str, tuple[Finding, ...]]:
    """The findings that decide the verdict of each wall."""
    told = [
        f for f in findings if f.rule[:3] in _OF_A_WALL and (f.subjects != ("project",) or f.rule in _OF_EVERY_WALL)
    ]
    return {wall: tuple(f for f in told if wall in f.walls) for wall in walls}


def verdicts(decided: dict[str, tuple[Finding, ...]], waiting: Iterable[NotJudged]) -> dict[str, Verdict]:
    """`no` where a stop stands, `with_measures` where only cautions do, `yes` where nothing fired and nothing
    that counts was left unjudged, else `not_yet_known`."""
    unjudged = [n for n in waiting if n.rule[:3] in _MUST_BE_JUDGED]
    return {wall: _verdict(found, any(wall in n.walls for n in unjudged)) for wall, found in decided.items()}


def _verdict(findings: tuple[Finding, ...], unjudged: bool) -> Verdict:
    severities = {f.severity for f in findings}
    if Severity.STOP in severities:
        return Verdict.NO
    if Severity.CAUTION in severities:
        return Verdict.WITH_MEASURES
    return Verdict.NOT_YET_KNOWN if unjudged else Verdict.YES
