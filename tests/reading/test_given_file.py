"""Every file that a user gives is read by one bounded reader: only a regular file, no more of it than its bound.

The kinds of file and their tests are those of POSIX.1-2017, `<sys/stat.h>`; the bounds and what is told are ours.
"""

import ast
import io
import os
import socket
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.documents.catalogue import templates_folder
from specgen.documents.template_overrides import check_folder, find_template, words_of
from specgen.formats.docx.letterhead import read_letterhead
from specgen.model.problem import Refused
from specgen.reading import given_file
from specgen.reading.csv_reading import read_csv
from specgen.reading.given_file import FileUse, read_given_file
from specgen.reading.workbook_reading import read_workbook
from tests.running import run_main, words_of_build
from tests.support import ROOT, SMALL, merged, written

PACKAGE = ROOT / "specgen"
# What opens or reads a file by its path or its number, in the standard library and in the libraries in use.
OPENING = {
    "open",
    "fdopen",
    "open_docx",
    "read_text",
    "read_bytes",
    "ZipFile",
    "mmap",
    "memmap",
    "copyfile",
    "copytree",
}
# Where that is done all the same: the reader itself, files of the package, files held in memory, and the writer.
ALLOWED = {
    "reading/workbook_file.py": ["ZipFile"],
    "reading/given_file.py": ["fdopen", "open"],
    "reading/records/form_file.py": ["open"],
    "standards/rows.py": ["read_text", "read_text"],
    "formats/docx/letterhead/builder.py": ["read_bytes"],
    "formats/docx/letterhead/opc.py": ["ZipFile", "ZipFile", "open"],
    "formats/docx/word_file.py": ["ZipFile", "open_docx"],
    "documents/figures/labels.py": ["read_text"],
    "formats/pdf/bind.py": ["open"],
    "formats/pdf/compiling.py": ["open", "read_bytes"],
    "formats/pdf/embedded_font.py": ["read_bytes"],
    "formats/pdf/face.py": ["open_docx"],
    "formats/pdf/face_pictures.py": ["open"],
    "formats/pdf/forms.py": ["open"],
    "formats/pdf/opening.py": ["open"],
    "formats/pdf/picture_pages.py": ["open"],
    "formats/pdf/saving.py": ["open"],
    "formats/review_page.py": ["read_text"],
    "output/disk.py": ["open"],
    "output/exchange.py": ["open"],
    "output/workplace.py": ["open", "open"],
    "terminal/streams.py": ["open", "open"],
}


def openings(source: str) -> list[str]:
    """The calls in a text that open or read a file, by name."""
    calls = [node.func for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call)]
    names = [call.attr if isinstance(call, ast.Attribute) else getattr(call, "id", "") for call in calls]
    methods = {call.attr for call in calls if isinstance(call, ast.Attribute)}
    # `read_text` and its like are methods of a path; a function of that name is one of ours.
    return sorted(n for n in names if n in OPENING and (not n.startswith("read_") or n in methods))


def test_nothing_but_the_reader_opens_a_file_of_the_user() -> None:
    found = {file.relative_to(PACKAGE).as_posix(): openings(file.read_text("utf-8")) for file in PACKAGE.rglob("*.py")}
    assert {name: calls for name, calls in found.items() if calls} == ALLOWED


@pytest.mark.parametrize("call", [
    "open(p)", "p.open()", "io.open(p)", "os.open(p, 0)", "p.read_text()", "p.read_bytes()", "zipfile.ZipFile(p)",
    "open_docx(p)", "shutil.copyfile(p, q)",
])  # fmt: skip
def test_a_file_opened_elsewhere_would_be_found(call: str) -> None:
    assert len(openings(f"def f(p):\n    return {call}\n")) == 1


def name_side_file(place: Path) -> None:
    pipeline.check(written(place.parent, merged(SMALL, {"firm": place.name})))


# Each way in which a user gives us a file, and the name it has there.
WAYS: dict[str, tuple[str, Callable[[Path], object]]] = {
    "a project": ("p.yaml", pipeline.check),
    "a side file": ("firm.yaml", name_side_file),
    "a letterhead": ("firm.docx", read_letterhead),
    "a template": ("D08.md.j2", lambda place: words_of(place, place.name)),
    "a workbook": ("a.xlsx", lambda place: read_workbook(place, place.name)),
    "a table": ("a.csv", lambda place: read_csv(place, place.name)),
}


def make_socket(place: Path) -> None:
    with socket.socket(socket.AF_UNIX) as made:
        here = Path.cwd()
        os.chdir(place.parent)  # the name of a socket has few letters
        try:
            made.bind(place.name)
        finally:
            os.chdir(here)


def make_sparse(place: Path) -> None:
    with place.open("wb") as made:
        made.truncate(8 * 10**9)


MAKES: dict[str, tuple[Callable[[Path], object], str]] = {
    "a folder": (lambda place: place.mkdir(), "cannot be read: it is a folder"),
    "a pipe": (lambda place: os.mkfifo(place), "cannot be read: it is a pipe"),
    "a socket": (make_socket, "cannot be read: it is a socket"),
    "8 GB of nothing": (make_sparse, " MB"),
}


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The files that the reader has opened."""
    real, seen = os.open, list[Path]()

    def noted(path: Path, flags: int) -> int:
        seen.append(Path(path))
        return real(path, flags)

    monkeypatch.setattr(given_file.os, "open", noted)
    return seen


@pytest.mark.skipif(os.name != "posix", reason="kinds of file of a POSIX system")
@pytest.mark.parametrize("kind", MAKES)
@pytest.mark.parametrize("way", WAYS)
def test_what_is_no_file_or_too_large_is_told_and_not_opened(
    way: str, kind: str, tmp_path: Path, opened: list[Path]
) -> None:
    (name, give), (make, said) = WAYS[way], MAKES[kind]
    make(tmp_path / name)
    with pytest.raises(Refused) as refused:
        give(tmp_path / name)
    (problem,) = refused.value.problems
    assert said in problem.message
    assert problem.hint
    assert tmp_path / name not in opened


@pytest.mark.skipif(os.name != "posix", reason="devices of a POSIX system")
@pytest.mark.parametrize("way", ["a project", "a letterhead", "a template"])
def test_a_device_behind_a_link_is_told_and_not_opened(way: str, tmp_path: Path, opened: list[Path]) -> None:
    name, give = WAYS[way]
    (tmp_path / name).symlink_to("/dev/zero")
    with pytest.raises(Refused, match="cannot be read: it is a device"):
        give(tmp_path / name)
    assert opened == []


@pytest.mark.skipif(not Path("/proc/kmsg").exists(), reason="a file of the system that never ends")
def test_a_file_of_the_system_is_taken_as_empty_and_not_opened(opened: list[Path]) -> None:
    with pytest.raises(Refused, match="is empty"):
        pipeline.check(Path("/proc/kmsg"))
    with pytest.raises(Refused, match="is empty"):
        read_letterhead(Path("/proc/kmsg"))
    assert opened == []


@pytest.mark.skipif(os.name != "posix", reason="kinds of file of a POSIX system")
def test_a_pipe_in_the_place_of_a_template_does_not_bring_ours_back(tmp_path: Path) -> None:
    (tmp_path / "documents").mkdir()
    name = "documents/D05-warnings-and-limitations.md.j2"
    os.mkfifo(tmp_path / name)
    assert find_template(name, templates_folder(), tmp_path) == tmp_path / name


TEN = FileUse("the file", "give another", 10)


class Endless(io.RawIOBase):
    """A file that has more whenever it is asked, and remembers for how much."""

    asked: list[int]

    def read(self, size: int = -1) -> bytes:
        self.asked.append(size)
        return b"x" * size


def test_a_file_that_grows_behind_its_size_is_read_no_further_than_its_bound(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_bytes(b"x")
    endless, real = Endless(), os.close
    endless.asked = []
    monkeypatch.setattr(given_file.os, "fdopen", lambda number, mode: real(number) or endless)
    monkeypatch.setattr(given_file.os, "fstat", lambda number: (tmp_path / "file").stat())
    with pytest.raises(Refused, match="the file is larger"):
        read_given_file(tmp_path / "file", TEN)
    assert endless.asked == [TEN.most + 1]


@pytest.mark.skipif(os.name != "posix", reason="kinds of file of a POSIX system")
def test_a_pipe_put_in_the_place_of_a_file_is_neither_waited_for_nor_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file, pipe = tmp_path / "file", tmp_path / "pipe"
    file.write_bytes(b"x")
    os.mkfifo(pipe)
    real = os.open
    monkeypatch.setattr(given_file.os, "open", lambda path, flags: real(pipe, flags))
    with pytest.raises(Refused, match="it is a pipe"):
        read_given_file(file, TEN)


def test_a_file_as_large_as_its_bound_is_read_whole(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"0123456789")
    assert read_given_file(tmp_path / "file", TEN) == b"0123456789"
    (tmp_path / "file").write_bytes(b"0123456789a")
    with pytest.raises(Refused, match="larger"):
        read_given_file(tmp_path / "file", TEN)


@pytest.mark.skipif(os.name != "posix", reason="links of a POSIX system")
def test_the_side_files_of_a_project_named_by_a_link_stand_beside_the_file_itself(tmp_path: Path) -> None:
    (tmp_path / "job").mkdir()
    written(tmp_path / "job", {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    file = written(tmp_path / "job", merged(SMALL, {"firm": "firm.yaml"}))
    written(tmp_path, {"format": 1, "tank": {"lined": "no"}}, "firm.yaml")
    (tmp_path / "now.yaml").symlink_to(file)
    assert pipeline.read(tmp_path / "now.yaml").value(("tank", "lined")) is True
    (tmp_path / "job" / "firm.yaml").unlink()
    with pytest.raises(Refused) as refused:
        pipeline.read(tmp_path / "now.yaml")
    (problem,) = refused.value.problems
    assert problem.message == "'firm.yaml' does not exist"
    assert str(tmp_path / "job") in problem.hint
    assert (problem.file, problem.path, problem.line) == ("now.yaml", "firm", 12)  # the last line


@pytest.mark.parametrize("name", ["firm.yaml/", "firm.yaml/."])
def test_a_slash_behind_the_name_of_a_side_file_is_told(name: str, tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    with pytest.raises(Refused, match="names a folder") as refused:
        pipeline.read(written(tmp_path, merged(SMALL, {"firm": name})))
    assert refused.value.problems[0].path == "firm"


@pytest.mark.parametrize("behind", ["/", "/.", "//"])
@pytest.mark.parametrize("words", [
    ("check", "{}"), ("new", "{}"), ("calc", "joint-width", "--from", "{}"), ("build", "{}", "--out", "out"),
    ("build", "p.yaml", "--out", "out", "--letterhead", "{}"),
], ids=lambda words: " ".join(words))  # fmt: skip
def test_a_slash_behind_the_name_of_a_file_is_told(
    words: tuple[str, ...], behind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: Any
) -> None:
    written(tmp_path, SMALL, "p.yaml")
    monkeypatch.chdir(tmp_path)
    done = run_main(capsys, *(word.format("p.yaml" + behind) for word in words))
    said = f"specgen: p.yaml{behind}: a slash follows the name of the file (write p.yaml)\n"
    assert (done.code, done.out, done.err) == (2, "", said)
    assert sorted(file.name for file in tmp_path.iterdir()) == ["p.yaml"]


# Names that file managers give their own files: common practice, no source.
def test_what_a_file_manager_drops_into_a_package_is_told_when_it_goes(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    words = words_of_build(written(tmp_path, SMALL), out)
    assert ".DS_Store" not in run_main(capsys, *words).err
    (out / ".DS_Store").write_bytes(b"view")
    (out / "Thumbs.db").write_bytes(b"view")
    told = run_main(capsys, *words).err.splitlines()
    assert told[1] == f"specgen: .DS_Store and Thumbs.db, put into {out} by a file manager, were removed"


def test_a_folder_of_templates_that_holds_a_whole_disk_is_told(tmp_path: Path) -> None:
    for number in range(501):
        (tmp_path / f"{number}.md").write_text("x")
    with pytest.raises(Refused, match="holds more than 500 files") as refused:
        check_folder(tmp_path, templates_folder())
    assert len(refused.value.problems) == 1


class _Sent:
    """What is sent to standard input."""

    def __init__(self, content: bytes) -> None:
        self.buffer = io.BytesIO(content)

    def isatty(self) -> bool:
        return False


def test_standard_input_is_read_up_to_its_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    use = FileUse("the file", "name a file", 8)
    monkeypatch.setattr("sys.stdin", _Sent(b"8 bytes."))
    assert read_given_file(Path("-"), use) == b"8 bytes."
    monkeypatch.setattr("sys.stdin", _Sent(b"9 bytes.."))
    with pytest.raises(Refused):
        read_given_file(Path("-"), use)
