"""A file that was edited takes the place of the old one in one step, and nothing of the user's is lost."""

import os
import stat
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.output import edited_file
from specgen.output.edited_file import write_edited

OLD, NEW = b"format: 1\r\n", b"format: 1\r\nfirm:\r\n"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    (tmp_path / "p.yaml").write_bytes(OLD)
    return tmp_path / "p.yaml"


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_the_file_as_it_was_stands_beside_the_edited_one(file: Path) -> None:
    kept = write_edited(file, OLD, NEW)
    assert file.read_bytes() == NEW
    assert (file.parent / kept).read_bytes() == OLD
    assert names(file.parent) == ["p.yaml", "p.yaml.before"]


def test_each_copy_has_a_name_of_its_own(file: Path) -> None:
    other = NEW + b"# more\n"
    assert [write_edited(file, OLD, NEW), write_edited(file, NEW, other), write_edited(file, other, OLD)] == [
        "p.yaml.before",
        "p.yaml.before-2",
        "p.yaml.before-3",
    ]
    assert (file.parent / "p.yaml.before").read_bytes() == OLD
    assert (file.parent / "p.yaml.before-2").read_bytes() == NEW


def test_a_copy_of_the_same_content_is_not_written_again(file: Path) -> None:
    told = [write_edited(file, OLD, NEW), write_edited(file, NEW, OLD), write_edited(file, OLD, NEW)]
    assert told == ["p.yaml.before", "p.yaml.before-2", "p.yaml.before"]
    assert names(file.parent) == ["p.yaml", "p.yaml.before", "p.yaml.before-2"]


def test_a_file_that_changed_meanwhile_is_left_alone(file: Path) -> None:
    file.write_bytes(b"format: 1\nmine: yes\n")
    with pytest.raises(Refused, match=r"the file has changed since it was read \(save it in your editor"):
        write_edited(file, OLD, NEW)
    assert file.read_bytes() == b"format: 1\nmine: yes\n"
    assert names(file.parent) == ["p.yaml"]


def test_a_file_that_is_gone_is_not_made_again(file: Path) -> None:
    file.unlink()
    with pytest.raises(Refused, match="nothing was written"):
        write_edited(file, OLD, NEW)
    assert names(file.parent) == []


def test_a_link_stays_a_link_and_the_copy_stands_beside_the_file(file: Path, tmp_path: Path) -> None:
    away = tmp_path / "away"
    away.mkdir()
    link = away / "link.yaml"
    link.symlink_to(file)
    write_edited(link, OLD, NEW)
    assert link.is_symlink()
    assert file.read_bytes() == NEW
    assert names(away) == ["link.yaml"]


def test_rights_stay_as_they_were(file: Path) -> None:
    file.chmod(0o640)
    write_edited(file, OLD, NEW)
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


def test_a_protected_file_is_not_replaced(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # A test may run as one who may write everywhere; so the answer of the system is given here.
    monkeypatch.setattr(edited_file.os, "access", lambda path, how: how != os.W_OK)
    with pytest.raises(Refused, match="write-protected"):
        write_edited(file, OLD, NEW)
    assert (file.read_bytes(), names(file.parent)) == (OLD, ["p.yaml"])


@pytest.mark.parametrize("call", ["write_bytes", "chmod", "replace"])
def test_a_disk_that_fails_leaves_all_as_it_was(call: str, file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(edited_file if call == "write_bytes" else Path, call, fail)
    with pytest.raises(Refused, match=r"nothing was written: No space left on device \(make room"):
        write_edited(file, OLD, NEW)
    assert (file.read_bytes(), names(file.parent)) == (OLD, ["p.yaml"])
