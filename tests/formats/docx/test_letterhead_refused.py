"""What cannot be a letterhead is refused in one message, and no damage ends in a crash. All behavior is ours."""

import io
import random
import zipfile
from pathlib import Path
from typing import Any

import pytest

from specgen.formats.docx import word_file as writer
from specgen.formats.docx.letterhead import read_letterhead
from specgen.model.problem import Refused
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made
from tests.running import run_main
from tests.support import SMALL, written

HEADER = "word/header1.xml"
OLD = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(500)
# The namespace of the strict kind, ISO/IEC 29500-1.
STRICT = made.links(("officeDocument", "word/document.xml")).replace(
    made.R, "http://purl.oclc.org/ooxml/officeDocument/relationships"
)
SHEET = made.types("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml")
BOMB = '<!DOCTYPE w [<!ENTITY a "aaaaaaaaaa">]>' + made.header(made.words("&a;"))
REFUSED = [
    ("empty", b"", "is empty"),
    ("text", b"Dear sirs", "is not a Word document"),
    ("PDF", b"%PDF-1.7", "is a PDF"),
    ("rich text", b"{\\rtf1", "is Rich Text"),
    ("web page", b"\xef\xbb\xbf<html>", "is a web page"),
    ("old Word", OLD, "is an old Word document"),
    ("locked", OLD + "EncryptedPackage".encode("utf-16-le"), "is locked with a password"),
    ("cut short", made.firm()[:900], "is damaged"),
    ("no Word file", made.firm({"_rels/.rels": None}), "is not a Word document"),
    ("a sheet", made.firm({"[Content_Types].xml": SHEET}), "is not a Word document"),
    ("strict", made.firm({"_rels/.rels": STRICT}), "is a Strict Open XML document"),
    ("broken header", made.firm({HEADER: b"<w:hdr"}), "is damaged in word/header1.xml"),
    ("entities", made.firm({HEADER: BOMB}), "is damaged in word/header1.xml"),
    ("other root", made.firm({"word/styles.xml": made.settings()}), "is damaged in word/styles.xml"),
    ("narrow", made.firm({"word/document.xml": made.document(made.section((4000, 9000)))}), "leave text 1.0 in wide"),
    ("huge", made.firm({"word/document.xml": made.document(made.section((40000, 9000)))}), "is 27.8 in long"),
]  # fmt: skip


@pytest.mark.parametrize(("content", "told"), [row[1:] for row in REFUSED], ids=[row[0] for row in REFUSED])
def test_what_cannot_be_a_letterhead_is_refused_in_one_message(tmp_path: Path, content: bytes, told: str) -> None:
    file = made.kept(tmp_path, content)
    with pytest.raises(Refused) as refused:
        read_letterhead(file)
    (problem,) = refused.value.problems
    assert told in problem.message
    assert problem.hint
    assert problem.file == str(file)


def test_a_letterhead_may_leave_as_little_as_is_told_and_no_less(tmp_path: Path) -> None:
    def read(high: int) -> None:
        page = made.document(made.section((12000, high)))
        read_letterhead(made.kept(tmp_path, made.firm({"word/document.xml": page})))

    # Twentieths of a point, 1440 to the inch; the margins of this section take 3000: 2 in of text, and a hair less.
    read(3000 + 2 * 1440)
    with pytest.raises(Refused, match="2.0 in high"):
        read(3000 + 2 * 1440 - 1)


# What a clerk is told to do, by the end of each message. The words are ours.
@pytest.mark.parametrize(
    ("content", "remedy"),
    [
        (made.firm({HEADER: b"<w:hdr"}), "open it in a word processor and save it anew"),
        (made.firm()[:900], "open it in a word processor and save it anew"),
    ],
    ids=["broken header", "cut short"],
)
def test_the_remedy_of_a_damaged_letterhead_is_to_save_it_anew(tmp_path: Path, content: bytes, remedy: str) -> None:
    with pytest.raises(Refused) as refused:
        read_letterhead(made.kept(tmp_path, content))
    assert [problem.hint for problem in refused.value.problems] == [remedy]


def locked_zip() -> bytes:
    """A letterhead whose entries say that they are encrypted."""
    content = bytearray(made.firm())
    for sign, place in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):  # the flags of each entry, APPNOTE 4.3.7 and 4.3.12
        at = content.find(sign)
        while at >= 0:
            content[at + place] |= 1
            at = content.find(sign, at + 4)
    return bytes(content)


def test_a_locked_zip_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="locked with a password"):
        read_letterhead(made.kept(tmp_path, locked_zip()))


@pytest.mark.no_cover
def test_a_damaged_letterhead_is_used_or_refused_and_never_a_crash(tmp_path: Path) -> None:
    """Random damage to each part, and to the zip itself; the seed is fixed."""
    form, chance = document_of("clean", "D10"), random.Random(7)
    with zipfile.ZipFile(io.BytesIO(made.firm())) as zipped:
        parts = {name: zipped.read(name) for name in zipped.namelist()}
    outcomes = set()
    for number in range(120):
        name = sorted(parts)[number % len(parts)]
        content = damaged(parts[name], chance)
        whole = damaged(made.firm(), chance) if number % 10 == 9 else made.firm({name: content})
        try:
            writer.write_docx(form, made.kept(tmp_path, whole))
            outcomes.add("used")
        except Refused as refused:
            assert len(refused.problems) == 1
            outcomes.add("refused")
    assert outcomes == {"used", "refused"}


def damaged(content: bytes, chance: random.Random) -> bytes:
    """The bytes with a piece taken out, doubled or overwritten."""
    begin = chance.randrange(len(content))
    end = min(len(content), begin + chance.choice((1, 3, 20, 200)))
    piece = chance.choice((b"", content[begin:end] * 2, b"\0" * (end - begin), b'"', b"0", b"-5", b"x>"))
    return content[:begin] + piece + content[end:]


@pytest.mark.parametrize(("name", "more", "told"), [
    ("none.docx", (), "the letterhead cannot be read: No such file or directory"),
    (".", (), "the letterhead cannot be read: it is a folder"),
    ("project.yaml", (), "the letterhead is not a Word document"),
    ("firm.docx", ("--formats", "html"), "neither Word nor PDF is written"),
])  # fmt: skip
def test_a_letterhead_that_cannot_serve_ends_with_2_and_nothing_is_written(
    tmp_path: Path, capsys: Any, name: str, more: tuple[str, ...], told: str
) -> None:
    project, out = written(tmp_path, SMALL), tmp_path / "out"
    made.kept(tmp_path, made.firm())
    done = run_main(capsys, "build", str(project), "--out", str(out), "--letterhead", str(tmp_path / name), *more)
    assert done.code == 2
    assert told in done.err
    assert done.err.count("\n") == 1
    assert not out.exists()
