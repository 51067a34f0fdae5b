"""The data of a set through typst: a tagged PDF, and where its documents and dividers begin."""

import io
import json
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.documents.catalogue import templates_folder
from specgen.formats.page_fonts import load_fonts
from specgen.formats.pdf.libraries import require_libraries

STANDARD = "ua-1"
# The names of the first pages in the file.
_FIRST = "first-"
# What the library says of each sign that none of its fonts holds, and an escape in its words.
_SHAPELESS = re.compile(r'the text `"((?:[^"\\]|\\.)*)"` could not be displayed')
_ESCAPE = re.compile(r"\\u\{([0-9a-fA-F]+)\}")


@dataclass(frozen=True, slots=True)
class CompiledPages:
    """A PDF, the number of its pages, and the first page of each document and divider, from 0, in their order.

    `shapeless` are the signs that no font holds: their numbers are printed in their place.
    """

    pdf: bytes
    count: int
    firsts: tuple[int, ...]
    shapeless: tuple[str, ...] = ()


def compile_pages(data: dict[str, Any], pictures: dict[str, bytes]) -> CompiledPages:
    """The pages of a set; raises Refused where the libraries are not installed."""
    require_libraries()
    drawings = dict(_take_drawings(data))
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    del data  # the pages need the most memory of all
    files = {"main.typ": (templates_folder() / "set.typ").read_bytes(), **pictures}
    pdf, shapeless = _compile_all_signs(text, drawings, files)
    return _find_places(pdf, shapeless)


def _take_drawings(data: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """The drawings of a set as files, whose names stand in their place."""
    figures = (block for one in data["documents"] for block in one["blocks"] if block["is"] == "figure")
    for number, figure in enumerate(figures):
        figure["file"] = f"figure{number}.svg"
        yield figure["file"], figure.pop("svg")


def _compile_all_signs(text: str, drawings: dict[str, str], files: dict[str, bytes]) -> tuple[bytes, tuple[str, ...]]:
    """The PDF, and the signs that print as their numbers, as the standard allows none without a shape.

    A drawing is set in one font alone: a sign that only drawings lack is a number in them, and itself elsewhere.
    """
    import typst

    drawn: dict[int, str] = {}
    written: dict[int, str] = {}
    while True:
        made = {"data.json": text.translate(written), **{name: svg.translate(drawn) for name, svg in drawings.items()}}
        try:
            pdf = _compile(files | {name: part.encode(errors="replace") for name, part in made.items()})
        except typst.TypstError as error:
            found = _find_shapeless(error.diagnostic) - written.keys()
            if not found:
                raise
            named = {code: "" if _is_unseen(code) else f"[U+{code:04X}]" for code in found}
            first = {code: sign for code, sign in named.items() if code not in drawn and _is_drawn(code, drawings)}
            drawn |= named
            written |= {code: sign for code, sign in named.items() if code not in first}
        else:
            return pdf, tuple(chr(code) for code in sorted(drawn) if drawn[code])


def _is_drawn(code: int, drawings: dict[str, str]) -> bool:
    return any(chr(code) in svg for svg in drawings.values())


def _find_shapeless(said: str) -> set[int]:
    """The signs that no font holds, by their numbers; marks that are not seen count where they stand alone."""
    found: set[int] = set()
    for text in _SHAPELESS.findall(said):
        cluster = {ord(sign) for sign in _ESCAPE.sub(lambda code: chr(int(code[1], 16)), text) if not sign.isascii()}
        found |= {code for code in cluster if not _is_unseen(code)} or cluster
    return found


def _is_unseen(code: int) -> bool:
    """Whether a sign has no shape of its own: it joins, parts or turns those beside it."""
    return unicodedata.category(chr(code)) == "Cf"


def _compile(files: dict[str, bytes]) -> bytes:
    import typst

    # The stubs of the library lack files by their names.
    compile_files: Any = typst.compile
    made = compile_files(files, format="pdf", font_paths=load_fonts(), pdf_standards=[STANDARD], timestamp=0)
    return bytes(made)


def _find_places(pdf: bytes, shapeless: tuple[str, ...]) -> CompiledPages:
    """The PDF with its pages counted, and those found that the template has named."""
    import pikepdf

    with pikepdf.open(io.BytesIO(pdf)) as opened:
        places = {page.obj.objgen: number for number, page in enumerate(opened.pages)}
        found = {
            int(name.removeprefix(_FIRST)): places[target[0].objgen]
            for name, target in pikepdf.NameTree(opened.Root.Names.Dests).items()
            if name.startswith(_FIRST)
        }
    return CompiledPages(pdf, len(places), tuple(found[number] for number in sorted(found)), shapeless)
