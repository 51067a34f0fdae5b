"""Plain data against the tree of the schema: keys that are known, shapes that fit. What is right is ours to say."""

from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.field import dotted_path
from specgen.model.problem import Problem
from specgen.reading.leaves import read_values
from specgen.reading.marks import MOST_MARK
from specgen.reading.positions import Text, read_text
from specgen.reading.rules import Rules
from specgen.reading.schema import project_schema
from specgen.reading.structure import Structure, build_structure
from specgen.reading.unknown_keys import read_key_words


def read(folder: Path, text: str) -> tuple[Text, Structure]:
    (folder / "a.yaml").write_text(text, "utf-8")
    made = read_text(folder / "a.yaml", "a.yaml")
    return made, build_structure(made, project_schema().root)


def problems(folder: Path, text: str) -> list[Problem]:
    """What is told of a file once its records are held against their rules, in the order of its lines."""
    made, structure = read(folder, text)
    read_values(made, structure.records, Rules())
    return sorted(made.problems, key=lambda problem: (problem.line, problem.column))


def leaves(made: Structure) -> dict[str, Any]:
    return {dotted_path(path): value for record in made.records for path, value in record.leaves.items()}


WHOLE = """\
format: 1
site: {surroundings: [dust, vehicles_below]}
walls:
  W1:
    substrate: {kind: concrete, condition: []}
    mesh:
      layers:
        - {kind: standard}
        - kind: high_impact
crews:
  red: {rates: {gloss: 300 ft2/h}}
elevations:
  E1: {openings: {A: {width: 4 ft}}, floor_lines: {}}
"""


def test_every_value_is_a_leaf_by_its_path_and_every_mark_a_member(tmp_path: Path) -> None:
    text, made = read(tmp_path, WHOLE)
    assert text.problems == []
    assert leaves(made) == {
        "format": "1",
        "site.surroundings": ["dust", "vehicles_below"],
        "walls.W1.substrate.kind": "concrete",
        "walls.W1.substrate.condition": [],
        "walls.W1.mesh.layers.0.kind": "standard",
        "walls.W1.mesh.layers.1.kind": "high_impact",
        "crews.red.rates.gloss": "300 ft2/h",
        "elevations.E1.openings.A.width": "4 ft",
    }
    assert {dotted_path(path): marks for path, marks in made.members.items()} == {
        "walls": ("W1",),
        "walls.W1.mesh.layers": ("0", "1"),
        "crews": ("red",),
        "crews.red.rates": ("gloss",),
        "elevations": ("E1",),
        "elevations.E1.openings": ("A",),
        "elevations.E1.floor_lines": (),
    }


def test_the_leaves_of_a_member_stand_in_a_record_of_its_own(tmp_path: Path) -> None:
    _, made = read(tmp_path, WHOLE)
    assert [dotted_path(record.path) for record in made.records] == [
        "",
        "walls.W1",
        "walls.W1.mesh.layers.0",
        "walls.W1.mesh.layers.1",
        "crews.red",
        "elevations.E1",
        "elevations.E1.openings.A",
    ]


# Text, and the leaves that are left; the rest counts as absent and is no fault.
NOT_KNOWN_YET = [
    ("gloss: tbd\nprimer: {coats: 1}\n", {"primer.coats": "1"}),
    ("gloss:\nprimer: {coats: 1}\n", {"primer.coats": "1"}),
    ("gloss: {coats: tbd, reserve: 10}\n", {"gloss.reserve": "10"}),
    ("elevations: tbd\n", {}),
    ("walls: {W1: tbd, W2: {substrate: {kind: osb}}}\n", {"walls.W2.substrate.kind": "osb"}),
    ("walls: {W1: {substrate: ~}}\n", {}),
    ("walls: {W1: {mesh: {layers: [tbd, {kind: standard}]}}}\n", {"walls.W1.mesh.layers.1.kind": "standard"}),
    ("site: {surroundings: tbd}\n", {}),
    ("crews: {red: {rates: {gloss: tbd}}}\n", {}),
    ("records: tbd\nfirm: ~\n", {}),
]


@pytest.mark.parametrize(("text", "left"), NOT_KNOWN_YET)
def test_what_is_not_known_yet_may_stand_anywhere(text: str, left: dict[str, Any], tmp_path: Path) -> None:
    said, made = read(tmp_path, text)
    assert said.problems == []
    assert leaves(made) == left


def test_a_member_that_is_not_known_yet_is_a_member_all_the_same(tmp_path: Path) -> None:
    _, made = read(tmp_path, "walls: {W1: tbd, W2: {}}\nelevations: tbd\njoints: {}\n")
    assert made.members == {("walls",): ("W1", "W2"), ("joints",): ()}


# Text with one key that is not known, the path it stands below, the key, its line, and the hint.
UNKNOWN = [
    ("format: 1\nprimmer: {}\n", "", "primmer", 2, "did you mean primer?"),
    ("Gloss: {}\n", "", "Gloss", 1, "did you mean gloss?"),
    ("gloss:\n  coat: 2\n", "gloss.", "coat", 2, "did you mean coats?"),
    ("gloss:\n  dry-hours: 24\n", "gloss.", "dry-hours", 2, "did you mean dry_hours?"),
    ("gloss:\n  dry hours: 24\n", "gloss.", "dry hours", 2, "did you mean dry_hours?"),
    ("walls:\n  W1:\n    atachment: {method: x}\n", "walls.W1.", "atachment", 3, "did you mean attachment?"),
    ("walls:\n  W1:\n    substrate:\n      knid: osb\n", "walls.W1.substrate.", "knid", 4, "did you mean kind?"),
    (
        "walls: {W1: {mesh: {layers: [{kind: standard},\n  {kimd: standard}]}}}\n",
        "walls.W1.mesh.layers.1.",
        "kimd",
        2,
        "did you mean kind?",
    ),
    ("crews: {red: {rates: {glos: 9 ft2/h}}}\n", "crews.red.rates.", "glos", 1, "did you mean gloss?"),
    ("tank: {zzz: 1}\n", "tank.", "zzz", 1, "known: "),
    ("zzzzzz: 1\n", "", "zzzzzz", 1, "known: format, firm, coating_system"),
    ("'': 1\n", "", "", 1, "known: format"),
    ("1: x\n", "", "1", 1, "known: format"),
    ("walls.W1.substrate.kind: osb\n", "", "walls.W1.substrate.kind", 1, "known: format"),
]


@pytest.mark.parametrize(("text", "above", "key", "line", "hint"), UNKNOWN, ids=[row[2] or "empty" for row in UNKNOWN])
def test_an_unknown_key_is_told_with_its_line_and_the_nearest_known_one(
    text: str, above: str, key: str, line: int, hint: str, tmp_path: Path
) -> None:
    (problem,) = problems(tmp_path, text)
    assert (problem.path, problem.file, problem.line) == (above + key, "a.yaml", line)
    assert problem.message == f"{key!r} is not known here"
    assert problem.hint.startswith(hint)


# Text with names that stand in the wrong place or are called by another word, the path told, and the hint.
MISPLACED = [
    ("walls:\n  W1:\n    wrb:\n    kind: felt\n", "walls.W1.kind", "it belongs below wrb: indent it further than that"),
    (
        "walls:\n  W1:\n    wrb:\n      kind: felt\n      mesh: {}\n",
        "walls.W1.wrb.mesh",
        "it belongs beside wrb: indent it less, with 4 spaces as line 3",
    ),
    (
        "walls:\n  W1:\n    wrb: {kind: felt}\n    sealants: {}\n",
        "walls.W1.sealants",
        "it belongs beside walls: indent it less, with 0 spaces as line 1",
    ),
    ("elevations:\n  E1:\n  wall: W1\n", "elevations.wall", "wall belongs below E1: indent it further than that"),
    ("walls: {W1: {method: mechanical}}\n", "walls.W1.method", "it belongs below attachment"),
    ("max_spray_wind: 8 mph\n", "max_spray_wind", "it belongs below weather"),
    ("coats: 2\n", "coats", "it belongs below smoothing or primer or gloss"),
    ("drying: {touch_dry_hours: 2}\n", "drying", "known: format, firm, coating_system"),
    ("windows: 4\n", "windows", "write elevations.*.openings"),
    ("elevations: {E1: {windows: 4}}\n", "elevations.E1.windows", "write openings"),
    ("elevations: {E1: {openings: {A: {size: 4 ft}}}}\n", "elevations.E1.openings.A.size", "write width and height"),
    ("caulking: {}\n", "caulking", "write sealants"),
    ("undercoat: {}\n", "undercoat", "write primer"),
    ("walls: {W1: {Sheathing: {}}}\n", "walls.W1.Sheathing", "write substrate"),
    ("gloss: {coats 2, dry_hours: 3}\n", "gloss.coats 2", "write coats: 2"),
    ("gloss: {coats:2, dry_hours: 3}\n", "gloss.coats:2", "write coats: 2"),
]


@pytest.mark.parametrize(("text", "path", "hint"), MISPLACED, ids=[row[1] for row in MISPLACED])
def test_a_name_in_the_wrong_place_is_told_where_it_belongs(text: str, path: str, hint: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, text)
    assert problem.path == path
    assert problem.hint.startswith(hint)


def test_every_word_for_a_name_stands_for_one_that_is_there_and_is_none_itself() -> None:
    root = project_schema().root
    for word, paths in read_key_words().items():
        assert word not in root.children
        for path in paths:
            assert project_schema().node(path), word
            assert word != path[-1]


# Text of a wrong shape, the path that is told, what is said, and a part of the hint.
SHAPES = [
    # A section.
    ("gloss: two coats", "gloss", "values by name are wanted here, not a single value", "for example gloss: {"),
    ("gloss: [coats]", "gloss", "values by name are wanted here, not a list", "for example gloss: {"),
    ("walls: {W1: {substrate: osb}}", "walls.W1.substrate", "values by name", "write substrate: {kind: osb}"),
    (
        "walls: {W1: {substrate: CMU}}",
        "walls.W1.substrate",
        "values by name",
        "write substrate: {kind: concrete_masonry}",
    ),
    # Named things and their members.
    ("walls: [W1]", "walls", "walls under marks are wanted here, not a list", "for example walls: {W1: {"),
    ("walls: W1", "walls", "walls under marks are wanted here, not a single value", "a mark for each wall"),
    ("walls: {W1: concrete}", "walls.W1", "values by name are wanted here, not a single value", "substrate: {kind: "),
    ("walls: {W1: [concrete]}", "walls.W1", "values by name are wanted here, not a list", "substrate: {kind: "),
    ("elevations: {E1: {openings: [A]}}", "elevations.E1.openings", "openings under marks", "for each opening"),
    (
        "elevations: {E1: {openings: 4}}",
        "elevations.E1.openings",
        "openings under marks",
        "openings: {O1: {kind: window",
    ),
    (
        "elevations: {E1: {openings: none}}",
        "elevations.E1.openings",
        "openings under marks are wanted here, not a single value",
        "write openings: {} where the elevation has no openings",
    ),
    # Lists of items and their items.
    (
        "climate: {months: {a: {}}}",
        "climate.months",
        "a list is wanted here, not values by name",
        "months: [{month: may",
    ),
    ("climate: {months: May}", "climate.months", "a list is wanted here, not a single value", "braces for each month"),
    ("climate: {months: [May]}", "climate.months.0", "values by name are wanted here, not a single value", "{month: "),
    ("climate: {months: [[]]}", "climate.months.0", "values by name are wanted here, not a list", "{month: "),
    (
        "walls: {W1: {mesh: {layers: {kind: standard, lap: 3 in, zone: all}}}}",
        "walls.W1.mesh.layers",
        "a list is wanted here, not values by name",
        "write layers: [{kind: standard, lap: 3 in, ...}], braces for each mesh layer",
    ),
    # Single values, alone and by marks.
    ("primer: {coats: {a: 1}}", "primer.coats", "a single value is wanted here, not values by name", "for example "),
    ("primer: {coats: [1]}", "primer.coats", "a single value is wanted here, not a list", "for example "),
    ("primer: {coats: []}", "primer.coats", "a single value is wanted here, not a list", "for example "),
    ("crews: {red: {rates: {gloss: [9]}}}", "crews.red.rates.gloss", "a single value is wanted here", "for example "),
    # Lists of single values.
    ("site: {surroundings: dust}", "site.surroundings", "a list is wanted here", "write [dust]"),
    ("site: {surroundings: none}", "site.surroundings", "a list is wanted", "write [] where nothing nearby is at risk"),
    ("site: {surroundings: all of these}", "site.surroundings", "a list is wanted here", "write ["),
    ("site: {surroundings: n/a}", "site.surroundings", "a list is wanted", "write tbd where it is not known yet"),
    ("site: {surroundings: {a: b}}", "site.surroundings", "a list is wanted here, not values by name", "for example ["),
    ("records: week.yaml", "records", "a list is wanted here", "write [week.yaml]"),
]


@pytest.mark.parametrize(("text", "path", "said", "hint"), SHAPES, ids=[row[0][:36] for row in SHAPES])
def test_a_wrong_shape_is_told_with_what_is_wanted(text: str, path: str, said: str, hint: str, tmp_path: Path) -> None:
    (problem,) = read(tmp_path, f"format: 1\n{text}\n")[0].problems
    assert (problem.path, problem.line) == (path, 2)
    assert problem.message.startswith(said)
    assert hint in problem.hint


@pytest.mark.parametrize("mark", ["''", "' '", "'*'", "x" * (MOST_MARK + 1)], ids=["empty", "blank", "star", "long"])
def test_a_mark_that_could_not_be_named_is_told(mark: str, tmp_path: Path) -> None:
    text, made = read(tmp_path, f"walls: {{{mark}: {{}}, W2: {{}}}}\n")
    (problem,) = text.problems
    assert problem.message.endswith("cannot be a mark")
    assert made.members["walls",] == ("W2",)


@pytest.mark.parametrize("mark", ["1", "010", "no", "2nd floor", "W-1/a", "Süd", "x" * MOST_MARK, "null", "a.b"])
def test_a_mark_is_the_text_on_the_drawings(mark: str, tmp_path: Path) -> None:
    text, made = read(tmp_path, yaml.safe_dump({"walls": {mark: {"substrate": {"kind": "osb"}}}}, allow_unicode=True))
    assert text.problems == []
    assert made.members["walls",] == (mark,)


def test_every_fault_of_a_file_is_told_at_once(tmp_path: Path) -> None:
    text = "primmer: {}\ngloss: 2\nwalls:\n  W1: {substrat: {}, wrb: []}\n  W2: x\nformat: 1\n"
    assert [(p.path, p.line) for p in problems(tmp_path, text)] == [
        ("primmer", 1),
        ("gloss", 2),
        ("walls.W1.substrat", 4),
        ("walls.W1.wrb", 4),
        ("walls.W2", 5),
    ]
    made, structure = read(tmp_path, text)
    assert read_values(made, structure.records, Rules()) == {("format",): 1}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("shapes")


NAMES = st.sampled_from([*project_schema().root.children, "W1", "kind", "substrate", "layers", "openings", "*", "x"])
ANYTHING = st.recursive(
    st.sampled_from(["", "tbd", "x", "1", "3/4 in"]),
    lambda deeper: st.one_of(st.lists(deeper, max_size=3), st.dictionaries(NAMES, deeper, max_size=4)),
    max_leaves=15,
)


@given(st.dictionaries(NAMES, ANYTHING, max_size=4))
def test_data_of_any_shape_is_sorted_or_told_with_its_line(folder: Path, data: dict[str, Any]) -> None:
    text, made = read(folder, yaml.safe_dump(data))
    values = read_values(text, made.records, Rules())
    assert all(problem.line > 0 and problem.message for problem in text.problems)
    schema = project_schema()
    for path in values:
        assert schema.field_at(path) is not None, path


def test_members_that_have_keys_and_no_value_yet_are_not_given(tmp_path: Path) -> None:
    given = "access: {X1: {kind: tbd}}\nsealants: {S1: {}}\ncolors: {C1: {kind: }, C2: {kind: a}}\n"
    _, made = read(tmp_path, f"joints: {{J1: {{width: , kind: }}}}\n{given}")
    assert made.members == {("access",): ("X1",), ("sealants",): ("S1",), ("colors",): ("C2",)}
    assert made.unfilled == {("joints",): ("J1",), ("colors",): ("C1",)}


def test_a_wrong_key_in_a_member_without_a_value_is_told(tmp_path: Path) -> None:
    assert [problem.path for problem in problems(tmp_path, "joints: {J1: {widht: }}\n")] == ["joints.J1.widht"]
