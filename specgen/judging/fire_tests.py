"""Fire tests of exterior walls by name, and whether a text names a standard."""

import re
from functools import lru_cache

PROPAGATION, RADIANT = "NFPA 285", "NFPA 268"

_DESIGNATION = re.compile(r"([A-Z]+)[ -]*(\d+)")


def names_standard(text: str, designation: str) -> bool:
    """Whether a text names a standard: `C1549` is in `ASTM C1549-16` and in `c 1549`, not in `C15490`."""
    return not _designations(designation).isdisjoint(_designations(text))


@lru_cache(maxsize=256)
def _designations(text: str) -> frozenset[tuple[str, str]]:
    """The letters and digits of each designation in a text, without the name of the society before them."""
    found = _DESIGNATION.findall(text.upper())
    return frozenset((letters.removeprefix("ASTM") or letters, digits) for letters, digits in found)
