"""The joints by their sealant and bond face, and how the finish keeps off that face."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.joint_borders import find_only_sealant, list_sealed_penetrations
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.model.field import Path
from specgen.model.value_text import words

Cells = tuple[list[Any], list[Any]]
_EITHER = "; sealed before or after the gloss: pending, from the applicator; masking follows from it"
# The coat, not the primer of a sealant.
_OF_FINISH = " of the finish"
_BEFORE = "sealed before the gloss: cure the sealant, then mask it"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the joints and sealed penetrations of which the same is said."""
    alike: dict[str, tuple[list[str], Cells]] = {}
    for mark, cells in (*_tell_joints(context), *_tell_penetrations(context)):
        told = " | ".join("".join(map(str, cell)) for cell in cells)
        alike.setdefault(told, ([], cells))[0].append(mark)
    join = ", ".join if context.is_marked else span_marks
    lines = tuple((join(marks), *cells) for marks, cells in alike.values())
    return TableView(("Joints", "Sealant", "Bond face and gloss"), lines, (20, 32, 48))


def _tell_joints(context: DocumentContext) -> Iterator[tuple[str, Cells]]:
    for mark in list_marks(context, "joints"):
        sealant = context.project.get(("joints", mark, "sealant"))
        named = sealant.mark if sealant is not None else ""
        face = _tell_face(context, ("joints", mark, "bond_face"), named)
        told = _name_sealant(context, named) if named else [_ask_sealant(context, mark)]
        yield _name_joint(context, mark), (told, face)


def _name_joint(context: DocumentContext, mark: str) -> str:
    """`J1 (3/4 in)` in a draft, which has no list of joints; else the mark."""
    width = context.display(("joints", mark, "width"))
    return f"{mark} ({width})" if context.is_marked and not width.open else mark


def _tell_penetrations(context: DocumentContext) -> Iterator[tuple[str, Cells]]:
    """What is sealed without a joint of its own, on the face that the only sealant was tested on."""
    only = find_only_sealant(context)
    for mark in list_sealed_penetrations(context) if only else ():
        yield mark, (_name_sealant(context, only), _tell_face(context, ("sealants", only, "reported_face"), only))


def _ask_sealant(context: DocumentContext, joint: str) -> Any:
    given = context.project.members.get(("sealants",))
    return context.ask(("joints", joint, "sealant") if given else ("sealants",))


def _name_sealant(context: DocumentContext, sealant: str) -> list[Any]:
    """`S1: class 50, silicone`."""
    movement, chemistry = (context.display(("sealants", sealant, name)) for name in ("c920_class", "chemistry"))
    return [f"{sealant}: class ", movement, ", ", chemistry]


def _tell_face(context: DocumentContext, at: Path, sealant: str) -> list[Any]:
    """`primer of the finish; sealed after the gloss: mask bond faces when the primer is dry`."""
    face = context.display(at)
    if face == "gloss":
        return [face, ": not permitted, see D05"]
    of = _OF_FINISH if face == "primer" else ""
    if not sealant and not context.project.members.get(("sealants",)):
        return [face, of, _EITHER]
    tint = "tinted " if face == "primer" and context.project.get(("primer", "tinted")) else ""
    order = sealant and context.project.get(("sealants", sealant, "sequence"))
    if order == "before_gloss":
        return [tint, face, f"{of}; {_BEFORE}"]
    after = "sealed after the gloss: " if order else ""
    dry = "the bond face" if face.open else f"the {words(str(face.raw).removeprefix('sealant_primer_on_'))}"
    return [tint, face, f"{of}; {after}mask bond faces when {dry} is dry, before the gloss"]
