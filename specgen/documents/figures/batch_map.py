"""The elevations as built: each panel with the batch of its gloss, by a letter that the sheet explains."""

from collections.abc import Mapping
from dataclasses import replace

from specgen.documents.context import DocumentContext
from specgen.documents.figures.elevation import draw_elevation
from specgen.documents.figures.elevation_facts import read_facts
from specgen.documents.layouts import list_laid_out
from specgen.documents.marks import name_member
from specgen.documents.records.panel_work import list_panel_work
from specgen.documents.source_letters import letter
from specgen.model.block import Figure, Text
from specgen.model.layout import ElevationLayout

_NONE = "–"


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """The sheets of every elevation on which gloss is recorded."""
    figures: list[Figure] = []
    letters: dict[tuple[str, ...], str] = {}
    for layout in list_laid_out(context):
        batches = find_batches(context, layout)
        if not batches:
            continue
        for named in batches.values():
            letters.setdefault(named, letter(len(letters) + 1))
        figures += _draw_map(context, layout, {panel: letters[named] for panel, named in batches.items()}, letters)
    return tuple(figures)


def find_batches(context: DocumentContext, layout: ElevationLayout) -> dict[str, tuple[str, ...]]:
    """The batches of the last gloss on each panel of a layout; without those of which none is recorded."""
    work = list_panel_work(context)
    found = {panel.mark: work.get((layout.elevation, panel.mark, "gloss")) for panel in layout.panels}
    return {mark: coat.last_batches for mark, coat in found.items() if coat is not None and coat.last_batches}


def _draw_map(
    context: DocumentContext,
    layout: ElevationLayout,
    of_panel: Mapping[str, str],
    letters: Mapping[tuple[str, ...], str],
) -> list[Figure]:
    used = [(sign, named) for named, sign in letters.items() if sign in of_panel.values()]
    told = "; ".join(f"{sign} = {' and '.join(named)}" for sign, named in used)
    none = f"; {_NONE} = not recorded" if len(of_panel) < len(layout.panels) else ""
    facts = read_facts(context.project, layout.elevation)
    facts = replace(facts, remarks=(f"Batch of gloss: {told}{none}", *facts.remarks))
    shown = tuple(replace(panel, mark=f"{panel.mark} {of_panel.get(panel.mark, _NONE)}") for panel in layout.panels)
    sheets = draw_elevation(replace(layout, panels=shown), facts, "page")
    name = name_member(context, "elevations", layout.elevation)
    listed = ", ".join(f"{mark} {sign}" for mark, sign in of_panel.items())
    return [
        Figure(
            "batch_map",
            (
                Text(
                    f"As built, {name}, batches of gloss" + (f", sheet {n} of {len(sheets)}" if len(sheets) > 1 else "")
                ),
            ),
            sheet.svg,
            f"{sheet.alt} Batch of gloss: {told}{none}. {listed}.",
            sheet.width,
            sheet.height,
        )
        for n, sheet in enumerate(sheets, 1)
    ]
