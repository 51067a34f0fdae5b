"""The sealants to renew with: product, joints, the face it bonds to, and the letters and report behind it."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.documents.views.vouching import list_letters

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
    letters = [
        letter
        for letter in list_letters(project)
        if "sealant_source" in map(str, project.get(("attachments", letter, "parties")) or ())
    ]
    report = project.get(("sealants", mark, "adhesion_report"))
    papers = [*letters, *([report.mark] if report is not None else [])]
    named = [product, *([] if color.open else [", ", color])]
    return (mark, named, span_marks(joints) or _NONE, face, ", ".join(papers) or "none received")


def _seals(context: DocumentContext, joint: str, sealant: str) -> bool:
    """Whether a joint is sealed with a sealant."""
    used = context.project.get(("joints", joint, "sealant"))
    return used is not None and used.mark == sealant
