"""The verdict of a wall as it forms, in a line or two."""

from collections.abc import Collection, Iterable, Iterator
from typing import NamedTuple

from specgen.model.field import Path, Schema
from specgen.model.finding import Finding, Judgment, Severity, Verdict
from specgen.model.value_text import count
from specgen.terminal.dialogue_question import wrap

_MOST_NAMED = 3
_TO_SHOW = "nothing known so far speaks against it; still to be shown:"
_BELOW = "   "
_SAID = {
    Verdict.YES: "yes",
    Verdict.WITH_MEASURES: "yes, with measures",
    Verdict.NO: "no",
    Verdict.NOT_YET_KNOWN: "not yet known",
}


class Standing(NamedTuple):
    """How a wall stands: its verdict, and the findings that tell against it, by their codes."""

    verdict: Verdict
    findings: dict[str, Finding]


def find_standing(judgment: Judgment, wall: str, papers: Collection[str]) -> Standing:
    """How a wall stands; `papers` are the clauses that look for a document, which nobody has yet when asked."""
    told = judgment.walls[wall]
    against = (f for f in judgment.findings if f.code in told.deciding and wall in f.walls and f.code not in papers)
    return Standing(told.verdict, {finding.code: finding for finding in against})


def format_news(wall: str, before: Standing, now: Standing, width: int) -> list[str]:
    """What an answer has brought: each new stop and measure with what to do, and a verdict that is another one."""
    new = [finding for code, finding in now.findings.items() if code not in before.findings]
    lines = [line for finding in new for line in _tell_finding(finding, wall, width)]
    if now.verdict not in (before.verdict, Verdict.NO):
        lines += wrap(f"{wall}: {_SAID[now.verdict]}", width)
    return lines


def _tell_finding(finding: Finding, wall: str, width: int) -> Iterator[str]:
    """`W1: no (ATT-01a): ...`, or the same of a measure, and what to do."""
    said = _SAID[Verdict.NO] if finding.severity is Severity.STOP else "measure"
    yield from wrap(f"{wall}: {said} ({finding.code}): {finding.message}", width, below=_BELOW)
    yield from wrap(f"{_BELOW}What to do: {finding.remedy}", width, below=_BELOW)


def format_verdict(
    judgment: Judgment, wall: str, standing: Standing, schema: Schema, width: int, *, whole: bool = False
) -> list[str]:
    """Each stop of a wall that cannot be; else `W1: not yet known; pending: ...`, or a yes.

    `whole` says that all that is asked was answered, so that what is pending is what is to be shown later.
    """
    stops = [finding for finding in standing.findings.values() if finding.severity is Severity.STOP]
    if standing.verdict is Verdict.NO:
        return [line for stop in stops for line in _tell_finding(stop, wall, width)]
    measures = len(standing.findings) - len(stops)
    so_far = f"; {count(measures, 'measure')} so far" if measures else ""
    said = f"{wall}: {_SAID[standing.verdict]}{so_far}"
    if standing.verdict is Verdict.NOT_YET_KNOWN:
        told = judgment.walls[wall]
        names = dict.fromkeys([*told.documents, *(name_in_sentence(schema, path) for path in told.fields)])
        said += f"; {_TO_SHOW if whole else 'pending:'} {_list_first(names)}"
    return wrap(said, width, below=_BELOW)


def _list_first(names: Iterable[str]) -> str:
    listed = list(names)
    more = len(listed) - _MOST_NAMED
    return ", ".join(listed[:_MOST_NAMED]) + (f", and {more} more" if more > 0 else "")


def name_in_sentence(schema: Schema, dotted: str) -> str:
    """What a field or collection is called inside a sentence; its path where the schema does not know it."""
    path: Path = tuple(dotted.split("."))
    try:
        node = schema.node(path)
    except KeyError:
        return dotted
    entry = node.field or node.collection
    label = entry.label if entry is not None else dotted
    return label[:1].lower() + label[1:] if label[1:2].islower() else label
