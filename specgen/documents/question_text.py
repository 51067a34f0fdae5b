"""The words in which a field asks its party, as far as its label by itself asks nobody."""

from specgen.documents.code_edition import WIND, name_wind_standard
from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.field import Field, Path
from specgen.model.figure_text import fill_figures

# Where the code requires the inspection, none is no answer.
_INSPECTION, _NONE = ("contract", "inspection_level"), ", or none if the code allows"
# A spot repair remains visible, and nobody is asked for one.
_LEFT_OUT: dict[Path, tuple[str, ...]] = {("finish", "repair_method"): ("spot",)}
# Of what a joint serves, openings are asked of one around them alone.
_SERVES, _AROUND = ("joints", "*", "serves"), "opening_perimeter"
_OTHERS = "Which places that move does the joint serve? marks"


def word_question(context: DocumentContext, field: Field, path: Path) -> str:
    """The question of a field at a path, its figures in the project's system; empty where its label asks for itself."""
    if field.path == _SERVES and context.project.get((*path[:2], "kind")) not in (None, _AROUND):
        return _OTHERS
    asked = fill_figures(context.tell(field.asks), context.figure).replace(WIND, name_wind_standard(context))
    if field.path == _INSPECTION and _is_inspected(context):
        return asked.replace(_NONE, "").replace(", full", " or full")
    return asked


def list_answers(context: DocumentContext, field: Field) -> tuple[str, ...]:
    """The choices of a field that the code and the finish leave open."""
    ruled_out = ("none",) if field.path == _INSPECTION and _is_inspected(context) else _LEFT_OUT.get(field.path, ())
    return tuple(value for value in field.values if value not in ruled_out)


def _is_inspected(context: DocumentContext) -> bool:
    """Whether the code requires a special inspection, as far as it is known."""
    try:
        return bool(context.resolve((), "special-inspection-due").result)
    except Absent:
        return False
