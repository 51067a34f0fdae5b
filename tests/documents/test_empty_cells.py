"""What stands in cells without a value. Expectations are ours."""

from specgen.documents.empty_cells import fill_cells
from specgen.model.block import Blank, Inlines, Table, Text


def table(*rows: str, head: str = "Name|Figure|By") -> Table:
    def cells(row: str) -> tuple[Inlines, ...]:
        return tuple((Blank("Date"),) if word == "_" else (Text(word),) if word else () for word in row.split("|"))

    width = 100 // (head.count("|") + 1)
    return Table(cells(head), tuple(map(cells, rows)), (width,) * (head.count("|") + 1))


def said(table: Table) -> list[str]:
    return ["|".join("".join(getattr(part, "text", "_") for part in cell) for cell in row) for row in table.rows]


def test_a_cell_that_says_nothing_has_a_dash() -> None:
    assert said(fill_cells(table("E1|5 ft|", "E2||owner", "E3|4 ft|owner"))) == [
        "E1|5 ft|–",
        "E2|–|owner",
        "E3|4 ft|owner",
    ]


def test_a_sum_stands_alone_below_its_columns() -> None:
    assert said(fill_cells(table("E1||5 sq ft", "All||9 sq ft"))) == ["E1|–|5 sq ft", "All||9 sq ft"]


def test_pairs_beside_each_other_may_end_with_one() -> None:
    pairs = table("D|1 in|T|2 in", "K|3||", head="Given|Value|Given|Value")
    assert said(fill_cells(pairs)) == ["D|1 in|T|2 in", "K|3||"]


def test_a_form_keeps_its_empty_cells() -> None:
    assert said(fill_cells(table("Owner||_"))) == ["Owner||_"]


def test_a_name_is_said_again_in_a_long_group() -> None:
    rows = said(fill_cells(table("C920|1|a", *["|1|a"] * 19, "C1193|2|b", "|2|b")))
    names = [row.split("|")[0] for row in rows]
    assert names == ["C920", *[""] * 17, "C920 (continued)", "", "C1193", ""]
