"""The fields of a PDF form: the text of each blank, and whether a box is ticked."""

from collections.abc import Iterator
from io import BytesIO
from typing import Any, NamedTuple

from specgen.model.problem import Problem, Refused, refuse

_MOST_FIELDS, _MOST_DEPTH = 20_000, 12
_FLATTENED = "save it as a form that can still be filled in, not as a print"


class FormField(NamedTuple):
    """A field: its full name, its text, which is empty where nothing was filled in, and whether it is a ticked box."""

    name: str
    text: str
    ticked: bool


def read_form(content: bytes, shown: str) -> tuple[FormField, ...]:
    """The fields of a form, in its order; raises Refused where it is none."""
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
            return tuple(_list_fields(fields))
    except pikepdf.PasswordError:
        raise Refused(Problem("the form is encrypted", "save it without a password", file=shown)) from None
    except (pikepdf.PdfError, ValueError, TypeError, KeyError, AttributeError, RuntimeError, OverflowError):
        raise Refused(Problem("the form is damaged or cut short", "save it again", file=shown)) from None


def _list_fields(fields: Any) -> Iterator[FormField]:
    """The fields of a form, each with the names of those above it; raises ValueError for more than any form has."""
    waiting: list[tuple[Any, tuple[str, ...]]] = [(field, ()) for field in reversed(list(fields))]
    seen = 0
    while waiting:
        field, above = waiting.pop()
        seen += 1
        if seen > _MOST_FIELDS or len(above) > _MOST_DEPTH:
            raise ValueError("a form that holds itself, or more fields than any of ours")
        name = (*above, str(field["/T"])) if "/T" in field else above
        kids = list(field["/Kids"]) if "/Kids" in field else []
        if any("/T" in kid for kid in kids):
            waiting += [(kid, name) for kid in reversed(kids)]
        else:
            yield _read_field(field, ".".join(name))


def _read_field(field: Any, name: str) -> FormField:
    text, box = str(field.get("/V", "")).strip(), str(field.get("/FT")) == "/Btn"
    ticked = box and text not in ("/Off", "")
    return FormField(name, text if ticked or not box else "", ticked)
