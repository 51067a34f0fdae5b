"""The hold points of the work and that of the joint layout, each with who releases it and on which form."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layout_release import LAID_OUT, find_layout_release
from specgen.documents.steps import StepPage, steps
from specgen.documents.views.point_releases import LAYOUT
from specgen.model.value_text import long_date
from specgen.scheduling.releases import name_party


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each hold point, in the order of the work; the joint layout before boards are laid out."""
    pages = steps(context, composer)
    lines = [_line(composer, page) for page in pages if page.hold]
    names = [page.name for page in pages]
    if LAID_OUT in names:
        before = sum(1 for page in pages[: names.index(LAID_OUT)] if page.hold)
        release = find_layout_release(context)
        latest = (
            f"; latest {long_date(release.latest)}, {release.follows}"
            if release
            else ", before the first board layout, mockup included"
        )
        layout = ("–", f"Joint layout{latest}", name_party(context.project, "architect"), LAYOUT)
        lines.insert(before, layout)
    return TableView(("No.", "Hold point", "Released by", "Form"), tuple(lines), (5, 36, 42, 17))


def _line(composer: Composer, step: StepPage) -> tuple[Any, ...]:
    return (
        str(step.hold),
        f"{step.title}: {step.point_of}" if step.point_of else step.title,
        composer.inlines(step.released_by),
        step.release_form,
    )
