"""Fire tests of exterior walls, for the rule that asks for reports and the document that lists them."""

import re

from specgen.model.absence import if_given
from specgen.model.typed_views import Description

PROPAGATION, RADIANT = "NFPA 285", "NFPA 268"
# Construction types that restrict combustible material in exterior walls; International Building Code, from memory.
NOT_OF_WOOD = ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVA", "IVB", "IVC", "IVHT")


def may_not_burn(project: Description) -> bool:
    """Whether the code restricts combustible material in exterior walls; the residential code needs no type given.

    `project` is the view of the whole project. Raises Absent if the type of construction is not given.
    """
    if if_given(lambda: project.code.construction_type) is None and project.code.model == "irc":
        return False
    return project.code.construction_type in NOT_OF_WOOD


def names_standard(text: str, designation: str) -> bool:
    """Whether a text names a standard: `C1549` is in `ASTM C1549-16` and in `c 1549`, not in `C15490`."""
    letters, digits = re.fullmatch(r"([A-Z]+) ?(\d+)", designation).groups()  # type: ignore[union-attr]
    return re.search(rf"(?<![A-Z])(?:ASTM)?[ -]?{letters}[ -]*{digits}(?!\d)", text.upper()) is not None
