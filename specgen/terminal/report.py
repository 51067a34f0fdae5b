"""The report of `check` as text: the package first, then what decides each wall, the findings, what is open."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Any

from specgen.judging.verdict import list_unjudged
from specgen.model.field import Field
from specgen.model.finding import Finding, Judgment, Place, Severity, Verdict, WallJudgment
from specgen.model.project import Project
from specgen.model.record_judgment import RecordJudgment
from specgen.model.value_text import count
from specgen.terminal.changed_answers import list_changed
from specgen.terminal.dialogue_verdict import name_in_sentence
from specgen.terminal.finding_text import Marker, Told, describe_finding, find_clause
from specgen.terminal.next_command import name_next, quote, tell_next
from specgen.terminal.open_text import OPEN_RULE, describe_item, list_parties
from specgen.terminal.package_text import describe_package
from specgen.terminal.ranges import join_marks
from specgen.terminal.record_report import tell_nonconformances
from specgen.terminal.report_data import choose_findings
from specgen.terminal.screen import PLAIN, Line, Screen, show_lines

MOST_SETTLING = 5
MOST_WAITED_FOR = 3
_PAINTED = {Verdict.NO: "stop", Verdict.NOT_YET_KNOWN: "caution", Verdict.WITH_MEASURES: "good", Verdict.YES: "good"}


def no_mark(place: Place) -> Iterable[Line]:  # noqa: ARG001  (as a Marker)
    """No line of any file, for what is not shown on a terminal."""
    return ()


def format_report(
    project: Project,
    judgment: Judgment,
    severity: Severity | None = None,
    screen: Screen = PLAIN,
    file: str = "FILE",
    mark: Marker = no_mark,
    records: RecordJudgment | None = None,
    left: Sequence[str] = (),
) -> str:
    """The report; of one severity its findings alone, numbered, and of stops the open items that stop too.

    `file` is the project as it is named in the command that is told next, `mark` draws the line of a place. Of the
    site record of the project, where it has one, `records` tells how many nonconformances it holds; `left`
    is what keeps a closeout from being written.
    """
    told = Told(project, judgment, mark)
    package = describe_package(project, judgment) if judgment.stopped or not left else _describe_left(left)
    lines = [*package, *_count_nonconformances(records, file)]
    lines += [Line(), *_describe_walls(project, judgment)]
    if severity is None:
        lines += [*_list_findings(told), *_list_open(told, file), *_list_settling(project, judgment)]
        lines += list_changed(project)
    else:
        lines += _list_numbered(told, severity)
    return show_lines([*lines, *tell_next(name_next(project, judgment, file, severity))], screen)


def _describe_left(left: Sequence[str]) -> Iterator[Line]:
    yield Line(f"Package: not ready for closeout; open: {count(len(left), 'item')}", 2, "Package", "stop")
    yield from (Line(f"  {one}", 4) for one in left)


def _count_nonconformances(records: RecordJudgment | None, file: str) -> Iterator[Line]:
    """How many nonconformances the site record holds, with the command that tells them."""
    if records is not None:
        yield Line(f"Site record: {tell_nonconformances(records)}; specgen record {quote(file)}", 2)


def _describe_walls(project: Project, judgment: Judgment) -> Iterator[Line]:
    """Each wall with what decides it; walls of which the same is told share a line."""
    alike: dict[tuple[str, str], list[str]] = {}
    for mark, wall in judgment.walls.items():
        alike.setdefault((_describe_wall(project, judgment, mark), _PAINTED[wall.verdict]), []).append(mark)
    names = [join_marks(marks) for marks in alike.values()]
    width = max(map(len, names))
    for name, (text, style) in zip(names, alike, strict=True):
        verdict = text.partition(":")[0].partition(";")[0].partition(",")[0]
        yield Line(f"{name:<{width}}  {text}", min(width, _MOST_HANGING) + 2, f"  {verdict}", style)


_MOST_HANGING = 20


def _describe_wall(project: Project, judgment: Judgment, mark: str) -> str:
    """A verdict with what decides it: the stops, the documents and values that are missing, or the measures.

    A wall that nothing speaks against says so, and a yes names the rules that cannot be judged yet.
    """
    wall = judgment.walls[mark]
    if wall.verdict is Verdict.NO:
        return f"no: cannot be built as described ({', '.join(wall.refused_by)})"
    if wall.verdict is Verdict.NOT_YET_KNOWN:
        return f"not yet known: {_describe_missing(project, wall, draft=not judgment.stops_when_open)}"
    unjudged = list(list_unjudged(judgment, mark))
    measures = f", with measures ({', '.join(wall.deciding)})" if wall.verdict is Verdict.WITH_MEASURES else ""
    return f"yes{measures}{f'; not judged: {_list_first(unjudged)}' if unjudged else ''}"


def _describe_missing(project: Project, wall: WallJudgment, *, draft: bool) -> str:
    """What a wall waits for; of a draft without a stop in the words of the trade, as later stages ask for it."""
    so_far = f"; so far {count(wall.measures, 'measure')}" if wall.measures else ""
    if draft and not wall.lacking:
        shown = _list_first([name_in_sentence(project.schema, path) for path in wall.fields])
        return f"nothing known so far speaks against it; still to be shown: {shown}{so_far}"
    missing = [f"documents missing ({', '.join(wall.lacking)})"] if wall.lacking else []
    missing += [f"values missing ({_list_first(list(wall.fields))})"] if wall.fields else []
    return f"{'; '.join(missing)}{so_far}"


def _list_first(names: list[str]) -> str:
    more = len(names) - MOST_WAITED_FOR
    return ", ".join(names[:MOST_WAITED_FOR]) + (f" and {more} more" if more > 0 else "")


def _list_findings(told: Told) -> Iterator[Line]:
    """The stops that decide a wall, the other stops by their groups, then cautions and notes."""
    judgment = told.judgment
    findings = choose_findings(judgment)
    deciding = {code for wall in judgment.walls.values() for code in (*wall.refused_by, *wall.lacking)}
    stops = [finding for finding in findings if finding.severity is Severity.STOP]
    first = [finding for finding in stops if finding.code in deciding]
    yield from _list_under("Stops that decide a wall", first, told)
    others = (finding for finding in stops if finding.code not in deciding)
    for group, members in groupby(others, _name_group):
        yield from _list_under(f"Stops, {group}", list(members), told)
    yield from _list_under("Cautions", judgment.of(Severity.CAUTION), told)
    yield from _list_under("Notes", judgment.of(Severity.NOTE), told)
    if not findings and not judgment.not_judged:
        yield from (Line(), Line("No exceptions."))


def _name_group(finding: Finding) -> str:
    return find_clause(finding.code).rule.group


def _list_under(title: str, findings: Iterable[Finding], told: Told) -> Iterator[Line]:
    members = list(findings)
    if members:
        yield from (Line(), Line(f"{title} ({len(members)})", style="bold"))
    for finding in members:
        yield from describe_finding(told, finding)


def _list_numbered(told: Told, severity: Severity) -> Iterator[Line]:
    """All findings of a severity, those that decide a wall first; with the stops the open items that stop the package.

    The findings are numbered, and the open items by themselves, so that each count is that of the package.
    """
    findings = _put_deciding_first(told.judgment, choose_findings(told.judgment, severity))
    stopping = severity is Severity.STOP and told.judgment.stops_when_open
    items = told.judgment.open_items if stopping else ()
    if not findings:
        yield from (Line(), Line(f"No {severity}s."))
    for number, finding in enumerate(findings, 1):
        yield from describe_finding(told, finding, number)
    if items:
        head = f"Open items ({len(items)}); they stop the package ({OPEN_RULE})"
        yield from (Line(), Line(head, 2, "Open items", "bold"))
    for number, item in enumerate(items, 1):
        yield describe_item(told.project, item, number)


def _put_deciding_first(judgment: Judgment, findings: Iterable[Finding]) -> list[Finding]:
    """Findings with those that decide a wall first, else in their order."""
    deciding = {code for wall in judgment.walls.values() for code in (*wall.refused_by, *wall.lacking)}
    return sorted(findings, key=lambda finding: finding.code not in deciding)


def _list_open(told: Told, file: str) -> Iterator[Line]:
    """How many items are open, who answers for them, and the stages that are not required yet."""
    judgment = told.judgment
    if judgment.open_items:
        number, stopping = len(judgment.open_items), judgment.stops_when_open
        head = f"Open items ({number}); they stop the package" if stopping else f"Open items of this stage ({number})"
        yield from (Line(), Line(head, 2, "Open items", "bold"))
        yield from list_parties(told.project, judgment.open_items)
        yield Line(f"  each with an example: specgen check {quote(file)} --open", whole=True)
    later = [(ring, number) for ring, number in judgment.later_rings.items() if number]
    yield from ([Line()] if later else [])
    for ring, number in later:
        yield Line(f"Stage {ring}: {count(number, 'further field')}, not required yet.", 2)


def _list_settling(project: Project, judgment: Judgment) -> Iterator[Line]:
    """The absent fields that most clauses are pending for."""
    held = Counter(need for waiting in judgment.not_judged for need in waiting.needs)
    if held:
        yield from (Line(), Line("These would settle most:"))
    for path, number in held.most_common(MOST_SETTLING):
        node = project.schema.node(tuple(path.split("."))) if _is_known(project, path) else None
        entry: Field | Any = node and (node.field or node.collection)
        label = f": {entry.label}" if entry else ""
        yield Line(f"  {path}{label} ({count(number, 'clause')} pending)", 4)


def _is_known(project: Project, path: str) -> bool:
    try:
        project.schema.node(tuple(path.split(".")))
    except KeyError:
        return False
    return True
