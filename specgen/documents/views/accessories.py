"""What is set at edges, openings, and joints: accessories, backer rod, sealant primer, bond-breaker tape."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.views._materials import MaterialLine, party_name, set_materials

_HEADER = ("Accessory", "Description and place", "Manufacturer", "Product", "Data sheet")
_WIDTHS = (17, 37, 22, 16, 8)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each accessory, each kind of rod and its product, each sealant primer, and the tape."""
    lines = [*_given(context), *_rods(context), *_primers(context), *_tape(context)]
    return TableView(_HEADER, set_materials(context, lines).rows, _WIDTHS)


def _given(context: DocumentContext) -> Iterator[MaterialLine]:
    """The accessories that the project lists; those of which it says the same in one line."""
    told: dict[str, tuple[MaterialLine, list[str]]] = {}
    for number in context.project.members.get(("accessories",), ()):
        kind, description, at, maker, product = (
            context.display(("accessories", number, name)) for name in ("kind", "description", "at", "maker", "product")
        )
        line = MaterialLine("", [description, "; ", at], maker, product, "accessories")
        told.setdefault(line.text, (line, []))[1].append(kind.text)
    for line, kinds in told.values():
        name = ", ".join(dict.fromkeys(kinds))
        yield line._replace(name=name[:1].upper() + name[1:])


def _rods(context: DocumentContext) -> Iterator[MaterialLine]:
    """The rods of all joints: each kind, maker, and product once, with its diameters and their joints."""
    project = context.project
    found: dict[tuple[str, ...], tuple[list[DisplayValue], dict[str, tuple[DisplayValue, list[str]]]]] = {}
    for mark in list_marks(context, "joints"):
        if project.get(("joints", mark, "rod_kind")) in (None, "none"):
            continue
        told = [context.display(("joints", mark, f"rod_{name}")) for name in ("kind", "maker", "product")]
        size = context.display(("joints", mark, "rod_diameter"))
        _, sizes = found.setdefault(tuple(map(str, told)), (told, {}))
        sizes.setdefault(str(size), (size, []))[1].append(mark)
    for mark in list_marks(context, "details"):
        size = context.display(("details", mark, "rod_diameter"))
        if len(found) == 1 and project.is_given(("details", mark, "rod_diameter")):
            next(iter(found.values()))[1].setdefault(str(size), (size, []))[1].append(mark)
    for (kind, maker, product), sizes in found.values():
        parts: list[Any] = [kind]
        for size, joints in sizes.values():
            parts += ["; " if len(parts) == 1 else ", ", size, f" ({', '.join(joints)})"]
        yield MaterialLine("Backer rod", parts, maker, product, "backing")


def _primers(context: DocumentContext) -> Iterator[MaterialLine]:
    """The primer of each sealant that has one."""
    for mark in list_marks(context, "sealants"):
        at = ("sealants", mark, "primer")
        if context.project.is_given((*at, "name")):
            parts = ["open time ", context.display((*at, "open_minutes"))]
            by = party_name(context, "sealant_source")
            yield MaterialLine(f"Primer of sealant {mark}", parts, by, context.display((*at, "name")), "sealant_primer")


def _tape(context: DocumentContext) -> Iterator[MaterialLine]:
    project = context.project
    joints = [m for m in list_marks(context, "joints") if project.get(("joints", m, "bond_break_tape"))]
    listed = project.members.get(("accessories",), ())
    if joints and all(project.get(("accessories", n, "kind")) != "bond_break_tape" for n in listed):
        maker, product = (
            DisplayValue(f"[Bond-breaker tape {what}]", open=True) for what in ("manufacturer", "product")
        )
        yield MaterialLine("Bond-breaker tape", [f"at {', '.join(joints)}"], maker, product, "backing")
