"""Each document of the examples, and each text of the commands, against its golden text, which was read and approved.

The texts are our own words and no outside truth: they guard against a change that nobody saw.
"""

from pathlib import Path
from typing import Any

import pytest

from tests.conftest import MadeOnce
from tests.golden import GOLDEN, write_all

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

TEXTS = [
    pytest.param(folder, file.name, id=f"{folder.parent.name}/{file.name}")
    for folder in GOLDEN
    for file in sorted(folder.iterdir())
]


def made(made_once: MadeOnce, folder: Path) -> Path:
    """The folder of the texts as they are written now."""
    return made_once(f"golden {folder.parent.name}", lambda at: write_all(at, GOLDEN[folder]))


@pytest.mark.parametrize(("folder", "name"), TEXTS)
def test_the_text_reads_as_approved(folder: Path, name: str, made_once: MadeOnce) -> None:
    assert (made(made_once, folder) / name).read_text("utf-8") == (folder / name).read_text("utf-8")


@pytest.mark.parametrize("folder", GOLDEN, ids=lambda folder: str(folder.parent.name))
def test_each_text_has_a_golden_one_and_none_is_left_over(folder: Any, made_once: MadeOnce) -> None:
    names = sorted(file.name for file in folder.iterdir())
    assert sorted(file.name for file in made(made_once, folder).iterdir()) == names
