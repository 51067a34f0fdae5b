"""Every Word document against the published schemas of WordprocessingML, and opened by other programs."""

import io
import re
import shutil
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import docx
import pytest

from specgen import building, pipeline
from specgen.documents.catalogue import templates_folder
from specgen.formats.docx import word_file as writer
from specgen.model.block import (
    Article,
    Blank,
    Box,
    CheckBox,
    Contents,
    Document,
    Emphasis,
    Item,
    Letters,
    Note,
    Paragraph,
    Part,
    ReviewBoxes,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)
from tests.documents.support import AWKWARD, document_of
from tests.formats.docx import letterheads as made
from tests.formats.docx.validator import findings, make_validator
from tests.running import run_process
from tests.support import EXAMPLES, SMALL, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

FILES = sorted(EXAMPLES.glob("*/project.yaml"))
PAPER = templates_folder() / "letterhead.docx"
OFFICE = shutil.which("soffice")
SIZES = {"letter": made.LETTER, "A4": made.A4, "landscape": made.LANDSCAPE}


def test_the_letterhead_is_valid() -> None:
    assert findings(PAPER) == []


def findings_in(package: Path) -> dict[str, list[str]]:
    """What the validator has against the documents of a package, by their names."""
    return {file.name: told for file in package.glob("*.docx") if (told := findings(file))}


# `clean` is validated as it is sent, and `large` has but more rows of the same.
DRAFTS = [file.parent.name for file in FILES if file.parent.name not in ("clean", "large")]


@pytest.mark.parametrize("example", DRAFTS)
def test_every_document_of_an_example_is_valid_as_a_draft(example: str, draft_of: Callable[[str], Path]) -> None:
    assert len(list(draft_of(example).glob("*.docx"))) >= 5
    assert findings_in(draft_of(example)) == {}


def test_every_document_of_a_package_that_is_sent_is_valid(clean_package: Path) -> None:
    assert len(list(clean_package.glob("*.docx"))) >= 5
    assert findings_in(clean_package) == {}


def test_the_smaller_examples_are_design_drafts_and_so_written_in_one_way_only(tmp_path: Path) -> None:
    purposes = {file.parent.name: pipeline.read(file).value(("package", "purpose")) for file in FILES}
    assert {name for name, purpose in purposes.items() if purpose != "design_draft"} == {"clean", "season"}
    packages = []
    for draft in (False, True):
        building.build(written(tmp_path, SMALL), tmp_path / "out", draft=draft)
        packages.append({file.name: file.read_bytes() for file in (tmp_path / "out").iterdir()})
    assert packages[0] == packages[1]


def every_block() -> Document:
    """A document of every block and inline there is, with properties laid over one another."""
    words = (
        Strong((Emphasis((Text(AWKWARD), Value("[depth]", open=True))), Value("2 in"), Letters("a"))),
        Emphasis((Strong((Text("a\nb"), Strong((Text("c"),)))),)),
        Blank('Date "of" <reading>', "date"),
        Blank("Name", field="log.crew.a1"),
        CheckBox("met & kept", "log.stirred.a1", "yes"),
    )
    table = Table((words, words), ((words, words), ((), ())), (30, 70), words, "Table 1")
    blocks = (
        Contents(),
        Part(words, "PART 1"),
        Article(words, "1.01"),
        *(Item(words, level, 1) for level in (0, 1, 2)),
        Note(words),
        Note(words, hold=True),
        ReviewBoxes((Box(AWKWARD, (words, ())), Box("Revisions")), Box("Stamp")),
        table,
        Table((words, words), ((words, (Text("1 in"),)),) * 2, (30, 70), figures=frozenset({1})),
        Paragraph((Text("END OF SECTION"),)),
        Signature((("Architect", "A & B"), ("Owner", ""))),
    )
    facts = (("Project", AWKWARD),)
    return Document(
        id="D99",
        title=AWKWARD,
        project=AWKWARD,
        facts=facts * 3,
        firm=AWKWARD,
        foot=AWKWARD,
        blocks=blocks,
        legend=(("a", AWKWARD),),
        running=(AWKWARD, "x"),
        numbering="three_part",
        draft=True,
        date="May 1, 2027",
    )


@pytest.mark.parametrize("changes", [None, {}, {"word/styles.xml": None}], ids=["ours", "firm's", "without styles"])
def test_every_block_and_inline_is_valid_on_any_paper(tmp_path: Path, changes: dict[str, Any] | None) -> None:
    paper = PAPER if changes is None else made.kept(tmp_path, made.firm(changes))
    assert findings(made.kept(tmp_path, writer.write_docx(every_block(), paper), "made.docx")) == []


FAULTS = [(b"<w:b/><w:i/>", b"<w:i/><w:b/>"), (b'<w:numId w:val="1"/>', b'<w:numId w:val="99"/>')]


@pytest.mark.parametrize(("right", "wrong"), FAULTS, ids=["order of properties", "list that is not there"])
def test_the_validator_finds_what_is_wrong(tmp_path: Path, right: bytes, wrong: bytes) -> None:
    changed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(writer.write_docx(every_block(), PAPER))) as source:
        parts = {name: source.read(name) for name in source.namelist()}
    assert right in parts["word/document.xml"]
    parts["word/document.xml"] = parts["word/document.xml"].replace(right, wrong)
    with zipfile.ZipFile(changed, "w") as out:
        for name, content in parts.items():
            out.writestr(name, content)
    file = made.kept(tmp_path, changed.getvalue())
    told = findings(file)
    assert told != []
    # What was found is found again, and is all that the validator finds that looks at every element.
    assert told == findings(file) == findings(file, make_validator())


@pytest.fixture(scope="module")
def printed(tmp_path_factory: Any) -> dict[str, bytes]:
    """Documents on the letterheads of three sizes and on ours, printed to PDF by a word processor in one go."""
    folder = tmp_path_factory.mktemp("printed")
    documents = {"D08": document_of("clean", "D08"), "D10": document_of("clean", "D10")}
    for name, size in SIZES.items():
        paper = made.kept(folder, made.firm({"word/document.xml": made.document(made.section(size))}), "firm.docm")
        for id_, document in documents.items():
            (folder / f"{name}-{id_}.docx").write_bytes(writer.write_docx(document, paper))
    (folder / "ours-D99.docx").write_bytes(writer.write_docx(every_block(), PAPER))
    profile = f"-env:UserInstallation=file://{folder}/profile"
    words = [str(OFFICE), profile, "--headless", "--convert-to", "pdf", "--outdir", str(folder)]
    files = sorted(map(str, folder.glob("*.docx")))
    assert run_process([*words, *files]).code == 0
    return {file.stem: file.read_bytes() for file in folder.glob("*.pdf")}


@pytest.mark.skipif(OFFICE is None, reason="needs LibreOffice")
def test_a_word_processor_prints_every_paper_in_its_size(printed: dict[str, bytes]) -> None:
    assert len(printed) == 2 * len(SIZES) + 1
    for name, (wide, high) in SIZES.items():
        for id_, size in (("D08", (wide, high)), ("D10", (max(wide, high), min(wide, high)))):
            boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)", printed[f"{name}-{id_}"])
            assert boxes
            for box in boxes:
                assert [float(side) * 20 for side in box] == pytest.approx(size, abs=10)


def test_a_reader_opens_every_paper(tmp_path: Path) -> None:
    for size in SIZES.values():
        paper = made.kept(tmp_path, made.firm({"word/document.xml": made.document(made.section(size))}))
        again = docx.Document(io.BytesIO(writer.write_docx(every_block(), paper)))
        assert (again.sections[0].page_width.twips, again.sections[0].page_height.twips) == size
        assert any(AWKWARD in paragraph.text for paragraph in again.paragraphs)
