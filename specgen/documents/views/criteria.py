"""The lines of the mockup acceptance form, with blanks for the readings."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page
from specgen.model.block import Blank, CheckBox
from specgen.model.evaluation import evaluate
from specgen.model.standard import Criterion


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The lines covered by the project's own criteria, or every line that applies if it names none."""
    project = context.project
    root = Page(context, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children}
    names |= figure_functions(context)
    lines = tuple(
        (
            DisplayValue(line.title, line.title, line.basis[0]),
            composer.inlines(composer.text(f"{line.method} ({line.location})", names, f"criteria.yaml: {line.name}")),
            composer.inlines(composer.text(line.limit, names, f"criteria.yaml: {line.name}")),
            line.readings,
            Blank(f"Reading, {line.title}"),
            [CheckBox("pass"), " ", CheckBox("fail")],
            Blank(f"Initials, {line.title}"),
        )
        for line in context.standards.criteria.values()
        if (not line.when or evaluate(line.when, project)) and _is_covered(context, line)
    )
    header = ("Criterion", "Method and place", "Limit", "Readings", "Read", "Result", "Initials")
    return TableView(header, lines, (15, 23, 20, 10, 14, 9, 9))


def _is_covered(context: DocumentContext, line: Criterion) -> bool:
    """Whether a criterion of the project covers the line: the id of the line begins with its name."""
    given = _criteria(context)
    return not given or line.name.startswith("other") or any(line.name.startswith(name) for name in given)


def _criteria(context: DocumentContext) -> list[str]:
    path = ("mockup", "criteria")
    names = [context.project.get((*path, number, "name")) for number in context.project.members.get(path, ())]
    return [str(name) for name in names if name]
