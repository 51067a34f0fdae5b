"""The steps of the work as they print for the walls of a project."""

from dataclasses import dataclass
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import Desk
from specgen.documents.display_values import Page, Pages
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


def steps(desk: Desk, composer: Composer) -> tuple[StepPage, ...]:
    """The steps that apply to any wall, in order; a sentence that holds for some walls only names them."""
    walls = desk.sight.project.members[("walls",)]
    made = []
    for step in desk.standards.steps.values():
        taking = [wall for wall in walls if _applies(step.when, desk, wall)]
        if taking:
            made.append(_step(desk, composer, step, taking, len(taking) == len(walls)))
    return tuple(made)


def _step(desk: Desk, composer: Composer, step: Step, walls: list[str], everywhere: bool) -> StepPage:
    def said(sentence: Sentence) -> list[str]:
        return _sentence(desk, composer, step, sentence, walls)

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
        tuple(desk.standards.forms[record] for record in step.records),
        tuple(f for f in desk.judgment.findings if f.step == step.name),
    )


def _named(walls: list[str]) -> str:
    return f"{'Walls' if len(walls) > 1 else 'Wall'} {', '.join(walls)}"


def _sentence(desk: Desk, composer: Composer, step: Step, sentence: Sentence, walls: list[str]) -> list[str]:
    """A sentence for the walls it holds for: once where all of them say the same, else once for each wording."""
    wordings: dict[str, tuple[str, list[str]]] = {}
    for wall in walls:
        if _applies(sentence.when, desk, wall):
            text = composer.text(sentence.text, _names_of_wall(desk, wall), f"steps.yaml: {step.name}")
            wordings.setdefault(composer.plain(text), (text, []))[1].append(wall)
    return [
        text if len(taking) == len(walls) else f"{composer.token(_named(taking))}: {text}"
        for text, taking in wordings.values()
    ]


def _names_of_wall(desk: Desk, wall: str) -> dict[str, Any]:
    root = Page(desk.sight, desk.sight.project.schema.root, ())
    made: dict[str, Any] = {name: getattr(root, name) for name in desk.sight.project.schema.root.children}
    walls = made["walls"]
    assert isinstance(walls, Pages)
    return made | {"wall": walls[wall], "limit": desk.sight.limit}


def _applies(when: str, desk: Desk, wall: str) -> bool:
    return not when or evaluate(when, desk.sight.project, ("walls", wall))
