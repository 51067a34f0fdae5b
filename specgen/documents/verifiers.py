"""Who verifies a figure of the trade that rests on no text: the party whose instructions or judgment settle it."""

from collections.abc import Iterator

# Who reads a text, by a part of its name.
_READERS = (
    ("ASCE", "engineer"),
    ("29 CFR", "competent_person"),
)
# Who settles a figure: by the row of the limits, by what its name begins with, or by the label of its field.
_SETTLED_BY = {
    "substrate.bond": "engineer",
    "substrate.pulls": "engineer",
    "substrate.pulls_area": "engineer",
    "framing": "engineer",
    "protection": "applicator",
    "color.lrv_least": "eifs_source",
    "view": "architect",
    "roof_below": "architect",
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
    "flashing": "eifs_source",
    "shortest time": "finish_source",
    "longest time": "finish_source",
    "Notice of a witness point": "architect",
    "joint": "sealant_source",
    "sealant": "sealant_source",
}
_OTHERS = "finish_source"
APPLICATOR = "applicator"
MANUFACTURERS = ("eifs_source", "finish_source", "sealant_source")


def find_reader(text: str) -> str:
    """The role that reads a text; the applicator reads the standards of its trade."""
    return next((role for part, role in _READERS if part in text), APPLICATOR)


def find_settler(figure: str, others: str = _OTHERS) -> str:
    """The role that settles a figure that no text gives, by its row of the limits or what it is of; else `others`."""
    return next((_SETTLED_BY[name] for name in _names(figure) if name in _SETTLED_BY), others)


def _names(figure: str) -> Iterator[str]:
    yield figure
    yield figure.partition(".")[0]
    yield figure.partition(",")[0]
