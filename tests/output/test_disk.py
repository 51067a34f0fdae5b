"""A whole package or nothing, and nothing of the user's lost. All of it is behavior of ours."""

import errno
import fcntl
import json
import os
import shutil
import stat
from pathlib import Path
from typing import Any

import pytest

from specgen.model.problem import Refused
from specgen.output import disk, exchange
from specgen.output.workplace import make_workplace
from tests.documents.support import TWO, refused
from tests.output.spoiled import SPOILED


def test_a_package_holds_its_files_and_their_digests(tmp_path: Path) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {"format": 1})
    manifest = json.loads((tmp_path / "out" / "manifest.json").read_text("utf-8"))
    # SHA-256 of "one": computed with the sha256sum command of the GNU core utilities.
    assert manifest["files"] == {"a.txt": "7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed"}
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out"]


def test_a_second_package_takes_the_place_of_the_first(out: Path, way: str) -> None:
    disk.write_package(out, TWO, {})
    assert sorted(p.name for p in out.iterdir()) == ["a.txt", "c.txt", "manifest.json"]
    assert (out / "a.txt").read_bytes() == b"two"
    assert sorted(p.name for p in out.parent.iterdir()) == ["out"]


def test_the_rights_of_the_folder_stay_as_the_user_set_them(out: Path, way: str) -> None:
    out.chmod(0o750)
    disk.write_package(out, TWO, {})
    assert stat.S_IMODE(out.stat().st_mode) == 0o750


@pytest.mark.parametrize("how", SPOILED)
def test_a_package_that_is_not_as_it_was_written_is_kept(how: str, out: Path) -> None:
    spoil, said = SPOILED[how]
    spoil(out)
    refused(out, said)


def test_a_file_that_was_taken_out_is_written_again(out: Path) -> None:
    (out / "a.txt").unlink()
    disk.write_package(out, TWO, {})
    assert (out / "a.txt").read_bytes() == b"two"


@pytest.mark.parametrize("name", ["notes.txt", "manifest.json", "a.txt", ".hidden"])
def test_a_folder_of_other_files_is_left_alone(name: str, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / name).write_bytes(b"mine")
    refused(tmp_path / "out", "did not write")


def test_what_a_file_manager_drops_does_not_count(out: Path) -> None:
    (out / ".DS_Store").write_bytes(b"view")
    disk.write_package(out, TWO, {})
    assert sorted(p.name for p in out.iterdir()) == ["a.txt", "c.txt", "manifest.json"]


def test_a_file_in_the_place_of_the_folder_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"mine")
    refused(tmp_path / "out", "a file stands")
    refused(tmp_path / "out" / "deeper", "a file stands")


def test_folders_above_are_made_and_go_again_where_nothing_was_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "fsync", failing(errno.ENOSPC))
    with pytest.raises(Refused, match="No space left"):
        disk.write_package(tmp_path / "a" / "b" / "out", TWO, {})
    assert list(tmp_path.iterdir()) == []
    monkeypatch.undo()
    disk.write_package(tmp_path / "a" / "b" / "out", TWO, {})
    assert (tmp_path / "a" / "b" / "out" / "a.txt").read_bytes() == b"two"


def failing(number: int, after: int = 0) -> Any:
    """A call of the system that fails once it was called `after` times."""
    calls = []

    def call(*arguments: Any) -> None:
        calls.append(arguments)
        if len(calls) > after:
            raise OSError(number, os.strerror(number))

    return call


@pytest.mark.parametrize("after", [0, 1, 2])
@pytest.mark.parametrize(("number", "hint"), [(errno.ENOSPC, "room"), (errno.EDQUOT, "room"), (errno.EIO, "check")])
def test_a_full_or_broken_disk_leaves_the_old_package(
    number: int, hint: str, after: int, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "fsync", failing(number, after))
    refused(out, f"nothing was written: .*{hint}")


def test_a_folder_that_vanishes_in_the_middle_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", lambda _: shutil.rmtree(tmp_path / "a", ignore_errors=True))
    with pytest.raises(Refused, match="nothing was written: No such file"):
        disk.write_package(tmp_path / "a" / "out", TWO, {})
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("step", [0, 1, 2])
def test_an_exchange_that_fails_leaves_the_old_package(step: int, out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(exchange, "_exchange_at_once", lambda one, other: False)
    rename, calls = Path.rename, []

    def held(path: Path, target: Path) -> Path:
        calls.append(path)
        if len(calls) == step + 1:
            raise PermissionError(errno.EACCES, "Permission denied")
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", held)
    refused(out, r"nothing was written: Permission denied \(close documents that are open")


def test_an_edit_in_the_last_moment_is_kept(out: Path, way: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def late(one: Path, other: Path, aside: Path) -> None:
        if (other / "b.txt").exists():
            (other / "b.txt").write_bytes(b"mine")
        exchange.exchange_folders(one, other, aside)

    monkeypatch.setattr(disk, "exchange_folders", late)
    with pytest.raises(Refused, match=r"edited by hand since it was written: b\.txt"):
        disk.write_package(out, TWO, {})
    assert {f.name: f.read_bytes() for f in out.iterdir() if f.suffix == ".txt"} == {"a.txt": b"one", "b.txt": b"mine"}
    assert [p.name for p in out.parent.iterdir()] == ["out"]


@pytest.mark.parametrize("held", [True, False])
def test_a_build_waits_for_another_and_then_gives_up(held: bool, out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(exchange, "PATIENCE", 0.1)
    other = os.open(out.parent, os.O_RDONLY)
    try:
        if held:
            fcntl.flock(other, fcntl.LOCK_EX)
            refused(out, r"another build is writing in this folder \(wait")
        else:
            disk.write_package(out, TWO, {})
    finally:
        os.close(other)


def test_a_system_without_locks_writes_all_the_same(out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(fcntl, "flock", failing(errno.ENOLCK))
    left = make_workplace(out)
    disk.write_package(out, TWO, {})
    # Without a lock another build may be alive; what stands beside is not touched.
    assert sorted(p.name for p in out.parent.iterdir()) == [left.name, "out"]
    assert (out / "a.txt").read_bytes() == b"two"


def test_a_new_file_is_never_written_over_another(tmp_path: Path) -> None:
    (tmp_path / "x.yaml").write_text("mine")
    with pytest.raises(Refused, match="exists"):
        disk.write_new(tmp_path / "x.yaml", "ours")
    assert (tmp_path / "x.yaml").read_text() == "mine"


def test_a_new_file_on_a_full_disk_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", failing(errno.ENOSPC))
    with pytest.raises(Refused, match="nothing was written: No space left"):
        disk.write_new(tmp_path / "x.yaml", "ours")
    assert list(tmp_path.iterdir()) == []
