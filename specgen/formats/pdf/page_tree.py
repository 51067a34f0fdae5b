"""The tree of the pages of a set, built anew: a branch for our own pages, and one for each attachment.

The library puts each page in its place among all others, which for twenty thousand of them takes minutes.
"""

from collections.abc import Iterable
from typing import Any

from pikepdf import Array, Dictionary, Name, Pdf

_HANDED_DOWN = ("/Resources", "/MediaBox", "/CropBox", "/Rotate")
_DEEPEST = 50  # branches above a page


class PageTree:
    """The pages of a set in the making; they are in place once it is finished."""

    def __init__(self, whole: Pdf) -> None:
        self._whole = whole
        self._branches: list[Any] = []
        self.count = 0

    def add_branch(self, pages: Iterable[Any]) -> None:
        """Add pages, objects of the set, behind those that are there."""
        branch = self._whole.make_indirect(Dictionary(Type=Name.Pages))
        kids = list(pages)
        for page in kids:
            for name in _HANDED_DOWN:
                if name not in page and (value := find_inherited(page, name)) is not None:
                    page[name] = value
            page["/Parent"] = branch
        branch["/Kids"], branch["/Count"] = Array(kids), len(kids)
        self.count += len(kids)
        self._branches.append(branch)

    def finish(self) -> None:
        """Put the branches in the place of the tree that the set had."""
        made = Dictionary(Type=Name.Pages, Kids=Array(self._branches), Count=self.count)
        self._whole.Root.Pages = self._whole.make_indirect(made)
        for branch in self._branches:
            branch["/Parent"] = self._whole.Root.Pages


def find_inherited(page: Any, name: str) -> Any:
    """The value of a page, or of the nearest branch above it that has one; None where none has."""
    for _ in range(_DEEPEST):
        if page is None or name in page:
            break
        page = page.get("/Parent")
    return None if page is None else page.get(name)
