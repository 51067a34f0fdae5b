"""A draft: its answer first, the documents of which enough is known, and what its banners count."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from specgen.documents import owed_sheets
from specgen.documents.catalogue import templates
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.documents.draft_forms import find_forms_left_out
from specgen.documents.drafts import Remainder
from specgen.judging import owners
from specgen.judging.registry import load_rules
from specgen.model.block import Document
from specgen.reading.schema import project_schema
from tests.documents.example import changed_small, drafted, page_of
from tests.documents.open_page import list_lines, list_rows
from tests.documents.support import document_of
from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written

SUBMITTAL = {"package": {"purpose": "mockup_submittal"}}


# The documents that a draft of the small project knows too little of.
LEFT_OUT = ["D01", "D03", "D04", "D06", "D07", "D08", "D09", "D10", "D11", "D12", "D13", "D14", "D15", "D16", "D18"]


def brackets_in(text: str) -> int:
    """The values in brackets on a page; a mark of a source is one or two small letters, several have commas, and the
    title of a box stands apart from its brackets."""
    body = text.split("\n! Draft.")
    assert len(body) == 2, text[:400]
    # The name of a group that is told again where it goes on is the same value.
    text = re.sub(r"\[[^\]]*\] \(continued\)", "", text)
    return sum(
        not re.fullmatch("[a-z]{1,2}(, [a-z]{1,2})*", found) for found in re.findall(r"\[([^\] ][^\]]*)\]", text)
    )


def test_a_draft_of_little_holds_the_answer_and_what_it_refers_to(tmp_path: Path) -> None:
    assert sorted(drafted(tmp_path)) == ["D00", "D02", "D05", "D19"]


def test_what_is_left_out_is_named_with_its_share_on_the_page_and_in_the_manifest(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    file = str(written(tmp_path, SMALL))
    done = run_main(capsys, "build", file, "--out", str(out), "--draft", "--formats", "txt")
    told = f"specgen: left out, under 90% of their values known: {', '.join(LEFT_OUT)}; --only ID writes one\n"
    assert told in done.err
    listed = json.loads((out / "manifest.json").read_text("utf-8"))["left_out"]
    assert [entry["document"] for entry in listed] == LEFT_OUT
    page = next(out.glob("D00*.txt")).read_text("utf-8")
    for entry in listed:
        known = round(100 * (entry["values"] - entry["in_brackets"]) / entry["values"])
        assert known < 90
        row = rf"(?m)^{entry['document']} [\w ,]+ \| no \| \S.*$"
        assert re.search(row, page), row


def test_the_answer_names_what_a_document_lacks_and_the_party_or_of_many_the_parties(tmp_path: Path) -> None:
    pages = drafted(tmp_path, {"parties": {"owner": {"name": "Owner"}}})
    table = table_of(pages["D00"], "DOCUMENTS IN THIS PACKAGE")[1:]
    rows = dict(line.split(" | ", 1) for line in table if " | " in line)
    assert (
        rows["D03 Submittal register and deviations"]
        == "no | Submittals that the specification requires for this work, or none (architect)"
    )
    # Each value that D05 has in brackets.
    told = rows["D05 Warnings and limitations"].removeprefix("yes | ").split("; ")
    bracketed = set(re.findall(r"\[([A-Z][^\]]*)\]", pages["D05"]))
    assert {entry.partition(" (")[0] for entry in told} == bracketed
    parties = re.fullmatch(r"no \| Values: (.*)", rows["D08 Installation procedure"])
    # Who makes a material tells of it, who designs of the building, who works of the work: common practice, no source.
    assert parties is not None
    assert {"EIFS manufacturer", "finish manufacturer", "architect", "applicator"} <= set(parties[1].split(", "))


@pytest.mark.parametrize("name", LEFT_OUT)
def test_a_document_left_out_is_written_where_it_is_asked_for(name: str, tmp_path: Path) -> None:
    assert list(drafted(tmp_path, only=(name,))) == [name]


def test_the_answer_is_part_of_no_package_that_is_issued(tmp_path: Path, capsys: Any) -> None:
    file, out = str(EXAMPLES / "clean" / "project.yaml"), str(tmp_path / "out")
    assert run_main(capsys, "build", file, "--out", out, "--formats", "txt").code == 0
    assert sorted(made.name[:3] for made in (tmp_path / "out").glob("*.txt")) == [
        "D01",
        "D02",
        "D03",
        "D04",
        "D05",
        "D06",
        "D07",
        "D08",
        "D09",
        "D10",
        "D11",
        "D12",
        "D13",
        "D14",
        "D15",
        "D16",
        "D18",
        "D19",
    ]
    done = run_main(capsys, "build", file, "--out", out, "--formats", "txt", "--only", "D00")
    assert (done.code, done.err) == (2, "specgen: D00 is part of a draft alone (add --draft)\n")


def banner_of(page: str) -> str:
    """The note at the head of a page."""
    (banner,) = (line for line in page.splitlines() if line.startswith("! "))
    return banner


def test_a_draft_asks_for_no_action_and_each_page_tells_where_its_open_values_stand(tmp_path: Path) -> None:
    pages = drafted(tmp_path, {"parties": {"owner": {"name": "Owner"}}})
    for name, page in pages.items():
        asks = name in ("D00", "D19")
        wanted = (
            "No review requested. Answers to D19 and the figures in D05 requested."
            if asks
            else "For information; not submitted for review."
        )
        if name == "D02":
            wanted = "For the decision on the walls; not submitted for review."
        if name == "D05":
            wanted = "Answers to the figures to verify requested."
        head = f"! Draft. {wanted}"
        assert banner_of(page).startswith(head), name
        told = banner_of(page).removeprefix(head)
        if asks:
            assert " rules on the walls not evaluated, see D02." in told
        else:
            open_values = brackets_in(page)
            assert told == (" Values in brackets are open, see D19." if open_values else " Open items: D19."), name


@pytest.mark.parametrize(
    ("drafted_on", "planned", "told"),
    [
        # Counted on a calendar from Monday, April 12, 2027: returned on Thursday, April 8, with a working day left to
        # act on it, ten working days from Thursday, March 25; the contractor has the set three working days before, on
        # Monday, March 22.
        ("2027-01-04", "2027-02-15", "Planned: February 15, 2027. Latest: March 22, 2027; reviewed and sent to the"),
        (
            "2027-01-04",
            "2027-02-15",
            "by March 25, 2027 (10 working days, and one to act on it, before the mockup, Apr",
        ),
        ("2027-02-15", "2027-02-15", "The planned date, February 15, 2027, cannot be held. Latest: March 22, 2027;"),
        ("2027-02-15", "2027-04-05", "Planned: April 5, 2027; too late. Latest: March 22, 2027; reviewed and sent"),
    ],
)
def test_the_last_day_of_submission_leaves_the_review_time_of_the_contract(
    drafted_on: str, planned: str, told: str, tmp_path: Path
) -> None:
    page = drafted(tmp_path, _dated(drafted_on, planned))["D00"]
    (step,) = (line for line in page.splitlines() if "Issue the package" in line)
    assert told in step


@pytest.mark.parametrize(
    ("drafted_on", "replied", "asked", "decided", "completed"),
    [
        # Counted on a calendar: the Friday before the issue, ten working days before that Friday, and three for the
        # applicator to check what came in; three as well before the issue and before the mockup, Monday, April 12.
        ("2027-01-04", "January 26, 2027", "January 29, 2027", "February 12, 2027", "February 10, 2027"),
        # February 15 cannot be held: counted back from Monday, March 22, the last day of issue.
        ("2027-02-15", "March 2, 2027", "March 5, 2027", "March 19, 2027", "March 17, 2027"),
    ],
)
def test_replies_come_before_the_decision_and_the_decision_before_the_issue(
    drafted_on: str, replied: str, asked: str, decided: str, completed: str, tmp_path: Path
) -> None:
    pages = drafted(tmp_path, _dated(drafted_on, "2027-02-15"))
    assert (
        f"to the architect by {asked}; the architect decides on each wall in writing by {decided} (10" in pages["D00"]
    )
    (row,) = (line for line in pages["D19"].splitlines() if line.startswith("Reply by | "))
    at_once, decision, submittal, _, mockup = row.split(" | ")[1:6]
    assert (at_once, decision, submittal, mockup) == ("at once", replied, completed, "April 7, 2027")


def _dated(drafted_on: str, planned: str) -> dict[str, Any]:
    return {
        "package": SUBMITTAL["package"] | {"date": drafted_on},
        "contract": {"review_days": 10, "review_day_kind": "working"},
        "mockup": {"planned_on": "2027-04-12"},
        "schedule": {"submit_on": planned},
    }


def test_the_transmittal_of_a_draft_has_no_place_for_an_action(tmp_path: Path) -> None:
    page = drafted(tmp_path, SUBMITTAL, only=("D01",))["D01"]
    assert "Action requested | None on this draft. With the submittal: review and action on this package" in page
    assert "Approved" not in page and "review:" not in page
    assert "\nD00 | Project status\n" in page


def test_a_banner_counts_the_stops_and_names_none_of_them(tmp_path: Path) -> None:
    pages = drafted(tmp_path, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}})
    for name, page in pages.items():
        where = "listed below" if name == "D05" else "see D05"
        assert f" 1 exception that stops the work, {where}." in banner_of(page)
        assert "ATT-" not in banner_of(page)


def test_the_answer_tells_verdict_reason_and_whom_to_ask(tmp_path: Path) -> None:
    change = {
        "parties": {"eifs_source": {"name": "Ashdown"}, "finish_source": {"name": "Birchall"}},
        "walls": {"W1": {"attachment": {"method": "mechanical"}}},
    }
    pages = drafted(tmp_path, change | SUBMITTAL)
    page = pages["D00"]
    answer = re.search(r"(?m)^W1: [^|]+ \| No \| (.*)$", page)
    assert answer is not None and answer[1].startswith("Attachment is mechanical: fasteners through the board"), page
    asked = asked_of(pages["D19"])
    letter = "Compatibility letter, EIFS and finish, with EIFS warranty"
    # What the mockup is built by is reviewed with its submittal.
    assert letter in asked["EIFS manufacturer: Ashdown"]["this submittal"]
    (contract,) = (items for party, items in asked.items() if party.startswith("Contract documents: "))
    assert "Model code" in contract["decision on the walls"]
    assert not re.search(r"\b\d+ more\b", page)


def asked_of(page: str) -> dict[str, dict[str, list[str]]]:
    """What D19 asks each party for, by what it is needed before."""
    asked: dict[str, dict[str, list[str]]] = {}
    named: dict[str, str] = {}
    for first, before, items, held, answer in list_rows(page):
        assert not answer and not held.startswith(",")
        # The name of a party stands in its first row, its role alone in the others.
        party = named.setdefault(first.partition(":")[0], first)
        bare = re.sub(
            r"^(Equipment|Coats|Colors and gloss|Walls|Joints and sealants|Mockup|Documents|Project): ", "", items
        )
        told = [item.removesuffix(";") for item in re.split(r" ?\( \) ", bare) if item]
        asked.setdefault(party, {}).setdefault(before, []).extend(told)
    return asked


def table_of(page: str, heading: str) -> list[str]:
    """The rows of the table below a heading; none where there is no such heading."""
    return page.split(f"{heading}\n")[1].split("\n\n")[0].splitlines()[1:] if f"{heading}\n" in page else []


def cells_below(page: str, header: str) -> list[list[str]]:
    """The rows of the table with this header, each as its cells."""
    return [line.split(" | ") for line in page.split(f"\n{header}\n")[1].split("\n\n")[0].splitlines()]


def test_tests_for_lead_and_asbestos_come_before_all_else(tmp_path: Path) -> None:
    old = {"substrate": {"kind": "existing_coated", "coating_removed": "no"}}
    pages = drafted(tmp_path, {"parties": {"owner": {"name": "Owner"}}, "walls": {"W1": old}})
    page = pages["D00"]
    assert "No work on W1 before the lead and asbestos reports." in page
    told = "Owner: survey W1 for asbestos, old sealant for PCB, and paint on frames and trim for lead; test the coating"
    assert f"{told} of W1 for lead; allow no other work on these walls before" in page
    # What holds the work is said in place of the word that nothing does.
    assert "No exception that stops the work" not in page
    party, first = next(iter(asked_of(pages["D19"]).items()))
    assert party.startswith("Owner")
    survey = "Asbestos survey report: all parts to be disturbed; PCB in sealant, lead in paint"
    for report in ("Laboratory report, lead in the existing coating", survey):
        assert f"{report} (W1)" in first["any work on the existing walls"]


def test_bare_brick_is_surveyed_for_asbestos_before_any_work_and_is_not_tested_for_lead(tmp_path: Path) -> None:
    # 40 CFR 61.145(a), edition of 2015: the affected part of the facility is inspected before a renovation.
    old = {"substrate": {"kind": "existing_brick", "condition": ["open_joints"]}}
    pages = drafted(tmp_path, {"parties": {"owner": {"name": "Owner"}}, "walls": {"W1": old}})
    assert "No work on W1 before the asbestos report." in pages["D00"]
    assert (
        "Owner: survey W1 for asbestos, old sealant for PCB, and paint on frames and trim for lead; allow no"
        in pages["D00"]
    )
    assert not any("lead in the existing coating" in page for page in pages.values())
    row = next(line for line in pages["D05"].splitlines() if line.startswith("ATT-06c | "))
    assert "Only after the asbestos survey, and abatement where asbestos is found, per D05: repoint" in row
    assert (
        "only a licensed abatement contractor, and for the pull tests the trained and protected testing agency"
        in pages["D05"]
    )


def test_whoever_is_asked_for_the_decision_is_named_before_all_requests(tmp_path: Path) -> None:
    asked = asked_of(drafted(tmp_path)["D19"])
    owner = next(items for party, items in asked.items() if party.startswith("Owner"))
    architect = next(items for party, items in asked.items() if party.startswith("Architect"))
    # The contractor reviews what is submitted for the decision.
    assert "Names: architect; general contractor" in owner["first requests"]
    assert "decision on the walls" in architect
    for party, items in asked.items():
        named = [item for entry in items.values() for item in entry if item.endswith("name")]
        assert not any(item.startswith(party.partition(":")[0]) for item in named if party[:10] != "Applicator"), party


def test_brick_is_not_asked_about_a_coating_it_does_not_have(tmp_path: Path) -> None:
    page = drafted(tmp_path, {"walls": {"W1": {"substrate": {"kind": "existing_brick"}}}})["D19"]
    assert "Existing coating" not in page and "existing coating" not in page
    assert "Bond report with mode of failure, signed by an independent testing agency (W1)" in page


def test_a_draft_asks_for_each_bracket_of_its_documents(tmp_path: Path) -> None:
    sealed = {"sealants": {"S1": {"c920_class": "50"}}, "joints": {"J1": {"sealant": "S1", "width": "3/4 in"}}}
    change = {"colors": {"C1": {"reference": "gray"}}} | sealed
    every = drafted(tmp_path, change, only=("D00", "D02", "D05", "D06", "D08", "D09", "D10", "D19"))
    asked = {item for _, _, item, _, _ in list_lines(tmp_path)}
    for label in ("Sealant product", "Sealant chemistry", "Color tolerance"):
        assert f"[{label}]" in every["D08"] + every["D10"], label
        assert any(item.startswith(label) for item in asked), label


# International Building Code, 2603.5.5 and 2603.5.7, asks for both reports; a design draft does not have to list them.
def test_a_design_draft_asks_for_the_fire_reports_that_the_code_requires(tmp_path: Path) -> None:
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
        "walls": {"W1": {"insulation": {"kind": "eps"}}},
    }
    pages = drafted(tmp_path, change)
    (asked,) = (items for party, items in asked_of(pages["D19"]).items() if party.startswith("EIFS manufacturer"))
    for standard in ("NFPA 285", "NFPA 268"):
        report = f"{standard} report of this wall with this finish, or engineer's extension accepted by the authority"
        assert f"{report} (W1)" in asked["decision on the walls"]
        listed = [row[1:] for row in cells_below(pages["D02"], "D19 | Document | From | Rule | Wall")]
        assert [report, "EIFS manufacturer", "COD-03", "W1"] in listed
        (row,) = (row for row in list_rows(pages["D19"]) if report in row[2])
        assert row[1:3] == ["decision on the walls", f"( ) {report} (W1)"] and row[3].startswith("COD-03"), row


def test_documents_still_required_stand_once_below_the_party_that_owes_them(tmp_path: Path) -> None:
    change = SUBMITTAL | {
        "parties": {"eifs_source": {"name": "Ashdown"}, "finish_source": {"name": "Birchall"}},
        "gloss": {"voc": "40 g/L"},
    }
    pages = drafted(tmp_path, change)
    asked = asked_of(pages["D19"])
    letter, review = (
        "Compatibility letter, EIFS and finish, with EIFS warranty",
        "Review of this package, signed and dated",
    )
    owed = {item: party for party, stages in asked.items() for items in stages.values() for item in items}
    assert owed[letter] == "EIFS manufacturer: Ashdown"
    assert owed[review] == "General contractor: [General contractor name]"
    assert {owed[item] for item in owed if "gloss" in item and "sheets" in item} == {"Finish manufacturer: Birchall"}
    every = [item for stages in asked.values() for items in stages.values() for item in items]
    assert every.count(letter) == every.count(review) == 1
    # What they hold up stands beside them, and no other page lists them.
    rows = {row[2].removeprefix("( ) "): row[3] for row in list_rows(pages["D19"])}
    assert rows[review] == "SUB-01"
    assert "SUB-06a" not in pages["D05"] and letter not in pages["D05"]
    number = re.search(r"Documents still required: (\d+), see D19\.", pages["D05"])
    assert number is not None and f"Documents still required: {number[1]}, see D19." in pages["D02"]


def test_every_clause_that_looks_for_a_document_says_who_owes_it() -> None:
    clauses = {clause.code: clause for rule in load_rules() for clause in rule.clauses}
    owed = {**owners.OWED_PAPERS, **owed_sheets.SHEETS}
    assert {code for code, clause in clauses.items() if clause.document} <= set(owed) <= set(clauses)
    known = {field.owed_by for field in project_schema().fields.values()}
    assert {party for party, _, _ in owners.OWED_PAPERS.values()} <= known


def test_a_deviating_figure_is_named_as_such_on_each_page_that_prints_it() -> None:
    # The gloss of 62 stands for the 75 of section 09 96 00, 2.4.A, by the deviation that the example declares.
    told = "Deviation: DV1 from 09 96 00 2.4.A, approved February 24, 2027"
    assert told in {text for _, text in document_of("clean", "D10").legend}


def test_a_submittal_of_work_tells_the_contractor_which_texts_to_verify(tmp_path: Path, capsys: Any) -> None:
    file, out = str(EXAMPLES / "clean" / "project.yaml"), tmp_path / "out"
    done = run_main(capsys, "build", file, "--out", str(out), "--formats", "txt")
    listed = json.loads((out / "manifest.json").read_text("utf-8"))["to_verify"]
    page = next(out.glob("D05*.txt")).read_text("utf-8").split("FIGURES NOT VERIFIED AGAINST A PUBLISHED TEXT")[1]
    assert {"ASTM C1193", "ASTM C1472", "ISO 13788"} <= set(listed)
    assert all(f"\n{text} | " in page for text in listed)
    # The calculations are signed before they are sent, so the engineer's texts are verified by then.
    # Heat and joints stand under the seal as wind does, so that their methods are verified by the same hand.
    verified = re.findall(r"verified ([^.]+) before signing and sealing D06, February 26, 2027\.", page)[0]
    assert all(name in verified for name in ("ASCE 7-16", "ASTM C1193", "ASTM C1472", "ASTM E1980", "ISO 13788"))
    for name in ("ASTM C1472", "ASTM E1980"):
        assert re.findall(rf"\n{name} .*\| (.*)\n", page)[0].startswith("holds")
    assert re.findall(r"\nISO 13788 .*\| (.*)\n", page)[0] == "holds, February 26, 2027"
    told = f"specgen: verify before submittal: {len(listed)} texts, listed in D05 and manifest.json\n"
    assert told in done.err


OLD_WALLS = {
    "code": {"model": "ibc", "edition": 2018, "construction_type": "IIIB", "local_fasteners_required": "no"},
    "walls": {
        "W1": {"substrate": {"kind": "existing_brick"}, "wrb": {"kind": "none"}, "drainage": {"kind": "none"}},
        "W2": {
            "substrate": {"kind": "existing_coated", "coating_removed": "no", "condition": ["chalking"]},
            "wrb": {"kind": "none"},
            "drainage": {"kind": "none"},
            "insulation": {"kind": "eps"},
        },
    },
    "colors": {"C1": {"lrv": 12}},
    "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W2"}},
}


def test_documents_that_decide_a_wall_stand_once_with_their_walls_and_are_counted_in_both_answers(
    tmp_path: Path,
) -> None:
    pages = drafted(tmp_path, OLD_WALLS)
    rows = cells_below(pages["D02"], "D19 | Document | From | Rule | Wall")
    walls = {row[1]: row[4] for row in rows}
    bond = "Bond report with mode of failure, signed by an independent testing agency"
    asbestos = "Asbestos survey report: all parts to be disturbed; PCB in sealant, lead in paint"
    fasteners = "Local rule on fasteners, by letter of the authority"
    assert {walls[name] for name in (bond, asbestos, fasteners, "Letter that accepts the dark color")} == {"W1, W2"}
    assert walls["Laboratory report, lead in the existing coating"] == "W2"
    for mark in ("W1", "W2"):
        number = sum(_count_numbers(row[0]) for row in rows if mark in row[4].split(", "))
        assert re.search(
            rf"(?m)^{mark} \| .* \| {number} documents; \d+ rules not evaluated: .*; listed below$", pages["D02"]
        )
        assert re.search(
            rf"(?m)^{mark}: .* Pending, listed in D19 before the decision: values, and {number} documents\. ",
            pages["D00"],
        ), mark


def _count_numbers(told: str) -> int:
    """How many numbers `31, 32` and `13 to 18` tell."""
    first, _, last = told.partition(" to ")
    return int(last) - int(first) + 1 if last else len(told.split(", "))


def test_the_measures_named_at_the_walls_have_their_rows_and_are_counted(tmp_path: Path) -> None:
    pages = drafted(tmp_path, OLD_WALLS)
    rows = [line.split(" | ")[0] for line in table_of(pages["D05"], "CONDITIONS ALLOWED WITH MEASURES")[1:]]
    assert rows == ["ATT-05e", "ATT-05j", "ATT-06b", "HEA-05a"]
    assert "Plan the 4 measures in D05, one in each row" in pages["D00"]
    assert "Conditions allowed with measures: ATT-05e, ATT-05j, ATT-06b, HEA-05a; see D05." in pages["D02"]
    for name in ("D00", "D02"):
        told = re.findall(r"(?m)Measures required(?:, see D05)?: .*$", pages[name])[-1]
        named = set(re.findall(r"[A-Z]{3}-\d\d(?= [A-Z])", told))
        assert {code[:6] for code in rows} >= named >= {"ATT-05", "HEA-05"}
    row = next(line for line in pages["D05"].splitlines() if line.startswith("HEA-05a | "))
    assert "maximum 165 °F for EPS" in row and "If the letter is refused, use a color" in row
    assert "before pull tests" in next(line for line in pages["D05"].splitlines() if line.startswith("ATT-06b | "))


def test_what_can_rule_a_wall_out_is_asked_in_order(tmp_path: Path) -> None:
    table = table_of(drafted(tmp_path, OLD_WALLS)["D00"], "DECIDING QUESTIONS")[1:]
    asked = [line.split(" | ")[1].rpartition("(")[2].rstrip(")") for line in table]
    assert asked == [
        "ATT-10",
        "COD 1402.2, 1403.2",
        "COD",
        "ATT-03",
        "ATT-08",
        "COD-03",
        "COD 2603.5.1",
        "SUB-06",
        "HEA-02",
        "HEA-05",
        "ATT-09",
        # Repair, wash and pull tests cost most, so what waits for them comes last.
        "ATT-05",
    ]
    assert table[0].endswith(
        "asbestos is found and can be neither removed nor left undisturbed; lead alone rules no wall out, see Existing "
        "walls in D05"
    )
    assert table[1].endswith(
        "W1, W2 | the wall is framed, a veneer, or neither designed to the code nor accepted by the authority, without "
        "a test to ASTM E331: a WRB is then required"
    )
    assert table[3].endswith("W1, W2 | the local code requires fasteners through the board")
    # ASTM C578, 1.1: not above 165 °F.
    assert re.search(r"exceeds 165 °F, the maximum use temperature of EPS ?\[[a-z]\]$", table[8]), table[8]


def test_work_that_a_report_holds_is_told_by_the_walls_it_holds(tmp_path: Path) -> None:
    # 40 CFR 61.145(a), edition of 2015, on asbestos in any wall; a coating alone is taken to hold lead.
    told = "No work on W1 before the asbestos report, nor on W2 before the lead and asbestos reports."
    assert all(told in banner_of(page) for page in drafted(tmp_path, OLD_WALLS).values())


def test_pull_tests_are_counted_for_each_wall_by_its_area(tmp_path: Path) -> None:
    # 62 ft by 22 ft are 1364 sq ft, 90 ft by 20 ft 1800 sq ft: two sets of 3 tests in each 1000 sq ft, common
    # practice, no source.
    sizes = {"E1": {"width": "62 ft", "height": "22 ft"}, "E2": {"width": "90 ft", "height": "20 ft"}}
    pages = drafted(tmp_path, merged(OLD_WALLS, {"elevations": sizes}))
    form = drafted(tmp_path, merged(OLD_WALLS, {"elevations": sizes}), ("D12",))["D12"]
    assert "minimum 6 on W1, 1364 sq ft; 6 on W2, 1800 sq ft" in form
    assert "minimum 15 psi, or the engineer's figure where higher" in form
    # The manufacturer's limit of moisture is still to come.
    assert "Moisture, by the applicator: maximum [Maximum moisture of the wall], by the EIFS" in form
    assert "Pull tests and moisture of each wall: Form D12f." in pages["D05"]


def forms_of(page: str) -> list[str]:
    """The names of the forms on a page."""
    return re.findall(r"(?m)^(D12[a-f]) [A-Z ]+$", page)


def record_of(context: DocumentContext) -> Document:
    """The site record of a draft, whatever is known of it."""
    return compose_document(next(one for one in templates() if one.id == "D12"), context, draft=True)


def test_a_draft_prints_the_forms_whose_limits_are_known_and_says_what_the_others_wait_for(tmp_path: Path) -> None:
    context = changed_small(tmp_path, OLD_WALLS)
    left_out = find_forms_left_out([record_of(context)])
    page = page_of(replace(context, rest=Remainder(forms_left_out=left_out)), "D12")
    assert forms_of(page) == ["D12c"]
    assert (
        "\nThe applicator issues these forms when the values of the parties named are known, see D19. With the "
        "package: D12a Spray record (finish manufacturer); "
        "D12b Viscosity and water (finish manufacturer); D12d Drying release (finish manufacturer); "
        # In the order of the form, whose numbered boxes name the architect's target of gloss before the film.
        "D12e Readings in place (architect, finish manufacturer). "
        # The decision on the walls rests on the pull tests, and the package on the decision.
        "Before the pull tests: D12f Pull tests and moisture (EIFS manufacturer).\n"
    ) in page
    pages = drafted(tmp_path, OLD_WALLS)
    # Of a record of which too little is known no page is printed.
    assert "D12" not in pages and "\nD12 Site record | no | " in pages["D00"]
    # What a form waits for is asked for all the same, and named as what it holds up.
    (held,) = (row[3] for row in list_lines(tmp_path) if "Primer release moisture reading" in row[2])
    assert "D12" in held
    # The figures of a form that is left out are verified when it is issued.
    assert "Compressor pressure" not in pages["D05"] and "cup time" not in pages["D05"]


def test_a_form_is_printed_in_a_draft_when_what_it_waits_for_is_given(tmp_path: Path) -> None:
    known = record_of(changed_small(tmp_path, {"primer": {"release_moisture": 12}}))
    assert "D12d" not in {form.id for form in find_forms_left_out([known])}
    unknown = record_of(changed_small(tmp_path, {}))
    assert "D12d" in {form.id for form in find_forms_left_out([unknown])}


def test_all_forms_are_printed_where_they_are_asked_for(tmp_path: Path) -> None:
    page = drafted(tmp_path, OLD_WALLS, only=("D12",))["D12"]
    assert forms_of(page) == ["D12a", "D12b", "D12c", "D12d", "D12e", "D12f"]
    assert "The applicator issues these forms" not in page


def test_a_plane_limit_that_nobody_gave_is_that_of_the_guide(tmp_path: Path) -> None:
    face = {"elevations": {"E1": {"wall": "W1", "prominent": "yes"}}}
    page = drafted(tmp_path, face)["D05"]
    assert "The plane limit of the substrate is not known; the guide's 1/4 in in 10 ft would be too loose for a" in page
    given = merged(face, {"walls": {"W1": {"substrate": {"plane_limit": "3/8 in"}}}})
    assert "A plane limit of the substrate of 3/8 in in 10 ft is too loose" in drafted(tmp_path, given)["D05"]


def test_rules_for_housing_are_cited_where_a_building_can_hold_any(tmp_path: Path) -> None:
    # 40 CFR 745.82 and 745.103, edition of 2015: housing and child-occupied facilities.
    shop, school = ({"code": {"occupancy_groups": [group]}} for group in ("M", "E"))
    assert "40 CFR 745" not in drafted(tmp_path, merged(OLD_WALLS, shop))["D05"]
    for change in ({}, school):
        assert "child-occupied facility, 40 CFR 745" in drafted(tmp_path, merged(OLD_WALLS, change))["D05"]


def test_the_code_table_of_an_old_wall_asks_for_drainage_and_the_existing_code(tmp_path: Path) -> None:
    pages = drafted(tmp_path, OLD_WALLS)
    # International Building Code 2018, 1705.16, exempts EIFS on masonry; from memory.
    assert re.search(r"(?m)^Special inspection, W1 \| 1705\.16.* \| pending \| .*architect to confirm$", pages["D02"])
    assert "\nSpecial inspection, W2 | 1705.16" in pages["D02"]
    assert "\nExisting building, W1, W2 | IEBC | pending | International Existing Building Code: " in pages["D02"]
    assert "barrier wall, which does not drain water behind it: architect to accept in writing" in pages["D02"]
    architect = next(items for party, items in asked_of(pages["D19"]).items() if party.startswith("Architect"))
    for item in (
        "Acceptance of a barrier wall without drainage, in writing (W1, W2)",
        "Wind, ASCE 7-16: basic speed for the risk category, mph; risk category, I to IV; exposure, B, C, or D",
    ):
        assert item in architect["repair and pull tests"], item
    # International Building Code 2018, 1402.2: no barrier is required over concrete or masonry designed to the code.
    assert "\nWater-resistive barrier, W1 | 1402.2, 1403.2" in pages["D02"]
    pending = r"(?m)^Water-resistive barrier, W2 .* pending \| \[Wall under the existing coating\]"
    assert re.search(pending, pages["D02"])
    solid = (
        "Existing wall: solid, cavity, or veneer; to IBC Chapter 19 or 21, or accepted by the authority: yes/no (W1)"
    )
    assert solid in architect["repair and pull tests"]
    assert "Contractor's review" not in pages["D02"] and "SUB-01" not in pages["D02"]


def test_a_figure_that_the_procedure_goes_by_is_put_to_who_confirms_it(tmp_path: Path) -> None:
    asked = asked_of(drafted(tmp_path)["D19"])
    every = {item for party in asked.values() for items in party.values() for item in items}
    # Common practice, no source, and from memory: the figures of the procedure, with the letter of their source.
    for item in (
        "Base coat, straightedge: 10 ft, confirm 1/8 in; 24 in, confirm 1/16 in[p]",
        "Maximum humidity: primer, confirm 85%; gloss, confirm 85%[p]",
        "Spray: fan shape, confirm oval; strainer mesh, confirm 60 to 100[p]",
    ):
        assert item in every, item


def test_the_code_table_asks_for_the_barrier_that_sheathing_requires(tmp_path: Path) -> None:
    # International Building Code 2018, 1402.2 and 1403.2, from memory: a barrier behind the veneer.
    wall = {"substrate": {"kind": "glass_mat_gypsum"}, "wrb": {"kind": "fluid_applied"}}
    page = drafted(tmp_path, {"code": {"model": "ibc", "edition": 2018}, "walls": {"W1": wall}})["D02"]
    told = r"yes \| fluid-applied: \[WRB product\], \[WRB standard\]"
    assert re.search(rf"(?m)^Water-resistive barrier, W1 \| 1402\.2, 1403\.2\S* \| {told}", page), page


def codes_in(rule: str) -> list[str]:
    """`HEA-02`, `HEA-03` of `HEA-02 Face temperature; HEA-03 Heat margin`."""
    return re.findall(r"\b[A-Z]{3}-\d\d(?= )", rule)


def test_rules_that_wait_for_a_document_alone_are_counted_as_not_evaluated(tmp_path: Path) -> None:
    pages = drafted(tmp_path, OLD_WALLS)
    listed = [row for row in cells_below(pages["D02"], "Rule | Wall | Pending, and from whom") if len(row) == 3]
    waiting = {rules: walls for rules, walls, pending in listed if pending == "Documents: listed above."}
    deciding = [row for row in listed if row[0] not in waiting]
    on = {code: walls for rules, walls in waiting.items() for code in codes_in(rules)}
    assert (on["ATT-03"], on["ATT-10"]) == ("W1, W2", "W1, W2")
    # What the code asks of foam plastic is asked of the one wall that has it, with the materials of its reports.
    assert [walls for rule, walls, _ in deciding if "COD-03" in codes_in(rule)] == ["W2"]
    assert all(re.match(r"[A-Z]{3}-\d\d [A-Z]", rule) and walls for rule, walls, _ in deciding)
    rules = sum(len(codes_in(rule)) for rule, *_ in deciding)
    number = rules + len(on)
    # The letters of every rule on the wall itself, whether or not this package owes what it waits for.
    assert {code[:3] for rule, *_ in deciding for code in codes_in(rule)} == {
        *("ATT", "BAS", "COD", "HEA", "INS", "PLN", "WAT"),
    }
    for mark in ("W1", "W2"):
        told = sum(len(codes_in(rule)) for rule, walls, _ in deciding if mark in walls.split(", "))
        told += sum(mark in walls.split(", ") for walls in on.values())
        assert re.search(rf"(?m)^{mark} \| .* documents?; {told} rules not evaluated: .*; listed below$", pages["D02"])
    assert f" {number} rules on the walls not evaluated, see D02." in banner_of(pages["D00"])


def test_a_rule_that_decides_a_wall_names_what_holds_it_up_as_the_open_items_do(tmp_path: Path) -> None:
    pages = drafted(tmp_path, OLD_WALLS)
    # The marks of a row are said once, and nobody answers it there.
    units = r"ft|in|mils|mph|psf|degrees|°F|0 to 1|perm|psi|hours|%"
    unplaced = re.compile(rf"(?:(?<=\?) (?!\()|: )[^(]*?(?= \(|$)|, (?:{units})(?= \(|$)| \([WEC]\d[^)]*\)")
    rows = [row for row in cells_below(pages["D02"], "Rule | Wall | Pending, and from whom") if len(row) == 3]
    told = {code: pending for rule, _, pending in rows for code in codes_in(rule)}
    told |= {
        code: f"{pending} {told[first]}"
        for code, pending in told.items()
        for first in re.findall(r": as ([A-Z]{3}-\d\d)\.", pending)
    }
    listed = [row[1] for row in cells_below(pages["D02"], "D19 | Document | From | Rule | Wall")]
    compared = 0
    for party, before, asked, held, _ in list_lines(tmp_path):
        item = unplaced.sub("", asked)
        rules = [rule for rule in re.findall(r"[A-Z]{3}-\d\d", held) if rule in told]
        # A document has its own list, and whom to ask settles no rule.
        named = asked.startswith(tuple(listed)) or item.endswith((" name", "Authority having jurisdiction"))
        if before in ("repair and pull tests", "decision on the walls") and not named:
            assert all(f"{party}: " in told[rule] and item in told[rule] for rule in rules), item
            compared += len(rules)
    assert compared > len(told)


def test_letters_stand_at_the_sentence_that_says_the_figure(tmp_path: Path) -> None:
    page = drafted(tmp_path, OLD_WALLS)["D05"]
    row = next(line for line in page.splitlines() if line.startswith("HEA-05a | "))
    assert re.search(r"maximum 165 °F for EPS\.\[[a-z]\] Obtain", row), row


def test_a_draft_prints_the_sheets_of_deviations_and_comments_that_it_refers_to(tmp_path: Path) -> None:
    change = {"deviations": {"DV1": {"kind": "deviation"}}, "comments": {"C1": {"text": "Name the inspector"}}}
    pages = drafted(tmp_path, change)
    assert sorted(pages) == ["D00", "D01", "D02", "D03", "D05", "D19"]
    assert "Deviations: DV1, see D03" in pages["D02"] and "\nDV1 | Specification paragraph | " in pages["D03"]


@pytest.mark.parametrize(("kind", "party", "asked"), [("letter", "wrb_source", True), ("letter", "eifs_source", False)])
def test_a_letter_of_the_eifs_manufacturer_alone_answers_for_the_wall_that_stands(
    tmp_path: Path, kind: str, party: str, asked: bool
) -> None:
    letter = {"attachments": {"L1": {"kind": kind, "parties": [party], "title": "Release of the wall"}}}
    page = drafted(tmp_path, merged(OLD_WALLS, letter))["D19"]
    assert ("Release for boards, in writing, on moisture readings" in page) is asked
