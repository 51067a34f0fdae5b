"""The safety plan by hazard: what is done on this project, by which rule of law, and who sees to it."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.sentences import Sentences
from specgen.model.standard import SafetyMeasure
from specgen.model.value_text import words
from specgen.resolving.editions import fill_editions
from specgen.scheduling.applying import applies

_NONE = "–"
_LAW, _GUIDE = "29 CFR ", ", guide only"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each measure that a wall or the site asks for; the hazard stands at the first of its rows."""
    sentences, lines = Sentences(context, composer), []
    hazard = ""
    for measure in context.standards.safety_measures.values():
        said = _say(sentences, measure)
        if not said:
            continue
        shown = "" if measure.hazard == hazard else measure.hazard
        hazard = measure.hazard
        lines.append((shown, composer.inlines(said), _cite(context, measure), _name(context, measure.by)))
    law = "Guide, 29 CFR" if context.project.get(("safety", "rules")) == "other" else "29 CFR"
    holders = {line[-1] for line in lines}
    if len(holders) == 1:
        head = ("Hazard", f"Measure, seen to by {holders.pop()}", law)
        return TableView(head, tuple(line[:-1] for line in lines), (14, 66, 20))
    return TableView(("Hazard", "Measure", law, "By"), tuple(lines), (11, 54, 17, 18))


def _say(sentences: Sentences, measure: SafetyMeasure) -> str:
    """The sentences of a measure in one text; no words where no wall asks for it."""
    context = sentences.context
    walls = [w for w in context.project.members[("walls",)] if applies(measure.when, context.project, w)]
    place = f"safety_measures.yaml: {measure.name}"
    return " ".join(line for one in measure.measure if walls for line in sentences.lines(place, one, walls))


def _cite(context: DocumentContext, measure: SafetyMeasure) -> list[Any]:
    """The clauses without the name of the regulations."""
    cell: list[Any] = []
    for source in measure.clause:
        said = fill_editions(source.controls or source.reference, context.project, context.standards)
        cell += ["; " if cell else "", said.removesuffix(_GUIDE).removeprefix(_LAW)]
    return cell or [_NONE]


def _name(context: DocumentContext, role: str) -> str:
    """Who holds a role, by name; the role where nobody is named."""
    return ", ".join(dict.fromkeys(name_holders(context, role))) or words(role)


def name_holders(context: DocumentContext, role: str) -> Iterator[str]:
    """The names of those who hold a role."""
    for mark in list_marks(context, "people"):
        name = context.project.get(("people", mark, "name"))
        if name and context.project.get(("people", mark, "role")) == role:
            yield str(name)
