"""What builds that died left behind: cleared by our mark alone, and only where none of them lives. Behavior of ours."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.output import disk
from specgen.output.workplace import make_workplace
from tests.documents.support import ONE, TWO, standing


@pytest.fixture
def left(out: Path) -> Path:
    """The temporary folder of a build of `out` that died while it wrote."""
    made = make_workplace(out)
    (made / "new").mkdir()
    (made / "new" / "a.txt").write_bytes(b"half")
    return made


def cut_mark(left: Path) -> None:
    shutil.rmtree(left / "new")
    (left / "mark").write_bytes((left / "mark").read_bytes()[:5])


def whole_package(left: Path) -> None:
    shutil.rmtree(left / "new")
    disk.write_package(left / "new", ONE, {})


# All states in which the end of a process may leave the folder.
DIED: dict[str, Callable[[Path], object]] = {
    "while it wrote": lambda left: None,
    "before its mark": lambda left: [shutil.rmtree(left / "new"), (left / "mark").unlink()],
    "in the middle of its mark": cut_mark,
    "before its first file": lambda left: (left / "new" / "a.txt").unlink(),
    "in the middle of its manifest": lambda left: (left / "manifest.json").write_bytes(b"{"),
    "before it was moved into place": whole_package,
    "while the old package was cleared": lambda left: shutil.copytree(left.parent / "out", left / "old"),
}


@pytest.mark.parametrize("when", DIED)
def test_what_a_dead_build_left_is_cleared(when: str, left: Path, out: Path) -> None:
    DIED[when](left)
    disk.write_package(out, TWO, {})
    assert [p.name for p in out.parent.iterdir()] == ["out"]
    assert (out / "a.txt").read_bytes() == b"two"


def turn_into_link(left: Path) -> None:
    left.rename(left.parent / "elsewhere")
    left.symlink_to("elsewhere")


def turn_into_file(left: Path) -> None:
    shutil.rmtree(left)
    left.write_bytes(b"mine")


def link_mark(left: Path) -> None:
    (left / "mark").rename(left.parent / "mark")
    (left / "mark").symlink_to("../mark")


def link_package(left: Path) -> None:
    shutil.rmtree(left / "new")
    (left.parent / "mine").mkdir()
    (left.parent / "mine" / "a.txt").write_bytes(b"mine")
    (left / "new").symlink_to("../mine")


def make_mark_folder(left: Path) -> None:
    (left / "mark").unlink()
    (left / "mark").mkdir()


def edit_old_package(left: Path) -> None:
    shutil.copytree(left.parent / "out", left / "old")
    (left / "old" / "a.txt").write_bytes(b"mine")


# What looks like a leftover and is none, or holds work of the user.
ALIKE: dict[str, Callable[[Path], object]] = {
    "a link": turn_into_link,
    "a file": turn_into_file,
    "no mark": lambda left: (left / "mark").unlink(),
    "a mark of another text": lambda left: (left / "mark").write_bytes(b"mine"),
    "a mark and more": lambda left: (left / "mark").write_bytes((left / "mark").read_bytes() + b"0"),
    "a mark cut short beside files": lambda left: (left / "mark").write_bytes(b""),
    "a mark that is a link": link_mark,
    "a mark that is a folder": make_mark_folder,
    "a note beside the mark": lambda left: (left / "note.txt").write_bytes(b"mine"),
    "a link for the package": link_package,
    "a name that is not ours": lambda left: left.rename(left.parent / ".specgen-abc-new"),
    "an old package that was edited": edit_old_package,
}


@pytest.mark.parametrize("how", ALIKE)
def test_what_only_looks_left_behind_stays_as_it_is(how: str, left: Path, out: Path) -> None:
    ALIKE[how](left)
    before = {name: what for name, what in standing(out.parent).items() if not name.startswith("out")}
    assert before
    disk.write_package(out, TWO, {})
    assert {name: what for name, what in standing(out.parent).items() if not name.startswith("out")} == before
    assert (out / "a.txt").read_bytes() == b"two"


@pytest.mark.parametrize("name", [".specgen-new", ".specgen--new", ".specgen-abc-new", ".specgen-abc-old"])
def test_an_empty_folder_of_a_like_name_stays(name: str, out: Path) -> None:
    (out.parent / name).mkdir()
    disk.write_package(out, TWO, {})
    assert sorted(p.name for p in out.parent.iterdir()) == [name, "out"]


def test_the_leftover_of_another_package_stays(left: Path, out: Path) -> None:
    before = standing(left)
    disk.write_package(out.parent / "other", ONE, {})
    assert standing(left) == before
    # Its mark under the name of a leftover of ours makes it none.
    posing = make_workplace(out.parent / "other")
    (left / "mark").write_bytes((posing / "mark").read_bytes())
    disk.write_package(out, TWO, {})
    assert left.is_dir()


def test_a_mark_that_is_a_pipe_holds_no_build_up(left: Path, out: Path) -> None:
    (left / "mark").unlink()
    os.mkfifo(left / "mark")
    disk.write_package(out, TWO, {})
    assert (left / "mark").is_fifo()
    assert (left / "new" / "a.txt").read_bytes() == b"half"


def test_a_leftover_that_cannot_be_read_hinders_no_build(
    left: Path, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened = Path.open

    def denied(path: Path, *how: str, **more: str) -> object:
        if path == left / "mark":
            raise PermissionError(13, "Permission denied")
        return opened(path, *how, **more)

    monkeypatch.setattr(Path, "open", denied)
    before = standing(left / "new")
    disk.write_package(out, TWO, {})
    assert standing(left / "new") == before
    assert (out / "a.txt").read_bytes() == b"two"


def test_a_package_that_a_dead_build_had_moved_aside_comes_back(left: Path, out: Path) -> None:
    before = standing(out)
    out.rename(left / "old")
    with pytest.raises(Refused, match="cannot be the name"):
        disk.write_package(out, {"/": b""}, {})
    assert not out.exists()
    (left / "old" / "a.txt").write_bytes(b"mine")
    with pytest.raises(Refused, match="edited by hand"):
        disk.write_package(out, TWO, {})
    assert [p.name for p in out.parent.iterdir()] == ["out"]
    (out / "a.txt").write_bytes(b"one")
    assert standing(out) == before
