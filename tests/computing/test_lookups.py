"""What the codes ask for: a drained wall, special inspection, fire tests of the wall."""

from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.computing import substrates
from specgen.model.absence import Absent
from specgen.model.source import Kind
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


def painted(base: str) -> dict[str, Any]:
    return {"substrate": {"kind": "existing_coated", "base": base}}


IBC_1407 = "International Building Code, ICC, 2021, 1407.4.1"
IRC_703 = "International Residential Code, ICC, 2009, 2012, and 2021, R703.9"
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
    # Paint does not turn block into a framed wall.
    *(({"code": {"model": "irc"}, "walls": {"W1": painted(base)}}, False, IRC_703) for base in ("concrete", "masonry")),
    ({"code": {"model": "irc"}, "walls": {"W1": painted("framed")}}, True, IRC_703),
    *(
        ({"code": ibc("VB", "R-2")["code"], "walls": {"W1": painted(base)}}, False, IBC_1407)
        for base in ("concrete", "masonry")
    ),
    (
        {"code": ibc("VB", "R-2")["code"], "walls": {"W1": painted("framed") | {"framing": {"kind": "wood"}}}},
        True,
        IBC_1407,
    ),
]


@pytest.mark.parametrize(("change", "due", "code"), DRAINAGE)
def test_drainage_is_due_where_the_code_says(change: Any, due: bool, code: str, tmp_path: Path) -> None:
    found = looked_up(tmp_path, change, W1, "drainage-due")
    assert found.result is due
    assert found.why
    assert [source.reference.split(", as told")[0].split(":")[0] for source in found.source] == [code]


# Edition, section of its text on drainage, whether that was read. Read: Virginia Construction Code 2021 (on IBC 2021),
# 1407.4.1; 1408.4.1 from 2009 to 2015, 1407.4.1 in 2018 and 2024: from memory.
@pytest.mark.parametrize(
    ("edition", "section", "read"),
    [
        (2009, "1408.4.1", False),
        (2012, "1408.4.1", False),
        (2015, "1408.4.1", False),
        (2018, "1407.4.1", False),
        (2021, "1407.4.1", True),
        (2024, "1407.4.1", False),
    ],
)
def test_the_section_on_drainage_is_that_of_the_adopted_edition(
    edition: int, section: str, read: bool, tmp_path: Path
) -> None:
    change = ibc("VB", "R-2")
    change["code"]["edition"] = edition
    (source,) = looked_up(tmp_path, change, W1, "drainage-due").source
    assert section in source.reference
    assert (source.kind is Kind.PUBLISHED) is read
    assert (source.kind is Kind.MEMORY) is not read


def test_a_local_code_is_not_read_and_the_building_official_is_named(tmp_path: Path) -> None:
    found = looked_up(tmp_path, {"code": {"model": "other"}}, W1, "drainage-due")
    assert found.result is False
    assert "authority having jurisdiction" in found.why
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
        (
            {"code": {"model": "irc"}, "walls": {"W1": {"substrate": {"kind": "existing_coated"}}}},
            "walls.W1.substrate.base",
        ),
    ],
)
def test_drainage_is_not_known_without_what_it_rests_on(change: Any, path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent, match=path.replace(".", r"\.")):
        looked_up(tmp_path, change, W1, "drainage-due")


def wall(substrate: str, barrier: str, drainage: str) -> Any:
    return {"substrate": {"kind": substrate}, "wrb": {"kind": barrier}, "drainage": {"kind": drainage}}


UNDRAINED = {"wrb": {"kind": "none"}, "drainage": {"kind": "none"}}
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
    # Paint on concrete or block leaves the exception for concrete and masonry as it is.
    *(([painted(base) | UNDRAINED], False) for base in ("concrete", "masonry")),
    ([painted("framed") | UNDRAINED], True),
    ([wall("existing_coated", "self_adhered_sheet", "drainage_mat")], False),
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
    painted_wall = wall("existing_coated", "none", "none")
    with pytest.raises(Absent, match=r"walls\.W1\.substrate\.base"):
        looked_up(tmp_path, waiting | {"walls": {"W1": painted_wall}}, (), "special-inspection-due")


def test_the_look_ups_know_every_substrate_there_is() -> None:
    # A substrate that is added to the schema is sorted here into masonry, sheets and the rest.
    kinds = set(project_schema().fields["walls", "*", "substrate", "kind"].values)
    assert {*substrates.MASONRY, *substrates.SHEETS, "existing_coated", "metal", "stucco"} == kinds


# Construction type, board, whether NFPA 285 and NFPA 268 are due. International Building Code 2009, 2603.5 (780 CMR,
# 8th edition): exterior walls of buildings of type I, II, III or IV of any height comply with 2603.5.1 to 2603.5.7,
# walls of type V with 2603.2 to 2603.4 alone. 2603.5.5 (2006) asks for NFPA 285; 2603.5.7, from memory, for NFPA 268.
# Foam plastic only: mineral wool is none.
FIRE = [
    *(
        ((kind, board), True)
        for kind in ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVHT")
        for board in ("eps", "xps")
    ),
    *((("IIB", board), True) for board in ("polyiso", "phenolic")),
    *((("IVA", "eps"), True), (("IVB", "eps"), True), (("IVC", "eps"), True)),
    *(((kind, "eps"), False) for kind in ("VA", "VB")),
    *(((kind, "mineral_wool"), False) for kind in ("IIB", "VB")),
]
FIRE_TESTS = ("fire-propagation-due", "radiant-heat-due")


def walled(board: str, **code: str) -> Any:
    return {"code": {"model": "ibc"} | code, "walls": {"W1": {"insulation": {"kind": board}}}}


@pytest.mark.parametrize("name", FIRE_TESTS)
@pytest.mark.parametrize(("wall_of", "due"), FIRE)
def test_a_fire_test_is_due_for_foam_in_walls_of_types_i_to_iv(
    wall_of: tuple[str, str], due: bool, name: str, tmp_path: Path
) -> None:
    construction, board = wall_of
    found = looked_up(tmp_path, walled(board, construction_type=construction), W1, name)
    assert found.result is due
    assert found.why and found.source


# One story: 2603.5.5 (2006) frees buildings that comply with 2603.4.1.4 alone, where metal lies over the foam and
# sprinklers throughout; EIFS has no metal there. Separation: 1406.2.1.1 (New York City) names no distance.
@pytest.mark.parametrize("name", FIRE_TESTS)
def test_neither_few_stories_nor_a_wide_separation_frees_a_foam_wall(name: str, tmp_path: Path) -> None:
    low = {"building": {"stories": 1, "eifs_top": "26 ft"}, "elevations": {"E1": {"fire_separation": "60 ft"}}}
    assert looked_up(tmp_path, walled("eps", construction_type="IIB") | low, W1, name).result is True


@pytest.mark.parametrize("name", FIRE_TESTS)
@pytest.mark.parametrize("model", ["irc", "other"])
def test_no_other_code_asks_for_these_fire_tests(model: str, name: str, tmp_path: Path) -> None:
    found = looked_up(tmp_path, {"code": {"model": model}}, W1, name)
    assert found.result is False
    assert bool(found.source) is (model == "irc")
    assert ("fire class" in found.why) is (model == "other")


@pytest.mark.parametrize("name", FIRE_TESTS)
def test_one_half_may_settle_a_fire_test_and_the_other_is_not_asked_for(name: str, tmp_path: Path) -> None:
    assert looked_up(tmp_path, {"code": {"model": "ibc", "construction_type": "VB"}}, W1, name).result is False
    assert looked_up(tmp_path, walled("mineral_wool"), W1, name).result is False
    for change, path in (
        ({}, r"code\.model"),
        (walled("eps"), r"code\.construction_type"),
        ({"code": {"model": "ibc", "construction_type": "IIB"}}, r"walls\.W1\.insulation\.kind"),
    ):
        with pytest.raises(Absent, match=path):
            looked_up(tmp_path, change, W1, name)
