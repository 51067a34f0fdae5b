"""What templates are given by name: the project, the findings, the steps of its walls, tables and forms."""

from importlib import import_module
from typing import Any

from specgen.documents.calculation_pages import calculation_pages
from specgen.documents.composing import Composer, printed
from specgen.documents.context import Desk, TableView
from specgen.documents.display_values import Page, Sight
from specgen.documents.steps import steps
from specgen.documents.views.code_items import code_name
from specgen.model.absence import Absent
from specgen.model.block import (
    Blank,
    Block,
    Break,
    CheckBox,
    Inline,
    Inlines,
    Later,
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


def names(desk: Desk, composer: Composer) -> dict[str, Any]:
    """The names a template may use."""
    sight, project = desk.sight, desk.sight.project
    root = Page(sight, project.schema.root, ())
    made: dict[str, Any] = {name: getattr(root, name) for name, node in project.schema.root.children.items()}
    made |= {
        "limit": sight.limit,
        "stops": desk.judgment.of(Severity.STOP),
        "cautions": desk.judgment.of(Severity.CAUTION),
        "notes": desk.judgment.of(Severity.NOTE),
        "open_items": desk.judgment.open_items,
        "verdicts": {mark: words(verdict) for mark, verdict in desk.judgment.walls.items()},
        "steps": lambda: steps(desk, composer),
        "calculations": lambda: calculation_pages(desk),
        "code_name": code_name(desk),
        "view": Views(desk, composer),
        "table": set_table,
        "sign": lambda *parties: Signature(tuple(_party(sight, role) for role in parties)),
        "blank": lambda label, kind="text": Blank(str(label), "date" if kind == "date" else "text"),
        "check_box": lambda label: CheckBox(str(label)),
        "ref": Ref,
        "page_break": Break(),
        "to_confirm": Later(_to_confirm),
        "looked_up": lambda name, page: _looked_up(desk, name, page),
    }
    return made


class Views:
    """The table views by name: `view.joints` is made by `views/joints.py`, when a template asks for it."""

    def __init__(self, desk: Desk, composer: Composer) -> None:
        self._desk, self._composer = desk, composer

    def __getattr__(self, name: str) -> TableView:
        try:
            module = import_module(f"{__package__}.views.{name}")
        except ModuleNotFoundError:
            raise AttributeError(f"there is no table view {name!r}") from None
        made = module.rows(self._desk, self._composer)
        assert isinstance(made, TableView)
        return made


def set_table(view: TableView, caption: str = "") -> Table:
    """The table of a view."""
    rows = tuple(tuple(cell(entry) for entry in row) for row in view.rows)
    header = tuple(cell(title) for title in view.header)
    return Table(header, rows, view.widths, (Text(caption),) if caption else ())


def cell(entry: Any) -> Inlines:
    """The content of a table cell."""
    parts = entry if isinstance(entry, (list, tuple)) else (entry,)
    return tuple(part if isinstance(part, _READY) else printed(part) for part in parts if part not in ("", None))


_READY: Any = (Blank, CheckBox, Ref, *Inline.__args__)


def _party(sight: Sight, role: str) -> tuple[str, str]:
    """A role in words and, where the project names it, who holds it."""
    name = sight.project.get(("parties", role, "name"))
    title = words(role)
    return title[:1].upper() + title[1:], name or ""


def _to_confirm(values: list[Value]) -> Block:
    """Every named figure of a document that rests on practice or memory alone."""
    rows: dict[tuple[str, str], tuple[Any, ...]] = {}
    for value in values:
        if value.about and value.source is not None and value.source.kind in (Kind.PRACTICE, Kind.MEMORY):
            rows.setdefault((value.about, value.text), (value.about, value, value.source.kind.value.split(",")[0]))
    if not rows:
        return Paragraph((Text("No figure of this document rests on practice or memory alone."),))
    return set_table(TableView(("Figure", "Value", "Rests on"), tuple(rows.values()), (54, 26, 20)))


def _looked_up(desk: Desk, name: str, page: Page) -> Any:
    """The answer of a look-up for a member, or None where the project does not say enough."""
    try:
        return desk.resolve(page._path, name)
    except Absent:
        return None
