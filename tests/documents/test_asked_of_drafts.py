"""What a draft asks of whom and before what, and where its pages agree on it."""

from pathlib import Path
from typing import Any

from tests.documents.example import drafted
from tests.documents.open_page import list_lines, list_rows
from tests.support import merged

# A shop of brick, with salts on it, beside a coated wall.
OLD: dict[str, Any] = {
    "package": {"purpose": "design_draft"},
    "code": {"model": "ibc", "edition": 2018, "construction_type": "IIIB", "local_fasteners_required": "no"},
    "walls": {
        "W1": {
            "substrate": {"kind": "existing_brick", "condition": ["efflorescence"]},
            "wrb": {"kind": "none"},
            "drainage": {"kind": "none"},
            "insulation": {"kind": "eps"},
        },
        "W2": {
            "substrate": {"kind": "existing_coated", "coating_removed": "no"},
            "wrb": {"kind": "none"},
            "drainage": {"kind": "none"},
            "insulation": {"kind": "eps"},
        },
    },
    "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W2"}},
    "joints": {"J1": {"kind": "opening_perimeter", "width": "1/2 in", "bond_face": "primer"}},
}
# A clinic of new sheathing, to be submitted.
NEW: dict[str, Any] = {
    "package": {"purpose": "mockup_submittal", "date": "2027-02-15"},
    "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
    "walls": {
        "W1": {
            "substrate": {"kind": "glass_mat_gypsum"},
            "wrb": {"kind": "fluid_applied"},
            "attachment": {"method": "adhesive_notched_trowel", "ribbon_direction": "vertical"},
            "drainage": {"kind": "adhesive_ribbons"},
            "insulation": {"kind": "eps"},
        }
    },
    "sealants": {"S1": {"c920_class": 50, "chemistry": "silicone", "sequence": "after_gloss"}},
    "joints": {"J1": {"kind": "opening_perimeter", "width": "3/4 in", "bond_face": "primer"}},
    "mockup": {"planned_on": "2027-04-12"},
    "schedule": {"work_start": "2027-05-10"},
}


def before_of(folder: Path) -> dict[str, tuple[str, str]]:
    """Role and work of each item of the list, by its words."""
    return {item: (role, before) for role, before, item, *_ in list_lines(folder)}


# Common practice, no source: repair, wash and pull tests cost the most, so that what can rule a wall out is answered
# before them; only the report on the pulls and its acceptance come behind.
def test_what_can_rule_an_old_wall_out_is_asked_before_it_is_repaired_and_pulled(tmp_path: Path) -> None:
    drafted(tmp_path, OLD)
    asked = before_of(tmp_path)
    for party, item in (
        ("Architect", "Acceptance of a barrier wall without drainage, in writing (W1, W2)"),
        ("Owner", "Source of the water in the wall, and how it is stopped (W1)"),
        ("Owner", "Lot line: distance from the wall; permission past it, or none (W1, W2)"),
        ("Owner", "Signs, lights, awnings, pipes on the wall; refixed by whom (W1, W2)"),
        ("EIFS manufacturer", "ASTM E2568 report with this finish, or approved alternative (W1, W2)"),
        ("EIFS manufacturer", "ASTM E331 report of this wall, where framed or not designed to the code (W1, W2)"),
    ):
        assert asked[item] == (party, "repair and pull tests"), item
    (report,) = (told for item, told in asked.items() if item.startswith("Bond report with mode of failure"))
    assert report == ("Owner", "decision on the walls")
    assert asked["Acceptance of the bond report, in writing (W1, W2)"] == ("Engineer", "decision on the walls")


# Common practice, no source: board on an old front may overhang the street or the neighbor; the owner knows the line.
def test_an_old_wall_is_asked_for_its_lot_line_and_for_its_water(tmp_path: Path) -> None:
    page = drafted(tmp_path, OLD, ("D00",))["D00"]
    (row,) = [line for line in page.splitlines() if "Lot line beside the existing wall" in line]
    assert "W1, W2" in row and "neither the neighbor nor the authority over the street permits it" in row
    assert (
        "Owner: after the reports, have the source of the water in W1 found; it is stopped before repair, or by it"
        in page
    )
    new = merged(OLD, {"walls": {mark: {"substrate": {"kind": "concrete"}} for mark in ("W1", "W2")}})
    page = drafted(tmp_path, new, ("D00",))["D00"]
    assert "Lot line" not in page and "source of the water" not in page


# Common practice, no source: repairs are bought before the pulls that test them; mortar follows the old; paint or water
# repellent on new masonry keeps adhesive off it.
def test_repairs_mortar_and_the_bare_face_of_masonry_are_asked_for(tmp_path: Path) -> None:
    faults = {"W1": {"substrate": {"condition": ["open_joints"]}}, "W2": {"substrate": {"condition": ["chalking"]}}}
    drafted(tmp_path, merged(OLD, {"walls": faults}))
    asked = before_of(tmp_path)
    repair = "Repair and wash: test areas first, or all; by whom; access; silica, wash water plans (W1, W2)"
    assert asked[repair] == ("General contractor", "repair and pull tests")
    assert asked["Mortar for repointing: type (W1)"] == ("Architect", "repair and pull tests")
    bare = "Is the face free of paint, coating, and water repellent? yes/no"
    assert not [item for item in asked if item.startswith(bare)]
    new = {"walls": {mark: {"substrate": {"kind": "concrete_masonry"}, "wrb": {"kind": "none"}} for mark in ("W1",)}}
    pages = drafted(tmp_path, merged({"package": {"purpose": "design_draft"}}, new))
    asked = before_of(tmp_path)
    assert asked[f"{bare} (W1)"] == ("General contractor", "decision on the walls")
    # Who is asked for it stands where the rule is told that waits for it.
    assert (
        "ATT-06 Substrate cured, dry, sound, and repaired | W1 | General contractor: Is the face free" in pages["D02"]
    )
    (row,) = (line for line in pages["D00"].splitlines() if line.startswith("D02 Compatibility and compliance"))
    assert "general contractor" in row
    # What has an age stands, and is measured before it is decided on.
    gap = "Largest gap of the substrate under a 10 ft straightedge, in (W1)"
    assert asked[gap][1] == "insulation boards"
    aged = merged(new, {"walls": {"W1": {"substrate": {"age_days": 90}}}})
    drafted(tmp_path, merged({"package": {"purpose": "design_draft"}}, aged))
    assert before_of(tmp_path)[gap][1] == "decision on the walls"


def test_mesh_that_is_open_is_told_with_the_impact_that_it_is_to_bear(tmp_path: Path) -> None:
    zones = [{"from": "0 ft", "to": "7 ft", "class": "high"}, {"from": "7 ft", "to": "20 ft", "class": "standard"}]
    face = {"width": "30 ft", "height": "20 ft", "impact_zones": zones, "wall": "W1"}
    page = drafted(tmp_path, {"elevations": {"E1": face}}, ("D02",))["D02"]
    assert "[Mesh layers] for impact class high to 7 ft, standard above;" in page
    two = {"E1": face, "E2": face | {"impact_zones": [zones[0] | {"to": "20 ft"}]}}
    page = drafted(tmp_path, {"elevations": two}, ("D02",))["D02"]
    assert "[Mesh layers] for impact class E1: high to 7 ft, standard above; E2: high to 20 ft;" in page


# Common practice, no source: the owner releases what costs money, the architect decides on the walls.
def test_each_release_is_listed_with_who_gives_it_and_before_what(tmp_path: Path) -> None:
    def listed(change: Any) -> list[str]:
        page = drafted(tmp_path, change, ("D19",))["D19"]
        below = page.partition("RELEASES IN WRITING")[2].partition("SOURCES OF THE FIGURES")[0]
        return [line.strip() for line in below.splitlines() if line.strip()]

    decided = "Decision on each wall: architect, before material is ordered or a mockup is built."
    pulled = "Repair and pull tests, W1 and W2: owner, after the calculations named in D00."
    assert [line.partition(". ")[2] for line in listed(OLD)][:2] == [pulled, decided]
    named = merged(OLD, {"parties": {"owner": {"name": "Fen Trust"}, "architect": {"name": "Sedge"}}})
    assert [line.partition(". ")[2] for line in listed(named)][:2] == [
        pulled.replace("owner", "owner, Fen Trust"),
        decided.replace("architect", "architect, Sedge"),
    ]


def test_what_nobody_has_told_is_asked_of_who_can(tmp_path: Path) -> None:
    pages = drafted(tmp_path, OLD)
    # A name holds up all that is asked of whoever bears it; a wall without drainage keeps the water that gets in.
    assert "( ) Names: architect; general contractor | all asked of them | " in pages["D19"]
    assert " Not drained, W1, W2: water behind the board stays there;" in pages["D05"]
    rows = [(row[0].partition(":")[0], row[1], row[2]) for row in list_rows(pages["D19"])]
    for row in (
        ("Applicator", "mockup", "( ) Shade of each elevation: none, natural, shade cloth, or tent"),
        ("Applicator", "mockup", "( ) Is sealant installed before or after the gloss? (J1)"),
        (
            "Architect",
            # What the code table requires is known when the walls are decided on.
            "repair and pull tests",
            "( ) Thermal barrier between all board and interior: concrete, masonry, or 1/2 in gypsum board or equal? "
            "(W2)",
        ),
    ):
        assert row in rows, row
    # Who takes the replies is no question to others.
    assert "Contact for replies" not in pages["D19"]
    assert "Replies to: ____" in pages["D19"]
    masking = "sealed before or after the gloss: pending, from the applicator; masking follows from it"
    assert f"J1 (1/2 in) | [Sealants] | primer of the finish; {masking}" in pages["D02"]
    # No date of the project is known, and none is asked of each stage.
    assert "Reply by" not in pages["D19"]


def test_a_design_draft_has_no_contract_to_verify_against(tmp_path: Path) -> None:
    page = drafted(tmp_path, OLD)["D05"]
    assert "Contract, or RFI" not in page and "Of the contract" not in page
    assert "\nEngineer | Pull tests in a set | minimum 3 | D05, D19 | D19\n" in page
    # What the open items alone print is confirmed there.
    assert "Aesthetic joint width and depth variation" not in page
    assert "\nVERIFY BEFORE THE DECISION ON THE WALLS\n" in page


def test_a_figure_of_the_answer_itself_is_verified_with_the_others(tmp_path: Path) -> None:
    page = drafted(tmp_path, merged(OLD, {"colors": {"C1": {"lrv": 12}}}))["D05"]
    (row,) = (line for line in page.splitlines() if "Light reflectance over EPS" in line)
    assert " | D00, D05 | " in row


def test_a_party_that_a_project_does_not_have_owes_no_sum(tmp_path: Path) -> None:
    (row,) = (line for line in drafted(tmp_path, OLD)["D00"].splitlines() if line.startswith("D06 Calculations"))
    assert "WRB manufacturer" not in row


def test_what_the_rules_on_dates_wait_for_is_missing_from_the_schedule(tmp_path: Path) -> None:
    pages = drafted(tmp_path, NEW)
    (row,) = (line for line in pages["D00"].splitlines() if line.startswith("D14 Schedule"))
    held = {
        line[0].replace("Architect", "contract documents").lower() for line in list_lines(tmp_path) if "SCH-" in line[3]
    }
    given = row.partition("Values: ")[2].lower().split(", ")
    assert len(held) > 2 and held <= set(given), (row, held)


def test_both_smoothing_coats_stand_on_every_page_that_tells_of_them(tmp_path: Path) -> None:
    pages = drafted(tmp_path, NEW, ("D02", "D12"))
    assert "; 2[p] smoothing coats; primer; 2[p] coats of gloss" in pages["D02"]
    assert "( ) first smoothing coat  ( ) second smoothing coat" in pages["D12"]
    # Another pass of base coat is printed where one is known of.
    assert "( ) base coat, leveling pass" not in pages["D12"]
    twice = drafted(tmp_path, merged(NEW, {"walls": {"W1": {"base_coat": {"passes": 2}}}}), ("D12",))
    assert "( ) base coat, leveling pass" in twice["D12"]


def test_a_wall_drained_by_ribbons_says_which_way_they_run(tmp_path: Path) -> None:
    assert "drained by choice: vertical adhesive ribbons" in drafted(tmp_path, NEW)["D02"]


def test_what_belongs_together_is_asked_for_at_one_stage(tmp_path: Path) -> None:
    drafted(tmp_path, NEW)
    asked = before_of(tmp_path)
    assert {before for item, (_, before) in asked.items() if "Backer rod" in item or "rod kind" in item} == {
        "this submittal"
    }
    # The report tells its own conditions and face.
    assert not any("reported" in item or "face tested" in item for item in asked)
    assert asked["Largest gap of the substrate under a 10 ft straightedge, in (W1)"][1] == "insulation boards"
    assert asked["Review of this package, signed and dated"] == ("General contractor", "sending to the architect")


def test_rules_that_wait_for_documents_alone_share_a_row_which_is_counted(tmp_path: Path) -> None:
    page = drafted(tmp_path, merged(OLD, {"colors": {"C1": {}}}))["D02"]
    (row,) = (line for line in page.splitlines() if line.endswith(" | W1, W2 | Documents: listed above."))
    for rule in (
        "ATT-03 No fasteners required by local code",
        "ATT-10 Existing wall tested for lead and asbestos",
        "SUB-06 Compatibility letters",
    ):
        assert rule in row


# Common practice, no source: a fire report and the EIFS manufacturer's word are of named coats over a named wall, and a
# laboratory measures a color on the coats that it is made of.
def test_the_decision_asks_for_what_its_reports_are_made_of(tmp_path: Path) -> None:
    makers = {"eifs_source": {"name": "Ashdown"}, "finish_source": {"name": "Birchall"}}
    pages = drafted(tmp_path, merged(NEW, {"colors": {"C1": {}}, "parties": makers}))
    asked = before_of(tmp_path)
    for item in (
        "Primer product",
        "Gloss product",
        "Smoothing coat product",
        "Dry film per coat of gloss, mils",
        "Color number (C1)",
        "Sheathing standard (W1)",
        "Sheathing thickness, in (W1)",
        "Class of the system: PB or PM (W1)",
        "Compatibility letter, EIFS and finish, with EIFS warranty",
        "Thermal barrier: 1/2 in gypsum board or equal between board and interior? yes/no (W1)",
    ):
        assert asked[item][1] == "decision on the walls", item
    refused = (
        "W1 | the EIFS manufacturer does not accept these coats in writing, or its warranty does not hold under them\n"
    )
    assert f"Finish of another manufacturer on this EIFS (SUB-06) | {refused}" in pages["D00"]
    # The code table's row on fire tests tells the coats of the reports as the list does.
    (row,) = (line for line in pages["D02"].splitlines() if line.startswith("COD-03 "))
    assert "Finish manufacturer: Smoothing coat product; Primer product; Gloss product." in row


# ASTM D7234 pulls a disk off a coating; what carries the board is the adhesive, so that it is pulled. Three tests in
# each 1000 sq ft: common practice, no source.
def test_pull_tests_say_what_is_pulled_how_often_and_who_accepts_the_surface_first(tmp_path: Path) -> None:
    sized = merged(OLD, {"elevations": {"E1": {"width": "62 ft", "height": "22 ft"}}})
    pages = drafted(tmp_path, sized)
    asked = before_of(tmp_path)
    accepted = (
        "Acceptance of the kind of surface for its adhesive, subject to repair and pull tests, in writing (W1, W2)"
    )
    assert asked[accepted] == ("EIFS manufacturer", "repair and pull tests")
    assert asked["Pull tests in each 1000 sq ft of each kind of surface: confirm 3"] == (
        "Engineer",
        "repair and pull tests",
    )
    (said,) = (line for line in pages["D05"].splitlines() if "Form D12f. Pulls: " in line)
    assert (
        "minimum 3 in each 1000 sq ft of each kind of surface, new pointing with the disc centered on the joint: "
        "minimum 6 on W1, 1364 sq ft" in said
    )
    assert "The agency pulls the EIFS manufacturer's adhesive, bonded to the prepared surface" in said
    assert "pull tests on Form D12f, issued before them (independent testing agency, for the owner)" in pages["D00"]
    assert "(pull tests: before they are made; rows marked D19: answer there, at their stage)" in pages["D05"]


def test_stages_without_a_date_stand_in_their_order_and_no_table_is_empty(tmp_path: Path) -> None:
    told = (
        "\nNeeded before, in this order: first requests, at once; any work on the existing walls; repair and pull "
        "tests; decision on the walls; mockup; start of work; each later step. Dates: open until the date of "
        "submission is named.\n"
    )
    assert told in drafted(tmp_path, OLD)["D19"]


# Common practice, no source: a sealant that lets go of a coat is found out before any wall is sprayed with it.
def test_what_a_sealant_bonds_to_is_known_before_the_mockup_is_sprayed(tmp_path: Path) -> None:
    makers = {f"{name}_source": {"name": name.title()} for name in ("eifs", "finish", "sealant")}
    drafted(tmp_path, merged(NEW, {"parties": makers}))
    asked = before_of(tmp_path)
    report = "Adhesion report, ASTM C1382, sealant on its bond face (S1)"
    for item in (report, "Compatibility letter, EIFS and sealant", "Compatibility letter, finish and sealant"):
        assert asked[item][1] == "this submittal", item


# Common practice, no source: whoever owns the parking has the cars moved.
def test_the_owner_is_asked_to_have_vehicles_moved(tmp_path: Path) -> None:
    asked = "Are vehicles below moved out of reach while spraying? yes/no"
    drafted(tmp_path, merged(NEW, {"site": {"surroundings": ["vehicles_below"]}}))
    assert before_of(tmp_path)[asked] == ("Owner", "this submittal")
    drafted(tmp_path, merged(NEW, {"site": {"surroundings": ["dust"]}}))
    assert asked not in before_of(tmp_path)


def test_the_limit_of_a_prominent_face_is_asked_of_the_architect(tmp_path: Path) -> None:
    drafted(tmp_path, merged(NEW, {"elevations": {"E1": {"wall": "W1", "prominent": "yes"}}}))
    # 1/8 in: common practice, no source.
    item = "Substrate limit under a 10 ft straightedge, where none or a looser one is specified (E1): confirm 1/8 in"
    assert before_of(tmp_path)[item] == ("Architect", "this submittal")


# Common practice, no source: what departs from the specification is known to whoever decides on the walls, and nobody
# is asked for what the contract tells.
def test_the_specification_is_reviewed_before_anybody_is_asked(tmp_path: Path) -> None:
    drafted(tmp_path, NEW)
    (asked,) = (told for item, told in before_of(tmp_path).items() if item.startswith("Review of the specification"))
    assert asked == ("Applicator", "first requests")


# Common practice, no source: the owner has its walls surveyed and pulled by firms that no other party employs.
def test_who_surveys_and_pulls_an_old_wall_is_named_first(tmp_path: Path) -> None:
    drafted(tmp_path, OLD)
    asked = before_of(tmp_path)
    surveyed = "asbestos inspector, laboratory; lead inspector"
    assert asked[f"Names: {surveyed}; testing agency"] == ("Owner", "first requests")
    drafted(tmp_path, NEW)
    assert not [item for item in before_of(tmp_path) if surveyed in item]
