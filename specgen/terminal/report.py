"""What `check` says: as text for a person, as plain data for a program."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from typing import Any

from specgen.model.field import Field
from specgen.model.finding import Finding, Judgment, OpenItem, Severity, Verdict
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.value_text import words

_SAID = {
    Verdict.YES: "yes",
    Verdict.WITH_MEASURES: "yes, with measures",
    Verdict.NO: "no",
    Verdict.NOT_YET_KNOWN: "not yet known",
}
MOST_SETTLING = 5
MOST_WAITED_FOR = 3


def as_data(
    project: Project | None,
    judgment: Judgment | None,
    problems: Iterable[Problem] = (),
    severity: Severity | None = None,
    rule: str = "",
) -> dict[str, Any]:
    """The object of `check --format json`; `errors` is filled where the project could not be read."""
    made: dict[str, Any] = {
        "format": 1,
        "project": None,
        "purpose": None,
        "walls": [],
        "counts": {"stop": 0, "caution": 0, "note": 0, "open": 0, "not_judged": 0},
        "errors": [asdict(problem) for problem in problems],
        "findings": [],
        "open": [],
        "not_judged": [],
    }
    if project is None or judgment is None:
        return made
    made["project"], made["purpose"] = project.get(("project", "name")), project.get(("package", "purpose"))
    made["walls"] = [{"wall": mark, "verdict": str(verdict)} for mark, verdict in judgment.walls.items()]
    made["counts"] = {str(s): len(judgment.of(s)) for s in Severity} | {
        "open": len(judgment.open_items),
        "not_judged": len(judgment.not_judged),
    }
    made["findings"] = [_finding(f) for f in chosen(judgment, severity, rule)]
    made["open"] = [
        {"path": i.path, "ring": i.ring, "owed_by": i.owed_by, "holds_up": list(i.holds_up)}
        for i in judgment.open_items
    ]
    made["not_judged"] = [
        {"rule": n.rule, "clause": n.clause, "subject": n.subject, "needs": list(n.needs)} for n in judgment.not_judged
    ]
    return made


def _finding(finding: Finding) -> dict[str, Any]:
    place = finding.place
    return {
        "rule": finding.rule,
        "clause": finding.clause,
        "severity": str(finding.severity),
        "subjects": list(finding.subjects),
        "message": finding.message,
        "found": finding.found,
        "wanted": finding.wanted,
        "path": place.path,
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "basis": str(finding.basis),
        "remedy": finding.remedy,
        "steps": list(finding.steps),
        "documents": list(finding.documents),
        "lifted_by": finding.lifted_by,
    }


def chosen(judgment: Judgment, severity: Severity | None = None, rule: str = "") -> tuple[Finding, ...]:
    """The findings of one severity or one rule (or clause), stops first."""
    order = list(Severity)
    wanted = [f for f in judgment.findings if severity in (None, f.severity) and rule in ("", f.rule, f.code)]
    return tuple(sorted(wanted, key=lambda f: order.index(f.severity)))


def as_text(project: Project, judgment: Judgment, severity: Severity | None = None) -> str:
    """The verdict of each wall, the findings, what is open, and what would settle most."""
    lines = [f"{project.value(('project', 'name'))}: {words(project.value(('package', 'purpose')))}", ""]
    width = max(map(len, judgment.walls))
    lines += [f"{mark:<{width}}  {_said(judgment, mark)}" for mark in judgment.walls]
    for finding in chosen(judgment, severity):
        lines += _told(finding)
    if severity is None:
        lines += _open(judgment) + list(_settling(project, judgment))
    return "\n".join([*lines, "", _counted(judgment)]) + "\n"


def _said(judgment: Judgment, wall: str) -> str:
    """The verdict of a wall; where data are wanting for a plain one, the first few that are."""
    verdict = judgment.walls[wall]
    if verdict is not Verdict.NOT_YET_KNOWN:
        return _SAID[verdict]
    waiting = (n for n in judgment.not_judged if wall in n.walls and n.rule in judgment.undecided[wall])
    paths = list(dict.fromkeys(need for clause in waiting for need in clause.needs))
    more = len(paths) - MOST_WAITED_FOR
    return f"{_SAID[verdict]}: waits for {', '.join(paths[:MOST_WAITED_FOR])}{f' and {more} more' if more > 0 else ''}"


def _told(finding: Finding) -> list[str]:
    place = finding.place
    at = f"{place.file}:{place.line}:{place.column} " if place.line else ""
    lifted = [f"     lifted by deviation {finding.lifted_by}"] if finding.lifted_by else []
    return [
        "",
        f"{str(finding.severity).upper()} {finding.code}  {', '.join(finding.subjects)}",
        f"     {finding.message}",
        *lifted,
        f"     at {at}{place.path}",
        f"     measure: {finding.remedy}",
        f"     basis: {finding.basis}",
    ]


def _open(judgment: Judgment) -> list[str]:
    """The owed fields that are absent, then the other rings in one line each."""
    made: list[str] = []
    if judgment.open_items:
        stops = " and stop the package" if judgment.stops_when_open else ""
        made += ["", f"Open points ({len(judgment.open_items)}) are owed{stops}:"]
        made += [_item(item) for item in judgment.open_items]
    made += [
        f"Ring {ring}: {count} further fields, not owed yet." for ring, count in judgment.later_rings.items() if count
    ]
    return made


def _item(item: OpenItem) -> str:
    held = f"; holds up {', '.join(item.holds_up)}" if item.holds_up else ""
    return f"  {item.path}: {item.label} ({words(item.owed_by)}{held})"


def _settling(project: Project, judgment: Judgment) -> Iterator[str]:
    """The few absent fields that would settle most clauses."""
    held = Counter(need for waiting in judgment.not_judged for need in waiting.needs)
    if held:
        yield ""
        yield "These would settle most:"
    for path, count in held.most_common(MOST_SETTLING):
        node = project.schema.node(tuple(path.split("."))) if _known(project, path) else None
        named: Field | Any = node and (node.field or node.collection)
        label = f": {named.label}" if named else ""
        yield f"  {path}{label} ({count} {'clause waits' if count == 1 else 'clauses wait'})"


def _known(project: Project, path: str) -> bool:
    try:
        project.schema.node(tuple(path.split(".")))
    except KeyError:
        return False
    return True


def _counted(judgment: Judgment) -> str:
    counts = [(len(judgment.of(s)), str(s)) for s in Severity]
    counts += [(len(judgment.open_items), "open point"), (len(judgment.not_judged), "clause not judged")]
    plural = {"clause not judged": "clauses not judged"}
    return ", ".join(f"{n} {word if n == 1 else plural.get(word, word + 's')}" for n, word in counts)


def count_standing(judgment: Judgment) -> str:
    """What stands against a package: `2 stops and 1 open item stand`."""
    owed = len(judgment.open_items) if judgment.stops_when_open else 0
    counts = ((len(judgment.of(Severity.STOP)), "stop"), (owed, "open item"))
    told = [f"{count} {word}{'' if count == 1 else 's'}" for count, word in counts if count]
    return f"{' and '.join(told)} {'stands' if sum(count for count, _ in counts) == 1 else 'stand'}"
