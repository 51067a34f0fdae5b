"""The panels as built: crew, batch, pails and days of primer and gloss, and who released them."""

from collections.abc import Iterator
from datetime import date

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layouts import list_laid_out
from specgen.documents.members import span_marks
from specgen.documents.records.panel_work import COATS, CoatWork, list_panel_work
from specgen.model.record import day_of
from specgen.model.value_text import long_date

_NOT = "not recorded"
# So many days are told one by one.
_FEW_DAYS = 2
Row = tuple[str, ...]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the panels of which the same is recorded, then those that the log alone names, and the rest."""
    work = list_panel_work(context)
    recorded = {(face, panel) for face, panel, _ in work}
    panels = [(layout.elevation, panel.mark) for layout in list_laid_out(context) for panel in layout.panels]
    laid_out = set(panels)
    lines = list(_join_alike(context, [one for one in panels if one in recorded]))
    for face, panel, _ in work:
        if (face, panel) not in laid_out:
            laid_out.add((face, panel))
            lines.append(_set_row(context, face, panel, f"{panel} (not in the layout)"))
    lines += _tell_bare([one for one in panels if one not in recorded])
    coats = ("Primer: batch; pails", "Primer, date", "Gloss: batch; pails", "Gloss, date")
    return TableView(("Panel", "Crew", *coats, "Released, by"), tuple(lines), (22, 8, 13, 13, 13, 13, 18))


def _tell_bare(panels: list[tuple[str, str]]) -> Iterator[Row]:
    """The panels of an elevation of which nothing is recorded, in one row."""
    faces = dict.fromkeys(face for face, _ in panels)
    for of in faces:
        yield (span_marks(panel for face, panel in panels if face == of), *(_NOT,) * 6)


def _join_alike(context: DocumentContext, panels: list[tuple[str, str]]) -> Iterator[Row]:
    """The panels of an elevation of which the same is recorded in one row."""
    alike: dict[Row, list[str]] = {}
    for face, panel in panels:
        _, *cells = _set_row(context, face, panel, panel)
        alike.setdefault((face, *cells), []).append(panel)
    yield from ((span_marks(marks), *cells) for (_, *cells), marks in alike.items())


def _set_row(context: DocumentContext, face: str, panel: str, name: str) -> Row:
    work = list_panel_work(context)
    found = {coat: work.get((face, panel, coat)) for coat in COATS}
    crews = dict.fromkeys(crew for one in found.values() if one for crew in one.crews)
    cells = (cell for one in found.values() for cell in _tell_coat(one))
    return (name, ", ".join(crews) or _NOT, *cells, _tell_releases(found))


def _tell_coat(found: CoatWork | None) -> tuple[str, str]:
    """`B-204; 1 to 4`, and its days."""
    if found is None:
        return _NOT, _NOT
    pails = span_marks(found.numbers) if found.numbers else ""
    batches = ", ".join(found.batches) or "batch not recorded"
    return "; ".join(filter(None, (batches, pails))), _tell_days(found.days)


def _tell_days(days: tuple[date, ...]) -> str:
    """The days one by one; of many the first, the last, and how many."""
    if len(days) <= _FEW_DAYS:
        return "; ".join(map(long_date, days)) or _NOT
    return f"{long_date(days[0])} to {long_date(days[-1])}, {len(days)} days"


def _tell_releases(coats: dict[str, CoatWork | None]) -> str:
    told = []
    for coat, found in coats.items():
        for entry in found.releases[:1] if found else ():
            day = day_of(entry)
            told.append(" ".join(filter(None, (coat, long_date(day) if day else "", str(entry.get("by") or "")))))
    return "; ".join(told) or _NOT
