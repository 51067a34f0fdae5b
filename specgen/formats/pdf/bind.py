"""Binds the attachments of a project behind our own pages, each behind its divider: one PDF to send."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

from specgen.documents.composed_set import ComposedSet
from specgen.formats.pdf.active_content import disarm, list_active
from specgen.formats.pdf.attachments import Paper, read_papers
from specgen.formats.pdf.dividing import describe_papers
from specgen.formats.pdf.embedded_font import can_write, embed_font
from specgen.formats.pdf.layers import Layers
from specgen.formats.pdf.pages import SetPages, write_pages
from specgen.formats.pdf.stamping import Stamper
from specgen.model.problem import Problem

if TYPE_CHECKING:
    from pikepdf import Pdf

_ACCESSIBLE = "{http://www.aiim.org/pdfua/ns/id/}"  # what a file says that is accessible as a whole


@dataclass(frozen=True, kw_only=True)
class BoundSet:
    """The whole set as one PDF, what was left out of attachments, and why some are not bound in."""

    pdf: bytes
    told: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


def bind(made: ComposedSet) -> BoundSet:
    """Our own pages of a set, with the attachments of its project bound in.

    One that cannot be bound in has its divider all the same, and a problem. Raises Refused where our own pages cannot
    be written.
    """
    papers = read_papers(made.context, made.home, made.templates)
    own = write_pages(made, describe_papers(papers, made.context))
    problems = tuple(paper.problem for paper in papers if paper.problem is not None)
    if not any(paper.pages for paper in papers):
        return BoundSet(pdf=own.pdf, told=own.told, problems=problems)
    told = [*own.told, *_disarm_each(papers)]
    return BoundSet(pdf=_merge(own, papers, made), told=tuple(told), problems=problems)


def _disarm_each(papers: Iterable[Paper]) -> Iterator[str]:
    """Take what acts out of each paper, and say so once of each."""
    done: dict[int, tuple[str, ...]] = {}
    for paper in papers:
        if paper.document is None:
            continue
        if id(paper.document) not in done:
            done[id(paper.document)] = list_active(paper.document)
            disarm(paper.document)
        left_out = done[id(paper.document)]
        if left_out:
            yield f"left out of {paper.mark}, {paper.name}: {', '.join(left_out)}"


def _merge(own: SetPages, papers: Iterable[Paper], made: ComposedSet) -> bytes:
    """The PDF of all pages. The dividers are the last of our own; they are taken off, and put back one by one."""
    import pikepdf

    with pikepdf.open(BytesIO(own.pdf)) as whole:
        ordered = sorted(papers, key=lambda paper: own.firsts[paper.mark])
        starts = [own.firsts[paper.mark] for paper in ordered]
        ends = [*starts[1:], own.count]
        leaves = list(whole.pages)
        del whole.pages[starts[0] :]
        stamper = Stamper(whole, embed_font(whole, made.templates))
        layers = Layers(whole)
        for paper, start, end in zip(ordered, starts, ends, strict=True):
            whole.pages.extend(leaves[start:end])
            _append(whole, paper, own.total, stamper)
            layers.take_over(paper.document)
        _finish(whole)
        return _save(whole)


def _append(whole: "Pdf", paper: Paper, total: int, stamper: Stamper) -> None:
    """Put the pages of a paper at the end of the set, each with its stamp."""
    if paper.document is None:
        return
    name = f"Attachment {paper.mark}" if can_write(paper.mark) else "Attachment"
    before = len(whole.pages)
    for number, page in enumerate(paper.document.pages, start=1):
        words = f"{name}, page {number} of {paper.pages} \N{MIDDLE DOT} Page {before + number} of {total}"
        whole.pages.append(stamper.make_page(paper.document, page, words))


def _finish(whole: "Pdf") -> None:
    """Number the pages as they print, and claim no more for the whole than holds for papers that others wrote."""
    from pikepdf import Array, Dictionary, Name

    whole.Root.PageLabels = Dictionary(Nums=Array([0, Dictionary(S=Name.D)]))
    with whole.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as about:
        for claim in [name for name in about if name.startswith(_ACCESSIBLE)]:
            del about[claim]


def _save(whole: "Pdf") -> bytes:
    from pikepdf import ObjectStreamMode

    written = BytesIO()
    whole.save(written, deterministic_id=True, object_stream_mode=ObjectStreamMode.generate, compress_streams=True)
    return written.getvalue()
