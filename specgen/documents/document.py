"""Composes a document from a template and a judged project: head, blocks, numbers, legend."""

import datetime
from typing import Literal, cast

from specgen.documents.banner import count_brackets, mark_draft
from specgen.documents.catalogue import Template
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.numbering import number_blocks, resolve_deferred
from specgen.documents.shape import check_shape
from specgen.documents.template_globals import template_globals
from specgen.model.block import Block, Contents, Document
from specgen.model.value_text import long_date, words


def compose_document(template: Template, context: DocumentContext, draft: bool) -> Document:
    """The document of a template, marked if it is a draft by itself; raises Refused with line for a mistake in it.

    The documents of a whole draft are marked together, as each tells what is open in all of them.
    """
    composer = Composer()
    rendered = composer.text(template.words, template_globals(context, composer), template.file, template.first_line)
    blocks: tuple[Block, ...] = composer.blocks(rendered, template.file)
    blocks = resolve_deferred(blocks)
    check_shape(blocks, template, composer.lines)
    numbering = cast(Literal["three_part", "plain"], template.numbering)
    if numbering == "three_part":
        blocks = (Contents(), *blocks)
    numbered, legend = number_blocks(blocks, numbering)
    date = context.project.get(("package", "date"))
    head = _read_head(context)
    document = Document(
        id=template.id,
        title=template.title,
        project=str(context.project.value(("project", "name"))),
        facts=tuple((label, _say_fact(path, shown)) for label, path, shown in head),
        blocks=numbered,
        legend=legend,
        running=_page_lines(template, context),
        numbering=numbering,
        date=long_date(date) if isinstance(date, datetime.date) else "",
        landscape=template.landscape,
        open_facts=sum(shown.open for _, _, shown in head),
    )
    return mark_draft(document, context.judgment, count_brackets(document)) if draft else document


def _page_lines(template: Template, context: DocumentContext) -> tuple[str, str]:
    """The running lines of every page: project and section on the left, document and revision on the right."""
    project = context.project
    sections = project.members.get(("contract", "spec_sections"), ())
    number = project.get(("contract", "spec_sections", sections[0], "number")) if sections else None
    revision = project.get(("package", "revision"))
    left = [str(project.value(("project", "name"))), f"Section {number}" if number else ""]
    right = [f"{template.id} {template.title}", "" if revision is None else f"Revision {revision}"]
    return " | ".join(filter(None, left)), " | ".join(filter(None, right))


_HEAD = (
    ("Project", "project.name"),
    ("Project number", "project.number"),
    ("Address", "project.address"),
    ("Package", "package.number"),
    ("Revision", "package.revision"),
    ("Date", "package.date"),
    ("Purpose", "package.purpose"),
    ("Applicator", "parties.applicator.name"),
)


def _read_head(context: DocumentContext) -> list[tuple[str, str, DisplayValue]]:
    """Label, path and value of each line at the head of a document."""
    return [(label, path, context.display(tuple(path.split(".")))) for label, path in _HEAD]


def _say_fact(path: str, shown: DisplayValue) -> str:
    return words(shown.text) if path == "package.purpose" else shown.text
