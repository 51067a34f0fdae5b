"""Where a package may stand, and how its files may be called. All of it is behavior of ours."""

import os
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.output import disk
from specgen.output.manifest import index_files
from tests.documents.support import ONE, TWO, refused


def test_a_link_to_a_folder_stays_a_link(tmp_path: Path, way: str) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "out").symlink_to("real")
    for files in (ONE, TWO):
        disk.write_package(tmp_path / "out", files, {})
        assert (tmp_path / "out").is_symlink()
        assert (tmp_path / "real" / "a.txt").read_bytes() == files["a.txt"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out", "real"]


def test_a_link_above_the_folder_is_followed(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "way").symlink_to("real")
    disk.write_package(tmp_path / "way" / "x" / ".." / "out", ONE, {})
    assert (tmp_path / "real" / "out" / "a.txt").read_bytes() == b"one"


def test_a_link_to_nowhere_is_followed_and_one_to_itself_refused(tmp_path: Path) -> None:
    (tmp_path / "out").symlink_to("none")
    disk.write_package(tmp_path / "out", ONE, {})
    assert (tmp_path / "none" / "a.txt").read_bytes() == b"one"
    (tmp_path / "turn").symlink_to("turn")
    refused(tmp_path / "turn", "the link leads back to itself")


def test_names_as_long_as_the_disk_allows_are_written(tmp_path: Path) -> None:
    longest = "x" * os.pathconf(tmp_path, "PC_NAME_MAX")
    for _ in range(2):
        disk.write_package(tmp_path / longest, ONE, {})
    assert [p.name for p in tmp_path.iterdir()] == [longest]


@pytest.mark.parametrize("name", ["x" * 300, "/".join(["x" * 200] * 30)], ids=["name", "path"])
def test_a_path_that_is_too_long_is_told(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=r"File name too long \(give a shorter path\)"):
        disk.write_package(tmp_path / name, ONE, {})
    assert list(tmp_path.iterdir()) == []


def test_the_folder_one_stands_in_is_not_taken_away(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "out").mkdir()
    monkeypatch.chdir(tmp_path / "out")
    refused(tmp_path / "out", "the folder you are in")
    disk.write_package(Path("inside"), ONE, {})
    assert (tmp_path / "out" / "inside" / "a.txt").read_bytes() == b"one"


@pytest.mark.parametrize("root", ["/", "//", "/.."])
def test_the_root_of_a_drive_is_not_taken_away(root: str) -> None:
    before = sorted(p.name for p in Path("/").iterdir())
    with pytest.raises(Refused, match=r"a drive of its own \(give a folder inside it\)"):
        disk.write_package(Path(root), ONE, {})
    assert sorted(p.name for p in Path("/").iterdir()) == before


def test_a_link_to_a_file_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "mine").write_bytes(b"mine")
    (tmp_path / "out").symlink_to("mine")
    refused(tmp_path / "out", "a file stands")


def test_a_name_that_the_system_cannot_spell_is_told(out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def spell(made: Path) -> None:
        "\u00e4".encode("ascii")

    monkeypatch.setattr(disk, "make_workplace", spell)
    refused(out, r"a name has letters that this system does not take \(set its language")


def test_a_drive_is_not_taken_away(out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Path, "is_mount", lambda path: path == out)
    refused(out, r"a drive of its own \(give a folder inside it\)")


ALIKE = [("D01-a.txt", "d01-A.txt"), ("\u00e4.txt", "a\u0308.txt"), ("a.txt", "Manifest.json")]


@pytest.mark.parametrize("pair", ALIKE, ids=str)
def test_names_that_only_differ_in_case_or_form_are_refused(pair: tuple[str, str], tmp_path: Path) -> None:
    with pytest.raises(Refused, match="would have one name"):
        disk.write_package(tmp_path / "out", dict.fromkeys(pair, b""), {})
    assert list(tmp_path.iterdir()) == []


NO_NAMES = ["a/b.txt", "../b.txt", ".b.txt", "a:b.txt", "a\\b.txt", "b\0.txt"]


@pytest.mark.parametrize("name", NO_NAMES)
def test_a_name_that_some_disks_do_not_take_is_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match="cannot be the name of a file"):
        disk.write_package(tmp_path / "out", {name: b""}, {})
    assert list(tmp_path.iterdir()) == []


def test_two_documents_of_one_name_are_refused_before_one_hides_the_other() -> None:
    with pytest.raises(Refused, match=r"would have one name: a\.txt and a\.txt \(give one of the documents"):
        index_files([("a.txt", b"one"), ("a.txt", b"other")])
