"""The unit behind what is asked, where its words do not say it. Common practice, no source."""

import pytest

from specgen.documents.field_units import add_unit
from specgen.reading.schema import project_schema


@pytest.mark.parametrize(
    ("field", "asked", "system", "told"),
    [
        ("compressor.air_flow", "Compressor air flow", "ip", "Compressor air flow, cfm"),
        ("contract.variation_review_days", "Days for review of a deviation", "ip", "Days for review of a deviation"),
        ("people.*.years", "Years of experience", "ip", "Years of experience"),
        ("walls.*.insulation.r_value", "Board R-value", "ip", "Board R-value"),
        ("walls.*.insulation.r_value", "Board R-value", "si", "Board R-value, m²·K/W"),
        (
            "joints.*.structural_shear",
            "How far does it shear the joint?",
            "ip",
            "How far does it shear the joint, in inches?",
        ),
        ("joints.*.structural_shear", "How far?", "si", "How far, in millimeters?"),
        ("joints.*.structural_shear", "Shear in the joint", "si", "Shear in the joint, mm"),
    ],
)
def test_a_question_names_its_unit_once(field: str, asked: str, system: str, told: str) -> None:
    assert add_unit(asked, project_schema().fields[tuple(field.split("."))], system) == told
