"""What a draft asks for sooner than the work that it is for: what a document prints, or another answer follows from."""

from specgen.documents.context import DocumentContext
from specgen.documents.deciding import is_undecided
from specgen.documents.views._document_stages import find_decision
from specgen.documents.views._fields import OF_ASCE_7
from specgen.documents.views._needed import find_lacking, find_pattern
from specgen.documents.views._stages import NAMING, find_next_package
from specgen.model.field import Field, Path

# A layout is drawn by these; board joints keep clear of its aesthetic joints.
OF_LAYOUT: tuple[Path, ...] = (
    *(("elevations", "*", name) for name in ("openings", "joint_needs", "floor_lines", "left_end", "right_end")),
    ("elevations", "*", "layout", "mode"),
    ("joints", "*", "serves"),
)
# The document of the layout.
LAYOUT = "D07"
# Printed with the wall's own details, or beside what is, whether or not the other documents are known yet.
_SHOWN: tuple[Path, ...] = (*OF_LAYOUT, ("details",), ("joints", "*", "bond_break_tape"))
# The layers of mesh follow from where the wall must withstand what.
_ZONES: tuple[Path, ...] = (("elevations", "*", "impact_zones"), ("elevations", "*", "public_reach"))
# What the fire and impact reports are held against, and how long a color takes whose reports are asked for.
_REPORTED: tuple[Path, ...] = (("walls", "*", "mesh", "layers"), ("colors", "*", "lead_time_days"))
# All other dates hang on these: the owner tells them while no contractor is named.
_DATES: tuple[Path, ...] = (("schedule", "submit_on"), ("schedule", "work_start"), ("mockup", "planned_on"))
_CONTRACTOR = "general_contractor"
_ARCHITECT: Path = ("parties", "architect", "name")
_MAKER: Path = ("parties", "eifs_source", "name")
# A sealant is named long before it is tested on the coats.
_TESTED_LONG = ("sealants", "*", "product")
# Who inspects is named with how often he does.
_INSPECTION: Path = ("contract", "inspection_level")
# The mockup is built from it, and the schedule of a package holds them.
_PLANNED: tuple[Path, ...] = (("access",), ("schedule", "weather_days"), ("contract", "resubmittal_days"), _INSPECTION)
# The engineer computes the wind from these, and replies before the decision.
_SHEATHING = tuple(("walls", "*", "substrate", name) for name in ("standard", "thickness"))
_STRENGTH: Path = ("walls", "*", "attachment", "ultimate_strength")
_OF_WIND = (*(tuple(path.split(".")) for path in OF_ASCE_7 if not path.endswith("enclosure")), *_SHEATHING)
# The wall itself is measured, whatever documents print.
_GAP = ("walls", "*", "substrate", "plane_measured")


def bring_forward(context: DocumentContext, dotted: str, stage: tuple[int, str]) -> tuple[int, str]:
    """Before what a value is needed: its own work, and no later than the package whose documents print it is issued.

    Impact zones are known before the mesh is chosen by them.
    """
    pattern = find_pattern(context, dotted)
    if not context.is_marked or pattern == _GAP:
        return stage
    if pattern in _DATES or (is_undecided(context) and _is_for_engineer(context, pattern)):
        return min(stage, NAMING)
    if pattern in (*_ZONES, *_REPORTED, _TESTED_LONG) and is_undecided(context):
        return min(stage, find_decision(context))
    printed = pattern in (*_SHOWN, *_PLANNED) or pattern in find_lacking(context)
    return min(stage, find_next_package(context)) if printed else stage


def _is_for_engineer(context: DocumentContext, pattern: Path) -> bool:
    """Whether the engineer computes the wind from a value that somebody who is named already can give."""
    giver = {**dict.fromkeys(_OF_WIND, _ARCHITECT), _STRENGTH: _MAKER}.get(pattern)
    return giver is not None and context.project.is_given(giver)


def find_party(context: DocumentContext, field: Field) -> str:
    """The role of who supplies a value; the owner for dates of a contractor whom nobody has named."""
    named = context.project.get(("parties", _CONTRACTOR, "name"))
    unnamed = context.is_marked and field.path in _DATES and field.owed_by == _CONTRACTOR and not named
    return "owner" if unnamed else field.owed_by
