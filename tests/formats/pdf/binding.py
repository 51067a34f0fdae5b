"""What the tests of the bound set share: papers bound behind pages that stand in for ours, and a second reader."""

from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdf

from specgen.documents.catalogue import templates_folder
from specgen.documents.context import DocumentContext
from specgen.formats.pdf.attachments import Paper, read_papers
from specgen.formats.pdf.bind import merge_papers
from specgen.formats.pdf.opening import open_paper
from specgen.formats.pdf.pages import SetPages
from tests.formats.pdf.made_papers import make_paper
from tests.support import context_of, project_of


def open_as(mark: str, content: bytes) -> Paper:
    opened = open_paper(content, f"{mark}.pdf", templates_folder())
    return Paper(mark=mark, name=f"{mark}.pdf", document=opened.document, left_out=opened.left_out)


def bind_behind(papers: list[Paper], own: int = 1) -> bytes:
    """A set of so many pages of ours, then each paper behind one more."""
    pages = make_paper(own + len(papers), "Ours")
    firsts = {paper.mark: own + number for number, paper in enumerate(papers)}
    total = own + sum(1 + paper.pages for paper in papers)
    standing = SetPages(pdf=pages, count=own + len(papers), total=total, firsts=firsts)
    return merge_papers(standing, papers, templates_folder())


def bound(*contents: bytes) -> pypdf.PdfReader:
    """A set of one page of ours and these papers, as read by the second library."""
    return read(bind_behind([open_as(f"A{number}", content) for number, content in enumerate(contents, 1)]))


def read(content: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(content), strict=True)


def texts(reader: pypdf.PdfReader) -> list[str]:
    return [page.extract_text() for page in reader.pages]


def objects(reader: pypdf.PdfReader) -> Iterator[Any]:
    """Every object of a file that its reader can reach, by their numbers."""
    for numbers in (reader.xref.values(), [dict.fromkeys(reader.xref_objStm)]):
        for number in {n for those in numbers for n in those}:
            yield reader.get_object(pypdf.generic.IndirectObject(number, 0, reader))


def papers_of(folder: Path, **attachments: Any) -> tuple[Paper, ...]:
    """The papers of a small project with these attachments: a name of a file, or the whole entry."""
    entries = {mark: {"file": entry} if isinstance(entry, str) else entry for mark, entry in attachments.items()}
    project = project_of(folder, {"attachments": entries})
    return read_papers(documents_of(project), folder, templates_folder())


def documents_of(project: Any) -> DocumentContext:
    judging = context_of(project)
    from specgen.judging.judge import judge

    return DocumentContext(project, judging.standards, judge(judging, ()), judging.resolve)
