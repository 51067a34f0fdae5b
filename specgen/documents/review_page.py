"""The summary for review: where a package stands and what it holds, on one page that leads to its files."""

import dataclasses
from collections.abc import Iterable, Iterator
from typing import Any

from specgen.documents.alike_measures import join_alike
from specgen.documents.banner import mark_draft
from specgen.documents.citing import cite_blocks
from specgen.documents.composed_set import ComposedSet
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.document import facts
from specgen.documents.measures import list_measures
from specgen.documents.numbering import number_blocks
from specgen.documents.package_files import PackageFiles
from specgen.documents.plain_text import plain_text
from specgen.documents.required_documents import count_pending, list_measured
from specgen.documents.template_globals import set_table
from specgen.documents.views import open_by_party, still_due, to_verify
from specgen.documents.views import register as submittal_register
from specgen.documents.views.findings import table as set_findings
from specgen.documents.views.verdicts import set_verdicts
from specgen.documents.views.who_verifies import tell_verifiers
from specgen.documents.waiting_rules import count_not_evaluated
from specgen.judging.owners import looks_for_document
from specgen.model.block import Block, CheckBox, Contents, Document, Figure, Inline, Inlines, Paragraph, Part, Text
from specgen.model.finding import Finding, Severity
from specgen.model.value_text import count

TITLE = "Summary for review"
_OPEN = "Open items by party"
_DRAWN = "elevations"  # the name of the figures that are shown
_END = Text(".")


def compose_review_page(made: ComposedSet, names: Iterable[str]) -> Document:
    """The page as a document; `names` are those of all other files of the package."""
    context = made.context
    files = PackageFiles(made, tuple(names))
    drafted = any(document.draft for document in made.documents)
    blocks = cite_blocks(tuple(_list_blocks(files, drafted)), context.cite)
    numbered, legend = number_blocks(blocks, "plain", landscape=True)
    number = context.project.get(("package", "number"))
    page = Document(
        id=f"Submittal {number}" if number else "Package",
        title=TITLE,
        project=str(context.project.value(("project", "name"))),
        facts=facts(context),
        blocks=tuple(_keep_numbers(numbered, files)),
        legend=legend,
        firm=str(context.project.get(("parties", "applicator", "name")) or ""),
        landscape=True,
    )
    return mark_draft(page, context, whole=True) if drafted else page


def _list_blocks(files: PackageFiles, drafted: bool) -> Iterator[Block]:
    context, composer = files.made.context, Composer()
    yield Contents()
    yield from _set_section("Suitability of walls for the finish", set_verdicts(context))
    yield from _set_section("Findings", _list_findings(files), _tell_findings(files))
    yield from _set_section("Documents", files.list_rows(drafted))
    drawings = list(_list_drawings(files))
    if drawings:
        yield Part((Text("Drawings"),))
        yield from drawings
    register = submittal_register.rows(context, composer)
    if len(register):
        yield from _set_section("Submittal register", register)
    asked = open_by_party.rows(context, composer)
    asked = asked if len(asked) else still_due.rows(context, composer)
    yield from _set_section(_OPEN, asked, () if len(asked) else (Text("None."),))
    verified = _list_unverified(files, composer)
    if len(verified):
        title = "Verify before submittal" if drafted else "Figures not verified against a published text"
        yield from _set_section(title, verified, (Text(tell_verifiers(context)),))


def _set_section(title: str, view: TableView, said: Inlines = ()) -> Iterator[Block]:
    """A heading, what is said below it, and its table where that has rows."""
    yield Part((Text(title),))
    if said:
        yield Paragraph(said)
    if len(view):
        yield set_table(view)


def _list_kinds(context: DocumentContext) -> tuple[tuple[str, tuple[Finding, ...]], ...]:
    """The findings by kind, the gravest first; what a document settles stands among the open items."""
    judgment = context.judgment
    stops = tuple(f for f in judgment.of(Severity.STOP) if not looks_for_document(f))
    return ("Stop", stops), ("Caution", list_measured(context)), ("Note", judgment.of(Severity.NOTE))


def _list_findings(files: PackageFiles) -> TableView:
    """One row for each measure, with the documents that it affects."""
    context, lines, widths = files.made.context, list[tuple[Any, ...]](), (7, 9, 12, 25, 24, 14, 9)
    for kind, found in _list_kinds(context):
        affected = {finding.code: finding.documents for finding in found}
        told = set_findings(context, found, "Finding").rows
        for row, measure in zip(told, join_alike(list_measures(context.project, found)), strict=True):
            ids = {name for code in measure.codes for name in affected[code]}
            lines.append((kind, *row[:-1], files.link_ids(sorted(ids))))
    return TableView(("Kind", "Item", "Where", "Finding", "Measure", "By, before", "Affects"), tuple(lines), widths)


def _tell_findings(files: PackageFiles) -> Inlines:
    """What is found where that is nothing, what it rests on, and how many documents are still required."""
    context, said = files.made.context, list[Inline]()
    if any(found for _, found in _list_kinds(context)):
        said += [Text("Basis of each finding: see "), *files.link_ids(["D05"]), _END]
    elif count_not_evaluated(context):
        said += [Text("No finding in the rules evaluated; rules not evaluated: see "), *files.link_ids(["D02"]), _END]
    else:
        said.append(Text("No exceptions."))
    pending = count_pending(context)
    return (*said, Text(f" {count(pending, 'document')} still required: see {_OPEN}." if pending else ""))


def _list_drawings(files: PackageFiles) -> Iterator[Figure]:
    """The elevations as the documents show them, each leading to its place there."""
    for document in files.made.documents:
        for place, block in enumerate(document.blocks):
            if isinstance(block, Figure) and block.name == _DRAWN:
                link = files.link_block(document, place, plain_text(block.caption))
                yield dataclasses.replace(block, caption=(link,), number=f"{document.id}, {block.number}")


def _keep_numbers(blocks: Iterable[Block], files: PackageFiles) -> Iterator[Block]:
    """The blocks, each figure by the number that its document gives it."""
    numbers = (drawing.number for drawing in _list_drawings(files))
    for block in blocks:
        yield dataclasses.replace(block, number=next(numbers)) if isinstance(block, Figure) else block


def _list_unverified(files: PackageFiles, composer: Composer) -> TableView:
    """What nobody has verified, without the boxes of the document in which it is recorded."""
    view = to_verify.rows(files.made.context, composer)
    lines = tuple(
        (text, what, _unbox(value), files.link_ids(used.split(", "))) for text, what, value, used, _ in view.rows
    )
    return TableView(to_verify.HEADER[:-1], lines, (22, 46, 18, 14))


def _unbox(cell: Iterable[Any]) -> list[Any]:
    return [Text(part.label) if isinstance(part, CheckBox) else part for part in cell]
