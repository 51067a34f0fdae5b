"""Every example in the round figures of the other kind of work, metric or not: no verdict and no clause changes."""

import shutil
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
import yaml

from specgen import pipeline
from specgen.model.field import Path as FieldPath
from specgen.quantities.parse import QuantityError, parse_any_quantity, parse_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.reading.schema import project_schema
from tests.support import EXAMPLES, case_of, merged, mixed, project_of, told_by

# Sizes below an inch and a few others as metric trade writes them: common practice, no source, but for the lap of
# mesh, which UFGS 07 24 00 p. 24 prints as 60 mm. In inches and millimeters.
SIZES = {
    "1/64": "0.4",
    "1/32": "0.8",
    "3/64": "1.2",
    "1/16": "1.5",
    "3/32": "2.5",
    "1/8": "3",
    "5/32": "4",
    "3/16": "5",
    "1/4": "6",
    "5/16": "8",
    "3/8": "10",
    "7/16": "11",
    "1/2": "12",
    "9/16": "14",
    "5/8": "16",
    "3/4": "19",
    "7/8": "22",
    "15/16": "24",
    "5/4": "32",
    "3/2": "38",
    "5/2": "60",
    "15/2": "190",
}
# Metric unit and the step to which a conversion is rounded, by unit; common practice, no source.
STEPS = {
    "F": ("C", "1"),
    "psi": ("kPa", "10"),
    "psf": ("kPa", "0.01"),
    "mph": ("m/s", "0.5"),
    "cfm": ("L/min", "10"),
    "scfm": ("L/min", "10"),
    "mil": ("um", "5"),
    "gal": ("L", "0.5"),
    "fl oz": ("mL", "10"),
    "oz/yd2": ("g/m2", "10"),
    "ft2/gal": ("m2/L", "0.1"),
    "ft2/h": ("m2/h", "1"),
    "ft/h": ("m/h", "1"),
    "lb/gal": ("g/L", "1"),
    "R": ("RSI", "0.01"),
    "perm": ("ng/(Pa.s.m2)", "1"),
    "/F": ("/C", "0.0000001"),
}


def in_metric(quantity: Quantity) -> str:
    """A quantity in the round figure of metric work; one that is metric already is left."""
    unit = quantity.unit
    number = quantity.to(unit)
    if unit == "ft":
        return f"{float(number * Fraction('0.3')):g} m"
    if unit == "in":
        # An inch is 25 mm, a foot 0.3 m: 6 in is 150 mm, 24 in is 600 mm.
        whole = number * 25 if number.denominator == 1 else round(quantity.to("mm"), 1)
        return f"{SIZES.get(str(number)) or float(whole)} mm"
    if unit == "ft2":
        return f"{float(number * Fraction('0.09')):g} m2"
    if unit == "%/1000 ft":
        return f"{float(number):g} %/300 m"
    if unit not in STEPS:
        return quantity.text
    other, step = STEPS[unit]
    return f"{float(round(quantity.to(other) / Fraction(step)) * Fraction(step)):.10g} {other}"


def in_inches(quantity: Quantity) -> str:
    """A quantity of metric work in the figure of inches and pounds that it is the twin of."""
    unit = quantity.unit
    number = quantity.to(unit)
    if unit == "m":
        feet = number / Fraction("0.3")
        # Thirds of a foot are whole inches, and so stay exact.
        return f"{feet * 12} in" if 12 % feet.denominator == 0 < feet.denominator - 1 else f"{float(feet):g} ft"
    if unit == "mm":
        inches = {metric: size for size, metric in SIZES.items()}.get(f"{float(number):g}")
        return f"{mixed(Fraction(inches or Fraction(round(number / 25 * 16), 16)))} in"
    if unit == "m2":
        return f"{float(number / Fraction('0.09')):g} ft2"
    other = {metric: inch for inch, (metric, _) in STEPS.items() if inch not in ("scfm", "psf")}.get(unit)
    if other == "psi":
        # 550 kPa stands for 80 psi.
        return f"{round(quantity.to(other))} psi"
    return f"{float(quantity.to(other)):.3g} {other}" if other else quantity.text


def scalars(node: yaml.Node, path: FieldPath = ()) -> Iterator[tuple[FieldPath, yaml.ScalarNode]]:
    """The scalars of a file by their path."""
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield from scalars(value, (*path, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for place, value in enumerate(node.value):
            yield from scalars(value, (*path, str(place)))
    elif isinstance(node, yaml.ScalarNode):
        yield path, node


def read(path: FieldPath, text: str) -> Quantity | None:
    """The quantity that a text is at its path, or none."""
    schema = project_schema()
    field = schema.field_at(path) or schema.field_at(path[:-1])
    try:
        if field is not None and "quantity" in (field.kind, field.of):
            return parse_quantity(text, find_dimension(field.dimension, field.unit_ip), (field.unit_ip,))
        return parse_any_quantity(text) if path[-1] == "value" else None
    except QuantityError:
        return None


def convert(text: str, system: str) -> str:
    """A file in the figures of the other kind of work; a project file is told its units."""
    rewrite = in_metric if system == "si" else in_inches
    nodes = dict(scalars(yaml.compose(text, Loader=yaml.SafeLoader)))
    marked = {node: rewrite(found) for path, node in nodes.items() if (found := read(path, node.value)) is not None}
    units, purpose = nodes.get(("package", "units")), nodes.get(("package", "purpose"))
    if units is not None:
        marked[units] = system
    elif purpose is not None:
        flows = text[purpose.end_mark.index] in ",}"
        marked[purpose] = f"{purpose.value}{', ' if flows else chr(10) + '  '}units: {system}"
    for node, new in sorted(marked.items(), key=lambda item: -item[0].start_mark.index):
        text = text[: node.start_mark.index] + new + text[node.end_mark.index :]
    return text


def outcome(file: Path) -> tuple[dict[str, str], set[tuple[str, str]]]:
    """The verdict of each wall, and each finding with its severity."""
    judgment = pipeline.check(file).judgment
    return {mark: str(verdict) for mark, verdict in judgment.walls.items()}, {
        (finding.code, subject) for finding in judgment.findings for subject in finding.subjects
    }


def rewritten(example: str, folder: Path, system: str) -> Path:
    """A copy of an example in the figures of the other kind of work."""
    shutil.copytree(EXAMPLES / example, folder, dirs_exist_ok=True)
    for file in folder.glob("*.yaml"):
        file.write_text(convert(file.read_text("utf-8"), system), "utf-8")
    assert pipeline.read(folder / "project.yaml").system == system
    return folder / "project.yaml"


@pytest.mark.parametrize(
    ("example", "system"),
    [("first-look", "si"), ("clean", "si"), ("stops", "si"), ("large", "si"), ("own-face", "ip"), ("metric", "ip")],
)
def test_an_example_in_the_round_figures_of_the_other_kind_of_work_is_judged_as_before(
    example: str, system: str, tmp_path: Path
) -> None:
    assert outcome(rewritten(example, tmp_path, system)) == outcome(EXAMPLES / example / "project.yaml")


def test_a_metric_project_that_is_stopped_is_told_the_metric_limit(tmp_path: Path) -> None:
    # UFGS 07 24 00 p. 24 prints 60 mm; the others are the round figures of practice.
    project = {
        "package": {"units": "si"},
        "walls": {
            "W1": {
                "insulation": {"thickness": "110 mm"},
                "mesh": {"layers": [{"kind": "standard", "lap": "50 mm"}]},
                "substrate": {"plane_measured": "8 mm"},
            }
        },
        "elevations": {"E1": {"grade_clearance": "140 mm"}},
        "spray": {"distance": "350 mm"},
    }
    judgment = case_of(tmp_path, project).judgment
    assert judgment.stopped
    told = {finding.code: finding.message for finding in judgment.findings}
    wanted = {
        "INS-04a": "maximum 100 mm",
        "BAS-03a": "60 mm",
        "BAS-05a": "minimum 150 mm",
        "AIR-05a": "closer than 400 mm",
    }
    for code, words in wanted.items():
        assert words in told[code], told[code]
    # A straightedge of 3 m, never one of 10 ft or 3.05 m.
    assert "under a 3 m straightedge; maximum 6 mm" in told["PLN-01a"]


def test_a_figure_of_metric_work_governs_to_the_millimeter(tmp_path: Path) -> None:
    for clearance, stops in (("149 mm", True), ("150 mm", False), ("152 mm", False)):
        elevation = {"grade_clearance": clearance, "grade_is_soil": False}
        found = case_of(tmp_path, {"package": {"units": "si"}, "elevations": {"E1": elevation}}).judgment.findings
        assert any(finding.code == "BAS-05a" for finding in found) is stops, clearance


# Path, figure of metric work, and the clause that an inch limit would fire on it: common practice, no source.
ROUND = [
    ("elevations.E1.grade_clearance", "150 mm", "BAS-05a"),
    ("walls.W1.insulation.thickness", "25 mm", "INS-04b"),
    ("walls.W1.insulation.board_joint_to_reveal", "75 mm", "INS-06a"),
    ("walls.W1.insulation.board_joint_to_opening_corner", "150 mm", "INS-06b"),
    ("walls.W1.base_coat.dry_thickness", "1.5 mm", "BAS-01b"),
    ("spray.distance", "0.4 m", "AIR-05a"),
    ("panel_limits.least_side", "600 mm", "AJT-07d"),
    ("joints.J1.width", "12 mm", "SLT-03b"),
    ("joints.J1.depth", "6 mm", "SLT-03g"),
    ("joints.J1.install_low", "4 C", "SLT-08b"),
    ("hoses.H1.length", "3.6 m", "AIR-04d"),
    ("compressor.air_flow", "360 L/min", "AIR-01a"),
    ("compressor.at_pressure", "550 kPa", "AIR-01b"),
]


def nested(path: str, value: object) -> dict[str, object]:
    name, _, rest = path.partition(".")
    return {name: nested(rest, value) if rest else value}


@pytest.mark.parametrize(("path", "figure", "code"), ROUND, ids=[f"{row[0]} {row[1]}" for row in ROUND])
def test_the_round_figure_of_metric_work_passes(path: str, figure: str, code: str, tmp_path: Path) -> None:
    kinds = {"joints": {"J1": {"kind": "opening_perimeter"}}, "hoses": {"H1": {"use": "air_gun"}}}
    asked = {name: kinds[name] for name in kinds if path.startswith(name)}
    units = {"package": {"units": "si"}, "aesthetic_joint": {"depth": "3 mm"}}
    project = project_of(tmp_path, merged(merged(units, asked), nested(path, figure)))
    assert not told_by(project, code).fires
    less = f"{float(figure.split()[0]) * (1.2 if 'length' in path else 0.8):.6g} {figure.split()[1]}"
    assert told_by(project_of(tmp_path, merged(merged(units, asked), nested(path, less))), code).fires
