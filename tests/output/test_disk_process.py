"""Real processes that meet real hindrances: each ends with one message, and the folder stands as it was."""

import ctypes
import os
import resource
import shutil
import signal
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from specgen.output import disk, exchange
from specgen.output.manifest import is_spent
from tests.documents.support import standing
from tests.forking import Forked, fork_specgen
from tests.running import Ended, run_process, run_specgen, start_process, wait_for
from tests.support import SMALL, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover
# linux/prctl.h and linux/capability.h: drop a right for good; pass over the rights of files; read and search anywhere.
CAPBSET_DROP, DAC_OVERRIDE, DAC_READ_SEARCH = 24, 1, 2
# What stands in a package of one document in every format.
WHOLE = [*(f"D10-mockup-acceptance-form.{ending}" for ending in ("docx", "html", "txt")), "index.html", "manifest.json"]
# Writes the same package over and over.
AGAIN = """
import sys
from pathlib import Path
from specgen.output import disk, exchange
for _ in range(60):
    disk.write_package(Path(sys.argv[1]), {f"{sys.argv[2]}{n}.txt": sys.argv[2].encode() * 999 for n in range(4)}, {})
"""


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    """A folder whose parts can be taken away again, whatever rights a test gave them."""
    yield tmp_path
    for path in (tmp_path, *(p for p in tmp_path.rglob("*") if p.is_dir())):
        path.chmod(0o755)


@pytest.fixture
def project(folder: Path) -> Path:
    """A small project in a folder of its own, so that only the package stands where it is written."""
    (folder / "job").mkdir()
    (folder / "at").mkdir()
    return written(folder / "job", SMALL)


def words(project: Path, out: Path) -> list[str]:
    return ["build", str(project), "--out", str(out), "--only", "D10", "--formats", "docx,html,txt"]


def build(project: Path, out: Path, first: Callable[[], object] = tuple) -> Ended:
    """A build in a process of its own, which does `first` before anything else."""
    return fork_specgen(words(project, out), first).wait()


def refused(done: Ended, said: str) -> None:
    assert done.code == 2
    assert done.out == ""
    assert len(done.err.splitlines()) == 1
    assert said in done.err


def renewed(project: Path, out: Path) -> None:
    """The next build clears up and writes the whole package."""
    assert build(project, out).code == 0
    assert [p.name for p in out.parent.iterdir()] == [out.name]
    assert sorted(p.name for p in out.iterdir()) == WHOLE
    assert is_spent(out)


@pytest.mark.parametrize("first", [True, False], ids=["none before", "one before"])
def test_a_file_that_grows_beyond_what_is_allowed(first: bool, folder: Path, project: Path) -> None:
    if not first:
        assert build(project, folder / "at" / "out").code == 0
    before = standing(folder / "at")

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (2048, 2048))

    refused(build(project, folder / "at" / "out", limit), "nothing was written: File too large (make room")
    assert standing(folder / "at") == before


def mounted(place: Path, options: str) -> bool:
    """Whether a small disk in memory could be put there."""
    if os.getuid() != 0 or shutil.which("mount") is None:
        return False
    command = ["mount", "-t", "tmpfs", "-o", options, "tmpfs", str(place)]
    return run_process(command).code == 0


@pytest.fixture
def small_disk(folder: Path, project: Path) -> Iterator[Path]:
    """A disk of 28 kB: one small package fits, no more."""
    if not mounted(folder / "at", "size=28k"):
        pytest.skip("no disk may be mounted here")
    yield folder / "at"
    assert run_process(["umount", "-l", str(folder / "at")]).code == 0


def test_a_full_disk(small_disk: Path, project: Path) -> None:
    disk.write_package(small_disk / "out", {"a.txt": b"one"}, {})
    before = standing(small_disk)
    refused(build(project, small_disk / "out"), "nothing was written: No space left on device (make room")
    refused(build(project, small_disk / "x" / "y"), "nothing was written: No space left on device (make room")
    assert standing(small_disk) == before


def test_a_disk_that_may_only_be_read_and_one_that_is_the_folder_itself(small_disk: Path, project: Path) -> None:
    refused(build(project, small_disk), "the folder is a drive of its own (give a folder inside it)")
    disk.write_package(small_disk / "out", {"a.txt": b"one"}, {})
    before = standing(small_disk)
    assert run_process(["mount", "-o", "remount,ro", str(small_disk)]).code == 0
    refused(build(project, small_disk / "out"), "nothing was written: ")
    refused(build(project, small_disk / "new"), "nothing was written: Read-only file system (close documents")
    assert standing(small_disk) == before


def bound() -> None:
    """Makes the administrator keep to the rights of files as any user must."""
    if os.getuid() == 0:
        for right in (DAC_OVERRIDE, DAC_READ_SEARCH):
            ctypes.CDLL(None).prctl(CAPBSET_DROP, right, 0, 0, 0)


@pytest.mark.parametrize("closed", ["at", "at/out", "at/out/a.txt"])
def test_a_folder_one_may_not_write_to(closed: str, folder: Path, project: Path) -> None:
    out = folder / "at" / "out"
    disk.write_package(out, {"a.txt": b"one"}, {})
    rights = dict.fromkeys((folder / "at", out, out / "a.txt"), 0o777)
    rights[folder / closed] = 0o000 if closed.endswith("a.txt") else 0o555
    for path, mode in rights.items():
        path.chmod(mode)
    before = standing(folder / "at")
    try:
        done = run_specgen(*words(project, out), preexec_fn=bound)  # rights are lost where a program starts
    except PermissionError:
        pytest.skip("this Python stands where only the administrator may run it")
    refused(done, "nothing was written: ")
    assert standing(folder / "at") == before
    (out / "a.txt").chmod(0o644)


def held(project: Path, out: Path) -> Forked:
    """A build in the middle of its writing: it stops at its second flush to the disk and says so by a file."""
    said = project.parent / "said"

    def stop_at_second_flush() -> None:
        # A run in the background, or told to outlive its terminal, ignores these from the start.
        signal.signal(signal.SIGHUP, signal.SIG_DFL)
        flush, count = os.fsync, []
        woken, wakes = os.pipe()
        os.set_blocking(wakes, False)
        signal.set_wakeup_fd(wakes)

        def stop(descriptor: int) -> None:
            flush(descriptor)
            count.append(descriptor)
            if len(count) == 2:
                said.touch()
                os.read(woken, 1)  # until a signal comes, be it before this line

        os.fsync = stop

    running = fork_specgen(words(project, out), stop_at_second_flush)
    while not said.exists():
        assert running.poll() is None, running.wait()
        time.sleep(0.02)
    return running


@pytest.mark.parametrize(
    ("number", "first"),
    [(signal.SIGINT, False), (signal.SIGTERM, False), (signal.SIGTERM, True), (signal.SIGHUP, True)],
)
def test_a_build_that_is_asked_to_stop(number: signal.Signals, first: bool, folder: Path, project: Path) -> None:
    out = folder / "at" / "out"
    if not first:
        disk.write_package(out, {"a.txt": b"one"}, {})
    before = standing(folder / "at")
    running = held(project, out)
    assert standing(folder / "at") != before
    running.send_signal(number)
    assert running.wait() == (-number, "", "specgen: stopped; nothing was written\n")
    assert standing(folder / "at") == before


@pytest.mark.parametrize("first", [True, False], ids=["none before", "one before"])
def test_a_build_that_is_killed(first: bool, folder: Path, project: Path) -> None:
    out = folder / "at" / "out"
    if not first:
        disk.write_package(out, {"a.txt": b"one"}, {})
    before = standing(folder / "at")
    running = held(project, out)
    running.send_signal(signal.SIGKILL)
    running.wait()
    left = standing(folder / "at")
    assert {name: what for name, what in left.items() if not name.startswith(".specgen-")} == before
    assert left != before
    renewed(project, out)


def killed_at(step: int) -> Callable[[], None]:
    """Makes a build exchange folders in three steps, and be killed before one of them."""

    def patch() -> None:
        rename, count = Path.rename, []

        def rename_or_die(path: Path, target: Path) -> Path:
            if len(count) == step:
                os.kill(os.getpid(), signal.SIGKILL)
            count.append(path)
            return rename(path, target)

        exchange._exchange_at_once = lambda one, other: False
        Path.rename = rename_or_die

    return patch


@pytest.mark.parametrize("step", [0, 1, 2])
def test_a_build_that_is_killed_between_the_steps_of_its_exchange(step: int, folder: Path, project: Path) -> None:
    out = folder / "at" / "out"
    disk.write_package(out, {"a.txt": b"one"}, {})
    assert build(project, out, killed_at(step)).code == -signal.SIGKILL
    assert [p.read_bytes() for p in (folder / "at").rglob("a.txt")] == [b"one"]
    renewed(project, out)


def test_two_builds_into_one_folder_at_once_never_mix(folder: Path) -> None:
    out = folder / "out"
    commands = [[sys.executable, "-c", AGAIN, str(out), letter] for letter in "ab"]
    running = [start_process(command) for command in commands]
    met = set()
    while any(one.poll() is None for one in running):
        if out.exists():
            # One look at the folder: whatever package it was, it was one.
            letters = {name[0] for name in (p.name for p in out.iterdir()) if name != "manifest.json"}
            assert len(letters) <= 1
            met |= letters
    assert [wait_for(one) for one in running] == [(0, "", ""), (0, "", "")]
    assert met == {"a", "b"}
    assert [p.name for p in folder.iterdir()] == ["out"]
    assert len(list(out.iterdir())) == 5
    assert is_spent(out)


def test_a_package_that_was_edited_by_hand_is_told_by_the_command(folder: Path, project: Path) -> None:
    out = folder / "at" / "out"
    assert build(project, out).code == 0
    edited = next(out.glob("*.txt"))
    edited.write_text("mine")
    before = standing(folder / "at")
    refused(build(project, out), f"edited by hand since it was written: {edited.name} (move it to keep it")
    assert standing(folder / "at") == before


def test_a_package_inside_the_folder_of_the_project(folder: Path, project: Path) -> None:
    before = standing(folder / "job")
    refused(build(project, folder / "job"), "holds files that specgen did not write: project.yaml")
    assert standing(folder / "job") == before
    assert build(project, folder / "job" / "out").code == 0
    assert build(project, folder / "job" / "out").code == 0
    assert sorted(p.name for p in (folder / "job").iterdir()) == ["out", "project.yaml"]
