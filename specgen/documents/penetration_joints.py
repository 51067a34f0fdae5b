"""The joints and sealed penetrations that are sealed on the primer of the finish."""

from specgen.documents.context import DocumentContext
from specgen.documents.joint_borders import find_only_sealant, list_sealed_penetrations
from specgen.documents.marks import list_marks

_PRIMER = "primer"


def list_bonded_to_primer(context: DocumentContext) -> list[str]:
    """The marks of the joints, and of the penetrations behind them, that are sealed on the primer."""
    project, sealant = context.project, find_only_sealant(context)
    joints = [mark for mark in list_marks(context, "joints") if project.get(("joints", mark, "bond_face")) == _PRIMER]
    tested = project.get(("sealants", sealant, "reported_face")) if sealant else None
    return joints + (list_sealed_penetrations(context) if tested == _PRIMER else [])
