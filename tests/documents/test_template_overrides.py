"""A firm's own templates: what they change and cannot reach, how a mistake is told. The behavior is ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen import building
from specgen.documents.catalogue import templates_folder
from specgen.model.problem import Refused
from tests.running import run_main
from tests.support import SMALL, written

HEAD = "---\nid: D05\ntitle: Warnings\norder: 50\n---\n"
FRAME = (templates_folder() / "page.html").read_text("utf-8")


def firm(folder: Path, files: dict[str, str | bytes]) -> Path:
    own = folder / "words"
    for name, text in files.items():
        (own / name).parent.mkdir(parents=True, exist_ok=True)
        (own / name).write_bytes(text if isinstance(text, bytes) else text.encode())
    return own


def built(folder: Path, files: dict[str, str | bytes], only: str = "D05", formats: str = "txt") -> dict[str, str]:
    own, out = firm(folder, files), folder / "out"
    building.build(written(folder, SMALL), out, tuple(formats.split(",")), (only,), templates=own)
    return {file.suffix: file.read_text("utf-8") for file in out.iterdir() if file.name != "index.html"}


def refused(folder: Path, files: dict[str, str | bytes]) -> Any:
    with pytest.raises(Refused) as told:
        built(folder, files, formats="txt,html")
    assert not (folder / "out").exists()
    (problem,) = told.value.problems
    return problem


def test_a_firm_changes_the_words_of_one_document(tmp_path: Path) -> None:
    text = built(tmp_path, {"documents/D05.md.j2": HEAD + "# Ours\nWe say {{ project.name }}.\n"})[".txt"]
    assert text.startswith("D05 WARNINGS\n")
    assert "We say Trial." in text
    other = tmp_path / "other"
    other.mkdir()
    assert "Installation procedure" in built(other, {"documents/D05.md.j2": HEAD + "x\n"}, "D08", "html")[".html"]


@pytest.mark.parametrize("title", ["2024-13-45", "[[[[", "&a", "'Ours: to read'", "null"])
def test_a_head_is_text_whatever_it_looks_like(title: str, tmp_path: Path) -> None:
    said = title.strip("'")
    words = HEAD.replace("Warnings", title) + "x\n"
    if ":" in said:
        assert "no file can be named" in refused(tmp_path, {"documents/D05.md.j2": words}).message
    else:
        assert built(tmp_path, {"documents/D05.md.j2": words})[".txt"].startswith(f"D05 {said.upper()}\n")


def test_a_firm_changes_frame_and_style_of_its_pages(tmp_path: Path) -> None:
    style = "body { color: #123456; background: url(data:image/png;base64,AAAA); }\n@media print { a { color: red } }"
    page = built(
        tmp_path, {"style.css": style, "page.html": FRAME.replace("$body", "<p>Our firm</p>$body")}, formats="html"
    )
    assert "#123456" in page[".html"]
    assert "<p>Our firm" in page[".html"]


@pytest.mark.parametrize(
    ("name", "text", "said", "hint"),
    [
        ("documents/D55.md.j2", HEAD, "matches no built-in template", "did you mean documents/D15.md.j2?"),
        ("D05.md.j2", HEAD, "matches no built-in template", "did you mean documents/D05.md.j2?"),
        ("styles.css", "", "matches no built-in template", "did you mean style.css?"),
        ("documents/D05.md.j2", "# No head\n", "its head lacks id, order, title", "between two lines ---"),
        (
            "documents/D05.md.j2",
            HEAD.replace("D05", "D08"),
            "its head says D08, and the file is that of D05",
            "between",
        ),
        ("documents/D05.md.j2", HEAD.replace("50", "soon"), "its order is not a whole number", "between"),
        ("documents/D05.md.j2", HEAD.replace("order", "ordre: 1\norder"), "its head has ordre", "between"),
        ("documents/D05.md.j2", "---\nid: [D05\n---\n", "its head lacks order, title", "between two lines ---"),
        (
            "documents/D05.md.j2",
            HEAD.replace("order", "numbering: roman\norder"),
            "its numbering is none of plain, three_part",
            "between",
        ),
        ("documents/D05.md.j2", b"\xff\xfe", "not UTF-8", "save it as UTF-8"),
        ("page.html", FRAME.replace("$body", ""), "the page lacks $body", "every part"),
        ("page.html", FRAME.replace("$body", "$boddy"), "there is no part $boddy", "did you mean body?"),
        ("page.html", FRAME.replace("$body", "$ $body"), "a $ stands alone", "$$"),
        ("documents/D05.md.j2", HEAD.replace("Warnings", "A/B"), "no file can be named by its title", "leave out"),
        ("documents/D05.md.j2", HEAD.replace("Warnings", "x" * 300), "no file can be named", "at most 60"),
        ("documents/D05.md.j2", HEAD.replace("Warnings", ""), "no file can be named by its title", "leave out"),
        ("documents/D05.md.j2", HEAD.replace("Warnings", "a\ue000"), "cannot be seen on paper", "delete it"),
        ("documents/D05.md.j2", HEAD.replace("50", "9" * 5000), "its order is not a whole number", "between"),
        (
            "documents/D05.md.j2",
            HEAD.replace("order", "landscape: [[\norder"),
            "its landscape is none of true",
            "between",
        ),
        ("documents/D05.md.j2", HEAD.replace("order", "[[[\norder"), "'[[[' is no line of a head", "a colon"),
    ],
)
def test_a_folder_that_cannot_serve_is_one_message(
    name: str, text: str | bytes, said: str, hint: str, tmp_path: Path
) -> None:
    problem = refused(tmp_path, {name: text})
    assert said in problem.message
    assert hint in problem.hint
    assert problem.file == f"words/{name}"


@pytest.mark.parametrize("folder", ["none", "empty", "project.yaml"])
def test_a_folder_that_is_none_or_empty_is_told(folder: str, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    file = written(tmp_path, SMALL)
    with pytest.raises(Refused, match="no folder of templates|holds no template"):
        building.build(file, tmp_path / "out", ("txt",), templates=tmp_path / folder)
    assert not (tmp_path / "out").exists()


def test_markup_of_a_template_stays_words(tmp_path: Path) -> None:
    words = HEAD + "<b onclick=x>bold</b> {{ '<i>no</i>' }} <script>alert(1)</script>\n"
    page = built(tmp_path, {"documents/D05.md.j2": words}, formats="html")[".html"]
    assert "&lt;i&gt;no&lt;/i&gt;" in page
    assert "<script" not in page
    assert "onclick=x>" not in page.replace("onclick=x&gt;", "")


def test_the_command_tells_a_mistake_and_writes_nothing(tmp_path: Path, capsys: Any) -> None:
    own = firm(tmp_path, {"documents/D05.md.j2": HEAD + "{{ projekt }}\n"})
    file = written(tmp_path, SMALL)
    done = run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"), "--templates", str(own))
    assert done.code == 2
    assert done.err.startswith(
        "specgen: words/documents/D05.md.j2:6: the template cannot be used: there is no 'projekt' here"
    )
    assert done.err.count("\n") == 1
    assert not (tmp_path / "out").exists()
