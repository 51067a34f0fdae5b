"""Whose figure counts, and whose it is called: the file it stands in decides, never its value. Rules of ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen import standards
from specgen.model.source import Kind, Source
from specgen.resolving.find_limit import find_limit
from specgen.resolving.limits_in_force import limit_in_force, plan_source
from specgen.standards import find_source, load_limits, load_standards
from specgen.standards.rows import RowError
from tests.documents.support import context_of
from tests.support import case_of

PAPER = {"gloss": {"instructions": "T1"}, "attachments": {"T1": {"title": "Their instructions"}}}
DRY = ("gloss", "dry_hours")
THEIRS = "Their instructions (T1)"


def source_of_plan(folder: Path, own: Any, theirs: Any) -> Source:
    """The source of the drying of the gloss where the project plans `own` and its coating source asks for `theirs`."""
    coating = PAPER | {"gloss": PAPER["gloss"] | ({"dry_hours": theirs} if theirs else {})}
    change = {"coating": coating} | ({"gloss": {"dry_hours": own}} if own else {})
    project = case_of(folder, change).project
    return plan_source(project, DRY, project.schema.fields[DRY], load_standards())


@pytest.mark.parametrize(
    ("own", "theirs", "kind"),
    [
        (36, 36, Kind.PROJECT),  # equal figures: the plan is the project's own all the same
        (None, 36, Kind.MAKER),
        (48, 36, Kind.PROJECT),
        (36, None, Kind.PROJECT),
        (None, None, Kind.PRACTICE),
    ],
)
def test_a_figure_is_credited_to_the_file_it_stands_in(own: Any, theirs: Any, kind: Kind, tmp_path: Path) -> None:
    source = source_of_plan(tmp_path, own, theirs)
    assert source.kind is kind
    assert (source.reference == THEIRS) is (kind is Kind.MAKER)


def test_a_document_marks_the_makers_figure_and_not_an_equal_one_of_the_project(tmp_path: Path) -> None:
    coating = PAPER | {"gloss": PAPER["gloss"] | {"dry_hours": 36}}
    folders = [tmp_path / "own", tmp_path / "theirs"]
    for folder in folders:
        folder.mkdir()
    own = context_of(folders[0], {"coating": coating, "gloss": {"dry_hours": 36}}).display(DRY)
    theirs = context_of(folders[1], {"coating": coating}).display(DRY)
    assert own.text == theirs.text == "36 h"
    assert own.source is None
    assert theirs.source is not None and theirs.source.reference == THEIRS


def test_a_limit_without_a_project_reads_the_limits_alone_and_that_of_a_project_no_limits_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A sum by hand is not to wait for all the rows of the trade, and a project has them read already.
    project = case_of(tmp_path).project
    with monkeypatch.context() as alone:
        alone.setattr(standards, "load_standards", refuse_to_read)
        assert find_limit("gloss.dry").value == 24
    with monkeypatch.context() as within:
        within.setattr(standards, "load_limits", refuse_to_read)
        assert find_limit("gloss.dry", project).value == 24


def refuse_to_read() -> None:
    raise AssertionError("rows are read that nobody needs")


def test_a_limit_is_that_of_the_maker_within_a_project_and_the_row_without(tmp_path: Path) -> None:
    coating = PAPER | {"gloss": PAPER["gloss"] | {"dry_hours": 36}}
    project = case_of(tmp_path, {"coating": coating}).project
    row = load_limits()["gloss.dry"]
    assert find_limit("gloss.dry") == (row.value, row.source) == (24, Source(Kind.PRACTICE))
    assert find_limit("gloss.dry", project) == limit_in_force(project, row) == (36, Source(Kind.MAKER, THEIRS))


def test_a_name_that_no_row_has_is_told_with_the_nearest_one() -> None:
    with pytest.raises(RowError, match=r"^limits\.yaml:1: no row is named 'gloss\.dyr': did you mean gloss\.dry\?$"):
        find_limit("gloss.dyr")
    with pytest.raises(RowError, match=r"^sources\.yaml:1: no row is named 'memroy': did you mean memory\?$"):
        find_source("memroy")
