"""Which blocks differ between two prints of a document. All of it is behavior of ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen.documents.changes_blocks import compare_document, print_document
from specgen.model.block import Document
from specgen.model.changes import DocumentChange
from specgen.terminal.changes_words import tell_article
from tests.documents.support import document_of, written

PROCEDURE = """# Part of materials
## Board
1. Store flat.
1. Keep dry.

## Coats
1. Stir. See {{ ref("Board") }}.
1. Spray.

Done by hand.

> Wear a mask.
"""


def change(folder: Path, old: str, new: str, numbering: str = "three_part") -> DocumentChange | None:
    before, after = (written(folder, words, numbering=numbering) for words in (old, new))
    return compare_document("D99", print_document(before), print_document(after))


def told(found: DocumentChange | None) -> dict[str, str]:
    """What is said of each article."""
    assert found is not None
    return {f"{article.number} {article.title}".strip(): tell_article(article) for article in found.articles}


def words_at(document: Document, found: DocumentChange | None) -> list[str]:
    """The kinds of the blocks that are marked."""
    assert found is not None
    return [type(document.blocks[place]).__name__ for place in sorted(found.blocks)]


@pytest.mark.parametrize("numbering", ["three_part", "plain"])
def test_a_print_does_not_differ_from_itself(numbering: str, tmp_path: Path) -> None:
    assert change(tmp_path, PROCEDURE, PROCEDURE, numbering) is None


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("Keep dry.", "Keep dry and shaded.", {"1.01 Board": "1 item changed"}),
        ("1. Keep dry.\n", "1. Keep dry.\n1. Cover.\n", {"1.01 Board": "1 item added"}),
        ("1. Store flat.\n", "", {"1.01 Board": "1 item removed"}),
        ("Done by hand.", "Done by machine.", {"1.02 Coats": "1 paragraph changed"}),
        ("> Wear a mask.", "Wear a mask.", {"1.02 Coats": "1 paragraph added, 1 note removed"}),
        ("1. Stir.", "1. **Stir.**", {"1.02 Coats": "1 item changed"}),
        ("1. Spray.", "   1. Spray.", {"1.02 Coats": "1 item changed"}),
        ("## Coats", "## Finish", {"1.02 Finish": "1 heading changed"}),
        ("Store flat.\n1. Keep dry.", "Keep dry.\n1. Store flat.", {"1.01 Board": "1 item added, 1 item removed"}),
        ("Board\n1. Store flat.\n", "Board\n", {"1.01 Board": "1 item removed"}),
    ],
)  # fmt: skip
def test_what_differs_is_counted_under_its_article(old: str, new: str, says: dict[str, str], tmp_path: Path) -> None:
    assert told(change(tmp_path, PROCEDURE, PROCEDURE.replace(old, new))) == says


def test_numbers_that_shift_change_nothing(tmp_path: Path) -> None:
    more = PROCEDURE.replace("## Board", "## Delivery\n1. Unload by hand.\n\n## Board").replace(
        "1. Stir", "1. Open.\n1. Stir"
    )
    found = change(tmp_path, PROCEDURE, more)
    # The reference to the board now reads 1.02 in place of 1.01, and the items behind are B and C.
    assert told(found) == {"1.01 Delivery": "1 heading added, 1 item added", "1.03 Coats": "1 item added"}
    assert words_at(written(tmp_path, more, numbering="three_part"), found) == ["Article", "Item", "Item"]


def test_what_is_removed_is_told_under_the_article_it_stood_in(tmp_path: Path) -> None:
    less = PROCEDURE.replace("## Board\n1. Store flat.\n1. Keep dry.\n\n", "").replace(' See {{ ref("Board") }}.', "")
    assert told(change(tmp_path, PROCEDURE, less)) == {
        "1.01 Board": "1 heading removed, 2 items removed",
        "1.01 Coats": "1 item changed",
    }  # fmt: skip


def test_above_the_first_heading_stands_the_opening(tmp_path: Path) -> None:
    assert told(change(tmp_path, "One.", "Two.", "plain")) == {"": "1 paragraph changed"}


def test_a_document_that_is_new_or_gone_is_told_as_a_whole(tmp_path: Path) -> None:
    there = print_document(written(tmp_path, PROCEDURE))
    assert compare_document("D99", None, there) == DocumentChange("D99", "Trial", "added")
    assert compare_document("D99", there, None) == DocumentChange("D99", "Trial", "dropped")


def test_a_value_that_differs_marks_the_block_that_prints_it(tmp_path: Path) -> None:
    words = "One.\n\nBoard: {{ walls['W1'].insulation.thickness }}.\n\nTwo."
    prints = []
    for thickness in ("3 in", "4 in"):
        change_: Any = {"walls": {"W1": {"insulation": {"thickness": thickness}}}}
        prints.append(print_document(written(tmp_path, words, change_)))
    found = compare_document("D99", *prints)
    assert found is not None
    assert found.blocks == {1}


def test_the_boxes_of_a_review_differ_with_every_issue_and_are_not_marked(tmp_path: Path) -> None:
    prints = [
        print_document(written(tmp_path, "{{ review_boxes }}\n\nWords.", {"package": {"revision": revision}}))
        for revision in (1, 2)
    ]
    assert prints[0] == prints[1]


def test_a_draft_keeps_its_digests_beside_its_blocks() -> None:
    for draft in (False, True):
        document = document_of("clean", "D05", draft)
        assert len(document.digests) == len(document.blocks)
    # A draft has a note above, which no other print has.
    assert document_of("clean", "D05", True).digests[1:] == document_of("clean", "D05").digests


def test_ten_thousand_items_are_compared_one_by_one(tmp_path: Path) -> None:
    many = [f"1. Item {number} of the list." for number in range(10_000)]
    other = [*many[:5_000], "1. Put in between.", *many[5_000:-1], "1. Last."]
    found = change(tmp_path, "\n".join(many), "\n".join(other), "plain")
    assert found is not None
    assert found.blocks == {5_000, 10_000}
