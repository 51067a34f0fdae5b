"""Hourly weather and site records that lie, are torn, cost, or act, given to `weather`, `record`, `status` and `go`."""

import random
from collections.abc import Callable

from tests.asking.workbooks import written_by_xlsxwriter
from tests.attack.attempt import Attempt
from tests.attack.classes._projects import BESIDE, SOURCES, dump, small
from tests.attack.classes.texts import PAYLOADS

HOURS = ["time,air F,surface F,humidity %,wind mph,gust mph,rain in"]
HOURS += [f"2027-07-{day:02d} {hour:02d}:00,64,62,73,4,4,0" for day in range(1, 4) for hour in range(24)]
LOG = ["date,elevation,area,step,started_at,air (F),surface (F),humidity (%),wind (mph)"]
LOG += [f"2027-07-{day:02d},E1,left bay,gloss,07:10,61,62,58,5" for day in range(1, 9)]
CELLS = [
    *PAYLOADS,
    *("", "-", "n/a", "1048", "-999", "9999", "1e308", "nan", "inf", "12,5", "62 F", "=1+1", "'", '"', ";"),
    *("24:00", "25:61", "7:10 am", "2027-02-30", "0001-01-01", "9999-12-31", "2028-02-29", "2027-03-14 02:30"),
]
HEADS = ["time", "date", "hour", "air", "air K", "wind knots", "rain", "x" * 999, "", "air F", *PAYLOADS]
READINGS = ("--air", "--surface", "--humidity", "--wind", "--gust", "--rain", "--sun", "--forecast-low", "--elevation")
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "latin-1")


def draw(chance: random.Random) -> Attempt:
    """A project, and what is said to be hourly weather, a site record, or the readings of now."""
    about, words, files = chance.choice(MAKERS)(chance)
    project = chance.choice([SOURCES["clean"], SOURCES["metric"], dump(small())])
    beside = BESIDE["clean"] if project == SOURCES["clean"] else BESIDE["metric"]
    return Attempt(f"{words[0]}: {about}", words, {"project.yaml": project, **beside, **files})


Made = tuple[str, tuple[str, ...], dict[str, bytes]]


def _spoil(chance: random.Random, lines: list[str]) -> bytes:
    """Lines of a table with cells, titles, signs and bytes changed."""
    rows = [line.split(",") for line in lines]
    for _ in range(chance.randint(1, 9)):
        row = chance.choice(rows)
        row[chance.randrange(len(row))] = chance.choice(CELLS)
    if chance.random() < 0.3:
        rows[0][chance.randrange(len(rows[0]))] = chance.choice(HEADS)
    sign = chance.choice([",", ",", ";", "\t", "|"])
    text = chance.choice(["\n", "\r\n", "\r"]).join(sign.join(row) for row in rows)
    content = bytearray(text.encode(chance.choice(ENCODINGS), "replace"))
    for _ in range(chance.choice([0, 0, 4])):
        content[chance.randrange(len(content))] = chance.randrange(256)
    whole = bytes(content)
    return chance.choice([whole, whole, whole[: chance.randrange(len(whole))], whole * 40, chance.randbytes(5_000)])


def _weather(chance: random.Random) -> Made:
    step = chance.choice(["gloss", "boards", "glos", *PAYLOADS])
    surface = chance.choice(["air", "reading", "model"])
    more = chance.choice([(), ("--all-hours",), ("--format", "json"), ("--out", "strips")])
    words = ("weather", "project.yaml", "--hours", "h.csv", "--surface", surface, *more, f"--step={step}")
    return "hours", words, {"h.csv": _spoil(chance, HOURS)}


def _year(chance: random.Random) -> Made:
    """What is said to be a file of a typical year."""
    line = "1999,1,1,1,60,x,20.0,10.0,50,101325,0,0,300,0,0,0,0,0,0,0,180,2.0,5,5,16,77777,9,999999999,0,0,0,0,0,0,0"
    head = ["LOCATION,Larch,XX,USA,TMY,0,41.2,-96.0,-6,300", *("X",) * 6, "DATA PERIODS,1,1,Data,Sunday,1/1,12/31"]
    content = bytearray("\n".join([*head, *[line] * chance.choice([1, 24, 9_000])]).encode())
    for _ in range(chance.randint(0, 9)):
        content[chance.randrange(min(len(content), 900))] = chance.randrange(256)
    return "a year", ("weather", "project.yaml", "--hours", "y.epw", "--surface", "model"), {"y.epw": bytes(content)}


def _record(chance: random.Random) -> Made:
    verb = chance.choice(["record", "record", "status"])
    more = [(), ("--format", "json")] + ([("--out", "forms")] if verb == "record" else [("--panel", "E1-A1")])
    return "a log", (verb, "project.yaml", "l.csv", *chance.choice(more)), {"l.csv": _spoil(chance, LOG)}


def _workbook(chance: random.Random) -> Made:
    rows = [line.split(",") for line in LOG]
    rows[chance.randrange(len(rows))][chance.randrange(5)] = chance.choice(CELLS)
    content = bytearray(written_by_xlsxwriter({chance.choice(["log", "x"]): rows}))
    for _ in range(chance.choice([0, 0, 5])):
        content[chance.randrange(len(content))] = chance.randrange(256)
    return "a workbook", ("record", "project.yaml", "l.xlsx"), {"l.xlsx": bytes(content)}


def _form(chance: random.Random) -> Made:
    content = bytearray(
        b"%PDF-1.7\n1 0 obj<</Type/Catalog/AcroForm<</Fields[]>>>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF"
    )
    for _ in range(chance.choice([0, 3])):
        content[chance.randrange(len(content))] = chance.randrange(256)
    return "a form", ("record", "project.yaml", "f.pdf"), {"f.pdf": bytes(content)}


def _entries(chance: random.Random) -> Made:
    value = chance.choice(CELLS)
    entry = {
        "date": "2027-07-01",
        "elevation": "E1",
        "step": "gloss",
        chance.choice(["air", "panels", "started_at"]): value,
    }
    kind = chance.choice(["log", "release", "accepted", "x"])
    return "entries", ("record", "project.yaml", "l.yaml"), {"l.yaml": dump({"format": 1, kind: [entry] * 3})}


def _go(chance: random.Random) -> Made:
    told = [
        f"{name}={chance.choice([*CELLS, '62F', '20 C', '60', '5 mph'])}" for name in READINGS if chance.random() < 0.7
    ]
    return "readings", ("go", "project.yaml", "--step", chance.choice(["gloss", "x"]), *told), {}


MAKERS: list[Callable[[random.Random], Made]] = [
    _weather,
    _weather,
    _year,
    _record,
    _record,
    _workbook,
    _form,
    _entries,
    _go,
]
