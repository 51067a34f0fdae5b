"""The elevations as built: each panel with the batch of its gloss, by a letter that the sheet explains."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.elevation import DrawnSheet, draw_elevations
from specgen.documents.figures.elevation_facts import ElevationFacts, read_facts
from specgen.documents.layouts import list_laid_out
from specgen.documents.marks import name_member
from specgen.documents.records.panel_work import list_panel_work
from specgen.documents.source_letters import letter
from specgen.model.block import Figure, Text
from specgen.model.layout import ElevationLayout

_NONE = "–"


class _Map(NamedTuple):
    """An elevation to be drawn with the letter of each panel's batch, and what the letters say."""

    mark: str
    layout: ElevationLayout
    facts: ElevationFacts
    told: str


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """The sheets of every elevation on which gloss is recorded, numbered through."""
    maps = list(_list_maps(context))
    drawn = draw_elevations([(one.layout, one.facts) for one in maps], "page")
    return tuple(
        _set_figure(context, one, sheet, f", part {number} of {len(sheets)}" if len(sheets) > 1 else "")
        for one, sheets in zip(maps, drawn, strict=True)
        for number, sheet in enumerate(sheets, 1)
    )


def _list_maps(context: DocumentContext) -> Iterator[_Map]:
    letters: dict[tuple[str, ...], str] = {}
    for layout in list_laid_out(context):
        batches = find_batches(context, layout)
        if not batches:
            continue
        for named in batches.values():
            letters.setdefault(named, letter(len(letters) + 1))
        yield _make_map(context, layout, {panel: letters[named] for panel, named in batches.items()}, letters)


def find_batches(context: DocumentContext, layout: ElevationLayout) -> dict[str, tuple[str, ...]]:
    """The batches of the last gloss on each panel of a layout; without those of which none is recorded."""
    work = list_panel_work(context)
    found = {panel.mark: work.get((layout.elevation, panel.mark, "gloss")) for panel in layout.panels}
    return {mark: coat.last_batches for mark, coat in found.items() if coat is not None and coat.last_batches}


def _make_map(
    context: DocumentContext,
    layout: ElevationLayout,
    of_panel: Mapping[str, str],
    letters: Mapping[tuple[str, ...], str],
) -> _Map:
    used = [(sign, named) for named, sign in letters.items() if sign in of_panel.values()]
    none = f"; {_NONE} = not recorded" if len(of_panel) < len(layout.panels) else ""
    told = "; ".join(f"{sign} = {' and '.join(named)}" for sign, named in used)
    said = f"Batch of gloss: {told}{none}"
    facts = read_facts(context.project, layout.elevation)
    facts = replace(facts, remarks=(said, *facts.remarks))
    shown = tuple(replace(panel, mark=f"{panel.mark} {of_panel.get(panel.mark, _NONE)}") for panel in layout.panels)
    listed = ", ".join(f"{mark} {sign}" for mark, sign in of_panel.items())
    return _Map(layout.elevation, replace(layout, panels=shown), facts, f"{said}. {listed}.")


def _set_figure(context: DocumentContext, one: _Map, sheet: DrawnSheet, part: str) -> Figure:
    name = name_member(context, "elevations", one.mark)
    title = Text(f"As built, {name}, batches of gloss{part}")
    return Figure("batch_map", (title,), sheet.svg, f"{sheet.alt} {one.told}", sheet.width, sheet.height)
