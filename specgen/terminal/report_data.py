"""The report of `check` as plain data for a program."""

from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from specgen.judging.owners import looks_for_document
from specgen.model.finding import Finding, Judgment, Severity
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.value_text import count


def report_to_data(
    project: Project | None,
    judgment: Judgment | None,
    problems: Iterable[Problem] = (),
    severity: Severity | None = None,
    rule: str = "",
) -> dict[str, Any]:
    """The object of `check --format json`; `errors` is filled if the project could not be read."""
    data: dict[str, Any] = {
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
        return data
    data["project"], data["purpose"] = project.get(("project", "name")), project.get(("package", "purpose"))
    data["walls"] = [{"wall": mark, "verdict": str(wall.verdict)} for mark, wall in judgment.walls.items()]
    data["counts"] = {str(s): len(judgment.of(s)) for s in Severity} | {
        "open": len(judgment.open_items),
        "not_judged": len(judgment.not_judged),
    }
    data["findings"] = [_placed_to_data(f) for f in choose_findings(judgment, severity, rule)]
    data["open"] = [
        {"path": i.path, "ring": i.ring, "owed_by": i.owed_by, "holds_up": list(i.holds_up)}
        for i in judgment.open_items
    ]
    data["not_judged"] = [
        {"rule": n.rule, "clause": n.clause, "subject": n.subject, "needs": list(n.needs)} for n in judgment.not_judged
    ]
    return data


def _placed_to_data(finding: Finding) -> dict[str, Any]:
    """A finding as data, with the place of each of its subjects."""
    pairs = zip(finding.subjects, finding.places, strict=True)
    return finding_to_data(finding) | {"places": [{"subject": name} | place._asdict() for name, place in pairs]}


def finding_to_data(finding: Finding) -> dict[str, Any]:
    """A finding as data, its place in the files with it."""
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


def choose_findings(judgment: Judgment, severity: Severity | None = None, rule: str = "") -> tuple[Finding, ...]:
    """The findings of one severity or one rule (or clause), stops first."""
    order = list(Severity)
    wanted = [f for f in judgment.findings if severity in (None, f.severity) and rule in ("", f.rule, f.code)]
    return tuple(sorted(wanted, key=lambda f: order.index(f.severity)))


def count_standing(judgment: Judgment) -> str:
    """What keeps a package from being submitted: `2 stops and 1 open item`.

    Stops for want of a document stand by themselves: `11 stops for want of a document and 129 open items`.
    """
    stops = judgment.of(Severity.STOP)
    wanting = sum(map(looks_for_document, stops))
    owed = len(judgment.open_items) if judgment.stops_when_open else 0
    counts = [(len(stops) - wanting, "stop", ""), (wanting, "stop", " for want of a document"), (owed, "open item", "")]
    told = [f"{count(number, word)}{end}" for number, word, end in counts if number]
    return " and ".join(told) if len(told) < len(counts) else f"{told[0]}, {told[1]}, and {told[2]}"


def lacks_documents_alone(judgment: Judgment) -> bool:
    """Whether stops stand, and all of them for want of a document."""
    stops = judgment.of(Severity.STOP)
    return bool(stops) and all(map(looks_for_document, stops))
