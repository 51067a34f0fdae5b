"""Who verifies a figure of the trade that rests on no text: the party whose instructions or judgment settle it."""

import datetime
from collections.abc import Iterator

from specgen.model.project import Project

# Who reads a text, by a part of its name.
_READERS = (
    ("ASCE", "engineer"),
    ("ISO 13788", "engineer"),
    ("29 CFR", "competent_person"),
)
_ASHRAE = "ASHRAE Handbook, Fundamentals, 2005"
# What the seal of an engineer covers besides: heat and movement joints are verified under it.
_SEALED = ("ASTM C1193", "ASTM C1472", "ASTM E1980", _ASHRAE)
_AIR = "Compressed Air and Gas Handbook"
# Who settles a figure: by the row of the limits, by what its name begins with, or by the label of its field.
_SETTLED_BY = {
    "submittal.contractor_days": "general_contractor",
    "submittal": "applicator",
    "substrate.plane_prominent": "architect",
    "weather.wind_usual": "applicator",
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
    "flatness": "architect",
    "straightedge": "eifs_source",
    "board": "eifs_source",
    "adhesive": "eifs_source",
    "base_coat": "eifs_source",
    "mesh": "eifs_source",
    "grade": "eifs_source",
    "ledge": "eifs_source",
    "face": "eifs_source",
    "aesthetic_joint.tolerance": "architect",
    "aesthetic_joint": "eifs_source",
    "weather.after_frost": "eifs_source",
    "flashing": "eifs_source",
    "weather.hold_eifs": "eifs_source",
    "minimum board thickness": "eifs_source",
    "stock board increment": "eifs_source",
    "backer rod diameter": "sealant_source",
    "stock diameter increment": "sealant_source",
    "rounding increment": "sealant_source",
    "sealant quantity": "sealant_source",
    "sealant cure before pull": "sealant_source",
    "waste": "sealant_source",
    "coat.returns": "applicator",
    "coat.joint_sides": "applicator",
    "setup and cleanup": "applicator",
    "setup and cleanup in the remaining hours": "applicator",
    "cleanup and setup between coats": "applicator",
    "shortest time": "finish_source",
    "longest time": "finish_source",
    "Notice of a witness point": "architect",
    "maximum age of test reports at award": "architect",
    "joint": "sealant_source",
    "sealant": "sealant_source",
}
_OTHERS = "finish_source"
# Who settles a figure besides, for its own materials.
_BESIDES = {"weather.humidity": ("eifs_source",)}
# The limits of the finish, and the list of what is asked, where its manufacturer is asked for it by name.
_OF_FINISH = ("D05", "D19")
# What of a figure each of several parties settles, in place of what it is of in all.
_PARTS = {
    ("weather.humidity", "eifs_source"): "Relative humidity, adhesive and base coat",
    ("weather.humidity", "finish_source"): "Relative humidity, primer and gloss",
}
# The text that tells of what a sum rests on, by the name of the method or of its figure.
_TEXTS_OF_SUMS = {
    "peak sun, governing orientation": _ASHRAE,
    "peak sun by elevation": _ASHRAE,
    "ground reflectance": _ASHRAE,
    "usable spray hours": _ASHRAE,
    "solar altitude at sunrise": _ASHRAE,
    "wall face temperature": "ASTM E1980",
    "wall face temperature, still air": "ASTM E1980",
    "topographic factor": "ASCE 7, chapters 26 and 30",
    "air demand of the spray guns": _AIR,
    "spray gun pressure": _AIR,
    "flow exponent": _AIR,
    "formula constant": _AIR,
    "leak allowance": _AIR,
    "reserve": _AIR,
}
APPLICATOR = "applicator"
ENGINEER = "engineer"
ARCHITECT = "architect"
# The reviewer ticks no figure of the applicator: the contract gives it, or the answer to a question does.
CONTRACT = "Contract, or RFI"
MANUFACTURERS = ("eifs_source", "finish_source", "sealant_source")


def is_checked_by_engineer(project: Project) -> bool:
    """Whether the engineer of the project checks the calculations: the checker names the firm."""
    engineer, checker = project.get(("parties", "design_engineer", "name")), project.get(("package", "checked_by"))
    return bool(engineer and checker and engineer in checker)


def find_signing_day(project: Project, role: str) -> datetime.date | None:
    """The day on which the author (`calculated`) or the checker (`checked`) of the calculations signed them."""
    named, day = (project.get(("package", f"{role}_{part}")) for part in ("by", "on"))
    return day if named else None


def find_sealing_day(project: Project) -> datetime.date | None:
    """The day on which the engineer signed and sealed the calculations, their figures verified."""
    return find_signing_day(project, "checked") if is_checked_by_engineer(project) else None


def find_reader(project: Project, text: str) -> str:
    """The role that reads a text; the applicator reads the standards of its trade that no engineer seals."""
    if any(part in text for part in _SEALED) and is_checked_by_engineer(project):
        return ENGINEER
    return next((role for part, role in _READERS if part in text), APPLICATOR)


def find_text_of_sum(name: str) -> str:
    """The text that tells of a method or figure of a sum; empty where a party settles it."""
    return next((text for said, text in _TEXTS_OF_SUMS.items() if name.lower() in (said, f"{said}, default")), "")


def name_part(row: str, role: str) -> str:
    """What of a figure, by the row of the limits, a party settles; empty where it settles the whole."""
    return _PARTS.get((row, role), "")


def find_settlers(figure: str, document: str) -> tuple[str, ...]:
    """The roles that settle a figure of a document that no text gives, by its row of the limits or what it is of."""
    first = next((_SETTLED_BY[name] for name in _names(figure) if name in _SETTLED_BY), _OTHERS)
    return (first, *(() if document in _OF_FINISH else _BESIDES.get(figure, ())))


def _names(figure: str) -> Iterator[str]:
    yield figure
    yield figure.partition(",")[0].lower()
    yield figure.partition(".")[0]
    yield figure.partition(",")[0]
