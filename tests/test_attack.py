"""The attack tool sees what it looks for: each thing that it is to hold against a command is shown to it once."""

import random
import zipfile
from pathlib import Path

import pytest

from tests.attack.attempt import Attempt, Ended
from tests.attack.classes import load_classes
from tests.attack.documents import find_active
from tests.attack.scratch import lay_out, take_stock
from tests.attack.verdict import find_faults
from tests.formats.docx.letterheads import document, firm, header, kept, links

REPORT = "Trial: design draft\n\nW1  not yet known\n\nSTOP A-01a  W1\n\n1 stop, 0 cautions, 0 notes, 0 open items"
FAIR = Ended(1, REPORT.encode(), b"", 1, 100)


def judged(folder: Path, ended: Ended, **more: object) -> str:
    attempt = Attempt("trial", ("check", "project.yaml"), walls=1, **more)  # type: ignore[arg-type]
    job = lay_out(attempt, folder / "scratch")
    stock = take_stock(job.parent)
    return "; ".join(find_faults(attempt, ended, stock, stock, job))


def test_a_command_that_ends_well_has_no_fault(tmp_path: Path) -> None:
    assert judged(tmp_path, FAIR) == ""
    assert judged(tmp_path, Ended(2, b"", b"specgen: there is no file\n", 1, 100)) == ""


@pytest.mark.parametrize(
    ("changed", "seen"),
    [
        (FAIR._replace(code=None), "hung"),
        (FAIR._replace(code=3), "exit code 3"),
        (FAIR._replace(code=-11), "exit code -11"),
        (FAIR._replace(seconds=11), "processor time"),
        (FAIR._replace(megabytes=601), "601 MB"),
        (FAIR._replace(err=b"Traceback (most recent call last):\n"), "Python's own words"),
        (FAIR._replace(err=b"specgen: KeyError: 'x'\n"), "Python's own words"),
        (FAIR._replace(err=b"specgen: a\nspecial: b\n"), "a line of no message"),
        (FAIR._replace(err=b"specgen: " + b"x" * 2_000), "a message of 2009 characters"),
        (FAIR._replace(err=b"specgen: \x1b[2J"), "the terminal is sent '\\x1b'"),
        (FAIR._replace(err="specgen: \u202e".encode()), "the terminal is sent '\\u202e'"),
        (FAIR._replace(out=REPORT.replace("W1", "W2  yes\nW1", 1).encode()), "2 verdicts of 1 walls"),
        (FAIR._replace(out=REPORT.replace("STOP", "NOTE A-02a  W1\nSTOP").encode()), "2 findings where"),
        (FAIR._replace(code=2, out=b""), "refused without a word"),
    ],
)
def test_what_is_wrong_with_an_end_is_seen(changed: Ended, seen: str, tmp_path: Path) -> None:
    assert seen in judged(tmp_path, changed)


def test_an_answer_that_is_not_the_only_right_one_is_seen(tmp_path: Path) -> None:
    assert judged(tmp_path, FAIR, expect="refused") == "it was taken"
    assert judged(tmp_path, Ended(2, b"", b"specgen: no\n", 1, 100), expect="taken") == "it was refused"


def test_what_a_command_takes_leaves_or_tears_is_seen(tmp_path: Path) -> None:
    attempt = Attempt("trial", ("build",))
    job = lay_out(attempt, tmp_path / "scratch")
    before = take_stock(job.parent)
    (job / "plan.txt").write_text("other", "utf-8")
    (job / "kept" / "letter.txt").unlink()
    (job / "left.txt").write_text("left", "utf-8")
    (job / "out").mkdir()
    (job / "out" / "D05-x.txt").write_text("half", "utf-8")
    ended = Ended(2, b"", b"specgen: no\n", 1, 100)
    faults = "; ".join(find_faults(attempt, ended, before, take_stock(job.parent), job))
    for seen in (
        "letter.txt is gone",
        "plan.txt was changed",
        "left job/left.txt",
        "left a package",
        "without a manifest",
    ):
        assert seen in faults


HEADER, LINKS = "word/header1.xml", "word/_rels/header1.xml.rels"
PIECES = "".join(f"<w:r><w:instrText>{piece}</w:instrText></w:r>" for piece in ("DD", "E a"))
FIELD = f'<w:r><w:fldChar w:fldCharType="begin"/></w:r>{PIECES}'


@pytest.mark.parametrize(
    ("changes", "seen"),
    [
        ({HEADER: header('<w:fldSimple w:instr=" DATE "/>')}, "the field ' DATE '"),
        ({HEADER: header(FIELD)}, "the field 'DDE a'"),
        ({"word/document.xml": document(f"<w:p>{FIELD}</w:p>")}, "the field 'DDE a'"),
        ({LINKS: links(("image", "https://example.com/a.png"))}, "the relationship to 'https"),
        ({LINKS: links(("hyperlink", "file://host/a"))}, "the relationship to 'file"),
        ({HEADER: header('<w:pict><v:imagedata o:href="https://example.com/a.png"/></w:pict>')}, "href='https"),
        ({HEADER: header('<w:pict><v:imagedata src="a.png"/></w:pict>')}, "src='a.png'"),
        ({"word/media/image1.png": b"MZ\x90"}, "no picture"),
        ({"word/vbaProject.bin": b"x"}, "the part word/vbaProject.bin"),
    ],
)
def test_what_acts_in_a_word_file_is_seen(changes: dict[str, str | bytes | None], seen: str, tmp_path: Path) -> None:
    assert seen in "; ".join(find_active(kept(tmp_path, firm(changes))))


def test_a_plain_word_file_has_nothing_that_acts(tmp_path: Path) -> None:
    plain = {HEADER: header('<w:fldSimple w:instr="PAGE"/>'), LINKS: links(("hyperlink", "https://example.com"))}
    assert find_active(kept(tmp_path, firm({**plain, "word/media/image1.png": None}))) == []
    assert zipfile.is_zipfile(tmp_path / "firm.docx")


@pytest.mark.parametrize(
    "piece",
    [
        "<script>1</script>",
        "<p onclick=x>",
        "<img src=//h/a>",
        "<img srcset='http://h/a 1x'>",
        "<a href=' java&#115;cript:x'>",
        "<meta http-equiv=refresh content=0>",
        "<iframe>",
        "<style>a{b:url(//h)}</style>",
        "<style>a{b:\\75 rl(//h)}</style>",
        "<style>@im/**/port 'x'</style>",
        "<p style='b:url( http://h )'>",
        "<style></style><svg onload=x>",
    ],
)
def test_what_acts_in_a_page_is_seen(piece: str, tmp_path: Path) -> None:
    (tmp_path / "a.html").write_text(f"<!DOCTYPE html><p>{piece}</p>", "utf-8")
    assert find_active(tmp_path / "a.html") != []


def test_a_plain_page_has_nothing_that_acts(tmp_path: Path) -> None:
    page = "<style>a{b:url( 'data:image/png;base64,AA')}</style><a href=#b>a</a><a href=https://example.com>b</a>"
    (tmp_path / "a.html").write_text(page + "<img src='data:image/png;base64,AA'>onclick=x &lt;script>", "utf-8")
    assert find_active(tmp_path / "a.html") == []


CLASSES = load_classes()


def test_there_are_the_classes_that_were_asked_for() -> None:
    wanted = {"disk", "figures", "files", "letterheads", "side_files", "templates", "texts", "yaml_files"}
    assert wanted <= set(CLASSES)


@pytest.mark.parametrize("name", CLASSES)
def test_the_same_seed_draws_the_same(name: str) -> None:
    drawn = [[CLASSES[name](random.Random(f"1/{number}")) for number in range(20)] for _ in range(2)]
    assert drawn[0] == drawn[1]
    assert len({attempt.about for attempt in drawn[0]}) > 5
