"""Each document of each example against its golden text, which was read and approved as a page.

The texts are our own words and no outside truth: they guard against a change that nobody saw.
"""

import pytest

from tests.golden import EXAMPLES, FOLDER, texts

GOLDEN = {name: text for example in EXAMPLES for name, text in texts(example).items()}


@pytest.mark.parametrize("name", GOLDEN)
def test_the_document_reads_as_approved(name: str) -> None:
    assert GOLDEN[name] == (FOLDER / name).read_text("utf-8")


def test_no_golden_text_is_left_over() -> None:
    assert {file.name for file in FOLDER.iterdir()} == set(GOLDEN)
