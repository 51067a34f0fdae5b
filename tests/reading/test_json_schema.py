"""The JSON Schema for editors, checked by the jsonschema library: it takes what the reader takes."""

from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from specgen import pipeline
from specgen.model.problem import Refused
from specgen.reading.json_schema import json_schema
from specgen.reading.schema import project_schema
from specgen.terminal.starter import format_side_starter, format_starter
from tests.commands.starters import fill, list_keys
from tests.support import EXAMPLES, SMALL, merged, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

SIDE_FILES = {"firm.yaml": "firm", "coating-system.yaml": "coating_system"}


class Loader(yaml.CSafeLoader):
    """YAML as an editor reads it: its own types, but dates stay text."""


Loader.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in resolvers if tag != "tag:yaml.org,2002:timestamp"]
    for first, resolvers in yaml.CSafeLoader.yaml_implicit_resolvers.items()
}


@cache
def validator(file: str) -> jsonschema.Draft202012Validator:
    """The library's validator for one kind of file; that its schema is one is checked once, for it takes seconds."""
    schema = json_schema(project_schema(), file)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def faults(data: Any, file: str = "project") -> list[str]:
    return [error.json_path for error in validator(file).iter_errors(data)]


def files() -> list[Any]:
    found = [f for f in sorted(EXAMPLES.rglob("*.yaml")) if f.name == "project.yaml" or f.name in SIDE_FILES]
    return [pytest.param(f, id=str(f.relative_to(EXAMPLES))) for f in found]


@pytest.mark.parametrize("file", files())
def test_every_file_of_the_examples_fits(file: Path) -> None:
    data = yaml.load(file.read_text("utf-8"), Loader=Loader)  # noqa: S506  the safe loader without dates
    assert faults(data, SIDE_FILES.get(file.name, "project")) == []


@pytest.mark.parametrize("ring", ["verdict", "mockup", "work", "closeout"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_every_starter_fits(ring: str, units: str) -> None:
    # The loader of the tests takes the key `on` for a truth value; an editor of today reads it as text.
    text = format_starter(project_schema(), ring, units).replace(" on:", ' "on":')
    assert faults(yaml.load(text, Loader=Loader)) == []  # noqa: S506


@pytest.mark.parametrize("home", ["firm", "coating_system"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_every_starter_of_a_side_file_fits_all_behind_a_sign_with_it(home: str, units: str) -> None:
    text = format_side_starter(project_schema(), home, units)
    assert faults(yaml.load(text, Loader=Loader), home) == []  # noqa: S506
    whole = fill(text, units, list_keys(text))
    assert faults(yaml.load(whole, Loader=Loader), home) == []  # noqa: S506


# What the reader refuses, and a schema without units can tell too.
BAD = [
    ({"projekt": {}}, "an unknown section"),
    ({"walls": {"W1": {"substrat": {}}}}, "an unknown key"),
    ({"walls": {"W1": {"substrate": {"kind": "marble"}}}}, "not a choice"),
    ({"walls": {"W1": {"base_coat": {"passes": "two"}}}}, "not a whole number"),
    ({"walls": {"W1": {"base_coat": {"passes": 9}}}}, "above the limit"),
    ({"walls": {"W1": {"insulation": {"thickness": 2}}}}, "a quantity without a unit"),
    ({"walls": {"W1": {"substrate": {"moisture": 0.25}}}}, "a share or a percentage"),
    ({"walls": {"W1": {"substrate": {"moisture": "0.25"}}}}, "a share or a percentage, in quotes"),
    ({"walls": {"W1": {"substrate": {"moisture": "1/4"}}}}, "a fraction, a share or a percentage"),
    ({"walls": {"W1": {"attachment": {"cure_hours": "24 %"}}}}, "a percentage for a number"),
    ({"walls": {"W1": {"substrate": {"kind": "marble slab"}}}}, "not a choice in two words"),
    ({"walls": ["W1"]}, "a list for a mapping"),
    ({"package": {"date": "1 March 2027"}}, "not a date"),
    ({"walls": {"W1": {"mesh": {"layers": {"kind": "standard"}}}}}, "a mapping for a list"),
    ({"format": 2}, "another format"),
    ({"project": "drop"}, "no project"),
    ({"log": []}, "a record in a project file"),
]


@pytest.mark.parametrize(("change", "why"), BAD, ids=[why for _, why in BAD])
def test_what_is_wrong_does_not_fit(change: dict[str, Any], why: str) -> None:
    assert faults(SMALL) == []
    assert faults(merged(SMALL, change)), why


# As a file has it once an editor has read it: a bare number is a number, one with a sign is text.
FIGURES = [0, 1, 1.5, 14, 0.25, 0.999, ".25", "0.25", "1.5", "14", "007", "0", "00.5", "14 %", "0.25 %", ".25%"]
ODD_FIGURES = ["1/4", "1/4 %", "1-1/2 %", "1_0", "x", "%", "5 %%", "1e1", "1e1 %", "2e-1", "9" * 16, "+0.5", "+5"]


@pytest.mark.parametrize("figure", FIGURES + ODD_FIGURES)
@pytest.mark.parametrize("name", ["moisture", "cure_hours"])
def test_what_fits_in_an_editor_is_taken_by_the_reader(name: str, figure: Any, tmp_path: Path) -> None:
    change = {"moisture": {"substrate": {name: figure}}, "cure_hours": {"attachment": {name: figure}}}[name]
    data = merged(SMALL, {"walls": {"W1": change}})
    try:
        pipeline.read(written(tmp_path, data))
        taken = True
    except Refused:
        taken = False
    if not faults(data):
        assert taken
    # An editor is stricter with a percentage without its sign: one that is neither whole nor plain wants it.
    elif taken:
        assert name == "moisture" and figure in ("1e1",)


def test_a_firm_file_holds_no_walls() -> None:
    assert faults({"format": 1, "walls": {}}, "firm")
    assert faults({"format": 1, "tank": {"lined": True}}, "firm") == []


def test_what_is_not_known_yet_fits_anywhere() -> None:
    assert faults(merged(SMALL, {"elevations": "tbd", "gloss": {"dry_hours": None}, "code": {"model": "tbd"}})) == []
