"""The joints by their sealant and bond face, and how the finish keeps off that face."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.model.value_text import words

_EITHER = "; sealed before or after the gloss: pending, from the applicator; masking follows from it"
_BEFORE = "sealed before the gloss: cure the sealant, then mask it"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the joints of which the same is said."""
    alike: dict[str, tuple[list[str], tuple[Any, Any]]] = {}
    for mark in context.project.members.get(("joints",), ()):
        cells = _tell_sealant(context, mark), _tell_face(context, mark)
        alike.setdefault(str(cells), ([], cells))[0].append(mark)
    lines = tuple((span_marks(marks), *cells) for marks, cells in alike.values())
    return TableView(("Joints", "Sealant", "Bond face and gloss"), lines, (20, 32, 48))


def _tell_sealant(context: DocumentContext, joint: str) -> list[Any]:
    """`S1: class 50, silicone`."""
    sealant = context.project.get(("joints", joint, "sealant"))
    if sealant is None:
        given = context.project.members.get(("sealants",))
        return [context.ask(("joints", joint, "sealant") if given else ("sealants",))]
    movement, chemistry = (context.display(("sealants", sealant.mark, name)) for name in ("c920_class", "chemistry"))
    return [f"{sealant.mark}: class ", movement, ", ", chemistry]


def _tell_face(context: DocumentContext, joint: str) -> list[Any]:
    """`primer; sealed after the gloss: mask bond faces when the primer is dry`."""
    face, sealant = context.display(("joints", joint, "bond_face")), context.project.get(("joints", joint, "sealant"))
    if face == "gloss":
        return [face, ": not permitted, see D05"]
    if sealant is None and not context.project.members.get(("sealants",)):
        return [face, _EITHER]
    order = sealant and context.project.get(("sealants", sealant.mark, "sequence"))
    if order == "before_gloss":
        return [face, "; ", _BEFORE]
    after = "sealed after the gloss: " if order else ""
    dry = "the bond face" if face.open else f"the {words(str(face.raw).removeprefix('sealant_primer_on_'))}"
    return [face, f"; {after}mask bond faces when {dry} is dry, before the gloss"]
