"""The clean example with a change laid over it, as text of one document."""

from pathlib import Path
from typing import Any

import yaml

from specgen import building, pipeline
from specgen.documents.catalogue import templates
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.formats import text
from tests.support import EXAMPLES, SMALL, case_of, merged, written

FOLDER = EXAMPLES / "clean"


def changed_clean(folder: Path, change: Any) -> DocumentContext:
    """The context of the clean example with a change."""
    for file in FOLDER.glob("*.yaml"):
        (folder / file.name).write_text(file.read_text("utf-8"), "utf-8")
    data = merged(yaml.safe_load((FOLDER / "project.yaml").read_text("utf-8")), change)
    return context_of_case(case_of(folder, base=_as_written(data)))


def changed_small(folder: Path, change: Any) -> DocumentContext:
    """The context of the small project with a change."""
    return context_of_case(case_of(folder, change, SMALL))


def drafted(folder: Path, change: Any = None, only: tuple[str, ...] = ()) -> dict[str, str]:
    """The text of each document of a draft of the small project, by its number."""
    building.build(written(folder, merged(SMALL, change or {})), folder / "out", ("txt", "csv"), only, draft=True)
    return {file.name[:3]: file.read_text("utf-8") for file in (folder / "out").glob("*.txt")}


def context_of_case(case: pipeline.JudgedProject) -> DocumentContext:
    """What documents of a judged project are composed from."""
    return DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)


def page_of(context: DocumentContext, name: str) -> str:
    """A document as plain text."""
    return text.write_text(compose_document(next(t for t in templates() if t.id == name), context, False))


def rows_below(page: str, heading: str) -> list[list[str]]:
    """The cells of the first table below a heading, its head first."""
    lines = page.partition(f"\n{heading}\n")[2].split("\n\n")[0].splitlines()
    return [line.split(" | ") for line in lines if " | " in line]


def _as_written(value: Any) -> Any:
    """Plain data as a project file has it: yes and no as words."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return {key: _as_written(one) for key, one in value.items()}
    return [_as_written(one) for one in value] if isinstance(value, list) else value
