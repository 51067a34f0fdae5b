"""What the crew checks for before each step: the tools besides the usual plastering tools, each with its box."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.source_letters import GAP
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page
from specgen.model.block import CheckBox, Text
from specgen.model.evaluation import evaluate
from specgen.model.standard import Tool


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each step that needs a tool of this project, in the order of the steps."""
    project, steps = context.project, context.standards.steps
    root = Page(context, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children}
    names |= figure_functions(context)
    checks: dict[str, list[Any]] = {}
    for tool in context.standards.tools.values():
        if not tool.when or evaluate(tool.when, project):
            cell = checks.setdefault(tool.step, [])
            cell += [Text(GAP)] if cell else []
            cell += _box(composer, tool, names)
    # The order of the procedure, whose articles do not all follow the work.
    ordered = sorted(steps, key=lambda name: steps[name].article == "cleaning")
    lines = tuple((steps[name].title, checks[name]) for name in ordered if name in checks)
    return TableView(("Before", "Check"), lines, (22, 78))


def _box(composer: Composer, tool: Tool, names: dict[str, Any]) -> list[Any]:
    """A box labeled by the words a tool begins with, and the figures behind them."""
    first, *rest = composer.inlines(composer.text(tool.what, names, f"tools.yaml: {tool.name}"))
    assert isinstance(first, Text)
    return [CheckBox(first.text.rstrip()), *([Text(" "), *rest] if rest else [])]
