"""What sealant bonds to beside the wall, as the compatibility table and the sealant renewal name it."""

from pathlib import Path

from tests.documents.example import changed_clean, page_of
from tests.documents.support import context_of_example


def test_every_face_that_a_bead_bonds_to_stands_with_its_joints_beside_the_papers() -> None:
    page = page_of(context_of_example("clean"), "D02")
    (row,) = (line for line in page.splitlines() if line.startswith("Sealant: Tenterbead Sealants | "))
    # By the joints of the example: windows, door and louver with head flashings at J1, J4 and J5; floor lines J2 and
    # J3 of a drained wall; the ends of the faces against other work, J6 to J9; the hose bibb PN1.
    assert row.split(" | ")[1:] == [
        "Frames and head flashing at J1, J4, J5; floor-line flashing at J2, J3; corner panel of coated aluminum at J6 "
        "to J9; collar at PN1",
        "LT2, TR10",
    ]
    (sealed,) = (line for line in page.splitlines() if line.startswith("J1 to J9, PN1 | "))
    assert sealed.endswith("mask bond faces when the primer is dry, before the gloss")


def test_a_penetration_belongs_to_no_sealant_where_there_are_two(tmp_path: Path) -> None:
    context = changed_clean(tmp_path, {"sealants": {"S2": {"product": "Sealant 62"}}})
    assert "\nJ1 to J9 | S1: class 50, polyurethane | " in page_of(context, "D02")
    rows = [line.split(" | ") for line in page_of(context, "D16").splitlines() if line.startswith(("S1 | ", "S2 | "))]
    assert [(row[0], row[2]) for row in rows] == [("S1", "J1 to J9"), ("S2", "–")]
