"""Questions about many members of one table are asked for as that table; few questions, or few members, are not."""

from pathlib import Path

import pytest

from specgen.asking.by_table import split_by_table
from specgen.documents.context import DocumentContext
from specgen.documents.views.open_items import OpenValue
from tests.documents.example import changed_small


def questions(context: DocumentContext, members: int, number: int) -> list[OpenValue]:
    """So many values that the architect owes, of so many walls in turn."""
    fields = [path[2:] for path in context.project.schema.fields if path[0] == "walls" and "*" not in path[2:]]
    paths = [f"walls.W{wall}.{'.'.join(field)}" for field in fields for wall in range(1, members + 1)]
    assert len(paths) >= number
    return [OpenValue(path, "architect", 2, "the mockup", ("SUB-09",), "", False) for path in paths[:number]]


# Common practice, no source: a table of two rows is no table, and 60 questions can still be read one by one.
@pytest.mark.parametrize(
    ("members", "number", "tables"), [(3, 61, 1), (3, 60, 0), (2, 61, 0), (2, 90, 0), (4, 61, 1), (4, 60, 0)]
)
def test_a_table_is_asked_for_from_61_questions_about_3_members(
    members: int, number: int, tables: int, tmp_path: Path
) -> None:
    context = changed_small(tmp_path, {})
    asked = questions(context, members, number)
    single, lists = split_by_table(context, asked)
    assert (len(single), len(lists)) == (0 if tables else number, tables)
    for one in lists:
        assert (one.party, one.before, one.lists) == ("architect", "the mockup", ("walls",))
        assert one.name.startswith(f"Walls (W1 to W{members}): Framing behind the substrate; Stud spacing; ")
