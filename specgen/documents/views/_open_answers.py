"""What the architect is left to answer: existing building code, indoor air, thermal barriers, and ratings."""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.code_edition import assumes_edition, name_weather_sections, tell_code_data
from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import reads_first
from specgen.documents.deciding import is_undecided
from specgen.documents.display_values import DisplayValue, count_things
from specgen.documents.field_units import name_unit
from specgen.documents.foam_reports import SECTIONS, list_unknown, list_unparted, list_unrated
from specgen.documents.form_units import UNITS
from specgen.documents.members import span_marks
from specgen.documents.parties import find_contractor
from specgen.documents.required_documents import list_pending
from specgen.documents.standing_walls import is_built, list_barriers, list_solid, list_standing, list_wet
from specgen.documents.untold_faces import PREPARED, list_untold_faces
from specgen.documents.views._energy import asks_requirement
from specgen.model.series import join_series

EDITION = "IBC edition adopted by the authority"
_CODE, _VAPOR, _SECTIONS, _INSPECTION = "COD", "INS-05", "SUB-07", "COD-04"
SPEC_SECTIONS = "Specification section for this work, a copy, or none"
_WATER = "Source of the water in the wall, and how it is stopped"
_LOT_LINE = "Lot line: distance from the wall; permission past it, or none"
_HUNG = "Signs, lights, awnings, pipes on the wall; refixed by whom"
_REPAIR = "Repair and wash: test areas first, or all; by whom; access; silica, wash water plans"
_BARE = "Is the face free of paint, coating, and water repellent? yes/no"
_CLEARED = "Are vehicles below moved out of reach while spraying? yes/no"
_MORTAR = "Mortar for repointing: type"
SEALING = "Is sealant installed before or after the gloss?"
_OWN_REVIEW = "Working days of the contractor's own review of a submittal"
_ENERGY = "Energy code edition, climate zone, R-value of continuous insulation required, or none; vapor retarder"
_DARK = "HEA-05a"
_PARTED = "Thermal barrier: existing wall behind all board? yes/no"
_FULL_BED = "adhesive_full_bed"
# The document that tells the coats over the board, which a figure without a product leaves to be confirmed.
_COATS_TOLD = "D02"
_REFLECTANCE = "Light reflectance by data sheet or reading"
EXISTING = "Existing building code: adopted or not; governs this work or not"

# The clause on the landing of a door, and where the mark of the opening stands in the path of what it finds.
_RULE_OF_LANDING = "WAT-02"
_LANDING, _MARK = f"{_RULE_OF_LANDING}c", 3

# What the engineer sets before old walls are pulled, while the report on the pulls is pending.
_LOOSE = ("PLN-02a", "PLN-02b")
_PULLED, _BOND = "ATT-05d", "ATT-05"
_RULE = len(_BOND)
# The clause on vehicles that overspray may reach.
_VEHICLES = "ACC-09a"
# Whose report is pending, by the clause that asks for it.
_TESTERS = {
    "ATT-10c": "asbestos inspector, laboratory",
    "ATT-10a": "lead inspector",
    _PULLED: "testing agency",
}


class OpenAnswer(NamedTuple):
    """A question that no field holds, with its marks."""

    question: str
    holds: tuple[str, ...]
    decides: bool  # whether a wall is decided on with it
    party: str = "architect"
    figures: tuple[DisplayValue, ...] = ()  # proposed until somebody confirms or corrects them
    names: str = ""  # whom it asks to be named, before all other requests
    judged: bool = False  # whether the architect decides it, whatever the contract tells


def list_open_answers(context: DocumentContext) -> Iterator[OpenAnswer]:
    """What is to be answered besides the fields of the project, and what it holds up."""
    model, edition = (context.project.get(("code", name)) for name in ("model", "edition"))
    if model != "other" and list_standing(context):
        yield OpenAnswer(EXISTING, (_CODE,), decides=True)
    if assumes_edition(context):
        yield OpenAnswer(f"{EDITION} ({edition} assumed)", (_CODE,), decides=True)
    elif context.is_marked and model == "ibc" and tell_code_data(context):
        height = f"height of the building above grade plane, {_feet(context)}"
        asked = f"Code: confirm {tell_code_data(context)}; {height}; local amendments"
        yield OpenAnswer(asked, (_CODE,), decides=True)
    if not context.project.members.get(("contract", "spec_sections")):
        yield OpenAnswer(SPEC_SECTIONS, (_SECTIONS,), decides=context.is_marked and is_undecided(context))
    yield from _ask_of_vapor(context)
    yield from _ask_of_stated(context) if context.is_marked else ()
    yield from _ask_of_standing(context)
    yield from _ask_of_masonry(context)
    if any(entry.code == _PULLED for entry in list_pending(context)):
        asked = f"Pull tests in each {context.limit('substrate.pulls_area').text} of each kind of surface"
        least = (context.limit("substrate.pulls"),)
        yield OpenAnswer(asked, (_BOND,), decides=True, party="engineer", figures=least)
    yield from _ask_of_faces(context) if context.draft else ()
    if context.draft and find_contractor(context) and context.project.get(("contract", "review_days")) is not None:
        days = (context.limit("submittal.contractor_days"),)
        yield OpenAnswer(_OWN_REVIEW, ("SUB-01",), decides=True, party="general_contractor", figures=days)
    yield from _ask_of_doors(context)
    joints = context.project.members.get(("joints",), ())
    if joints and not context.project.members.get(("sealants",)):
        yield OpenAnswer(f"{SEALING} ({span_marks(joints)})", ("SLT-07",), decides=False, party="applicator")
    yield from _ask_of_walls(context, str(model))


def _ask_of_vapor(context: DocumentContext) -> Iterator[OpenAnswer]:
    """What moisture in the walls is computed from: indoor air, permeance of what lies over the wall, and the code."""
    waiting = {mark for clause in context.judgment.not_judged if clause.rule == _VAPOR for mark in clause.walls}
    if waiting:
        yield from _ask_of_layers(context, sorted(waiting)) if context.is_marked else ()
        asked = f"Indoor design temperature, {UNITS[context.first]['temperature']}, and relative humidity, %, in winter"
        yield OpenAnswer(asked, (_VAPOR,), decides=True)
    if asks_requirement(context):
        yield OpenAnswer(_ENERGY, (_VAPOR,), decides=True)


def _ask_of_layers(context: DocumentContext, walls: list[str]) -> Iterator[OpenAnswer]:
    """The permeance of what the EIFS manufacturer puts over the wall, whose layers nobody has told yet."""
    project = context.project
    field = project.schema.field_at(("walls", "*", "layers", "*", "permeance"))
    assert field is not None
    untold = [mark for mark in walls if not project.members.get(("walls", mark, "layers"))]
    if untold:
        barriers = {project.get(("walls", mark, "wrb", "kind")) for mark in untold} - {None, "none"}
        methods = {project.get(("walls", mark, "attachment", "method")) for mark in untold}
        adhesive = "adhesive" if methods == {_FULL_BED} else "full-bed adhesive"
        layers = (*(["WRB"] if barriers else []), *([adhesive] if _FULL_BED in methods else []))
        named = join_series([*layers, "board", "base coat"])
        asked = f"Permeance of {named}, {name_unit(field, context.first)} ({', '.join(untold)})"
        yield OpenAnswer(asked, (_VAPOR,), decides=True, party="eifs_source")


def _ask_of_faces(context: DocumentContext) -> Iterator[OpenAnswer]:
    """How plane a prominent face is to be, and whether what stands below is out of reach of overspray."""
    found = context.judgment.findings
    prominent = tuple(dict.fromkeys(mark for finding in found if finding.code in _LOOSE for mark in finding.subjects))
    if prominent:
        under = f"Substrate limit under a {context.figure('straightedge.long')} straightedge"
        looser = ", where none or a looser one is specified" if reads_first(context) else ""
        asked = f"{under}{looser} ({span_marks(prominent)})"
        figures = (context.limit("substrate.plane_prominent"),)
        decides = is_undecided(context) and is_built(context, prominent)
        yield OpenAnswer(asked, ("PLN-02",), decides=decides, figures=figures, judged=True)
    if any(finding.code == _VEHICLES for finding in found):
        yield OpenAnswer(_CLEARED, (_VEHICLES[:_RULE],), decides=False, party="owner")


def _ask_of_standing(context: DocumentContext) -> Iterator[OpenAnswer]:
    """What is asked of walls that stand already: their lot line, their water, who tests and who mends them."""
    if is_undecided(context) and list_standing(context):
        standing = ", ".join(list_standing(context))
        yield OpenAnswer(f"{_LOT_LINE} ({standing})", (_CODE,), decides=True, party="owner")
        yield OpenAnswer(f"{_HUNG} ({standing})", (PREPARED,), decides=True, party="owner")
    wet = list_wet(context, list_barriers(context))
    if wet:
        yield OpenAnswer(f"{_WATER} ({', '.join(wet)})", ("ATT-08",), decides=True, party="owner")
    yield from _ask_for_testers(context)
    yield from _ask_of_repairs(context)


def _ask_for_testers(context: DocumentContext) -> Iterator[OpenAnswer]:
    """Who surveys and pulls the walls that stand, while their reports are pending."""
    pending = {entry.code for entry in list_pending(context)}
    asked = [who for code, who in _TESTERS.items() if code in pending]
    held = dict.fromkeys(code[:_RULE] for code in _TESTERS if code in pending)
    if asked:
        yield OpenAnswer(f"Names: {'; '.join(asked)}", tuple(held), decides=True, party="owner", names="testers")


def _ask_of_repairs(context: DocumentContext) -> Iterator[OpenAnswer]:
    """Who mends and washes the walls that stand, and with what they are pointed, before their bond is tested."""
    standing = list_standing(context) if is_undecided(context) else []
    faults = {mark: context.project.get(("walls", mark, "substrate", "condition")) or () for mark in standing}
    faulty = [mark for mark, found in faults.items() if found]
    if faulty:
        asked = f"{_REPAIR} ({', '.join(faulty)})"
        yield OpenAnswer(asked, (PREPARED,), decides=True, party="general_contractor")
    pointed = [mark for mark, found in faults.items() if "open_joints" in map(str, found)]
    if pointed:
        yield OpenAnswer(f"{_MORTAR} ({', '.join(pointed)})", (PREPARED,), decides=True)


def _ask_of_masonry(context: DocumentContext) -> Iterator[OpenAnswer]:
    """Whether new concrete or masonry that board is glued to was painted or treated, which no list of faults tells."""
    faces = list_untold_faces(context)
    if faces:
        asked = f"{_BARE} ({', '.join(faces)})"
        yield OpenAnswer(asked, (PREPARED,), decides=True, party="general_contractor")


def _ask_of_stated(context: DocumentContext) -> Iterator[OpenAnswer]:
    """The figures of a dark color and of a base coat that nobody has named: the word of their makers makes them so."""
    for color in _list_stated(context):
        told = (context.display(("colors", color, "lrv")),)
        yield OpenAnswer(f"{_REFLECTANCE} ({color})", ("HEA-05",), decides=True, party="finish_source", figures=told)
    for mark in context.project.members[("walls",)]:
        path = ("walls", mark, "base_coat")
        passes, thickness = (context.display((*path, name)) for name in ("passes", "dry_thickness"))
        named = context.project.is_given((*path, "product"))
        if not (named or passes.open or thickness.open):
            asked = f"Base coat thickness in {''.join(map(str, count_things(passes, 'pass', 'passes')))} ({mark})"
            yield OpenAnswer(asked, (_COATS_TOLD,), decides=True, party="eifs_source", figures=(thickness,))


def _list_stated(context: DocumentContext) -> list[str]:
    """The colors held to be dark by a light reflectance of which nobody knows whose it is: they have no number yet."""
    dark = dict.fromkeys(m for f in context.judgment.findings if f.code == _DARK for m in f.subjects)
    return [mark for mark in dark if not context.project.is_given(("colors", mark, "number"))]


def _ask_of_doors(context: DocumentContext) -> Iterator[OpenAnswer]:
    """The landings that are not shown; a set that is issued tells of them in D05 alone."""
    doors = [f.place.path.split(".")[_MARK] for f in context.judgment.findings if f.code == _LANDING]
    if doors and context.draft:
        asked = f"Landing at the door: size, and top below the sill, or none ({', '.join(doors)})"
        yield OpenAnswer(asked, (_RULE_OF_LANDING,), decides=False)


def _feet(context: DocumentContext) -> str:
    return "ft" if context.first == "ip" else "m"


def _ask_of_walls(context: DocumentContext, model: str) -> Iterator[OpenAnswer]:
    """What the code asks of the walls, each question with the marks of those it is open for."""
    least = context.limit("foam.thermal_barrier").text
    barrier = (f"{_CODE} {SECTIONS[model][1]}",) if model in SECTIONS else ()
    unknown, standing = list_unknown(context), list_standing(context)
    weather = (f"{_CODE} {name_weather_sections(context)}", _INSPECTION)
    asked = (
        (_PARTED, barrier, list_solid(context)),
        (
            f"Thermal barrier: {least} gypsum board or equal between board and interior? yes/no",
            barrier,
            [mark for mark in list_unparted(context) if mark not in unknown],
        ),
        (
            f"Thermal barrier between all board and interior: concrete, masonry, or {least} gypsum board or equal?",
            barrier,
            unknown,
        ),
        (
            "Existing wall: solid, cavity, or veneer; to IBC Chapter 19 or 21, or accepted by the authority: yes/no",
            weather,
            [mark for mark in list_solid(context) if mark in standing],
        ),
        (
            "Is the wall concrete or masonry designed to the code? yes/no",
            weather,
            [mark for mark in list_solid(context) if mark not in standing],
        ),
        ("Concrete or masonry to IBC Chapter 19 or 21, or accepted by the authority? yes/no", weather, unknown),
        (
            f"Fire rating, hours; bearing: yes/no; separation of each face, {_feet(context)}",
            (f"{_CODE} 2603.5.1",),
            list_unrated(context),
        ),
    )
    for question, holds, walls in asked:
        if walls:
            yield OpenAnswer(f"{question} ({', '.join(walls)})", holds, decides=True)
