"""The questions still open that can rule a wall out, in the order in which they are to be answered."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.code_edition import name_weather_sections
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deciding import APART, BEHIND, DRAINAGE, LOT_LINE, QUESTIONS, RATED
from specgen.documents.drainage_asked import BY_CODE, OF_EACH, tell_who_asks
from specgen.documents.standing_walls import BARRIER, list_standing, list_unconfirmed, list_wet
from specgen.documents.views._document_stages import list_deciding
from specgen.documents.views._rules import list_undecided
from specgen.judging.verdict import list_pending
from specgen.model.figure_text import split_figures
from specgen.model.finding import Verdict

# A rule is told without its clause, as where its documents and values are listed.
_RULE = len("ATT-08")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each question that a wall waits for."""
    waiting = {mark: set(_list_waiting(context, mark)) for mark in context.judgment.walls}
    lines: list[tuple[Any, ...]] = []
    for code, asked, fails in QUESTIONS:
        concerned = [mark for mark, codes in waiting.items() if code in codes]
        for question, walls in _word(context, code, asked, concerned).items():
            rule = " (ATT-08)" if code == BARRIER else f" ({code if code == RATED else code[:_RULE]})"
            if code == BEHIND:
                rule = f" ({BEHIND}{name_weather_sections(context)})"
            told = _cite_figures(context, fails)
            if code == BARRIER:
                told.append(_tell_wet(context, walls))
            if code == DRAINAGE and not question.endswith(BY_CODE):
                told.append(f", the minimum {OF_EACH}")
            lines.append((str(len(lines) + 1), f"{question}{rule}", ", ".join(walls), told))
    return TableView(("No.", "Question", "Wall", "Not suitable if"), tuple(lines), (4, 37, 8, 51))


def _word(context: DocumentContext, code: str, asked: str, walls: list[str]) -> dict[str, list[str]]:
    """The question with the walls it is asked of; that on drainage by who asks for it, as the code table tells."""
    worded: dict[str, list[str]] = {}
    for mark in walls:
        by = tell_who_asks(context, mark) if code == DRAINAGE else ""
        worded.setdefault(f"{asked}, {by}" if by else asked, []).append(mark)
    return worded


def _tell_wet(context: DocumentContext, walls: list[str]) -> str:
    """What rules a barrier wall out that shows that water is in it."""
    wet = list_wet(context, walls)
    return f"; or the source of the water in {', '.join(wet)} is not found and stopped" if wet else ""


def _cite_figures(context: DocumentContext, text: str) -> list[Any]:
    """The text with each figure in its place, with its source."""
    parts = split_figures(text)
    return [context.limit(part) if number % 2 else part for number, part in enumerate(parts)]


def _list_waiting(context: DocumentContext, mark: str) -> Iterator[str]:
    """The rules that a wall waits for, and those whose document it waits for; some clauses by themselves."""
    yield from list_undecided(context, mark)
    yield from (clause.code for clause in list_pending(context.judgment, mark) if clause.code in APART)
    if context.judgment.walls[mark].verdict is Verdict.NOT_YET_KNOWN:
        yield from [BEHIND] if mark in context.remember(list_unconfirmed) else []
        yield from [LOT_LINE] if mark in list_standing(context) else []
    for entry in list_deciding(context, mark):
        yield entry.name if entry.name == BARRIER else entry.code if entry.code in (*APART, RATED) else entry.code[:6]
