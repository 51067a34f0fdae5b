"""One declaration of an input gives its key, its field, its line, its origin and its bounds. Rules of our own."""

import importlib
import pkgutil
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.computing import declaration as declaring
from specgen.computing.declaration import Declaration
from specgen.computing.inputs import (
    Inputs,
    given_input,
    limit_input,
    option_input,
    provide,
)
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.source import PRACTICE, InForce, Kind, Source
from specgen.model.working import METHOD, Working
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.quantities.units import UNITS
from specgen.reading.schema import project_schema
from specgen.resolving.provider import Resolver
from specgen.standards import load_limits
from tests.resolving.test_resolver import reached
from tests.support import case_of


class TrialInputs(Inputs):
    """A joint, a share, a limit, and a word."""

    width: Quantity = given_input("W", "width of the joint", "length", "joints.*.width", "its width", above=0)
    share: Fraction = given_input(
        "s", "share", "percent", default=30, source=PRACTICE, origin="none is counted", least=0
    )
    rod: Fraction = given_input(
        "o", "rod over the width", "percent", limit="joint.rod_oversize", says="{rod} over {deep}"
    )
    warm: Quantity | None = given_input(
        "T",
        "warmth",
        "temperature",
        "joints.*.install_low",
        optional=True,
        default=None,
        within=(Quantity.of(30, "F"), Quantity.of(110, "F")),
    )
    deep: InForce = limit_input("joint.depth_most", "D", "greatest depth", says="at most {deep}")
    way: str = option_input("up or down", ("up", "down"), default="up")


def trial_sum(inputs: TrialInputs) -> Working:
    working = WorkingBuilder(inputs.rows())
    working.step("y", "twice the width", "W * 2", "in" if inputs.system == "ip" else "mm")
    return working.build("trial-sum", "y", (inputs.limit_source("deep"),))


TRIAL = provide("A trial", TrialInputs, trial_sum, each=("joints",))
WIDE = Quantity.of("3/4", "in")


def test_the_keys_follow_from_the_declarations() -> None:
    keys = {key.name: (key.dimension, key.about, key.default) for key in TRIAL.keys}
    assert keys == {
        "width": ("length", "its width", None),
        "share": ("percent", "share", "30%"),
        "rod": ("percent", "rod over the width", "25%"),
        "warm": ("temperature", "warmth", ""),
        "way": ("word", "up or down", "up"),
    }
    assert TRIAL.name == "trial-sum"
    assert (TRIAL.reads, TRIAL.needs) == (("joints.*.width",), ())


def test_the_lines_follow_in_the_unit_system_of_the_sum() -> None:
    ip, si = (TrialInputs(width=WIDE, system=system).rows() for system in ("ip", "si"))  # type: ignore[call-arg]
    assert [(row.symbol, row.value, row.unit) for row in ip] == [
        ("W", 0.75, "in"),
        ("s", 30, "%"),
        ("o", 25, "%"),
        ("D", 0.5, "in"),
    ]
    assert [(row.value, row.unit) for row in si] == [(19.05, "mm"), (30, "%"), (25, "%"), (13, "mm")]
    assert [row.origin for row in ip] == ["joints.*.width", "none is counted", METHOD, METHOD]


def test_a_default_and_a_limit_bear_their_source_and_a_users_own_figure_bears_none() -> None:
    usual, own = TrialInputs(width=WIDE), TrialInputs(width=WIDE, share=31, rod=26)  # type: ignore[call-arg]
    sources = {row.symbol: row.source for row in usual.rows()}
    assert sources["s"] == PRACTICE
    assert sources["o"] == Source(Kind.PUBLISHED, "UFGS 07240, page 21: 25 % over 1/2 in")
    assert sources["D"].reference == "E. Allen, Architectural Detailing, sealant joints: at most 1/2 in"  # type: ignore[union-attr]
    assert {row.symbol: row.source for row in own.rows() if row.symbol in ("s", "o")} == {"s": None, "o": None}


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"width": Quantity.of(0, "in")}, "width is 0 in (it is more than 0)"),
        ({"share": -1}, "share is -1 % (it is 0 % or more)"),
        ({"warm": Quantity.of(20, "F")}, "warm is 20 °F (it lies from 30 °F to 110 °F)"),
    ],
)
def test_the_bounds_are_held(given: dict[str, Any], said: str) -> None:
    with pytest.raises(Refused) as refused:
        TrialInputs(**{"width": WIDE} | given)
    assert [str(problem) for problem in refused.value.problems] == [said]


def resolved(folder: Path, joint: dict[str, Any]) -> Any:
    resolver = Resolver(case_of(folder, {"joints": {"J1": joint}}).project, {"trial-sum": TRIAL}.__getitem__)
    return resolver(("joints", "J1"), "trial-sum")


def test_a_project_gives_the_value_of_the_field_and_may_do_without_an_optional_one(tmp_path: Path) -> None:
    lines = {row.symbol: row.value for row in resolved(tmp_path, {"width": "1 in"}).inputs}
    assert lines == {"W": 1, "s": 30, "o": 25, "D": 0.5}
    warm = {row.symbol: row.value for row in resolved(tmp_path, {"width": "1 in", "install_low": "50 F"}).inputs}
    assert warm["T"] == 50
    with pytest.raises(Absent) as absent:
        resolved(tmp_path, {})
    assert absent.value.path == ("joints", "J1", "width")


def test_an_input_that_no_declaration_knows_fails_where_it_is_declared() -> None:
    with pytest.raises(TypeError, match="lesat"):
        given_input("W", "width", "length", lesat=0)


def declared() -> Iterator[tuple[str, str, Declaration]]:
    """Every declaration of every calculation: its module, attribute, and what it says."""
    for group in pkgutil.walk_packages(computing.__path__, "specgen.computing."):
        module = importlib.import_module(group.name)
        for cls in vars(module).values():
            if isinstance(cls, type) and issubclass(cls, Inputs) and cls.__module__ == group.name:
                yield from ((group.name, name, one) for name, one in cls.declared.items())


ALL = list(declared())


def test_every_declared_field_is_one_of_the_schema_and_of_its_dimension() -> None:
    schema, seen = project_schema(), 0
    for module, name, one in ALL:
        if not one.field:
            continue
        seen += 1
        starred = one.field.replace("*", "gloss", 1) if one.field.startswith("*") else one.field
        field = reached(schema, tuple(starred.split("."))).field
        assert field is not None, (module, name)
        if field.kind == "quantity":
            assert one.dimension == find_dimension(field.dimension, field.unit_ip).replace("thickness", "length")
        else:
            wanted = {
                "percent": "percent",
                "number": "number",
                "integer": "number",
                "yes_no": "yes_no",
                "bearing": "angle",
            }
            assert one.dimension == wanted.get(field.kind, "word"), (module, name, field.kind)
    assert seen > 40


def test_every_declared_unit_is_of_the_dimension_and_every_limit_a_row() -> None:
    for module, name, one in ALL:
        if one.symbol and one.units[0] in UNITS:
            dimension = one.dimension or load_limits()[one.limit].value.dimension
            assert {UNITS[unit].dimension for unit in one.units} == {dimension}, (module, name)
        if one.limit:
            assert one.limit in load_limits(), (module, name)
        assert not one.computed or one.computed in computing.names()
    assert set(declaring.UNITS) >= {one.dimension for _, _, one in ALL if one.symbol} - {"number", ""}
