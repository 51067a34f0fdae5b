"""The water details that the project has, in section: sill with pan, head with flashing, parapet with cap, roof end."""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures import water_sections
from specgen.documents.figures.labels import shorten
from specgen.documents.figures.section_sheet import PAGE_WIDTH, SIZE, Point, Sheet
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.model.block import Figure

_COLUMNS, _TALL = 2, 51.5  # of details beside each other; of one with its title
# How each detail is drawn, and the accessory that is described beside it.
_DRAWN: dict[str, tuple[str, str, Callable[[Sheet, Point, bool], list[tuple[Point, Point]]]]] = {
    "sill": ("Sill with pan", "sill_pan", water_sections.draw_sill),
    "head": ("Head with flashing", "head_flashing", water_sections.draw_head),
    "parapet": ("Parapet with cap", "cap", water_sections.draw_parapet),
    "roof_end": ("Roof end with kick-out flashing", "kick_out_flashing", water_sections.draw_roof_end),
}
_DRIP = "Drip past the finished face"
_SAID = {
    "sill": ("Pan sloped outward, turned up behind the frame and at its ends", _DRIP, "Front of the pan left open"),
    "head": ("Flashing sloped outward, {lapped}, with end dams", _DRIP, "Weeps above the flashing left open"),
    "parapet": (
        "Cap sloped to the roof",
        "Membrane below the cap, over the edge of the board",
        f"{_DRIP} on both sides",
    ),
    "roof_end": (
        "Kick-out flashing, to lead the water into the gutter",
        "Step flashing, {lapped}",
        "EIFS ended above the roofing and back-wrapped",
    ),
}


class Shown(NamedTuple):
    """A detail and where the project has it."""

    kind: str
    marks: list[str]


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """One figure of the details that the project has; none where it has none."""
    shown = tuple(_find_shown(context))
    return (_draw_details(context, shown),) if shown else ()


def _find_shown(context: DocumentContext) -> Iterator[Shown]:
    project = context.project
    openings = [
        ("elevations", face, "openings", mark)
        for face in list_marks(context, "elevations")
        for mark in project.members.get(("elevations", face, "openings"), ())
    ]
    found = {
        "sill": [path[-1] for path in openings if project.get((*path, "sill_pan")) is True],
        "head": [path[-1] for path in openings if project.get((*path, "head_flashing")) is True],
    }
    for kind, name in (("parapet", "cap"), ("roof_end", "diverter")):
        details = [("details", mark) for mark in list_marks(context, "details")]
        found[kind] = [
            path[-1] for path in details if project.get((*path, "kind")) == kind and project.get((*path, name)) is True
        ]
    yield from (Shown(kind, marks) for kind, marks in found.items() if marks)


def _draw_details(context: DocumentContext, shown: tuple[Shown, ...]) -> Figure:
    sheet, key = Sheet(), list[tuple[str, str]]()
    barrier = any(
        context.project.get(("walls", mark, "wrb", "kind")) not in (None, "none")
        for mark in list_marks(context, "walls")
    )
    column = PAGE_WIDTH / _COLUMNS
    for number, detail in enumerate(shown):
        x, y = number % _COLUMNS * column + 2, number // _COLUMNS * _TALL + 2
        title, _, draw_one = _DRAWN[detail.kind]
        sheet.say(x, y + SIZE, title, bold=True)
        sheet.say(x, y + 2.5 * SIZE, shorten(span_marks(detail.marks), column - 4, SIZE))
        places = draw_one(sheet, (x, y + 10), barrier)
        for (at, place), said in zip(places, _list_words(context, detail.kind, barrier), strict=True):
            key.append((str(len(key) + 1), said))
            sheet.number(at, place, key[-1][0])
    down = sheet.list_key(key, -(-len(shown) // _COLUMNS) * _TALL + 3)
    sheet.say(2, down + SIZE + 1, "Not to scale.")
    caption = f"Water details: {', '.join(_name(detail) for detail in shown)}"
    told = ". ".join(f"{_DRAWN[d.kind][0]} at {span_marks(d.marks)}" for d in shown)
    alt = f"{told}. {'. '.join(f'{number} {text}' for number, text in key)}. Not to scale."
    return sheet.finish("water_details", caption, alt, down + SIZE + 3)


def _name(detail: Shown) -> str:
    title = _DRAWN[detail.kind][0]
    return title[:1].lower() + title[1:]


def _list_words(context: DocumentContext, kind: str, barrier: bool) -> list[str]:
    """What the numbers of a detail stand for; the first one with the material of the accessory."""
    lapped = "lapped by the WRB" if barrier else "sealed to the substrate"
    said = [text.replace("{lapped}", lapped) for text in _SAID[kind]]
    material = _find_material(context, _DRAWN[kind][1])
    return [f"{said[0]}: {material}" if material else said[0], *said[1:]]


def _find_material(context: DocumentContext, kind: str) -> str:
    """The description of the first accessory of a kind; empty where there is none."""
    for mark in list_marks(context, "accessories"):
        if context.project.get(("accessories", mark, "kind")) == kind:
            return str(context.project.get(("accessories", mark, "description")) or "")
    return ""
