"""The report of `check`: text for a person, plain data for a program."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from typing import Any

from specgen.judging.verdict import list_unjudged
from specgen.model.field import Field
from specgen.model.finding import Finding, Judgment, OpenItem, Severity, Verdict, WallJudgment
from specgen.model.forbidden_characters import show_unseen
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.value_text import count, words

_SAID = {
    Verdict.YES: "yes",
    Verdict.WITH_MEASURES: "yes, with measures",
    Verdict.NO: "no",
    Verdict.NOT_YET_KNOWN: "not yet known",
}
MOST_SETTLING = 5
MOST_WAITED_FOR = 3


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
    data["findings"] = [finding_to_data(f) for f in choose_findings(judgment, severity, rule)]
    data["open"] = [
        {"path": i.path, "ring": i.ring, "owed_by": i.owed_by, "holds_up": list(i.holds_up)}
        for i in judgment.open_items
    ]
    data["not_judged"] = [
        {"rule": n.rule, "clause": n.clause, "subject": n.subject, "needs": list(n.needs)} for n in judgment.not_judged
    ]
    return data


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


def format_report(project: Project, judgment: Judgment, severity: Severity | None = None) -> str:
    """The verdict of each wall, the findings, the open items, and the fields that would settle most clauses."""
    lines = [f"{project.value(('project', 'name'))}: {words(project.value(('package', 'purpose')))}", ""]
    width = max(map(len, judgment.walls))
    lines += [f"{mark:<{width}}  {_describe_wall(wall, judgment, mark)}" for mark, wall in judgment.walls.items()]
    findings = choose_findings(judgment, severity)
    for finding in findings:
        lines += _describe_finding(finding)
    if not findings and not judgment.not_judged:
        lines += ["", "No exceptions."]
    if severity is None:
        lines += _list_open(judgment) + list(_list_settling(project, judgment))
    # What the user wrote stands inside a line and never makes one.
    return "\n".join(map(show_unseen, [*lines, "", _format_counts(judgment)])) + "\n"


def _describe_wall(wall: WallJudgment, judgment: Judgment, mark: str) -> str:
    """A wall's verdict; while it is not known, the measures so far and the first few things that are pending.

    A yes names the rules that cannot be judged yet.
    """
    if wall.verdict is not Verdict.NOT_YET_KNOWN:
        unjudged = [] if wall.verdict is Verdict.NO else [*list_unjudged(judgment, mark)]
        return f"{_SAID[wall.verdict]}{f'; not judged: {_list_first(unjudged)}' if unjudged else ''}"
    so_far = f"; so far {count(wall.measures, 'measure')}" if wall.measures else ""
    return f"{_SAID[wall.verdict]}{so_far}; pending: {_list_first([*wall.documents, *wall.fields])}"


def _list_first(names: list[str]) -> str:
    more = len(names) - MOST_WAITED_FOR
    return ", ".join(names[:MOST_WAITED_FOR]) + (f" and {more} more" if more > 0 else "")


def _describe_finding(finding: Finding) -> list[str]:
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


def _list_open(judgment: Judgment) -> list[str]:
    """The open items, then one line for each stage that is not required yet."""
    lines: list[str] = []
    if judgment.open_items:
        stops = "; they stop the package" if judgment.stops_when_open else ""
        lines += ["", f"Open items ({len(judgment.open_items)}){stops}:"]
        lines += [_item(item) for item in judgment.open_items]
    lines += [
        f"Stage {ring}: {count(number, 'further field')}, not required yet."
        for ring, number in judgment.later_rings.items()
        if number
    ]
    return lines


def _item(item: OpenItem) -> str:
    held = f"; holds up {', '.join(item.holds_up)}" if item.holds_up else ""
    return f"  {item.path}: {item.label} ({words(item.owed_by)}{held})"


def _list_settling(project: Project, judgment: Judgment) -> Iterator[str]:
    """The absent fields that most clauses are pending for."""
    held = Counter(need for waiting in judgment.not_judged for need in waiting.needs)
    if held:
        yield ""
        yield "These would settle most:"
    for path, number in held.most_common(MOST_SETTLING):
        node = project.schema.node(tuple(path.split("."))) if _is_known(project, path) else None
        entry: Field | Any = node and (node.field or node.collection)
        label = f": {entry.label}" if entry else ""
        yield f"  {path}{label} ({count(number, 'clause')} pending)"


def _is_known(project: Project, path: str) -> bool:
    try:
        project.schema.node(tuple(path.split(".")))
    except KeyError:
        return False
    return True


def _format_counts(judgment: Judgment) -> str:
    counts = [(len(judgment.of(s)), str(s)) for s in Severity]
    counts += [(len(judgment.open_items), "open item"), (len(judgment.not_judged), "clause not judged")]
    plural = {"clause not judged": "clauses not judged"}
    return ", ".join(f"{n} {word if n == 1 else plural.get(word, word + 's')}" for n, word in counts)


def count_standing(judgment: Judgment) -> str:
    """What keeps a package from being submitted: `2 stops and 1 open item`."""
    owed = len(judgment.open_items) if judgment.stops_when_open else 0
    counts = ((len(judgment.of(Severity.STOP)), "stop"), (owed, "open item"))
    return " and ".join(count(number, word) for number, word in counts if number)
