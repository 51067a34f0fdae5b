"""The fonts that pages and pictures are set in by the library of the PDF, read once for all."""

from functools import lru_cache
from typing import Any

from specgen.documents.catalogue import templates_folder


@lru_cache(maxsize=1)
def load_fonts() -> Any:
    """Our own fonts, and those that the library holds for formulas and other scripts; none of the system.

    Raises ImportError where the library is not installed.
    """
    import typst

    return typst.Fonts(include_system_fonts=False, font_paths=[str(templates_folder() / "fonts")])
