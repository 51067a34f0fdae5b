"""The forms of a package, filled in by other libraries, read back row by row: names and values retyped by hand."""

import datetime
import io
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest

from specgen import pipeline
from specgen.model.record import Records
from specgen.quantities.quantity import Quantity
from specgen.reading.records.given import read_given
from specgen.reading.records.reading import survey_records
from tests.formats.pdf.test_forms import form
from tests.reading.records.support import told
from tests.support import EXAMPLES

CLEAN = EXAMPLES / "clean" / "project.yaml"
WEATHER = {
    "log.date.c": "2027-06-15",
    "log.elevation.c.E1": True,
    "log.started_at.c3": "7:10 am",
    "log.area.c3": "left bay",
    "log.air.c3": "61",
    "log.humidity.c3": "58",
    "log.sun_on_wall.c3.yes": True,
    "form.sky.c3": "clear",
}
SPRAY = {
    "log.date.a": "6/15/2027",
    "log.step.a.gloss": True,
    "log.elevation.a.E1": True,
    "log.crew.a.silver": True,
    "log.panels.a.1": "E1-03",
    "log.panels.a.2": "E1-04",
    "log.wet_film.a1.1": "4",
    "log.masked_panels.a.2": True,
    "log.stream_length.a": "7-1/2",
    "log.started_at.a1": "07:30",
    "log.ended_at.a1": "08:40",
    "log.started_at.a2": "11:00",
}
WRONG = WEATHER | {"log.wind.c3": "1048", "log.elevation.c.E2": True, "log.date.b": "2027-06-15"}
OF_MOCKUP = SPRAY | {"form.mockup.a.yes": True}
RELEASE = {
    "release.elevation.d.E1": True,
    "release.date.d-primer": "2027-06-16",
    "release.time.d-primer": "07:00",
    "release.hours_dry.d-primer": "15",
    "release.wall_dry.d-primer.yes": True,
    "release.by.d-primer": "Straightedge Inspection",
    "form.finished_at.d-primer": "16:00",
}


def filled(document: str, values: dict[str, Any]) -> bytes:
    """The form filled in by pikepdf, field by field."""
    left = dict(values)

    def fill(fields: Any, above: tuple[str, ...]) -> None:
        for field in fields:
            name = (*above, str(field["/T"]))
            if "/Kids" in field:
                fill(field.Kids, name)
            elif ".".join(name) in left:
                value = left.pop(".".join(name))
                field["/V"] = pikepdf.Name("/Yes") if value is True else pikepdf.String(value)
                if value is True:
                    field["/AS"] = pikepdf.Name("/Yes")

    stream = io.BytesIO()
    with pikepdf.open(io.BytesIO(form(document))) as opened:
        fill(opened.Root.AcroForm.Fields, ())
        opened.save(stream)
    assert not left
    return stream.getvalue()


def read(folder: Path, content: bytes) -> Records:
    """What is read of a form by the project that it was written for."""
    (folder / "form.pdf").write_bytes(content)
    return survey_records(pipeline.read(CLEAN), [read_given(folder / "form.pdf", "form.pdf")]).records


def test_the_head_of_a_form_holds_for_its_rows_and_blank_rows_are_no_entries(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D12", WEATHER))
    (entry,) = records.of("log")
    assert not records.faults
    assert entry.values == {
        "date": datetime.date(2027, 6, 15),
        "elevation": "E1",
        "started_at": datetime.time(7, 10),
        "area": "left bay",
        "air": Quantity.of(61, "F"),
        "humidity": 58,
        "sun_on_wall": True,
    }
    assert (entry.place.file, entry.place.row) == ("form.pdf", "c3")


def test_a_form_filled_in_by_a_second_library_says_the_same(tmp_path: Path) -> None:
    writer = pypdf.PdfWriter()
    writer.append(pypdf.PdfReader(io.BytesIO(form("D12"))))
    typed = {name: "/Yes" if value is True else value for name, value in WEATHER.items()}
    for page in writer.pages:
        writer.update_page_form_field_values(page, typed, auto_regenerate=False)
    stream = io.BytesIO()
    writer.write(stream)
    second = read(tmp_path, stream.getvalue())
    assert [entry.values for entry in second.of("log")] == [
        entry.values for entry in read(tmp_path, filled("D12", WEATHER)).of("log")
    ]


def test_a_coat_is_a_row_and_each_panel_whose_film_was_read_an_entry(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D12", SPRAY))
    assert not records.faults
    told_of = [
        (e.get("coat"), e.get("panels"), e.get("wet_film"), e.get("started_at"), e.place.row) for e in records.of("log")
    ]
    half, eleven = datetime.time(7, 30), datetime.time(11)
    assert told_of == [
        (1, ("E1-03",), Quantity.of(4, "mil"), half, "a1.1"),
        (1, ("E1-04",), None, half, "a1"),
        (2, ("E1-03", "E1-04"), None, eleven, "a2"),
    ]
    assert {(e.get("step"), e.get("crew"), e.get("stream_length")) for e in records.of("log")} == {
        ("gloss", "silver", Quantity.of("7.5", "in"))
    }
    assert records.of("log")[0].get("masked_panels") == ("E1-04",)


def test_a_row_named_by_its_step_is_a_release_of_that_step(tmp_path: Path) -> None:
    (entry,) = read(tmp_path, filled("D12", RELEASE)).of("release")
    assert entry.values == {
        "step": "primer",
        "elevation": "E1",
        "date": datetime.date(2027, 6, 16),
        "time": datetime.time(7),
        "hours_dry": 15,
        "wall_dry": True,
        "by": "Straightedge Inspection",
    }


def test_faults_of_a_form_are_told_by_its_rows(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D12", WRONG))
    assert set(told(records.faults)) == {
        ("form.pdf, row c3", "wind", "1048 mph is above 120 mph, outside the range of this field"),
        ("form.pdf, row c", "elevation", "two boxes are ticked"),
        ("form.pdf, row b", "", "the head of this form is filled in, and none of its rows"),
    }
    assert records.of("log")[0].get("air") == Quantity.of(61, "F")


def test_weather_of_the_mockup_is_an_entry_of_no_elevation_at_the_area_of_that_name(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D12", WEATHER | {"form.mockup.c.yes": True, "log.step.c.gloss": True}))
    (entry,) = records.of("log")
    assert records.remarks == ()
    assert (entry.get("elevation"), entry.get("area"), entry.get("step")) == (None, "mockup, left bay", "gloss")


def test_the_coats_of_the_mockup_are_no_record_of_the_work_and_that_is_told(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D12", OF_MOCKUP))
    assert records.of("log") == ()
    assert [remark.message for remark in records.remarks] == [
        "this sheet is of the mockup, which is no part of the record of the work"
    ]


def test_a_date_on_the_form_of_hold_points_is_an_inspection_by_whoever_signs_for_the_role(tmp_path: Path) -> None:
    values = {
        "inspection.done_on.rasp.E1-inspector": "2027-05-20",
        "inspection.done_on.acceptance.E2-architect": "5/21/2027",
        "inspection.by.signed.inspector": "Straightedge Inspection",
    }
    records = read(tmp_path, filled("D11", values))
    assert (records.faults, records.remarks) == ((), ())
    assert {one.get("step"): one.values for one in records.of("inspection")} == {
        "rasp": {
            "step": "rasp",
            "elevation": "E1",
            "done_on": datetime.date(2027, 5, 20),
            "outcome": "accepted",
            "by": "Straightedge Inspection",
        },
        "acceptance": {
            "step": "acceptance",
            "elevation": "E2",
            "done_on": datetime.date(2027, 5, 21),
            "outcome": "accepted",
        },
    }


def test_signers_without_a_date_release_nothing(tmp_path: Path) -> None:
    records = read(tmp_path, filled("D11", {"inspection.by.signed.inspector": "Straightedge Inspection"}))
    assert (records.of("inspection"), records.faults) == ((), ())


def test_the_acceptance_form_gives_results_and_the_settings_of_the_work(tmp_path: Path) -> None:
    values = {
        "result.reading.gloss.1": "74",
        "result.reading.gloss.2": "76",
        "result.passed.gloss.yes": True,
        "result.signed_by.gloss": "L. Novak",
        "result.passed.color_reading-b.no": True,
        "accepted.gun": "G1",
        "accepted.stream_length": "7-1/2",
        "form.remarks.1": "a run at the left edge",
    }
    (tmp_path / "form.pdf").write_bytes(filled("D10", values))
    project = survey_records(pipeline.read(CLEAN), [read_given(tmp_path / "form.pdf", "form.pdf")])
    gloss, color = sorted(project.records.of("result"), key=lambda one: one.place.row, reverse=True)
    assert gloss.values == {"criterion": "gloss", "reading": "74; 76", "passed": True, "signed_by": "L. Novak"}
    assert color.values == {"criterion": "color_reading", "passed": False}
    assert project.value(("accepted", "stream_length")) == Quantity.of("7.5", "in")
    assert project.value(("accepted", "gun")).mark == "G1"


def test_an_empty_form_has_no_entries(tmp_path: Path) -> None:
    records = read(tmp_path, form("D12"))
    assert (records.entries, records.faults, records.remarks) == ({}, (), ())
    assert records.files[0].entries == 0


BROKEN = (b"%PDF-1.7\nbroken", b"%PDF-")


@pytest.mark.parametrize("content", BROKEN)
def test_a_pdf_that_cannot_be_read_is_refused(content: bytes, tmp_path: Path) -> None:
    assert [fault.message for fault in read(tmp_path, content).faults] == ["the form is damaged or cut short"]


def no_form() -> bytes:
    """A PDF without fields."""
    stream = io.BytesIO()
    with pikepdf.new() as empty:
        empty.add_blank_page()
        empty.save(stream)
    return stream.getvalue()


def other_form() -> bytes:
    """A PDF with a field that no form of ours has."""
    stream = io.BytesIO()
    with pikepdf.new() as made:
        made.add_blank_page()
        field = pikepdf.Dictionary(T=pikepdf.String("order"), FT=pikepdf.Name.Tx, V=pikepdf.String("7"))
        made.Root.AcroForm = pikepdf.Dictionary(Fields=pikepdf.Array([made.make_indirect(field)]))
        made.save(stream)
    return stream.getvalue()


def test_a_pdf_without_fields_is_refused_with_what_would_be_right(tmp_path: Path) -> None:
    (fault,) = read(tmp_path, no_form()).faults
    assert fault.message == "this PDF has no fields that are filled in"


def test_a_form_of_somebody_else_is_refused(tmp_path: Path) -> None:
    (fault,) = read(tmp_path, other_form()).faults
    assert fault.message == "this PDF is no form of the record"


def form_in_itself() -> bytes:
    """A form whose field holds itself."""
    stream = io.BytesIO()
    with pikepdf.new() as made:
        made.add_blank_page()
        field = made.make_indirect(pikepdf.Dictionary(T=pikepdf.String("log"), Kids=pikepdf.Array()))
        field.Kids.extend([field] * 50)
        made.Root.AcroForm = pikepdf.Dictionary(Fields=pikepdf.Array([field]))
        made.save(stream)
    return stream.getvalue()


def test_a_form_that_holds_itself_is_refused_at_once(tmp_path: Path) -> None:
    assert [fault.message for fault in read(tmp_path, form_in_itself()).faults] == ["the form is damaged or cut short"]
