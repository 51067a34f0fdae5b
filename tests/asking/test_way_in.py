"""From an empty folder to the package of a mockup without a stop: what the applicator types, what others are asked.

The facts are those of the example `clean`, cut to one wall and two faces: invented, as all of it. Who owes a field is
told by the product; here it only counts who types what.
"""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import yaml

from specgen.asking.tables import find_table_named
from specgen.model.field import Path as FieldPath
from specgen.reading.schema import project_schema
from tests.running import run_main
from tests.support import EXAMPLES
from tests.test_readme import type_in

SCHEMA = project_schema()
# What the applicator gives in a table of his own, in place of typing it line by line.
IN_TABLES = ("attachments", "crews", "deviations", "joints", "access", "shade", "sealants")
MUST = ("walls.W1.substrate.kind", "walls.W1.attachment.method")
# Papers that a wall rests on, typed as their marks once they are listed.
MARKS = (
    "walls.W1.wrb.bond_report",
    "walls.W1.substrate.fastener_schedule",
    "walls.W1.attachment.instructions",
    "walls.W1.base_coat.instructions",
)
OURS = ("applicator", "general_contractor", "owner")


class _AsText(yaml.SafeLoader):
    """Reads every value as it is typed, and merge keys."""


_AsText.yaml_implicit_resolvers = {
    sign: [(tag, form) for tag, form in rows if tag.endswith(":merge")]
    for sign, rows in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


@pytest.fixture(scope="module")
def facts() -> dict[str, Any]:
    """All that is true of the clinic, as plain data."""
    text = (EXAMPLES / "clean" / "project.yaml").read_text("utf-8")
    data: dict[str, Any] = yaml.load(text, _AsText)
    data["package"]["purpose"] = "mockup_submittal"
    data["project"] = {"name": "Two Larches Clinic", "number": "2802", "address": "4 Larch Row, Wickerwell"}
    for section, gone in (("walls", "W2"), ("elevations", "E3"), ("joints", "J5"), ("access", "X3"), ("shade", "SH3")):
        del data[section][gone]
    data["details"] = {mark: one for mark, one in data["details"].items() if one["elevation"] != "E3"}
    del data["attachments"]["TR5"]
    for item in data["contract"]["items"].values():
        item["attachments"] = [mark for mark in item["attachments"] if mark != "TR5"]
    return data


def list_values(data: Any, path: FieldPath = ()) -> Iterator[tuple[FieldPath, str]]:
    """Each value by the path of its field, as it is typed."""
    if SCHEMA.field_at(path) is not None:
        yield path, write(data)
    elif isinstance(data, (dict, list)):
        for name, below in data.items() if isinstance(data, dict) else enumerate(data):
            yield from list_values(below, (*path, str(name)))


def write(value: Any) -> str:
    return f"[{', '.join(map(write, value))}]" if isinstance(value, list) else str(value)


def find(data: Any, path: FieldPath) -> Any:
    """What stands at a path; None where nothing does."""
    for name in path:
        if isinstance(data, list):
            data = data[int(name)] if int(name) < len(data) else None
        else:
            data = (data or {}).get(name)
    return data


def fill(book: Any, facts: dict[str, Any], by_path: dict[FieldPath, str]) -> int:
    """Fill a workbook in as its party would; returns the number of cells."""
    for row in book["Project"].iter_rows():
        if row[0].value in ("Answered by", "Date"):
            row[1].value = {"Answered by": "Q. Larkspur", "Date": "2027-02-20"}[row[0].value]
    return (
        fill_questions(book["Questions"], by_path)
        if "Questions" in book.sheetnames
        else fill_table(book, facts, by_path)
    )


def fill_questions(sheet: Any, by_path: dict[FieldPath, str]) -> int:
    titles: dict[Any, int] = {}
    filled = 0
    for row in sheet.iter_rows():
        if "Answer" in (cells := [cell.value for cell in row]):
            titles = {title: place for place, title in enumerate(cells)}
        elif titles and (value := by_path.get(tuple(str(row[titles["Field"]].value).split(".")))) is not None:
            row[titles["Answer"]].value = value
            filled += 1
    return filled


def fill_table(book: Any, facts: dict[str, Any], by_path: dict[FieldPath, str]) -> int:
    sheet = book[book.sheetnames[0]]
    table = find_table_named(sheet.title)
    columns = {str(sheet.cell(2, number).value): number for number in range(1, sheet.max_column + 1)}
    line, filled = 3, 0
    for owner in facts[table.collection[0]] if table.owner else [""]:
        members = find(facts, table.find_member(owner, "")) or {}
        for place, mark in enumerate(members):
            member = table.find_member(owner, str(place) if table.listed else mark)
            sheet.cell(line, 1).value = str(place + 1) if table.listed else mark
            if owner:
                sheet.cell(line, 2).value = owner
            for name, number in columns.items():
                value = by_path.get((*member, *(() if name == "value" else name.split("."))))
                if value is not None:
                    sheet.cell(line, number).value = value.removeprefix("[").removesuffix("]") or "none"
                    filled += 1
            line += 1
    return filled


def fill_folder(folder: Path, facts: dict[str, Any]) -> list[str]:
    """Fill in every workbook of a folder; returns their names."""
    by_path = dict(list_values(facts))
    names = []
    for file in sorted(folder.glob("*.xlsx")):
        book = openpyxl.load_workbook(file)
        fill(book, facts, by_path)
        book.save(file)
        names.append(str(file))
    return names


def type_ours(file: Path, facts: dict[str, Any]) -> int:
    """Type into a starter what the applicator knows; returns how many values that is."""
    typed = 0
    lines = file.read_text("utf-8")
    for path, value in list_values(facts):
        field = SCHEMA.field_at(path)
        assert field is not None
        ours = (
            field.owed_by in OURS and field.ring in ("verdict", "mockup") and field.home == "project" and not field.to
        )
        if ours and path[0] not in IN_TABLES and "layers" not in path and f"{path[-1]}:" in lines:
            try:
                type_in(file, ".".join(path), value)
            except StopIteration:
                continue  # of a member that the starter does not begin
            typed += 1
    return typed


def add_line(file: Path, path: str, value: str) -> None:
    """Put a field into its section, right below the head of that, as the check says to; over an empty key."""
    lines, at, depth = file.read_text("utf-8").split("\n"), 0, 0
    *sections, key = path.split(".")
    for name in sections:
        at = next(n for n in range(at, len(lines)) if lines[n].startswith(f"{' ' * depth}{name}:"))
        depth += 2
    empty = f"{' ' * depth}{key}:"
    end = next((n for n in range(at + 1, len(lines)) if lines[n].strip() and not lines[n].startswith(" " * depth)), 0)
    lines = [line for n, line in enumerate(lines) if not (at < n < end and line == empty)]
    file.write_text("\n".join([*lines[: at + 1], f"{empty} {value}", *lines[at + 1 :]]), "utf-8")


def test_a_clinic_comes_to_its_mockup_package(facts: dict[str, Any], tmp_path: Path, capsys: Any) -> None:
    """In ten commands and at most 120 typed values, with two side files, sheets that others fill in, and tables."""
    job, told = tmp_path / "clinic.yaml", []

    def run(verb: str, *words: str) -> str:
        done = run_main(capsys, verb, str(job), *words)
        told.append(verb)
        assert done.code == 0, done
        return done.out

    for name in ("firm.yaml", "coating-system.yaml"):
        shutil.copy(EXAMPLES / "clean" / name, tmp_path)
    shutil.copytree(EXAMPLES / "clean" / "papers", tmp_path / "papers")
    run("new", "--for", "mockup")
    typed = type_ours(job, facts)
    for path, value in (("firm", "firm.yaml"), ("coating_system", "coating-system.yaml")):
        type_in(job, path, value)
    for path in MUST:
        type_in(job, path, find(facts, tuple(path.split("."))))
    for words in ((), ("--table", "attachments"), ("--table", "crews"), ("--table", "deviations")):
        run("ask", "--out", str(tmp_path / "sheets"), *words)
    run("take", *fill_folder(tmp_path / "sheets", facts))
    for path in MARKS:
        add_line(job, path, find(facts, tuple(path.split("."))))
    # What hangs on the answers is asked once more: openings of the faces, figures of a wall that is drained.
    run("ask", "--out", str(tmp_path / "more"))
    run("take", *fill_folder(tmp_path / "more", facts))
    assert run("check").startswith("Package: ready to build\nTwo Larches Clinic: action submittal, mockup\n0 stops,")
    run("build", "--out", str(tmp_path / "out"), "--formats", "txt")
    assert (tmp_path / "out" / "D09-mockup-plan.txt").is_file()
    assert typed + 2 + len(MUST) + len(MARKS) <= 120
    assert len(told) == 10
