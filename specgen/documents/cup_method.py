"""The standard that the viscosity cup of the job is read by."""

from specgen.documents.context import DocumentContext
from specgen.model.evaluation import evaluate

_OF_CUPS = ("ASTM D4212", "ASTM D1200", "ISO 2431")
BY_MAKER = "the cup manufacturer's written instructions"


def name_cup_method(context: DocumentContext) -> str:
    """`ASTM D4212` for a dip cup: the reference that applies; a cup of no standard is read as its manufacturer says."""
    rows = context.standards.references
    return next((name for name in _OF_CUPS if evaluate(rows[name].when, context.project)), BY_MAKER)
