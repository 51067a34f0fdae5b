"""What the codes ask for: a drained wall, and special inspection."""

from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.model.absence import Absent
from specgen.reading.schema import project_schema
from specgen.resolving.provider import Resolver
from tests.support import case_of

W1 = ("walls", "W1")


def looked_up(folder: Path, change: Any, path: tuple[str, ...], name: str) -> Any:
    return Resolver(case_of(folder, change).project, computing.find)(path, name)


def ibc(construction: str, *groups: str, framing: str = "wood") -> Any:
    return {
        "code": {"model": "ibc", "construction_type": construction, "occupancy_groups": list(groups)},
        "walls": {"W1": {"framing": {"kind": framing}, "substrate": {"kind": "osb"}}},
    }


def irc(substrate: str) -> Any:
    return {"code": {"model": "irc"}, "walls": {"W1": {"substrate": {"kind": substrate}}}}


IBC_1407 = "International Building Code 2024, section 1407"
IRC_703 = "International Residential Code, R703.9"
# Project, whether drainage is due, code.
DRAINAGE = [
    *((ibc(kind, group), True, IBC_1407) for kind in ("VA", "VB") for group in ("R-1", "R-2", "R-3", "R-4")),
    (ibc("VB", "B", "R-2"), True, IBC_1407),
    (ibc("VA", "R-2", framing="cold_formed_steel"), True, IBC_1407),
    *((ibc(kind, "R-2"), False, IBC_1407) for kind in ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV")),
    *((ibc("VB", group), False, IBC_1407) for group in ("A-2", "B", "E", "M", "S-1")),
    (ibc("VB", "R-2", framing="none"), False, IBC_1407),
    *((irc(kind), True, IRC_703) for kind in ("osb", "plywood", "glass_mat_gypsum", "cement_board", "metal", "stucco")),
    *(
        (irc(kind), False, IRC_703)
        for kind in ("concrete", "concrete_masonry", "aac", "icf", "stone", "existing_brick")
    ),
]


@pytest.mark.parametrize(("change", "due", "code"), DRAINAGE)
def test_drainage_is_due_where_the_code_says(change: Any, due: bool, code: str, tmp_path: Path) -> None:
    found = looked_up(tmp_path, change, W1, "drainage-due")
    assert found.result is due
    assert found.why
    assert [source.reference.split(":")[0] for source in found.source] == [code]


def test_a_local_code_is_not_read_and_the_building_official_is_named(tmp_path: Path) -> None:
    found = looked_up(tmp_path, {"code": {"model": "other"}}, W1, "drainage-due")
    assert found.result is False
    assert "building official" in found.why
    assert found.source == ()


@pytest.mark.parametrize(
    ("change", "path"),
    [
        ({}, "code.model"),
        ({"code": {"model": "ibc"}}, "walls.W1.framing.kind"),
        ({"code": {"model": "ibc"}, "walls": {"W1": {"framing": {"kind": "wood"}}}}, "code.construction_type"),
        (
            {"code": {"model": "ibc", "construction_type": "VB"}, "walls": {"W1": {"framing": {"kind": "wood"}}}},
            "code.occupancy_groups",
        ),
    ],
)
def test_drainage_is_not_known_without_what_it_rests_on(change: Any, path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent, match=path.replace(".", r"\.")):
        looked_up(tmp_path, change, W1, "drainage-due")


def wall(substrate: str, barrier: str, drainage: str) -> Any:
    return {"substrate": {"kind": substrate}, "wrb": {"kind": barrier}, "drainage": {"kind": drainage}}


# Walls, whether special inspection is due. International Building Code commentary: all EIFS is inspected, save (1) over
# a weather barrier with drainage to the outside and (2) over concrete or masonry; a weather barrier coating on
# sheathing is inspected too.
INSPECTION = [
    ([wall("glass_mat_gypsum", "self_adhered_sheet", "adhesive_ribbons")], False),
    ([wall("glass_mat_gypsum", "self_adhered_sheet", "none")], True),
    ([wall("glass_mat_gypsum", "none", "adhesive_ribbons")], True),
    ([wall("osb", "self_adhered_sheet", "drainage_mat")], False),
    *(
        ([wall(kind, "fluid_applied", "adhesive_ribbons")], True)
        for kind in ("glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum")
    ),
    ([wall("metal", "self_adhered_sheet", "none")], True),
    *(
        ([wall(kind, barrier, "none")], False)
        for kind in ("concrete", "concrete_masonry", "aac", "icf", "stone", "existing_brick")
        for barrier in ("none", "fluid_applied")
    ),
    ([wall("concrete", "none", "none"), wall("osb", "none", "none")], True),
    ([wall("concrete", "none", "none"), wall("concrete_masonry", "none", "none")], False),
]


@pytest.mark.parametrize(("walls", "due"), INSPECTION)
def test_special_inspection_is_due_but_for_its_exceptions(walls: list[Any], due: bool, tmp_path: Path) -> None:
    change = {"code": {"model": "ibc"}, "walls": {f"W{n}": made for n, made in enumerate(walls, 1)}}
    found = looked_up(tmp_path, change, (), "special-inspection-due")
    assert found.result is due
    assert found.why


def test_the_wall_that_needs_special_inspection_is_named(tmp_path: Path) -> None:
    walls = {"W1": wall("concrete", "none", "none"), "W2": wall("osb", "none", "none")}
    found = looked_up(tmp_path, {"code": {"model": "ibc"}, "walls": walls}, (), "special-inspection-due")
    assert found.why.startswith("W2: ")


@pytest.mark.parametrize("model", ["irc", "other"])
def test_no_other_code_asks_for_special_inspection(model: str, tmp_path: Path) -> None:
    change = {"code": {"model": model}, "walls": {"W1": wall("osb", "none", "none")}}
    assert looked_up(tmp_path, change, (), "special-inspection-due").result is False


def test_one_wall_that_is_known_settles_special_inspection_and_one_that_clears_does_not(tmp_path: Path) -> None:
    unknown = {"substrate": {"kind": "osb"}}
    settled = {"code": {"model": "ibc"}, "walls": {"W1": unknown, "W2": wall("osb", "none", "none")}}
    assert looked_up(tmp_path, settled, (), "special-inspection-due").result is True
    waiting = {"code": {"model": "ibc"}, "walls": {"W1": unknown, "W2": wall("concrete", "none", "none")}}
    with pytest.raises(Absent, match=r"walls\.W1\.wrb\.kind"):
        looked_up(tmp_path, waiting, (), "special-inspection-due")


def test_the_look_ups_know_every_substrate_there_is() -> None:
    # A substrate that is added to the schema is sorted here into masonry, sheets and the rest.
    from specgen.computing.code import special_inspection_due
    from specgen.computing.moisture import drainage_due

    kinds = set(project_schema().fields["walls", "*", "substrate", "kind"].values)
    assert drainage_due.MASONRY == special_inspection_due.MASONRY
    rest = {"existing_coated", "metal", "stucco"}
    assert special_inspection_due.MASONRY | special_inspection_due.SHEETS | rest == kinds
