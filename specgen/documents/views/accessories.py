"""What belongs to the sealant joints besides the sealant: backer rod, sealant primer, bond-break tape."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._materials import MaterialLine, party_name, set_materials


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each kind of rod and its product, each sealant primer, and the tape."""
    return set_materials(context, [*_rods(context), *_primers(context), *_tape(context)])


def _rods(context: DocumentContext) -> Iterator[MaterialLine]:
    """The rods of all joints: each kind and product once, with all its diameters."""
    project = context.project
    found: dict[tuple[Any, Any], dict[Any, Any]] = {}
    for mark in list_marks(context, "joints"):
        kind, product, size = (project.get(("joints", mark, f"rod_{name}")) for name in ("kind", "product", "diameter"))
        if kind not in (None, "none"):
            sizes = found.setdefault((kind, product), {})
            sizes |= {size: context.display(("joints", mark, "rod_diameter"))} if size else {}
    for (kind, product), sizes in found.items():
        parts: list[Any] = [context.text(kind, project.schema.field_at(("joints", "*", "rod_kind")))]
        for size in sorted(sizes):
            parts += ["; " if len(parts) == 1 else ", ", sizes[size]]
        yield MaterialLine("Backer rod", parts, "–", product or "–", "backing")


def _primers(context: DocumentContext) -> Iterator[MaterialLine]:
    """The primer of each sealant that has one."""
    for mark in list_marks(context, "sealants"):
        at = ("sealants", mark, "primer")
        if context.project.is_given((*at, "name")):
            parts = ["open time ", context.display((*at, "open_minutes"))]
            by = party_name(context, "sealant_source")
            yield MaterialLine(f"Primer of sealant {mark}", parts, by, context.display((*at, "name")), "sealant_primer")


def _tape(context: DocumentContext) -> Iterator[MaterialLine]:
    joints = [m for m in list_marks(context, "joints") if context.project.get(("joints", m, "bond_break_tape"))]
    if joints:
        yield MaterialLine("Bond-break tape", [f"at {', '.join(joints)}"], "–", "–", "backing")
