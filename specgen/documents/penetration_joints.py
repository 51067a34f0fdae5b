"""The joints around pipes and brackets that are sealed: which sealant, and on which face of the wall."""

from specgen.documents.context import DocumentContext

_PRIMER = "primer"


def list_sealed_penetrations(context: DocumentContext) -> list[str]:
    """The marks of the penetrations whose joint has a size."""
    marks = context.project.members.get(("details",), ())
    return [mark for mark in marks if context.project.is_given(("details", mark, "joint_width"))]


def find_only_sealant(context: DocumentContext) -> str:
    """The sealant of the penetrations: the only one of the project; an empty text where it has none or several."""
    sealants = context.project.members.get(("sealants",), ())
    return sealants[0] if len(sealants) == 1 else ""


def list_bonded_to_primer(context: DocumentContext) -> list[str]:
    """The marks of the joints, and of the penetrations behind them, that are sealed on the primer."""
    project, sealant = context.project, find_only_sealant(context)
    joints = [
        mark for mark in project.members.get(("joints",), ()) if project.get(("joints", mark, "bond_face")) == _PRIMER
    ]
    tested = project.get(("sealants", sealant, "reported_face")) if sealant else None
    return joints + (list_sealed_penetrations(context) if tested == _PRIMER else [])
