"""Workbooks and tables that lie, act, cost, or are torn, given to `take`."""

import io
import random
import zipfile
from collections.abc import Callable

from tests.asking.workbooks import answered, with_parts, written_by_xlsxwriter
from tests.attack.attempt import Attempt
from tests.attack.classes._projects import dump, small
from tests.attack.classes.texts import PAYLOADS

FIELDS = [
    "walls.W1.insulation.thickness",
    "walls.W1.base_coat.class",
    "parties.architect.name",
    "walls.W9.x",
    "",
    "a" * 9_000,
]
CELLS = [
    *PAYLOADS,
    "=1+1",
    '=HYPERLINK("x")',
    1e308,
    -1,
    True,
    "[",
    "]",
    "a, [b",
    "'",
    "3 in # x",
    "- a",
    "&a",
    "*a",
    "!x y",
]
SHEET, STRINGS = "xl/worksheets/sheet1.xml", "xl/sharedStrings.xml"
SPACE = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
BOMBS: list[tuple[str, bytes]] = [
    ("blanks", b"<a>" + b" " * (60 << 20) + b"</a>"),
    ("many cells", f"<worksheet {SPACE}><sheetData>".encode() + b"<row><c><v>1</v></c></row>" * 900_000),
    ("a far row", f'<worksheet {SPACE}><sheetData><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'.encode()),
    ("a row beyond", f'<worksheet {SPACE}><sheetData><row r="99999999999"><c><v>1</v></c></row></sheetData>'.encode()),
    ("deep", b"<a>" * 100_000),
    ("entities", b'<!DOCTYPE a [<!ENTITY a "xx"><!ENTITY b "&a;&a;&a;">]><a>&b;</a>'),
    ("a foreign entity", b'<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]><a>&x;</a>'),
    ("no XML", b"\0\1\2" * 99),
]


def draw(chance: random.Random) -> Attempt:
    """A project, and what is said to be a workbook of answers or a table."""
    about, content, words = chance.choice(MAKERS)(chance)
    files = {"project.yaml": dump(small()), words[0]: content}
    return Attempt(f"take: {about}", ("take", "project.yaml", *words), files)


Made = tuple[str, bytes, tuple[str, ...]]


def _answers(chance: random.Random) -> bytes:
    return answered(
        {chance.choice(FIELDS): chance.choice(CELLS) for _ in range(3)}, by=chance.choice(["L. F.", *PAYLOADS])
    )


def _hostile(chance: random.Random) -> Made:
    return "hostile cells", _answers(chance), ("a.xlsx",)


def _torn(chance: random.Random) -> Made:
    content = bytearray(_answers(chance))
    for _ in range(chance.randint(1, 8)):
        content[chance.randrange(len(content))] = chance.randrange(256)
    return "torn", bytes(content[: chance.choice([len(content), chance.randrange(len(content))])]), ("a.xlsx",)


def _part(chance: random.Random) -> Made:
    content = _answers(chance)
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        name = chance.choice(archive.namelist())
        part = bytearray(archive.read(name))
    for _ in range(chance.randint(1, 4)):
        part[chance.randrange(len(part))] = chance.choice(b"<>&\"'/0A \xff")
    changed: bytes | None = chance.choice([bytes(part), bytes(part[: len(part) // 2]), None, b""])
    return f"{name} changed", with_parts(content, {name: changed}), ("a.xlsx",)


def _bomb(chance: random.Random) -> Made:
    about, part = chance.choice(BOMBS)
    name = chance.choice([SHEET, STRINGS, "xl/workbook.xml", "xl/styles.xml", "[Content_Types].xml", "x"])
    return f"{about} as {name}", with_parts(_answers(chance), {name: part}), ("a.xlsx",)


def _table(chance: random.Random) -> Made:
    head = ["Mark", "Elevation", "kind", chance.choice(["width", *PAYLOADS])]
    rows = [[chance.choice(["A", *PAYLOADS]), "E1", "window", chance.choice(CELLS)] for _ in range(3)]
    content = written_by_xlsxwriter({"openings": [head, *rows]})
    return "a table", content, ("a.xlsx", "--as", "openings")


def _csv(chance: random.Random) -> Made:
    lines = [
        "Mark,Elevation,kind,width",
        *(",".join(map(str, (chance.choice(PAYLOADS), "E1", chance.choice(CELLS)))) for _ in range(4)),
    ]
    content = "\n".join(lines).encode("utf-8", "surrogatepass")
    content = chance.choice([content, content[::-1], content * 9_000, chance.randbytes(9_999), b'"' * 99_999])
    return "a table as CSV", content, ("a.csv", "--as", chance.choice(["openings", "people"]))


MAKERS: list[Callable[[random.Random], Made]] = [_hostile, _hostile, _torn, _part, _part, _bomb, _table, _csv]
