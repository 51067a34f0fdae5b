"""Every open item of the examples reaches the party that owes it, and its sheets can be read."""

from pathlib import Path

import pytest

from specgen.asking.files import make_question_files
from specgen.asking.questions import gather_sheets
from specgen.asking.recipients import list_apart
from specgen.commands._stages import check_for
from specgen.model.field import Field
from specgen.model.finding import OpenItem
from tests.documents.example import context_of_case
from tests.formats.docx.validator import findings
from tests.formats.sheets import read_back
from tests.support import EXAMPLES

# `clean` lacks nothing; what `large` lacks is asked by tables.
NAMES = sorted(
    file.parent.name for file in EXAMPLES.glob("*/project.yaml") if file.parent.name not in ("clean", "large")
)
# Signed behind the review of the package.
APART = "package.contractor_review."


def is_answered(item: OpenItem, field: Field | None) -> bool:
    """Whether one cell can answer an item: it is no list, no signature, no file, and no mark of something."""
    told = field is not None and not field.to and "file" not in (field.kind, field.of)
    return told and not item.path.startswith(APART)


@pytest.mark.parametrize("stage", ["verdict", "mockup", "work", "closeout"])
@pytest.mark.parametrize("name", NAMES)
def test_every_open_item_is_asked_of_the_party_that_owes_it(name: str, stage: str) -> None:
    case, _ = check_for(EXAMPLES / name / "project.yaml", stage)
    sheets = gather_sheets(context_of_case(case), stage).sheets
    asked = [(one.field, sheet.role) for sheet in sheets for one in sheet.questions]
    assert len(asked) == len(set(asked))
    schema = case.project.schema
    items = {
        # In place of an age, which is soon another one, the day of completion is asked.
        (item.path.replace(".age_days", ".completed_on"), item.owed_by)
        for item in case.judgment.open_items
        if is_answered(item, schema.field_at(tuple(item.path.split("."))))
    }
    assert items - set(asked) == set()


def test_the_sheets_of_an_example_are_valid_and_hold_all_that_is_asked(tmp_path: Path) -> None:
    case, stage = check_for(EXAMPLES / "stops" / "project.yaml", "mockup")
    context = context_of_case(case)
    sheets = gather_sheets(context, stage).sheets
    files = make_question_files(context, list_apart(sheets), ("docx", "xlsx"))
    assert {"guns", "hoses"} <= set(read_back(files["applicator.xlsx"]).sheetnames)
    assert len(files) == 2 * len(sheets)
    for name, content in files.items():
        (tmp_path / name).write_bytes(content)
        assert findings(tmp_path / name) == [], name
    for sheet in sheets:
        page = read_back(files[f"{sheet.title.lower().replace(' ', '-')}.xlsx"])["Questions"]
        paths = [page.cell(row, 10).value for row in range(4, page.max_row + 1)]
        assert [path for path in paths if path] == [one.field for one in sheet.questions]
