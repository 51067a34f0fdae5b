"""Every entry of the schema is whole and fits itself; a malformed one is told with its file and path."""

import itertools
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import computing
from specgen.model.condition import parse_condition, terms
from specgen.model.field import Collection, Field, Schema, dotted_path
from specgen.quantities.quantity import find_dimension
from specgen.quantities.units import SAME_UNITS, UNITS
from specgen.reading import schema as schema_files
from specgen.reading.entries import make_entry, shape_of
from specgen.reading.rules import convert_checked
from specgen.reading.schema import project_schema
from specgen.standards import load_standards
from specgen.standards.rows import RowError, Wrong, read_rows
from specgen.standards.shapes import Known
from tests.standards.breaking import told_of

SCHEMA = project_schema()
FIELDS = list(SCHEMA.fields.values())
COLLECTIONS = list(SCHEMA.collections.values())
RINGS = {"verdict", "mockup", "work", "closeout", "optional"}
HOMES = {"project", "firm", "coating_system", "record"}
OWNERS = {
    "applicator",
    "architect",
    "eifs_source",
    "wrb_source",
    "engineer",
    "finish_source",
    "general_contractor",
    "inspector",
    "owner",
    "sealant_source",
}


def of_field(made: Field | Collection) -> str:
    return dotted_path(made.path)


@pytest.mark.parametrize("made", FIELDS, ids=of_field)
def test_a_field_says_what_it_is_for_whom_and_why(made: Field) -> None:
    assert made.label and made.label[0].isupper() and not made.label.endswith(".")
    assert made.why and not made.why.endswith(".")
    assert made.ring in RINGS
    assert made.home in HOMES
    assert made.owed_by in OWNERS
    assert made.example


@pytest.mark.parametrize("made", COLLECTIONS, ids=of_field)
def test_a_collection_has_a_name_and_a_word_for_one_member(made: Collection) -> None:
    assert made.label and made.one and made.label[0].isupper()
    assert made.kind in {"mapping", "items"}
    assert made.path[-1] == "*"


def examples(made: Field) -> list[str]:
    """The example of a field, each entry of it for a list."""
    if made.kind != "list":
        return [made.example]
    entries = yaml.load(made.example, Loader=yaml.BaseLoader)
    assert isinstance(entries, list)
    return entries


@pytest.mark.parametrize("made", FIELDS, ids=of_field)
def test_an_example_fits_its_own_field(made: Field) -> None:
    assert all(convert_checked(made, text) is not None for text in examples(made))


@pytest.mark.parametrize("made", [m for m in FIELDS if m.default], ids=of_field)
def test_a_default_fits_its_own_field_and_says_when_it_holds(made: Field) -> None:
    assert convert_checked(made, made.default) is not None
    assert not made.derived
    assert not made.optional


@pytest.mark.parametrize("made", [m for m in FIELDS if m.least or m.most], ids=of_field)
def test_a_field_has_its_least_below_its_most(made: Field) -> None:
    if made.kind == "bearing":
        assert (made.least, made.most) == ("0 deg", "360 deg")
        return
    least, most = (convert_checked(made, bound) for bound in (made.least or made.most, made.most or made.least))
    assert least <= most
    assert not made.least or not made.most or least < most or made.path == ("format",)


@pytest.mark.parametrize("made", [m for m in FIELDS if "quantity" in (m.kind, m.of)], ids=of_field)
def test_a_quantity_has_a_unit_of_its_dimension_in_both_systems(made: Field) -> None:
    dimension = find_dimension(made.dimension, made.unit_ip)
    assert {UNITS[made.unit_ip].dimension, UNITS[made.unit_si].dimension} == {dimension}
    # Where the trade has one unit for both, it stands in both places.
    assert made.unit_ip == made.unit_si or (UNITS[made.unit_ip].system, UNITS[made.unit_si].system) == ("ip", "si")
    assert not made.dimension or made.dimension in {*SAME_UNITS, *(unit.dimension for unit in UNITS.values())}


@pytest.mark.parametrize("made", [m for m in FIELDS if "choice" in (m.kind, m.of)], ids=of_field)
def test_a_choice_has_choices_that_differ(made: Field) -> None:
    assert len(made.values) > 1
    assert len(set(made.values)) == len(made.values)
    assert all(value.strip() == value and value for value in made.values)


@pytest.mark.parametrize("made", [m for m in FIELDS if m.to or "reference" in (m.kind, m.of)], ids=of_field)
def test_a_reference_leads_to_named_things_that_there_are(made: Field) -> None:
    assert "reference" in (made.kind, made.of)
    assert SCHEMA.collections[made.to, "*"].kind == "mapping"


def test_a_list_says_of_what_and_nothing_else_does() -> None:
    assert [dotted_path(m.path) for m in FIELDS if (m.kind == "list") != bool(m.of)] == []


def test_a_default_for_some_only_is_a_default() -> None:
    assert [dotted_path(made.path) for made in FIELDS if made.default_if and not made.default] == []


def test_every_star_of_a_path_stands_for_members() -> None:
    for made in FIELDS:
        for depth, name in enumerate(made.path):
            if name == "*":
                assert made.path[: depth + 1] in SCHEMA.collections, dotted_path(made.path)


def test_the_names_in_a_path_are_plain_words() -> None:
    for made in (*FIELDS, *COLLECTIONS):
        assert all(re.fullmatch(r"[a-z][a-z0-9_]*|\*", name) for name in made.path), dotted_path(made.path)


def test_a_path_leads_to_its_field_by_stars_and_by_marks() -> None:
    for made in FIELDS:
        path = made.path
        if (path[0], "*") in SCHEMA.collections and path[1] != "*":  # lists of records leave their star out
            path = (path[0], "*", *path[1:])
        assert SCHEMA.node(path).field is made
        assert SCHEMA.field_at(tuple("W1" if name == "*" else name for name in path)) is made
    assert SCHEMA.field_at(("walls",)) is None
    assert SCHEMA.field_at(("no", "such", "path")) is None
    with pytest.raises(KeyError):
        SCHEMA.node(("walls", "W1", "colour"))


def test_every_section_stands_in_one_file_of_the_schema() -> None:
    homes: dict[str, set[str]] = {}
    for file in sorted(schema_files.FOLDER.glob("*.yaml")):
        for name in yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader):
            homes.setdefault(name.partition(".")[0], set()).add(file.name)
    assert {section: files for section, files in homes.items() if len(files) > 1} == {}


# Every key an entry may have, with a word that is right for it; the table below changes one.
ENTRY = {"label": "Trial", "kind": "number", "ring": "work", "owed_by": "owner", "why": "a reason", "example": "3"}
ENTRY |= {"least": "0", "most": "9"}


def loaded(folder: Path, text: Any) -> Schema:
    (folder / "trial.yaml").write_text(text if isinstance(text, str) else yaml.safe_dump(text), "utf-8")
    return schema_files.read_schema(folder, load_standards())


def test_a_condition_asks_only_for_calculations_that_there_are() -> None:
    conditions = {made.condition for made in FIELDS} | {made.default_if for made in FIELDS}
    rows = load_standards()
    conditions |= {
        row.when
        for group in (rows.steps, rows.field_tests, rows.criteria, rows.tools, rows.references)
        for row in group.values()
    }
    conditions |= {s.when for step in rows.steps.values() for s in (*step.waits, *step.sentences, *step.cautions)}
    asked = {
        term.path[1] for text in conditions - {""} for term in terms(parse_condition(text)) if term.path[0] == "calc"
    }
    assert asked
    assert asked <= {name.replace("-", "_") for name in computing.names()}


BREAKS = yaml.load((Path(__file__).parent / "breaks.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)


@pytest.mark.parametrize("case", BREAKS, ids=[f"{case['file']}: {case['told'][:60]}" for case in BREAKS])
def test_a_slip_is_told_with_file_line_and_path(case: dict[str, str], tmp_path: Path) -> None:
    told, line = told_of(tmp_path, case["file"], case["before"], case["after"])
    assert told == f"{case['file']}:{line}: {case['told']}"


@pytest.mark.no_cover
def test_whatever_stands_in_an_entry_it_is_made_or_told() -> None:
    known, refused = Known({"steps": {}, "criteria": {}}, {}), 0
    entries = [pair for file in schema_files.FOLDER.glob("*.yaml") for pair in read_rows(file).items()]
    for name, entry in entries:
        for key, value in itertools.product((*entry, "more"), ("", "x", ["x", "x"], {}, "1/0 in", "@x", "list")):
            changed = {**entry, key: value}
            try:
                make_entry(tuple(name.split(".")), shape_of(changed, known).convert(changed, known))
            except Wrong:
                refused += 1
    assert refused > len(entries)


def test_an_entry_becomes_the_field_it_says(tmp_path: Path) -> None:
    entry = ENTRY | {"if": "trial.other is given", "optional": "yes"}
    made = loaded(tmp_path, {"trial.figure": entry, "trial.other": ENTRY})
    figure = made.fields["trial", "figure"]
    assert (figure.label, figure.kind, figure.ring, figure.condition) == (
        "Trial",
        "number",
        "work",
        "trial.other is given",
    )
    assert figure.optional is True
    assert made.root.children["trial"].children["figure"].field is figure


def test_a_named_list_of_choices_is_filled_in(tmp_path: Path) -> None:
    choice = {k: v for k, v in ENTRY.items() if k not in ("least", "most")} | {
        "kind": "choice",
        "values": "@steps",
        "also": ["other"],
    }
    made = loaded(tmp_path, {"trial.step": choice})
    assert made.fields["trial", "step"].values == (*load_standards().steps, "other")


def test_a_path_that_stands_twice_is_refused(tmp_path: Path) -> None:
    (tmp_path / "again.yaml").write_text(yaml.safe_dump({"trial.figure": ENTRY}), "utf-8")
    with pytest.raises(RowError, match=r"^trial.yaml:1: trial.figure: this stands also in again.yaml, as trial.figure"):
        loaded(tmp_path, {"trial.figure": ENTRY})


def keys(node: Any) -> Iterator[str]:
    for key, _ in node.value:
        yield key.value


@pytest.mark.parametrize("file", sorted(schema_files.FOLDER.glob("*.yaml")), ids=lambda f: f.name)
def test_no_entry_stands_twice_in_one_file(file: Path) -> None:
    # A second entry of one path would take the place of the first without a word.
    names = list(keys(yaml.compose(file.read_text("utf-8"), Loader=yaml.SafeLoader)))
    assert [name for name in names if names.count(name) > 1] == []


# The whole file is asked for by what is in it.
APART = {"coating_system"}


def test_what_is_asked_without_a_question_begins_with_the_name_of_the_field() -> None:
    for field in FIELDS:
        if field.asks and "?" not in field.asks and dotted_path(field.path) not in APART:
            asked, label = re.split(r"[:,]", field.asks)[0].casefold(), field.label.casefold()
            assert label.startswith(asked) or asked.startswith(label), (dotted_path(field.path), field.asks)
