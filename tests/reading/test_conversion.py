"""The text of each value to the type of its field, and what is said of a text that does not fit.

Which spellings are taken is a rule of this program; sources stand beside the rows that have one.
"""

import datetime
import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.field import Field, dotted_path
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import MOST_LINE, MOST_TEXT, InvalidValue
from specgen.reading.leaves import read_values
from specgen.reading.positions import Text, read_text
from specgen.reading.rules import Rules, convert_checked
from specgen.reading.schema import project_schema
from specgen.reading.structure import build_structure

FIELDS = project_schema().fields


def field(path: str) -> Field:
    return FIELDS[tuple(path.split("."))]


def read(folder: Path, text: str) -> tuple[Text, dict[str, Any]]:
    (folder / "a.yaml").write_text(text, "utf-8")
    made = read_text(folder / "a.yaml", "a.yaml")
    values = read_values(made, build_structure(made, project_schema().root).records, Rules())
    return made, {dotted_path(path): value for path, value in values.items()}


def refused(made: Field, text: str) -> InvalidValue:
    """What is said of a text that does not fit its field."""
    with pytest.raises(InvalidValue) as raised:
        convert_checked(made, text)
    return raised.value


def quantity(number: int | str, unit: str) -> Quantity:
    return Quantity.of(number, unit)


# Kind, field, a text that fits, and the value it is.
GOOD = [
    ("integer", "gloss.coats", "2", 2),
    ("integer", "gloss.coats", "+2", 2),
    ("integer", "gloss.coats", "2.0", 2),
    ("integer", "gloss.coats", "02", 2),
    ("number", "gloss.dry_hours", "24", 24),
    ("number", "gloss.dry_hours", "1.5", Fraction(3, 2)),
    ("number", "gloss.dry_hours", "24.0", 24),
    ("number", "gloss.dry_hours", "2.4e1", 24),
    ("number", "gloss.dry_hours", "3/4", Fraction(3, 4)),
    ("number", "gloss.dry_hours", "1-1/2", Fraction(3, 2)),
    ("number", "colors.*.solar_reflectance", ".4", Fraction(2, 5)),
    ("number", "colors.*.solar_reflectance", "0.1", Fraction(1, 10)),
    ("percent", "gloss.max_water", "8", 8),
    ("percent", "gloss.max_water", "8%", 8),
    ("percent", "gloss.max_water", "8 %", 8),
    ("percent", "gloss.max_water", "7.5 %", Fraction(15, 2)),
    ("percent", "gloss.max_water", "0.25 %", Fraction(1, 4)),
    ("percent", "gloss.max_water", "0.25%", Fraction(1, 4)),
    ("percent", "gloss.max_water", "0", 0),
    ("percent", "gloss.max_water", "1", 1),
    ("percent", "gloss.max_water", "1.5", Fraction(3, 2)),
    ("percent", "log.water", "0.5 %", Fraction(1, 2)),
    ("choice", "gloss.pattern", "cross_hatch", "cross_hatch"),
    ("choice", "gloss.pattern", "cross-hatch", "cross_hatch"),
    ("choice", "gloss.pattern", "Cross Hatch", "cross_hatch"),
    ("choice", "walls.*.insulation.kind", "EPS", "eps"),
    ("choice", "walls.*.substrate.kind", "glass mat gypsum", "glass_mat_gypsum"),
    ("choice", "walls.*.substrate.kind", "glass-mat-gypsum", "glass_mat_gypsum"),
    ("choice", "walls.*.substrate.kind", "Glass-mat Gypsum", "glass_mat_gypsum"),
    ("choice", "code.construction_type", "VB", "VB"),
    ("choice", "code.construction_type", "vb", "VB"),
    ("choice", "contract.items.*.sd_type", "sd 02", "SD-02"),
    ("yes_no", "primer.tinted", "yes", True),
    ("yes_no", "primer.tinted", "Yes", True),
    ("yes_no", "primer.tinted", "true", True),
    ("yes_no", "primer.tinted", "no", False),
    ("yes_no", "primer.tinted", "NO", False),
    ("yes_no", "primer.tinted", "False", False),
    ("date", "schedule.work_start", "2027-03-01", datetime.date(2027, 3, 1)),
    # Leap years: every fourth, of the full centuries every fourth. ISO 8601, Gregorian calendar.
    ("date", "schedule.work_start", "2028-02-29", datetime.date(2028, 2, 29)),
    ("date", "schedule.work_start", "2000-02-29", datetime.date(2000, 2, 29)),
    ("time", "schedule.shift_start", "06:30", datetime.time(6, 30)),
    ("time", "schedule.shift_start", "6:30", datetime.time(6, 30)),
    ("time", "schedule.shift_start", "00:00", datetime.time(0, 0)),
    ("time", "schedule.shift_start", "23:59", datetime.time(23, 59)),
    ("quantity", "site.altitude", "5,200 ft", quantity(5200, "ft")),
    ("quantity", "site.altitude", "1600 m", quantity(1600, "m")),
    ("quantity", "climate.hot_air", "95 °F", quantity(95, "F")),
    ("quantity", "climate.hot_air", "35 C", quantity(95, "F")),
    ("quantity", "climate.cold_air", "-10 F", quantity(-10, "F")),
    ("quantity", "walls.*.insulation.thickness", '1-1/2"', quantity("3/2", "in")),
    ("quantity", "walls.*.insulation.r_value", "R-5.6", quantity("5.6", "R")),
    ("quantity", "joints.*.thermal_expansion", "8e-6 /F", quantity("0.000008", "/F")),
    # The sixteen points of the compass lie 22.5 degrees apart, clockwise from north.
    ("bearing", "mockup.facing", "N", quantity(0, "deg")),
    ("bearing", "mockup.facing", "NNE", quantity("22.5", "deg")),
    ("bearing", "mockup.facing", "E", quantity(90, "deg")),
    ("bearing", "mockup.facing", "sse", quantity("157.5", "deg")),
    ("bearing", "mockup.facing", "SW", quantity(225, "deg")),
    ("bearing", "mockup.facing", "south", quantity(180, "deg")),
    ("bearing", "mockup.facing", "South-West", quantity(225, "deg")),
    ("bearing", "mockup.facing", "north northeast", quantity("22.5", "deg")),
    ("bearing", "mockup.facing", "NNW", quantity("337.5", "deg")),
    ("bearing", "mockup.facing", "200", quantity(200, "deg")),
    ("bearing", "mockup.facing", "12.5 deg", quantity("12.5", "deg")),
    ("bearing", "mockup.facing", "360°", quantity(360, "deg")),
    ("text", "project.number", "010", "010"),
    ("text", "project.number", "1:50", "1:50"),
    ("text", "project.name", "x" * MOST_LINE, "x" * MOST_LINE),
    ("text", "project.name", "Trial\n", "Trial"),
    ("text", "project.address", "x" * MOST_TEXT, "x" * MOST_TEXT),
    ("text", "project.address", "14 Quay Street\r\nAlder Falls\rX", "14 Quay Street\nAlder Falls\nX"),
    ("reference", "elevations.*.wall", "W1", "W1"),
    ("reference", "elevations.*.wall", "1", "1"),
    ("file", "coating_system", "coat.yaml", "coat.yaml"),
    ("file", "coating_system", "sub/our coat.yaml", "sub/our coat.yaml"),
    ("file", "attachments.*.file", "papers/A1..pdf", "papers/A1..pdf"),
    ("list", "site.surroundings", "dust", "dust"),
    ("list", "elevations.*.layout.vertical_lines", "5 ft", quantity(5, "ft")),
]


@pytest.mark.parametrize(("kind", "path", "text", "value"), GOOD, ids=[f"{r[0]}-{r[2][:12]}" for r in GOOD])
def test_a_text_that_fits_is_the_value_it_says(kind: str, path: str, text: str, value: Any) -> None:
    assert field(path).kind == kind
    made = convert_checked(field(path), text)
    assert made == value
    assert type(made) is type(value)


SLIP = "outside the range of this field"
# Kind, field, a text that does not fit, a part of what is said, and a part of the hint.
BAD = [
    ("integer", "gloss.coats", "two", "the number of 'two' is written in words", "write 2"),
    ("integer", "gloss.coats", "2 coats", "'2 coats' is not a number", "write 2, without a word after it"),
    ("integer", "building.stories", "2-story", "'2-story' is not a number", "write 2, without a word after it"),
    ("integer", "gloss.coats", "2.5", "'2.5' is not a whole number", "whole number"),
    ("integer", "gloss.coats", "true", "'true' is not a number", ""),
    ("integer", "gloss.coats", "0x2", "'0x2' is not a number", ""),
    ("integer", "gloss.coats", "1_0", "'1_0' is not a number", ""),
    ("integer", "gloss.coats", "\u0662", "is not a number", ""),
    ("integer", "gloss.coats", "9", f"9 is above 6, {SLIP}", "0 to 6"),
    ("integer", "gloss.coats", "-2", f"-2 is below 0, {SLIP}", "0 to"),
    ("number", "gloss.dry_hours", ".nan", "'.nan' is not a number", ""),
    ("number", "gloss.dry_hours", ".inf", "'.inf' is not a number", ""),
    ("number", "gloss.dry_hours", "-.inf", "'-.inf' is not a number", ""),
    ("number", "gloss.dry_hours", "nan", "'nan' is not a number", ""),
    ("number", "gloss.dry_hours", "inf", "'inf' is not a number", ""),
    ("number", "gloss.dry_hours", "24 h", "'24 h' is not a number", "write 24, the bare number of hours"),
    ("number", "gloss.dry_hours", "24h", "'24h' is not a number", "write 24, the bare number of hours"),
    ("number", "gloss.dry_hours", "2 days", "'2 days' is not a number", "write 48, the bare number of hours"),
    ("number", "gloss.dry_hours", "24 psi", "'24 psi' is not a number", "without a unit"),
    ("number", "gloss.dry_hours", "24-36", "'24-36' is a range; one figure stands here", "write 24 or 36"),
    ("number", "gloss.dry_hours", "n/a", "'n/a' is not a number", "write tbd where it is not known yet"),
    ("number", "gloss_target.units", "75 +/- 5", "a figure with its tolerance", "write 75"),
    ("number", "colors.*.solar_reflectance", "45%", "'45%' may be a percentage; this is a share of 1", "write 0.45"),
    ("number", "colors.*.solar_reflectance", "45", "'45' may be a percentage; this is a share of 1", "write 0.45"),
    ("number", "guns.*.duty", "60 %", "may be a percentage; this is a share of 1", "write 0.6"),
    ("number", "gloss.dry_hours", "1,5", "the comma of '1,5' does not separate thousands", "write 1.5"),
    ("number", "gloss.dry_hours", "3/4/5", "more digits follow the fraction of '3/4/5'", "one fraction"),
    ("number", "gloss.dry_hours", "3/0", "'3/0' divides by zero", "whole number of parts"),
    ("number", "gloss.dry_hours", "9" * 40, "has more than 15 digits", "round it"),
    ("number", "gloss.dry_hours", "1e999", "the power of ten of '1e999' is out of all bounds", "without `e`"),
    ("number", "gloss.dry_hours", "3/2", "the fraction of '3/2' is 1 or more", "write 1 1/2"),
    ("number", "gloss.dry_hours", "1,500", "can be read in two ways", "write 1500 or 1.500"),
    ("number", "gloss.dry_hours", "\u0663", "is not a number", "without a unit"),
    ("number", "gloss.dry_hours", "1e99", "is above", ""),
    ("number", "gloss.dry_hours", "", "'' is not a number", ""),
    ("percent", "gloss.max_water", "101", "101 is above 50", "0 to 50"),
    ("percent", "gloss.max_water", "-1 %", "-1 % is below 0", ""),
    ("percent", "walls.*.substrate.moisture", "0.25", "'0.25' may be a share or a percentage", "25% or 0.25%"),
    ("percent", "gloss.volume_solids", ".65", "'.65' may be a share or a percentage", "write 65% or .65%"),
    ("percent", "gloss.reserve", "1/10", "'1/10' may be a share or a percentage", "write 10% or 1/10%"),
    ("percent", "log.water", "0.06", "'0.06' may be a share or a percentage", "write 6% or 0.06%"),
    ("percent", "log.water", "-0.06", "-0.06 is below 0", ""),
    ("percent", "gloss.max_water", "% 8", "is not a number", ""),
    ("percent", "gloss.max_water", "half", "'half' is not a number", "bare number"),
    ("percent", "gloss.max_water", "eight", "written in words", "write 8"),
    ("percent", "gloss.max_water", "8 %%", "is not a number", ""),
    ("percent", "gloss.max_water", "%", "is not a number", ""),
    ("percent", "gloss.max_water", "8 percent", "is not a number", "write 8%"),
    ("percent", "walls.*.drainage.efficiency", "0.94", "may be a share or a percentage", "write 94% or 0.94%"),
    (
        "choice",
        "gloss.pattern",
        "cross-hach",
        "'cross-hach' is not a choice for this field",
        "did you mean cross_hatch?",
    ),
    ("choice", "gloss.pattern", "Cross Hach", "is not a choice for this field", "did you mean cross_hatch?"),
    ("choice", "walls.*.substrate.kind", "glas_mat_gypsum", "is not a choice", "did you mean glass_mat_gypsum?"),
    ("choice", "walls.*.substrate.kind", "marble", "is not a choice", "known: "),
    ("choice", "walls.*.insulation.kind", "EPSS", "is not a choice", "did you mean eps?"),
    ("choice", "code.construction_type", "VI", "is not a choice", "known: IA, "),
    ("choice", "gloss.pattern", "", "is not a choice", "known: "),
    ("yes_no", "primer.tinted", "maybe", "'maybe' is neither yes nor no", "write yes or no"),
    ("yes_no", "primer.tinted", "y", "'y' is neither yes nor no", "write yes or no"),
    ("yes_no", "primer.tinted", "on", "'on' is neither yes nor no", "write yes or no"),
    ("yes_no", "primer.tinted", "1", "'1' is neither yes nor no", "write yes or no"),
    ("date", "schedule.work_start", "2027-02-29", "'2027-02-29' is not a date", "such as 2027-03-01"),
    ("date", "schedule.work_start", "1900-02-29", "is not a date", ""),
    ("date", "schedule.work_start", "2027-04-31", "is not a date", ""),
    ("date", "schedule.work_start", "2027-13-01", "is not a date", ""),
    ("date", "schedule.work_start", "2027-00-10", "is not a date", ""),
    ("date", "schedule.work_start", "0000-01-01", "is not a date", ""),
    ("date", "schedule.work_start", "2027-3-1", "is not a date", "write 2027-03-01"),
    ("date", "schedule.work_start", "20270301", "is not a date", "write 2027-03-01"),
    ("date", "schedule.work_start", "2027-W09-1", "is not a date", "year-month-day"),
    ("date", "schedule.work_start", "01/03/2027", "is not a date", "write 2027-01-03 or 2027-03-01"),
    ("date", "schedule.work_start", "March 1, 2027", "is not a date", "write 2027-03-01"),
    ("date", "schedule.work_start", "2027-03-01T06:30", "is not a date", "year-month-day"),
    ("time", "schedule.shift_start", "25:00", "'25:00' is not a time of day", "such as 06:30"),
    ("time", "schedule.shift_start", "24:00", "is not a time of day", ""),
    ("time", "schedule.shift_start", "06:60", "is not a time of day", ""),
    ("time", "schedule.shift_start", "6:5", "is not a time of day", ""),
    ("time", "schedule.shift_start", "6.30", "is not a time of day", ""),
    ("time", "schedule.shift_start", "6 am", "is not a time of day", ""),
    ("time", "schedule.shift_start", "390", "is not a time of day", ""),
    ("quantity", "site.altitude", "5200", "'5200' has no unit", "write 5200 ft or 5200 m"),
    ("quantity", "site.altitude", "5200 fet", "unit 'fet' is not known", "did you mean ft?"),
    ("quantity", "site.altitude", "1600 metres high", "is not known", "write one of: "),
    ("quantity", "site.altitude", "high", "'high' is not a quantity", "such as 5200 ft"),
    ("quantity", "walls.*.insulation.thickness", "thick", "'thick' is not a quantity", "such as 2 in"),
    ("quantity", "walls.*.insulation.thickness", "two inches", "is written in words", "write 2 inches"),
    ("quantity", "weather.max_spray_wind", "n/a", "'n/a' is not a quantity", "write tbd where it is not known yet"),
    ("quantity", "climate.hot_air", "95 psi", "'psi' is not a unit of temperature", ""),
    ("quantity", "climate.hot_air", "500 F", "500 F is above", " to "),
    ("quantity", "walls.*.insulation.thickness", "1/0 in", "divides by zero", ""),
    ("quantity", "walls.*.insulation.thickness", "-2 in", "-2 in is below", " to "),
    ("bearing", "mockup.facing", "up", "'up' is not a compass point", "N, NNE, NE"),
    ("bearing", "mockup.facing", "NEN", "is not a compass point", ""),
    ("bearing", "mockup.facing", "400", "'400' lies outside 0 to 360 degrees", "clockwise"),
    ("bearing", "mockup.facing", "-10", "lies outside 0 to 360 degrees", ""),
    ("bearing", "mockup.facing", "20 ft", "is not a compass point", ""),
    ("text", "project.name", "x" * (MOST_LINE + 1), f"longer than {MOST_LINE} characters", "shorten it"),
    ("text", "project.name", "Trial\nW1  yes", "more than one line", "write it in one line"),
    ("text", "project.name", "Trial\rW1  yes", "more than one line", "write it in one line"),
    ("file", "firm", "firm\n.yaml", "more than one line", "write it in one line"),
    ("text", "project.address", "x" * (MOST_TEXT + 1), f"longer than {MOST_TEXT} characters", "put it in a document"),
    ("file", "coating_system", "../x.yaml", "'../x.yaml' leaves the project folder", "inside the folder"),
    ("file", "coating_system", "a/../../x.yaml", "leaves the project folder", ""),
    ("file", "firm", "/etc/x.yaml", "leaves the project folder", ""),
    ("file", "firm", "C:\\x.yaml", "leaves the project folder", ""),
    ("file", "firm", "C:x.yaml", "leaves the project folder", ""),
    ("file", "firm", "..\\x.yaml", "leaves the project folder", ""),
    ("file", "firm", "https://x.yaml", "leaves the project folder", ""),
    ("list", "site.surroundings", "mud", "'mud' is not a choice", "known: "),
    ("list", "elevations.*.layout.vertical_lines", "5", "'5' has no unit", "write 5 ft or 5 m"),
    ("list", "records", "../week.yaml", "leaves the project folder", ""),
]


@pytest.mark.parametrize(("kind", "path", "text", "said", "hint"), BAD, ids=[f"{r[0]}-{r[2][:12]}" for r in BAD])
def test_a_text_that_does_not_fit_is_told_with_what_would(
    kind: str, path: str, text: str, said: str, hint: str
) -> None:
    assert field(path).kind == kind
    fault = refused(field(path), text)
    assert said in fault.message
    assert hint in fault.hint


def test_every_kind_of_field_has_a_text_that_fits_and_one_that_does_not() -> None:
    kinds = {made.kind for made in FIELDS.values()}
    assert {row[0] for row in GOOD} == kinds
    # Any single value is a mark; whether it is the mark of a member is told once all files are read.
    assert {row[0] for row in BAD} == kinds - {"reference"}


# So a bare number below 1 is asked back for every one of them; a field for smaller figures would need an exception.
def test_no_percentage_of_the_schema_is_one_whose_usual_figures_lie_below_one() -> None:
    for made in (m for m in FIELDS.values() if m.kind == "percent"):
        assert int(made.most) >= 30, dotted_path(made.path)
        assert int(made.example) >= 1, dotted_path(made.path)
        assert "may be a share or a percentage" in refused(made, "0.5").message


@pytest.mark.parametrize("spell", [str.upper, str.title, lambda t: t.replace("_", " "), lambda t: t.replace("_", "-")])
def test_every_choice_is_taken_however_it_is_spelled(spell: Callable[[str], str]) -> None:
    for made in (m for m in FIELDS.values() if "choice" in (m.kind, m.of)):
        assert [convert_checked(made, spell(value)) for value in made.values] == list(made.values), dotted_path(
            made.path
        )


# A field, what people write, and the choice it is taken for, or what it is asked back with. Common practice, no source.
TRADE_WORDS = [
    ("walls.*.substrate.kind", "CMU", "concrete_masonry"),
    ("walls.*.substrate.kind", "concrete block", "concrete_masonry"),
    ("walls.*.substrate.kind", "GMG", "glass_mat_gypsum"),
    ("walls.*.substrate.kind", "glass mat", "glass_mat_gypsum"),
    ("walls.*.substrate.kind", "cementboard", "cement_board"),
    ("walls.*.framing.kind", "steel studs", "cold_formed_steel"),
    ("walls.*.wrb.kind", "housewrap", "building_wrap"),
    ("walls.*.wrb.kind", "House Wrap", "building_wrap"),
    ("walls.*.wrb.kind", "peel-and-stick", "self_adhered_sheet"),
    ("walls.*.wrb.kind", "liquid applied", "fluid_applied"),
    ("walls.*.attachment.method", "dot and dab", "adhesive_ribbon_and_dab"),
    ("walls.*.attachment.method", "notched trowel", "adhesive_notched_trowel"),
    ("walls.*.insulation.kind", "expanded polystyrene", "eps"),
    ("walls.*.insulation.kind", "EPS insulation", "eps"),
    ("walls.*.insulation.kind", "EPS board", "eps"),
    ("walls.*.attachment.method", "screws and adhesive", "adhesive_and_mechanical"),
    ("walls.*.drainage.outlets", "bottom", "base"),
    ("walls.*.drainage.outlets", "window heads", "heads"),
    ("aesthetic_joint.profile", "V-groove", "v"),
    ("aesthetic_joint.profile", "V joint", "v"),
    ("sealants.*.chemistry", "urethane", "polyurethane"),
    ("sealants.*.c920_class", "50%", "50"),
    ("sealants.*.c920_class", "Class 50", "50"),
    ("code.construction_type", "II-B", "IIB"),
    ("code.construction_type", "Type VB", "VB"),
    ("code.occupancy_groups", "Business", "B"),
    ("code.occupancy_groups", "A3", "A-3"),
    ("code.occupancy_groups", "Group R-2", "R-2"),
    ("climate.months.*.month", "January", "jan"),
    ("colors.*.angles", "45 \u00b0", "45"),
    ("guns.*.kind", "HVLP gun", "hvlp"),
    ("mockup.kind", "free standing", "free_standing"),
    ("package.purpose", "mockup", "mockup_submittal"),
]
ASKED_BACK = [
    ("walls.*.insulation.kind", "foam", "eps, xps, polyiso or phenolic"),
    ("walls.*.insulation.kind", "polyurethane foam", "polyiso"),
    ("walls.*.substrate.kind", "gypsum sheathing", "glass_mat_gypsum or paper_faced_gypsum"),
    ("walls.*.substrate.kind", "drywall", "glass_mat_gypsum or paper_faced_gypsum"),
    (
        "walls.*.substrate.kind",
        "exterior sheathing",
        "glass_mat_gypsum, cement_board, plywood, osb or paper_faced_gypsum",
    ),
    ("walls.*.attachment.method", "glued", "adhesive_full_bed, adhesive_notched_trowel or adhesive_ribbon_and_dab"),
    ("walls.*.attachment.method", "screws", "mechanical or adhesive_and_mechanical"),
    ("sealants.*.chemistry", "caulk", "silicone, polyurethane or hybrid"),
]
# Words that are no choice and only look like one: another material, another class, another code.
ALIKE = [
    ("walls.*.substrate.kind", "concrete brick"),
    ("walls.*.substrate.kind", "backer board"),
    ("walls.*.substrate.kind", "hardboard"),
    ("walls.*.substrate.kind", "fiber cement board"),
    ("walls.*.substrate.kind", "gypsum concrete"),
    ("walls.*.substrate.kind", "metal lath"),
    ("walls.*.substrate.kind", "ICC"),
    ("walls.*.insulation.kind", "glass wool"),
    ("walls.*.insulation.kind", "XPE"),
    ("walls.*.insulation.kind", "EPP"),
    ("walls.*.insulation.kind", "mineral board"),
    ("sealants.*.chemistry", "silicate"),
    ("sealants.*.chemistry", "acrylic"),
    ("code.construction_type", "IIC"),
    ("code.wind_standard", "asce_7_23"),
]


@pytest.mark.parametrize(("path", "text", "choice"), TRADE_WORDS, ids=[row[1] for row in TRADE_WORDS])
def test_a_word_of_the_trade_is_taken_for_the_choice_it_means(path: str, text: str, choice: str) -> None:
    assert convert_checked(field(path), text) == choice
    assert convert_checked(field(path), text.upper()) == choice


@pytest.mark.parametrize(("path", "text", "choices"), ASKED_BACK, ids=[row[1] for row in ASKED_BACK])
def test_a_word_that_may_mean_several_is_asked_back(path: str, text: str, choices: str) -> None:
    fault = refused(field(path), text)
    assert fault.message == f"'{text}' may be {choices}"
    assert fault.hint.startswith(("write one of these; known: ", "write polyiso if so; known: "))


@pytest.mark.parametrize(("path", "text"), ALIKE, ids=[row[1] for row in ALIKE])
def test_no_choice_is_offered_for_its_letters_alone(path: str, text: str) -> None:
    fault = refused(field(path), text)
    assert fault.message == f"'{text}' is not a choice for this field"
    assert fault.hint == f"known: {', '.join(field(path).values)}"


def test_no_word_is_a_choice_of_its_own_field_or_stands_twice() -> None:
    for made in (m for m in FIELDS.values() if m.means):
        plain = [re.sub("[ _-]", "", word).lower() for word in (*made.values, *(word.word for word in made.means))]
        assert len(plain) == len(set(plain)), dotted_path(made.path)


def just_outside(made: Field, bound: str, side: int) -> str:
    """A text of the field's kind that lies a little below or above a bound."""
    if "integer" in (made.kind, made.of):
        return str(int(bound) + side)
    if "date" in (made.kind, made.of):
        return str(datetime.date.fromisoformat(bound) + datetime.timedelta(days=side))
    if "quantity" in (made.kind, made.of):
        limit = convert_checked(made, bound)
        return f"{limit.number(limit.unit) + side / 1000:.9f} {limit.unit}"
    return f"{float(bound) + side / 1000:.9f}"


BOUNDS = [
    pytest.param(made, side, bound, id=f"{dotted_path(made.path)}-{bound}")
    for made in FIELDS.values()
    for side, bound in ((-1, made.least), (1, made.most))
    if bound and made.kind != "bearing" and made.path != ("joints", "*", "thermal_expansion")
]


@pytest.mark.parametrize(("made", "side", "bound"), BOUNDS)
@pytest.mark.no_cover
def test_a_bound_is_taken_itself_and_what_lies_beyond_is_told_with_the_range(
    made: Field, side: int, bound: str
) -> None:
    assert convert_checked(made, bound) is not None
    fault = refused(made, just_outside(made, bound, side))
    assert f"is {'below' if side < 0 else 'above'} {bound}, {SLIP}" in fault.message
    assert fault.hint == f"{made.least} to {made.most}"


# A thousandth more is another thing altogether for so small a figure, so its bounds are tried by hand.
@pytest.mark.parametrize(("text", "side"), [("0 /F", "below"), ("1e-2 /F", "above"), ("-8e-6 /F", "below")])
def test_an_expansion_that_no_wall_has_is_told(text: str, side: str) -> None:
    assert f"is {side} " in refused(field("joints.*.thermal_expansion"), text).message


def test_a_fault_stands_at_its_value_and_leaves_the_others(tmp_path: Path) -> None:
    text, values = read(tmp_path, "gloss:\n  coats: two\n  dry_hours: 24\nwalls:\n  W1: {substrate: {kind: marble}}\n")
    assert [(p.path, p.file, p.line, p.column) for p in text.problems] == [
        ("gloss.coats", "a.yaml", 2, 3),
        ("walls.W1.substrate.kind", "a.yaml", 5, 20),
    ]
    assert values == {"gloss.dry_hours": 24}


def test_each_entry_of_a_list_is_told_at_its_own_place(tmp_path: Path) -> None:
    text, values = read(
        tmp_path, "site:\n  surroundings:\n    - dust\n    - mud\n    - {a: b}\n    - [dust]\n    - vehicles_below\n"
    )
    assert [(p.path, p.line) for p in text.problems] == [
        ("site.surroundings.1", 4),
        ("site.surroundings.2", 5),
        ("site.surroundings.3", 6),
    ]
    assert "'mud' is not a choice" in text.problems[0].message
    assert [p.message for p in text.problems[1:]] == ["a single value is wanted here"] * 2
    assert values == {"site.surroundings": ("dust", "vehicles_below")}


def test_an_entry_of_a_list_that_is_not_known_yet_is_left_out(tmp_path: Path) -> None:
    # Not known yet may stand anywhere: it is no fault here either, only no entry.
    text, values = read(tmp_path, "elevations: {E1: {layout: {vertical_lines: [5 ft, 10 ft]}}}\n")
    assert text.problems == []
    assert values["elevations.E1.layout.vertical_lines"] == (quantity(5, "ft"), quantity(10, "ft"))


def test_a_text_of_many_lines_is_one_value(tmp_path: Path) -> None:
    _, values = read(tmp_path, "project:\n  address: |\n    Long Hall\n    East Wing\n")
    assert values == {"project.address": "Long Hall\nEast Wing"}


def test_a_text_of_one_line_written_as_a_block_is_that_line(tmp_path: Path) -> None:
    _, values = read(tmp_path, "project:\n  name: >\n    Long Hall\n    East Wing\n")
    assert values == {"project.name": "Long Hall East Wing"}


ODD = st.one_of(
    st.text(max_size=30),
    st.lists(
        st.sampled_from([*"0159.,/-+ '\":%eERW½′°٣²", "ft", "in", "F", "psi", "yes", "nan", "N", "2027-", "..", "tbd"]),
        max_size=10,
    ).map("".join),
)


@given(st.sampled_from(sorted(FIELDS)), ODD)
def test_any_text_fits_a_field_or_is_told_why_not(path: tuple[str, ...], text: str) -> None:
    try:
        made = convert_checked(FIELDS[path], text)
    except InvalidValue as fault:
        assert fault.message
        return
    if FIELDS[path].values and "choice" in (FIELDS[path].kind, FIELDS[path].of):
        assert made in FIELDS[path].values
