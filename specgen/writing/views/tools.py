"""What the crew brings besides usual plastering tools."""

from ...vocabulary.condition import holds
from ..compose import Composer
from ..desk import Desk, TableView
from ..values import Page


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each tool that the work of this project needs, in the order of the steps."""
    project = desk.sight.project
    root = Page(desk.sight, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children} | {"limit": desk.sight.limit}
    tools = [tool for tool in desk.standards.tools.values() if not tool.when or holds(tool.when, project)]
    tools.sort(key=lambda tool: desk.standards.steps[tool.step].order)
    made = tuple(
        (
            composer.inlines(composer.text(tool.what, names, f"tools.yaml: {tool.name}")),
            composer.inlines(composer.text(tool.why, names, f"tools.yaml: {tool.name}")),
            desk.standards.steps[tool.step].title,
        )
        for tool in tools
    )
    return TableView(("Tool", "Why", "Step"), made, (46, 34, 20))
