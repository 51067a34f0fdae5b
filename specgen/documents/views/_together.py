"""What a person answers together, in one row of the open items: the compressor, the mesh of a wall, a film of coats."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.field_units import name_unit
from specgen.documents.views._fields import name_fields
from specgen.documents.views._needed import find_pattern
from specgen.documents.views._requests import Item
from specgen.model.block import CheckBox
from specgen.model.field import Field, Path, dotted_path
from specgen.model.figure_text import fill_figures

# The title of a row, and what it asks for by the path of each field; a yes or no is told behind the others.
_ROWS: dict[str, dict[str, str]] = {
    "Names": {
        f"parties.{role}.name": said
        for role, said in {
            "architect": "architect",
            "general_contractor": "general contractor",
            "inspector": "inspector",
            "eifs_source": "EIFS manufacturer",
            "finish_source": "finish manufacturer",
            "sealant_source": "sealant manufacturer",
        }.items()
    },
    "Site": {"site.altitude": "altitude", "site.latitude": "latitude"},
    "Design air temperature, published climate data": {"climate.hot_air": "hot", "climate.cold_air": "cold"},
    "Wind, ASCE 7": {
        "site.wind_speed": "basic speed for the risk category",
        "site.risk_category": "risk category, I to IV",
        "site.exposure": "exposure, B, C, or D",
    },
    "Building": {
        "building.mean_roof_height": "mean roof height",
        "building.least_plan_width": "minimum plan width",
    },
    "Review": {"contract.review_days": "length", "contract.review_day_kind": "calendar or working"},
    "Dates": {
        "schedule.color_sample_order_on": "sample color order",
        "schedule.submit_on": "submission",
        "mockup.planned_on": "mockup",
        "schedule.color_main_order_on": "main color order",
        "schedule.work_start": "start of work",
        "schedule.spray_start": "spraying start",
        "mockup.kept_to": "mockup kept until",
        "contract.completion_date": "contract complete",
    },
    "Spraying": {
        "schedule.shift_start": "shift start",
        "schedule.shift_hours": "shift length",
        "schedule.spray_end": "planned end",
    },
    "Face": {
        "elevations.*.prominent": "prominent",
        "elevations.*.critical_light": "raked by low light",
        "elevations.*.public_reach": "within reach of the public",
    },
    "EIFS above grade": {"elevations.*.grade_clearance": "clearance", "elevations.*.grade_is_soil": "soil below"},
    "Adjoining, corner, other material, or end": {
        "elevations.*.left_end": "at the left end",
        "elevations.*.right_end": "at the right end",
    },
    "Movement joints": {
        "elevations.*.joint_needs": "places that need one",
        "elevations.*.floor_lines": "floor lines without one",
    },
    "Sheathing": {"walls.*.substrate.standard": "standard", "walls.*.substrate.thickness": "thickness"},
    "WRB": {
        "walls.*.wrb.product": "product named in the ASTM E2568 and NFPA 285 reports",
        "walls.*.wrb.standard": "standard",
        "walls.*.wrb.coats": "coats",
        "walls.*.wrb.dry_thickness": "dry thickness",
        "walls.*.wrb.dry_hours": "drying time",
    },
    "Adhesive": {
        "walls.*.attachment.product": "product",
        "walls.*.attachment.adhesive_kind": "type, cement, dispersion, or foam",
        "walls.*.attachment.notch": "trowel notch",
        "walls.*.attachment.instructions": "instructions",
    },
    "Board": {
        "walls.*.insulation.product": "product",
        "walls.*.insulation.c578_type": "EPS type",
        "walls.*.insulation.r_value": "R-value",
        "walls.*.insulation.flame_spread": "flame spread index",
        "walls.*.insulation.smoke_developed": "smoke-developed index",
        "walls.*.insulation.e2430": "ASTM E2430",
        "walls.*.insulation.aged": "aged before use",
    },
    "Board work": {
        "walls.*.insulation.rasp_allowance": "rasped off",
        "walls.*.insulation.board_joint_to_reveal": "board joint to aesthetic joint",
        "walls.*.insulation.board_joint_to_opening_corner": "to opening corner",
    },
    "Base coat": {
        "walls.*.base_coat.product": "product",
        "walls.*.base_coat.kind": "type, cement added, cement blended, or no cement",
        "walls.*.base_coat.class": "system class, PB or PM",
        "walls.*.base_coat.dry_thickness": "dry thickness",
        "walls.*.base_coat.first_pass_dry_hours": "drying time of the first pass",
        "walls.*.base_coat.instructions": "instructions",
    },
    "Mesh": {
        "walls.*.base_coat.passes": "passes of base coat",
        "walls.*.mesh.layers": "layers",
        "walls.*.mesh.detail_at_aesthetic_joints": "detail at aesthetic joints",
        "walls.*.mesh.diagonals": "diagonal at openings",
        "walls.*.mesh.back_wrap": "back-wrapped edges",
    },
    "Aesthetic joints": {
        "aesthetic_joint.profile": "profile",
        "aesthetic_joint.width": "width",
        "aesthetic_joint.depth": "depth",
        "aesthetic_joint.tolerance": "tolerance",
    },
    "Base coat flatness": {
        "finish.flatness_long": "{straightedge.long} straightedge",
        "finish.flatness_short": "{straightedge.short} straightedge",
    },
    "Movement at the joint": {
        "joints.*.panel_length": "moving length",
        "joints.*.structural_closing": "closing",
        "joints.*.structural_opening": "opening",
        "joints.*.structural_shear": "shear by the structure",
    },
    "EIFS at the joint": {
        "joints.*.thermal_expansion": "thermal expansion",
        "joints.*.moisture_strain": "moisture strain, length per length",
    },
    "Sealing temperature": {"joints.*.install_low": "minimum", "joints.*.install_high": "maximum"},
    "Joint place": {
        "joints.*.elevation": "elevation",
        "joints.*.serves": "marks of what it serves",
        "joints.*.at": "position",
        "joints.*.runs": "direction",
    },
    "Joint": {
        "joints.*.length": "length",
        "joints.*.tolerance": "building tolerance",
        "joints.*.depth": "sealant depth",
        "joints.*.rod_diameter": "rod diameter",
        "joints.*.rod_kind": "rod, closed-cell, bicellular, or none",
        "joints.*.bond_break_tape": "bond-breaker tape",
    },
    "Sealant": {
        "sealants.*.product": "product",
        "sealants.*.c920_type": "ASTM C920 type, S or M",
        "sealants.*.c920_grade": "grade, NS or P",
        "sealants.*.modulus": "modulus",
    },
    "Adhesion report": {
        "sealants.*.reported_conditions": "conditions, dry, wet, frozen, heated, or weathered",
        "sealants.*.reported_face": "face tested",
    },
    "Products": {"smoothing.product": "smoothing coat", "primer.product": "primer", "gloss.product": "gloss"},
    "VOC content": {"smoothing.voc": "smoothing coat", "primer.voc": "primer", "gloss.voc": "gloss"},
    "Instructions": {
        "smoothing.instructions": "smoothing coat",
        "primer.instructions": "primer",
        "gloss.instructions": "gloss",
    },
    "Minimum storage temperature": {
        "smoothing.least_storage_temperature": "smoothing coat",
        "primer.least_storage_temperature": "primer",
        "gloss.least_storage_temperature": "gloss",
    },
    "Minimum drying temperature": {"primer.least_dry_temperature": "primer", "gloss.least_dry_temperature": "gloss"},
    "Maximum recoat time": {"primer.most_recoat_hours": "primer", "gloss.most_recoat_hours": "gloss"},
    "Maximum water addition": {"primer.max_water": "primer", "gloss.max_water": "gloss"},
    "Maximum humidity": {"primer.most_humidity": "primer", "gloss.most_humidity": "gloss"},
    "Smoothing coat": {"smoothing.between_hours": "drying between coats", "smoothing.spreading_rate": "spreading rate"},
    "Primer before gloss": {
        "primer.release_moisture": "maximum moisture reading, %",
        "primer.most_ph": "maximum pH",
        "primer.tinted": "tinted to the color",
    },
    "Gloss coat": {
        "gloss.touch_dry_hours": "touch-dry time",
        "gloss.first_pass": "first pass, light or full",
    },
    "Dry film per coat": {"primer.dry_film": "primer", "gloss.dry_film": "gloss"},
    "Volume solids": {"primer.volume_solids": "primer", "gloss.volume_solids": "gloss"},
    "Pail size": {"primer.pail": "primer", "gloss.pail": "gloss"},
    "Quantities": {
        "primer.reserve": "primer reserve",
        "gloss.reserve": "gloss reserve",
        "primer.transfer_efficiency": "primer transfer efficiency",
        "gloss.transfer_efficiency": "gloss transfer efficiency",
    },
    "Spray pattern": {
        "primer.pattern": "primer",
        "gloss.pattern": "gloss",
        "gloss.same_sprayer": "one sprayer both ways",
    },
    "Spray": {"spray.pattern": "fan shape", "spray.strainer_mesh": "strainer mesh"},
    "Sanding of smoothing coats": {"smoothing.abrasive": "abrasive grade", "smoothing.motion": "circles or straight"},
    "Solar figures of the color": {"colors.*.solar_reflectance": "reflectance", "colors.*.emittance": "emittance"},
    "Color": {
        "colors.*.number": "number",
        "colors.*.lead_time_days": "lead time",
        "colors.*.range_samples": "number of range samples",
    },
    "Color readings": {
        "colors.*.angles": "angles from gloss, 15, 25, 45, 75, or 110 degrees",
        "colors.*.tolerance": "color difference allowed at each",
    },
    "Gloss": {
        "gloss_target.units": "target, gloss units",
        "gloss_target.angle": "angle, 20, 60, or 85 degrees",
        "gloss_target.tolerance": "tolerance, gloss units either way",
    },
    "Equipment": {
        "guns": "spray guns",
        "hoses": "hoses with length and bore",
        "instruments": "instruments with calibration dates",
    },
    "People": {
        "people": "roles and qualifications",
        "crews": "crews by step, with names",
    },
    "Compressor": {
        "compressor.air_flow": "air flow",
        "compressor.at_pressure": "pressure",
        "compressor.rating_basis": "rated in free or standard air",
        "compressor.engine_derate": "derating for altitude",
        "compressor.filter": "filter",
        "compressor.dryer": "air dryer",
    },
    "Pressure tank": {
        "tank.volume": "volume",
        "tank.regulators": "number of regulators",
        "tank.agitation": "agitated by hand, agitator, recirculating, or not",
        "tank.lined": "lined",
        "tank.relief_valve": "relief valve",
    },
    "Safety": {
        "safety.rules": "rules",
        "safety.respirator_program": "respirator program",
        "safety.silica_plan": "silica plan",
        "safety.hazcom": "hazard communication",
    },
    "Mockup size and place": {
        "mockup.kind": "in place or free-standing",
        "mockup.width": "width",
        "mockup.height": "height",
        "mockup.facing": "facing, compass point",
        "mockup.walls": "walls shown",
    },
    "Mockup acceptance": {
        "mockup.includes": "details shown",
        "mockup.criteria": "criteria",
        "mockup.approver": "approved by architect, owner, contractor, or inspector",
    },
    "Mockup work": {
        "mockup.crew": "crews",
        "mockup.duration_days": "duration",
        "mockup.same_equipment": "production equipment",
        "mockup.same_access": "production access",
        "mockup.same_shade": "shade of the work",
        "mockup.destructive_area_apart": "separate area for tests",
    },
}
_TITLE_OF = {path: title for title, parts in _ROWS.items() for path in parts}


class Row(NamedTuple):
    """One row of the table: what is asked, with the figures that are proposed, and what waits for it."""

    asked: list[Any]
    holds: tuple[str, ...]


def join_items(context: DocumentContext, items: Iterable[Item]) -> list[Row]:
    """The rows of what a party is asked before one work; those of the same members that are answered together in one."""
    groups: dict[tuple[str, ...], list[Item]] = {}
    for item in items:
        groups.setdefault(_find_group(context, item), []).append(item)
    return [_join(context, group) for group in groups.values()]


def _find_group(context: DocumentContext, item: Item) -> tuple[str, ...]:
    """The title of the row of an item and the marks in it; what goes with nothing by itself."""
    title = _TITLE_OF.get(_find_path(context, item), "") if item.paths else ""
    return (title, *_list_marks(context, item)) if title else ("", item.text)


def _find_path(context: DocumentContext, item: Item) -> str:
    return dotted_path(find_pattern(context, item.paths[0]))


def _list_marks(context: DocumentContext, item: Item) -> list[str]:
    return [mark for marks in name_fields(context, item.paths).values() for mark in marks]


def _join(context: DocumentContext, items: list[Item]) -> Row:
    first, *others = items
    if not others:
        return Row([CheckBox(first.text + ":" * bool(first.figures)), *_tell_figures(first)], first.holds)
    title = _TITLE_OF[_find_path(context, first)]
    parts = {path: fill_figures(said, context.figure) for path, said in _ROWS[title].items()}
    told = sorted(items, key=lambda item: list(parts).index(_find_path(context, item)))
    marks = ", ".join(_list_marks(context, first))
    open_ = [(parts[_find_path(context, item)], _find_field(context, item)) for item in told if not item.figures]
    asked = [CheckBox(_tell(title + (f" ({marks})" if marks else ""), open_, context.first))]
    for item in (item for item in told if item.figures):
        begins = ":" if asked[1:] == [] and not open_ else ";"
        asked += [f"{begins} {parts[_find_path(context, item)]},", *_tell_figures(item)]
    return Row(asked, tuple(dict.fromkeys(code for item in items for code in item.holds)))


def _tell_figures(item: Item) -> list[Any]:
    """` confirm 60 to 100`: the figures that are proposed, each with the letter of its source."""
    ends = [part for figure in item.figures for part in (" to ", figure)]
    return [" confirm ", *ends[1:]] if ends else []


def _find_field(context: DocumentContext, item: Item) -> Field | None:
    """The field of an item; None for a list."""
    path: Path = tuple(item.paths[0].split("."))
    return context.project.schema.field_at(path)


def _tell(title: str, parts: list[tuple[str, Field | None]], system: str) -> str:
    """`Mesh (W1): layers; diagonal at openings: yes/no`; a unit that all parts have stands behind the title."""
    asked = [said for said, field in parts if field is not None and field.kind == "yes_no"]
    plain = [(said, name_unit(field, system) if field else "") for said, field in parts if said not in asked]
    units = {unit for _, unit in plain}
    shared = f", {units.pop()}" if len(units) == 1 and len(plain) > 1 and "" not in units else ""
    told = [said if shared or not unit else f"{said}, {unit}" for said, unit in plain]
    told += [f"{', '.join(asked)}: yes/no"] if asked else []
    return f"{title}{shared}{': ' if told else ''}{'; '.join(told)}"
