"""Every limit that rests on a published text, its value retyped from that text; and the rows as a whole.

The figures of practice and memory are not tested against anything: nothing outside says them.
"""

import re
from typing import Any

import jinja2
import pytest
from jinja2 import nodes

from specgen import pipeline
from specgen.standards import load_standards
from specgen.vocabulary.quantity_text import measure
from specgen.vocabulary.source import Kind

ROWS = load_standards()

# Limit, figure of the published text, and where it stands.
PUBLISHED = [
    ("substrate.plane", "1/4 in", "UFGS 07 24 00 p. 22: 1/4 inch in 10 feet under a straightedge"),
    ("board.thickness_most", "4 in", "UFGS 07 24 00 p. 20: insulation at most 4 inches thick"),
    ("board.thickness_for_joints", "1 in", "trade association: no reveals in board under 1 inch"),
    ("board.left_under_joint", "3/4 in", "trade association: 3/4 inch of EPS at the bottom of a reveal"),
    ("board.softens", "165 F", "trade column: EPS softens above about 165 F"),
    ("adhesive.cure", 24, "UFGS 07 24 00 p. 26: adhesive 24 hours before base coat"),
    ("drainage.efficiency", 90, "ASTM E2273 as named in trade text: 90 percent"),
    ("base_coat.dry_thickness_least", "1/16 in", "ASTM C1397 catalog summary: 1/16 to 1/4 inch dry"),
    ("base_coat.dry_thickness_most", "1/4 in", "ASTM C1397 catalog summary: 1/16 to 1/4 inch dry"),
    ("base_coat.cure", 24, "UFGS 07 24 00 p. 24, 26: base coat 24 hours before finish"),
    ("mesh.lap", "2-1/2 in", "UFGS 07 24 00 p. 24, 26: lap at least 2-1/2 inches"),
    ("mesh.heavy_height", "6 ft", "trade association: heavy mesh at least 6 feet above the exposed level"),
    ("grade.clearance", "6 in", "trade association: 6 inches above finished grade"),
    ("joint.width_most", "2 in", "architectural detailing textbook: one joint 1 to 2 inches at most"),
    ("joint.depth_least", "1/4 in", "architectural detailing textbook: depth at least 1/4 inch"),
    ("joint.depth_most", "1/2 in", "architectural detailing textbook: depth at most 1/2 inch"),
    ("joint.rod_oversize", 25, "UFGS 07 24 00 p. 21: backer rod 25 percent wider than the joint"),
    ("sealant.class_least", 25, "UFGS 07 24 00 p. 21: ASTM C920, class 25 or more"),
    ("cup.zahn_range_least", "20 s", "Patton 1979 p. 82: Zahn cups 2 to 5 are read from 20 s"),
    ("cup.zahn_range_most", "80 s", "Patton 1979 p. 82: Zahn cups are read to 80 s"),
    ("cup.between_cups", 33, "ASTM D4212: reproducibility 33 percent of the mean"),
    ("stopwatch.reading", "0.2 s", "ASTM D4212: time reported to 0.2 s"),
    ("spray.distance_published", "6 in", "UFC 3-190-06 p. 146: gun 6 to 12 inches in air spray"),
    ("air.cleaning", "30 psi", "29 CFR 1926.302(b)(4): below 30 psi"),
    ("weather.least_eifs", "40 F", "UFGS 07 24 00 p. 26: not below 40 F"),
    ("weather.humidity", 85, "public-agency painting specifications: relative humidity at most 85 percent"),
    ("weather.wind_most", "15 mph", "public-agency painting specifications: wind at most 15 mph"),
    ("weather.above_dew_point_ip", 5, "UFC 3-190-06 p. 170: surface at least 5 F above dew point"),
    ("weather.above_dew_point_si", 3, "UFC 3-190-06 p. 170: surface at least 3 C above dew point"),
    ("weather.readings", 4, "UFC 3-190-06 p. 170: ambient measured about every 4 hours"),
    ("view.distance", "10 ft", "AAMA 2604 and 2605: viewed at 10 feet"),
    ("film.least_share", 85, "AAMA 2605: no reading below 85 percent of the film"),
    ("color.range_samples", 3, "AAMA text on metallic finishes: a range of control samples; light, middle and dark"),
    ("access.gap_plastering", "18 in", "29 CFR 1926.451(b)(3): 18 inches for plastering and lathing"),
    ("access.gap", "14 in", "29 CFR 1926.451(b)(3): 14 inches"),
    ("inspector.years_on_system", 2, "UFGS 07 24 00 p. 25: 2 years on the system"),
    ("inspector.years", 3, "UFGS 07 24 00 p. 25: 3 years of EIFS inspection"),
    ("fire.separation", "30 ft", "Chicago building code: radiant heat under 30 feet of separation"),
]


@pytest.mark.parametrize(("name", "figure", "text"), PUBLISHED, ids=[row[0] for row in PUBLISHED])
def test_a_published_limit_is_the_figure_of_its_text(name: str, figure: Any, text: str) -> None:
    limit = ROWS.limits[name]
    assert limit.source.kind is Kind.PUBLISHED
    value = limit.value.to(limit.value.unit) if isinstance(figure, int) and hasattr(limit.value, "to") else limit.value
    assert value == (measure(figure) if isinstance(figure, str) else figure), text


def test_no_published_limit_goes_untested() -> None:
    assert {name for name, row in ROWS.limits.items() if row.source.kind is Kind.PUBLISHED} == {
        row[0] for row in PUBLISHED
    }


def texts() -> list[tuple[str, str]]:
    """Every template of the rows with its place."""
    made = []
    for step in ROWS.steps.values():
        for text in (step.wait, *step.cautions, *(s.text for s in step.sentences)):
            made.append((f"step {step.name}", text))
    made += [(f"criterion {c.name}", c.limit) for c in ROWS.criteria.values()]
    return made + [(f"tool {t.name}", text) for t in ROWS.tools.values() for text in (t.what, t.why)]


def test_every_template_speaks_of_known_fields_and_limits() -> None:
    schema = pipeline.schema()
    environment = jinja2.Environment(autoescape=False)  # noqa: S701  only parsed, never rendered
    for place, text in texts():
        tree = environment.parse(text)
        for call in tree.find_all(nodes.Call):
            if isinstance(call.node, nodes.Name) and call.node.name == "limit":
                assert call.args[0].value in ROWS.limits, (place, text)
        code = re.sub(r"'[^']*'", "", " ".join(re.findall(r"\{[{%](.*?)[%}]\}", text)))
        for path in re.findall(r"\b([a-z_]+(?:\.[a-z_0-9]+)+)", code):
            parts = tuple(path.split("."))
            if parts[0] == "wall":
                parts = ("walls", "*", *parts[1:])
            if parts[0] in schema.root.children:
                assert schema.node(parts), (place, path)


def test_rows_name_known_steps_forms_and_sources() -> None:
    assert {tool.step for tool in ROWS.tools.values()} <= set(ROWS.steps)
    assert all(step.point in "HWRE" and step.records is not None for step in ROWS.steps.values())
    assert {record for step in ROWS.steps.values() for record in step.records} <= set(ROWS.forms)
    assert all(criterion.basis for criterion in ROWS.criteria.values())


def test_steps_follow_one_another_without_gap() -> None:
    assert [step.order for step in ROWS.steps.values()] == list(range(1, len(ROWS.steps) + 1))


def test_a_limit_bounds_a_field_that_there_is() -> None:
    schema = pipeline.schema()
    assert all(row.field in schema.fields for row in ROWS.limits.values() if row.field is not None)
