"""What each document that is still required is needed before."""

from specgen.documents.context import DocumentContext
from specgen.documents.deciding import is_undecided
from specgen.documents.owed_sheets import WRITTEN, RequiredDocument
from specgen.documents.required_documents import list_pending
from specgen.documents.views._concerned import concerns
from specgen.documents.views._stages import (
    BEFORE_MOCKUP,
    DECISION,
    HAZARD,
    PULLS,
    SENDING,
    START,
    SUBMITTAL,
    find_next_package,
    list_titles,
    tell_step,
)

# What a document may be needed before that is no step.
_FIRST = {"hazard": HAZARD, "pulls": PULLS}
_STAGES = {"submittal": SUBMITTAL, "sending": SENDING, "start of work": START}
# Product data are part of a package that is issued.
_SHEETS = "SUB-02"
# A coat that the EIFS manufacturer does not accept rules its wall out.
_OF_FINISH = "SUB-06a"
_COATS = {"primer", "gloss", "smoothing_coat"}
# What an old wall is pulled with is used as its manufacturer writes.
_PULLED_WITH = f"{WRITTEN}adhesive"
# The report on the pull tests and its acceptance, which alone come behind them.
_BOND = "ATT-05"


def list_pulled(context: DocumentContext) -> frozenset[str]:
    """The marks of the walls of which a bond report is pending.

    They are repaired and pulled, which costs the most, when all else that can rule them out is answered.
    """
    pending = (entry for entry in list_pending(context) if entry.code.startswith(_BOND))
    return frozenset(mark for entry in pending for mark in entry.subjects)


def sort_document(context: DocumentContext, document: RequiredDocument) -> tuple[int, str]:
    """What a document is needed before: the decision on a wall that waits for it, the submittal, or a step."""
    deciding = {code for wall in context.judgment.walls.values() for code in wall.deciding}
    if document.before in _FIRST:
        return _FIRST[document.before]
    decided = (*deciding, *((_OF_FINISH,) if is_undecided(context) else ()))
    if document.code in decided or document.code.startswith("COD") or document.before == "decision":
        return PULLS if _bears_on_pulled(context, document) else DECISION
    if list_pulled(context) and document.name.startswith(_PULLED_WITH):
        return PULLS
    if document.before in _STAGES:
        return _STAGES[document.before]
    if document.code.startswith(_SHEETS) and find_next_package(context) == SUBMITTAL and document.before == "mockup":
        return SUBMITTAL
    step = "mockup" if document.before == "sealant" and _seals_mockup(context) else document.before
    if context.is_marked and step == "mockup" and find_next_package(context) == SUBMITTAL:
        return SUBMITTAL  # what the mockup is built by is reviewed with it
    return tell_step(list_titles(context), step)


def find_decision(context: DocumentContext) -> tuple[int, str]:
    """Before what an answer on the whole project is due that decides walls: the pull tests where any is pulled."""
    return PULLS if list_pulled(context) else DECISION


def _bears_on_pulled(context: DocumentContext, document: RequiredDocument) -> bool:
    """Whether a document that decides a wall is due before the wall is pulled; that on the pulls themselves is not."""
    pulled, walls = list_pulled(context), set(context.judgment.walls).intersection(document.subjects)
    return not document.code.startswith(_BOND) and bool(pulled & walls if walls else pulled)


def _seals_mockup(context: DocumentContext) -> bool:
    """Whether a mockup that is still to be built holds a sealant joint, which is tested in it, or the coat it bonds to.

    A sealant that lets go of a coat is found out before any wall is sprayed with it.
    """
    project = context.project
    to_build = project.value(("package", "purpose")) in BEFORE_MOCKUP
    faces = (project.get(("joints", mark, "bond_face")) for mark in project.members.get(("joints",), ()))
    coated = context.draft and not _COATS.isdisjoint(map(str, faces))
    return to_build and (coated or "sealant_joint" in map(str, project.get(("mockup", "includes")) or ()))


def decides(context: DocumentContext, document: RequiredDocument) -> bool:
    """Whether a wall cannot be decided on without a document."""
    return sort_document(context, document)[0] <= DECISION[0]


def list_deciding(context: DocumentContext, mark: str) -> list[RequiredDocument]:
    """The documents that a wall waits for, those too that a design draft does not have to list yet."""
    deciding = context.judgment.walls[mark].deciding
    return [
        entry
        for entry in list_pending(context)
        if entry.code in deciding or (decides(context, entry) and concerns(context, entry, mark))
    ]
