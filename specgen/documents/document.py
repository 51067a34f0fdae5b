"""Composes a document from a template and a judged project: head, blocks, numbers, legend."""

import dataclasses
import datetime
from typing import Literal, cast

from specgen.documents.banner import mark_draft
from specgen.documents.catalogue import Template
from specgen.documents.changes_blocks import digest_blocks
from specgen.documents.citing import cite_blocks
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.draft_forms import drop_forms
from specgen.documents.drafts import OPEN_ITEMS
from specgen.documents.numbering import number_blocks
from specgen.documents.shape import check_shape
from specgen.documents.template_globals import template_globals
from specgen.model.block import Contents, Document
from specgen.model.value_text import long_date, words

_UNVERIFIED = "D05"  # lists what is not verified


def compose_document(template: Template, context: DocumentContext, draft: bool) -> Document:
    """The document of a template, marked if it is a draft by itself; raises Refused with line for a mistake in it.

    The documents of a whole draft are marked together, as each tells what is open in all of them.
    """
    composer = Composer(document=template.id)
    if draft and not context.draft:
        context = dataclasses.replace(context, draft=True)
    rendered = composer.text(template.words, template_globals(context, composer), template.file, template.first_line)
    blocks = composer.blocks(rendered, template.file)
    check_shape(blocks, template, composer.lines)
    blocks = drop_forms(blocks, {form.id for form in context.rest.forms_left_out})
    blocks = cite_blocks(blocks, context.cite)
    numbering = cast(Literal["three_part", "plain"], template.numbering)
    if numbering == "three_part":
        blocks = (Contents(), *blocks)
    digests = digest_blocks(blocks)
    numbered, legend = number_blocks(blocks, numbering, template.landscape)
    legend = tuple((mark, _say_here(template.id, text)) for mark, text in legend)
    given = context.project.get(("package", "date"))
    date = long_date(given) if isinstance(given, datetime.date) else ""
    document = Document(
        id=template.id,
        title=template.title,
        project=str(context.project.value(("project", "name"))),
        facts=facts(context),
        blocks=numbered,
        legend=legend,
        firm=str(context.project.get(("parties", "applicator", "name")) or ""),
        running=_page_lines(template, context),
        foot=_foot(template, context, date),
        numbering=numbering,
        date=date,
        landscape=template.landscape,
        used_for=template.used_for,
        digests=digests,
    )
    return mark_draft(document, context) if draft else document


def _page_lines(template: Template, context: DocumentContext) -> tuple[str, str]:
    """The running lines of every page: project and submittal on the left, document and revision on the right."""
    project = context.project
    number, revision = project.get(("package", "number")), project.get(("package", "revision")) or 0
    left = [str(project.value(("project", "name"))), f"Submittal {number}" if number else ""]
    right = [f"{template.id} {template.title}", f"Revision {revision}"]
    return " | ".join(filter(None, left)), " | ".join(right)


def _foot(template: Template, context: DocumentContext, date: str) -> str:
    """The line below every page: sections, document and date."""
    sections = _list_sections(context)
    return " | ".join(filter(None, (f"Section {', '.join(sections)}" if sections else "", template.id, date)))


def _list_sections(context: DocumentContext) -> list[str]:
    """The numbers of the sections of the specification."""
    path = ("contract", "spec_sections")
    numbers = (context.project.get((*path, mark, "number")) for mark in context.project.members.get(path, ()))
    return [str(number) for number in numbers if number]


_FACTS = {
    "Project": "project.name",
    "Project number": "project.number",
    "Address": "project.address",
    "Owner": "parties.owner.name",
    "Architect": "parties.architect.name",
    "Contractor": "parties.general_contractor.name",
    "Submittal": "package.number",
    "Section": "",
    "Revision": "package.revision",
    "Date": "package.date",
    "Purpose": "package.purpose",
    "Applicator": "parties.applicator.name",
}
# What stands in the title block before it is given. A set that is issued has them all.
_UNTIL_GIVEN = {
    "Architect": "to be named",
    "Contractor": "to be named",
    "Project number": "to be assigned",
    "Revision": "0",
}


def facts(context: DocumentContext) -> tuple[tuple[str, str], ...]:
    """The entries of the title block that are given: first those of the project, then those of the submittal."""
    lines = []
    for label, path in _FACTS.items():
        sections = ", ".join(_list_sections(context))
        value: DisplayValue = context.display(tuple(path.split("."))) if path else DisplayValue(sections, sections)
        text = words(value.text).capitalize() if path == "package.purpose" else value.text
        text = _UNTIL_GIVEN.get(label, "") if value.open else text
        if text:
            lines.append((label, text))
    return tuple(lines)


def _say_here(document: str, text: str) -> str:
    """A source in the words of the document that prints it: the list of what is not verified refers not to itself.

    The open items ask for what they print to be confirmed.
    """
    if document == OPEN_ITEMS:
        return text.replace(f"see {_UNVERIFIED}", f"confirm in its row, or see {_UNVERIFIED}")
    return text.replace(f"see {document}", "see the list above")
