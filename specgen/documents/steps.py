"""The steps of the work as they print for the walls of a project."""

from dataclasses import dataclass
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.template_views import Page, Pages
from specgen.model.evaluation import evaluate
from specgen.model.finding import Finding
from specgen.model.standard import Sentence, Step

# What each kind of point is called, and what it asks of the crew.
POINTS = {
    "H": ("Hold point", "nothing goes on before the named authority has released it in writing."),
    "W": ("Witness point", "give notice beforehand; the work goes on with records."),
    "R": ("Review", "the records are complete before the step begins."),
    "E": ("Carried out and recorded", "no release is needed."),
}


@dataclass(frozen=True)
class StepPage:
    """A step as it prints for this project's walls."""

    name: str
    title: str
    point: str
    point_of: str
    meaning: str
    wait: str
    items: tuple[str, ...]
    cautions: tuple[str, ...]
    records: tuple[str, ...]
    findings: tuple[Finding, ...]


def steps(context: DocumentContext, composer: Composer) -> tuple[StepPage, ...]:
    """The steps that apply to any wall, in order; a sentence that holds for some walls only names them."""
    walls = context.project.members[("walls",)]
    made = []
    for step in context.standards.steps.values():
        taking = [wall for wall in walls if _applies(step.when, context, wall)]
        if taking:
            made.append(_step(context, composer, step, taking, len(taking) == len(walls)))
    return tuple(made)


def _step(context: DocumentContext, composer: Composer, step: Step, walls: list[str], everywhere: bool) -> StepPage:
    def said(sentence: Sentence) -> list[str]:
        return _sentence(context, composer, step, sentence, walls)

    name, meaning = POINTS[step.point]
    return StepPage(
        step.name,
        step.title if everywhere else f"{step.title}: {_named(walls)}",
        name,
        step.point_of,
        meaning,
        "; ".join(said(Sentence(step.wait)) if step.wait else []),
        tuple(text for sentence in step.sentences for text in said(sentence)),
        tuple(text for words in step.cautions for text in said(Sentence(words))),
        tuple(context.standards.forms[record] for record in step.records),
        tuple(f for f in context.judgment.findings if f.step == step.name),
    )


def _named(walls: list[str]) -> str:
    return f"{'Walls' if len(walls) > 1 else 'Wall'} {', '.join(walls)}"


def _sentence(
    context: DocumentContext, composer: Composer, step: Step, sentence: Sentence, walls: list[str]
) -> list[str]:
    """A sentence for the walls it holds for: once where all of them say the same, else once for each wording."""
    wordings: dict[str, tuple[str, list[str]]] = {}
    for wall in walls:
        if _applies(sentence.when, context, wall):
            text = composer.text(sentence.text, _names_of_wall(context, wall), f"steps.yaml: {step.name}")
            wordings.setdefault(composer.plain(text), (text, []))[1].append(wall)
    return [
        text if len(taking) == len(walls) else f"{composer.token(_named(taking))}: {text}"
        for text, taking in wordings.values()
    ]


def _names_of_wall(context: DocumentContext, wall: str) -> dict[str, Any]:
    root = Page(context, context.project.schema.root, ())
    made: dict[str, Any] = {name: getattr(root, name) for name in context.project.schema.root.children}
    walls = made["walls"]
    assert isinstance(walls, Pages)
    return made | {"wall": walls[wall], "limit": context.limit}


def _applies(when: str, context: DocumentContext, wall: str) -> bool:
    return not when or evaluate(when, context.project, ("walls", wall))
