"""The questions still open that can rule a wall out, in the order in which they are to be answered."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.standing_walls import BARRIER, list_unconfirmed
from specgen.documents.views._rules import list_undecided
from specgen.documents.views.answers import list_deciding
from specgen.documents.views.code_items import name_weather_sections
from specgen.model.figure_text import split_figures
from specgen.model.finding import Verdict

# What no rule asks of a wall that stands, and the code does.
_BEHIND = "COD, "
# Rule or clause, question, and the answer that rules the wall out; what is soonest asked and refuses most comes first.
_QUESTIONS = (
    (
        "ATT-10",
        "Asbestos in the existing wall, lead in its coating",
        "asbestos is found and can be neither removed nor left undisturbed; lead alone does not decide, see D05",
    ),
    (
        _BEHIND,
        "Wall behind the board: concrete or masonry designed to the code, or framed",
        "the wall is framed, or not designed to the code, without a test to ASTM E331: a WRB is then required",
    ),
    ("ATT-03", "Local rule on fasteners", "the local code requires fasteners through the board"),
    ("ATT-07", "Bond of the adhesive to the WRB", "no report shows the bond of this adhesive to this WRB"),
    (
        "ATT-05",
        "Bond of the existing surface",
        "a pull is below the engineer's minimum, and the surface is neither removed nor overlaid with fastened "
        "sheathing and WRB (a new wall type: drained, with its own NFPA 285 report and special inspection)",
    ),
    (BARRIER, "Barrier wall without drainage", "the architect does not accept in writing a wall without drainage"),
    ("COD-02", "Drained wall by the local code", "the local code requires a drained wall"),
    ("COD-03d", "Fire class by the local code", "the wall does not reach the class that the authority requires"),
    (
        "COD-03",
        "NFPA 285 and NFPA 268",
        "neither a report nor an engineer's extension accepted by the authority covers this wall",
    ),
    (
        "HEA-02",
        "Heat at the board",
        "the face temperature exceeds {board.softens}, the maximum use temperature of EPS",
    ),
    (
        "HEA-05",
        "Dark color over EPS",
        "the EIFS manufacturer refuses the color, and the architect accepts none with a light reflectance of minimum "
        "{color.lrv_least}",
    ),
    ("ATT-09", "Wind on the adhered wall", "the wind suction exceeds the tested load divided by the safety factor"),
    (
        "ATT-08",
        "Drainage behind the board",
        "the drainage efficiency is below {drainage.efficiency} by ASTM E2273, or the drained water has no outlet",
    ),
    ("INS-03", "EPS board for EIFS", "no aged board to ASTM E2430 is available"),
)
_APART = {code for code, *_ in _QUESTIONS if len(code) == len("COD-03d")}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each question that a wall waits for."""
    waiting = {mark: set(_list_waiting(context, mark)) for mark in context.judgment.walls}
    lines: list[tuple[Any, ...]] = []
    for code, question, fails in _QUESTIONS:
        walls = [mark for mark, codes in waiting.items() if code in codes]
        if walls:
            rule = " (ATT-08)" if code == BARRIER else f" ({code})"
            if code == _BEHIND:
                rule = f" ({_BEHIND}{name_weather_sections(context)})"
            lines.append((str(len(lines) + 1), f"{question}{rule}", ", ".join(walls), _cite_figures(context, fails)))
    return TableView(("No.", "Question", "Wall", "Not suitable if"), tuple(lines), (5, 33, 12, 50))


def _cite_figures(context: DocumentContext, text: str) -> list[Any]:
    """The text with each figure in its place, with its source."""
    parts = split_figures(text)
    return [context.limit(part) if number % 2 else part for number, part in enumerate(parts)]


def _list_waiting(context: DocumentContext, mark: str) -> Iterator[str]:
    """The rules that a wall waits for, and those whose document it waits for; some clauses by themselves."""
    yield from list_undecided(context, mark)
    if mark in context.remember(list_unconfirmed) and context.judgment.walls[mark].verdict is Verdict.NOT_YET_KNOWN:
        yield _BEHIND
    for entry in list_deciding(context, mark):
        yield entry.name if entry.name == BARRIER else entry.code if entry.code in _APART else entry.code[:6]
