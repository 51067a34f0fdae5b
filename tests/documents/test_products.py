"""Part 2 of the procedure: keys, manufacturers and products, the gloss, sealant schedule, equipment, checklist."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import building
from specgen.documents.display_values import DisplayValue, count_things, with_unit
from specgen.documents.marks import name_member
from tests.documents.support import context_of, context_of_example
from tests.support import SMALL, merged, written


def text_of(folder: Path, change: Any = None) -> str:
    """The text of D08 for the small project with a change, without the marks of sources."""
    folder.mkdir(exist_ok=True)
    coating = (change or {}).get("coating")
    base = merged(SMALL, {"coating_system": "coating.yaml"} if coating else {})
    if coating:
        written(folder, {"format": 1} | coating, "coating.yaml")
    rest = {key: value for key, value in (change or {}).items() if key != "coating"}
    building.build(written(folder, merged(base, rest)), folder / "out", ("txt",), ("D08",), draft=True)
    (made,) = (folder / "out").glob("D08*.txt")
    return re.sub(r"\[[a-z]{1,2}\]", "", made.read_text("utf-8"))


def part_two(text: str) -> str:
    """What stands between the heads of the parts on products and on execution."""
    return text.split("PART 2 PRODUCTS")[1].split("PART 3 EXECUTION")[0]


def rows_of(text: str) -> dict[str, list[str]]:
    """The rows of all tables by their first cell."""
    cells = [line.split(" | ") for line in text.splitlines() if " | " in line]
    return {row[0]: row[1:] for row in cells}


WALL = {
    "wrb": {
        "kind": "fluid_applied",
        "standard": "ASTM E2570",
        "product": "Barrier 1",
        "coats": 2,
        "dry_thickness": "12 mil",
        "dry_hours": 24,
    },
    "attachment": {"method": "adhesive_full_bed", "adhesive_kind": "cement_based", "product": "Glue 2"},
    "insulation": {"kind": "eps", "c578_type": "I", "e2430": "yes", "thickness": "2 in", "product": "Board 3"},
    "base_coat": {"class": "PB", "kind": "cement_added", "passes": 1, "dry_thickness": "3/32 in", "product": "Base 4"},
    "mesh": {
        "layers": [
            {
                "kind": "standard",
                "weight": "4.5 oz/yd2",
                "order": 2,
                "edge": "butted",
                "zone": "all",
                "product": "Net 6",
            },
            {
                "kind": "high_impact",
                "weight": "15 oz/yd2",
                "order": 1,
                "edge": "butted",
                "zone": "high",
                "product": "Net 5",
            },
        ]
    },
}
PARTIES = {
    "eifs_source": {"name": "Wall Works"},
    "wrb_source": {"name": "Barrier Works"},
    "finish_source": {"name": "Gloss Works"},
    "sealant_source": {"name": "Bead Works"},
}
COATS = {
    "smoothing": {"product": "Skim 7"},
    "primer": {
        "product": "Primer 8",
        "tinted": "yes",
        "coats": 1,
        "dry_film": "1.5 mil",
        "volume_solids": 38,
        "max_water": 8,
        "transfer_efficiency": 35,
        "pail": "5 gal",
        "reserve": 10,
        "voc": "60 g/L",
    },
    "gloss": {"product": "Gloss 9"},
}


def test_each_material_has_its_manufacturer_its_product_and_its_data_sheet(tmp_path: Path) -> None:
    change = {
        "walls": {"W1": WALL},
        "parties": PARTIES,
        "coating": COATS,
        "sealants": {"S1": {"product": "Bead 10", "c920_type": "S", "c920_grade": "NS", "c920_class": 50}},
        "attachments": {
            "A1": {"kind": "data_sheet", "covers": ["wrb", "board"]},
            "A2": {"kind": "letter", "covers": ["adhesive"]},
        },
    }
    rows = rows_of(part_two(text_of(tmp_path, change)))
    expected = {
        "WRB": ["Barrier Works", "Barrier 1", "A1"],
        "Adhesive": ["Wall Works", "Glue 2", "pending"],
        "Insulation board": ["Wall Works", "Board 3", "A1"],
        "Base coat": ["Wall Works", "Base 4", "pending"],
        "Mesh, high-impact": ["Wall Works", "Net 5", "pending"],
        "Mesh, standard": ["Wall Works", "Net 6", "pending"],
        "Smoothing coat": ["Gloss Works", "Skim 7", "pending"],
        "Primer": ["Gloss Works", "Primer 8", "pending"],
        "Gloss": ["Gloss Works", "Gloss 9", "pending"],
        "Sealant S1": ["Bead Works", "Bead 10", "pending"],
    }
    assert {name: rows[name][1:] for name in expected} == expected
    assert [name for name in rows if name.startswith("Mesh")] == ["Mesh, high-impact", "Mesh, standard"]
    assert rows["Base coat"][0].endswith("1 pass, minimum 3/32 in dry; one pass more at heavy mesh")
    assert rows["WRB"][0].endswith("2 coats, minimum 12 mil dry; drying, minimum 24 h")


def test_a_material_that_not_every_wall_has_bears_the_marks_of_its_walls(tmp_path: Path) -> None:
    other = merged(WALL, {"wrb": {"kind": "none"}, "insulation": {"thickness": "3 in"}})
    rows = rows_of(part_two(text_of(tmp_path, {"walls": {"W1": WALL, "W2": other}})))
    assert {"WRB, W1", "Insulation board, W1", "Insulation board, W2", "Adhesive", "Base coat"} <= set(rows)
    assert "WRB, W2" not in rows


def test_a_product_not_given_prints_its_name_in_brackets(tmp_path: Path) -> None:
    rows = rows_of(part_two(text_of(tmp_path)))
    products = {name: row[2] for name, row in rows.items() if len(row) == 4 and row[3] == "pending"}
    assert products == {
        "WRB": "[WRB product]",
        "Adhesive": "[Adhesive product]",
        "Insulation board": "[Insulation board product]",
        "Base coat": "[Base coat product]",
        "Smoothing coat": "[Smoothing coat product]",
        "Primer": "[Primer product]",
        "Gloss": "[Gloss product]",
    }


FACES: dict[str, Any] = {
    "walls": {"W1": WALL, "W2": WALL},
    "colors": {"C1": {"reference": "board 4", "number": "77", "metallic": "yes"}},
    "elevations": {
        "E1": {
            "name": "South face",
            "wall": "W1",
            "color": "C1",
            "facing": "S",
            "width": "40 ft",
            "height": "10 ft",
            "openings": {"A": {"kind": "window", "width": "4 ft", "height": "5 ft"}},
        },
        "E2": {"wall": "W2", "color": "C1", "facing": "N", "width": "20 ft", "height": "10 ft", "openings": {}},
    },
}


# By hand: 40 x 10 less 4 x 5 is 380 sq ft; with 20 x 10 it is 580 sq ft; 0.09290304 m2 in a sq ft.
def test_the_finish_schedule_names_each_elevation_with_its_color_and_net_area(tmp_path: Path) -> None:
    rows = rows_of(part_two(text_of(tmp_path, FACES)))
    assert rows["E1 South face"] == [
        "south",
        "W1",
        "C1 board 4, No. 77",
        "40 ft x 10 ft",
        "380 sq ft",
    ]
    assert rows["E2 north"][-1] == "200 sq ft"
    assert rows["All elevations"][-1] == "580 sq ft"
    assert (rows["W1"][-1], rows["W2"][-1]) == ("380 sq ft", "200 sq ft")


@pytest.mark.parametrize(
    ("zones", "said"),
    [
        ([("0 ft", "7 ft", "high"), ("7 ft", "10 ft", "standard")], "high to 7 ft, standard above"),
        ([("0 ft", "7 ft", "high"), ("7 ft", "9 ft", "medium")], "high to 7 ft, medium to 9 ft"),
        ([("2 ft", "7 ft", "high")], "high 2 ft to 7 ft"),
        ([("0 ft", "10 ft", "standard")], "standard to 10 ft"),
    ],
)
def test_the_finish_schedule_tells_how_high_each_impact_class_reaches(
    zones: list[tuple[str, str, str]], said: str, tmp_path: Path
) -> None:
    given = [{"from": low, "to": high, "class": name} for low, high, name in zones]
    rows = rows_of(part_two(text_of(tmp_path, merged(FACES, {"elevations": {"E1": {"impact_zones": given}}}))))
    assert rows["E1 South face"][3] == said
    assert rows["E2 north"][3] == "–"


def test_a_net_area_waits_for_the_openings_and_says_so(tmp_path: Path) -> None:
    faces = merged(FACES, {"elevations": {"E2": {"openings": "drop"}}})
    rows = rows_of(part_two(text_of(tmp_path, faces)))
    assert rows["E1 South face"][-1] == "380 sq ft"
    assert rows["E2 north"][-1] == rows["All elevations"][-1] == "[pending: openings]"


# By hand: 1.5 mil over 0.38 is 3.947 mil, with 8 % of water 4.263 mil; 1604 x 0.38 x 0.35 / 1.5 is 142.2 sq ft/gal;
# 580 sq ft with 3 % for returns and 2 % for sides of joints are 609 sq ft; over that 4.282 gal, with a reserve of 10 %
# 4.711 gal, one pail of 5 gal.
# Smoothing: 609 / 240 x 2 is 5.075 gal.
def test_the_gloss_article_gives_films_coverage_and_pails_of_each_coat(tmp_path: Path) -> None:
    coating = merged(COATS, {"smoothing": {"coats": 2, "between_hours": 4, "spreading_rate": "240 ft2/gal"}})
    rows = rows_of(part_two(text_of(tmp_path, FACES | {"coating": coating, "code": {"voc_limit": "100 g/L"}})))
    assert rows["Property"] == ["Smoothing coat", "Primer, tinted", "Gloss"]
    assert rows["Wet film, each coat"][1].startswith("4.3 mil with 8% water, 4.0 mil without")
    assert rows["Coverage, each coat"][1].startswith("142 sq ft/gal")
    assert rows["Quantity, all coats"][0].startswith("5.08 gal, waste not included")
    assert rows["Drying between coats"][:2] == ["minimum 4 h", "–"]
    assert rows["Quantity, all coats"][1].startswith("4.71 gal, 1 pail of 5 gal, 10% reserve included")
    assert rows["VOC, limit 100 g/L"][1] == "60 g/L"
    assert "Thinning water" in rows and "Recoating" not in rows


def test_the_gloss_article_names_product_color_gloss_and_the_deviation_it_rests_on(tmp_path: Path) -> None:
    change = {
        "coating": COATS,
        "colors": {
            "C1": {"reference": "board 4", "number": "77", "metallic": "yes", "tolerance": 2, "angles": [15, 45]}
        },
        "gloss_target": {"units": 62, "angle": 60, "tolerance": 5},
        "contract": {
            "demands": [
                {
                    "section": "09 96 00",
                    "paragraph": "2.4.A",
                    "field": "gloss_target.units",
                    "relation": ">=",
                    "value": "75",
                }
            ]
        },
        "deviations": {"DV1": {"answers": ["2.4.A"]}, "DV2": {"answers": ["3.1.B"]}},
    }
    text = part_two(text_of(tmp_path, change))
    assert "Provide a spray-applied waterborne metallic gloss finish: Gloss 9." in text
    assert (
        "Color C1: board 4, manufacturer's No. 77, metallic. "
        "Maximum CIEDE2000 color difference 2 at each of 15 and 45 degrees." in text
    )
    assert (
        "Gloss: 62 ± 5 gloss units at 60 degrees, ASTM D523. Deviation DV1 from Section 09 96 00, paragraph 2.4.A.\n"
        in text
    )


JOINT = {
    "elevation": "E1",
    "kind": "floor_line",
    "runs": "horizontal",
    "at": "6 ft",
    "length": "40 ft",
    "width": "1 in",
    "depth": "1/2 in",
    "rod_kind": "closed_cell",
    "rod_diameter": "1-1/4 in",
    "rod_product": "Rod 11",
    "rod_maker": "Foam Works",
    "bond_face": "primer",
}


def test_the_sealant_schedule_gives_place_size_rod_and_the_face_tested(tmp_path: Path) -> None:
    change = FACES | {
        "sealants": {"S1": {"product": "Bead 10", "reported_face": "primer", "adhesion_report": "A1"}},
        "attachments": {
            "A1": {"kind": "test_report", "covers": ["sealant"]},
            "A2": {"kind": "data_sheet", "covers": ["accessories"]},
        },
        "accessories": [
            {
                "kind": "sill_pan",
                "description": "0.032 in aluminum",
                "at": "A",
                "maker": "Sheet Works",
                "product": "shop fabricated",
            }
        ],
        "details": {
            "PN1": {
                "kind": "penetration",
                "elevation": "E1",
                "at": "hose bibb",
                "joint_width": "1/2 in",
                "joint_depth": "1/4 in",
                "rod_diameter": "5/8 in",
            }
        },
        "joints": {
            "J1": JOINT,
            "J4": merged(JOINT, {"kind": "eifs_to_eifs", "runs": "vertical", "at": "12 ft", "length": "drop"}),
            "J2": merged(
                JOINT,
                {
                    "kind": "opening_perimeter",
                    "runs": "around_opening",
                    "serves": ["A"],
                    "at": "drop",
                    "length": "drop",
                    "rod_diameter": "7/8 in",
                    "bond_face": "base_coat",
                },
            ),
            "J3": merged(
                JOINT,
                {
                    "rod_kind": "none",
                    "rod_diameter": "drop",
                    "rod_product": "drop",
                    "rod_maker": "drop",
                    "bond_break_tape": "yes",
                },
            ),
            # The opening is 4 ft by 5 ft: its head and two jambs are 14 ft.
            "J5": merged(
                JOINT,
                {
                    "kind": "opening_perimeter",
                    "runs": "around_opening",
                    "serves": ["A"],
                    "at": "drop",
                    "length": "14 ft",
                    "rod_kind": "none",
                },
            ),
        },
    }
    text = part_two(text_of(tmp_path, change))
    rows = rows_of(text)
    assert rows["J1"][:4] == [
        "E1 South face: floor line 6 ft above the base",
        "40 ft",
        "S1",
        "1 in x 1/2 in",
    ]
    assert rows["J1"][5:] == ["1-1/4 in", "primer"]
    assert rows["J2"][:2] == ["E1 South face: opening perimeter at A", "[Joint length]"]
    assert rows["J5"][:2] == ["E1 South face: heads and jambs of A", "14 ft"]
    assert rows["J2"][-1] == "base coat, tested on primer (A1), window frame"
    assert rows["J3"][-2] == "bond-breaker tape"
    assert rows["J4"][:2] == ["E1 South face: EIFS to EIFS 12 ft from the left end", "10 ft"]
    assert rows["PN1"] == [
        "E1 South face: hose bibb",
        "–",
        "S1",
        "1/2 in x 1/4 in",
        "–",
        "5/8 in",
        "primer, collar",
    ]
    assert rows["Backer rod"] == [
        "closed-cell; 1-1/4 in (J1, J4), 7/8 in (J2), 5/8 in (PN1)",
        "Foam Works",
        "Rod 11",
        "pending",
    ]
    assert rows["Bond-breaker tape"] == [
        "at J3",
        "[Bond-breaker tape manufacturer]",
        "[Bond-breaker tape product]",
        "pending",
    ]
    assert rows["Sill pan"] == ["0.032 in aluminum; A", "Sheet Works", "shop fabricated", "A2"]


def test_test_equipment_prints_its_number_and_the_day_its_calibration_ends(tmp_path: Path) -> None:
    firm = {
        "format": 1,
        "instruments": {
            "CUP-7": {"kind": "zahn_4_cup", "calibrated_to": "2027-12-31"},
            "PR-1": {"kind": "pressure_gauge", "calibrated_to": "2027-12-31"},
            "AT-1": {"kind": "air_thermometer", "calibrated_to": "2027-12-31"},
            "ST-1": {"kind": "surface_thermometer", "calibrated_to": "2028-01-15"},
            "LS-1": {"kind": "long_straightedge"},
            "GM-1": {"kind": "gloss_meter"},
            "FG-1": {"kind": "film_gauge", "calibrated_to": "2027-12-31"},
            "WF-1": {"kind": "wet_film_comb"},
            "X-1": {"kind": "other"},
        },
        "guns": {"G1": {"kind": "conventional_pressure_fed", "count": 2, "spares": 1}},
    }
    written(tmp_path, firm, "firm.yaml")
    rows = rows_of(part_two(text_of(tmp_path, {"firm": "firm.yaml"})))
    unnumbered = "material thermometer and stopwatch, numbered and in calibration before the first reading"
    assert rows["Mixing and pressure"] == [
        f"CUP-7 Zahn No. 4 cup; PR-1 pressure gauge; {unnumbered}",
        "December 31, 2027",
    ]
    assert rows["Weather and surface"][1] == "December 31, 2027 (AT-1); January 15, 2028 (ST-1)"
    assert rows["Plane and profile"] == ["LS-1 long straightedge", "not required"]
    assert rows["Film and moisture"][1] == "December 31, 2027 (FG-1)"
    assert rows["Gloss and color"][1] == "[Instrument calibration end date]"
    assert rows["Other"][0] == "X-1"
    assert rows["Gun G1"][0].endswith("; 2 guns at work, 1 spare")


def test_without_equipment_the_general_sentences_stand(tmp_path: Path) -> None:
    text = part_two(text_of(tmp_path))
    assert "Compressor: minimum 12 cfm" in text
    assert "Spray equipment" not in text and "Test equipment" not in text
    assert "Sealant joints" not in text and "Accessories" not in text


def test_the_crew_checklist_has_a_box_for_each_tool_and_keeps_its_figures(tmp_path: Path) -> None:
    text = text_of(tmp_path, {"smoothing": {"abrasive": "fine"}, "coating": COATS})
    rows = rows_of(text.split("Attachment: crew checklist")[-1])
    assert "( ) Straightedge, 24 in, and feeler gauges" in rows["Rasping and leveling"][0]
    # D4212, 12.1 and 13.1.1: a stopwatch graduated in 0.2 s.
    assert "( ) Stopwatch reading 0.2 s" in rows["Spray setup"][0]
    assert "( ) Notched trowel" not in text


@pytest.mark.parametrize(
    ("collection", "mark", "words"),
    [
        ("elevations", "E1", "E1 South face"),
        ("elevations", "E2", "E2 north"),
        ("colors", "C1", "C1 board 4"),
        ("walls", "W1", "W1 concrete"),
        ("elevations", "E3", "E3"),
    ],
)
def test_a_mark_prints_with_what_names_it(collection: str, mark: str, words: str, tmp_path: Path) -> None:
    faces = merged(FACES, {"elevations": {"E3": {"wall": "W1", "width": "10 ft"}}})
    assert name_member(context_of(tmp_path, faces), collection, mark) == words


def test_one_is_singular_and_more_are_plural() -> None:
    one, two = (DisplayValue(str(n), n) for n in (1, 2))
    assert count_things(one, "coat", "coats") == [one, " coat"]
    assert count_things(two, "coat", "coats") == [two, " coats"]
    assert [
        with_unit(text, unit) for text, unit in (("1", "d"), ("2", "d"), ("1", "year"), ("1", "h"), ("1", "%"))
    ] == [
        "1 day",
        "2 days",
        "1 year",
        "1 h",
        "1%",
    ]


@pytest.mark.parametrize("example", ["clean", "metric"])
def test_the_examples_leave_no_product_open(example: str) -> None:
    context = context_of_example(example)
    (gloss, board) = (("gloss", "product"), ("walls", "W1", "insulation", "product"))
    assert not context.display(gloss).open and not context.display(board).open


# Common practice, no source: readings scatter about the film that is aimed at.
def test_the_film_aimed_at_stands_between_its_minimum_and_its_maximum(tmp_path: Path) -> None:
    films = {"dry_film": "1.5 mil", "target_dry_film": "1.7 mil", "most_dry_film": "2.2 mil"}
    coat = films | {"coats": 1, "volume_solids": 40, "max_water": 10}
    page = text_of(tmp_path, {"coating": {"primer": coat}})
    assert "each coat, mean 1.5 mil to 2.2 mil, target 1.7 mil" in rows_of(part_two(page))["Dry film"][1]
    # By hand: 1.7 / 0.40 x 1.10 = 4.675.
    assert "(target 4.7 mil wet with 10% water, 1.7 mil dry; limits 1.5 mil to 2.2 mil dry)" in page
