"""The pages of the set that are ours: cover, contents, documents and the dividers of what is bound in, as one PDF."""

from collections.abc import Sequence
from dataclasses import dataclass

from specgen.documents.composed_set import ComposedSet
from specgen.formats.pdf.compiling import compile_pages
from specgen.formats.pdf.divider import Divider
from specgen.formats.pdf.face import read_face
from specgen.formats.pdf.set_data import describe_set


@dataclass(frozen=True, slots=True)
class SetPages:
    """Our own pages, each numbered by its place in the whole set.

    `pdf` holds `count` pages; with the pages of attachments behind their dividers the set has `total`. `firsts` is the
    first page, from 0, of each document by its id and of each divider by its mark, as they lie in `pdf`. `told` is
    what the user is told beside the file.
    """

    pdf: bytes
    count: int
    total: int
    firsts: dict[str, int]
    told: tuple[str, ...] = ()


def write_pages(made: ComposedSet, dividers: Sequence[Divider] = ()) -> SetPages:
    """Our own pages of a set, with room in their numbers for the pages behind each divider.

    Raises Refused where the library is not installed, or where the letterhead cannot serve.
    """
    face = read_face(made.letterhead or made.templates / "letterhead.docx")
    compiled = compile_pages(describe_set(made, dividers, face), face.pictures)
    names = [*(document.id for document in made.documents), *(divider.mark for divider in dividers)]
    return SetPages(
        pdf=compiled.pdf,
        count=compiled.count,
        total=compiled.count + sum(divider.pages for divider in dividers),
        firsts=dict(zip(names, compiled.firsts, strict=True)),
        told=compiled.told,
    )
