"""Who of a crew is trained for each step of its work, by the materials that certificates cover."""

from collections.abc import Iterable

from specgen.documents.context import DocumentContext
from specgen.documents.marks import list_marks

_METAL = ("flashings", "metal_caps")
_BOARD, _BASE = ("board", "adhesive"), ("base_coat", "mesh")
# What attachments cover, by the step that works with it; a step without an entry works with no coat of a manufacturer.
_MATERIALS: dict[str, tuple[str, ...]] = {
    "wrb": ("wrb",),
    **dict.fromkeys(("board_layout", "boards", "rasp", "aesthetic_joints"), _BOARD),
    **dict.fromkeys(("heavy_mesh", "mesh", "second_pass"), _BASE),
    **dict.fromkeys(("smoothing_1", "smoothing_2"), ("smoothing",)),
    **dict.fromkeys(("protection", "setup", "clean_equipment"), ("primer", "gloss")),
    "primer": ("primer",),
    "gloss": ("gloss",),
    "release_primer": ("primer", "gloss"),
    "sealant": ("sealant",),
    **dict.fromkeys(_METAL, ("accessories",)),
}
_OF_METAL = {"sill_pan", "head_flashing", "floor_line_flashing", "kick_out_flashing", "step_flashing", "cap", "collar"}


def tell_trained(context: DocumentContext, crew: str, steps: Iterable[str]) -> str:
    """`T. Underbough (CT1): Primer; Gloss finish. No certificate: Metal caps`: the steps by who is trained for them.

    The steps alone where nobody of the crew shows a certificate.
    """
    titles = {name: context.standards.steps[name].title for name in steps}
    apart = [title for name, title in titles.items() if name not in _MATERIALS]
    by_person: dict[str, list[str]] = {}
    for name, title in titles.items():
        if name not in _MATERIALS:
            continue
        by_person.setdefault(_name_trained(context, crew, name), []).append(title)
    if set(by_person) <= {""}:
        return "; ".join(titles.values())
    without = by_person.pop("", [])
    told = [f"{people}: {'; '.join(named)}" for people, named in by_person.items()]
    told += [f"no certificate: {'; '.join(without)}"] if without else []
    told += [f"no material of a manufacturer: {'; '.join(apart)}"] if apart else []
    told += _name_fabricator(context, titles)
    return ". ".join(f"{one[:1].upper()}{one[1:]}" for one in told)


def _name_trained(context: DocumentContext, crew: str, step: str) -> str:
    """`T. Underbough, M. Brightlath (CT4)`: those of a crew whose certificates cover what a step works with."""
    project, materials = context.project, set(_MATERIALS.get(step, ()))
    people: list[str] = []
    papers: list[str] = []
    for mark in list_marks(context, "people"):
        if str(project.get(("people", mark, "crew")) or "") != crew:
            continue
        held = [paper.mark for paper in project.get(("people", mark, "certificates")) or ()]
        fitting = [paper for paper in held if materials & set(project.get(("attachments", paper, "covers")) or ())]
        people += [str(project.get(("people", mark, "name")) or mark)] if fitting else []
        papers += fitting
    return f"{', '.join(people)} ({', '.join(dict.fromkeys(papers))})" if people else ""


def _name_fabricator(context: DocumentContext, steps: Iterable[str]) -> list[str]:
    """`sheet metal by Pewter Lane Sheet Metal`: who makes the metal that is set; empty where nobody is named."""
    listed = [("accessories", number) for number in context.project.members.get(("accessories",), ())]
    makers = [context.project.get((*at, "maker")) for at in listed if context.project.get((*at, "kind")) in _OF_METAL]
    named = list(dict.fromkeys(str(maker) for maker in makers if maker))
    return [f"sheet metal by {', '.join(named)}"] if named and set(_METAL) & set(steps) else []
