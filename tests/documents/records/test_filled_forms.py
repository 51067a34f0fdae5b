"""Form D12 filled: entries on their sheets, cells as a second library reads them."""

import io
from datetime import date, time
from fractions import Fraction
from functools import cache
from typing import Any

import docx
import html5lib
from docx.oxml.ns import qn
from pypdf import PdfReader

from specgen.documents.catalogue import templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.formats import text
from specgen.formats.docx.word_file import write_docx
from specgen.formats.html import write_html
from specgen.formats.pdf.pages import write_pages
from specgen.model.block import Document, Part
from tests.documents.records.entries import DAY, GLOSS_PASS, context_with, documents_of, judgment_of, make_entries, q

WEATHER = {
    "date": DAY,
    "elevation": "E1",
    "step": "gloss",
    "started_at": time(11, 0),
    "air": q("68", "F"),
    "surface": q("97", "F"),
    "humidity": Fraction(50),
    "wind": q("5", "mph"),
    "sun_on_wall": True,
    "rain": False,
    "forecast_low": q("12", "C"),
}
PAIL = {
    "date": DAY,
    "elevation": "E1",
    "area": "left bay",
    "step": "gloss",
    "pail": "3",
    "batch": "B-204",
    "cup_time_before_water": q("44", "s"),
    "cup_time": q("30", "s"),
    "water_added": q("38", "fl oz"),
    "water": Fraction(6),
}
RELEASE = {
    "step": "primer",
    "elevation": "E1",
    "area": "left bay",
    "date": date(2027, 6, 14),
    "time": time(7, 0),
    "hours_dry": Fraction(18),
    "even_look": True,
    "wall_dry": False,
    "defects": (),
    "by": "R. Sand",
}
BOARDS = {"date": DAY, "elevation": "E1", "step": "boards", "started_at": time(7, 0), "crew": "silver"}


@cache
def made() -> dict[str, Document]:
    entries = make_entries(("log", GLOSS_PASS), ("log", PAIL), ("log", WEATHER), ("log", BOARDS), ("release", RELEASE))
    return documents_of(context_with(entries), judgment_of((entries[2], "surface"), (entries[2], "sun_on_wall")))


def rows_of(document: Document) -> list[list[str]]:
    """The cells of all tables as the reader of Word files sees them: blanks are controls, and leave nothing."""
    word = docx.Document(io.BytesIO(write_docx(document, templates_folder() / "letterhead.docx")))
    return [[cell.text.replace("\u00a0", " ") for cell in row.cells] for table in word.tables for row in table.rows]


def row_from(document: Document, first: str) -> list[str]:
    return next(row for row in rows_of(document) if row[0] == first and len(row) > 10)


def test_a_reading_of_the_weather_stands_in_its_row_with_the_dew_point() -> None:
    # Dew point of air at 20 °C and 50%: 9.27 °C, 48.7 °F; worked by hand from the Magnus form of WMO-No. 8, annex 4.B:
    # g = ln 0.5 + 17.62 * 20 / 263.12 = 0.6462; 243.12 * 0.6462 / (17.62 - 0.6462) = 9.26.
    cells = row_from(made()["D12-E1"], "11:00")
    assert cells[:10] == ["11:00", "", "68", "", "97 ▲ 1", "50", "48.7", "5", "", ""]
    assert cells[11] == "12 °C"  # written in the other unit: as it was written


def test_a_pail_stands_in_its_row() -> None:
    cells = row_from(made()["D12-E1"], "3")
    assert cells[:10] == ["3", "B-204", "", "", "", "44", "", "38", "6", "30"]


def test_a_pass_stands_on_the_spray_record_with_its_panels() -> None:
    rows = rows_of(made()["D12-E1"])
    assert ["07:10", "08:25"] in [row[2:4] for row in rows if row[0] == "1"]
    panels = next(row for row in rows if row[0] == "E1-A1")
    assert [panels[place] for place in (0, 1, 4, 5, 8)] == ["E1-A1", "", "E1-A2", "", "E1-B1"]
    settings = next(row for row in rows if row[3:4] == ["Stream length, in"])
    assert settings[5] == "7-1/2"


def test_a_release_stands_in_the_row_of_its_step() -> None:
    row = next(row for row in rows_of(made()["D12-E1"]) if row[0].startswith("Tinted primer"))
    assert row[2:] == ["", "18", "", "no", " yes", "none", "2027-06-14", "07:00", "R. Sand"]


def ticks_of(document: Document) -> list[str]:
    """The labels of the boxes that are ticked in the Word file."""
    word = docx.Document(io.BytesIO(write_docx(document, templates_folder() / "letterhead.docx")))
    found = []
    for control in word.element.body.iter(qn("w:sdt")):
        checked = control.find(".//{http://schemas.microsoft.com/office/word/2010/wordml}checked")
        if checked is not None and checked.get(checked.keys()[0]) == "1":
            found.append(control.find(f"{qn('w:sdtPr')}/{qn('w:alias')}").get(qn("w:val")))
    return found


def test_ticks_are_ticked_and_a_recorded_no_is_told_in_words() -> None:
    document = made()["D12-E1"]
    assert ticks_of(document) == [
        *("E1 South face", "gloss", "silver", "Material stirred", "oval", "yes"),
        *("E1 South face", "gloss"),
        *("E1 South face", "gloss", "sun"),
        *("E1 South face", "yes"),
    ]
    lines = text.write_text(document)
    assert "(no) Material strained, 60 mesh" in lines
    assert "(x) sun ▲\u00a02 (no) rain" in lines


def test_a_page_tells_a_tick_by_its_form_and_its_name() -> None:
    page: Any = html5lib.parse(write_html(made()["D12-E1"], templates_folder()).decode(), namespaceHTMLElements=False)
    boxes = [one for one in page.iter("span") if one.get("class") == "box ticked"]
    assert len(boxes) == 13
    assert {one.get("aria-label") for one in boxes} == {"ticked"}


def test_a_pdf_of_the_sheets_bears_the_same_values() -> None:
    context = context_with([])
    made_set = ComposedSet(documents=(made()["D12-E1"],), context=context, templates=templates_folder(), title="Record")
    reader = PdfReader(io.BytesIO(write_pages(made_set).pdf))
    words = " ".join(" ".join(page.extract_text() for page in reader.pages).split())
    for value in ("07:10", "08:25", "B-204", "48.7", "R. Sand", "E1-A2"):
        assert value in words, value
    assert reader.metadata is not None
    assert reader.metadata.title == "Wickerwell Branch Library: Record"


def test_what_no_form_asks_for_is_listed_with_its_place() -> None:
    rows = rows_of(made()["D12-E1"])
    assert ["june.csv, row 5", "June 15, 2027, 07:00", "E1, boards", "Crew of the entry: silver"] in rows


def test_what_was_not_recorded_stays_a_blank() -> None:
    lines = text.write_text(made()["D12-E1"]).splitlines()
    reading = next(line for line in lines if line.startswith("11:00"))
    assert reading.split(" | ")[8] == "____"  # the gust, which nobody read: never a zero


def titles_of(document: Document) -> list[str]:
    return ["".join(part.text for part in block.title) for block in document.blocks if isinstance(block, Part)]  # type: ignore[union-attr]


def test_sheets_stand_in_the_order_of_their_days_and_say_what_they_are_of() -> None:
    days = [{**PAIL, "date": date(2027, 6, day)} for day in (17, 16)]
    document = documents_of(context_with(make_entries(*(("log", day) for day in days))))["D12-E1"]
    assert titles_of(document) == [
        "D12b Viscosity and water: E1, left bay, gloss, June 16, 2027",
        "D12b Viscosity and water: E1, left bay, gloss, June 17, 2027",
    ]


def test_more_entries_than_a_form_has_rows_take_further_sheets() -> None:
    pails = [("log", {**PAIL, "pail": str(number)}) for number in range(1, 33)]
    document = documents_of(context_with(make_entries(*pails)))["D12-E1"]
    # The form has 12 lines.
    assert [title.rpartition(", ")[2] for title in titles_of(document)] == [
        *("sheet 1 of 3", "sheet 2 of 3", "sheet 3 of 3")
    ]


def test_a_second_time_of_the_same_coat_takes_a_further_sheet() -> None:
    later = GLOSS_PASS | {
        "started_at": time(13, 0),
        "ended_at": time(14, 0),
        "panels": ("E1-A3",),
        "wet_film": q("4.4", "mil"),
    }
    document = documents_of(context_with(make_entries(("log", GLOSS_PASS), ("log", later))))["D12-E1"]
    assert [title.partition(": ")[0] for title in titles_of(document)] == ["D12a Spray record"] * 2


def remarks_of(document: Document) -> str:
    """What stands under Remarks at the end of a spray record."""
    rows = rows_of(document)
    head = next(place for place, row in enumerate(rows) if "Remarks" in row)
    return rows[head + 1][rows[head].index("Remarks")]


def test_second_coat_of_the_same_panels_stands_on_the_same_sheet() -> None:
    second = {**GLOSS_PASS, "coat": 2, "started_at": time(10, 0), "ended_at": time(11, 0), "wet_film": q("3.9", "mil")}
    document = documents_of(context_with(make_entries(("log", GLOSS_PASS), ("log", second))))["D12-E1"]
    assert len(titles_of(document)) == 1
    assert remarks_of(document) == "Wet film, panel not told: coat 1, 4.1 mil; coat 2, 3.9 mil"


def test_a_wet_film_of_one_panel_stands_at_it_and_one_of_a_pass_in_the_remarks() -> None:
    alone = {**GLOSS_PASS, "panels": ("E1-A2",), "wet_film": q("4.4", "mil")}
    whole = {**GLOSS_PASS, "coat": 2, "started_at": time(10, 0), "ended_at": time(11, 0)}
    document = documents_of(context_with(make_entries(("log", alone), ("log", whole))))["D12-E1"]
    panels = next(row for row in rows_of(document) if row[0] == "E1-A2")
    assert panels[:3] == ["E1-A2", "4.4", ""]
    assert remarks_of(document) == "Wet film, panel not told: coat 2, 4.1 mil"


def test_a_wet_film_of_a_pass_bears_the_number_of_its_nonconformance_in_the_remarks() -> None:
    (entry,) = entries = make_entries(("log", GLOSS_PASS))
    document = documents_of(context_with(entries), judgment_of((entry, "wet_film")))["D12-E1"]
    assert remarks_of(document) == "Wet film, panel not told: coat 1, 4.1 mil ▲ 1"


def test_more_panels_than_a_sheet_has_room_for_go_on_behind_it() -> None:
    panels = tuple(f"E1-A{number}" for number in range(1, 59))
    entry = {**GLOSS_PASS, "panels": panels, "masked_panels": ()}
    document = documents_of(context_with(make_entries(("log", entry))))["D12-E1"]
    assert len(titles_of(document)) == 2
    shown = [cell for row in rows_of(document) for cell in row if cell in panels]
    assert sorted(shown) == sorted(panels)


def test_lines_of_panels_print_as_far_as_they_are_filled() -> None:
    panels = tuple(f"E1-A{number}" for number in range(1, 12))
    entry = {**GLOSS_PASS, "panels": panels, "masked_panels": ()}
    rows = rows_of(documents_of(context_with(make_entries(("log", entry))))["D12-E1"])
    first = next(number for number, row in enumerate(rows) if row[0] == "E1-A1")
    # Four panels stand in a line.
    assert [row[0] for row in rows[first : first + 4]] == ["E1-A1", "E1-A5", "E1-A9", "Stop line"]


def test_a_sheet_of_further_panels_repeats_times_and_crew_and_no_part_of_the_form_left_blank() -> None:
    panels = tuple(f"E1-A{number}" for number in range(1, 59))
    entry = {**GLOSS_PASS, "panels": panels, "masked_panels": ()}
    document = documents_of(context_with(make_entries(("log", entry))))["D12-E1"]
    rows = rows_of(document)
    assert [row[2:4] for row in rows if row[0] == "1" and "07:10" in row] == [["07:10", "08:25"]] * 2
    # Settings, checks and the end of work stand on the first sheet alone.
    assert [row[0] for row in rows if row[0] in ("Setting", "Stop line")] == ["Setting", "Stop line"]


def test_entries_without_an_elevation_have_a_document_of_their_own() -> None:
    entry = {name: value for name, value in PAIL.items() if name != "elevation"}
    documents = documents_of(context_with(make_entries(("log", entry))))
    assert "D12-site" in documents


def test_each_elevation_has_its_file_and_the_same_input_gives_the_same_bytes() -> None:
    entries = make_entries(("log", PAIL), ("log", {**PAIL, "elevation": "E2"}))
    first, second = (documents_of(context_with(entries)) for _ in range(2))
    assert [name for name in first if name.startswith("D12")] == ["D12-E1", "D12-E2"]
    paper = templates_folder() / "letterhead.docx"
    assert write_docx(first["D12-E1"], paper) == write_docx(second["D12-E1"], paper)
    assert first["D12-E1"].file_name == "D12-E1-site-record"
