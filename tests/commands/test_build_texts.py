"""`build`: every text of the user comes back unchanged in every document and format."""

import re
import zipfile
from pathlib import Path
from typing import Any

import docx
import pytest
from lxml import etree, html

from specgen.reading.positions import read_text
from specgen.reading.schema import project_schema
from specgen.reading.unknown import TBD
from tests.commands.support import STOPPED, checked
from tests.documents.support import AWKWARD
from tests.running import run_main
from tests.support import ROOT, SMALL, merged, written

LONG = ("Long Hall " * 30).strip()
# A mark of every sign that one may hold: none of them is markup in any format.
MARK = "#1. _W_ (a)'s & +b, -c/d __e__ ## Süd 北"


def words_of(file: Path) -> str:
    """What a reader of a document meets, runs of white space as one space."""
    if file.suffix == ".docx":
        parts = zipfile.ZipFile(file)
        pages = [etree.fromstring(parts.read(name)) for name in parts.namelist() if re.match(r"word/\w+\.xml", name)]
        text = "\n".join("".join(p.itertext(W + "t")) for page in pages for p in page.iter(W + "p"))
    elif file.suffix == ".html":
        text = html.fromstring(file.read_bytes().decode()).text_content()
    else:
        text = file.read_text("utf-8")
    return re.sub(r"\s+", " ", text)


W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"


NOT_FREE = {
    "demands",
    "serves",
    "answers",
    "days_off",
    "for",
    "time_zone",
    "states",
}  # a path, a mark, a day, or a name that is known


def spoiled(data: Any, path: tuple[str, ...] = ()) -> Any:
    """The description with an awkward text, numbered, in the place of every free text."""
    if isinstance(data, dict):
        return {key: spoiled(value, (*path, key)) for key, value in data.items()}
    if isinstance(data, list):
        return [spoiled(value, (*path, str(n))) for n, value in enumerate(data)]
    made = project_schema().field_at(path) or project_schema().field_at(path[:-1])
    if made is None or (made.of or made.kind) != "text" or NOT_FREE & {*path}:
        return "tbd" if data is TBD else data
    return f"{AWKWARD} ({'/'.join(path)})"


def test_every_text_of_the_user_comes_back_unchanged_in_every_document_and_format(tmp_path: Path, capsys: Any) -> None:
    for file in (ROOT / "project_examples" / "clean").glob("*.yaml"):
        written(tmp_path, spoiled(read_text(file, file.name).data), file.name)
    out = tmp_path / "out"
    assert (
        run_main(capsys, "build", str(tmp_path / "project.yaml"), "--out", str(out), "--formats", "docx,html,txt").code
        == 0
    )
    for ending in ("docx", "html", "txt"):
        met = set()
        for file in out.glob(f"*.{ending}"):
            text = words_of(file)
            for match in re.finditer(r"\((\w+(?:/[\w ]+)+)\)", text):
                met.add(match[1])
                assert text[: match.start()].endswith(f"{AWKWARD} "), (file.name, match[1])
        assert "project/name" in met
        assert len(met) > 40, ending


def test_awkward_marks_come_back_unchanged(tmp_path: Path, capsys: Any) -> None:
    wall = {MARK: STOPPED["walls"]["W1"]}
    file, out = written(tmp_path, merged(SMALL, {"walls": wall | {"W1": "drop"}})), tmp_path / "out"
    told = checked(capsys, tmp_path, merged(SMALL, {"walls": wall | {"W1": "drop"}}))
    assert told["findings"][0]["subjects"] == [MARK]
    assert run_main(capsys, "build", str(file), "--out", str(out), "--draft", "--formats", "docx,html,txt").code == 1
    for made in (f for f in out.iterdir() if f.name.startswith(("D02", "D05"))):
        assert MARK in words_of(made), made.name


@pytest.mark.parametrize("name", [AWKWARD, LONG], ids=["awkward", "300 characters"])
def test_text_of_the_user_comes_back_unchanged_in_every_format(name: str, tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    file = written(tmp_path, merged(SMALL, {"project": {"name": name}}))
    assert (
        run_main(capsys, "build", str(file), "--out", str(out), "--only", "D05", "--formats", "docx,html,txt").code == 0
    )
    assert f"Project: {name}\n" in next(out.glob("*.txt")).read_text("utf-8")
    page = html.fromstring(next(out.glob("*.html")).read_bytes().decode())
    assert page.xpath("string(//header//dd)") == name
    assert docx.Document(str(next(out.glob("*.docx")))).tables[0].rows[0].cells[1].text == name
