"""Where the figures of the calculations come from: reports behind tested values, and who gives the others."""

from pathlib import Path

from tests.documents.example import changed_clean, page_of, rows_below
from tests.documents.support import document_of


def test_a_tested_value_cites_its_report() -> None:
    # The reports of the example by wall and color, retyped from its file.
    reports = [text for _, text in document_of("clean", "D06").legend if text.startswith("Test report ")]
    assert [text.partition(" of ")[0] for text in reports] == [
        "Test report TR8: Solar reflectance",
        "Test report TR9: Emittance",
        "Test report TR4: Wind load on sheathing",
        "Test report TR5: Wind load on concrete masonry",
    ]


def test_a_report_of_another_color_or_wall_proves_nothing(tmp_path: Path) -> None:
    change = {
        "colors": {"C2": {"reference": "sample board 3"}},
        "attachments": {"TR8": {"colors": ["C2"]}, "TR9": {"colors": ["C2"]}, "TR5": {"assembly": "W1"}},
    }
    page = page_of(changed_clean(tmp_path, change), "D06")
    assert "Test report TR8" not in page and "Test report TR9" not in page
    # Of W2 there is none now, and W1 has two.
    assert "Test report TR4: Wind load on sheathing; TR5: Wind load on concrete masonry" in page
    given = {row[0].partition(" (")[0]: row[1].split("; ") for row in rows_below(page, "PROJECT DATA")[1:]}
    assert "Solar reflectance of the color" in given["Finish manufacturer"]
    assert "Tested wind load of the adhered wall" in given["EIFS manufacturer"]


def test_what_bears_no_letter_stands_with_the_party_that_gives_it(tmp_path: Path) -> None:
    page = page_of(changed_clean(tmp_path, {"answers": "drop"}), "D06")
    given = {row[0].partition(" (")[0]: row[1].split("; ") for row in rows_below(page, "PROJECT DATA")[1:]}
    # Drying over heavy mesh is the EIFS manufacturer's, as that of the base coat is.
    assert "Mesh layer drying time" in given["EIFS manufacturer"]
    assert "Mesh layer drying time" not in given["Applicator"]
    told = [name for names in given.values() for name in names]
    assert "Solar reflectance of the color" not in told and "Tested wind load of the adhered wall" not in told
    # One value has one name: as the calculation calls it, so its giver is found.
    assert {"Minimum sealing temperature", "Maximum sealing temperature"} <= set(given["Sealant manufacturer"])
    assert "Minimum sealing temperature, T_low" in page and "Maximum sealing temperature, T_high" in page


def test_the_engineer_signs_and_seals_before_submittal(tmp_path: Path) -> None:
    unsigned = {"package": {"calculated_on": "drop", "checked_on": "drop"}}
    page = page_of(changed_clean(tmp_path, unsigned), "D06")
    assert "\nSign, date, and seal before submittal, March 1, 2027. The seal covers calculations 1 to 11, " in page
    assert "The engineer signs after verifying, by paragraph," in page
