"""What commands tell of small projects that no example has: as golden texts."""

import os
from collections.abc import Iterator
from contextlib import ExitStack, chdir, contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

from specgen.commands import build, layout, record, weather
from specgen.reading.schema import project_schema
from specgen.terminal.progress import Tell
from specgen.terminal.starter import format_starter
from tests.commands import test_layout, test_weather
from tests.mistakes.telling import call
from tests.reading.records.support import SITE
from tests.support import SMALL, merged, written
from tests.terminal.test_dialogue import FURTHER, SOUND, begin, waiting
from tests.weather.hourly import HEAD, write_rows

STEPPING = (
    "build p.yaml --draft --only D05,D10 --formats html,txt --out a",
    "layout p.yaml --out b",
    "record p.yaml log.csv --formats html --out c",
    "weather p.yaml --hours h.csv --all-hours --out d",
)
STAGES = ("verdict", "mockup", "work", "closeout")
MOST_OF_HEAD = 24  # lines

# A panel sprayed, another masked beside it, an entry of no step, and results that stand on no line.
LOG = """date,elevation,area,step,coat,crew,started_at,ended_at,panels,wet_film (mil),masked_panels,pail
2027-06-15,E1,left bay,gloss,1,red,07:30,08:40,E1-03,4,E1-04,3
2027-06-15,E1,left bay,gloss,2,red,11:00,,E1-03,4,E1-04,4
2027-06-15,E2,,mesh,,blue,07:00,,,,,
2027-06-16,E1,,,,,07:00,,,,,
2027-06-16,E1,right bay,gloss,1,red,08:00,,E1-04,4,,5
"""
RESULTS = """criterion,part,reading,passed,signed_by,own
,,74,yes,L. Novak
gloss,left,74,yes,L. Novak
raking_light,,none,yes,L. Novak
other_settings,,7,yes,L. Novak
water_sill,,7,yes,L. Novak
color_reading,,1.2,yes,L. Novak
gloss,,40,no,L. Novak
,,7,yes,L. Novak,7
"""
RELEASES = """step,elevation,date,time,hours_dry,wall_dry,even_look
primer,E1,2027-06-14,07:00,15,no,no
,E1,2027-06-14,08:00,,no,
"""
RECORD = {"log.csv": LOG, "results.csv": RESULTS, "releases.csv": RELEASES}
OF_RECORD = (
    "record p.yaml log.csv results.csv releases.csv",
    "record p.yaml log.csv --on 2027-01-04",
    "record p.yaml log.csv --elevation E3",
    "record p.yaml log.csv results.csv --elevation E2",
    "status p.yaml log.csv releases.csv --at 2027-06-16T12:00",
    "status p.yaml log.csv releases.csv --elevation E1 --at 2027-06-16T12:00",
    "status p.yaml log.csv results.csv --at 2027-06-17T12:00 --elevation E3",
    "status p.yaml log.csv results.csv --at 2027-06-17T12:00",
    "status p.yaml log.csv --panel E1-03",
    "status p.yaml log.csv --panel E1-04",
    "status p.yaml log.csv --panel E1-09",
    "go q.yaml --step gloss --elevation E1 --air 62F --surface 70F --rh 60 --wind 6mph",
)
TWO_WALLS = {
    "mockup": {"omit": ["raking_light"]},
    "walls": {
        "W2": {"substrate": {"kind": "concrete"}, "wrb": {"kind": "none"}, "attachment": {"method": "mechanical"}}
    },
    "elevations": {"E2": {"wall": "W2"}, "E1": {"wall": "W1"}, "E3": {"wall": "W1"}},
}
PROJECT = merged(SITE, TWO_WALLS)
CLOSED = merged(SMALL, {"package": {"purpose": "closeout"}})


def terminal_texts() -> dict[str, str]:
    """What is told, a text for each kind of call."""
    return {
        "dialogue.txt": "\n".join(tell_dialogue()),
        "starters.txt": "\n".join(tell_starters()),
        "record.txt": tell_calls(OF_RECORD, PROJECT, RECORD, PROJECT | {"records": list(RECORD)}),
        "tents.txt": "".join(map(tell_tent, ("no", "yes"))),
        "compare.txt": tell_calls(("compare q.yaml p.yaml",), SMALL, {}, CLOSED).partition("Documents of the set")[2],
        "progress.txt": "\n".join(tell_progress()),
        "rule.txt": tell_calls(("check p.yaml --rule PLN-03",), SMALL | {"log": []}, {}),
    }


def tell_dialogue() -> Iterator[str]:
    """The dialogue on a wall: each question, what a wrong answer is told, and the answer; once what `?` shows."""
    dialogue = begin()
    yield from (*dialogue.greet(), *dialogue.ask(), "> ?", *dialogue.take("?").lines)
    while dialogue.waiting is not None:
        yield from ("", *dialogue.ask())
        right = (SOUND | FURTHER)[waiting(dialogue)]
        wrong = () if waiting(dialogue) == "project.name" else ("99 of all",)
        for line in (*wrong, right):
            yield f"> {line}"
            yield from dialogue.take(line).lines
    yield from ("", *dialogue.tell_verdict())


def tell_starters() -> Iterator[str]:
    """What stands above each starter."""
    for stage in STAGES:
        yield "\n".join([stage, *format_starter(project_schema(), stage, "ip").splitlines()[:MOST_OF_HEAD], ""])


def tell_calls(calls: tuple[str, ...], project: Any, files: dict[str, str], other: Any = None) -> str:
    """What calls tell of a project, with these files beside it."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        written(folder, project, "p.yaml")
        if other is not None:
            written(folder, other, "q.yaml")
        for file, content in files.items():
            (folder / file).write_text(content, "utf-8")
        return "\n".join(tell_call(words, folder) for words in calls)


def tell_call(words: str, folder: Path) -> str:
    """What a call tells in a folder."""
    with chdir(folder), patch.dict(os.environ, {"COLUMNS": "80"}):
        return f"$ specgen {words}\n{''.join(call(*words.split()))}"


def tell_progress() -> Iterator[str]:
    """The steps that a terminal is told of while a command runs."""
    steps: list[str] = []

    @contextmanager
    def show(*_: Any, **__: Any) -> Iterator[Tell]:
        yield steps.append

    with TemporaryDirectory() as name, ExitStack() as patched:
        for command in (build, layout, record, weather):
            patched.enter_context(patch.object(command, "show_progress", show))
        folder = Path(name)
        written(folder, test_layout.PROJECT, "p.yaml")
        (folder / "log.csv").write_text("date,elevation,air (F)\n2027-06-15,E1,61\n", "utf-8")
        write_rows(folder, test_weather.ROWS[:24], name="h.csv")
        for words in STEPPING:
            steps.clear()
            tell_call(words, folder)
            yield "\n".join([f"$ specgen {words}", *steps, ""])


def tell_tent(heated: str) -> str:
    """Hours of a site below a tent, without a column of rain."""
    tent = {"shade": {"S1": {"kind": "tent", "heated": heated}}}
    with TemporaryDirectory() as name:
        folder = Path(name)
        written(folder, merged(test_weather.PROJECT, tent), "p.yaml")
        write_rows(folder, [row[:-1] for row in test_weather.ROWS], HEAD.rpartition(",")[0], "h.csv")
        return tell_call("weather p.yaml --hours h.csv", folder)
