"""Every printed line of every calculation is the sum it says, within the rounding of its printed figures."""

import ast
import math
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from types import CodeType
from typing import Any

import pytest
import yaml

from specgen import computing, pipeline
from specgen.computing.arguments import direct
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Step, Working
from specgen.quantities.format import format_decimal
from specgen.resolving.provider import Provider, Resolver
from tests.support import EXAMPLES

# Keys for each calculation, so that every line it can print is printed at least once. Figures of our own.
SAMPLES: dict[str, list[dict[str, str]]] = {
    file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506
    for file in sorted((Path(__file__).parent / "samples").glob("*.yaml"))
}
ROWS = [(name, keys) for name, rows in SAMPLES.items() for keys in rows]
# The unit of each result, inches and pounds first: what the trade expects of a sum. Rules of our own.
UNITS = {
    "air-demand": ("scfm", "L/s"),
    "air-pressure": ("psi", "kPa"),
    "air-supply": ("scfm", "L/s"),
    "backer-rod": ("in", "mm"),
    "board-gap": ("in", "mm"),
    "compressor-rating": ("cfm", "L/s"),
    "board-thickness": ("in", "mm"),
    "coating-quantity": ("gal", "L"),
    "colour-difference": ("", ""),
    "cup-seconds": ("s", "s"),
    "cup-to-cup": ("s", "s"),
    "cup-viscosity": ("mm2/s", "mm2/s"),
    "day-area": ("ft2", "m2"),
    "dew-point": ("F", "C"),
    "face-heat": ("F", "C"),
    "finish": ("d", "d"),
    "hose-loss": ("psi", "kPa"),
    "joint-depth": ("in", "mm"),
    "joint-width": ("in", "mm"),
    "power-line-distance": ("ft", "m"),
    "next-start": ("h", "h"),
    "peak-sun": ("W/m2", "W/m2"),
    "saturation-pressure": ("Pa", "Pa"),
    "sealant-quantity": ("gal", "L"),
    "sol-air": ("F", "C"),
    "solar-reflectance-index": ("", ""),
    "spreading-rate": ("ft2/gal", "m2/L"),
    "surface-margin": ("F apart", "C apart"),
    "surface-temperature": ("F", "C"),
    "thermal-movement": ("in", "mm"),
    "smoothing-quantity": ("gal", "L"),
    "usable-hours": ("h", "h"),
    "wall-sun": ("W/m2", "W/m2"),
    "wall-wind": ("psf", "kPa"),
    "wet-film": ("mil", "um"),
    "wind-corner-strip": ("ft", "m"),
}
FUNCTIONS: dict[str, Any] = {
    "sqrt": math.sqrt,
    "max": max,
    "min": min,
    "ceil": math.ceil,
    "floor": math.floor,
    "abs": abs,
    "exp": math.exp,
    "ln": math.log,
    "sin": math.sin,
    "cos": math.cos,
    "asin": math.asin,
    "atan2": math.atan2,
}


@lru_cache
def names_in(text: str) -> frozenset[str]:
    return frozenset(node.id for node in ast.walk(ast.parse(text.replace("^", "**"))) if isinstance(node, ast.Name))


@lru_cache
def compiled(text: str) -> CodeType:
    return compile(text.replace("^", "**"), "a printed line", "eval")


def computed(text: str, known: dict[str, float]) -> float:
    return float(eval(compiled(text), {"__builtins__": {}, **FUNCTIONS}, known))  # noqa: S307  our own text


def allowed(step: Step) -> float:
    """How far the printed figures, six digits each, may lead the sum astray: each is off by half its last digit."""
    exact = dict(step.values)
    moved = [exact | {name: figure * (1 + shift)} for name, figure in step.values for shift in (5e-6, -5e-6)]
    still = computed(step.expression, exact)
    return sum(abs(computed(step.expression, case) - still) for case in moved) + 1e-9


def test_every_calculation_that_can_be_asked_for_has_a_sample() -> None:
    assert set(SAMPLES) == {name for name in computing.names() if computing.find(name).direct}


def off_in_lines(working: Working) -> list[str]:
    """The lines whose printed figures do not give their value: none but a rounded-up one by its own step."""
    return [step.substitution for step in working.steps if not gives(step)]


def gives(step: Step) -> bool:
    if names_in(step.substitution) - set(FUNCTIONS):
        return False
    printed = computed(step.substitution, {})
    if "ceil" not in step.expression:
        return printed == pytest.approx(step.value, abs=allowed(step))
    # A figure just below a step prints as if it lay on it; a rounded line may be one step off, and no more. Where no
    # step to round to is named, the line counts whole things.
    one = dict(step.values).get("r", 1)
    return any(printed == pytest.approx(value, rel=1e-5) for value in (step.value, step.value - one))


def off_in_order(working: Working) -> list[str]:
    """The lines that take a figure from nowhere, or another figure than stands above them."""
    known, off = {given.symbol: given.value for given in working.inputs}, []
    for step in working.steps:
        # The face heat finds one value by trial and prints that the balance closes at it; its line names itself.
        itself = {step.symbol} if step.symbol in names_in(step.expression) else set()
        taken = names_in(step.expression) - set(FUNCTIONS) - itself <= set(known)
        same = {name: value for name, value in step.values if name in known}.items() <= known.items()
        closes = computed(step.expression, dict(step.values)) == pytest.approx(step.value, rel=1e-9, abs=1e-9)
        off += [] if taken and same and closes else [step.expression]
        known[step.symbol] = step.value
    return off


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_every_printed_line_is_the_sum_it_says(name: str, keys: dict[str, str]) -> None:
    working = direct(computing.find(name), keys)
    assert off_in_lines(working) == []
    assert off_in_order(working) == []


@pytest.mark.no_cover
@pytest.mark.parametrize("example", ["clean", "metric", "large", "stops", "old-wall"])
def test_every_line_of_an_example_is_the_sum_it_says(example: str) -> None:
    file = EXAMPLES / example / "project.yaml"
    workings = list(of_project(pipeline.make_resolver(pipeline.read(file))))
    assert len(workings) > 2
    assert [(w.name, line) for w in workings for line in (*off_in_lines(w), *off_in_order(w))] == []


def of_project(resolver: Resolver) -> Iterator[Working]:
    """Every working that a project gives, sums for a project alone among them."""
    for provider in map(computing.find, resolver.names):
        for path in provider.members(resolver.project) if provider.compute else ():
            try:
                made = resolver(path, provider.name)
            except (Absent, Refused):
                continue
            if isinstance(made, Working):
                yield made


def test_a_wrong_line_is_found() -> None:
    good = direct(computing.find("wet-film"), {"dft": "5 mil", "volume_solids": "65"})
    first, *rest = good.steps
    wrong = good._replace(steps=(first._replace(value=first.value * 1.0001), *rest))
    unknown = good._replace(steps=(first._replace(expression=first.expression + " + X"), *rest))
    assert off_in_lines(good) == off_in_order(good) == []
    assert off_in_lines(wrong) == [first.substitution]
    assert off_in_order(wrong) == [first.expression, rest[0].expression]
    assert off_in_lines(unknown) == [f"{first.substitution} + X"]


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_the_result_is_a_line_of_the_sum_and_says_its_unit_and_source(name: str, keys: dict[str, str]) -> None:
    working = direct(computing.find(name), keys)
    assert isinstance(working, Working)
    assert working.name == name
    assert (working.result, working.unit) in {(step.value, step.unit) for step in working.steps}
    assert working.unit in UNITS[name]
    assert working.source
    assert set(working.secondary_results) <= {step.symbol for step in working.steps}
    symbols = [given.symbol for given in working.inputs] + [step.symbol for step in working.steps]
    assert len(set(symbols)) == len(symbols)


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_every_key_that_must_be_given_is_asked_for(name: str, keys: dict[str, str]) -> None:
    provider: Provider = computing.find(name)
    assert {key.name for key in provider.keys if key.default is None} <= set(keys) <= {k.name for k in provider.keys}


# Value, its print in a substitution: six digits, a negative one in brackets.
@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (2.0, "2 + 1"),
        (-2.0, "(-2) + 1"),
        (1 / 3, "0.333333 + 1"),
        (3.6e-6, "3.6e-6 + 1"),
        (5.66961e-8, "5.66961e-8 + 1"),
        (1234567.0, "1234567 + 1"),
        (1.6e12, "1.6e12 + 1"),
        (0.1 + 0.2, "0.3 + 1"),
    ],
)
def test_a_figure_stands_in_place_of_its_symbol(value: float, shown: str) -> None:
    made = WorkingBuilder(())
    made.known["x"] = value
    made.step("y", "a trial", "x + 1", "")
    assert made.steps[0].substitution == shown
    assert format_decimal(value, 6) in shown


def test_a_function_and_a_longer_name_keep_their_letters() -> None:
    made = WorkingBuilder(())
    made.known |= {"a": 2.0, "max_a": 3.0, "a_b": 4.0}
    assert made.step("y", "a trial", "max(a, max_a) * a_b ^ 2 - 1", "") == 47
    assert made.steps[0].substitution == "max(2, 3) * 4 ^ 2 - 1"


def test_a_calculation_for_a_project_alone_is_not_asked_for_by_keys() -> None:
    for name in set(computing.names()) - set(SAMPLES):
        assert computing.find(name).keys == ()
    with pytest.raises(Exception, match="looked up for a project"):
        direct(computing.find("drainage-due"), {})


def test_an_unknown_calculation_names_those_there_are() -> None:
    with pytest.raises(computing.UnknownCalculation) as raised:
        computing.find("joint-wdith")
    assert set(raised.value.known) == set(computing.names())
    assert computing.find("joint_width") is computing.find("joint-width")
