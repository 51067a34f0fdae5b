"""Every limit that rests on a published text, retyped from that text; and the rows as a whole.

The figures of practice and memory are held against nothing: no text outside says them.
"""

import collections
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from jinja2 import nodes

from specgen import computing, standards
from specgen.documents.composing import Composer
from specgen.documents.steps import POINTS
from specgen.judging.scope import noun_of
from specgen.model.field import UnknownName
from specgen.model.source import Kind
from specgen.model.standard import Sentence
from specgen.quantities.comparison import Sense
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.reading.schema import project_schema
from specgen.standards import load_standards

ROWS = load_standards()
FILES = sorted(Path(standards.__file__).parent.glob("*.yaml"))
LEAST, MOST, EXACTLY = Sense.AT_LEAST, Sense.AT_MOST, Sense.EXACTLY

# Limit, the side of it that is right, its figure with unit, the row of its source, and what the text says.
PUBLISHED = [
    (
        "substrate.plane",
        MOST,
        "1/4 in",
        "guide_eifs_p22",
        "UFGS 07240 p. 22: 1/4 inch in 10 feet under a straightedge",
    ),
    (
        "old_coating.lead_year",
        LEAST,
        "1978",
        "epa_lead",
        "40 CFR 745.103 (2015): target housing means any housing constructed prior to 1978",
    ),
    ("straightedge.long", EXACTLY, "10 ft", "guide_eifs_p22", "UFGS 07240 p. 22: 1/4 inch in 10 feet"),
    ("board.thickness_most", MOST, "4 in", "guide_eifs_p20", "UFGS 07240 p. 20: insulation at most 4 inches thick"),
    (
        "board.thickness_for_joints",
        LEAST,
        "1 in",
        "trade_reveals",
        "Limitations on V-Grooves: no reveal in insulation board that is less than one inch in thickness",
    ),
    (
        "board.left_under_joint",
        LEAST,
        "3/4 in",
        "trade_reveals",
        "Limitations on V-Grooves: not less than 3/4 inch in the bottom of the reveal",
    ),
    ("board.softens", MOST, "165 F", "astm_c578", "ASTM C578-22, 1.1: insulation for temperatures from -65 to +165 °F"),
    (
        "gloss.angle_60_most",
        MOST,
        "70 gloss units",
        "astm_d523",
        "ASTM D523, summary: 20° geometry for 60° gloss values above 70",
    ),
    (
        "gloss.angle_60_least",
        LEAST,
        "10 gloss units",
        "astm_d523",
        "ASTM D523, summary: 85° geometry for 60° gloss values below 10",
    ),
    ("adhesive.cure", LEAST, "24 h", "guide_eifs_p26", "UFGS 07240 p. 26: adhesive 24 hours before base coat"),
    ("foam.flame_spread", MOST, "75 ", "ibc_foam_burning", "IBC 2021, 2603.3: flame spread index of not more than 75"),
    (
        "foam.smoke_developed",
        MOST,
        "450 ",
        "ibc_foam_burning",
        "IBC 2021, 2603.3: smoke-developed index of not more than 450",
    ),
    ("foam.thermal_barrier", LEAST, "1/2 in", "ibc_foam_barrier", "IBC 2009, 2603.4: 1/2-inch gypsum wallboard"),
    *(
        (
            f"bearing_wall.{kind}",
            LEAST,
            f"{hours} h",
            "ibc_bearing_walls",
            "Municipal Code of Chicago, 14B-6-601, Table 601, bearing walls, exterior: IA 3, IB 2, IIA 1, IIB 0, "
            "IIIA 2, IIIB 2, IV-HT 2, VA 1, VB 0",
        )
        for kind, hours in {"IA": 3, "IB": 2, "IIA": 1, "IIIA": 2, "IIIB": 2, "IV": 2, "IVHT": 2}.items()
    ),
    ("board.flame_spread", MOST, "25 ", "ibc_foam_indexes", "IBC 2006, 2603.5.4: flame spread index of 25 or less"),
    (
        "board.smoke_developed",
        MOST,
        "450 ",
        "ibc_foam_indexes",
        "IBC 2006, 2603.5.4: smoke-developed index of 450 or less",
    ),
    (
        "drainage.efficiency",
        LEAST,
        "90 %",
        "drainage_efficiency",
        "IBC 2021, 1407.4.1: average minimum drainage efficiency of 90 percent by ASTM E2273",
    ),
    (
        "base_coat.dry_thickness_least",
        LEAST,
        "1/16 in",
        "astm_c1397",
        "ASTM C1397 catalog summary: 1/16 to 1/4 inch dry",
    ),
    ("base_coat.dry_thickness_most", MOST, "1/4 in", "astm_c1397", "ASTM C1397 catalog summary: 1/16 to 1/4 inch dry"),
    ("base_coat.cure", LEAST, "24 h", "guide_eifs_p24", "UFGS 07240 p. 24, 26: base coat 24 hours before finish"),
    ("mesh.lap", LEAST, "2-1/2 in", "guide_eifs_p24", "UFGS 07240 p. 24, 26: lap at least 2-1/2 inches"),
    (
        "mesh.heavy_height",
        LEAST,
        "6 ft",
        "trade_impact",
        "Sudden Impact: beefed up for at least 6 feet above the affected area",
    ),
    ("grade.clearance", LEAST, "6 in", "irc_grade", "IRC 2018, R703.9.2, item 8: not less than 6 inches (152 mm)"),
    (
        "roof_end.step_flashing",
        LEAST,
        "4 in",
        "irc_step_flashing",
        "IRC R905.2.8.3: step flashing at least 4 inches high and 4 inches wide",
    ),
    (
        "roof_below.clearance",
        LEAST,
        "2 in",
        "trade_eifs_roofs",
        "Making EIFS Watertight: EIFS terminated 2 inches above the roof",
    ),
    (
        "joint.width_most",
        MOST,
        "2 in",
        "textbook_joints",
        "Architectural Detailing: joints can be as wide as 1-2 in (25-50 mm)",
    ),
    (
        "joint.depth_least",
        LEAST,
        "1/4 in",
        "textbook_joints",
        "Architectural Detailing: depth not less than 1/4 in (6 mm)",
    ),
    (
        "joint.depth_most",
        MOST,
        "1/2 in",
        "textbook_joints",
        "Architectural Detailing: depth not more than 1/2 in (13 mm)",
    ),
    (
        "joint.rod_oversize",
        LEAST,
        "25 %",
        "guide_eifs_p21",
        "UFGS 07240 p. 21: backer rod 25 percent wider than the joint",
    ),
    ("sealant.class_least", LEAST, "25", "guide_eifs_p21", "UFGS 07240 p. 21: ASTM C920, class 25 or more"),
    ("sealant.install_cold", LEAST, "40 F", "guide_sealing", "UFGS 08900 p. 28, UFGS 07920 p. 5-6: 40 to 90 degrees F"),
    ("sealant.install_hot", MOST, "90 F", "guide_sealing", "UFGS 08900 p. 28, UFGS 07920 p. 5-6: 40 to 90 degrees F"),
    (
        "sealant.field_test_later",
        MOST,
        "1000 ft",
        "astm_c1521_rate",
        "ASTM C1521-09 as told in a paper on it: once every 1000 linear feet (305 m) on average",
    ),
    ("cup.zahn_range_least", LEAST, "20 s", "cup_ranges", "Patton 1979 p. 82: Zahn cups 2 to 5 are read from 20 s"),
    ("cup.zahn_range_most", MOST, "80 s", "cup_ranges", "Patton 1979 p. 82: Zahn cups are read to 80 s"),
    (
        "cup.between_cups",
        MOST,
        "33 %",
        "astm_d4212",
        "ASTM D4212 13.1.1: two laboratories, each the mean of two, 33 percent of the mean, new Zahn cups of one set",
    ),
    ("cup.one_operator", MOST, "11 %", "astm_d4212", "ASTM D4212 13.1.1: one operator 11 percent, cups of one set"),
    ("stopwatch.reading", MOST, "0.2 s", "astm_d4212", "ASTM D4212: time reported to 0.2 s"),
    (
        "spray.distance_published",
        LEAST,
        "6 in",
        "paint_manual_p146",
        "UFC 3-190-06 p. 146: gun 6 to 12 inches in air spray",
    ),
    ("air.cleaning", MOST, "30 psi", "osha_air", "29 CFR 1926.302(b)(4): reduced to less than 30 p.s.i."),
    ("spray.overlap", EXACTLY, "50 %", "paint_manual_p176", "UFC 3-190-06 p. 176: strokes overlap 50 percent"),
    ("weather.least_eifs", LEAST, "40 F", "guide_eifs_p26", "UFGS 07240 p. 26: not below 40 F"),
    ("weather.most_surface", MOST, "90 F", "paint_manual_p127", "UFC 3-190-06 p. 127, 7.4.1: between 45 F and 90 F"),
    (
        "weather.above_dew_point",
        LEAST,
        "5 F apart",
        "paint_manual_p170",
        "UFC 3-190-06 p. 170: surface at least 5 F above dew point",
    ),
    ("weather.readings", MOST, "4 h", "paint_manual_p170", "UFC 3-190-06 p. 170: ambient measured about every 4 hours"),
    (
        "view.distance",
        EXACTLY,
        "10 ft",
        "aama_view",
        "Construction Specifier: seen from 3 m (10 ft), square to the surface",
    ),
    (
        "film.least_share",
        LEAST,
        "85 %",
        "aama_finishes",
        "AAMA comparison, 2013: 80 % of readings at the film, all at 85 % of it",
    ),
    ("adhesion.tape_film", MOST, "5 mil", "astm_d3359", "ASTM D3359-09e2, 1.2: method B not for films above 5 mils"),
    (
        "access.gap_plastering",
        MOST,
        "18 in",
        "osha_platform",
        "29 CFR 1926.451(b)(3): 18 inches for plastering and lathing",
    ),
    ("access.gap", MOST, "14 in", "osha_platform", "29 CFR 1926.451(b)(3): 14 inches"),
    (
        "access.gap_outrigger",
        MOST,
        "3 in",
        "osha_platform",
        "29 CFR 1926.451(b)(3)(i): outrigger scaffolds 3 in (8 cm)",
    ),
    ("access.height_to_base", MOST, "4 ", "osha_ties", "29 CFR 1926.451(c)(1): more than four to one (4:1)"),
    ("access.tie_rise_narrow", MOST, "20 ft", "osha_ties", "29 CFR 1926.451(c)(1)(ii): 20 ft where 3 ft wide or less"),
    ("access.tie_rise_wide", MOST, "26 ft", "osha_ties", "29 CFR 1926.451(c)(1)(ii): 26 ft where wider than 3 ft"),
    ("access.tie_narrow", MOST, "3 ft", "osha_ties", "29 CFR 1926.451(c)(1)(ii): 3 ft wide or less"),
    ("access.tie_run", MOST, "30 ft", "osha_ties", "29 CFR 1926.451(c)(1)(ii): each end and every 30 ft"),
    ("access.fall", MOST, "10 ft", "osha_fall", "29 CFR 1926.451(g)(1): more than 10 feet (3.1 m) above a lower level"),
    (
        "roof.fall",
        MOST,
        "6 ft",
        "osha_unprotected_edge",
        "29 CFR 1926.501(b)(1): 6 feet (1.8 m) or more above a lower level",
    ),
    ("access.top_rail_least", LEAST, "38 in", "osha_guardrail", "29 CFR 1926.451(g)(4)(ii): between 38 inches"),
    ("access.top_rail_most", MOST, "45 in", "osha_guardrail", "29 CFR 1926.451(g)(4)(ii): and 45 inches"),
    ("access.power_lines", LEAST, "10 ft", "osha_power_lines", "29 CFR 1926.451(f)(6): 300 V to 50 kV 10 ft"),
    (
        "access.power_lines_low_voltage_distance",
        LEAST,
        "3 ft",
        "osha_power_lines",
        "29 CFR 1926.451(f)(6): insulated, less than 300 V, 3 ft",
    ),
    ("access.power_lines_low_voltage", MOST, "300 V", "osha_power_lines", "29 CFR 1926.451(f)(6): less than 300 volts"),
    ("access.power_lines_high_voltage", MOST, "50 kV", "osha_power_lines", "29 CFR 1926.451(f)(6): more than 50 kV"),
    ("access.power_lines_per_kv", LEAST, "0.4 in", "osha_power_lines", "29 CFR 1926.451(f)(6): 0.4 in for each 1 kV"),
    ("hose.safety_bore", MOST, "1/2 in", "osha_hose", "29 CFR 1926.302(b)(7): exceeding 1/2-inch inside diameter"),
    ("noise.day", MOST, "90 dBA", "osha_noise", "29 CFR 1926.52, table D-2: 8 hours, 90 dBA"),
    ("heater.coverings", LEAST, "10 ft", "osha_heaters", "29 CFR 1926.154(b)(4): 10 feet from the coverings"),
    ("heater.circulating", LEAST, "12 in", "osha_heaters", "29 CFR 1926.154, table F-4: circulating 12, 12"),
    ("heater.radiant", LEAST, "36 in", "osha_heaters", "29 CFR 1926.154, table F-4: radiant 36, 36"),
    ("heater.chimney", LEAST, "18 in", "osha_heaters", "29 CFR 1926.154, table F-4: chimney connector 18"),
    ("gas.heater", LEAST, "6 ft", "osha_gas", "29 CFR 1926.153(h)(13): at least 6 feet from any container"),
    ("gas.aimed", LEAST, "20 ft", "osha_gas", "29 CFR 1926.153(h)(13): not toward a container within 20 feet"),
    ("inspector.years_on_system", LEAST, "2 years", "guide_eifs_p25", "UFGS 07240 p. 25: 2 years on the system"),
    ("inspector.years", LEAST, "3 years", "guide_eifs_p25", "UFGS 07240 p. 25: 3 years of EIFS inspection"),
]


@pytest.mark.parametrize(("name", "sense", "figure", "source", "text"), PUBLISHED, ids=[row[0] for row in PUBLISHED])
def test_a_published_limit_is_the_figure_of_its_text(
    name: str, sense: Sense, figure: str, source: str, text: str
) -> None:
    limit = ROWS.limits[name]
    assert limit.source is ROWS.sources[source]
    assert limit.source.kind is Kind.PUBLISHED
    assert limit.sense is sense
    if isinstance(limit.value, Quantity):
        # The text too: 0.5 ft is 6 in, and prints as something else.
        assert (limit.value, limit.value.text) == (parse_any_quantity(figure), figure), text
    else:
        number, _, unit = figure.partition(" ")
        assert (limit.value, limit.unit) == (int(number), unit), text


# Where a text says what it says: a page, or a section of a code or a regulation.
PLACES = re.compile(r"\bp\. (?P<page>\d+)|\b(?P<section>\d+\.\d+(?:\([a-z]\)\(\d\)|(?:\.\d+)+)?|R\d{3}(?:\.\d+)+)")


@pytest.mark.parametrize(("name", "source", "text"), [(row[0], row[3], row[4]) for row in PUBLISHED])
def test_the_source_of_a_published_limit_names_the_page_or_section_of_its_text(
    name: str, source: str, text: str
) -> None:
    said = ROWS.sources[source].reference
    for place in PLACES.finditer(text.partition(":")[0]):
        wanted = place["section"] or place["page"]
        assert re.search(rf"\b{re.escape(wanted)}(?!\d)", said), (wanted, said)
        assert place["section"] or re.search(r"\bpages? ", said)


def test_no_published_limit_goes_untested_and_none_is_tested_twice() -> None:
    published = sorted(name for name, row in ROWS.limits.items() if row.source.kind is Kind.PUBLISHED)
    assert sorted(row[0] for row in PUBLISHED) == published


# Why a word of limits.yaml that is no figure is right: it names a choice of the field it bounds.
def test_a_limit_bounds_a_field_that_there_is_in_its_own_kind() -> None:
    fields = project_schema().fields
    for limit in ROWS.limits.values():
        if limit.bounds is None:
            continue
        made = fields[limit.bounds]
        if isinstance(limit.value, Quantity):
            assert limit.value.dimension == find_dimension(made.dimension, made.unit_ip), limit.name
        elif isinstance(limit.value, str):
            assert limit.value in made.values, limit.name
        else:
            assert made.kind in {"integer", "number", "percent"}, limit.name


def test_every_limit_says_what_it_is_about() -> None:
    assert [limit.name for limit in ROWS.limits.values() if not limit.about] == []


def raw(name: str) -> Any:
    return yaml.safe_load((Path(standards.__file__).parent / f"{name}.yaml").read_text("utf-8"))


def test_every_row_names_sources_that_there_are_and_every_kind_is_known() -> None:
    sources = raw("sources")
    assert {row["source"] for name in ("limits", "references") for row in raw(name).values()} <= set(sources)
    assert {key for row in raw("criteria").values() for key in row["basis"]} <= set(sources)
    assert {row["kind"].upper() for row in sources.values()} <= set(Kind.__members__)
    assert all(criterion.basis for criterion in ROWS.criteria.values())


def pairs(node: Any) -> Iterator[tuple[str, list[str]]]:
    """The keys of every mapping of a YAML document, with its line."""
    if isinstance(node, yaml.MappingNode):
        yield str(node.start_mark.line + 1), [key.value for key, _ in node.value]
        for _, value in node.value:
            yield from pairs(value)
    elif isinstance(node, yaml.SequenceNode):
        for value in node.value:
            yield from pairs(value)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_no_key_stands_twice(file: Path) -> None:
    # A second row of one name would take the place of the first without a word.
    for line, keys in pairs(yaml.compose(file.read_text("utf-8"), Loader=yaml.SafeLoader)):
        twice = [key for key, count in collections.Counter(keys).items() if count > 1]
        assert twice == [], line


def test_each_step_stands_behind_the_one_it_follows() -> None:
    names = list(ROWS.steps)
    assert [step.follows for step in ROWS.steps.values()] == ["", *names[:-1]]
    assert set(names) == set(raw("steps"))


# Fields of the project or the firm: no file of the coating's maker can give them, so the row always counts.
BOUNDS_ONLY = [
    "substrate.age",
    "substrate.wood_moisture",
    "substrate.plane",
    "substrate.bond",
    "board.softens",
    "adhesive.cure",
    "base_coat.dry_thickness_least",
    "base_coat.cure",
    "roof_below.clearance",
    "ledge.slope",
    "ledge.depth",
    "sealant.pull_cure",
    "compressor.filter",
    "weather.humidity",
    "view.distance",
]


def test_a_maker_figure_is_that_of_a_field_of_the_coating_system() -> None:
    fields = project_schema().fields
    for limit in ROWS.limits.values():
        if limit.maker_figure is not None:
            assert limit.bounds == limit.maker_figure
            assert fields[limit.maker_figure].home == "coating_system", limit.name
    assert [name for name, limit in ROWS.limits.items() if limit.bounds and not limit.maker_figure] == BOUNDS_ONLY


def test_every_fault_of_a_substrate_says_how_it_is_mended() -> None:
    assert set(ROWS.faults) == set(project_schema().fields["walls", "*", "substrate", "condition"].values)
    assert len({fault.mend for fault in ROWS.faults.values()}) == len(ROWS.faults)


def test_steps_name_known_points_and_forms() -> None:
    for step in ROWS.steps.values():
        assert step.point in POINTS, step.name
        assert set(step.records) <= set(ROWS.forms), step.name
        assert step.title, step.name
        assert step.sentences, step.name


def test_tools_name_known_steps() -> None:
    assert {tool.step for tool in ROWS.tools.values()} <= set(ROWS.steps)


def test_no_two_rows_say_the_same() -> None:
    for rows in (ROWS.steps, ROWS.criteria, ROWS.references):
        titles = [row.title for row in rows.values()]
        assert len(set(titles)) == len(titles)
    tools = [tool.what for tool in ROWS.tools.values()]
    assert len(set(tools)) == len(tools)


def sentences() -> list[tuple[str, Sentence]]:
    """Every sentence of the rows with its place."""
    steps = [(f"step {s.name}", one) for s in ROWS.steps.values() for one in (*s.waits, *s.sentences, *s.cautions)]
    return steps + [(f"test {test.name}", test.limit) for test in ROWS.field_tests.values()]


def templates() -> list[tuple[str, str]]:
    """Every template of the rows with its place."""
    made = [(place, text) for place, sentence in sentences() for text in (sentence.text, sentence.otherwise)]
    made += [(f"test {t.name}", text) for t in ROWS.field_tests.values() for text in (t.standard, t.frequency)]
    made += [
        (f"criterion {row.name}", text)
        for row in ROWS.criteria.values()
        for text in (row.method, row.limit, row.governing)
    ]
    made += [(f"tool {row.name}", row.what) for row in ROWS.tools.values()]
    return [(place, text) for place, text in made if "{" in text]


def chain(node: Any) -> tuple[str, ...]:
    """`wall.attachment.method` of a dotted name, empty for anything else."""
    if isinstance(node, nodes.Getattr):
        before = chain(node.node)
        return (*before, node.attr) if before else ()
    return (node.name,) if isinstance(node, nodes.Name) else ()


# The collections that a text speaks of a member of; any other text speaks of a wall.
SPOKEN_OF = {text: one.each for _, one in sentences() for text in (one.text, one.otherwise) if one.each != "walls"}


# Names that the acceptance form gives its lines.
OF_THE_FORM = (
    *("governing", "long_edge", "edge_line", "edge_note", "tape_method", "least_clearance"),
    *("least_base_coat", "least_wrb", "drained", "has_starter", "joint_sizes", "own_limit", "each_reading", "of_mean"),
)
# Names that the procedure gives its tests in place.
OF_THE_PROCEDURE = (
    *(("special_inspection",), ("sealant_tests",), ("not_on_mockup",), ("readings_of",), ("mean_of",), ("film_each",)),
    ("article",),
    ("cup_method",),
)


def faults(text: str) -> list[str]:
    """What a template names that there is not: limits, sections, fields."""
    schema, found = project_schema(), []
    tree = Composer().environment.parse(text)
    member = (SPOKEN_OF.get(text, "walls"), "*")
    known: dict[str, tuple[str, ...]] = {name: (name,) for name in schema.root.children}
    known[noun_of(schema.collections[member])] = member
    for loop in tree.find_all(nodes.For):
        over = chain(loop.iter.node if isinstance(loop.iter, nodes.Filter) else loop.iter)
        known[loop.target.name] = (*known[over[0]], *over[1:], "*") if over and over[0] in known else ()
    for call in tree.find_all(nodes.Call):
        if chain(call.node) in (("limit",), ("figure",)):
            found += [f"limit {arg.value}" for arg in call.args if arg.value not in ROWS.limits]
        if chain(call.node) == ("computed",):
            found += [f"computed {arg.value}" for arg in call.args[:1] if arg.value not in computing.names()]
    inner = {id(node.node) for node in tree.find_all(nodes.Getattr)}
    for node in tree.find_all((nodes.Name, nodes.Getattr)):
        path = chain(node)
        if (
            id(node) in inner
            or not path
            or path in (("limit",), ("figure",), ("computed",), ("loop", "first"), ("loop", "last"))
            or path in OF_THE_PROCEDURE
            or path[-1] in OF_THE_FORM
        ):
            continue
        if path[0] not in known:
            found.append(".".join(path))
            continue
        try:
            schema.follow(tuple(name for name in path[1:] if name != "mark"), known[path[0]])
        except (KeyError, UnknownName):
            found.append(".".join(path))
    return found


@pytest.mark.parametrize(("place", "text"), templates(), ids=lambda value: value[:40])
def test_a_template_can_be_used_and_speaks_of_fields_and_limits_that_there_are(place: str, text: str) -> None:
    Composer().environment.from_string(text)
    assert faults(text) == [], place


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("{{ limit('no.such') }}", "limit no.such"),
        ("{{ figure('no.such') }}", "limit no.such"),
        ("{{ computed('no-such') }}", "computed no-such"),
        ("{{ wall.substrate.knd }}", "wall.substrate.knd"),
        ("{{ wal.substrate.kind }}", "wal.substrate.kind"),
        ("{% for color in colors %}{{ color.angels }}{% endfor %}", "color.angels"),
        ("{% if smoothing.abrasiv is given %}x{% endif %}", "smoothing.abrasiv"),
    ],
)
def test_a_slip_in_a_template_would_be_found(text: str, fault: str) -> None:
    assert faults(text) == [fault]


# Edition of the International Building Code, its section on EIFS, on the inspection of EIFS, and whether each was read.
# EIFS: 2009 by 780 CMR, 8th edition (1407 is MCM); 2015 by the contents of chapter 14 in the illustrated handbook;
# 2018 by Chicago Title 14B (1406 is MCM, 1408 HPL); 2021 by the Virginia Construction Code, 1407.
# "EIFS was accepted into the International Building Code in 2008 for adoption into the 2009 code book": none before.
# Inspection: 1704.12 by New York City, 2008 (on IBC 2003); 1704.12 (2006) and 1704.14 (2009) by G. A. Everding in 2010;
# 1705.15 by Inspecting EIFS, Walls & Ceilings (2012);
# 1705.17 by IBC 2021, page 484. The others are from memory.
SECTIONS = [
    ("2003", None, None, "1704.12", True),
    ("2006", None, None, "1704.12", True),
    ("2009", "1408", True, "1704.14", True),
    ("2012", "1408", False, "1705.15", True),
    ("2015", "1408", True, "1705.16", False),
    ("2018", "1407", True, "1705.16", False),
    ("2021", "1407", True, "1705.17", True),
    ("2024", "1407", False, "1705.17", False),
]


@pytest.mark.parametrize(("edition", "eifs", "eifs_read", "inspection", "inspection_read"), SECTIONS)
def test_a_section_of_the_code_stands_where_it_was_read(
    edition: str, eifs: str | None, eifs_read: bool | None, inspection: str, inspection_read: bool
) -> None:
    row = ROWS.editions[edition]
    assert (row.get("eifs_section"), row["inspection_section"]) == (eifs, inspection)
    kinds = {True: Kind.PUBLISHED, False: Kind.MEMORY}
    assert row["inspection_source"].kind is kinds[inspection_read]
    assert eifs_read is None or row["eifs_source"].kind is kinds[eifs_read]


# Flashing of exterior walls: 1404.4 in SBC 201 (2024, on the code of 2021); that of other editions from memory.
@pytest.mark.parametrize(
    ("edition", "section"),
    [
        ("2006", None),
        ("2009", "1405.4"),
        ("2015", "1405.4"),
        ("2018", "1404.4"),
        ("2021", "1404.4"),
        ("2024", "1404.4"),
    ],
)
def test_the_section_on_flashing_moves_with_the_claddings(edition: str, section: str | None) -> None:
    assert ROWS.editions[edition].get("flashing_section") == section


# Metal composite materials and high-pressure laminates: 1407 in 780 CMR (2009) and the handbook of 2015, 1406 and 1408
# in Chicago Title 14B (2018) and SBC 201 (2021); the laminates of 2009 to 2015, and 2024, from memory.
@pytest.mark.parametrize(
    ("edition", "mcm", "hpl"),
    [
        ("2006", None, None),
        ("2009", "1407", "1409"),
        ("2012", "1407", "1409"),
        ("2015", "1407", "1409"),
        ("2018", "1406", "1408"),
        ("2021", "1406", "1408"),
        ("2024", "1406", "1408"),
    ],
)
def test_the_sections_beside_that_on_eifs_are_those_of_other_claddings(
    edition: str, mcm: str | None, hpl: str | None
) -> None:
    row = ROWS.editions[edition]
    assert (row.get("mcm_section"), row.get("hpl_section")) == (mcm, hpl)


# 29 CFR 1926.451: what its text prints in metric beside the foot and the inch, where metric work goes by it.
@pytest.mark.parametrize(
    ("name", "figure"),
    [
        ("access.tie_narrow", "0.9 m"),  # (c)(1)(ii)
        ("access.power_lines", "3.1 m"),  # (f)(6)
        ("access.power_lines_per_kv", "1.0 cm"),  # (f)(6)
    ],
)
def test_a_metric_figure_of_the_federal_text_is_its_own(name: str, figure: str) -> None:
    assert ROWS.limits[name].value_si == parse_any_quantity(figure)


# 29 CFR 1926.451 in feet and inches, which governs: at most, or at least.
@pytest.mark.parametrize(
    ("name", "figure"),
    [
        ("access.gap_plastering", "18 in"),  # (b)(3)(ii)
        ("access.gap", "14 in"),  # (b)(3)
        ("access.gap_outrigger", "3 in"),  # (b)(3)(i)
        ("access.tie_rise_narrow", "20 ft"),  # (c)(1)(ii)
        ("access.tie_rise_wide", "26 ft"),  # (c)(1)(ii)
        ("access.tie_run", "30 ft"),  # (c)(1)(ii)
        ("access.fall", "10 ft"),  # (g)(1)
        ("access.top_rail_least", "38 in"),  # (g)(4)(ii)
        ("access.top_rail_most", "45 in"),  # (g)(4)(ii)
        ("access.power_lines_low_voltage_distance", "3 ft"),  # (f)(6)
    ],
)
def test_a_round_metric_figure_is_no_looser_than_the_federal_one(name: str, figure: str) -> None:
    limit, law = ROWS.limits[name], parse_any_quantity(figure)
    assert limit.value_si is not None
    metric, inches = limit.value_si.to("mm"), law.to("mm")
    assert metric <= inches if limit.sense is MOST else metric >= inches
