"""A wall that cannot be is refused: each fault at its own line, all of them in one run; what can be is read.

Arithmetic on the sizes as they are typed here; no text is needed for it.
"""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from tests.support import SMALL, merged, mixed, written

HEAD = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
building: {eifs_top: 25 ft}
elevations:
  E1:
    width: 24 ft
    height: 24 ft
    base_above_grade: 1 ft
"""
NEXT = HEAD.count("\n") + 1

# What stands on E1, its path, its message and hint; typed by hand.
FAULTS = [
    (
        "openings: {A: {x: 20 ft, y: 2 ft, width: 7 ft, height: 4 ft}}",
        "openings.A",
        "the opening ends 27 ft from the left, the wall is 24 ft wide",
        "move it or correct its width",
    ),
    (
        "openings: {A: {x: 2 ft, y: 20 ft, width: 4 ft, height: 5 ft}}",
        "openings.A",
        "the opening ends 25 ft up, the wall is 24 ft high",
        "move it or correct its height",
    ),
    (
        "openings: {A: {x: 25 ft}}",
        "openings.A",
        "the opening begins 25 ft from the left, the wall is 24 ft wide",
        "move it or correct its width",
    ),
    (
        "openings: {A: {width: 30 ft, height: 4 ft}}",
        "openings.A",
        "the opening is 30 ft wide, the wall is 24 ft wide",
        "correct the width of one of the two",
    ),
    (
        "openings: {A: {width: 3 ft, height: 8 m}}",
        "openings.A",
        "the opening is 8 m high, the wall is 24 ft high",
        "correct the height of one of the two",
    ),
    (
        "openings: {A: {width: 24 ft, height: 20 ft}, B: {width: 24 ft, height: 5 ft}}",
        "openings",
        "the openings together are 600 sq ft, the wall is 576 sq ft",
        "correct their sizes or those of the wall",
    ),
    (
        "floor_lines: {F2: {height: 26 ft}}",
        "floor_lines.F2",
        "the floor line lies 26 ft up, the wall is 24 ft high",
        "move it or correct its height",
    ),
    (
        "impact_zones: [{from: 0 ft, to: 26 ft, class: high}]",
        "impact_zones.0",
        "the impact zone ends 26 ft above grade, the wall 25 ft",
        "correct one of the two heights",
    ),
    (
        "layout: {vertical_lines: [4 ft, 25 ft]}",
        "layout.vertical_lines.1",
        "the line lies 25 ft from the left, the wall is 24 ft wide",
        "move it or leave it out",
    ),
    (
        "layout: {horizontal_lines: [4 ft, 25 ft]}",
        "layout.horizontal_lines.1",
        "the line lies 25 ft up, the wall is 24 ft high",
        "move it or leave it out",
    ),
    (
        "layout: {vertical_lines: [8 ft, 4 ft]}",
        "layout.vertical_lines.1",
        "the line at 4 ft comes after the one at 8 ft",
        "write each line once, ascending",
    ),
]


def refused(folder: Path, text: Any) -> list[Problem]:
    with pytest.raises(Refused) as raised:
        pipeline.read(written(folder, text))
    return list(raised.value.problems)


# Of outlines, told at the point that is wrong where one is.
OUTLINES = [
    (
        'outline: ["0 ft, 0 ft", "24 ft, 0 ft"]',
        "outline.0",
        "the outline has 2 points",
        "write the points around the wall, 3 or more",
    ),
    (
        'outline: ["0 ft, 0 ft", "24 ft; 0 ft", "12 ft, 24 ft"]',
        "outline.1",
        "'24 ft; 0 ft' is no point",
        "write x and y from the lower left, such as 12 ft, 20 ft",
    ),
    (
        'outline: ["0 ft, 0 ft", "23 ft, 0 ft", "12 ft, 24 ft"]',
        "outline.1",
        "the outline is 23 ft wide, the wall is 24 ft wide",
        "correct the point, or the width of the wall",
    ),
    (
        'outline: ["0 ft, 0 ft", "24 ft, 0 ft", "24 ft, 24 ft", "8 ft, 24 ft", "16 ft, 12 ft", "0 ft, 12 ft"]',
        "outline.0",
        "the outline turns back under or over itself",
        "split it into elevations whose edge a plumb line meets once above and once below",
    ),
    (
        'outline: ["0 ft, 0 ft", "24 ft, 24 ft", "24 ft, 0 ft", "0 ft, 24 ft"]',
        "outline.0",
        "the outline crosses itself",
        "write the points in the order in which they lie around",
    ),
]


@pytest.mark.parametrize(
    ("text", "path", "message", "hint"), FAULTS + OUTLINES, ids=[row[2] for row in FAULTS + OUTLINES]
)
def test_what_lies_beyond_its_wall_is_told(text: str, path: str, message: str, hint: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, HEAD + f"    {text}\n")
    assert (problem.path, problem.message, problem.hint) == (f"elevations.E1.{path}", message, hint)
    assert (problem.file, problem.line) == ("project.yaml", NEXT)


def test_openings_that_overlap_are_told_at_the_later_one(tmp_path: Path) -> None:
    openings = (
        "    openings:\n"
        "      B: {x: 12 ft, y: 4 ft, width: 4 ft, height: 4 ft}\n"
        "      A: {x: 9 ft, y: 7 ft, width: 4 ft, height: 4 ft}\n"
        "      C: {x: 16 ft, y: 4 ft, width: 4 ft, height: 4 ft}\n"  # its edge is that of B
        "      D: {x: 12 ft, y: 8 ft, width: 4 ft, height: 3 ft}\n"  # on B, over A
    )
    told = refused(tmp_path, HEAD + openings)
    assert [(p.path, p.line, p.message) for p in told] == [
        ("elevations.E1.openings.A", NEXT + 2, f"the opening overlaps B in line {NEXT + 1}"),
        ("elevations.E1.openings.D", NEXT + 4, f"the opening overlaps A in line {NEXT + 2}"),
    ]
    assert {p.hint for p in told} == {"move one of the two or correct its size"}


TOO_HIGH = [
    ("height: 26 ft", "height", "the wall ends 26 ft above grade, the EIFS of the building 25 ft"),
    ("{height: 24 ft, base_above_grade: 2 ft}", "height", "the wall ends 26 ft above grade, the EIFS of the"),
    ("base_above_grade: 26 ft", "base_above_grade", "the wall begins 26 ft above grade, the EIFS of the building"),
]


@pytest.mark.parametrize(
    ("face", "path", "message"),
    TOO_HIGH,
)
def test_a_wall_higher_than_the_eifs_of_the_building_is_told(
    face: str, path: str, message: str, tmp_path: Path
) -> None:
    head = HEAD.partition("elevations:")[0]
    face = face if face.startswith("{") else f"{{{face}}}"
    (problem,) = refused(tmp_path, f"{head}elevations:\n  E1: {face}\n")
    assert (problem.path, problem.line) == (f"elevations.E1.{path}", 8)
    assert problem.message.startswith(message)


def test_what_is_not_given_is_held_against_nothing(tmp_path: Path) -> None:
    # A zone counts from the walking level: how far up the wall begins must be known.
    face = {"height": "9 ft", "impact_zones": [{"from": "0 ft", "to": "10 ft"}], "openings": {"A": {"x": "40 ft"}}}
    assert pipeline.read(written(tmp_path, merged(SMALL, {"elevations": {"E1": face}})))


RUNS = [
    ("vertical", "the joint lies 25 ft from the left, the wall E1 is 24 ft wide"),
    ("horizontal", "the joint lies 25 ft up, the wall E1 is 24 ft high"),
]


@pytest.mark.parametrize(
    ("runs", "message"),
    RUNS,
)
def test_a_joint_beside_its_elevation_is_told(runs: str, message: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, HEAD + f"joints:\n  J1: {{elevation: E1, runs: {runs}, at: 25 ft}}\n")
    assert (problem.path, problem.line, problem.message) == ("joints.J1.at", NEXT + 1, message)


def test_rounding_does_not_print_two_sizes_alike(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, HEAD + "    openings: {A: {x: 0 ft, width: 24.0001 ft}}\n")
    assert problem.message == "the opening ends 24.0001 ft from the left, the wall is 24 ft wide"


def test_all_faults_of_all_walls_are_told_in_one_run_beside_those_of_reading(tmp_path: Path) -> None:
    more = "".join(f"    {row[0]}\n" for row in (FAULTS[0], FAULTS[6], FAULTS[8]))
    wall = "  E2: {width: 9 ft, wall: W7, floor_lines: {F2: {height: 2}}, openings: {A: {x: 9 ft, width: 1 ft}}}\n"
    told = refused(tmp_path, HEAD + more + wall + "climate: {hot_air: 0 F, cold_air: 1 F}\n")
    assert [(p.line, p.path) for p in told] == [
        (NEXT, "elevations.E1.openings.A"),
        (NEXT + 1, "elevations.E1.floor_lines.F2"),
        (NEXT + 2, "elevations.E1.layout.vertical_lines.1"),
        (NEXT + 3, "elevations.E2.wall"),
        (NEXT + 3, "elevations.E2.floor_lines.F2.height"),
        (NEXT + 3, "elevations.E2.openings.A"),
        (NEXT + 4, "climate.hot_air"),
    ]


def test_of_very_many_faults_the_first_are_told(tmp_path: Path) -> None:
    same = "".join(f"      O{n}: {{x: 1 ft, y: 1 ft, width: 1 ft, height: 1 ft}}\n" for n in range(2_000))
    assert len(refused(tmp_path, HEAD + "    openings:\n" + same)) == 100


# Sizes that are typed in either unit, exactly as long; a foot is 0.3048 m.
def _length(amount: Fraction, metric: bool) -> str:
    return f"{float(amount * Fraction('0.3048')):.7g} m" if metric else f"{mixed(amount)} ft"


@st.composite
def faces(draw: st.DrawFn) -> dict[str, Any]:
    """An elevation cut by a grid, its openings in the fields of it: inside the wall, and apart from each other."""
    metric = draw(st.booleans())
    steps = st.integers(8, 400).map(lambda quarter: Fraction(quarter, 4))
    columns, rows = draw(st.lists(steps, min_size=1, max_size=6)), draw(st.lists(steps, min_size=1, max_size=6))
    openings = {}
    for n, wide in enumerate(columns):
        for m, high in enumerate(rows):
            whole = {"x": sum(columns[:n], Fraction()), "y": sum(rows[:m], Fraction()), "width": wide, "height": high}
            given = draw(st.sets(st.sampled_from(["x", "y"])))
            if draw(st.booleans()):
                openings[f"O{n}{m}"] = {
                    name: _length(size, metric)
                    for name, size in whole.items()
                    if name in given or name in ("width", "height")
                }
    face = {"width": _length(sum(columns, Fraction()), metric), "height": _length(sum(rows, Fraction()), metric)}
    lines = {
        "vertical_lines": [_length(sum(columns[: n + 1], Fraction()), metric) for n in range(len(columns))],
        "horizontal_lines": [_length(sum(rows[: n + 1], Fraction()), metric) for n in range(len(rows))],
    }
    return face | {"openings": openings, "layout": {"mode": "given"} | lines}


@given(faces())
@settings(max_examples=60)
def test_a_wall_that_can_be_is_read(tmp_path_factory: pytest.TempPathFactory, face: dict[str, Any]) -> None:
    top = {"building": {"eifs_top": face["height"]}, "elevations": {"E1": face | {"base_above_grade": "0 ft"}}}
    project = pipeline.read(written(tmp_path_factory.mktemp("wall"), merged(SMALL, top)))
    assert len(project.members["elevations", "E1", "openings"]) == len(face["openings"])


@given(faces(), st.data())
@settings(max_examples=60)
def test_a_wall_with_one_opening_moved_over_its_edge_is_refused_there(
    tmp_path_factory: pytest.TempPathFactory, face: dict[str, Any], data: st.DataObject
) -> None:
    side, start = data.draw(st.sampled_from([("width", "x"), ("height", "y")]))
    out = {"width": "1 ft", "height": "1 ft", start: face[side]}
    change = {"elevations": {"E1": face | {"openings": face["openings"] | {"OUT": out}}}}
    told = refused(tmp_path_factory.mktemp("wall"), merged(SMALL, change))
    assert [p.path for p in told] == ["elevations.E1.openings.OUT"]


GABLE = '    outline: ["0 ft, 0 ft", "24 ft, 0 ft", "12 ft, 24 ft"]\n'
# At 4 ft from the left the rake is 8 ft up, at 10 ft it is 20 ft up.
BEYOND = "    openings: {A: {x: 4 ft, y: 5 ft, width: 3 ft, height: 4 ft}}\n"


def test_an_opening_beyond_the_outline_is_told(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, HEAD + GABLE + BEYOND)
    assert problem.path == "elevations.E1.openings.A"
    assert problem.message == "the opening lies beyond the outline of the wall"
    within = "    openings: {A: {x: 10 ft, y: 5 ft, width: 3 ft, height: 4 ft}}\n"
    assert not refused(tmp_path, HEAD + GABLE + within + "climate: {hot_air: 0 F, cold_air: 1 F}\n")[1:]


TIES = [
    ('["6 ft, 6 ft", "25 ft, 6 ft"]', 1, "the tie lies beyond the wall E1"),
    ('["6 ft, 24 ft 1 in"]', 0, "the tie lies beyond the wall E1"),
    ('["6 ft"]', 0, "'6 ft' is no point"),
]


@pytest.mark.parametrize(
    ("ties", "number", "message"),
    TIES,
)
def test_a_scaffold_tie_stands_on_its_wall(ties: str, number: int, message: str, tmp_path: Path) -> None:
    """The wall is 24 ft wide and high."""
    (problem,) = refused(tmp_path, f"{HEAD}access: {{X1: {{elevation: E1, ties: {ties}}}}}\n")
    assert (problem.path, problem.message) == (f"access.X1.ties.{number}", message)


DETAILS = [
    ("x: 20 ft, width: 5 ft", "x", "the water detail ends 25 ft from the left, the wall E1 is 24 ft wide"),
    ("y: 23 ft, height: 2 ft", "y", "the water detail ends 25 ft up, the wall E1 is 24 ft high"),
    ("width: 25 ft", "width", "the water detail ends 25 ft from the left, the wall E1 is 24 ft wide"),
]


@pytest.mark.parametrize(
    ("sides", "name", "message"),
    DETAILS,
)
def test_a_water_detail_lies_on_its_wall(sides: str, name: str, message: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, f"{HEAD}details: {{RB1: {{elevation: E1, {sides}}}}}\n")
    assert (problem.path, problem.message) == (f"details.RB1.{name}", message)
