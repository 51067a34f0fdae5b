"""What stands on the page before an attachment: what it is, what it covers, which item of the register it answers."""

from collections.abc import Iterator

from specgen.documents.attachments import name_material
from specgen.documents.context import DocumentContext
from specgen.documents.marks import name_member
from specgen.formats.pdf.attachments import Paper
from specgen.formats.pdf.divider import Divider
from specgen.model.value_text import count

_ATTACHMENTS, _ITEMS = "attachments", ("contract", "items")


def describe_papers(papers: tuple[Paper, ...], context: DocumentContext) -> tuple[Divider, ...]:
    """The divider of each paper, in their order."""
    return tuple(_describe(paper, context) for paper in papers)


def _describe(paper: Paper, context: DocumentContext) -> Divider:
    title = _given(context, paper.mark, "title") or paper.name
    lines = (*_tell_what(paper.mark, context), *_tell_items(paper.mark, context), *_tell_pages(paper))
    return Divider(mark=paper.mark, title=title, lines=lines, pages=paper.pages)


def _given(context: DocumentContext, mark: str, name: str) -> str:
    """A field of an attachment as it prints; empty where it is not given."""
    path = (_ATTACHMENTS, mark, name)
    return context.display(path).text if context.project.is_given(path) else ""


def _tell_what(mark: str, context: DocumentContext) -> Iterator[str]:
    """`Test report, ASTM E2568, January 20, 2026`, then what it covers, the wall tested, and how long it is valid."""
    kind, standard, issued = (_given(context, mark, name) for name in ("kind", "standard", "issued_on"))
    what = ", ".join(filter(None, (kind, standard, issued)))
    if what:
        yield what[:1].upper() + what[1:]
    until, covered = _given(context, mark, "valid_to"), context.project.get((_ATTACHMENTS, mark, "covers"))
    if until:
        yield f"Valid through {until}"
    if covered:
        yield f"Covers: {', '.join(map(name_material, covered))}"
    tested = context.project.get((_ATTACHMENTS, mark, "assembly"))
    if tested is not None:
        yield f"Tested wall: {name_member(context, 'walls', tested.mark)}"


def _tell_items(mark: str, context: DocumentContext) -> Iterator[str]:
    """`Answers register item I3, Section 07 24 00, paragraph 1.5.A: Product data, gloss coat`, one line an item."""
    for item in context.project.members.get(_ITEMS, ()):
        answered_by = context.project.values.get((*_ITEMS, item, "attachments"), ())
        if mark in answered_by:
            yield f"Answers register item {item}{_place_item(item, context)}"


def _place_item(item: str, context: DocumentContext) -> str:
    section, paragraph, title = (context.project.get((*_ITEMS, item, n)) for n in ("section", "paragraph", "title"))
    placed = (f", Section {section}" if section else "") + (f", paragraph {paragraph}" if paragraph else "")
    return placed + (f": {title}" if title else "")


def _tell_pages(paper: Paper) -> Iterator[str]:
    """How many pages follow, or why none does."""
    if paper.problem is None:
        yield count(paper.pages, "page")
        if paper.left_out:
            yield f"Left out in binding: {', '.join(paper.left_out)}"
    else:
        yield f"Not bound in: {paper.problem.message}."
