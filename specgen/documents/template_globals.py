"""The names defined in every template: the project, its findings and steps, tables and form elements."""

from importlib import import_module
from typing import Any

from specgen.documents.calculation_pages import calculation_pages
from specgen.documents.composing import Composer, to_inline
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.steps import steps
from specgen.documents.template_views import Page
from specgen.documents.views.code_items import code_name
from specgen.model.absence import Absent
from specgen.model.block import (
    Blank,
    Block,
    Break,
    CheckBox,
    Deferred,
    Inline,
    Inlines,
    Paragraph,
    Ref,
    Signature,
    Table,
    Text,
    Value,
)
from specgen.model.finding import Severity
from specgen.model.source import Kind
from specgen.model.value_text import words


def template_globals(context: DocumentContext, composer: Composer) -> dict[str, Any]:
    """The names a template may use."""
    project = context.project
    root = Page(context, project.schema.root, ())
    names: dict[str, Any] = {name: getattr(root, name) for name, node in project.schema.root.children.items()}
    names |= {
        "limit": context.limit,
        "figure": context.figure,
        "computed": context.computed,
        "stops": context.judgment.of(Severity.STOP),
        "cautions": context.judgment.of(Severity.CAUTION),
        "notes": context.judgment.of(Severity.NOTE),
        "open_items": context.judgment.open_items,
        "verdicts": {mark: words(wall.verdict) for mark, wall in context.judgment.walls.items()},
        "steps": lambda: steps(context, composer),
        "calculations": lambda: calculation_pages(context),
        "code_name": code_name(context),
        "view": Views(context, composer),
        "table": set_table,
        "sign": lambda *parties: Signature(tuple(_party(context, role) for role in parties)),
        "blank": lambda label, kind="text": Blank(str(label), "date" if kind == "date" else "text"),
        "check_box": lambda label: CheckBox(str(label)),
        "ref": Ref,
        "page_break": Break(),
        "to_confirm": Deferred(_to_confirm),
        "looked_up": lambda name, page: _look_up(context, name, page),
    }
    return names


class Views:
    """The table views by name: `view.joints` is built by `views/joints.py` when a template uses it."""

    def __init__(self, context: DocumentContext, composer: Composer) -> None:
        self._context, self._composer = context, composer

    def __getattr__(self, name: str) -> TableView:
        try:
            module = import_module(f"{__package__}.views.{name}")
        except ModuleNotFoundError:
            raise AttributeError(f"there is no table view {name!r}") from None
        view = module.rows(self._context, self._composer)
        assert isinstance(view, TableView)
        return view


def set_table(view: TableView, caption: str = "") -> Table:
    """The table of a view."""
    rows = tuple(tuple(cell(entry) for entry in row) for row in view.rows)
    header = tuple(cell(title) for title in view.header)
    return Table(header, rows, view.widths, (Text(caption),) if caption else ())


def cell(entry: Any) -> Inlines:
    """The content of a table cell."""
    parts = entry if isinstance(entry, (list, tuple)) else (entry,)
    return tuple(part if isinstance(part, _READY) else to_inline(part) for part in parts if part not in ("", None))


_READY: Any = (Blank, CheckBox, Ref, *Inline.__args__)


def _party(context: DocumentContext, role: str) -> tuple[str, str]:
    """A role in words, and the name of the party or an empty text."""
    name = context.project.get(("parties", role, "name"))
    title = words(role)
    return title[:1].upper() + title[1:], name or ""


def _to_confirm(values: list[Value]) -> Block:
    """Table of the document's named values whose only source is common practice or memory."""
    rows: dict[tuple[str, str], tuple[Any, ...]] = {}
    for value in values:
        if value.about and value.source is not None and value.source.kind in (Kind.PRACTICE, Kind.MEMORY):
            rows.setdefault((value.about, value.text), (value.about, value, value.source.kind.value.split(",")[0]))
    if not rows:
        return Paragraph((Text("No figure of this document rests on practice or memory alone."),))
    return set_table(TableView(("Figure", "Value", "Rests on"), tuple(rows.values()), (54, 26, 20)))


def _look_up(context: DocumentContext, name: str, page: Page) -> Any:
    """The answer of a look-up for a member, or None if a field it needs is absent."""
    try:
        return context.resolve(page._path, name)
    except Absent:
        return None
