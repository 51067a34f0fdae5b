"""The steps of the work as they print for the walls of a project."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import Record
from specgen.documents.sentences import Sentences
from specgen.documents.work_findings import WorkFinding, work_findings
from specgen.model.series import join_series
from specgen.model.standard import Sentence, Step
from specgen.scheduling.applying import applies
from specgen.scheduling.releases import find_release_form, name_inspector, name_releaser

# The name of each kind of point.
POINTS = {"H": "Hold point", "W": "Witness point", "R": "Review point", "E": ""}


@dataclass(frozen=True, kw_only=True)
class StepPage(Record):
    """A step as it prints for this project's walls."""

    name: str  # of the step in the standards
    work: str  # its title
    title: str  # the same, with the walls it is limited to, if not all
    article: str  # the article of the procedure it belongs to
    crew: str  # the crews that carry it out, with their noun; empty where none is named
    point: str  # kind of point in words: Hold point, Review point; empty for none
    point_of: str  # the part of the step that is the point; empty for the whole step
    waits: tuple[str, ...]  # what holds it back, as sentences
    wait: str  # the same in short; empty for nothing
    items: tuple[str, ...]  # its sentences
    released_by: str  # who releases the hold point; empty where there is none
    notified: str  # who is told of a witness point; empty where there is none
    forms: str  # the forms to fill in: `Forms D12a and D12c`; empty for none
    release_form: str  # the form on which its hold point is released; empty where there is none
    cautions: tuple[str, ...]  # its warnings
    findings: tuple[WorkFinding, ...]  # findings about its work
    hold: int = 0  # the number of its hold point; 0 where it has none


def steps(context: DocumentContext, composer: Composer, walls: tuple[str, ...] = ()) -> tuple[StepPage, ...]:
    """The steps that apply to any of these walls, or of all, in order; what applies to some of them only names them."""
    walls = walls or context.project.members[("walls",)]
    rendered, known = context.remember(_render_once)
    if walls not in known:
        known[walls] = _list_steps(context, rendered, walls)
    return tuple(_take_over(page, composer, rendered) for page in known[walls])


def _render_once(context: DocumentContext) -> tuple[Composer, dict[tuple[str, ...], tuple[StepPage, ...]]]:
    """Where the steps are rendered for all documents, and those of each choice of walls."""
    return Composer(), {}


def _take_over(page: StepPage, composer: Composer, rendered: Composer) -> StepPage:
    """A step whose printed values are kept by another composer."""

    def take(text: str) -> str:
        return composer.take_over(text, rendered)

    return replace(
        page,
        crew=take(page.crew),
        waits=tuple(map(take, page.waits)),
        wait=take(page.wait),
        items=tuple(map(take, page.items)),
        released_by=take(page.released_by),
        notified=take(page.notified),
        cautions=tuple(map(take, page.cautions)),
    )


def _list_steps(context: DocumentContext, composer: Composer, walls: tuple[str, ...]) -> tuple[StepPage, ...]:
    sentences = Sentences(context, composer)
    pages = []
    for step in context.standards.steps.values():
        taking = [wall for wall in walls if applies(step.when, context.project, wall)]
        if taking:
            pages.append(_step(sentences, step, taking, len(taking) == len(walls)))
    holds = [page.name for page in pages if page.released_by]
    return tuple(replace(page, hold=holds.index(page.name) + 1) if page.released_by else page for page in pages)


def _step(sentences: Sentences, step: Step, walls: list[str], everywhere: bool) -> StepPage:
    context, composer = sentences.context, sentences.composer

    def lines(said: Iterator[Sentence] | tuple[Sentence, ...]) -> tuple[str, ...]:
        return tuple(line for one in said for line in sentences.lines(f"steps.yaml: {step.name}", one, walls))

    waits = [said for one in step.waits for said in sentences.said(f"steps.yaml: {step.name}", one, walls)]
    return StepPage(
        name=step.name,
        work=step.title,
        title=step.title if everywhere else f"{step.title}: {_name_walls(walls)}",
        article=step.article,
        crew=composer.token(_crews(context, step)),
        point=POINTS[step.point],
        point_of=step.point_of,
        waits=tuple(f"{f'{w.of}: do' if w.of else 'Do'} not begin until {w.text}." for w in waits),
        wait="; ".join(f"{w.of}: {w.text}" if w.of else w.text for w in waits),
        items=lines(_with_mending(context, step)),
        released_by=composer.token(name_releaser(context.project, step)),
        notified=composer.token(name_inspector(context.project)) if step.point == "W" else "",
        forms=name_forms(step.records),
        release_form=find_release_form(step),
        cautions=lines(step.cautions),
        findings=work_findings(context.judgment, step),
    )


def _with_mending(context: DocumentContext, step: Step) -> Iterator[Sentence]:
    """The sentences of a step, and where it mends faults, how each fault that a wall has is mended."""
    for sentence in step.sentences:
        yield sentence
        for name, fault in context.standards.faults.items() if sentence.faults else ():
            yield Sentence(fault.mend, f"walls.*.substrate.condition has {name}")


def name_forms(forms: tuple[str, ...]) -> str:
    """`Form D11`, `Forms D11, D12b, and D12d`; an empty text for none."""
    return f"{'Forms' if len(forms) > 1 else 'Form'} {join_series(forms)}" if forms else ""


def _name_walls(walls: list[str]) -> str:
    return f"{'walls' if len(walls) > 1 else 'wall'} {', '.join(walls)}"


def _crews(context: DocumentContext, step: Step) -> str:
    """`crew C1`, `crews C1 and C2`: those that carry a step out."""
    crews = context.project.members.get(("crews",), ())
    taking = [mark for mark in crews if step.name in (context.project.get(("crews", mark, "steps")) or ())]
    return f"{'crews' if len(taking) > 1 else 'crew'} {join_series(taking)}" if taking else ""
