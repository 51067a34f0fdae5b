"""Each document of each example against its golden text, which was read and approved as a page.

The texts are our own words and no outside truth: they guard against a change that nobody saw.
"""

from pathlib import Path

import pytest

from tests.conftest import MadeOnce
from tests.golden import FOLDER, write_all

NAMES = sorted(file.name for file in FOLDER.iterdir())


# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover


def made(made_once: MadeOnce) -> Path:
    """The folder of the texts as they are written now."""
    return made_once("golden", write_all)


@pytest.mark.parametrize("name", NAMES)
def test_the_document_reads_as_approved(name: str, made_once: MadeOnce) -> None:
    assert (made(made_once) / name).read_text("utf-8") == (FOLDER / name).read_text("utf-8")


def test_each_document_has_a_golden_text_and_none_is_left_over(made_once: MadeOnce) -> None:
    assert sorted(file.name for file in made(made_once).iterdir()) == NAMES
