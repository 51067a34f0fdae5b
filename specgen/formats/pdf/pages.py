"""The pages of the set that are ours: cover, contents, documents and the dividers of what is bound in, as one PDF."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from specgen.documents.composed_set import ComposedSet
from specgen.formats.page_fonts import forget_pages
from specgen.formats.pdf.compiling import compile_pages
from specgen.formats.pdf.divider import Divider
from specgen.formats.pdf.face import read_face
from specgen.formats.pdf.libraries import require_libraries
from specgen.formats.pdf.set_data import describe_set
from specgen.model.forbidden_characters import name_character
from specgen.model.value_text import count


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


# No part of a name is longer.
_MOST_NUMBER = 80
# So many signs are named in a message.
_MOST_NAMED = 3


def name_file(made: ComposedSet) -> str:
    """The name of the file of a set: `submittal-07-24-00-002-r0.pdf`; `submittal.pdf` where it has no number."""
    number, revision = (made.context.project.get(("package", name)) for name in ("number", "revision"))
    plain = re.sub(r"[^\w.-]+", "-", str(number or ""))[:_MOST_NUMBER].strip("-.")
    return f"submittal-{plain}-r{revision or 0}.pdf" if plain else "submittal.pdf"


def write_pages(made: ComposedSet, dividers: Sequence[Divider] = ()) -> SetPages:
    """Our own pages of a set, with room in their numbers for the pages behind each divider.

    Raises Refused where the library is not installed, or where the letterhead cannot serve.
    """
    face = read_face(made.letterhead or made.templates / "letterhead.docx")
    require_libraries()
    forget_pages()  # the whole set needs more memory than all else
    compiled = compile_pages(describe_set(made, dividers, face), face.pictures)
    names = [*(document.id for document in made.documents), *(divider.mark for divider in dividers)]
    return SetPages(
        pdf=compiled.pdf,
        count=compiled.count,
        total=compiled.count + sum(divider.pages for divider in dividers),
        firsts=dict(zip(names, compiled.firsts, strict=True)),
        told=(*face.told, *_tell_shapeless(compiled.shapeless)),
    )


def _tell_shapeless(signs: tuple[str, ...]) -> tuple[str, ...]:
    """What the user is told of signs that the fonts of the PDF do not hold."""
    if not signs:
        return ()
    named = ", ".join(name_character(sign) for sign in signs[:_MOST_NAMED]) + ", ..." * (len(signs) > _MOST_NAMED)
    return (f"the fonts of the PDF lack {count(len(signs), 'sign')}, printed as numbers: {named}",)
