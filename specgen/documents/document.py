"""A template and a judged project to a finished document: head, blocks, numbers, legend."""

import datetime
from typing import Any, Literal, cast

from specgen.documents.catalogue import Template
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.numbering import numbered, settled
from specgen.documents.template_globals import names
from specgen.model.block import Block, Contents, Document, Inlines, Note, Strong, Text, Value
from specgen.model.finding import Judgment, Severity
from specgen.model.value_text import long_date, words


def made(template: Template, context: DocumentContext, draft: bool) -> Document:
    """The document of a template; raises Refused with template and line for a mistake in it."""
    composer = Composer()
    rendered = composer.text(template.words, names(context, composer), template.file, template.first_line)
    blocks: tuple[Block, ...] = composer.blocks(rendered, template.file)
    numbering = cast(Literal["three_part", "plain"], template.numbering)
    if numbering == "three_part":
        blocks = (Contents(), *blocks)
    if draft:
        blocks = (Note(_draft(context)), *blocks)
    counted, legend = numbered(settled(blocks), numbering)
    date = context.project.get(("package", "date"))
    return Document(
        template.id,
        template.title,
        str(context.project.value(("project", "name"))),
        facts(context),
        counted,
        legend,
        _running(template, context),
        numbering,
        draft,
        long_date(date) if isinstance(date, datetime.date) else "",
        template.landscape,
    )


def _running(template: Template, context: DocumentContext) -> tuple[str, str]:
    """What every page repeats: project and section, then document and revision."""
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
    made_facts = []
    for label, path in rows:
        shown: DisplayValue = context.display(tuple(path.split(".")))
        made_facts.append((label, shown.text if path != "package.purpose" else words(shown.text)))
    return tuple(made_facts)


def _draft(context: DocumentContext) -> Inlines:
    """What a draft opens with: the stops that stand, and how many points are open."""
    stops = context.judgment.of(Severity.STOP)
    told: list[Any] = [Strong((Text("Draft, not for submission. "),))]
    if stops:
        codes = "; ".join(f"{stop.code} ({', '.join(stop.subjects)})" for stop in stops)
        told += [
            Text(f"{len(stops)} {'stop stands' if len(stops) == 1 else 'stops stand'}: "),
            Value(codes),
            Text(". "),
        ]
    else:
        told.append(Text("No stop stands. "))
    told.append(Text(_open(context.judgment)))
    return tuple(told)


def _open(judgment: Judgment) -> str:
    """How many points are open; that what is not owed yet stands in brackets too."""
    count = len(judgment.open_items)
    told = f"{count or 'No'} {'points are' if count > 1 else 'point is'} open."
    return (
        f"{told} Values still to be given stand in brackets." if count or any(judgment.later_rings.values()) else told
    )
