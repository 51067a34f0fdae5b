"""What the crew brings besides usual plastering tools."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page
from specgen.model.block import Text
from specgen.model.evaluation import evaluate


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each tool that the work of this project needs, in the order of the steps."""
    project = context.project
    root = Page(context, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children}
    names |= figure_functions(context)
    tools = [tool for tool in context.standards.tools.values() if not tool.when or evaluate(tool.when, project)]
    steps = list(context.standards.steps)
    tools.sort(key=lambda tool: steps.index(tool.step))
    lines = tuple(
        (
            (*composer.inlines(composer.text(tool.what, names, f"tools.yaml: {tool.name}")), *_own(context, tool.name)),
            composer.inlines(composer.text(tool.why, names, f"tools.yaml: {tool.name}")),
            context.standards.steps[tool.step].title,
        )
        for tool in tools
    )
    return TableView(("Tool", "Why", "Step"), lines, (46, 34, 20))


# Tools that may be on the firm's own lists, and the kinds they have there.
_KINDS = {
    "viscosity_cup": ("zahn_4_cup", "iso_cup"),
    "color_instrument": ("color_meter",),
    "film_gauge": ("film_gauge",),
    "gloss_meter": ("gloss_meter",),
    "moisture_meter": ("moisture_meter",),
    "surface_thermometer": ("surface_thermometer",),
    "wind_meter": ("wind_meter",),
    "air_thermometer": ("air_thermometer",),
    "long_straightedge": ("long_straightedge",),
    "short_straightedge": ("short_straightedge",),
    "profile_gauge": ("profile_gauge",),
    "step_gauge": ("step_gauge",),
    "wet_film_comb": ("wet_film_comb",),
    "raking_lamp": ("raking_lamp",),
    "pull_tester": ("pull_tester",),
    "measuring_jug": ("measuring_jug",),
}
_USES = {"air_hose": ("air_gun",), "supply_hose": ("air_supply",), "fluid_hose": ("fluid",)}


def _own(context: DocumentContext, tool: str) -> list[Text]:
    """The marks under which the firm lists this tool: `(GM-1)`."""
    project = context.project
    lists = {
        "guns": (tool == "spray_gun", "kind", ()),
        "hoses": (tool in _USES, "use", _USES.get(tool, ())),
        "instruments": (tool in _KINDS, "kind", _KINDS.get(tool, ())),
    }
    marks = [
        mark
        for name, (asked, key, kinds) in lists.items()
        if asked
        for mark in project.members.get((name,), ())
        if not kinds or project.get((name, mark, key)) in kinds
    ]
    return [Text(f" ({', '.join(marks)})")] if marks else []
