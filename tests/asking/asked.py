"""The example that lacks nothing with a few values taken out, and what is then asked."""

from pathlib import Path
from typing import Any

from specgen.asking.questions import Asked, PartySheet, Question, gather_sheets
from specgen.documents.context import DocumentContext
from tests.documents.example import changed_clean

# Values of three parties.
LACKING: dict[str, Any] = {
    "code": {"local_fasteners_required": "tbd"},
    "walls": {"W1": {"insulation": {"flame_spread": "tbd"}}},
    "mockup": {"destructive_area_apart": "tbd", "width": "tbd"},
    "aesthetic_joint": {"tolerance": "tbd"},
    "joints": {"J1": {"install_low": "tbd"}},
    "elevations": {"E1": {"critical_light": "tbd"}, "E2": {"critical_light": "tbd"}},
}


def lacking(folder: Path, change: Any = None) -> DocumentContext:
    """The complete example with values taken out."""
    return changed_clean(folder, LACKING if change is None else change)


def sheet_of(asked: Asked, role: str) -> PartySheet:
    """The sheet of a party."""
    (sheet,) = (sheet for sheet in asked.sheets if sheet.role == role)
    return sheet


def question_about(context: DocumentContext, field: str, stage: str = "work") -> Question:
    """The one question that a field stands for."""
    every = (one for sheet in gather_sheets(context, stage).sheets for one in sheet.questions)
    (question,) = (one for one in every if one.field == field)
    return question
