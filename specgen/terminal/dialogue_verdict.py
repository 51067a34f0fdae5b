"""The verdict of a wall as it forms, in a line or two."""

from collections.abc import Collection, Iterator
from typing import NamedTuple

from specgen.model.field import Path, Schema
from specgen.model.finding import Finding, Judgment, Severity, Verdict
from specgen.model.value_text import count
from specgen.terminal.dialogue_question import wrap

_MOST_NAMED = 3
_SAID = {
    Verdict.YES: "yes",
    Verdict.WITH_MEASURES: "yes, with measures",
    Verdict.NO: "no",
    Verdict.NOT_YET_KNOWN: "not yet known",
}


class Standing(NamedTuple):
    """How a wall stands: its verdict and the codes of what decides it. While both stay, there is nothing to tell."""

    verdict: Verdict
    deciding: tuple[str, ...]


def find_standing(judgment: Judgment, wall: str) -> Standing:
    """How a wall stands."""
    return Standing(judgment.walls[wall].verdict, judgment.walls[wall].deciding)


def format_verdict(
    judgment: Judgment, wall: str, schema: Schema, width: int, papers: Collection[str] = ()
) -> list[str]:
    """`W1: no (ATT-01a): ...` with its remedy, or `W1: not yet known; pending: ...`.

    `papers` are the codes of the clauses that look for a document: the want of one makes no `no`.
    """
    told = judgment.walls[wall]
    stops = [f for f in _list_deciding(judgment, wall) if f.severity is Severity.STOP and f.code not in papers]
    if told.verdict is Verdict.NO:
        return [line for stop in stops[:1] for line in _tell_stop(stop, wall, len(stops) - 1, width)]
    measures = f"; {count(told.measures, 'measure')} so far" if told.measures else ""
    if told.verdict is Verdict.NOT_YET_KNOWN:
        return wrap(f"{wall}: {_SAID[told.verdict]}{measures}; pending: {_name_pending(judgment, wall, schema)}", width)
    return wrap(f"{wall}: {_SAID[told.verdict]}", width)


def _list_deciding(judgment: Judgment, wall: str) -> list[Finding]:
    deciding = judgment.walls[wall].deciding
    return [finding for finding in judgment.findings if finding.code in deciding and wall in finding.walls]


def _tell_stop(stop: Finding, wall: str, more: int, width: int) -> Iterator[str]:
    others = f" ({count(more, 'more stop')})" if more else ""
    yield from wrap(f"{wall}: {_SAID[Verdict.NO]} ({stop.code}): {stop.message}{others}", width)
    yield from wrap(f"What to do: {stop.remedy}", width, "   ")


def _name_pending(judgment: Judgment, wall: str, schema: Schema) -> str:
    told = judgment.walls[wall]
    names = list(dict.fromkeys([*told.documents, *(_name(schema, path) for path in told.fields)]))
    more = len(names) - _MOST_NAMED
    return ", ".join(names[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _name(schema: Schema, dotted: str) -> str:
    """What a field or collection is called inside a sentence; its path where the schema does not know it."""
    path: Path = tuple(dotted.split("."))
    try:
        node = schema.node(path)
    except KeyError:
        return dotted
    entry = node.field or node.collection
    label = entry.label if entry is not None else dotted
    return label[:1].lower() + label[1:] if label[1:2].islower() else label


def format_news(judgment: Judgment, wall: str, before: Standing, width: int) -> list[str]:
    """The measures that an answer has brought, each with what to do."""
    new = [finding for finding in _list_deciding(judgment, wall) if finding.code not in before.deciding]
    return [
        line
        for finding in new
        if finding.severity is Severity.CAUTION
        for line in wrap(f"{finding.message} {finding.remedy}", width, f"{wall}: measure ({finding.code}): ")
    ]
