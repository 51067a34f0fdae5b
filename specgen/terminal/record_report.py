"""The report of `record` as text: what was read, the counts, each nonconformance, what is missing, the next command."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import groupby
from operator import attrgetter
from typing import NamedTuple

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS, OF_READINGS, Records, day_of
from specgen.model.record_judgment import Nonconformance, ReadingsAlike, ReadingState, RecordJudgment
from specgen.model.value_text import count, long_date, raw_text, words
from specgen.quantities.number import is_number
from specgen.recording.narrowing import Part, ToldRecord, list_days, list_untold
from specgen.terminal.entry_text import name_group, name_reading, tell_row, tell_when, tell_where
from specgen.terminal.finding_text import tell_basis
from specgen.terminal.next_command import tell_next
from specgen.terminal.screen import PLAIN, Line, Screen, show_lines

_INDENT, _HANGING = "     ", 7
_NOUNS = {
    "log": ("site record entry", "site record entries"),
    "release": ("release", "releases"),
    "result": ("mockup result", "mockup results"),
    "inspection": ("inspection", "inspections"),
    "disposition": ("disposition", "dispositions"),
}
# Entries of these are held against limits by their day.
_DATED = ("log", "release", "inspection")
_MOST_FILES, _MOST_REMARKS = 12, 10
_HEADS = {ReadingState.MISSING: "Missing", ReadingState.NOT_EVALUATED: "Not evaluated"}
_ABOUT = {
    ReadingState.MISSING: "due for the step, and left blank",
    ReadingState.NOT_EVALUATED: "the project or the entry lacks what they are held against",
}


class RecordReport(NamedTuple):
    """All that is told of a record: what was read and found, and which part of it is told."""

    project: Project
    whole: ToldRecord
    part: Part
    told: ToldRecord  # the part


def format_record(report: RecordReport, command: str, screen: Screen = PLAIN, written: str = "") -> str:
    """The report; `command` judges the same again, as it is typed, `written` is the folder that was written."""
    project, (records, judgment) = report.project, report.told
    lines = [
        *_describe_record(report),
        *(line for one in judgment.nonconformances for line in _describe_nonconformance(project, one)),
        *(line for state in _HEADS for line in _list_unsettled(project, report.told, state)),
        *_list_remarks((*records.remarks, *judgment.unmatched, *judgment.unplaced)),
    ]
    following = f"{command} --out site-record" if not written else f"specgen check {command.split(' ', 2)[2]}"
    return show_lines([*lines, *tell_next(following)], screen)


def _describe_record(report: RecordReport) -> Iterator[Line]:
    """Of what project and which days the record is, what it holds, the files, and the counts."""
    records, judgment = report.told
    unjudged = list(_tell_unjudged(records))
    style = "stop" if judgment.open else "" if unjudged else "good"
    yield Line(_tell_found(report, bool(unjudged)), 2, style=style)
    yield from unjudged
    yield Line(f"{report.project.value(('project', 'name'))}: {_tell_days(records)}".removesuffix(": "), 2)
    of = None if report.part.is_whole else report.whole
    held = [(len(records.of(name)), of and len(of.records.of(name)), name) for name in COLLECTIONS]
    counted = [_tell_number(n, total, _NOUNS[name]) for n, total, name in held if n]
    yield Line(f"read: {', '.join(counted) or 'no entry of this part'}", 2)
    totals = {} if of is None else {one.name: one.entries for one in of.records.files}
    yield from (
        Line(f"  {one.name}: {_of(one.entries, totals.get(one.name))}", 4) for one in records.files[:_MOST_FILES]
    )
    if len(records.files) > _MOST_FILES:
        yield Line(f"  and {len(records.files) - _MOST_FILES:,} files more", 4)
    states = (
        f"{_of(judgment.counts.get(state, 0), of and of.judgment.counts.get(state, 0))} {words(state)}"
        for state in ReadingState
    )
    yield Line(f"readings: {', '.join(states)}", 2)
    if judgment.mockup.criteria:
        yield Line(f"mockup: {judgment.mockup.tell()}", 4)
    yield from _tell_untold(report)


def tell_nonconformances(judgment: RecordJudgment, whole: int = 0) -> str:
    """`16 nonconformances, 8 open`, of a part `3 of 16 nonconformances`; where none is settled how many alone."""
    found, left = len(judgment.nonconformances), len(judgment.open)
    if not whole and not found:
        return "no nonconformance"
    told = f"{found:,} of {count(whole, 'nonconformance')}" if whole else count(found, "nonconformance")
    return told if left == found else f"{told}, {left:,} open" if left else f"{told}, none open"


def _tell_found(report: RecordReport, unjudged: bool) -> str:
    """`Site record, E1, July 14, 2027: 3 of 16 nonconformances, 1 open`; `of` counts those of the whole record."""
    part, judgment = report.part, report.told.judgment
    day = long_date(part.on) if part.on is not None else ""
    head = ", ".join(filter(None, ("Site record", part.elevation, day)))
    whole = 0 if part.is_whole else len(report.whole.judgment.nonconformances)
    limited = unjudged and not judgment.nonconformances
    return f"{head}: {tell_nonconformances(judgment, whole)}{' in what could be judged' if limited else ''}"


def _of(number: int, total: int | None) -> str:
    """`3 of 16`; the number alone where the whole record is told, or has none."""
    return f"{number:,}" if not total else f"{number:,} of {total:,}"


def _tell_number(number: int, total: int | None, nouns: tuple[str, str]) -> str:
    return f"{_of(number, total)} {nouns[(total or number) > 1]}"


def _tell_untold(report: RecordReport) -> Iterator[Line]:
    """How many entries tell no elevation or no day, so that nobody knows whether they are of the part."""
    counts = Counter(entry.collection for entry in list_untold(report.whole.records, report.part))
    if counts:
        told = ", ".join(_tell_number(n, None, _NOUNS[name]) for name, n in counts.items())
        lacks = " or ".join([*(["elevation"] if report.part.elevation else []), *(["day"] if report.part.on else [])])
        yield Line(f"left out, as they name no {lacks}: {told}", 2, "", "caution")


def _tell_unjudged(records: Records) -> Iterator[Line]:
    """How many entries tell no day, and which files tell no step by which entries are held against limits."""
    entries = [entry for name in _DATED for entry in records.of(name)]
    undated = sum(day_of(entry) is None for entry in entries)
    if undated:
        yield Line(f"not judged in full: no day in {undated:,} of {len(entries):,} entries", 2, "", "caution")
    files = {entry.place.file for entry in records.of("log")}
    for file in sorted(files - {entry.place.file for entry in records.of("log") if entry.get("step")}):
        yield Line(f"not judged in full: no step in any entry of {file}", 2, "", "caution")


def _tell_days(records: Records) -> str:
    """`June 14, 2027 to July 2, 2027, 12 days`; empty where no entry tells a day."""
    days = list_days(records)
    if len(days) < 2:
        return "".join(map(long_date, days))
    return f"{long_date(days[0])} to {long_date(days[-1])}, {len(days):,} days"


def _describe_nonconformance(project: Project, one: Nonconformance) -> Iterator[Line]:
    """The lines of a nonconformance: when and where, what was read against what, whence that comes, what to do."""
    severity = str(one.severity)
    head = f"{one.number}. {severity.upper()} {one.code}"
    yield Line()
    yield Line("  ".join(filter(None, (head, tell_when(one.entry)))), _HANGING, severity.upper(), severity)
    step = one.entry.get("step") or one.entry.get("criterion") or ""
    yield from _bodies(", ".join(filter(None, (tell_where(one.entry), name_group(one.entry.collection, step)))))
    yield from _bodies(one.message)
    yield from _bodies(f"lifted by deviation {one.lifted_by}" if one.lifted_by else "")
    yield from _bodies(_tell_disposition(one))
    yield from _bodies(f"reading: {_name_and_tell(project, one)}")
    yield from _bodies(f"limit: {_with_sign(project, one, one.wanted)}" if one.wanted else "")
    yield from _bodies(f"source: {tell_basis(project, one.basis)}")
    yield from _bodies(f"measure: {one.remedy}")
    yield from _bodies(f"at {tell_row(one.entry)}")


def _name_and_tell(project: Project, one: Nonconformance) -> str:
    """`air temperature, 48 °F`; of a moment the hours up to it: `5 h until the starting time, 11:20`."""
    label = name_reading(project.schema, one.entry.collection, one.field)
    field, given = project.schema.field_at((one.entry.collection, "*", one.field)), one.entry.get(one.field)
    if given is not None and one.found and field is not None and field.kind == "time":
        return f"{one.found} until the {label}, {raw_text(given, field, project.system)}"
    return f"{label}, {tell_reading(project, one)}"


# What is found at a moment or a name is a span, or the names beside it.
_TOLD_BY_FINDING = ("time", "date", "text")


def tell_reading(project: Project, one: Nonconformance) -> str:
    """What stands in the field; of a moment or a name, and where it is blank, what was found."""
    field = project.schema.field_at((one.entry.collection, "*", one.field))
    given = one.entry.get(one.field)
    if given is None or (one.found and field is not None and field.kind in _TOLD_BY_FINDING):
        return _with_sign(project, one, one.found) or "left blank"
    text = raw_text(given, field, project.system)
    if text.startswith(f"{one.found} ("):  # in one unit, as in the other it prints like its limit
        text = one.found
    return _with_sign(project, one, text) or "none"


def _tell_disposition(one: Nonconformance) -> str:
    """`disposition: recoated on July 16, 2027, by L. Novak`; empty without one."""
    entry = one.disposition
    if entry is None:
        return ""
    note = f"; {entry.get('note')}" if entry.get("note") else ""
    day, decision = long_date(entry.values["decided_on"]), words(entry.values["decision"])
    return f"disposition: {decision} on {day}, by {entry.values['by']}{note}"


def _with_sign(project: Project, one: Nonconformance, text: str) -> str:
    """A bare number of a percent field with its sign."""
    field = project.schema.field_at((one.entry.collection, "*", one.field))
    return f"{text}%" if field is not None and field.kind == "percent" and is_number(text) else text


def _bodies(text: str) -> Iterator[Line]:
    if text:
        yield Line(_INDENT + text, _HANGING)


def _list_unsettled(project: Project, told: ToldRecord, state: ReadingState) -> Iterator[Line]:
    """The readings of a state, step by step; fields of which the same is told share a line."""
    records, judgment = told
    alike = [one for one in judgment.alike if one.state is state]
    if not alike:
        return
    head = f"{_HEADS[state]} ({judgment.counts[state]:,}): {_ABOUT[state]}"
    yield from (Line(), Line(head, 2, _HEADS[state], "bold"))
    totals = _count_entries(records)
    for (collection, step), members in groupby(alike, key=attrgetter("collection", "step")):
        yield from _describe_group(project, list(members), totals[collection, step], name_group(collection, step))


def _describe_group(project: Project, alike: Sequence[ReadingsAlike], total: int, name: str) -> Iterator[Line]:
    """`gloss: air temperature, wind (all 30)`; what is not evaluated with what is waited for."""
    lines: dict[tuple[int, str], list[str]] = {}
    for one in alike:
        reason = one.reason if one.state is ReadingState.NOT_EVALUATED else ""
        label = name_reading(project.schema, one.collection, one.field)
        lines.setdefault((len(one.entries), reason), []).append(label)
    for (number, reason), labels in lines.items():
        of = _tell_share(number, total)
        yield Line(f"  {name}: {', '.join(labels)} ({of}){f': {reason}' if reason else ''}", 4)


def _tell_share(number: int, total: int) -> str:
    """`3 of 30 entries`, `all 30 entries`, `both entries`, `1 entry`."""
    if number < total:
        return f"{number:,} of {total:,} entries"
    return {1: "1 entry", 2: "both entries"}.get(total, f"all {total:,} entries")


def _count_entries(records: Records) -> dict[tuple[str, str], int]:
    """How many entries there are of each step or criterion."""
    counts: dict[tuple[str, str], int] = {}
    for name in OF_READINGS:
        for entry in records.of(name):
            key = (name, entry.get("step") or entry.get("criterion") or "")
            counts[key] = counts.get(key, 0) + 1
    return counts


def _list_remarks(remarks: Sequence[Problem]) -> Iterator[Line]:
    """What was noticed of entries that were read."""
    if remarks:
        yield from (Line(), Line(f"Look at these entries ({len(remarks):,})", style="bold"))
    yield from (Line(f"  {one}", 4) for one in remarks[:_MOST_REMARKS])
    if len(remarks) > _MOST_REMARKS:
        yield Line(f"  and {len(remarks) - _MOST_REMARKS:,} more", 4)
