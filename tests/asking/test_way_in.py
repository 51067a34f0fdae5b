"""From an empty folder to the package of a mockup without a stop: what the applicator types, what others are asked.

The facts are those of the example `clean`, cut to one wall and two faces: invented, as all of it. Who owes a field is
told by the product; here it only counts who types what.
"""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import yaml

from specgen.asking.tables import find_table_named, list_tables
from specgen.model.field import Path as FieldPath
from specgen.reading.schema import project_schema
from tests.running import run_main
from tests.support import EXAMPLES
from tests.test_readme import type_in

SCHEMA = project_schema()
# What the applicator gives in a table of his own, in place of typing it line by line.
IN_TABLES = ("attachments", "crews", "deviations", "joints", "access", "shade", "sealants")
MUST = ("walls.W1.substrate.kind", "walls.W1.attachment.method")
# The workbooks that the applicator fills in, and those that others do.
OF_OURS = {"applicator.xlsx", "crews.xlsx", "deviations.xlsx"}
OTHERS = ("general-contractor", "eifs-manufacturer", "finish-manufacturer", "sealant-manufacturer")
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
    del data["answers"]
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


# What is entered of a document, besides its type, which stands there.
PAPER_COLUMNS = {
    "Materials covered": "covers",
    "Test standard": "standard",
    "Title": "title",
    "Date of document": "issued_on",
    "File name": "file",
    "Signed": "signed",
    "Lines that apply marked": "marked",
    "Names this project": "project_named",
}


def fill(book: Any, facts: dict[str, Any], by_path: dict[FieldPath, str]) -> int:
    """Fill a workbook in as its parties would; returns the number of cells."""
    filled = 0
    tables = {table.name for table in list_tables()}
    for sheet in book:
        name = sheet.title.rstrip(" 234")
        if name == "Project":
            for row in sheet.iter_rows():
                if row[0].value in ("Answered by", "Date"):
                    row[1].value = {"Answered by": "Q. Larkspur", "Date": "2027-02-20"}[row[0].value]
        elif name == "Questions":
            filled += fill_questions(sheet, by_path)
        elif name in tables:
            filled += fill_table(sheet, name, facts, by_path)
    return filled


def fill_papers(sheet: Any, facts: dict[str, Any], sent: dict[str, str]) -> None:
    """Enter each document that a sheet asks for, as its sender has it; `sent` gets the mark that each has become."""
    titles = {cell.value: place for place, cell in enumerate(sheet[3])}
    for row in sheet.iter_rows(min_row=4):
        mark, typed, field = re.fullmatch(r"(\S+) (\{.*\})(?: (\S+))?", row[titles["Entry"]].value).groups()
        wanted = yaml.load(typed, _AsText)
        found = next((own for own, paper in facts["attachments"].items() if answers(paper, wanted)), None)
        own = find(facts, tuple(field.split("."))) if field else found
        if own is None:
            continue
        paper = facts["attachments"][own]
        sent.setdefault(own, mark)
        for title, name in PAPER_COLUMNS.items():
            if paper.get(name) is not None and row[titles[title]].value is None:
                row[titles[title]].value = ", ".join(paper[name]) if isinstance(paper[name], list) else paper[name]


def answers(paper: dict[str, Any], wanted: dict[str, Any]) -> bool:
    """Whether a document is what is wanted: of its kind and standard, of that wall, for all that it is to cover."""
    return all(
        set(value) <= set(paper.get(name, [])) if isinstance(value, list) else paper.get(name) == value
        for name, value in wanted.items()
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


def fill_table(sheet: Any, name: str, facts: dict[str, Any], by_path: dict[FieldPath, str]) -> int:
    table = find_table_named(name)
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


def name_papers(facts: dict[str, Any], sent: dict[str, str]) -> Iterator[tuple[FieldPath, str]]:
    """Each value; a document by the mark that it got when it was sent, and not at all before."""
    for path, text in list_values(facts):
        field = SCHEMA.field_at(path)
        if field.to == "attachments":
            marks = [
                sent.get(mark, "" if mark in facts["attachments"] else mark) for mark in text.strip("[]").split(", ")
            ]
            text = ", ".join(dict.fromkeys(filter(None, marks)))
            if not text:
                continue
            text = f"[{text}]" if field.kind == "list" else text
        yield path, text


def fill_folder(folder: Path, facts: dict[str, Any], sent: dict[str, str]) -> list[str]:
    """Fill in every workbook of a folder, documents first; returns their names. `sent` gets the marks of documents."""
    books = {file: openpyxl.load_workbook(file) for file in sorted(folder.glob("*.xlsx"))}
    for book in books.values():
        for sheet in book:
            if sheet.title.startswith("Documents sent"):
                fill_papers(sheet, facts, sent)
    by_path = dict(name_papers(facts, sent))
    for file, book in books.items():
        fill(book, facts, by_path)
        book.save(file)
    return list(map(str, books))


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


def test_a_clinic_comes_to_its_mockup_package(facts: dict[str, Any], tmp_path: Path, capsys: Any) -> None:
    """In nine commands and at most 120 typed values, with two side files and the sheets of four others.

    The contractor forwards what the design side is asked; one manufacturer makes the wall system and its barrier.
    """
    job, told, sent = tmp_path / "clinic.yaml", list[str](), dict[str, str]()

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
    for words in ((), ("--table", "crews"), ("--table", "deviations")):
        run("ask", "--out", str(tmp_path / "sheets"), *words)
    run("take", *fill_folder(tmp_path / "sheets", facts, sent))
    # What hangs on the answers is asked once more: openings of the faces, figures of a wall that is drained.
    run("ask", "--out", str(tmp_path / "more"))
    run("take", *fill_folder(tmp_path / "more", facts, sent))
    others = {file.name for name in ("sheets", "more") for file in (tmp_path / name).glob("*.xlsx")} - OF_OURS
    assert others == {f"{name}.xlsx" for name in OTHERS}
    assert run("check").startswith("Package: ready to build\nTwo Larches Clinic: submittal, mockup\n0 stops,")
    run("build", "--out", str(tmp_path / "out"), "--formats", "txt")
    assert (tmp_path / "out" / "D09-mockup-plan.txt").is_file()
    assert typed + 2 + len(MUST) <= 120
    assert len(told) == 9
