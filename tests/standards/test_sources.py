"""A published source leads a reader to its text: title, issuer, year or edition, and the place in it."""

import ast
import re
from pathlib import Path

import pytest
import yaml

import specgen
from specgen import standards
from specgen.model.source import Kind
from specgen.standards import load_standards
from specgen.standards.rows import Wrong
from specgen.standards.tables import TABLES

ROWS = load_standards()
TEXTS, SOURCES = (
    yaml.load((standards.FOLDER / f"{name}.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    for name in ("texts", "sources")
)
PUBLISHED = [name for name, row in SOURCES.items() if row["kind"] == "published"]


@pytest.mark.parametrize("name", PUBLISHED)
def test_a_published_source_says_where(name: str) -> None:
    row = SOURCES[name]
    text = TEXTS[row["text"]]
    reference = ROWS.sources[name].reference
    assert reference.startswith(text["title"])
    assert all(text[key] in reference for key in ("issuer", "year"))
    assert row["at"] in reference
    assert "http" not in reference
    assert "www" not in reference


# Names of texts that no reader can find.
VAGUE = [
    "Engineering reference page",
    "trade column",
    "Trade columns",
    "specifier's blog",
    "coating consultant's sheet",
    "architectural detailing textbook",
    "Painting specifications of public agencies",
    "comparison sheets for aluminum",
    "commentary pages",
    "wall-and-ceiling trade association, questions and answers",
    "a public library",
]


@pytest.mark.parametrize("title", VAGUE)
def test_a_vague_title_is_none(title: str) -> None:
    row = {"title": title, "issuer": "ASTM", "year": "2019"}
    with pytest.raises(Wrong, match="does not lead a reader"):
        TABLES["texts"].make("x", row)


@pytest.mark.parametrize("year", ["", "text of the 2000s", "recent", "last edition", "undated", "19", "20045"])
def test_a_text_has_a_year_or_says_that_its_copy_has_none(year: str) -> None:
    row = {"title": "ASTM D4212", "issuer": "ASTM", "year": year}
    with pytest.raises(Wrong, match="does not lead a reader"):
        TABLES["texts"].make("x", row)
    TABLES["texts"].make("x", row | {"year": "undated copy"})


@pytest.mark.parametrize("at", ["", "somewhere in it", "as cited in public specifications", "on insulation board"])
def test_a_source_has_a_place_in_its_text(at: str) -> None:
    text = TABLES["texts"].make("x", dict(TEXTS["ufgs_07240"]))
    with pytest.raises(Wrong, match="no place in a text"):
        TABLES["sources"].make("x", {"kind": Kind.PUBLISHED, "text": text, "at": at})


def test_every_text_and_every_source_is_in_use() -> None:
    told = {row[key] for row in SOURCES.values() for key in ("text", "told") if key in row}
    assert set(TEXTS) == told
    folder = Path(specgen.__file__).parent
    files = [file for file in folder.rglob("*") if file.suffix in (".py", ".yaml") and file.name != "sources.yaml"]
    said = " ".join(file.read_text("utf-8") for file in files)
    assert [name for name in SOURCES if not re.search(rf"\b{name}\b", said)] == []


def test_a_text_stands_once() -> None:
    names = [tuple(row.values()) for row in TEXTS.values()]
    assert len(set(names)) == len(names)


def test_no_published_source_is_written_beside_the_rows_but_that_of_the_dew_point() -> None:
    """A published text named in the code is not asked for title, year and place; a dew point reads no rows."""
    found = [
        (file.name, ast.literal_eval(call.args[1]))
        for file in Path(specgen.__file__).parent.rglob("*.py")
        for call in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "Source" and len(call.args) > 1
        if getattr(call.args[0], "attr", "") == "PUBLISHED"
    ]
    assert [name for name, _ in found] == ["_dew.py"]
    assert re.match(r"WMO-No\. 8, .*, undated copy, annex 4\.B: ", found[0][1])


def test_a_name_tells_memory_from_reading() -> None:
    for name, source in ROWS.sources.items():
        assert not name.endswith("_memory") or source.kind is Kind.MEMORY, name
