"""Every list of an example, written as a table and taken into the project without its lists, gives the same project."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.asking.files import make_table_files
from specgen.asking.member_table import make_table
from specgen.asking.tables import list_tables
from specgen.commands import DONE
from specgen.commands._stages import check_for
from specgen.reading.positions import parse_text
from specgen.reading.project import read_project
from specgen.reading.schema import project_schema
from specgen.reading.unknown import TBD
from tests.documents.example import changed_small, context_of_case
from tests.running import run_main
from tests.support import EXAMPLES

# Records name faces and crews, so that a project with records is none without its lists.
NAMES = sorted(
    file.parent.name for file in EXAMPLES.glob("*/project.yaml") if "\nrecords:" not in file.read_text("utf-8")
)
# Retyped from the schema: every collection that is no record, as its path in a file, by the name of its table.
LISTS = {
    "spec_sections": "contract.spec_sections",
    "demands": "contract.demands",
    "items": "contract.items",
    "local_amendments": "code.local_amendments",
    "months": "climate.months",
    "elevations": "elevations",
    "openings": "elevations.*.openings",
    "floor_lines": "elevations.*.floor_lines",
    "joint_needs": "elevations.*.joint_needs",
    "impact_zones": "elevations.*.impact_zones",
    "shade_hours": "elevations.*.shade_hours",
    "details": "details",
    "accessories": "accessories",
    "walls": "walls",
    "mesh.layers": "walls.*.mesh.layers",
    "walls.layers": "walls.*.layers",
    "joints": "joints",
    "sealants": "sealants",
    "colors": "colors",
    "guns": "guns",
    "hoses": "hoses",
    "instruments": "instruments",
    "people": "people",
    "crews": "crews",
    "rates": "crews.*.rates",
    "access": "access",
    "shade": "shade",
    "criteria": "mockup.criteria",
    "gaps": "schedule.gaps",
    "attachments": "attachments",
    "deviations": "deviations",
    "comments": "comments",
    "answers": "answers",
}


def in_words(data: Any) -> Any:
    """Plain data as it stands in a file, with its word for what is not known."""
    if isinstance(data, dict):
        return {key: in_words(value) for key, value in data.items()}
    if isinstance(data, list):
        return [in_words(value) for value in data]
    return "tbd" if data is TBD else data


def cut(data: Any, path: list[str]) -> None:
    """Take what stands at a path out of plain data; a star is every key."""
    if not isinstance(data, dict):
        return
    name, *rest = path
    for key in list(data) if name == "*" else [name]:
        if key in data and rest:
            cut(data[key], rest)
        else:
            data.pop(key, None)


def copy_without_lists(name: str, folder: Path, lists: list[str]) -> Path:
    """An example without these lists in any of its files."""
    for file in (EXAMPLES / name).rglob("*"):
        place = folder / file.relative_to(EXAMPLES / name)
        if file.is_dir():
            place.mkdir(exist_ok=True)
        elif file.suffix == ".yaml":
            place.parent.mkdir(parents=True, exist_ok=True)
            data = in_words(parse_text(file.read_bytes(), file.name).data)
            for path in lists:
                cut(data, path.split("."))
            place.write_text(yaml.safe_dump(data, sort_keys=False, allow_unicode=True), "utf-8")
    return folder / "project.yaml"


def test_every_collection_that_is_no_record_has_a_table() -> None:
    assert {table.name: table.collection for table in list_tables()} == {
        name: (*path.split("."), "*") for name, path in LISTS.items()
    }


def test_no_table_has_two_columns_of_a_name(tmp_path: Path) -> None:
    context = changed_small(tmp_path, {})
    for table in list_tables():
        columns = make_table(context, table).columns
        assert len({column.name for column in columns}) == len(columns), table.name


def make_tables(whole: Path, folder: Path, names: list[str], ending: str) -> list[str]:
    """The files of these tables of a project, with the members that it has."""
    folder.mkdir()
    context = context_of_case(check_for(whole, "")[0])
    files = {name: content for table in names for name, content in make_table_files(context, table, (ending,)).items()}
    for name, content in files.items():
        (folder / name).write_bytes(content)
    return [str(folder / name) for name in files]


def assert_same_project(whole: Path, job: Path) -> None:
    """Both files describe the same project, whatever the order of members."""
    old, new = (read_project(file, project_schema()) for file in (whole, job))
    assert new.values == old.values
    marks = [{path: sorted(marks) for path, marks in project.members.items()} for project in (old, new)]
    assert marks[0] == marks[1]


@pytest.mark.parametrize("name", NAMES)
def test_all_tables_of_an_example_taken_without_its_lists_give_it_back(name: str, tmp_path: Path, capsys: Any) -> None:
    whole = EXAMPLES / name / "project.yaml"
    files = make_tables(whole, tmp_path / "tables", list(LISTS), "xlsx")
    (tmp_path / "job").mkdir()
    job = copy_without_lists(name, tmp_path / "job", list(LISTS.values()))
    ended = run_main(capsys, "take", str(job), *files)
    assert ended.code == DONE, ended
    assert_same_project(whole, job)


def test_lists_below_members_are_taken_from_comma_separated_values(tmp_path: Path, capsys: Any) -> None:
    whole = EXAMPLES / "clean" / "project.yaml"
    names = ["months", "openings", "floor_lines", "impact_zones", "mesh.layers", "walls.layers", "rates", "criteria"]
    files = make_tables(whole, tmp_path / "tables", names, "csv")
    (tmp_path / "job").mkdir()
    job = copy_without_lists("clean", tmp_path / "job", [LISTS[name] for name in names])
    for name, file in zip(names, files, strict=True):
        ended = run_main(capsys, "take", str(job), file, "--as", name)
        assert ended.code == DONE, ended
    assert_same_project(whole, job)
