"""What is advised for a value in another form is what was meant, and is taken when it is written."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.field import Field
from specgen.model.problem import Refused
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import InvalidValue
from specgen.reading.positions import read_text
from specgen.reading.rules import convert_checked
from specgen.reading.schema import project_schema
from specgen.reading.shape_hints import show_list


def field(path: str) -> Field:
    return project_schema().fields[tuple(path.split("."))]


def advise(path: str, text: str) -> str:
    with pytest.raises(InvalidValue) as raised:
        convert_checked(field(path), text)
    return raised.value.hint


@pytest.mark.parametrize(
    ("text", "advised"),
    [
        ("3/4/2027", ["2027-03-04", "2027-04-03"]),
        ("3/4/27", ["2027-03-04", "2027-04-03"]),
        ("04.03.2027", ["2027-04-03", "2027-03-04"]),
        ("3/14/2027", ["2027-03-14"]),
        ("14/3/2027", ["2027-03-14"]),
        ("4/4/2027", ["2027-04-04"]),
        ("March 4, 2027", ["2027-03-04"]),
        ("Thursday, March 4, 2027", ["2027-03-04"]),
        ("4 march 2027", ["2027-03-04"]),
        ("March 4th, 2027", ["2027-03-04"]),
        ("4-Mar-27", ["2027-03-04"]),
        ("2027-3-4", ["2027-03-04"]),
        ("2027/03/04", ["2027-03-04"]),
        ("20270304", ["2027-03-04"]),
    ],
)
def test_a_date_in_another_form_is_told_in_the_right_one(text: str, advised: list[str]) -> None:
    assert advise("package.date", text) == f"write {' or '.join(advised)}"
    assert [str(convert_checked(field("package.date"), date)) for date in advised] == advised


@pytest.mark.parametrize("text", ["2/30/2027", "2027-13-04", "March 2027", "next week", "Foo 4, 2027", "3-4/2027"])
def test_no_date_is_made_of_what_is_none(text: str) -> None:
    assert advise("package.date", text) == "write year-month-day, such as 2027-03-01"


@pytest.mark.parametrize(
    ("text", "advised", "inches"),
    [
        ("31'-6", "31'-6\"", "378"),
        ("31'6", "31'-6\"", "378"),
        ("31-6", "31'-6\"", "378"),
        ("31-6 1/2", "31'-6 1/2\"", "378.5"),
        ("31' - 6", "31' or 6'", None),
    ],
)
def test_feet_and_inches_without_their_signs(text: str, advised: str, inches: str | None) -> None:
    assert advise("building.eifs_top", text) == f"write {advised}"
    assert inches is None or convert_checked(field("building.eifs_top"), advised) == Quantity.of(inches, "in")


def test_two_numbers_may_be_a_range_of_feet() -> None:
    assert advise("building.eifs_top", "5-10") == "write 5'-10\" or 5 ft or 10 ft"


def test_no_feet_are_offered_where_a_thickness_is_measured() -> None:
    assert "'" not in advise("walls.*.insulation.thickness", "3-4")


@pytest.mark.parametrize("text", ["IBC 2021", "IBC-2021", "2021 IBC"])
def test_the_year_of_a_code(text: str) -> None:
    assert advise("code.edition", text).startswith("write 2021, ")


def test_none_of_a_rate_is_none() -> None:
    assert convert_checked(field("compressor.engine_derate"), "0").amount == 0
    assert advise("site.wind_speed", "0") == "write 0 mph or 0 m/s"


@pytest.mark.parametrize(
    ("path", "text", "choice"),
    [
        ("sealants.*.c920_class", "+/-50", "50"),
        ("sealants.*.c920_class", "±25%", "25"),
        ("sealants.*.c920_class", "+100/-50", "100/50"),
        ("walls.*.insulation.kind", "EPS board", "eps"),
    ],
)
def test_a_choice_as_the_trade_writes_it(path: str, text: str, choice: str) -> None:
    assert convert_checked(field(path), text) == choice


@pytest.mark.parametrize(
    ("text", "told"), [("EPS - Type I", "did you mean eps?"), ("polystyrene", "write one of these")]
)
def test_a_board_with_its_type_or_of_two_kinds(text: str, told: str) -> None:
    assert advise("walls.*.insulation.kind", text).startswith(told)


@pytest.mark.parametrize(
    ("text", "first", "size"),
    [
        ("all", "full_panel", 11),
        ("opening, sealant joint", "opening", 2),
        ("outside corner and opening", "outside_corner", 2),
    ],
)
def test_a_list_in_words_is_told_as_one(text: str, first: str, size: int) -> None:
    written = show_list(field("mockup.includes"), text).removeprefix("write [").removesuffix("]").split(", ")
    assert (written[0], len(written)) == (first, size)
    taken: list[Any] = [convert_checked(field("mockup.includes"), entry) for entry in written]
    assert taken == written


def test_a_list_of_nothing_that_is_known_is_not_advised() -> None:
    told = show_list(field("mockup.includes"), "the usual")
    assert "[the usual]" not in told
    assert "known: full_panel, joint_crossing" in told


@pytest.mark.parametrize("text", ["code:\n  edition: ?\n", "code: {edition: ?, authority: here}\n"])
def test_a_question_mark_alone_is_not_known_yet(tmp_path: Path, text: str) -> None:
    (tmp_path / "a.yaml").write_text(text, "utf-8")
    with pytest.raises(Refused) as raised:
        read_text(tmp_path / "a.yaml", "a.yaml")
    told = raised.value.problems[0]
    assert (told.message, told.line) == ("a ? alone is not a value", text.count("\n", 0, text.index("?")) + 1)
    assert told.hint.startswith("write tbd")
