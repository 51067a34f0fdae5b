"""The fonts that pages and pictures are set in by the library of the PDF, read once for all."""

from functools import lru_cache
from typing import Any

from specgen.documents.catalogue import templates_folder

_KEPT = 11  # pages without words, which take a thousandth of a second each


@lru_cache(maxsize=1)
def load_fonts() -> Any:
    """Our own fonts, and those that the library holds for formulas and other scripts; none of the system.

    Raises ImportError where the library is not installed.
    """
    import typst

    return typst.Fonts(include_system_fonts=False, font_paths=[str(templates_folder() / "fonts")])


def forget_pages() -> None:
    """Let go of the pages and pictures made before, which the library keeps in memory until so many more are made."""
    import typst

    for _ in range(_KEPT):
        typst.compile(b"", font_paths=load_fonts())
