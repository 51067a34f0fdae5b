"""The steps of the work as they print for the walls of a project."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import Record
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page, Pages
from specgen.model.evaluation import evaluate
from specgen.model.finding import Finding
from specgen.model.standard import Sentence, Step

# The name of each kind of point, and what it requires of the crew.
POINTS = {
    "H": ("Hold point", "nothing goes on before the named authority has released it in writing."),
    "W": ("Witness point", "give notice beforehand; the work goes on with records."),
    "R": ("Review", "the records are complete before the step begins."),
    "E": ("Carried out and recorded", "no release is needed."),
}


@dataclass(frozen=True, kw_only=True)
class StepPage(Record):
    """A step as it prints for this project's walls."""

    name: str  # of the step in the standards
    title: str  # with the walls it is limited to, if not all
    point: str  # kind of point in words: Hold point, Review
    point_of: str  # the part of the step that is the point; empty for the whole step
    meaning: str  # what the point requires of the crew
    wait: str  # how long to wait after the step; empty for no wait
    items: tuple[str, ...]  # its sentences
    cautions: tuple[str, ...]  # its warnings
    records: tuple[str, ...]  # titles of the forms to fill in
    findings: tuple[Finding, ...]  # findings that print at this step


def steps(context: DocumentContext, composer: Composer) -> tuple[StepPage, ...]:
    """The steps that apply to any wall, in order; a sentence that applies to some walls only names them."""
    walls = context.project.members[("walls",)]
    pages = []
    for step in context.standards.steps.values():
        taking = [wall for wall in walls if _applies(step.when, context, wall)]
        if taking:
            pages.append(_step(context, composer, step, taking, len(taking) == len(walls)))
    return tuple(pages)


def _step(context: DocumentContext, composer: Composer, step: Step, walls: list[str], everywhere: bool) -> StepPage:
    def render(sentence: Sentence) -> list[str]:
        return _sentence(context, composer, step, sentence, walls)

    name, meaning = POINTS[step.point]
    return StepPage(
        name=step.name,
        title=step.title if everywhere else f"{step.title}: {_name_walls(walls)}",
        point=name,
        point_of=step.point_of,
        meaning=meaning,
        wait="; ".join(render(Sentence(step.wait)) if step.wait else []),
        items=tuple(text for sentence in _with_mending(context, step) for text in render(sentence)),
        cautions=tuple(text for words in step.cautions for text in render(Sentence(words))),
        records=tuple(context.standards.forms[record] for record in step.records),
        findings=tuple(f for f in context.judgment.findings if f.step == step.name),
    )


def _with_mending(context: DocumentContext, step: Step) -> Iterator[Sentence]:
    """The sentences of a step, and where it mends faults, how each fault that a wall has is mended."""
    for sentence in step.sentences:
        yield sentence
        for name, fault in context.standards.faults.items() if sentence.faults else ():
            yield Sentence(fault.mend, f"walls.*.substrate.condition has {name}")


def _name_walls(walls: list[str]) -> str:
    return f"{'Walls' if len(walls) > 1 else 'Wall'} {', '.join(walls)}"


def _sentence(
    context: DocumentContext, composer: Composer, step: Step, sentence: Sentence, walls: list[str]
) -> list[str]:
    """A sentence for the walls it applies to: once if the wording is the same for all, else once per wording.

    Each line of its text is a sentence of its own.
    """
    wordings: dict[str, tuple[str, list[str]]] = {}
    for wall in walls:
        if _applies(sentence.when, context, wall):
            rendered = composer.text(sentence.text, _names_of_wall(context, wall), f"steps.yaml: {step.name}")
            for text in filter(None, rendered.split("\n")):
                wordings.setdefault(composer.plain(text), (text, []))[1].append(wall)
    return [
        text if len(taking) == len(walls) else f"{composer.token(_name_walls(taking))}: {text}"
        for text, taking in wordings.values()
    ]


def _names_of_wall(context: DocumentContext, wall: str) -> dict[str, Any]:
    root = Page(context, context.project.schema.root, ())
    names: dict[str, Any] = {name: getattr(root, name) for name in context.project.schema.root.children}
    walls = names["walls"]
    assert isinstance(walls, Pages)
    return names | {"wall": walls[wall]} | figure_functions(context)


def _applies(when: str, context: DocumentContext, wall: str) -> bool:
    return not when or evaluate(when, context.project, ("walls", wall))
