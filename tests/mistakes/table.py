"""The table of mistakes: each a change of a sound project file, with what is told of it or what it is taken for.

What is right is common practice of the trade and a rule of ours; the texts are retyped.
"""

import re
import zipfile
from io import BytesIO
from pathlib import Path
from typing import Any, NamedTuple

import yaml

HERE = Path(__file__).parent
SOUND = (HERE / "sound.yaml").read_text("utf-8")
LAST_SINGLE = 110  # the mistakes up to this number are made one at a time


class Told(NamedTuple):
    """A message of a file: its line, the path it stands at, what is wrong and what would be right."""

    line: int
    at: str
    says: str
    right: str


class Mistake(NamedTuple):
    """A mistake by number and in words, the file it makes, what is told, or the file it is taken for."""

    number: str
    about: str
    content: bytes
    told: tuple[Told, ...]
    meant: bytes

    @property
    def count(self) -> int:
        """The number without the letter of a further form."""
        return int(re.sub(r"\D", "", self.number))


def mistakes() -> list[Mistake]:
    """The whole table, changes of the sound file first."""
    rows = yaml.load((HERE / "mistakes.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
    return [*map(_changed, rows), *OTHER_FILES]


def _changed(row: dict[str, Any]) -> Mistake:
    content, meant = SOUND, SOUND
    for before, after in row["change"].items():
        assert before in SOUND, f"{row['number']}: the sound file has no {before!r}"
        content = content.replace(before, after, 1)
        meant = meant.replace(before, row.get("meant", ""), 1)
    told = tuple(Told(one["line"], one["at"], one["says"], one["right"]) for one in row.get("told", ()))
    return Mistake(str(row["number"]), row["about"], content.encode(), told, b"" if told else meant.encode())


def _pack(*names: str) -> bytes:
    """A packed folder with files of these names, as word processors and spreadsheet programs write them."""
    made = BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as folder:
        for name in names:
            folder.writestr(name, bytes(range(256)))
    return made.getvalue()


LETTER = (
    b"March 1, 2027\n\nRe: Millrace Pump House, Section 07 24 00: EIFS\n\nDear Ms. Ashlar,\nour coats fit the board.\n"
)
OTHER_FILE = "name the project file, a YAML file"
# Files that are no change of a line: how they are written, and files of other kinds.
OTHER_FILES = [
    Mistake("87", "line ends of Windows", SOUND.replace("\n", "\r\n").encode(), (), SOUND.encode()),
    Mistake("88", "a byte order mark", SOUND.encode("utf-8-sig"), (), SOUND.encode()),
    Mistake("89", "UTF-16", SOUND.encode("utf-16"), (Told(1, "", "the file is UTF-16", "save it as UTF-8"),), b""),
    Mistake(
        "90",
        "an accent in one byte",
        SOUND.replace("Sluice", "Écluse").encode("latin-1"),
        (Told(10, "", "the file is not UTF-8 (byte 0xc9)", "save it as UTF-8"),),
        b"",
    ),
    Mistake(
        "91", "nothing", b"", (Told(1, "", "the file is empty", "`specgen new FILE` writes one to begin with"),), b""
    ),
    Mistake(
        "92",
        "a letter",
        LETTER,
        (
            Told(
                1,
                "",
                "this is a letter or another text, and no project file",
                "name the project file, which begins `format: 1`",
            ),
        ),
        b"",
    ),
    Mistake(
        "93",
        "a Word file",
        _pack("[Content_Types].xml", "word/document.xml"),
        (Told(1, "", "this is a Word file, not a project file", OTHER_FILE),),
        b"",
    ),
    Mistake(
        "93b",
        "a workbook",
        _pack("[Content_Types].xml", "xl/workbook.xml"),
        (Told(1, "", "this is a workbook, not a project file", OTHER_FILE),),
        b"",
    ),
    Mistake(
        "93c",
        "a PDF",
        b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n",
        (Told(1, "", "this is a PDF, not a project file", OTHER_FILE),),
        b"",
    ),
    Mistake(
        "95",
        "a table",
        b"mark,width,height\nA,4 ft,5 ft\n",
        (Told(1, "", "the file does not begin with a name and a colon", "begin with `format: 1`"),),
        b"",
    ),
]
