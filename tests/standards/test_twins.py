"""The figure of metric work of every limit that has one, retyped, with where it is written."""

import pytest

from specgen.model.source import Kind
from specgen.quantities.parse import parse_any_quantity
from specgen.standards import load_standards

ROWS = load_standards()
TEXT, PRACTICE, MEMORY = Kind.PUBLISHED, Kind.PRACTICE, Kind.MEMORY

# Limit, its metric figure, whether a text prints it, and which; the others are the sizes metric trade rounds to.
TWINS = [
    ("substrate.plane", "6 mm", PRACTICE, "6 mm under 3 m"),
    ("straightedge.long", "3 m", PRACTICE, "straightedges are sold 3 m long"),
    ("straightedge.short", "600 mm", PRACTICE, "straightedges are sold 600 mm long"),
    ("substrate.plane_prominent", "3 mm", MEMORY, "3 mm under 3 m"),
    ("flatness.long", "3 mm", MEMORY, "3 mm under 3 m"),
    ("flatness.short", "1.5 mm", MEMORY, "1.5 mm under 600 mm"),
    ("board.thickness_most", "100 mm", PRACTICE, "boards are sold in steps of 10 mm"),
    ("board.thickness_for_joints", "25 mm", PRACTICE, "boards are sold 25 mm thick"),
    ("board.left_under_joint", "19 mm", PRACTICE, "3/4 in in whole millimeters"),
    ("board.joint_to_aesthetic_joint", "75 mm", MEMORY, "an inch is 25 mm"),
    ("board.joint_to_opening_corner", "150 mm", MEMORY, "an inch is 25 mm"),
    ("board.heat_margin", "6 C apart", PRACTICE, "10 F apart in whole degrees, rounded to the safe side"),
    ("heat.hot_months", "6 C apart", PRACTICE, "10 F apart in whole degrees, rounded to the safe side"),
    ("board.softens", "74 C", PRACTICE, "165 F in whole degrees"),
    ("board.gap", "1.5 mm", MEMORY, "1/16 in in half millimeters"),
    ("base_coat.dry_thickness_least", "1.5 mm", PRACTICE, "1/16 in in half millimeters"),
    ("base_coat.dry_thickness_most", "6 mm", PRACTICE, "1/4 in in whole millimeters, rounded to the safe side"),
    ("mesh.lap", "60 mm", TEXT, "UFGS 07240 p. 24: a minimum of 60 mm 2.5 inches"),
    ("mesh.heavy_height", "1.8 m", PRACTICE, "a foot is 0.3 m"),
    ("impact.standard", "2.83 J", MEMORY, "25 in-lb is 2.82 J, rounded up"),
    ("impact.medium", "5.6 J", MEMORY, "50 in-lb is 5.65 J, rounded down to its class"),
    ("impact.high", "10.2 J", MEMORY, "90 in-lb is 10.2 J"),
    ("impact.ultra_high", "17 J", MEMORY, "150 in-lb is 16.9 J"),
    ("grade.clearance", "150 mm", PRACTICE, "an inch is 25 mm"),
    ("grade.clearance_soil", "200 mm", MEMORY, "an inch is 25 mm"),
    ("flashing.projection", "20 mm", PRACTICE, "3/4 in, rounded to the safe side"),
    ("aesthetic_joint.tolerance", "1.5 mm", PRACTICE, "1/16 in in half millimeters"),
    ("aesthetic_joint.straightness", "1.5 mm", MEMORY, "1/16 in in half millimeters"),
    ("aesthetic_joint.straightness_over", "1.5 m", MEMORY, "a foot is 0.3 m"),
    ("aesthetic_joint.corner", "3 mm", MEMORY, "1/8 in in whole millimeters"),
    ("panel.width", "1.5 m", PRACTICE, "a foot is 0.3 m"),
    ("panel.height", "1.5 m", PRACTICE, "a foot is 0.3 m"),
    ("panel.area", "2.3 m2", PRACTICE, "1.5 m by 1.5 m, rounded up"),
    ("panel.least_side", "600 mm", PRACTICE, "a foot is 0.3 m"),
    ("joint.width_between_eifs", "19 mm", MEMORY, "3/4 in in whole millimeters"),
    ("joint.width_elsewhere", "12 mm", MEMORY, "joints are drawn 12 mm wide"),
    ("joint.width_most", "50 mm", TEXT, "Architectural Detailing: 1-2 in (25-50 mm)"),
    ("joint.depth_least", "6 mm", TEXT, "Architectural Detailing: not under 1/4 in (6 mm)"),
    ("joint.depth_most", "13 mm", TEXT, "Architectural Detailing: not over 1/2 in (13 mm)"),
    ("sealant.install_cold", "4 C", TEXT, "UFGS 08900 p. 28: between 4 and 32 degrees C"),
    ("sealant.install_hot", "32 C", TEXT, "UFGS 08900 p. 28: between 4 and 32 degrees C"),
    ("adhesion.tape_film", "125 um", TEXT, "ASTM D3359-09e2, 1.2: films thicker than 5 mils (125 um)"),
    ("sealant.field_test_length", "300 m", PRACTICE, "a foot is 0.3 m"),
    ("sealant.field_test_spacing", "30 m", PRACTICE, "a foot is 0.3 m"),
    ("smoothing.total_thickness", "0.8 mm", PRACTICE, "1/32 in in tenths of a millimeter"),
    ("step_gauge.reading", "0.2 mm", MEMORY, "8 mil in tenths of a millimeter"),
    ("mockup.margin", "600 mm", MEMORY, "a foot is 0.3 m"),
    ("altitude.strong_sun", "1200 m", MEMORY, "a foot is 0.3 m"),
    ("compressor.flow", "6 L/s", PRACTICE, "12 cfm in whole liters a second, rounded to the safe side"),
    ("compressor.pressure", "550 kPa", PRACTICE, "80 psi in steps of 10 kPa"),
    ("hose.safety_bore", "12 mm", PRACTICE, "1/2 in, rounded to the safe side"),
    ("hose.length", "3.6 m", PRACTICE, "a foot is 0.3 m"),
    ("hose.bore", "10 mm", MEMORY, "air hoses are sold 9 mm and 10 mm wide; 3/8 in, rounded to the safe side"),
    ("spray.atomizing_pressure", "280 kPa", PRACTICE, "40 psi in steps of 10 kPa"),
    ("spray.stream_length", "190 mm", PRACTICE, "7-1/2 in in steps of 5 mm"),
    ("spray.atomizing_band", "35 kPa", PRACTICE, "5 psi are 34.5 kPa, in steps of 5 kPa"),
    ("spray.fluid_band", "35 kPa", PRACTICE, "5 psi are 34.5 kPa, in steps of 5 kPa"),
    ("spray.distance", "400 mm", PRACTICE, "an inch is 25 mm"),
    ("spray.distance_published", "150 mm", PRACTICE, "an inch is 25 mm"),
    ("air.cleaning", "200 kPa", PRACTICE, "30 psi, rounded to the safe side"),
    ("weather.least_eifs", "4 C", TEXT, "UFGS 07240 p. 26: not below 4 degrees C (40 degrees F)"),
    ("weather.hot_day", "27 C", MEMORY, "80 F in whole degrees"),
    ("weather.most_surface", "32 C", PRACTICE, "90 F in whole degrees"),
    (
        "weather.above_dew_point",
        "3 C apart",
        TEXT,
        "Surface Preparing and Painting: not less than 3 C above dew point; ISO 8502-4 from memory",
    ),
    ("spray.distance_most", "600 mm", PRACTICE, "an inch is 25 mm"),
    ("spray.stroke_least", "300 mm/s", PRACTICE, "an inch is 25 mm"),
    ("spray.stroke_most", "600 mm/s", PRACTICE, "an inch is 25 mm"),
    ("water.coldest", "16 C", PRACTICE, "60 F in whole degrees, rounded to the safe side"),
    ("water.hottest", "26 C", PRACTICE, "80 F in whole degrees, rounded to the safe side"),
    ("protection.exclusion", "18 m", PRACTICE, "60 ft in whole meters"),
    ("weather.wind_usual", "3.5 m/s", PRACTICE, "8 mph in half meters a second"),
    ("weather.wind_most", "6.5 m/s", PRACTICE, "15 mph in half meters a second, rounded to the safe side"),
    ("view.distance", "3 m", TEXT, "Construction Specifier: 3 m (10 ft)"),
    ("access.gap_plastering", "450 mm", PRACTICE, "an inch is 25 mm; 29 CFR 1926.451(b)(3)(ii): 18 inches (46 cm)"),
    ("access.gap", "350 mm", PRACTICE, "an inch is 25 mm; 29 CFR 1926.451(b)(3): 14 inches (36 cm)"),
    ("access.painter_room", "600 mm", MEMORY, "a foot is 0.3 m"),
    ("access.gap_outrigger", "75 mm", PRACTICE, "an inch is 25 mm; 29 CFR 1926.451(b)(3)(i): 3 inches (8 cm)"),
    ("access.tie_rise_narrow", "6 m", PRACTICE, "a foot is 0.3 m; 29 CFR 1926.451(c)(1)(ii): every 20 ft (6.1 m)"),
    ("access.tie_rise_wide", "7.8 m", PRACTICE, "a foot is 0.3 m; 29 CFR 1926.451(c)(1)(ii): every 26 ft (7.9 m)"),
    ("access.tie_narrow", "0.9 m", TEXT, "29 CFR 1926.451(c)(1)(ii): 3 ft (0.9 m) wide or less"),
    ("access.tie_run", "9 m", PRACTICE, "a foot is 0.3 m; 29 CFR 1926.451(c)(1)(ii): 30 ft (9.1 m)"),
    ("access.fall", "3 m", PRACTICE, "a foot is 0.3 m; 29 CFR 1926.451(g)(1): 10 feet (3.1 m)"),
    ("roof.fall", "1.8 m", TEXT, "29 CFR 1926.501(b)(1): 6 feet (1.8 m)"),
    ("access.top_rail_least", "970 mm", PRACTICE, "29 CFR 1926.451(g)(4)(ii): 38 inches (0.97 m), 965.2 mm"),
    ("access.top_rail_most", "1140 mm", PRACTICE, "29 CFR 1926.451(g)(4)(ii): 45 inches (1.2 m), 1143 mm"),
    ("access.power_lines", "3.1 m", TEXT, "29 CFR 1926.451(f)(6): 10 ft (3.1 m)"),
    (
        "access.power_lines_low_voltage_distance",
        "1 m",
        PRACTICE,
        "rounded to the safe side; 29 CFR 1926.451(f)(6): 3 ft (0.9 m)",
    ),
    ("access.power_lines_per_kv", "10 mm", TEXT, "29 CFR 1926.451(f)(6): 0.4 in (1.0 cm)"),
    # What keeps a fire or a line away is rounded to the safe side.
    ("heater.coverings", "3.1 m", PRACTICE, "10 ft, rounded up"),
    ("heater.circulating", "310 mm", PRACTICE, "12 in, rounded up"),
    ("heater.radiant", "920 mm", PRACTICE, "36 in, rounded up"),
    ("heater.chimney", "460 mm", PRACTICE, "18 in, rounded up"),
    ("gas.heater", "1.9 m", PRACTICE, "6 ft, rounded up"),
    ("gas.aimed", "6.1 m", PRACTICE, "20 ft, rounded up"),
    ("roof_end.step_flashing", "100 mm", PRACTICE, "an inch is 25 mm"),
    ("aesthetic_joint.from_ledge", "75 mm", PRACTICE, "an inch is 25 mm"),
    ("roof_below.clearance", "50 mm", PRACTICE, "an inch is 25 mm"),
    ("roof_below.upturn", "200 mm", MEMORY, "an inch is 25 mm"),
    ("ledge.depth", "300 mm", MEMORY, "a foot is 0.3 m"),
    ("face.height", "3.6 m", MEMORY, "a foot is 0.3 m"),
    ("substrate.bond", "100 kPa", MEMORY, "15 psi in steps of 10 kPa"),
    ("substrate.pulls_area", "100 m2", PRACTICE, "1000 sq ft in whole hundreds"),
    ("sealant.field_test_later", "300 m", PRACTICE, "a foot is 0.3 m"),
    ("wrb.building_height", "12 m", MEMORY, "a foot is 0.3 m"),
    ("access.platform_wide", "650 mm", PRACTICE, "an inch is 25 mm"),
]

# UFC 3-190-06 prints 5 F alone.
OTHER_TEXT = {"weather.above_dew_point": "painting_handbook"}


@pytest.mark.parametrize(("name", "figure", "kind", "text"), TWINS, ids=[row[0] for row in TWINS])
def test_a_metric_figure_is_that_of_its_text_or_the_size_of_the_trade(
    name: str, figure: str, kind: Kind, text: str
) -> None:
    limit = ROWS.limits[name]
    assert limit.figure("si") == parse_any_quantity(figure), text
    assert limit.source_of("si").kind is kind, text
    if kind is TEXT:  # the text that prints the inch prints the millimeter, but where another one does
        assert limit.source_si is ROWS.sources.get(OTHER_TEXT.get(name, ""), limit.source)
    assert limit.figure("ip") != limit.figure("si")


def test_no_metric_figure_goes_untested() -> None:
    assert {row[0] for row in TWINS} <= set(ROWS.limits)
    assert {name for name, row in ROWS.limits.items() if row.value_si is not None} == {row[0] for row in TWINS}


def test_a_metric_figure_that_no_text_prints_names_the_one_that_a_text_prints() -> None:
    for name, words in {"grade.clearance": "6 in", "board.softens": "165 °F", "mesh.heavy_height": "6 ft"}.items():
        limit = ROWS.limits[name]
        source = limit.source_of("si")
        assert source.kind is not Kind.PUBLISHED
        assert source.reference == f"metric figure for {words} of {limit.source.reference}"
        assert f"({source.reference})" in source.legend
        assert limit.source_of("ip") is limit.source
