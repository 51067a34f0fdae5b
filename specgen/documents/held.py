"""The documents that a package holds: what its transmittal lists, and what a register names as an answer."""

from typing import NamedTuple

from specgen.documents.catalogue import Template, templates
from specgen.documents.context import DocumentContext
from specgen.documents.drafts import ANSWER
from specgen.judging.open_items import owed_rings
from specgen.model.stage import STAGES

# The last stage, and the purpose of its package.
_CLOSING = STAGES[-1]


class Held(NamedTuple):
    """A document of the package."""

    id: str
    title: str


def list_held(context: DocumentContext) -> tuple[Held, ...]:
    """The documents in their order: those of the package in hand, else those that its stage owes."""
    return context.remember(_gather)


def leave_later(
    every: tuple[Template, ...], context: DocumentContext, named: tuple[str, ...] = ()
) -> tuple[Template, ...]:
    """The templates without those that only a closeout has, while the project is none; those `named` stay.

    A draft has the documents of later stages too, of which the plan tells something; of a closeout it tells nothing.
    """
    wanted = {name.upper() for name in named}
    closing = context.project.value(("package", "purpose")) == _CLOSING
    return tuple(t for t in every if closing or t.stage != _CLOSING or t.id in wanted)


def _gather(context: DocumentContext) -> tuple[Held, ...]:
    if context.rest.held:
        return tuple(Held(*entry) for entry in context.rest.held)
    purpose = str(context.project.value(("package", "purpose")))
    stages = None if purpose == "design_draft" else owed_rings(purpose)
    every = (t for t in leave_later(templates(), context) if t.id != ANSWER and (stages is None or t.stage in stages))
    return tuple(Held(template.id, template.title) for template in every)
