"""The small language of conditions, and every condition there is."""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.standards import load_standards
from specgen.vocabulary.condition import ConditionError, holds, parse_condition
from tests.support import case_of

GIVEN = {
    "code": {"model": "ibc", "occupancy_groups": ["R-2", "B"]},
    "walls": {"W1": {"insulation": {"thickness": "2 in"}, "wrb": {"kind": "none"}}},
    "access": {"X1": {"elevation": "E1", "height": "24 ft", "base": "5 ft", "kind": "frame_scaffold"}},
    "shade": {"S1": {"elevation": "E2", "kind": "tent"}},
    "elevations": {"E1": {"prominent": "no"}, "E2": {"prominent": "yes"}},
    "site": {"surroundings": []},
}
HERE = ("walls", "W1")
TABLE = [
    ("code.model = ibc", HERE, True),
    ("code.model != ibc", HERE, False),
    ("code.model in {irc, ibc}", HERE, True),
    ("code.model not in {irc, other}", HERE, True),
    ("code.occupancy_groups has R-2", HERE, True),
    ("code.occupancy_groups has {R-1, B}", HERE, True),
    ("code.occupancy_groups has R-4", HERE, False),
    ("walls.*.insulation.thickness > 1-1/2 in", HERE, True),
    ("walls.*.insulation.thickness >= 2 in", HERE, True),
    ("walls.*.insulation.thickness < 50 mm", HERE, False),
    ("walls.*.insulation.thickness <= 51 mm", HERE, True),
    ("access.*.height > 4 x access.*.base", ("access", "X1"), True),
    ("access.*.height > 5 x access.*.base", ("access", "X1"), False),
    ("site.surroundings is empty", HERE, True),
    ("site.surroundings is not empty", HERE, False),
    ("site.surroundings is given", HERE, True),
    ("site.altitude is not given", HERE, True),
    ("site.altitude is given", HERE, False),
    ("count walls = 1", HERE, True),
    ("count elevations > 1", HERE, True),
    ("count joints > 0", HERE, False),
    ("elevations.*.prominent = yes", HERE, True),
    ("elevations.*.prominent = yes", ("elevations", "E1"), False),
    ("site.altitude > 1 ft", HERE, False),
    ("site.altitude != 1 ft", HERE, False),
    ("code.model = irc and walls.*.wrb.kind = none or code.model = ibc", HERE, True),
    ("code.model = irc or code.model = ibc and walls.*.wrb.kind = felt", HERE, False),
    # Things that stand on an elevation are told of that elevation.
    ("shade.*.kind = tent", HERE, True),
    ("shade.*.kind = tent", ("access", "X1"), False),
    ("shade.*.kind = tent", ("elevations", "E2"), True),
]


@pytest.mark.parametrize(("text", "path", "wanted"), TABLE)
def test_a_condition_holds_where_it_says(text: str, path: tuple[str, ...], wanted: bool, tmp_path: Path) -> None:
    assert holds(text, case_of(tmp_path, GIVEN).project, path) is wanted


@pytest.mark.parametrize(
    "text", ["", "code.model", "code.model is ibc", "code.model ~ ibc", "= ibc", "Code.model = ibc"]
)
def test_what_is_no_condition_is_refused(text: str) -> None:
    with pytest.raises(ConditionError):
        parse_condition(text)


def conditions() -> list[str]:
    rows = load_standards()
    fields = [text for f in pipeline.schema().fields.values() for text in (f.condition, f.default_if)]
    steps = [s.when for s in rows.steps.values()] + [t.when for s in rows.steps.values() for t in s.sentences]
    others = [r.when for kind in (rows.criteria, rows.tools, rows.references) for r in kind.values()]
    return sorted({text for text in (*fields, *steps, *others) if text})


@pytest.mark.parametrize("text", conditions())
def test_every_condition_there_is_speaks_of_known_fields_and_choices(text: str) -> None:
    schema = pipeline.schema()
    for side in parse_condition(text):
        for term in side:
            if term.path[0] == "calc":
                continue
            node = schema.node(term.path)
            if node.field is not None and node.field.values and term.relation in ("=", "!=", "in", "not in", "has"):
                assert set(term.right) <= set(node.field.values)
