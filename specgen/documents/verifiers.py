"""Who verifies a figure of the trade that rests on no text: the party whose instructions or judgment settle it."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.model.value_text import words

# Who reads a text, by a part of its name.
_READERS = (
    ("ASCE", "engineer"),
    ("International", "architect"),
    ("29 CFR", "competent_person"),
)
# Who settles a figure of a row of the limits, by the row or by what its name begins with.
_SETTLED_BY = {
    "substrate.bond": "engineer",
    "substrate.pulls": "engineer",
    "substrate.pulls_area": "engineer",
    "framing": "engineer",
    "view": "architect",
    "mockup": "architect",
    "substrate": "eifs_source",
    "flatness": "eifs_source",
    "straightedge": "eifs_source",
    "board": "eifs_source",
    "adhesive": "eifs_source",
    "base_coat": "eifs_source",
    "mesh": "eifs_source",
    "grade": "eifs_source",
    "ledge": "eifs_source",
    "face": "eifs_source",
    "aesthetic_joint": "eifs_source",
    "weather.after_frost": "eifs_source",
    "joint": "sealant_source",
    "sealant": "sealant_source",
}
_OTHERS = "finish_source"
APPLICATOR = "applicator"
MANUFACTURERS = ("eifs_source", "finish_source", "sealant_source")


# The party that a role is given as, where that bears another name.
_GIVEN_AS = {"engineer": "design_engineer"}


def tell_party(context: DocumentContext, role: str) -> str:
    """`EIFS manufacturer (Graywether Wall Systems)`; the role alone while no name is given."""
    said, party = words(role), _GIVEN_AS.get(role, role)
    known = party in context.project.schema.node(("parties",)).children
    name = context.project.get(("parties", party, "name")) if known else None
    title = said[:1].upper() + said[1:]
    return f"{title} ({name})" if name else title


def find_reader(text: str) -> str:
    """The role that reads a text; the applicator reads the standards of its trade."""
    return next((role for part, role in _READERS if part in text), APPLICATOR)


def find_settler(row: str) -> str:
    """The role that settles the figure of a row of the limits that no text gives."""
    return next((_SETTLED_BY[name] for name in _names(row) if name in _SETTLED_BY), _OTHERS)


def _names(row: str) -> Iterator[str]:
    yield row
    yield row.partition(".")[0]
