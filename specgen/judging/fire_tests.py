"""Fire tests of exterior walls, for the rule that asks for reports and the document that lists them."""

import re
from functools import lru_cache

from specgen.model.absence import if_given
from specgen.model.typed_views import Description

PROPAGATION, RADIANT = "NFPA 285", "NFPA 268"
# Construction types that restrict combustible material in exterior walls; International Building Code, from memory.
NOT_OF_WOOD = ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVA", "IVB", "IVC", "IVHT")

_DESIGNATION = re.compile(r"([A-Z]+)[ -]*(\d+)")


def may_not_burn(project: Description) -> bool:
    """Whether the code restricts combustible material in exterior walls; the residential code needs no type given.

    `project` is the view of the whole project. Raises Absent if the type of construction is not given.
    """
    if if_given(lambda: project.code.construction_type) is None and project.code.model == "irc":
        return False
    return project.code.construction_type in NOT_OF_WOOD


def names_standard(text: str, designation: str) -> bool:
    """Whether a text names a standard: `C1549` is in `ASTM C1549-16` and in `c 1549`, not in `C15490`."""
    return not _designations(designation).isdisjoint(_designations(text))


@lru_cache(maxsize=256)
def _designations(text: str) -> frozenset[tuple[str, str]]:
    """The letters and digits of each designation in a text, without the name of the society before them."""
    found = _DESIGNATION.findall(text.upper())
    return frozenset((letters.removeprefix("ASTM") or letters, digits) for letters, digits in found)
