"""Binds the attachments of a project behind our own pages, each behind its divider: one PDF to send."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
from pikepdf import Array, Dictionary, ForeignObjectError, Name, Pdf, PdfError, String

from specgen.documents.composed_set import ComposedSet
from specgen.formats.page_fonts import forget_pages
from specgen.formats.pdf.attachments import Paper, read_papers
from specgen.formats.pdf.dividing import describe_papers
from specgen.formats.pdf.embedded_font import can_write, embed_font
from specgen.formats.pdf.layers import Layers
from specgen.formats.pdf.opening import UNREADABLE, refuse_damaged
from specgen.formats.pdf.page_tree import PageTree
from specgen.formats.pdf.pages import SetPages, write_pages
from specgen.formats.pdf.saving import save_pdf
from specgen.formats.pdf.stamping import Stamper
from specgen.model.problem import Problem
from specgen.reading.attached_file import refuse_attachment

_ACCESSIBLE = "{http://www.aiim.org/pdfua/ns/id/}"  # what a file says that is accessible as a whole

_COUNTED = "{http://ns.adobe.com/xap/1.0/t/pg/}NPages"


@dataclass(frozen=True, kw_only=True)
class BoundSet:
    """The whole set as one PDF, what was left out of attachments, and why some are not bound in."""

    pdf: bytes
    told: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


def bind(made: ComposedSet) -> BoundSet:
    """Our own pages of a set, with the attachments of its project bound in.

    What acts in one is taken out; one that cannot be bound in has its divider all the same, and a problem. Raises
    Refused where our own pages cannot be written.
    """
    papers = read_papers(made.context, made.home, made.templates)
    while True:
        try:
            return _bind(made, papers)
        except _Unfit as unfit:
            papers = tuple(_leave_out(paper, made) if paper.mark == unfit.mark else paper for paper in papers)


class _Unfit(Exception):
    """A page of this attachment cannot be taken over."""

    def __init__(self, mark: str) -> None:
        super().__init__(mark)
        self.mark = mark


def _leave_out(paper: Paper, made: ComposedSet) -> Paper:
    """An attachment that opens, but is not built as it should be: as one that is damaged."""
    fault = refuse_damaged(paper.name).problems[0]
    place = made.context.project.place(("attachments", paper.mark, "file"))
    problem = refuse_attachment(place, fault.message, fault.hint).problems[0]
    return Paper(mark=paper.mark, name=paper.name, problem=problem)


def _bind(made: ComposedSet, papers: tuple[Paper, ...]) -> BoundSet:
    """The set with these attachments; raises _Unfit."""
    own = write_pages(made, describe_papers(papers, made.context))
    problems = tuple(paper.problem for paper in papers if paper.problem is not None)
    told = (*own.told, *(f"left out of {p.mark}, {p.name}: {', '.join(p.left_out)}" for p in papers if p.left_out))
    if made.context.project.get(("package", "purpose")) == "design_draft":
        told, problems = (*told, *map(str, problems)), ()  # what is attached is owed later
    if not any(paper.pages for paper in papers):
        return BoundSet(pdf=own.pdf, told=told, problems=problems)
    forget_pages()  # what is merged with our own pages takes their place in memory
    return BoundSet(pdf=merge_papers(own, papers, made.templates), told=told, problems=problems)


def merge_papers(own: SetPages, papers: Sequence[Paper], templates: Path) -> bytes:
    """The PDF of all pages. The dividers are the last of our own; behind each stand the pages of its paper."""
    with pikepdf.open(BytesIO(own.pdf)) as whole:
        ordered = sorted(papers, key=lambda paper: own.firsts[paper.mark])
        starts = [own.firsts[paper.mark] for paper in ordered]
        ends = [*starts[1:], own.count]
        leaves = [page.obj for page in whole.pages]
        stamper, layers, tree = Stamper(whole, embed_font(whole, templates)), Layers(whole), PageTree(whole)
        tree.add_branch(leaves[: starts[0]])
        for paper, start, end in zip(ordered, starts, ends, strict=True):
            before = tree.count + end - start
            tree.add_branch([*leaves[start:end], *_make_pages(paper, before, own.total, stamper)])
            layers.take_over(paper.document)
        tree.finish()
        _name_bookmarks(whole, [paper.mark for paper in ordered])
        _finish(whole, own.total)
        return save_pdf(whole)


def _make_pages(paper: Paper, before: int, total: int, stamper: Stamper) -> Iterator[Any]:
    """The pages of a paper, each with its stamp; so many pages stand before them in the set."""
    if paper.document is None:
        return
    name = f"Attachment {paper.mark}" if can_write(paper.mark) else "Attachment"
    for number, page in enumerate(paper.document.pages, start=1):
        words = f"{name}, page {number} of {paper.pages} \N{MIDDLE DOT} Page {before + number} of {total}"
        try:
            yield stamper.make_page(paper.document, page, words)
        except (PdfError, ForeignObjectError, *UNREADABLE):
            raise _Unfit(paper.mark) from None


def _name_bookmarks(whole: Pdf, marks: Sequence[str]) -> None:
    """Put the mark of each attachment before its title in the bookmarks; those of the dividers are the last."""
    entry = whole.Root.Outlines.get("/Last") if "/Outlines" in whole.Root else None
    for mark in reversed(marks):
        if entry is None:
            return
        entry.Title = String(f"{mark} {entry.Title}")
        entry = entry.get("/Prev")


def _finish(whole: Pdf, total: int) -> None:
    """Number the pages as they print, and claim no more for the whole than holds for papers that others wrote."""
    whole.Root["/PageLabels"] = Dictionary(Nums=Array([0, Dictionary(S=Name.D)]))
    with whole.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as about:
        for claim in [name for name in about if name.startswith(_ACCESSIBLE)]:
            del about[claim]
        if _COUNTED in about:
            about[_COUNTED] = str(total)
