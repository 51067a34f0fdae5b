"""What holds for the whole run: the profile of the property tests, and what is built once for every process of it."""

import compileall
import fcntl
import os
import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from tests.running import in_checkout, run_specgen
from tests.support import EXAMPLES, ROOT

# No test is timed: a busy machine is no fault of the code.
settings.register_profile("untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("untimed")

# Where the shared packages are built; the tests of same bytes build each again in other surroundings.
HERE = {"TZ": "UTC", "LC_ALL": "C", "PYTHONHASHSEED": "0"}

EVERY = tuple(f"D{number:02d}" for number in range(20))
WHOLE_DRAFT = ("--draft", *(word for name in EVERY for word in ("--only", name)))

MadeOnce = Callable[[str, Callable[[Path], object]], Path]


def pytest_configure(config: pytest.Config) -> None:
    """Compile the package once, so that the processes started by a run need not, each for itself.

    A run in the background is begun with interrupts ignored; what it starts would ignore them as well.
    """
    signal.signal(signal.SIGINT, signal.default_int_handler)
    if not hasattr(config, "workerinput"):
        compileall.compile_dir(ROOT / "specgen", quiet=1)


@pytest.fixture(scope="session")
def made_once(tmp_path_factory: pytest.TempPathFactory) -> MadeOnce:
    """A folder by its name, filled by whoever asks first; all processes of a run share it."""
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base

    def made(name: str, fill: Callable[[Path], object]) -> Path:
        with (shared / f"{name}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            if not (shared / name).exists():
                # Only what was filled to its end takes the name.
                fill(shared / f"{name}.part")
                (shared / f"{name}.part").rename(shared / name)
        return shared / name

    return made


@pytest.fixture(scope="session")
def draft_of(made_once: MadeOnce) -> Callable[[str], Path]:
    """The package of an example as a draft, in every format, with the documents that a draft leaves out."""

    def built(example: str) -> Path:
        return made_once(f"draft of {example}", lambda folder: build_example(example, folder, *WHOLE_DRAFT))

    return built


@pytest.fixture(scope="session")
def clean_package(made_once: MadeOnce) -> Path:
    """The package of `clean`, the one example that is sent and no design draft."""
    return made_once("clean", lambda folder: build_example("clean", folder))


def build_example(example: str, out: Path, *more: str, surroundings: dict[str, str] = HERE, mask: int = 0o022) -> None:
    """Write the package of an example in every format by the command itself."""
    words = ("build", str(EXAMPLES / example / "project.yaml"), "--out", str(out), "--formats", "docx,html,txt", *more)
    done = run_specgen(*words, **in_checkout(surroundings), umask=mask)
    assert done.code in (0, 1)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave the lines of a property test uncounted, as those of every test marked `no_cover`.

    Counting takes as long again as the test, and these only run lines again that other tests run. So what is counted
    is never more than what the whole suite runs.
    """
    for item in items:
        if getattr(getattr(item, "obj", None), "is_hypothesis_test", False):
            item.add_marker(pytest.mark.no_cover)
