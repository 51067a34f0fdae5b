"""Every list of an example, written as a table and taken into the project without its lists, gives the same project."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.commands import DONE
from specgen.reading.project import read_project
from specgen.reading.schema import project_schema
from tests.running import run_main
from tests.support import EXAMPLES

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
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


class Words(yaml.SafeLoader):
    """Reads every value as the text that stands in the file, save what merge keys take in."""


Words.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in pairs if tag.endswith(":merge")]
    for first, pairs in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


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
            data = yaml.load(file.read_text("utf-8"), Words)  # noqa: S506 (a safe loader without types)
            for path in lists:
                cut(data, path.split("."))
            place.write_text(yaml.safe_dump(data, sort_keys=False, allow_unicode=True), "utf-8")
    return folder / "project.yaml"


@pytest.mark.parametrize("ending", ["xlsx", "csv"])
@pytest.mark.parametrize("name", NAMES)
def test_all_tables_of_an_example_taken_without_its_lists_give_it_back(
    name: str, ending: str, tmp_path: Path, capsys: Any
) -> None:
    whole = EXAMPLES / name / "project.yaml"
    tables = tmp_path / "tables"
    for table in LISTS:
        words = ("--table", table, "--out", str(tables), "--formats", ending)
        assert run_main(capsys, "ask", str(whole), *words).code == DONE
    (tmp_path / "job").mkdir()
    job = copy_without_lists(name, tmp_path / "job", list(LISTS.values()))
    for files in [[str(tables / f"{table}.xlsx") for table in LISTS]] if ending == "xlsx" else LISTS:
        given = files if isinstance(files, list) else [str(tables / f"{files}.csv"), "--as", files]
        ended = run_main(capsys, "take", str(job), *given)
        assert ended.code == DONE, ended
    schema = project_schema()
    old, new = (read_project(file, schema) for file in (whole, job))
    assert new.values == old.values
    assert {path: sorted(marks) for path, marks in new.members.items()} == {
        path: sorted(marks) for path, marks in old.members.items()
    }
