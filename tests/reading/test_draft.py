"""A project told answer by answer is taken and refused as the same words in a file are."""

from pathlib import Path

import pytest
import yaml

from specgen.model.problem import Refused
from specgen.pipeline import read
from specgen.reading.draft import Told, read_draft
from specgen.reading.schema import project_schema
from tests.support import SMALL, merged, written

GIVEN = {
    "package.purpose": "design_draft",
    "project.name": "Trial",
    "walls.W1.substrate.kind": "concrete",
    "walls.W1.attachment.method": "adhesive_full_bed",
}


def nested(told: dict[str, Told]) -> dict[str, object]:
    data: dict[str, object] = {}
    for path, said in told.items():
        change: object = list(said) if isinstance(said, tuple) else said
        for name in reversed(path.split(".")):
            change = {name: change}
        data = merged(data, change)
    return data


def in_file(folder: Path, told: dict[str, Told]) -> Path:
    return written(folder, yaml.safe_dump(merged(SMALL, nested(told)), allow_unicode=True))


def draft(told: dict[str, Told]) -> dict[tuple[str, ...], Told]:
    return {tuple(path.split(".")): said for path, said in (GIVEN | told).items()}


@pytest.mark.parametrize(
    "told",
    [
        {},
        {"walls.W1.insulation.thickness": "2 1/2 in", "walls.W1.insulation.kind": "EPS"},
        {"code.model": "ibc", "code.edition": "2021", "code.occupancy_groups": ("R-2", "b")},
        {"walls.W1.substrate.condition": (), "code.local_fasteners_required": "no"},
        {"package.units": "si", "building.eifs_top": "9.5 m", "walls.W1.drainage.efficiency": "94"},
    ],
)
def test_answers_are_typed_as_the_same_words_of_a_file(told: dict[str, Told], tmp_path: Path) -> None:
    of_file, of_answers = read(in_file(tmp_path, told)), read_draft(draft(told), ("W1",), project_schema())
    assert of_answers.values == {path: value for path, value in of_file.values.items() if path != ("format",)}
    assert (of_answers.members, of_answers.defaults) == (of_file.members, of_file.defaults)


@pytest.mark.parametrize(
    "told",
    [
        {"walls.W1.insulation.thickness": "2"},
        {"walls.W1.insulation.thickness": "two inches"},
        {"walls.W1.insulation.thickness": "900 in"},
        {"walls.W1.insulation.kind": "cheese"},
        {"walls.W1.insulation.kind": ("eps", "xps")},
        {"walls.W1.substrate.condition": "damp"},
        {"walls.W1.substrate.condition": ("damp", "wet paint")},
        {"code.model": "ibd"},
        {"code.edition": "last"},
        {"code.local_fasteners_required": "maybe"},
        {"walls.W1.drainage.efficiency": "0.94"},
        {"building.eifs_top": "-3 ft", "building.built_year": "76"},
    ],
)
def test_answers_are_refused_in_the_words_of_a_file(told: dict[str, Told], tmp_path: Path) -> None:
    with pytest.raises(Refused) as of_file:
        read(in_file(tmp_path, told))
    with pytest.raises(Refused) as of_answers:
        read_draft(draft(told), ("W1",), project_schema())
    said = [(problem.path, problem.message, problem.hint) for problem in of_answers.value.problems]
    assert sorted(said) == sorted((one.path, one.message, one.hint) for one in of_file.value.problems)
    assert {(one.file, one.line) for one in of_answers.value.problems} == {("", 0)}


def test_a_range_that_is_upside_down_is_told_without_lines() -> None:
    told = draft({"climate.cold_air": "40 F", "climate.hot_air": "20 F"})
    with pytest.raises(Refused) as refused:
        read_draft(told, ("W1",), project_schema())
    (problem,) = refused.value.problems
    assert (problem.path, problem.hint) == ("climate.hot_air", "correct one of the two")
    assert problem.message.startswith("20 °F is below 40 °F")


def test_what_a_file_must_give_may_still_be_absent() -> None:
    project = read_draft({("project", "name"): "Trial"}, ("W1", "W2"), project_schema())
    assert (project.members, project.get(("walls", "W1", "substrate", "kind"))) == ({("walls",): ("W1", "W2")}, None)
