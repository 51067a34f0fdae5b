"""What may stand in a section, held against Cerberus as its makers ship it; and two readings at one time."""

import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from cerberus import Validator

from specgen import pipeline
from specgen.model.field import Node, dotted_path
from specgen.model.problem import Refused
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.positions import MOST_PROBLEMS
from specgen.reading.rules import REQUIRED, Rules, SectionRules, convert_checked, rule_of
from specgen.reading.schema import project_schema
from tests.support import SMALL, merged, written

SCHEMA = project_schema()
FIELDS = SCHEMA.fields


def sections(node: Node) -> Iterator[Node]:
    """The head of a file, and the members of every collection that holds more than single values."""
    if not node.path or (node.path[-1] == "*" and node.field is None):
        yield node
    for child in [*node.children.values(), *([node.star] if node.star else [])]:
        yield from sections(child)


SECTIONS = [pytest.param(section, id=dotted_path(section.path) or "head") for section in sections(SCHEMA.root)]


def rules_of(section: Node) -> dict[Any, dict[str, Any]]:
    """All rules of a section at once, for a validator that holds them against the rules of Cerberus itself."""
    rules = {place: rule_of(field) for place, field in SectionRules(section).fields.items()}
    return rules | {place: rules[place] | {"required": True} for place in REQUIRED.get(section.path, ())}


def test_every_field_stands_in_the_rules_of_one_section() -> None:
    places = [place for section in sections(SCHEMA.root) for place in SectionRules(section).fields.values()]
    assert {field.path for field in places} == set(FIELDS)
    # The rate of a crew stands once for each step that a crew may work at.
    assert {dotted_path(f.path) for f in places if places.count(f) > 1} == {"crews.*.rates.*"}


def test_a_mapping_of_single_values_says_which_marks_it_may_have() -> None:
    for path, collection in SCHEMA.collections.items():
        assert SCHEMA.node(path).field is None or collection.keys, dotted_path(path)


@pytest.mark.parametrize("section", SECTIONS)
def test_the_rules_are_rules_of_cerberus_and_say_what_its_own_validator_says(section: Node) -> None:
    whole, ours = Validator(rules_of(section)), SectionRules(section)
    bad: dict[Any, Any] = {("no such name",): "1", ("nor", "this"): {}}
    good: dict[Any, Any] = {}
    for place, field in ours.fields.items():
        if "choice" in (field.kind, field.of):
            good[place], bad[place] = field.values[-1], "no such choice"
        elif field.kind != "bearing" and (field.least or field.most):
            good[place] = convert(field, field.least or field.most)
            most = convert(field, field.most)
            bad[place] = most + timedelta(days=1) if field.kind == "date" else 2 * most
    for values in (good, bad, {}, good):
        whole.validate(values, update=True, normalize=False)
        theirs = [(error.document_path[0], error.code) for error in whole._errors]
        assert sorted((place, error.code) for place, error in ours.faults(values)) == sorted(theirs)
    assert not ours.faults(good)
    assert {("no such name",), ("nor", "this")} <= {place for place, _ in ours.faults(bad)}


@pytest.mark.parametrize("section", [s for s in sections(SCHEMA.root) if s.path in REQUIRED], ids=lambda s: str(s.path))
def test_what_must_be_given_is_missed_as_cerberus_misses_it(section: Node) -> None:
    whole, ours = Validator(rules_of(section)), SectionRules(section)
    for values in ({}, {place: example(ours, place) for place in ours.required[:1]}):
        whole.validate(values, normalize=False)
        assert set(ours.missing(values)) == {error.document_path[0] for error in whole._errors}
        assert len(ours.missing(values)) == len(ours.required) - len(values)
    assert ours.missing({place: example(ours, place) for place in ours.required}) == []


def example(rules: SectionRules, place: Any) -> Any:
    return convert(rules.fields[place], rules.fields[place].example)


@pytest.mark.parametrize("more", [{}, {"coats": "2"}], ids=["nothing known", "one known"])
@pytest.mark.no_cover
def test_unknown_keys_without_end_are_told_up_to_a_bound(more: dict[str, str], tmp_path: Path) -> None:
    # The trees that Cerberus sorts anew at each error would take most of an hour here.
    change = {"gloss": {f"k{number}": "1" for number in range(50_000)} | more}
    with pytest.raises(Refused) as raised:
        pipeline.check(written(tmp_path, merged(SMALL, change)))
    assert len(raised.value.problems) == MOST_PROBLEMS + 1
    assert "'k0' is not known here" in raised.value.problems[0].message


@pytest.fixture
def hasty() -> Iterator[None]:
    """Threads change places as often as they can."""
    usual = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    yield
    sys.setswitchinterval(usual)


@pytest.mark.usefixtures("hasty")
def test_values_are_converted_and_refused_in_two_threads_as_in_one() -> None:
    def told(path: str, text: str) -> list[Any]:
        field, answers = FIELDS[tuple(path.split("."))], []
        for _ in range(2_000):
            try:
                answers.append(convert_checked(field, text))
            except InvalidValue as invalid:
                answers.append(invalid.message)
        return answers

    with ThreadPoolExecutor(2) as pool:
        low, high = (pool.submit(told, *row) for row in (("gloss.coats", "9"), ("building.stories", "9")))
    assert set(low.result()) == {"9 is above 6, outside the range of this field"}
    assert set(high.result()) == {9}


@pytest.mark.usefixtures("hasty")
def test_two_files_are_read_in_two_threads_as_in_one(tmp_path: Path) -> None:
    good = written(tmp_path, merged(SMALL, {"building": {"stories": "9"}, "gloss": {"coats": "6"}}), "good.yaml")
    bad = written(tmp_path, merged(SMALL, {"building": {"stories": "6"}, "gloss": {"coats": "9"}}), "bad.yaml")

    def read(file: Path) -> set[str]:
        told = set()
        for _ in range(60):
            try:
                told.add(str(pipeline.read(file).value(("gloss", "coats"))))
            except Refused as refused:
                told |= {problem.message for problem in refused.problems}
        return told

    with ThreadPoolExecutor(2) as pool:
        first, second = pool.submit(read, good), pool.submit(read, bad)
    assert first.result() == {"6"}
    assert second.result() == {"9 is above 6, outside the range of this field"}


def test_a_reading_makes_the_rules_of_a_section_once() -> None:
    rules, wall = Rules(), SCHEMA.node(("walls", "W1"))
    assert rules.of(wall) is rules.of(SCHEMA.node(("walls", "W2")))
    assert rules.of(wall) is not Rules().of(wall)


# Exact by definition: 300 psf is 14.364 kPa, 14,000 ft is 4267.2 m, 135 F is 57.22 C.
@pytest.mark.parametrize(
    ("path", "text", "message", "hint"),
    [
        ("elevations.*.design_pressure_outward", "60 kPa", "60 kPa is above 14.4 kPa", "0.05 kPa to 14.4 kPa"),
        ("elevations.*.design_pressure_outward", "600 psf", "600 psf is above 300 psf", "1 psf to 300 psf"),
        ("site.altitude", "9000 m", "9000 m is above 4267 m", "-91.4 m to 4267 m"),
        ("climate.hot_air", "90 C", "90 C is above 57.2 °C", "-62.2 °C to 57.2 °C"),
        ("gloss.coats", "9", "9 is above 6", "0 to 6"),
        ("walls.*.insulation.r_value", "R-0.1", "R-0.1 is below R-0.5", "R-0.5 to R-80"),
    ],
)
def test_a_range_is_told_in_the_unit_of_the_value(path: str, text: str, message: str, hint: str) -> None:
    with pytest.raises(InvalidValue) as caught:
        convert_checked(FIELDS[tuple(path.split("."))], text)
    assert (caught.value.message, caught.value.hint) == (f"{message}, outside the range of this field", hint)


@pytest.mark.parametrize(("text", "hint"), [("one", "write 1"), ("½", "write 50% or ½%")])
def test_a_percentage_in_words_is_offered_in_figures_from_one_on(text: str, hint: str) -> None:
    with pytest.raises(InvalidValue) as caught:
        convert_checked(FIELDS["climate", "months", "*", "mean_humidity"], text)
    assert caught.value.hint == hint
