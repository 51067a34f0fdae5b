"""Lengths of sections as they print, and their scales: those of ISO 5455, and in US units those that halve."""

from fractions import Fraction

from specgen.documents.context import DocumentContext
from specgen.model.value_text import value_text
from specgen.quantities.format import format_inches
from specgen.quantities.quantity import Quantity

_SCALES = {"si": (1, 2, 5, 10, 20, 50, 100), "ip": (1, 2, 4, 8, 16, 32, 48, 96)}
# A length of a section prints in inches and their fractions, or in millimeters, as that of a board does.
_PRINTED_AS = ("walls", "*", "insulation", "thickness")


def choose_scale(real: float, room: float, system: str) -> int:
    """The scale, as its second figure, by which a length in millimeters fits the room on paper."""
    fitting = [scale for scale in _SCALES[system] if real / scale <= room]
    return fitting[0] if fitting else _SCALES[system][-1]


def tell_scale(scale: int, system: str) -> str:
    """A scale as a drawing has it: `Scale 1:5`, or in US units what is a foot of the work, `Scale 3 in = 1 ft`."""
    if scale == 1:
        return "Full size"
    return f"Scale 1:{scale}" if system == "si" else f"Scale {format_inches(Fraction(12, scale))} in = 1 ft"


def tell_length(context: DocumentContext, length: Quantity) -> str:
    """A length as a drawing has it, in the first system of the project alone: `2-7/16 in`, `50 mm`."""
    return value_text(length, context.project.schema.node(_PRINTED_AS).field, context.first, both=False)


def count_mm(length: Quantity) -> float:
    """A length in millimeters."""
    return length.number("mm")
