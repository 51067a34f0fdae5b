"""The safety plan: each hazard with its measure, its clause, and who sees to it, by what a project has."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.documents.support import context_of, context_of_example, lines_of, rows_of

US: dict[str, Any] = {"safety": {"rules": "us_osha"}}


def plan_of(context: Any) -> list[list[str]]:
    """The rows of the plan without the letters of sources: hazard, measure, clause, by where several see to them."""
    told = rows_of("D15", context)
    head = next(row for row in told if row[0] == "Hazard")
    rows = [row for row in told if len(row) == len(head)][1:]
    return [[re.sub(r"\[[a-z](, [a-z])*\]", "", cell) for cell in row] for row in rows]


def measures(context: Any) -> str:
    return "\n".join(row[1] for row in plan_of(context))


# Clauses as published: 29 CFR 1926.451, 1926.454, 1926.501, 1926.502, 1926.55, 1926.153, 1926.154, 1926.102, 1926.103,
# 1926.59, 1926.302, 1926.404, 1926.52, 1926.1153; the Act of 1970.
CLAUSES = (
    "1926.451(c)(1); 1926.451(f)(7); 1926.451(e)(1)",
    "1926.451(a)(6)",
    "1926.451(f)(3), (f)(8), and (f)(12)",
    "1926.454(a)",
    "1926.451(b)(3)",
    "1926.451(g)(1); 1926.451(g)(4)(ii)",
    "1926.501(b)(1); 1926.502(b) and (d)",
    "1926.451(h)",
    "1926.103 and 1910.134",
    "1926.59 and 1910.1200",
    "1926.95(a); 1926.102(a)(1)",
    "1926.302(b)(4)",
    "1926.1153",
    "–",
    "1926.302(b)(7)",
    "1926.404(b)(1)",
    "1926.52",
    "–",
    "Occupational Safety and Health Act, section 5(a)(1)",
    "1926.154; 1926.153(h) and (j); 1926.55(b)",
)


def test_each_measure_cites_its_clause_and_names_a_person() -> None:
    rows = plan_of(context_of_example("clean"))
    assert [row[2] for row in rows] == list(CLAUSES)
    # One person sees to all of it, and is named at the head alone.
    assert any("Measure, seen to by T. Underbough" in row for row in rows_of("D15", context_of_example("clean")))
    hazards = [row[0] for row in rows if row[0]]
    assert hazards == [
        *("Access", "Fall", "Spray health", "Dust", "Silica", "Air pressure", "Electrical", "Noise"),
        *("Overspray", "Heat", "Heated tent"),
    ]


# The example as its files have it.
SAID = (
    "Erect a frame scaffold 24 ft high on a base of 7 ft, without ties.",
    "Run routers, mixers, compressors, fans, and lamps on ground-fault circuit interrupters",
    # 29 CFR 1926.1153(f)(1) and (f)(2)(i): where silica may be breathed, no dry sweeping, and no compressed air.
    "Take up the dust of this work with a HEPA vacuum or wet; do not sweep it dry or blow it off.",
    "where sound passes 90 dBA over 8 h",
    "E1 South face, E2 West face: Erect, span, ballast, load, and inspect the scaffold per signed design CL1. Hang the "
    "shade cloth only per it, and take it down at the gusts and hours that it gives.",
    "Climb by ladder or stair tower, never by cross braces.",
    "Roof edges at RE1, RB1, PA1, PA2, PA3: guardrails or personal fall arrest at 6 ft or more above a lower level.",
    "Platform edge 14 in from the face; guardrail at the wall side.",
    "Maximum without guard: 18 in for plastering, 14 in for other work, spraying included.",
    "Over 10 ft above a lower level: guardrails at open sides and ends, top rail 38 in to 45 in above the platform",
    "fit-tested respirators per Respiratory protection program (SP1).",
    "Train and label per Hazard communication program (SP3).",
    "Mix cement and rub base coat per Silica exposure control plan (SP2).",
    "Wall W2: Grind the substrate wet, or with a shroud and HEPA vacuum.",
    "Use the pressure tank of 2.5 gal only with its relief valve, below its rated pressure of 80 psi.",
    "Air hoses: H1 3/8 in bore, H3 1/2 in bore.",
    "Keep people and vehicles a minimum of 60 ft from spraying",
    "Stop in wind or gusts above 8 mph.",
    "Design hot air 94 °F",
)


@pytest.mark.parametrize("words", SAID)
def test_a_measure_has_the_values_of_the_project(words: str) -> None:
    assert words in measures(context_of_example("clean"))


@pytest.mark.parametrize("example", ["clean", "metric", "stops", "old-wall", "first-look"])
def test_nothing_is_left_as_required(example: str) -> None:
    text = "\n".join(lines_of("D15", context_of_example(example)))
    assert "as required" not in text
    assert "None" not in text


@pytest.mark.parametrize(
    ("rules", "head", "first"),
    [
        ("us_osha", "29 CFR", "Comply with 29 CFR 1926"),
        (
            "other",
            "Guide, 29 CFR",
            "Comply with the safety law in force at the site. Clauses of 29 CFR are cited as a guide",
        ),
    ],
)
def test_other_law_makes_the_federal_text_a_guide(tmp_path: Path, rules: str, head: str, first: str) -> None:
    context = context_of(tmp_path, {"safety": {"rules": rules}})
    heads = [row[2] for row in rows_of("D15", context) if row[0] == "Hazard"]
    assert heads == [head]
    lines = lines_of("D15", context)
    assert any(line.startswith(f"1. {first}") for line in lines)
    cited = [line for line in lines if re.match(r"\[[a-z]\] 29 CFR", line)]
    assert cited
    assert all(line.endswith("guide only") is (rules == "other") for line in cited)


def test_a_wide_gap_without_a_guard_is_not_left_so(tmp_path: Path) -> None:
    access = {"X1": {"kind": "frame_scaffold", "face_gap": "20 in", "front_guard": "none"}}
    said = measures(context_of(tmp_path, US | {"access": access}))
    assert (
        "Platform edge 20 in from the face; move the platform closer, guard the edge, or use personal fall arrest."
        in said
    )


def test_a_slender_scaffold_is_tied(tmp_path: Path) -> None:
    tall = {"X1": {"kind": "frame_scaffold", "height": "40 ft", "base": "5 ft"}}
    low = {"X1": {"kind": "frame_scaffold", "height": "12 ft", "base": "5 ft"}}
    tied = "Tie a scaffold over 4 times as high as its base is wide, maximum 30 ft apart in length"
    assert tied in measures(context_of(tmp_path, US | {"access": tall}))
    assert tied not in measures(context_of(tmp_path, US | {"access": low}))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"access": {"X1": {"kind": "boom_lift"}}}, "Wear a harness with the lanyard on the boom or basket"),
        ({"site": {"surroundings": ["power_lines"]}}, "Do not work near the power line until the utility states"),
        ({"aesthetic_joint": {"cut_tool": "hot_groove"}}, "Keep hot-groove tools and flames away"),
        ({"protection": {"wash_water": "sanitary_sewer"}}, "Discharge wash water to the sanitary sewer"),
        ({"walls": {"W1": {"substrate": {"kind": "existing_coated"}}}}, "Do not disturb existing walls before release"),
    ],
)
def test_a_hazard_is_told_where_the_project_has_it(tmp_path: Path, change: Any, words: str) -> None:
    assert words in measures(context_of(tmp_path, US | change))
    assert words not in measures(context_of_example("clean"))


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"shade": {"T1": {"kind": "tent", "heated": True}}}, True),
        ({"shade": {"T1": {"kind": "tent", "heated": False}}}, False),
        ({"mockup": {"kind": "free_standing"}, "coating": {"gloss": {"least_dry_temperature": "50 F"}}}, True),
        ({"mockup": {"kind": "in_place"}, "coating": {"gloss": {"least_dry_temperature": "50 F"}}}, False),
    ],
)
def test_a_tent_that_may_be_heated_has_its_cautions(tmp_path: Path, change: Any, told: bool) -> None:
    said = measures(context_of(tmp_path, US | change))
    for words in ("indirect, vented heat only", "carbon monoxide alarm", "exhaust mist and fumes"):
        assert (words in said) is told


def test_the_emergency_lines_are_those_of_the_project_with_a_person_and_a_day() -> None:
    lines = lines_of("D15", context_of_example("clean"))
    assert any(line.startswith("1. T. Underbough posts this page on site before the first shift") for line in lines)
    told = [line.partition(". ")[2] for line in lines]
    assert "Site, as told to the emergency services: 60 Thimble Hill, Wickerwell" in told
    assert "Emergency number: 911" in told


def test_an_emergency_line_that_the_project_does_not_tell_is_a_blank_for_the_foreman(tmp_path: Path) -> None:
    lines = lines_of("D15", context_of(tmp_path, {"safety": {"emergency_number": "112"}}))
    told = [line.partition(". ")[2] for line in lines]
    assert any(line.startswith("The foreman enters the lines below and posts this page") for line in told)
    assert {"Emergency number: 112", "Hospital and route: ____", "First aid and eyewash at: ____"} <= set(told)


def test_from_the_ground_nobody_falls(tmp_path: Path) -> None:
    hazards = {row[0] for row in plan_of(context_of(tmp_path, US | {"access": {"X1": {"kind": "ground"}}}))}
    assert "Fall" not in hazards
    assert "Overspray" in hazards


def test_whoever_is_not_named_is_a_blank_and_a_role(tmp_path: Path) -> None:
    context = context_of(tmp_path, US)
    assert {row[3] for row in plan_of(context)} == {"competent person", "foreman"}
    assert any(line.startswith("2. Competent person: ____, with authority") for line in lines_of("D15", context))


def test_metric_values_are_on_the_safe_side() -> None:
    said = measures(context_of_example("metric"))
    # 29 CFR 1926.451(g)(1): 10 ft, 3.048 m; (g)(4)(ii): 38 to 45 in, 965 to 1143 mm.
    assert "Over 3 m above a lower level: guardrails at open sides and ends, top rail 970 mm to 1140 mm" in said
