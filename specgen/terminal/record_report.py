"""The report of `record` as text: what was read, the counts, each nonconformance, what is missing, the next command."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby
from operator import attrgetter

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS, OF_READINGS, Records, day_of
from specgen.model.record_judgment import Nonconformance, ReadingsAlike, ReadingState, RecordJudgment
from specgen.model.value_text import count, long_date, raw_text, words
from specgen.quantities.number import is_number
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


def format_record(
    project: Project, judgment: RecordJudgment, command: str, screen: Screen = PLAIN, written: str = ""
) -> str:
    """The report; `command` judges the same again, as it is typed, `written` is the folder that was written."""
    lines = [
        *_describe_record(project, judgment),
        *(line for one in judgment.nonconformances for line in _describe_nonconformance(project, one)),
        *(line for state in _HEADS for line in _list_unsettled(project, judgment, state)),
        *_list_remarks((*project.records.remarks, *judgment.unmatched, *judgment.unplaced)),
    ]
    following = f"{command} --out site-record" if not written else f"specgen check {command.split(' ', 2)[2]}"
    return show_lines([*lines, *tell_next(following)], screen)


def _describe_record(project: Project, judgment: RecordJudgment) -> Iterator[Line]:
    """Of what project and which days the record is, what it holds, the files, and the counts."""
    records = project.records
    told = tell_nonconformances(judgment)
    yield Line(f"Site record: {told}", 2, style="stop" if judgment.open else "good")
    yield from _tell_unjudged(records)
    yield Line(f"{project.value(('project', 'name'))}: {_tell_days(records)}".removesuffix(": "), 2)
    held = [(len(records.of(name)), name) for name in COLLECTIONS]
    counted = [f"{n:,} {_NOUNS[name][n > 1]}" for n, name in held if n]
    yield Line(f"read: {', '.join(counted)}", 2)
    yield from (Line(f"  {one.name}: {one.entries:,}", 4) for one in records.files[:_MOST_FILES])
    if len(records.files) > _MOST_FILES:
        yield Line(f"  and {len(records.files) - _MOST_FILES:,} files more", 4)
    states = (f"{judgment.counts.get(state, 0):,} {words(state)}" for state in ReadingState)
    yield Line(f"readings: {', '.join(states)}", 2)
    if judgment.mockup.criteria:
        yield Line(f"mockup: {judgment.mockup.tell()}", 4)


def tell_nonconformances(judgment: RecordJudgment) -> str:
    """`16 nonconformances, 8 open`; where none is settled how many alone."""
    found, left = len(judgment.nonconformances), len(judgment.open)
    if not found:
        return "no nonconformance"
    told = count(found, "nonconformance")
    return told if left == found else f"{told}, {left:,} open" if left else f"{told}, none open"


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


def list_days(records: Records) -> list[date]:
    """The days of which a record tells, in their order."""
    days = {day_of(entry) for name in OF_READINGS for entry in records.of(name)}
    return sorted(day for day in days if day is not None)


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


def _list_unsettled(project: Project, judgment: RecordJudgment, state: ReadingState) -> Iterator[Line]:
    """The readings of a state, step by step; fields of which the same is told share a line."""
    alike = [one for one in judgment.alike if one.state is state]
    if not alike:
        return
    head = f"{_HEADS[state]} ({judgment.counts[state]:,}): {_ABOUT[state]}"
    yield from (Line(), Line(head, 2, _HEADS[state], "bold"))
    totals = _count_entries(project.records)
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
        of = (
            f"{number:,} of {total:,} entries"
            if number < total
            else f"all {total:,} entries"
            if total > 1
            else "1 entry"
        )
        yield Line(f"  {name}: {', '.join(labels)} ({of}){f': {reason}' if reason else ''}", 4)


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
