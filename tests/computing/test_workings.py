"""Every printed line of every calculation is the sum it says, within the rounding of its printed figures."""

import ast
import math
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import computing
from specgen.computing._asking import direct
from specgen.vocabulary.provider import Provider
from specgen.vocabulary.quantity_print import decimal
from specgen.vocabulary.working import Step, Sum, Working

# Keys for each calculation, so that every line it can print is printed at least once. Figures of our own.
SAMPLES: dict[str, list[dict[str, str]]] = {
    file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506
    for file in sorted((Path(__file__).parent / "samples").glob("*.yaml"))
}
ROWS = [(name, keys) for name, rows in SAMPLES.items() for keys in rows]
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
    "atan2": math.atan2,
}


def names_in(text: str) -> set[str]:
    return {node.id for node in ast.walk(ast.parse(text.replace("^", "**"))) if isinstance(node, ast.Name)}


def computed(text: str, known: dict[str, float]) -> float:
    return float(eval(text.replace("^", "**"), {"__builtins__": {}, **FUNCTIONS}, known))  # noqa: S307  our own text


def allowed(step: Step) -> float:
    """How far the printed figures, six digits each, may lead the sum astray: each is off by half its last digit."""
    exact = dict(step.values)
    moved = [exact | {name: figure * (1 + shift)} for name, figure in step.values for shift in (5e-6, -5e-6)]
    return sum(abs(computed(step.expression, case) - step.value) for case in moved) + 1e-9


def test_every_calculation_that_can_be_asked_for_has_a_sample() -> None:
    assert set(SAMPLES) == {name for name in computing.names() if computing.find(name).direct}


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_every_printed_line_is_the_sum_it_says(name: str, keys: dict[str, str]) -> None:
    for step in direct(computing.find(name), keys).steps:
        assert names_in(step.substitution) <= set(FUNCTIONS), step.substitution
        if "ceil" not in step.expression:
            assert computed(step.substitution, {}) == pytest.approx(step.value, abs=allowed(step)), step.substitution


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_a_line_that_rounds_up_is_the_sum_it_says_or_the_next_step(name: str, keys: dict[str, str]) -> None:
    # A figure just below a step prints as if it lay on it; a rounded line may be one step off, and no more.
    for step in (s for s in direct(computing.find(name), keys).steps if "ceil" in s.expression):
        # Where no step to round to is named, the line counts whole things.
        one = dict(step.values).get("r", 1)
        assert computed(step.substitution, {}) in (
            pytest.approx(step.value, rel=1e-5),
            pytest.approx(step.value - one, rel=1e-5),
        )


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_every_line_follows_from_what_stands_above_it(name: str, keys: dict[str, str]) -> None:
    working = direct(computing.find(name), keys)
    known = {given.symbol: given.value for given in working.given}
    for step in working.steps:
        # The face heat finds one value by trial and prints that the balance closes at it; its line names itself.
        itself = {step.symbol} if step.symbol in names_in(step.expression) else set()
        assert names_in(step.expression) - set(FUNCTIONS) - itself <= set(known), step.expression
        assert {name: value for name, value in step.values if name in known}.items() <= known.items()
        assert computed(step.expression, dict(step.values)) == pytest.approx(step.value, rel=1e-9, abs=1e-9)
        known[step.symbol] = step.value


@pytest.mark.parametrize(("name", "keys"), ROWS)
def test_the_result_is_a_line_of_the_sum_and_says_its_unit_and_source(name: str, keys: dict[str, str]) -> None:
    working, provider = direct(computing.find(name), keys), computing.find(name)
    assert isinstance(working, Working)
    assert working.name == name
    assert (working.result, working.unit) in {(step.value, step.unit) for step in working.steps}
    assert working.unit in provider.units
    assert working.source
    assert set(working.beside) <= {step.symbol for step in working.steps}
    symbols = [given.symbol for given in working.given] + [step.symbol for step in working.steps]
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
    made = Sum(())
    made.known["x"] = value
    made.step("y", "a trial", "x + 1", "")
    assert made.steps[0].substitution == shown
    assert decimal(value, 6) in shown


def test_a_function_and_a_longer_name_keep_their_letters() -> None:
    made = Sum(())
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
