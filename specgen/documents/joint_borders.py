"""What sealant bonds to beside the wall: frames, flashings, adjoining work, collars of what passes through."""

from collections.abc import Iterable

from specgen.documents.context import DocumentContext
from specgen.documents.joint_flashing import is_flashed, list_flashed_heads
from specgen.documents.marks import list_marks

# Joints along work that is neither EIFS nor a frame.
_ALONG_OTHERS = ("dissimilar_material", "substrate_change")


def list_borders(context: DocumentContext, joints: Iterable[str], through: Iterable[str]) -> dict[str, list[str]]:
    """The marks of joints and of penetrations by what they border; nothing that none of them does."""
    at = {mark: ("joints", mark) for mark in joints}
    kinds = {mark: context.project.get((*path, "kind")) for mark, path in at.items()}
    told = {
        "frames": [mark for mark in at if kinds[mark] == "opening_perimeter"],
        "head flashing": [mark for mark, path in at.items() if list_flashed_heads(context, path)],
    }
    for mark in (mark for mark, path in at.items() if is_flashed(context, path)):
        told.setdefault("floor-line flashing" if kinds[mark] == "floor_line" else "flashing", []).append(mark)
    for mark in (mark for mark in at if kinds[mark] in _ALONG_OTHERS):
        other = context.project.get(("joints", mark, "other_face")) or "adjoining material"
        told.setdefault(other, []).append(mark)
    told["collar"] = list(through)
    return {what: marks for what, marks in told.items() if marks}


def list_sealed_penetrations(context: DocumentContext) -> list[str]:
    """The marks of the penetrations that are sealed."""
    details = list_marks(context, "details")
    through = [mark for mark in details if context.project.get(("details", mark, "kind")) == "penetration"]
    return [mark for mark in through if context.project.get(("details", mark, "sealed"))]


def find_only_sealant(context: DocumentContext) -> str:
    """The sealant of what names none: the only one; empty where there are several, or none."""
    marks = list_marks(context, "sealants")
    return marks[0] if len(marks) == 1 else ""
