"""The fields of a filled PDF form: the text of each blank that is filled in, and each box that is ticked."""

from collections.abc import Iterator
from io import BytesIO
from typing import Any, NamedTuple

from specgen.model.problem import Problem, Refused, refuse

_MOST_FIELDS, _MOST_DEPTH = 20_000, 12
_FLATTENED = "save it as a form that can still be filled in, not as a print"


class FormField(NamedTuple):
    """A field that holds something: its full name, its text, and whether it is a box, which is ticked."""

    name: str
    text: str
    ticked: bool


def read_form(content: bytes, shown: str) -> tuple[FormField, ...]:
    """The fields of a form that are filled in, in the order of the form; raises Refused where it is none."""
    try:
        import pikepdf
    except ImportError:
        hint = "install specgen with its extra pdf, or write the record as CSV"
        raise refuse("a filled form is read by a library that is not installed", hint) from None
    try:
        with pikepdf.open(BytesIO(content)) as form:
            filled: Any = form.Root.get("/AcroForm")
            fields: Any = None if filled is None else filled.get("/Fields")
            if fields is None or not len(fields):
                raise Refused(Problem("this PDF has no fields that are filled in", _FLATTENED, file=shown))
            return tuple(_list_filled(fields, (), 0))
    except pikepdf.PasswordError:
        raise Refused(Problem("the form is encrypted", "save it without a password", file=shown)) from None
    except (pikepdf.PdfError, ValueError, TypeError, KeyError, AttributeError, RuntimeError, OverflowError):
        raise Refused(Problem("the form is damaged or cut short", "save it again", file=shown)) from None


def _list_filled(fields: Any, above: tuple[str, ...], depth: int) -> Iterator[FormField]:
    """The filled fields below a node, each with the names of those above it."""
    if depth > _MOST_DEPTH or len(fields) > _MOST_FIELDS:
        raise ValueError("a form is nested deeper, or longer, than any of ours")
    for field in fields:
        name = (*above, str(field["/T"])) if "/T" in field else above
        kids = field.get("/Kids")
        if kids is not None and any("/T" in kid for kid in kids):
            yield from _list_filled(kids, name, depth + 1)
        else:
            yield from _read_field(field, ".".join(name))


def _read_field(field: Any, name: str) -> Iterator[FormField]:
    value = field.get("/V")
    if value is None:
        return
    text = str(value)
    if str(field.get("/FT")) == "/Btn":
        if text not in ("/Off", ""):
            yield FormField(name, text, True)
    elif text.strip():
        yield FormField(name, text.strip(), False)
