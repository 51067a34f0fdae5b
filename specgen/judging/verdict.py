"""The verdict of each wall, from the findings and the clauses not judged."""

from collections.abc import Collection, Iterable, Mapping
from typing import NamedTuple, TypeVar

from specgen.judging.rule import Rule
from specgen.model.finding import Finding, Judgment, NotJudged, Severity, Verdict, WallJudgment

# Groups of rules whose stops and cautions decide whether a wall can take the finish. Of the clauses on the project
# itself only that on local fasteners counts for every wall.
OF_A_WALL = {"ATT", "PLN", "INS", "BAS", "HEA", "COD", "WAT"}
_OF_EVERY_WALL = {"ATT-03"}
# Groups that must be judged at any time; the others must where the purpose owes the field a clause waits for.
_MUST_BE_JUDGED = {"ATT", "INS", "COD", "HEA"}
Entry = TypeVar("Entry", Finding, NotJudged)


class _Documents(NamedTuple):
    """The documents that clauses look for, by the codes of the clauses."""

    by_code: Mapping[str, str]

    def looked_for(self, finding: Finding) -> bool:
        """Whether a finding is the want of a document, which makes no wall a `no`."""
        return finding.severity is Severity.STOP and bool(self.by_code.get(finding.code))


def judge_walls(
    walls: tuple[str, ...],
    findings: Collection[Finding],
    waiting: Collection[NotJudged],
    owed: Collection[str],
    rules: tuple[Rule, ...],
) -> dict[str, WallJudgment]:
    """The judgment of each wall by its mark; `owed` are the dotted paths of the open items owed now."""
    documents = _Documents({clause.code: clause.document for rule in rules for clause in rule.clauses})
    deciding = _by_wall(f for f in findings if f.severity is not Severity.NOTE and _speaks_of_walls(f))
    open_ = _by_wall(n for n in waiting if _keeps_open(n, owed))
    return {wall: _judge_wall(deciding.get(wall, []), open_.get(wall, []), documents) for wall in walls}


def list_unjudged(judgment: Judgment, wall: str) -> dict[str, tuple[str, ...]]:
    """The rules on a wall that could not be judged for it, each with the dotted paths of the fields it lacks."""
    lacking: dict[str, dict[str, None]] = {}
    for clause in judgment.not_judged:
        if wall in clause.walls and clause.rule[:3] in OF_A_WALL:
            lacking.setdefault(clause.rule, {}).update(dict.fromkeys(clause.needs))
    return {rule: tuple(needs) for rule, needs in lacking.items()}


def list_pending(judgment: Judgment, wall: str) -> tuple[NotJudged, ...]:
    """The clauses not judged that keep a wall from a verdict, in the order of the rules."""
    owed = {item.path for item in judgment.open_items}
    return tuple(clause for clause in judgment.not_judged if wall in clause.walls and _keeps_open(clause, owed))


def _by_wall(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    """What counts for each wall, in order: sorted once, so that many walls take no longer each than few."""
    sorted_: dict[str, list[Entry]] = {}
    for entry in entries:
        for wall in entry.walls:
            sorted_.setdefault(wall, []).append(entry)
    return sorted_


def _speaks_of_walls(finding: Finding) -> bool:
    return finding.rule in _OF_EVERY_WALL or (finding.rule[:3] in OF_A_WALL and finding.subjects != ("project",))


def _keeps_open(clause: NotJudged, owed: Collection[str]) -> bool:
    """Whether a clause not judged keeps its walls from a verdict."""
    group = clause.rule[:3]
    return group in _MUST_BE_JUDGED or (group in OF_A_WALL and any(need in owed for need in clause.needs))


def _judge_wall(findings: list[Finding], waiting: list[NotJudged], documents: _Documents) -> WallJudgment:
    wanting = [f for f in findings if documents.looked_for(f)]
    rules = dict.fromkeys(n.rule for n in waiting)
    missing = tuple(dict.fromkeys(documents.by_code[f.code] for f in wanting))
    return WallJudgment(
        verdict=_find_verdict([f for f in findings if f not in wanting], bool(rules or missing)),
        deciding=tuple(f.code for f in findings),
        undecided=tuple(rules),
        fields=tuple(dict.fromkeys(need for clause in waiting for need in clause.needs)),
        documents=missing,
        measures=sum(f.severity is Severity.CAUTION for f in findings),
        refused_by=tuple(f.code for f in findings if f.severity is Severity.STOP and f not in wanting),
        lacking=tuple(f.code for f in wanting),
    )


def _find_verdict(findings: list[Finding], waits: bool) -> Verdict:
    """`no` for a stop; else `not_yet_known` while something waits; else `with_measures` for a caution; else `yes`."""
    severities = {f.severity for f in findings}
    if Severity.STOP in severities:
        return Verdict.NO
    if waits:
        return Verdict.NOT_YET_KNOWN
    return Verdict.WITH_MEASURES if severities else Verdict.YES
