"""A whole package or nothing, and nothing of the user's lost."""

import json
from pathlib import Path

import pytest

from specgen.vocabulary.problem import Refused
from specgen.writing import disk


def test_a_package_holds_its_files_and_their_digests(tmp_path: Path) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {"format": 1})
    manifest = json.loads((tmp_path / "out" / "manifest.json").read_text("utf-8"))
    # SHA-256 of "one": computed with the sha256sum command of the GNU core utilities.
    assert manifest["files"] == {"a.txt": "7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed"}
    assert sorted(p.name for p in (tmp_path).iterdir()) == ["out"]


def test_a_second_package_takes_the_place_of_the_first(tmp_path: Path) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one", "b.txt": b"old"}, {})
    disk.write_package(tmp_path / "out", {"a.txt": b"two"}, {})
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == ["a.txt", "manifest.json"]
    assert (tmp_path / "out" / "a.txt").read_bytes() == b"two"


def test_a_file_edited_since_is_kept(tmp_path: Path) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {})
    (tmp_path / "out" / "a.txt").write_bytes(b"mine")
    with pytest.raises(Refused, match="edited by hand"):
        disk.write_package(tmp_path / "out", {"a.txt": b"two"}, {})
    assert (tmp_path / "out" / "a.txt").read_bytes() == b"mine"


@pytest.mark.parametrize("name", ["notes.txt", "manifest.json"])
def test_a_folder_of_other_files_is_left_alone(name: str, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / name).write_bytes(b"mine")
    with pytest.raises(Refused, match="did not write"):
        disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {})
    assert [p.name for p in (tmp_path / "out").iterdir()] == [name]


def test_a_file_in_the_place_of_the_folder_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"mine")
    with pytest.raises(Refused, match="a file stands"):
        disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {})
    assert (tmp_path / "out").read_bytes() == b"mine"


def test_a_failure_in_the_middle_leaves_the_old_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {})
    write = Path.write_bytes

    def full(path: Path, content: bytes) -> int:
        if path.name == "b.txt":
            raise OSError(28, "No space left on device")
        return write(path, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(Refused, match="No space left"):
        disk.write_package(tmp_path / "out", {"a.txt": b"two", "b.txt": b"three"}, {})
    monkeypatch.undo()
    assert (tmp_path / "out" / "a.txt").read_bytes() == b"one"
    assert sorted(p.name for p in (tmp_path).iterdir()) == ["out"]


def test_a_failed_exchange_puts_the_old_package_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    disk.write_package(tmp_path / "out", {"a.txt": b"one"}, {})
    rename = Path.rename

    def failing(path: Path, target: Path) -> Path:
        if path.name.startswith(".out-") and not path.name.endswith("-old"):
            raise OSError(13, "Permission denied")
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", failing)
    with pytest.raises(Refused, match="Permission denied"):
        disk.write_package(tmp_path / "out", {"a.txt": b"two"}, {})
    assert (tmp_path / "out" / "a.txt").read_bytes() == b"one"


def test_a_new_file_is_never_written_over_another(tmp_path: Path) -> None:
    (tmp_path / "x.yaml").write_text("mine")
    with pytest.raises(Refused, match="exists"):
        disk.write_new(tmp_path / "x.yaml", "ours")
    assert (tmp_path / "x.yaml").read_text() == "mine"
