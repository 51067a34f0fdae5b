"""Composes a document from a template and a judged project: head, blocks, numbers, legend."""

import datetime
from typing import Any, Literal, cast

from specgen.documents.catalogue import Template
from specgen.documents.citing import cite_blocks
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.numbering import number_blocks, resolve_deferred
from specgen.documents.shape import check_shape
from specgen.documents.template_globals import template_globals
from specgen.model.block import Contents, Document, Inlines, Note, Strong, Text, Value
from specgen.model.finding import Judgment, Severity
from specgen.model.value_text import long_date, words


def compose_document(template: Template, context: DocumentContext, draft: bool) -> Document:
    """The document of a template; raises Refused with template and line for a mistake in it."""
    composer = Composer()
    rendered = composer.text(template.words, template_globals(context, composer), template.file, template.first_line)
    blocks = resolve_deferred(composer.blocks(rendered, template.file))
    check_shape(blocks, template, composer.lines)
    blocks = cite_blocks(blocks, context.cite)
    numbering = cast(Literal["three_part", "plain"], template.numbering)
    if numbering == "three_part":
        blocks = (Contents(), *blocks)
    if draft:
        blocks = (Note(_draft_note(context)), *blocks)
    numbered, legend = number_blocks(blocks, numbering)
    date = context.project.get(("package", "date"))
    return Document(
        id=template.id,
        title=template.title,
        project=str(context.project.value(("project", "name"))),
        facts=facts(context),
        blocks=numbered,
        legend=legend,
        running=_page_lines(template, context),
        numbering=numbering,
        draft=draft,
        date=long_date(date) if isinstance(date, datetime.date) else "",
        landscape=template.landscape,
    )


def _page_lines(template: Template, context: DocumentContext) -> tuple[str, str]:
    """The running lines of every page: project and section on the left, document and revision on the right."""
    project = context.project
    sections = project.members.get(("contract", "spec_sections"), ())
    number = project.get(("contract", "spec_sections", sections[0], "number")) if sections else None
    revision = project.get(("package", "revision"))
    left = [str(project.value(("project", "name"))), f"Section {number}" if number else ""]
    right = [f"{template.id} {template.title}", "" if revision is None else f"Revision {revision}"]
    return " | ".join(filter(None, left)), " | ".join(filter(None, right))


def facts(context: DocumentContext) -> tuple[tuple[str, str], ...]:
    """The lines at the head of every document: project, number, revision, date, purpose, applicator."""
    rows = [
        ("Project", "project.name"),
        ("Project number", "project.number"),
        ("Address", "project.address"),
        ("Package", "package.number"),
        ("Revision", "package.revision"),
        ("Date", "package.date"),
        ("Purpose", "package.purpose"),
        ("Applicator", "parties.applicator.name"),
    ]
    lines = []
    for label, path in rows:
        display_value: DisplayValue = context.display(tuple(path.split(".")))
        lines.append((label, display_value.text if path != "package.purpose" else words(display_value.text)))
    return tuple(lines)


def _draft_note(context: DocumentContext) -> Inlines:
    """The note at the top of a draft: the stops, and the number of open items."""
    stops = context.judgment.of(Severity.STOP)
    parts: list[Any] = [Strong((Text("Draft, not for submission. "),))]
    if stops:
        codes = "; ".join(f"{stop.code} ({', '.join(stop.subjects)})" for stop in stops)
        parts += [
            Text(f"{len(stops)} {'stop stands' if len(stops) == 1 else 'stops stand'}: "),
            Value(codes),
            Text(". "),
        ]
    else:
        parts.append(Text("No stop stands. "))
    parts.append(Text(_count_open_items(context.judgment)))
    return tuple(parts)


def _count_open_items(judgment: Judgment) -> str:
    """The number of open items, and a sentence on the brackets if any value is still missing."""
    count = len(judgment.open_items)
    sentence = f"{count or 'No'} {'points are' if count > 1 else 'point is'} open."
    return (
        f"{sentence} Values still to be given stand in brackets."
        if count or any(judgment.later_rings.values())
        else sentence
    )
