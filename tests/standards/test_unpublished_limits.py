"""Every limit that rests on no published text, held by a row of our own: its figure, unit, and the side that is right.

No text outside says these figures. Each row tells the trade's reason for its side, so that a figure, a unit, or a side
that moves is noticed, and moved here too only on purpose.
"""

import pytest

from specgen.model.source import Kind
from specgen.quantities.comparison import Sense
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity
from specgen.standards import load_standards

ROWS = load_standards()
LEAST, MOST, EXACTLY = Sense.AT_LEAST, Sense.AT_MOST, Sense.EXACTLY
PRACTICE, MEMORY = Kind.PRACTICE, Kind.MEMORY

# Limit, the side of it that is right, its figure with unit, where it comes from, and why that side.
HELD = [
    # Read at 40 ft above grade plane in the City of San Diego's Technical Bulletin 14-1 on California's 1402.5.
    ("wrb.building_height", MOST, "40 ft", MEMORY, "flame on a combustible barrier of a higher wall is out of reach"),
    ("submittal.contractor_days", LEAST, "3 ", PRACTICE, "nobody reviews and stamps a set in a day"),
    ("submittal.compile_days", LEAST, "3 ", PRACTICE, "reports are read and sums made before they are sent on"),
    ("substrate.age", LEAST, "28 d", MEMORY, "green concrete and mortar shrink and push the glue off"),
    ("substrate.wood_moisture", MOST, "19 %", MEMORY, "wet panels shrink, and rot behind the board"),
    ("straightedge.short", EXACTLY, "24 in", PRACTICE, "one tool for all readings"),
    ("substrate.plane_prominent", MOST, "1/8 in", MEMORY, "a wave of the wall shows in a prominent face"),
    ("flatness.long", MOST, "1/8 in", MEMORY, "a gap under the straightedge shows in gloss"),
    ("flatness.short", MOST, "1/16 in", MEMORY, "a gap under the straightedge shows in gloss"),
    ("substrate.bond", LEAST, "15 psi", MEMORY, "an old face that holds less lets the board go"),
    ("substrate.pulls", LEAST, "3 ", PRACTICE, "one pull says little of a wall"),
    ("substrate.pulls_area", MOST, "1000 ft2", PRACTICE, "a set of pulls stands for no larger face"),
    ("protection.exclusion", LEAST, "60 ft", PRACTICE, "mist of a metallic finish drifts far"),
    ("bearing_wall.IVA", LEAST, "3 h", MEMORY, "mass timber in place of type IA is rated as that"),
    ("bearing_wall.IVB", LEAST, "2 h", MEMORY, "mass timber in place of type IB is rated as that"),
    ("bearing_wall.IVC", LEAST, "2 h", MEMORY, "walls of mass timber left in view are rated as those of type IVB"),
    ("framing.deflection", LEAST, "L/240", MEMORY, "framing is this stiff or stiffer"),
    ("board.joint_to_aesthetic_joint", LEAST, "3 in", MEMORY, "lines one above the other crack"),
    ("board.joint_to_opening_corner", LEAST, "6 in", MEMORY, "a joint at a corner cracks"),
    ("board.heat_margin", LEAST, "10 F apart", PRACTICE, "the face stays this much cooler than where board softens"),
    ("heat.hot_months", MOST, "10 F apart", PRACTICE, "only months nearly as hot as the hottest count"),
    ("board.gap", MOST, "1/16 in", MEMORY, "a wider gap is filled with board"),
    ("base_coat.passes", LEAST, "2 ", PRACTICE, "mesh in the first, level in the second"),
    ("mesh.heavy_order", EXACTLY, "1 ", PRACTICE, "heavy mesh lies under standard mesh"),
    ("mesh.heavy_dry", LEAST, "24 h", PRACTICE, "a coat dries before the next"),
    ("impact.standard", LEAST, "25 in-lb", MEMORY, "a weaker lamina has no class"),
    ("impact.medium", LEAST, "50 in-lb", MEMORY, "twice the lowest class"),
    ("impact.high", LEAST, "90 in-lb", MEMORY, "where people reach the wall"),
    ("impact.ultra_high", LEAST, "150 in-lb", MEMORY, "the top of the high class"),
    ("grade.clearance_soil", LEAST, "8 in", MEMORY, "board ends clear of soil and termites"),
    ("flashing.projection", LEAST, "3/4 in", PRACTICE, "a drip nearer the face wets it"),
    ("roof_below.upturn", LEAST, "8 in", MEMORY, "water and snow on the roof stand against the wall"),
    ("ledge.slope", LEAST, "6 in 12", MEMORY, "a flatter ledge holds water"),
    ("ledge.depth", MOST, "12 in", MEMORY, "a deeper ledge takes a metal cap"),
    ("face.height", MOST, "12 ft", MEMORY, "a taller face has a place that moves"),
    ("aesthetic_joint.tolerance", MOST, "1/16 in", PRACTICE, "more is seen"),
    ("aesthetic_joint.straightness", MOST, "1/16 in", MEMORY, "more is seen"),
    ("aesthetic_joint.straightness_over", EXACTLY, "5 ft", MEMORY, "the length over which the line is read"),
    ("panel.width", MOST, "5 ft", PRACTICE, "one sprayer keeps a wet edge over it"),
    ("panel.height", MOST, "5 ft", PRACTICE, "one sprayer keeps a wet edge over it"),
    ("panel.area", MOST, "25 ft2", PRACTICE, "one sprayer keeps a wet edge over it"),
    ("panel.least_side", LEAST, "2 ft", PRACTICE, "a narrower panel gets two edges of every pass"),
    ("joint.width_between_eifs", LEAST, "3/4 in", MEMORY, "a narrower bead cannot stretch enough"),
    ("joint.width_elsewhere", LEAST, "1/2 in", MEMORY, "a narrower bead cannot stretch enough"),
    ("joint.rod_oversize_most", MOST, "50 %", PRACTICE, "a thicker rod is crushed and gasses"),
    ("sealant.field_tests", LEAST, "10 ", MEMORY, "pull tests on the first joints"),
    ("sealant.field_test_length", MOST, "1000 ft", PRACTICE, "the first joints end here"),
    ("sealant.field_test_spacing", MOST, "100 ft", PRACTICE, "a pull stands for no more joint"),
    ("sealant.after_base_coat", LEAST, "24 h", MEMORY, "the face to be bonded is dry"),
    ("sealant.pull_cure", LEAST, "14 d", PRACTICE, "one-part sealant cures from its face inward, some 1/8 in a week"),
    ("sealant.before_gloss", LEAST, "48 h", MEMORY, "the bead has skinned and no longer bleeds"),
    ("cup.temperature", EXACTLY, "77 F", MEMORY, "cup times of data sheets are read at 25 C"),
    ("cup.iso_temperature", EXACTLY, "73.4 F", MEMORY, "ISO 2431 reads its cups at 23 C"),
    ("smoothing.coats", EXACTLY, "2 ", PRACTICE, "one hides no trowel mark, three crack"),
    ("smoothing.total_thickness", MOST, "1/32 in", PRACTICE, "a thick skim cracks"),
    ("smoothing.sand_after_least", LEAST, "15 min", PRACTICE, "sooner it rolls up"),
    ("smoothing.sand_after_most", MOST, "30 min", PRACTICE, "later it is too hard"),
    ("smoothing.dry", LEAST, "24 h", PRACTICE, "a coat dries before the next"),
    ("primer.coats", EXACTLY, "1 ", PRACTICE, "as the coating is built"),
    ("primer.pattern", EXACTLY, "cross_hatch", PRACTICE, "as the coating is built"),
    ("primer.dry", LEAST, "12 h", PRACTICE, "a coat dries before the next"),
    ("primer.cup", EXACTLY, "zahn_4", PRACTICE, "one cup from mockup to last pail"),
    ("primer.cup_least", LEAST, "25 s", PRACTICE, "thinner runs"),
    ("primer.cup_most", MOST, "35 s", PRACTICE, "thicker spits"),
    ("gloss.coats", EXACTLY, "2 ", PRACTICE, "as the coating is built"),
    ("gloss.pattern", EXACTLY, "cross_hatch", PRACTICE, "as the coating is built"),
    ("gloss.dry", LEAST, "24 h", PRACTICE, "a coat dries before rain may reach it"),
    ("gloss.cup", EXACTLY, "zahn_4", PRACTICE, "one cup from mockup to last pail"),
    ("gloss.cup_least", LEAST, "25 s", PRACTICE, "thinner runs"),
    ("gloss.cup_most", MOST, "35 s", PRACTICE, "thicker spits"),
    ("step_gauge.reading", MOST, "8 mil", MEMORY, "a coarser gauge cannot read a skim"),
    ("adhesion.tape_class", LEAST, "4 ", MEMORY, "no more than a trace comes off along the cut"),
    ("coat.returns", LEAST, "3 %", PRACTICE, "returns are coated too"),
    ("coat.joint_sides", LEAST, "2 %", PRACTICE, "joint sides are coated too"),
    ("coat.reserve", LEAST, "10 %", MEMORY, "what is kept of the batch for repairs"),
    ("color.lrv_least", LEAST, "20 %", MEMORY, "a darker face softens the board"),
    ("color.lrv_cautious", LEAST, "25 %", MEMORY, "a darker face softens the board"),
    ("color.reflectance_apart", LEAST, "0.005 ", MEMORY, "two figures this near are one figure typed twice"),
    ("color.emittance_usual", LEAST, "0.75 ", MEMORY, "a face that sheds less heat runs hotter"),
    ("color.angles", LEAST, "3 ", MEMORY, "flake changes with the angle"),
    ("color.range_samples", LEAST, "3 ", MEMORY, "light, middle and dark"),
    ("color.custom_lead", LEAST, "21 d", PRACTICE, "a color is made to order"),
    ("altitude.strong_sun", MOST, "4000 ft", MEMORY, "above it the sun is stronger"),
    ("compressor.flow", LEAST, "12 cfm", PRACTICE, "less starves the gun"),
    ("compressor.pressure", LEAST, "80 psi", PRACTICE, "less starves the gun"),
    ("compressor.filter", MOST, "1 um", MEMORY, "a coarser filter lets oil and dirt through"),
    ("hose.length", MOST, "12 ft", PRACTICE, "a longer hose loses pressure"),
    ("hose.bore", LEAST, "3/8 in", MEMORY, "a thinner hose loses pressure"),
    ("tank.regulators", EXACTLY, "2 ", PRACTICE, "one for air, one for fluid"),
    (
        "film.most_share",
        MOST,
        "150 %",
        PRACTICE,
        "a film half as thick again runs, dries slowly, and lets the flakes drift",
    ),
    ("spray.atomizing_band", MOST, "5 psi", PRACTICE, "one mark of a gauge, and what a regulator drifts"),
    (
        "spray.fluid_band",
        MOST,
        "5 psi",
        PRACTICE,
        "the gun one story above the tank, 10 ft of coating, asks for so much more",
    ),
    ("spray.atomizing_pressure", EXACTLY, "40 psi", PRACTICE, "where the setting begins"),
    ("spray.stream_length", EXACTLY, "7-1/2 in", PRACTICE, "where the setting begins"),
    ("spray.pattern", EXACTLY, "oval", PRACTICE, "as the coating is sprayed"),
    ("spray.distance", LEAST, "16 in", PRACTICE, "nearer the coat runs and the flake stands on end"),
    ("spray.distance_most", MOST, "24 in", PRACTICE, "farther the spray dries in the air"),
    ("spray.overlap_least", LEAST, "40 %", PRACTICE, "less leaves stripes"),
    ("spray.overlap_most", MOST, "60 %", PRACTICE, "more runs"),
    ("spray.stroke_least", LEAST, "12 in/s", PRACTICE, "slower runs"),
    ("spray.stroke_most", MOST, "24 in/s", PRACTICE, "faster leaves holidays"),
    ("spray.strainer_least", LEAST, "60 ", PRACTICE, "a coarser mesh lets lumps through"),
    ("spray.strainer_most", MOST, "100 ", PRACTICE, "a finer mesh holds the flake back"),
    ("spray.transfer", MOST, "65 %", PRACTICE, "air spray leaves no more on the wall"),
    ("spray.stir", MOST, "10 min", PRACTICE, "flake settles"),
    ("water.coldest", LEAST, "60 F", PRACTICE, "cold water thickens the material"),
    ("water.hottest", MOST, "80 F", PRACTICE, "hot water thins and skins it"),
    ("masking.angle", EXACTLY, "45 deg", PRACTICE, "pull of the tape"),
    ("weather.least_coats", LEAST, "50 F", PRACTICE, "water-borne coats form no film in the cold"),
    ("weather.hot_day", MOST, "80 F", MEMORY, "a wall in the sun is some 10 F or more above the air"),
    ("weather.hold_eifs", LEAST, "24 h", PRACTICE, "a fresh base coat freezes"),
    ("weather.hold", LEAST, "24 h", PRACTICE, "a fresh coat freezes"),
    ("weather.after_frost", LEAST, "24 h", PRACTICE, "the wall thaws through"),
    ("weather.humidity", MOST, "85 %", PRACTICE, "water leaves the film before it closes"),
    ("weather.wind_most", MOST, "15 mph", PRACTICE, "no gust carries the spray over the joint"),
    ("weather.wind_usual", MOST, "8 mph", PRACTICE, "wind carries the spray off"),
    ("spray.light", LEAST, "500 lx", PRACTICE, "the film is seen"),
    ("door.step", MOST, "1/2 in", MEMORY, "a higher sill is a step, and a step at a door has a landing"),
    ("aesthetic_joint.from_ledge", LEAST, "3 in", PRACTICE, "a router that follows an edge breaks it"),
    ("aesthetic_joint.corner", MOST, "1/8 in", MEMORY, "lines that miss by more show as a step at the corner"),
    ("joint.length_difference", MOST, "2 %", PRACTICE, "lengths are taken off to the foot"),
    ("mockup.margin", LEAST, "2 ft", MEMORY, "a panel without its neighbors shows no joint and no stop"),
    ("mockup.turned", MOST, "45 deg", MEMORY, "a mockup that looks elsewhere has another light"),
    ("access.painter_room", LEAST, "24 in", MEMORY, "room behind the gun"),
    ("access.platform_wide", LEAST, "26 in", PRACTICE, "room for gun and painter"),
]

# Where memory names the text to look in.
NAMED = {
    "substrate.bond": "eifs_bond_memory",
    **{f"bearing_wall.{name}": "ibc_bearing_walls_memory" for name in ("IVA", "IVB", "IVC")},
    "sealant.field_tests": "astm_c1521_memory",
    "ledge.slope": "astm_c1397_memory",
    "ledge.depth": "astm_c1397_memory",
    "face.height": "astm_c1397_memory",
    **{f"impact.{name}": "impact_classes_memory" for name in ("standard", "medium", "high", "ultra_high")},
    "wrb.building_height": "ibc_combustible_walls_memory",
    "color.angles": "color_memory",
    "color.range_samples": "color_memory",
}


@pytest.mark.parametrize(("name", "sense", "figure", "kind", "why"), HELD, ids=[row[0] for row in HELD])
def test_a_limit_without_a_published_text_is_as_the_trade_has_it(
    name: str, sense: Sense, figure: str, kind: Kind, why: str
) -> None:
    limit = ROWS.limits[name]
    assert limit.source.kind is kind
    assert limit.source is ROWS.sources[NAMED.get(name, kind.name.lower())]
    assert limit.sense is sense, why
    if isinstance(limit.value, Quantity):
        # The text too: 0.5 ft is 6 in, and prints as something else.
        assert (limit.value, limit.value.text) == (parse_any_quantity(figure), figure)
    else:
        number, _, unit = figure.partition(" ")
        value = limit.value if isinstance(limit.value, str) else format(float(limit.value), "g")
        assert (value, limit.unit) == (number, unit)


def test_no_unpublished_limit_goes_unheld_and_none_is_held_twice() -> None:
    unpublished = sorted(name for name, row in ROWS.limits.items() if row.source.kind is not Kind.PUBLISHED)
    assert sorted(row[0] for row in HELD) == unpublished
