"""What is told of workbooks and tables that came back."""

import io
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import openpyxl

from tests.asking import test_documents_sent, test_take, test_take_tables
from tests.asking.workbooks import answered, written_by_xlsxwriter
from tests.editing import test_add_values
from tests.mistakes.telling import FOLDER, call, tell_refused

# Tables of another kind than openings, and as what they are taken.
OF_LISTS: list[tuple[str, list[Any], list[list[Any]]]] = [
    ("criteria", ["No.", "name"], [[None, "gloss"], ["none", None]]),
    ("criteria", ["No.", "name"], [["5", "look"]]),
    ("criteria", ["No.", "name"], [["x", "look"]]),
    ("walls.layers", ["Wall", "name"], [["W1", None]]),
    ("openings", ["Mark", "Elevation", "kind"], [["none", "E2", "window"]]),
    ("rates", ["Mark", "Crew", "value"], [["paint", "red", "9 ft2"]]),
]


def tell_taking() -> Iterator[str]:
    """Workbooks of questions, of documents sent, and tables."""
    take, tables = test_take, test_take_tables
    for how, *_ in take.NOT_TAKEN:
        yield told_of(f"{how}", take.JOB, answered({take.INDEX: 20}, **how))
    for day, more, *_ in take.DAYS:
        yield told_of(f"{day} {' '.join(more)}", take.JOB, answered({take.INDEX: 20}, on=day), *more)
    faulty = {take.INDEX: 9999, "walls.W3.insulation.kind": "eps", "walls.W1.insulation.densty": 1, "": "lost"}
    for more in ((), ("--all-or-nothing",)):
        yield told_of(f"faults {' '.join(more)}", take.JOB, answered(faulty), *more)
    for about, content in spoiled_sheets().items():
        yield told_of(about, take.JOB, content)
    for content, asked in tables.FAULTY:
        yield told_of(asked, tables.JOB, content, "--as", "openings")
    for kind, head, rows in OF_LISTS:
        yield told_of(f"{kind} {rows}", tables.JOB, tables.table(*rows, head=head, name=kind), "--as", kind)
    yield from tell_documents()


def tell_editing() -> Iterator[str]:
    """Values that cannot be put into a file."""
    for source, path, *_ in test_add_values.NOT_ADDED:
        yield tell_refused(
            f"{source} {path}", lambda _, source=source, path=path: test_add_values.edit(source, (path, "x"))
        )


def spoiled_sheets() -> dict[str, bytes]:
    """Workbooks that came back with titles changed."""
    who = [["Project", "Trial"], ["Party code", "eifs_source"], ["Answered by", "L. Ferrow"], ["Date", "2027-02-01"]]
    known, unknown = ([["Format", number], *who] for number in ("1", "7"))
    questions = [["Questions"], [], ["Reply", "Path"], ["20", test_take.INDEX]]
    return {
        "another format": written_by_xlsxwriter({"Questions": questions, "Project": [[], [], *unknown]}),
        "other titles": written_by_xlsxwriter({"Questions": questions, "Project": [[], [], *known]}),
    }


def tell_documents() -> Iterator[str]:
    """Rows of documents sent."""
    sent = test_documents_sent
    with TemporaryDirectory() as name:
        file = Path(name) / "project.yaml"
        file.write_text(sent.JOB, "utf-8")
        call("ask", str(file), "--party", "eifs_source", "--out", str(Path(name) / "out"))
        sheet = (Path(name) / "out" / "eifs-manufacturer.xlsx").read_bytes()
    page = openpyxl.load_workbook(io.BytesIO(sheet))["Documents sent"]
    yield "\n".join(str(cell) for row in page.iter_rows(max_row=sent.HEAD, values_only=True) for cell in row if cell)
    for row, *_ in sent.FAULTY:
        yield told_of(f"{row}", sent.JOB, sent.with_rows(sheet, {"Data sheet: board": sent.BOARD | row}))


def told_of(about: str, job: str, content: bytes, *more: str) -> str:
    """What is printed and told where a file is taken into a project."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "project.yaml").write_text(job, "utf-8")
        (folder / "back.xlsx").write_bytes(content)
        printed, told = call("take", str(folder / "project.yaml"), str(folder / "back.xlsx"), *more)
    return "\n".join([ascii(about), printed.rstrip("\n"), told]).replace(f"{name}/", "").replace(name, FOLDER)
