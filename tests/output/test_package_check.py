"""`check --package`: what of a package is not as it was written, and from what it was made. Behavior of ours."""

import json
import shutil
import unicodedata
from contextlib import chdir
from pathlib import Path
from typing import Any

import pytest

from specgen.output import disk
from tests.output.manifests import forge, manifest_of
from tests.running import Ended, run_main
from tests.support import SMALL, merged, written

SIDED = merged(SMALL, {"firm": "firm.yaml"})
FIRM = {"format": 1, "compressor": {"air_flow": "26 cfm"}}
D10 = "D10-mockup-acceptance-form.txt"


@pytest.fixture
def package(tmp_path: Path, capsys: Any) -> Path:
    """A package of one document, made from two files beside it."""
    written(tmp_path, FIRM, "firm.yaml")
    out = tmp_path / "out"
    file = written(tmp_path, SIDED)
    done = run_main(capsys, "build", str(file), "--out", str(out), "--formats", "txt", "--only", "D10")
    assert done.code == 0, done.err
    return out


def checked(capsys: Any, folder: Path, *more: str) -> Ended:
    return run_main(capsys, "check", "--package", str(folder), *more)


def data_of(capsys: Any, folder: Path, *more: str) -> Any:
    return json.loads(checked(capsys, folder, *more, "--format", "json").out)


def test_a_package_as_it_was_written_is_told_so_in_one_line(package: Path, tmp_path: Path, capsys: Any) -> None:
    done = checked(capsys, package)
    assert (done.code, done.out, done.err) == (0, f"{package}: 1 file, as written by specgen 0.1.0\n", "")
    done = checked(capsys, package, str(tmp_path / "project.yaml"))
    says = f"{package}: 1 file, as written by specgen 0.1.0 from project.yaml, firm.yaml, unchanged\n"
    assert (done.code, done.out) == (0, says)


def test_files_that_were_edited_added_or_taken_out_are_named(package: Path, capsys: Any) -> None:
    (package / "notes.txt").write_text("mine")
    (package / D10).write_text("mine")
    done = checked(capsys, package)
    says = f"{package}: not as written by specgen 0.1.0\n  added: notes.txt\n  edited: {D10}\n"
    assert (done.code, done.out) == (1, says)
    (package / D10).unlink()
    data = data_of(capsys, package)
    assert data == {
        "format": 1,
        "package": str(package),
        "errors": [],
        "as_written": False,
        "specgen": "0.1.0",
        "files": 1,
        "added": ["notes.txt"],
        "edited": [],
        "open": [],
        "missing": [D10],
        "input": None,
    }


def test_an_edited_manifest_is_told_with_what_that_means(package: Path, capsys: Any) -> None:
    text = (package / "manifest.json").read_text("utf-8")
    (package / "manifest.json").write_text(text.replace("0.1.0", "0.1.1"), "utf-8")
    done = checked(capsys, package)
    assert done.code == 1
    assert "  edited: manifest.json\n" in done.out
    assert "manifest.json was edited itself: what it lists is not to be relied on\n" in done.out


def test_project_files_that_changed_since_are_named(package: Path, tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SIDED, {"project": {"name": "Other"}}))
    done = checked(capsys, package, str(file))
    says = f"{package}: 1 file, as written by specgen 0.1.0; what it was made from has changed since\n"
    assert (done.code, done.out) == (1, f"{says}  project file changed since: project.yaml\n")
    assert data_of(capsys, package, str(file))["as_written"] is True
    written(tmp_path, SIDED)
    written(tmp_path, FIRM | {"compressor": {"air_flow": "27 cfm"}}, "firm.yaml")
    assert data_of(capsys, package, str(file))["input"] == [
        {"file": "project.yaml", "state": "same"},
        {"file": "firm.yaml", "state": "changed"},
    ]
    (tmp_path / "firm.yaml").unlink()
    done = checked(capsys, package, str(file))
    assert (done.code, done.out.splitlines()[1]) == (1, "  project file missing since: firm.yaml")


def test_a_project_file_that_is_not_there_is_refused(package: Path, tmp_path: Path, capsys: Any) -> None:
    done = checked(capsys, package, str(tmp_path / "no.yaml"))
    assert (done.code, done.out) == (2, "")
    assert "no.yaml: the file cannot be read: No such file" in done.err
    data = data_of(capsys, package, str(tmp_path / "no.yaml"))
    assert (data["as_written"], data["specgen"], len(data["errors"])) == (False, None, 1)


def test_a_package_of_drawings_does_not_tell_what_it_was_made_from(tmp_path: Path, capsys: Any) -> None:
    disk.write_package(tmp_path / "out", {"E1.svg": b"<svg/>"}, {"format": 1})
    done = checked(capsys, tmp_path / "out")
    assert (done.code, done.out) == (0, f"{tmp_path / 'out'}: 1 file, as written by an earlier version\n")
    done = checked(capsys, tmp_path / "out", str(written(tmp_path, SMALL)))
    assert (done.code, done.out) == (2, "")
    assert "does not tell what it was made from (leave out the project file)" in done.err


# Names that a manifest of somebody else may list; none is looked for outside the folder of the project.
@pytest.mark.parametrize("name", ["../secret.yaml", "/etc/hostname", "a\0b", "x" * 5_000, "link.yaml"])
def test_no_file_outside_the_folder_is_looked_at(name: str, package: Path, tmp_path: Path, capsys: Any) -> None:
    (tmp_path.parent / "secret.yaml").write_text("mine")
    (tmp_path / "link.yaml").symlink_to("../secret.yaml")
    inputs = manifest_of(package)["input"]
    forge(package, input=[inputs[0], {"use": "firm", "file": name, "sha256": "0"}])
    data = data_of(capsys, package, str(tmp_path / "project.yaml"))
    assert data["input"][1] == {"file": data["input"][1]["file"], "state": "missing"}


@pytest.mark.parametrize("listed", [7, [], [7], [{"file": 7, "sha256": "x"}], {"file": "x"}])
def test_inputs_of_another_kind_are_refused(listed: Any, package: Path, tmp_path: Path, capsys: Any) -> None:
    forge(package, input=listed)
    done = checked(capsys, package, str(tmp_path / "project.yaml"))
    assert (done.code, done.out) == (2, "")
    assert "does not tell what it was made from" in done.err


def test_digests_that_are_no_text_count_as_another_file(package: Path, capsys: Any) -> None:
    forge(package, files={D10: ["x"], "..": 7})
    data = data_of(capsys, package)
    assert (data["edited"], data["missing"]) == ([D10], [".."])


def test_a_thousand_files_are_held_against_the_manifest(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    disk.write_package(out, {f"{number}.txt": b"one" for number in range(1_000)}, {"format": 1})
    for number in range(100):
        (out / f"{number}.txt").write_bytes(b"two")
    done = checked(capsys, out)
    assert done.code == 1
    assert len(done.out.splitlines()) == 22
    assert done.out.endswith("  edited: 80 more\n")
    assert len(data_of(capsys, out)["edited"]) == 100


# The two forms that systems give the letters of a name: Unicode Standard Annex 15.
@pytest.mark.parametrize(("written_as", "found_as"), [("NFC", "NFD"), ("NFD", "NFC")])
def test_a_copy_may_take_the_letters_of_a_name_apart(
    written_as: Any, found_as: Any, tmp_path: Path, capsys: Any
) -> None:
    was, now = (f"{unicodedata.normalize(form, 'Façade é')}.txt" for form in (written_as, found_as))
    disk.write_package(tmp_path / "out", {was: b"one"}, {"format": 1})
    (tmp_path / "out" / was).rename(tmp_path / "out" / now)
    assert checked(capsys, tmp_path / "out").code == 0
    # A second file of that name is one that was added.
    shutil.copy(tmp_path / "out" / now, tmp_path / "out" / was)
    assert data_of(capsys, tmp_path / "out")["added"] == [now]


def test_a_build_replaces_a_package_whose_names_were_taken_apart(tmp_path: Path) -> None:
    out, name = tmp_path / "out", unicodedata.normalize("NFC", "é.txt")
    disk.write_package(out, {name: b"one"}, {})
    (out / name).rename(out / unicodedata.normalize("NFD", name))
    disk.write_package(out, {name: b"two"}, {})
    assert {file.name: file.read_bytes() for file in out.glob("*.txt")} == {name: b"two"}


def test_what_an_interrupted_build_left_is_no_package(tmp_path: Path, capsys: Any) -> None:
    left = tmp_path / ".specgen-0123456789ab-x-new" / "new"
    left.mkdir(parents=True)
    (left / D10).write_text("half")
    done = checked(capsys, left)
    assert (done.code, done.out) == (2, "")
    assert "the folder holds no package: it has no manifest.json" in done.err


def test_a_check_without_a_file_asks_for_one(tmp_path: Path, capsys: Any) -> None:
    with chdir(tmp_path):
        done = run_main(capsys, "check")
    assert (done.code, done.out) == (2, "")
    told = "FILE must be given: there is no project.yaml in this folder"
    assert done.err == f"specgen: {told} (specgen new project.yaml writes one to begin with)\n"
