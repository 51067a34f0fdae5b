"""Part 1 of the procedure: meeting, schedule, reports by what they prove, people, field conditions, warranty."""

from pathlib import Path
from typing import Any

from tests.documents.test_products import rows_of, text_of


def part_one(text: str) -> str:
    """What stands between the heads of the parts on general matters and on products."""
    return text.split("PART 1 GENERAL")[1].split("PART 2 PRODUCTS")[0]


def test_each_person_stands_once_with_all_roles(tmp_path: Path) -> None:
    people = {
        "P1": {"name": "A. Rill", "role": "foreman", "employer": "Works", "crew": "red"},
        "P2": {"name": "A. Rill", "role": "competent_person", "employer": "Works"},
        "P3": {"name": "B. Oxbow", "role": "inspector", "employer": "Level Eye"},
    }
    crews = {"red": {"steps": ["boards"], "size": 2}}
    rows = rows_of(part_one(text_of(tmp_path, {"people": people, "crews": crews})))
    assert rows["A. Rill"] == ["foreman, competent person", "Works", "red"]
    assert rows["B. Oxbow"] == ["inspector", "Level Eye", "–"]


def test_the_meeting_names_its_day_and_all_who_attend(tmp_path: Path) -> None:
    given = {"schedule": {"meeting_on": "2027-04-05"}, "parties": {"inspector": {"name": "Level Eye"}}}
    text = part_one(text_of(tmp_path, given))
    assert "Preinstallation meeting, April 5, 2027: architect, general contractor, applicator, sealant" in text
    assert "inspector (Level Eye), EIFS manufacturer, and finish manufacturer. Review" in text
    assert "Preinstallation meeting, before the mockup:" in part_one(text_of(tmp_path / "bare"))


def test_the_hour_of_the_shift_is_told_by_the_half_of_the_day(tmp_path: Path) -> None:
    for hour, said in (("06:00", "6:00 a.m."), ("00:30", "12:30 a.m."), ("13:05", "1:05 p.m.")):
        schedule = {"work_start": "2027-05-17", "shift_start": hour, "shift_hours": 10}
        text = part_one(text_of(tmp_path / hour.replace(":", ""), {"schedule": schedule}))
        assert f"work starts May 17, 2027; one 10 h shift from {said}" in text


WALL: dict[str, Any] = {
    "base_coat": {"class": "PB"},
    "attachment": {"method": "adhesive_full_bed", "ultimate_strength": "180 psf"},
    "insulation": {"kind": "eps", "flame_spread": 20, "smoke_developed": 300},
}


def test_reports_are_listed_by_what_they_prove_and_one_that_is_missing_is_pending(tmp_path: Path) -> None:
    report = {"kind": "test_report", "issued_on": "2026-01-20", "signed": "yes"}
    change = {
        "walls": {"W1": WALL, "W2": WALL},
        "elevations": {"E1": {"impact_zones": [{"from": "0 ft", "to": "7 ft", "class": "high"}]}},
        "attachments": {
            "TR1": report | {"standard": "ASTM E2568", "title": "Class PB, impact by ASTM E2486"},
            "TR2": report | {"standard": "ASTM E330", "title": "Wind on W2", "assembly": "W2"},
            "TR3": report | {"standard": "ASTM G155", "title": "Weathering"},
        },
    }
    rows = rows_of(part_one(text_of(tmp_path, change)))
    assert rows["EIFS"] == ["class PB", "ASTM E2568", "TR1, January 20, 2026"]
    assert rows["Insulation board indexes"] == ["flame spread 20, smoke developed 300", "ASTM E84", "pending"]
    assert rows["Wind load, W1"] == ["180 psf ultimate", "ASTM E330", "pending"]
    assert rows["Wind load, W2"][2] == "TR2, January 20, 2026"
    # ASTM E2486: high is 90 to 150 in-lb; from memory.
    assert rows["Impact classes"] == ["high minimum 90 in-lb", "ASTM E2486", "TR1, January 20, 2026"]
    assert rows["Weathering"] == ["–", "ASTM G155", "TR3, January 20, 2026"]


# Common practice, no source: coats at 50 °F or more; a manufacturer's figure prints only where it is stricter.
def test_a_manufacturers_figure_stands_beside_that_of_the_trade_only_where_it_is_stricter(tmp_path: Path) -> None:
    for least, extra in (("50 F", False), ("55 F", True)):
        coating = {coat: {"least_dry_temperature": least} for coat in ("primer", "gloss")}
        rows = rows_of(part_one(text_of(tmp_path / least.replace(" ", ""), {"coating": coating})))
        assert ("Air and wall temperature until dry" in rows) is extra
        if extra:
            assert rows["Air and wall temperature until dry"] == ["primer, gloss", "minimum 55 °F"]


def test_the_warranty_names_its_start_who_gives_it_and_its_terms(tmp_path: Path) -> None:
    contract = {
        "warranty_years": 5,
        "warranty_start": "substantial_completion",
        "warrantors": ["finish_source", "applicator"],
    }
    given = {"contract": contract, "parties": {"finish_source": {"name": "Gloss Works"}}}
    said = "Warranty period: 5 years from substantial completion, by Gloss Works and the applicator. "
    assert said + "Submit the warranty documents before substantial completion." in part_one(text_of(tmp_path, given))
    given |= {"attachments": {"WA1": {"kind": "warranty", "title": "Sample"}}}
    assert said + "Terms: WA1." in part_one(text_of(tmp_path / "terms", given))


def test_the_inspection_says_who_engages_the_inspector(tmp_path: Path) -> None:
    contract = {"inspection_level": "full_time", "inspector_engaged_by": "owner"}
    text = part_one(text_of(tmp_path, {"contract": contract, "parties": {"inspector": {"name": "Level Eye"}}}))
    assert "Inspection: full time, by Level Eye, engaged by the owner." in text
