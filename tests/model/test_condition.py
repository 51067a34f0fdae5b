"""The small language of conditions, and every condition there is."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import reading, standards
from specgen.model.condition import ConditionError, open_terms, parse_condition, terms, truth
from specgen.model.evaluation import evaluate
from specgen.model.field import Schema
from specgen.model.project import Project
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import find_dimension
from specgen.reading.schema import project_schema
from tests.support import case_of

GIVEN = {
    "code": {"model": "ibc", "occupancy_groups": ["R-2", "B"]},
    "walls": {
        "W1": {"insulation": {"thickness": "2 in"}, "wrb": {"kind": "none"}, "attachment": {"cure_hours": 24}},
        "W2": {"substrate": {"kind": "osb"}, "wrb": {"kind": "self_adhered_sheet"}},
    },
    "access": {"X1": {"elevation": "E1", "height": "24 ft", "base": "5 ft", "kind": "frame_scaffold"}},
    "shade": {"S1": {"elevation": "E2", "kind": "tent"}},
    "elevations": {"E1": {"prominent": "no"}, "E2": {"prominent": "yes"}},
    "site": {"surroundings": []},
}
NOWHERE = ()
W1, W2, X1, E1, E2 = ("walls", "W1"), ("walls", "W2"), ("access", "X1"), ("elevations", "E1"), ("elevations", "E2")
# Condition, path it is judged for, whether it holds. The language is this program's own: its words say what is right.
TABLE = [
    ("code.model = ibc", NOWHERE, True),
    ("code.model = irc", NOWHERE, False),
    ("code.model != irc", NOWHERE, True),
    ("code.model != ibc", NOWHERE, False),
    ("code.model in {irc, ibc}", NOWHERE, True),
    ("code.model in {irc, other}", NOWHERE, False),
    ("code.model not in {irc, other}", NOWHERE, True),
    ("code.model not in {irc, ibc}", NOWHERE, False),
    ("code.occupancy_groups has R-2", NOWHERE, True),
    ("code.occupancy_groups has {R-1, B}", NOWHERE, True),
    ("code.occupancy_groups has R-4", NOWHERE, False),
    ("code.occupancy_groups has {R-1, R-4}", NOWHERE, False),
    ("elevations.*.prominent = yes", E2, True),
    ("elevations.*.prominent = no", E2, False),
    ("elevations.*.prominent != yes", E1, True),
    # Parentheses, and the reverse of a part.
    ("(code.model = irc or code.model = ibc) and code.occupancy_groups has B", NOWHERE, True),
    ("code.model = irc and code.occupancy_groups has B or code.model = ibc", NOWHERE, True),
    ("code.model = irc and (code.occupancy_groups has B or code.model = ibc)", NOWHERE, False),
    ("not (code.model = irc or code.occupancy_groups has R-4)", NOWHERE, True),
    ("not (code.model = ibc) or code.occupancy_groups has {R-2}", NOWHERE, True),
    ("not (code.model = ibc and not (code.model = irc))", NOWHERE, False),
    # Quantities and numbers.
    ("walls.*.insulation.thickness > 1-1/2 in", W1, True),
    ("walls.*.insulation.thickness > 2 in", W1, False),
    ("walls.*.insulation.thickness >= 2 in", W1, True),
    ("walls.*.insulation.thickness >= 51 mm", W1, True),
    ("walls.*.insulation.thickness >= 2-1/8 in", W1, False),
    ("walls.*.insulation.thickness < 50 mm", W1, False),
    ("walls.*.insulation.thickness < 3 in", W1, True),
    ("walls.*.insulation.thickness <= 51 mm", W1, True),
    ("walls.*.insulation.thickness <= 1 in", W1, False),
    ("walls.*.insulation.thickness = 50.8 mm", W1, True),
    ("walls.*.insulation.thickness != 2 in", W1, False),
    ("walls.*.insulation.thickness != 3 in", W1, True),
    ("walls.*.attachment.cure_hours >= 24", W1, True),
    ("walls.*.attachment.cure_hours > 24", W1, False),
    ("walls.*.attachment.cure_hours < 48", W1, True),
    # A multiple of another field of the same member: 24 ft over 5 ft lies between 4 and 5.
    ("access.*.height > 4 x access.*.base", X1, True),
    ("access.*.height > 5 x access.*.base", X1, False),
    ("access.*.height <= 5 x access.*.base", X1, True),
    # Given, empty, counted.
    ("site.surroundings is given", NOWHERE, True),
    ("site.surroundings is not given", NOWHERE, False),
    ("site.surroundings is empty", NOWHERE, True),
    ("site.surroundings is not empty", NOWHERE, False),
    ("code.occupancy_groups is empty", NOWHERE, False),
    ("code.occupancy_groups is not empty", NOWHERE, True),
    ("site.altitude is given", NOWHERE, False),
    ("site.altitude is not given", NOWHERE, True),
    ("count walls = 2", NOWHERE, True),
    ("count walls != 2", NOWHERE, False),
    ("count walls > 1", NOWHERE, True),
    ("count walls >= 3", NOWHERE, False),
    ("count walls < 3", NOWHERE, True),
    ("count walls <= 1", NOWHERE, False),
    ("count joints > 0", NOWHERE, False),
    ("count joints = 0", NOWHERE, True),
    # What is absent meets nothing, neither a condition nor its opposite, save that it is not given.
    ("site.altitude > 1 ft", NOWHERE, False),
    ("site.altitude <= 1 ft", NOWHERE, False),
    ("site.altitude = 1 ft", NOWHERE, False),
    ("site.altitude != 1 ft", NOWHERE, False),
    ("package.revision = 1", NOWHERE, False),
    ("walls.*.substrate.condition is empty", W1, False),
    ("walls.*.substrate.condition is not empty", W1, False),
    ("walls.*.substrate.condition has old", W1, False),
    ("code.construction_type in {VA, VB}", NOWHERE, False),
    ("code.construction_type not in {VA, VB}", NOWHERE, False),
    ("access.*.height > 1 x access.*.platform_width", X1, False),
    ("joints.*.width > 1 in", NOWHERE, False),
    # A star in the path that is judged means its member, any other star any member.
    ("walls.*.wrb.kind = none", W1, True),
    ("walls.*.wrb.kind = none", W2, False),
    ("walls.*.wrb.kind = none", ("walls", "W2", "substrate", "kind"), False),
    ("walls.*.wrb.kind = none", NOWHERE, True),
    ("walls.*.wrb.kind = none", E1, True),
    ("walls.*.wrb.kind = fluid_applied", NOWHERE, False),
    ("elevations.*.prominent = yes", W1, True),
    ("elevations.*.prominent = yes", E1, False),
    # Things that stand on an elevation are told of that elevation.
    ("shade.*.kind = tent", NOWHERE, True),
    ("shade.*.kind = tent", W1, True),
    ("shade.*.kind = tent", X1, False),
    ("shade.*.kind = tent", E1, False),
    ("shade.*.kind = tent", E2, True),
    ("elevations.*.prominent = no", X1, True),
    # `and` binds tighter than `or`.
    ("code.model = irc and walls.*.wrb.kind = none or code.model = ibc", W1, True),
    ("code.model = ibc or code.model = irc and walls.*.wrb.kind = osb", W1, True),
    ("code.model = irc or code.model = ibc and walls.*.wrb.kind = felt", W1, False),
    ("code.model = ibc and walls.*.wrb.kind = none and count walls = 2", W1, True),
    ("code.model = ibc and walls.*.wrb.kind = none and count walls = 3", W1, False),
]


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Project:
    return case_of(tmp_path_factory.mktemp("told"), GIVEN).project


@pytest.mark.parametrize(("text", "path", "wanted"), TABLE)
def test_a_condition_holds_where_it_says(text: str, path: tuple[str, ...], wanted: bool, project: Project) -> None:
    assert evaluate(text, project, path) is wanted


def test_a_computed_name_is_looked_up_and_holds_nowhere_without_a_look(project: Project) -> None:
    asked = {"drainage_due": True}.__getitem__
    assert evaluate("calc.drainage_due = yes", project, W1, asked)
    assert not evaluate("calc.drainage_due = no", project, W1, asked)
    assert not evaluate("calc.drainage_due = yes", project, W1)


def test_a_yes_or_no_is_compared_by_its_word(tmp_path: Path) -> None:
    project = case_of(tmp_path, {"code": {"local_fasteners_required": "yes"}}).project
    assert evaluate("code.local_fasteners_required = yes", project)
    assert not evaluate("code.local_fasteners_required = no", project)
    assert evaluate("code.local_fasteners_required in {yes}", project)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "code.model",
        "code.model is ibc",
        "code.model ~ ibc",
        "code.model =",
        "code.model = ",
        "code.model == ",
        "code.model=ibc",
        "= ibc",
        "Code.model = ibc",
        "or code.model = ibc",
        "code.model IS given",
        "count",
    ],
)
def test_what_is_no_condition_is_refused(text: str) -> None:
    with pytest.raises(ConditionError):
        parse_condition(text)


def leaves(data: Any, words: tuple[str, ...]) -> Iterator[str]:
    """Every text that stands under one of these words, however deep."""
    for key, value in data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ():
        if key in words and isinstance(value, str):
            yield value
        yield from leaves(value, words)


def written(package: Any, folder: str, words: tuple[str, ...]) -> set[str]:
    files = sorted((Path(package.__file__).parent / folder).glob("*.yaml"))
    return {
        text
        for file in files
        for text in leaves(yaml.load(file.read_text("utf-8"), Loader=yaml.CSafeLoader), words)
        if text
    }


IN_SCHEMA = written(reading, "schema", ("if", "default_if"))
IN_ROWS = written(standards, ".", ("when",))


def test_there_are_conditions_to_look_at() -> None:
    assert len(IN_SCHEMA) > 50
    assert len(IN_ROWS) > 30
    assert {f.condition for f in project_schema().fields.values()} - {""} <= IN_SCHEMA


def known(schema: Schema, path: tuple[str, ...]) -> bool:
    try:
        schema.node(path)
    except KeyError:
        return False
    return True


ORDERED = {">", "<", ">=", "<="}


@pytest.mark.parametrize("text", sorted(IN_SCHEMA | IN_ROWS))
def test_every_condition_there_is_speaks_of_known_fields_and_choices(text: str) -> None:
    schema = project_schema()
    for term in terms(parse_condition(text)):
        if term.path[0] == "calc":
            continue
        assert known(schema, term.path), term.path
        made, right = schema.node(term.path).field, term.right[0]
        if term.counted:
            assert schema.node(term.path).star is not None
            assert int(right) >= 0
        elif made is not None and made.values and term.relation in ("=", "!=", "in", "not in", "has"):
            assert set(term.right) <= set(made.values)
        elif made is not None and made.kind == "yes_no" and term.relation in ("=", "!="):
            assert right in ("yes", "no")
        if made is not None and term.relation in ORDERED:
            times = re.fullmatch(r"\d+ x (.+)", right)
            assert made.kind in {"integer", "number", "percent", "quantity"}
            if times:
                assert known(schema, tuple(times[1].split(".")))
            elif made.kind == "quantity":
                assert parse_any_quantity(right).dimension == find_dimension(made.dimension, made.unit_ip)
            else:
                assert float(right) >= 0
        if term.relation in ("is empty", "is not empty", "has"):
            assert made is not None
            assert made.kind == "list"


YES, NO, OPEN = "a = yes", "b = yes", "c = yes"
ANSWERS = {"a": True, "b": False, "c": None}
# Kleene's logic with three values: what is known may settle a whole, else it is open.
THREE_VALUED = [
    (f"{YES} and {OPEN}", None, ["c"]),
    (f"{NO} and {OPEN}", False, []),
    (f"{OPEN} and {NO}", False, []),
    (f"{YES} or {OPEN}", True, []),
    (f"{OPEN} or {YES}", True, []),
    (f"{NO} or {OPEN}", None, ["c"]),
    (f"not ({OPEN})", None, ["c"]),
    (f"not ({OPEN} and {NO})", True, []),
    (f"({OPEN} or {YES}) and {OPEN}", None, ["c"]),
    (f"({OPEN} or d = yes) and (c = no or {YES})", None, ["c", "d"]),
]


@pytest.mark.parametrize(("text", "wanted", "open_paths"), THREE_VALUED)
def test_an_unknown_term_leaves_a_condition_open_only_where_it_matters(
    text: str, wanted: bool | None, open_paths: list[str]
) -> None:
    def answer(term: Any) -> bool | None:
        return ANSWERS.get(term.path[0])

    condition = parse_condition(text)
    assert truth(condition, answer) is wanted
    assert sorted({term.path[0] for term in open_terms(condition, answer)}) == open_paths
