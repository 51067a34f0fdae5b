"""D17: panels as built with their batches, what was signed, what is open, and when it prints."""

from dataclasses import replace
from datetime import date, time
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest

from specgen import building
from specgen.documents.document import compose_document
from specgen.documents.figures import batch_map
from specgen.documents.records.closeout import list_open
from specgen.formats import text
from specgen.model.block import Figure
from specgen.model.problem import Refused
from specgen.model.record_judgment import RecordJudgment
from tests.documents.records.entries import GLOSS_PASS, context_with, form_of, judgment_of, make_entries
from tests.support import EXAMPLES

PAIL = {name: GLOSS_PASS[name] for name in ("date", "elevation", "area", "step")}
PAILS = [("log", {**PAIL, "pail": str(n), "batch": "B-204"}) for n in (1, 2)]
RELEASE = {
    "step": "gloss",
    "elevation": "E1",
    "area": "Left  bay",
    "date": date(2027, 6, 17),
    "time": time(9, 0),
    "by": "R. Sand",
}
CLEAN = EXAMPLES / "clean" / "project.yaml"


def lines_of(*given: tuple[str, dict[str, Any]], judgment: RecordJudgment | None = None) -> list[list[str]]:
    context = replace(context_with(make_entries(*given)), recorded=judgment or RecordJudgment())
    document = compose_document(form_of("D17"), context, draft=False)
    return [line.split(" | ") for line in text.write_text(document).splitlines()]


def test_a_panel_stands_with_crew_batch_pails_days_and_release() -> None:
    lines = lines_of(("log", GLOSS_PASS), *PAILS, ("release", RELEASE))
    assert next(line for line in lines if line[0] == "E1-A1, E1-A2") == [
        *("E1-A1, E1-A2", "silver", "not recorded", "not recorded", "B-204; 1, 2", "June 15, 2027"),
        "gloss June 17, 2027 R. Sand",
    ]


def test_panels_without_any_record_share_a_row_of_their_elevation() -> None:
    lines = lines_of(("log", GLOSS_PASS), *PAILS)
    (row,) = [line for line in lines if line[0].startswith("E2-A1, ")]
    assert row[1:] == ["not recorded"] * 6


def test_a_panel_that_no_layout_has_is_told_as_such() -> None:
    lines = lines_of(("log", {**GLOSS_PASS, "panels": ("Z9",)}))
    assert any(line[0] == "Z9 (not in the layout)" for line in lines)


def figures_of(*given: tuple[str, dict[str, Any]]) -> tuple[Figure, ...]:
    return batch_map.draw(context_with(make_entries(*given)))


def test_the_map_tells_the_batch_of_each_panel_by_a_letter_that_it_explains() -> None:
    (figure,) = figures_of(("log", GLOSS_PASS), *PAILS)
    assert "A1 a<" in figure.svg
    assert "A3 –<" in figure.svg
    assert "Batch of gloss: a = B-204; – = not recorded" in figure.svg
    assert figure.alt.endswith("E1-A1 a, E1-A2 a.")


def test_the_map_shows_the_batch_of_the_recoat() -> None:
    later = date(2027, 6, 20)
    again = ("log", {**GLOSS_PASS, "date": later, "panels": ("E1-A1",)})
    pail = ("log", {**PAIL, "date": later, "pail": "9", "batch": "B-311"})
    (figure,) = figures_of(("log", GLOSS_PASS), *PAILS, again, pail)
    assert "a = B-311; b = B-204" in figure.svg
    assert figure.alt.endswith("E1-A1 a, E1-A2 b.")


def test_signed_forms_are_listed_with_date_signer_and_outcome() -> None:
    inspection = {"step": "primer", "elevation": "E1", "done_on": date(2027, 6, 14), "outcome": "accepted", "by": "I"}
    signed = {"criterion": "gloss", "passed": False, "signed_by": "L. Novak", "signed_on": date(2027, 4, 5)}
    lines = lines_of(("release", RELEASE), ("inspection", inspection), ("result", signed))
    start = lines.index(["Form", "Signed for", "Of", "Date", "By", "Outcome"])
    assert lines[start + 1 : start + 4] == [
        ["D10", "Mockup", "Specular gloss", "April 5, 2027", "L. Novak", "failed"],
        ["D11", "Tinted primer", "E1", "June 14, 2027", "I", "accepted"],
        ["D12d", "Gloss finish", "E1, Left  bay", "June 17, 2027", "R. Sand", "released"],
    ]


def test_a_nonconformance_is_open_until_a_deviation_lifts_it() -> None:
    (entry,) = make_entries(("log", GLOSS_PASS))
    for more, state in (({}, "open: disposition not entered"), ({"lifted_by": "DV1"}, "lifted by deviation DV1")):
        lines = lines_of(("log", GLOSS_PASS), judgment=judgment_of((entry, "wet_film"), **more))
        assert ["WEA-01c", "1", "E1", "The wall is too hot.", state] in lines
        told = any(line[0] == "Disposition of 1 nonconformance" for line in lines)
        assert told is (not more)


def test_what_is_open_is_listed_with_who_owes_it() -> None:
    lines = lines_of(("log", GLOSS_PASS))
    assert [line[0] for line in lines if line[-1:] == ["D12"]][1].startswith("No gloss recorded: ")
    assert "No batch of gloss recorded: 2 panels, E1-A1, E1-A2" in [line[0] for line in lines]


PASSED = {"reading": "none", "passed": True, "signed_by": "L. Novak", "signed_on": date(2027, 4, 5)}
ALL = 33  # lines of form D10 of the example, counted on it


def test_each_criterion_of_the_mockup_that_was_never_recorded_is_open_with_its_line() -> None:
    lines = lines_of(*(("result", {**PASSED, "criterion": name}) for name in ("look", "mesh", "film_dry")))
    opened = [line for line in lines if line[0].startswith("Mockup criterion")]
    assert len(opened) == ALL - 2  # of the dry film the spare gun is not recorded
    assert ["Mockup criterion 1 not recorded: WRB thickness", opened[0][1], "D10"] == opened[0]
    assert any(line[0] == "Mockup criterion 20b not recorded: Primer dry film, spare gun" for line in opened)
    (said,) = [line[0] for line in lines if " criteria recorded" in line[0]]
    assert f"2 of {ALL} criteria recorded; not recorded: 1 WRB thickness; 2 Base coat thickness; " in said


def test_a_criterion_that_the_project_omits_is_neither_counted_nor_open() -> None:
    context = context_with(make_entries(("result", {**PASSED, "criterion": "look"})))
    values = context.project.values | {("mockup", "omit"): ("wrb_thickness",)}
    context = replace(context, project=replace(context.project, values=values))
    said = text.write_text(compose_document(form_of("D17"), context, draft=False))
    assert f"1 of {ALL - 1} criteria recorded; not recorded: 2 Base coat thickness" in said


def test_no_result_at_all_is_one_open_item() -> None:
    opened = [line for line in lines_of() if "ockup" in line[0] and line[-1] == "D10"]
    assert [line[0] for line in opened] == [f"Results of the mockup: 0 of {ALL} criteria recorded"]


def test_a_warranty_that_the_contract_asks_for_is_open_until_a_signed_one_is_attached() -> None:
    context = context_with([])
    for signed, told in ((False, ["Executed warranty: WA1 is not signed"]), (True, [])):
        values = context.project.values | {("attachments", "WA1", "signed"): signed}
        closing = replace(context, project=replace(context.project, values=values))
        assert [line.what for line in list_open(closing) if line.what.startswith("Executed")] == told


def test_a_hold_point_is_open_until_the_party_that_accepts_has_signed_it() -> None:
    accepted = {"step": "acceptance", "elevation": "E1", "done_on": date(2027, 7, 19), "outcome": "accepted"}
    for by, told in (
        ("Plumbrule Inspection", "Hold point Acceptance of the finish not signed: E1, signed so far by {}"),
        ("K. Mullion, Mullion and Hart Architects", ""),
    ):
        closing = context_with(make_entries(("inspection", {**accepted, "by": by})), "season")
        opened = {line.what: line.by for line in list_open(closing) if "Acceptance of the finish" in line.what}
        architect = "Architect (Mullion and Hart Architects)"
        unsigned = {told.format(by): architect} if told else {}
        assert opened == {"Hold point Acceptance of the finish not released: E2, E3": architect} | unsigned


def test_a_closeout_with_open_items_is_written_as_a_draft_alone(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="nothing was written: at closeout, 4 items are open: Results of the mockup"):
        building.build(CLEAN, tmp_path / "out", ("txt",), ("D17",))
    assert not (tmp_path / "out").exists()
    built = building.build(CLEAN, tmp_path / "out", ("txt",), ("D17",), draft=True)
    assert built.draft
    assert "Closeout is not complete." in (tmp_path / "out" / "D17-closeout.txt").read_text("utf-8")


def test_a_package_of_an_earlier_stage_has_no_closeout(tmp_path: Path) -> None:
    for draft in (False, True):
        built = building.build(CLEAN, tmp_path / str(draft), ("txt",), draft=draft)
        assert not any(name.startswith("D17") for name in built.files)


DECIDED = {"clause": "WEA-01c", "date": date(2027, 6, 15), "by": "L. Novak", "decided_on": date(2027, 6, 17)}


@pytest.mark.parametrize("decision", ["recoated", "rejected"])
def test_a_disposition_settles_a_nonconformance_unless_it_rejects_the_work(decision: str) -> None:
    (entry, decided) = make_entries(("log", GLOSS_PASS), ("disposition", {**DECIDED, "decision": decision}))
    lines = lines_of(("log", GLOSS_PASS), judgment=judgment_of((entry, "wet_film"), disposition=decided))
    state = f"{decision} on June 17, 2027, by L. Novak"
    assert ["WEA-01c", "1", "E1", "The wall is too hot.", state] in lines
    told = any(line[0] == "Disposition of 1 nonconformance" for line in lines)
    assert told is (decision == "rejected")


def test_a_later_acceptance_of_the_elevation_alone_settles_nothing() -> None:
    (entry,) = make_entries(("log", GLOSS_PASS))
    accepted = {"step": "acceptance", "elevation": "E1", "outcome": "accepted", "by": "R. Sand"}
    given = ("log", GLOSS_PASS), ("inspection", {**accepted, "done_on": date(2027, 6, 18)})
    lines = lines_of(*given, judgment=judgment_of((entry, "wet_film")))
    assert any(line[0] == "Disposition of 1 nonconformance" for line in lines)


# What the architect has not decided on in the example, as `specgen record` lists it.
OPEN = (
    *(("WEA-01f", "weather.csv", 48), ("WEA-02c", "weather.csv", 61), ("WEA-02c", "weather.csv", 62)),
    *(("FIN-05h", "pails.csv", 14), ("AIR-04m", "spray.csv", 10), ("AIR-03f", "spray.csv", 17)),
    *(("FIN-07g", "releases.csv", 30), ("FIN-07h", "releases.csv", 30)),
)


def test_a_closeout_whose_every_panel_is_recorded_and_accepted_is_a_package_in_all_formats(tmp_path: Path) -> None:
    season = copytree(EXAMPLES / "season", tmp_path / "season")
    with pytest.raises(Refused, match="1 item is open: Disposition of 8 nonconformances"):
        building.build(season / "project.yaml", tmp_path / "out", ("docx", "html", "pdf"))
    decided = (season / "records" / "dispositions.yaml").open("a", encoding="utf-8")
    with decided:
        decided.writelines(
            f"  - {{clause: {clause}, file: {file}, row: {row}, decision: accepted_as_is, by: K. Mullion, "
            "decided_on: 2027-11-12}\n"
            for clause, file, row in OPEN
        )
    built = building.build(season / "project.yaml", tmp_path / "out", ("docx", "html", "pdf"))
    assert not built.draft
    assert {"D17-closeout.docx", "D17-closeout.html"} <= set(built.files)
    page = (tmp_path / "out" / "D17-closeout.html").read_text("utf-8")
    assert "Closeout is not complete" not in page
