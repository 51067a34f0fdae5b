"""Names of the rows of a form by which a decision finds its nonconformance, and a signature its hold point."""

from typing import Any
from urllib.parse import quote, unquote

from specgen.model.record import EntryPlace

_ROOM = 28  # letters of a file in the name of a field: Word takes 64 for all of it, from memory
CUT = "*"  # stands before the end of the name of a file that is too long

# The rows of the form of hold points that hold for all others: its elevation, and who signs for which role.
SHEET, SIGNERS = "sheet", "signed"


def name_answer_row(code: str, place: EntryPlace) -> str:
    """`WEA-01e@31@weather%2Ecsv`: the row of a disposition, named by the clause and the row of the entry it answers."""
    file = place.file.replace("\\", "/").rpartition("/")[2]
    while len(_quote(file)) > _ROOM:
        file = CUT + file.lstrip(CUT)[1:]
    return f"{code}@{_quote(place.row or str(place.line))}@{_quote(file)}"


def read_answer_row(name: str) -> dict[str, Any]:
    """The clause, and the row and the file of the entry, that the row of a disposition names."""
    code, row, file = (*name.split("@"), "", "")[:3]
    told = {"clause": code, "row": unquote(row), "file": unquote(file)}
    return {name: text for name, text in told.items() if text}


def _quote(text: str) -> str:
    return quote(text, safe=CUT).replace(".", "%2E")


def name_signature(face: str, role: str) -> str:
    """`E1-inspector`: whose signature it is, and for which elevation; without one for all."""
    return f"{face}-{role}" if face else role


def read_signature(part: str) -> tuple[str, str]:
    """The elevation and the role that a signature names."""
    face, _, role = part.rpartition("-")
    return face, role
