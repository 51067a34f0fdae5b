"""The steps of the work as they print for the walls of a project."""

import re
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
from specgen.model.project import Project
from specgen.model.standard import Sentence, Step

# The name of each kind of point, and what it requires of the crew.
POINTS = {
    "H": ("Hold point", "nothing goes on before the named authority has released it in writing."),
    "W": ("Witness point", "give notice beforehand; the work goes on with records."),
    "R": ("Review", "the records are complete before the step begins."),
    "E": ("Carried out and recorded", "no release is needed."),
}

_TAG = re.compile(r"\{[{%].*?[%}]\}", re.DOTALL)
# The wall in a tag, with the first name behind it.
_WALL = re.compile(r"\bwall\b(\.\w+)?")


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
    sentences = _Sentences(context, composer)
    pages = []
    for step in context.standards.steps.values():
        taking = [wall for wall in walls if _applies(step.when, context, wall)]
        if taking:
            pages.append(_step(context, sentences, step, taking, len(taking) == len(walls)))
    return tuple(pages)


def _step(
    context: DocumentContext, sentences: "_Sentences", step: Step, walls: list[str], everywhere: bool
) -> StepPage:
    def render(sentence: Sentence) -> list[str]:
        return sentences.render(step, sentence, walls)

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


class _Sentences:
    """Renders the sentences of the steps for the walls of a project."""

    def __init__(self, context: DocumentContext, composer: Composer) -> None:
        self.context, self.composer = context, composer
        root = Page(context, context.project.schema.root, ())
        self.names: dict[str, Any] = {name: getattr(root, name) for name in context.project.schema.root.children}
        self.names |= figure_functions(context)
        self.alike = _find_alike(context.project)

    def render(self, step: Step, sentence: Sentence, walls: list[str]) -> list[str]:
        """A sentence for the walls it applies to: once if the wording is the same for all, else once per wording.

        Each line of its text is a sentence of its own.
        """
        wordings: dict[str, tuple[str, list[str]]] = {}
        rendered: dict[str, list[tuple[str, str]]] = {}
        for wall in walls:
            if _applies(sentence.when, self.context, wall):
                same = self._stand_in(sentence.text, wall)
                if same not in rendered:
                    rendered[same] = list(self._lines(step, sentence, wall))
                for plain, text in rendered[same]:
                    wordings.setdefault(plain, (text, []))[1].append(wall)
        return [
            text if len(taking) == len(walls) else f"{self.composer.token(_name_walls(taking))}: {text}"
            for text, taking in wordings.values()
        ]

    def _lines(self, step: Step, sentence: Sentence, wall: str) -> Iterator[tuple[str, str]]:
        """Each line of a sentence for a wall: its plain words, and its text."""
        walls = self.names["walls"]
        assert isinstance(walls, Pages)
        names = self.names | {"wall": walls[wall]}
        rendered = self.composer.text(sentence.text, names, f"steps.yaml: {step.name}")
        for text in filter(None, rendered.split("\n")):
            yield self.composer.plain(text), text

    def _stand_in(self, text: str, wall: str) -> str:
        """The wall whose rendering of a text serves this one too; none at all for a text that speaks of no wall."""
        spoken_of = [found for tag in _TAG.findall(text) for found in _WALL.findall(tag)]
        if not spoken_of:
            return ""
        return self.alike[wall] if all(part not in ("", ".mark") for part in spoken_of) else wall


def _find_alike(project: Project) -> dict[str, str]:
    """For each wall the first of which the same is given."""
    given: dict[str, list[Any]] = {wall: [] for wall in project.members[("walls",)]}
    for path, value in (*project.values.items(), *project.members.items()):
        if path[0] == "walls" and len(path) > 2:
            given[path[1]].append((path[2:], value))
    first: dict[Any, str] = {}
    return {wall: first.setdefault(tuple(facts), wall) for wall, facts in given.items()}


def _applies(when: str, context: DocumentContext, wall: str) -> bool:
    return not when or evaluate(when, context.project, ("walls", wall))
