"""Exceptions as rows."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from specgen.documents.alike_measures import join_alike
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deciding import is_undecided
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import name_place
from specgen.documents.measures import Measure, list_measures, name_rules
from specgen.documents.parties import name_role
from specgen.documents.standing_walls import is_built
from specgen.documents.verifiers import ARCHITECT
from specgen.documents.views._cells import join_cells
from specgen.documents.views._document_stages import find_decision
from specgen.documents.views._stages import DECISION, find_next_package
from specgen.judging.registry import load_rules
from specgen.judging.rule import Clause
from specgen.judging.subject_names import join_subjects
from specgen.model.figure_text import figures_asked
from specgen.model.finding import Finding
from specgen.model.source import Kind, Source
from specgen.model.value_text import write_units
from specgen.quantities.comparison import Sense

# Of more members than these the marks alone are told.
MOST_NAMED = 3
# The section whose findings are about the mockup alone.
_MOCKUP = ("mockup",)
# The rule on the bond of an old wall, which the pull tests themselves answer.
_BOND = "ATT-05"


def table(context: DocumentContext, findings: Iterable[Finding], called: str) -> TableView:
    """One row per measure: rules, place, what was found, the measure, who takes it and when, and what it rests on."""
    lines = tuple(
        (
            name_rules(one.codes),
            _place(context, one),
            [one.message, *_mark_limits(context, one)],
            _letter_figures(context, one),
            _tell_when(context, one),
            _basis(context, one),
        )
        for one in join_alike(list_measures(context.project, findings))
    )
    return TableView(("Item", "Where", called, "Measure", "By, before", "Basis"), lines, (9, 9, 15, 42, 12, 13))


def _tell_when(context: DocumentContext, measure: Measure) -> str:
    """`Architect, before mockup`: what he decides, before what is submitted next; what decides a wall, before pulls."""
    before = measure.before
    if measure.by == ARCHITECT and before == _MOCKUP[0] and context.is_marked:
        measured = measure.collection == "elevations" and is_built(context, measure.subjects)
        before = DECISION[1] if measured and is_undecided(context) else find_next_package(context)[1]
    if before == DECISION[1] and not measure.codes[0].startswith(_BOND):
        before = find_decision(context)[1]
    return f"{name_role(measure.by)}, before {before}"


def _place(context: DocumentContext, measure: Measure) -> str:
    if measure.subjects == ("project",):
        return "Mockup" if _clauses()[measure.codes[0]].at[:1] == _MOCKUP else "Project"
    if not measure.collection or len(measure.subjects) > MOST_NAMED:
        return join_subjects(measure.subjects)
    return "; ".join(name_place(context, measure.collection, mark) for mark in measure.subjects)


def _mark_limits(context: DocumentContext, measure: Measure) -> list[DisplayValue]:
    """The letters of the limits that the condition says and nobody has verified."""
    return _letter(context, (_clauses()[code].limit for code in measure.codes), measure.message)


def _letter_figures(context: DocumentContext, measure: Measure) -> list[Any]:
    """The measure with the letter of each figure behind it, which then ends the sentence that says the figure."""
    parts: list[Any] = []
    rest = measure.remedy
    marks = [(_say_figure(context, one.row), one) for one in _mark_figures(context, measure)]
    for said, mark in sorted(marks, key=lambda pair: measure.remedy.index(pair[0])):
        before, found, after = rest.partition(said)
        parts += [before + found, mark] if found else [mark]
        rest = after if found else rest
    return [*parts, rest]


def _mark_figures(context: DocumentContext, measure: Measure) -> list[DisplayValue]:
    """The letters of the figures that the measure says and nobody has verified."""
    clauses = [_clauses()[code] for code in measure.codes]
    asked = [
        name
        for clause in clauses
        for name in figures_asked(clause.remedy)
        if name != clause.limit and _says(context, clause.remedy, name, measure)
    ]
    # The text of a figure that the basis does not name is told by its letter, read or not.
    return _letter(context, asked, measure.remedy, read=True)


def _says(context: DocumentContext, remedy: str, name: str, measure: Measure) -> bool:
    """Whether the measure says the figure of a row where the remedy does, and not one of the project in its place."""
    word = remedy.partition(f"{{{name}}}")[0].split()[-1:]
    return " ".join([*word, _say_figure(context, name)]) in measure.remedy


def _say_figure(context: DocumentContext, name: str) -> str:
    """The figure of a row as findings say it."""
    return write_units(context.figure(name))


def _clauses() -> dict[str, Clause]:
    return {clause.code: clause for rule in load_rules() for clause in rule.clauses}


def _letter(context: DocumentContext, names: Iterable[str], text: str, read: bool = False) -> list[DisplayValue]:
    figures = [context.limit(name) for name in dict.fromkeys(names) if name and _say_figure(context, name) in text]
    return [replace(one, text="") for one in figures if _has_letter(context, one, read)]


def _has_letter(context: DocumentContext, figure: DisplayValue, read: bool) -> bool:
    """Whether a figure is lettered: one that nobody has verified, and, if `read` ones are told too, all but tools."""
    if figure.source is None or not figure.source.is_verified:
        return figure.source is not None
    return read and context.standards.limits[figure.row].sense is not Sense.EXACTLY


def _basis(context: DocumentContext, measure: Measure) -> list[Any]:
    """What the clauses rest on: the controlling texts, and the mark of what is not verified."""
    cited = dict.fromkeys(
        (_name_figure(context, measure, code, source), cite_basis(context, code, source))
        for code, source in measure.sources
    )
    return join_cells([figure, text] for figure, text in cited)


def _name_figure(context: DocumentContext, measure: Measure, code: str, source: Source) -> str:
    """`1/4 in: ` before the text that gives the limit of a clause, where the condition says it; else nothing."""
    name = _clauses()[code].limit
    figure = _say_figure(context, name) if name else ""
    told = bool(figure) and figure in measure.message and context.limit(name).source == source
    return f"{figure}: " if told and context.cite(source).kind is not Kind.UNVERIFIED else ""


def cite_basis(context: DocumentContext, code: str, source: Source) -> Any:
    """What a source of a clause is cited as: its controlling text, else the mark of what is not verified."""
    cited = context.cite(source)
    if cited.kind is Kind.PROJECT:
        return "This project's own figure"
    if cited.kind is not Kind.UNVERIFIED:
        return cited.legend
    text = source.text_to_check
    return DisplayValue(text, text, source, about=f"Basis of {code}") if text else "Trade practice"
