"""What is told where a package, a drawing or a file of the user cannot be written, or is none of ours."""

import errno
import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import chdir
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

from specgen.output import disk
from specgen.output.edited_file import write_edited
from specgen.output.issued import read_issued
from specgen.output.os_errors import refuse_write
from specgen.output.package_check import check_package
from specgen.output.sheet_folder import write_sheets
from tests.commands import test_layout
from tests.commands.test_compare import HOSTILE, RAW
from tests.documents.support import ONE, TWO
from tests.mistakes.telling import FOLDER, call, in_file, tell, tell_refused
from tests.output.manifests import forge, manifest_of
from tests.output.spoiled import SPOILED, make_huge
from tests.output.test_disk_places import ALIKE, NO_NAMES
from tests.support import SMALL, written

# What a system tells where it does not write.
ERRORS = [
    *(
        errno.ENOSPC,
        errno.EDQUOT,
        errno.EFBIG,
        errno.EACCES,
        errno.EPERM,
        errno.EROFS,
        errno.ENOENT,
        errno.ENAMETOOLONG,
    ),
    *(errno.ENOTEMPTY, errno.EIO),
]
OUT_OF_FILES = {"input": 7}
TWINS = {
    **test_layout.PROJECT,
    "elevations": {mark: test_layout.FACE | {"facing": side} for mark, side in (("A/1", "N"), ("A-1", "S"))},
    "joints": {},
    "site": {"latitude": "40 deg"},
    "schedule": {"shift_start": "06:00", "shift_hours": 10},
    "weather": {"max_spray_wind": "8 mph"},
    "shade": {"S1": {"elevation": "A-1", "kind": "shade_cloth"}},
}


def tell_packages() -> Iterator[str]:
    """Folders in which a package is not written."""
    for about, (spoil, _) in SPOILED.items():
        yield tell_refused(about, lambda folder, spoil=spoil: write_over(folder, spoil))
    for pair in ALIKE:
        yield tell_refused(
            " ".join(pair), lambda folder, pair=pair: disk.write_package(folder / "out", dict.fromkeys(pair, b""), {})
        )
    for name in NO_NAMES:
        yield tell_refused(name, lambda folder, name=name: disk.write_package(folder / "out", {name: b""}, {}))
    yield tell_refused("a file in its place", lambda folder: write_over(folder / "a", lambda out: turn_into_file(out)))
    yield tell_refused("a link to itself", lambda folder: write_over(folder, link_to_itself))
    yield tell_refused("the folder one stands in", write_here)
    with patch.object(Path, "is_mount", lambda path: path.name == "out"):
        yield tell_refused("a drive", lambda folder: write_over(folder, lambda out: None))
    with patch.object(os, "access", lambda path, how: how == os.R_OK):
        yield tell_refused("a folder that is write-protected", lambda folder: write_over(folder, lambda out: None))
        yield tell_refused("a file that is write-protected", lambda folder: edit(folder, b"old"))
    yield tell_refused("a file changed meanwhile", lambda folder: edit(folder, b"mine"))
    yield tell_refused("sheets over a package", write_sheets_over)
    yield tell_refused("a sheet far too large", add_to_huge_sheets)
    for number in ERRORS:
        refused = refuse_write(Path("FILE"), OSError(number, os.strerror(number)))
        yield tell(os.strerror(number), *map(in_file, refused.problems))


def write_over(folder: Path, spoil: Callable[[Path], object]) -> None:
    """Write a package over one of which something has become."""
    disk.write_package(folder / "out", ONE, {"format": 1})
    spoil(folder / "out")
    disk.write_package(folder / "out", TWO, {"format": 1})


def turn_into_file(out: Path) -> None:
    """A file in the place of the package."""
    shutil.rmtree(out)
    out.write_bytes(b"mine")


def link_to_itself(out: Path) -> None:
    """A link that leads back to itself in the place of the package."""
    shutil.rmtree(out)
    out.symlink_to("out")


def write_here(folder: Path) -> None:
    """Write a package over the folder one stands in."""
    with chdir(folder):
        disk.write_package(folder, ONE, {})


def edit(folder: Path, found: bytes) -> None:
    """Edit a file that was read as `old`."""
    (folder / "p.yaml").write_bytes(found)
    write_edited(folder / "p.yaml", b"old", b"new")


def add_to_huge_sheets(folder: Path) -> None:
    """Add sheets to others of which one has become far too large."""
    write_sheets(folder / "out", ONE, "Trial", "sheets", add=True)
    make_huge(folder / "out")
    write_sheets(folder / "out", {"c.txt": b"new"}, "Trial", "sheets", add=True)


def write_sheets_over(folder: Path) -> None:
    """Write sheets where a package stands."""
    disk.write_package(folder, ONE, {"format": 1})
    write_sheets(folder, TWO, "Trial", "sheets", add=False)


def tell_manifests() -> Iterator[str]:
    """Packages that were issued and cannot be read back."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        file = written(folder, SMALL)
        call("build", str(file), "--out", str(folder / "issued"), "--formats", "txt", "--only", "D08", "--draft")
        for about, (changes, _) in HOSTILE.items():
            yield tell_refused(about, lambda at, changes=changes: read_forged(folder / "issued", at / "out", changes))
        for about, content in RAW.items():
            yield tell_refused(about, lambda at, content=content: read_raw(at, content))
        yield tell_refused("no manifest", read_issued)
        yield tell_refused("no folder", lambda at: read_issued(at / "none"))
        yield tell_refused("edited", lambda at: read_edited(folder / "issued", at / "out"))
        yield tell_refused("no files it was made from", lambda at: check_forged(folder / "issued", at / "out", file))
        yield tell_refused("a side file far too large", lambda at: check_huge(folder / "issued", at / "out", file))


def read_forged(issued: Path, copy: Path, changes: dict[str, Any]) -> None:
    """Read a copy of a package whose manifest says something else."""
    shutil.copytree(issued, copy)
    forge(copy, **changes)
    read_issued(copy)


def check_forged(issued: Path, copy: Path, project: Path) -> None:
    """Check a copy of a package that does not tell what it was made from."""
    shutil.copytree(issued, copy)
    forge(copy, **OUT_OF_FILES)
    check_package(copy, project)


def check_huge(issued: Path, copy: Path, project: Path) -> None:
    """Check a copy of a package one of whose side files has become far too large."""
    shutil.copytree(issued, copy)
    forge(copy, input=[*manifest_of(copy)["input"], {"use": "firm", "file": "huge.yaml", "sha256": "0"}])
    with project.with_name("huge.yaml").open("wb") as file:
        file.truncate(200_000_001)
    check_package(copy, project)


def read_edited(issued: Path, copy: Path) -> None:
    """Read a copy of a package whose manifest was edited."""
    shutil.copytree(issued, copy)
    manifest = copy / "manifest.json"
    manifest.write_text(manifest.read_text("utf-8").replace('"draft": true', '"draft": false'), "utf-8")
    read_issued(copy)


def read_raw(folder: Path, content: bytes) -> None:
    """Read a package whose manifest is these bytes."""
    (folder / "manifest.json").write_bytes(content)
    read_issued(folder)


def tell_twins() -> Iterator[str]:
    """Files of one name from marks that differ."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        file = written(folder, TWINS)
        (folder / "hours.csv").write_text("time,air F,rh,wind mph\n2027-06-14 07:00,60,60,5\n", "utf-8")
        weather = ("weather", str(file), "--hours", str(folder / "hours.csv"))
        for words in (("layout", str(file)), weather):
            said = call(*words, "--out", str(folder / "out"))[1].replace(name, FOLDER)
            yield f"{words[0]}\n{said}"
