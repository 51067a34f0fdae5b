"""The sealants to renew with: product, joints, the face it bonds to, and the letters and report behind it."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.joint_borders import find_only_sealant, list_borders, list_sealed_penetrations
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.documents.views.vouching import list_letters, list_metal_proofs

_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each sealant that the project names."""
    lines = tuple(_line(context, mark) for mark in list_marks(context, "sealants"))
    header = ("Sealant", "Product, color", "Joints", "Bond face", "Letters, report")
    return TableView(header, lines, (9, 33, 18, 20, 20))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    project = context.project
    product, color, face = (context.display(("sealants", mark, name)) for name in ("product", "color", "reported_face"))
    joints = [joint for joint in list_marks(context, "joints") if _seals(context, joint, mark)]
    # A penetration names no sealant: it takes the only one.
    through = list_sealed_penetrations(context) if find_only_sealant(context) else []
    tint = "tinted " if project.get(("sealants", mark, "reported_face")) == "primer" and _is_tinted(context) else ""
    borders = list_borders(context, joints, through)
    letters = [
        letter
        for letter in list_letters(project)
        if "sealant_source" in map(str, project.get(("attachments", letter, "parties")) or ())
    ]
    report = project.get(("sealants", mark, "adhesion_report"))
    metal = list_metal_proofs(project) if borders else []
    papers = dict.fromkeys([*letters, *([report.mark] if report is not None else []), *metal])
    named = [product, *([] if color.open else [", ", color])]
    places = ", ".join(filter(None, (span_marks(joints), span_marks(through)))) or _NONE
    bonded = [tint, face, f"; {', '.join(borders)}" if borders else ""]
    return (mark, named, places, bonded, ", ".join(papers) or "none received")


def _is_tinted(context: DocumentContext) -> bool:
    return bool(context.project.get(("primer", "tinted")))


def _seals(context: DocumentContext, joint: str, sealant: str) -> bool:
    """Whether a joint is sealed with a sealant."""
    used = context.project.get(("joints", joint, "sealant"))
    return used is not None and used.mark == sealant
