"""The data of a set through typst: a tagged PDF, and where its documents and dividers begin."""

import io
import json
import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from specgen.documents.catalogue import templates_folder
from specgen.model.problem import refuse

STANDARD = "ua-1"
# The names of the first pages in the file.
_FIRST = "first-"


@dataclass(frozen=True, slots=True)
class CompiledPages:
    """A PDF, the number of its pages, and the first page of each document and divider, from 0, in their order."""

    pdf: bytes
    count: int
    firsts: tuple[int, ...]
    told: tuple[str, ...] = ()


def compile_pages(data: dict[str, Any], pictures: dict[str, bytes]) -> CompiledPages:
    """The pages of a set; raises Refused where the library is not installed."""
    template = (templates_folder() / "set.typ").read_bytes()
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    files = {"main.typ": template, "data.json": text.encode(errors="replace"), **pictures}
    pdf = _compile(files)
    return _read_places(pdf)


def _compile(files: dict[str, bytes]) -> bytes:
    import typst

    return bytes(typst.compile(files, format="pdf", font_paths=_load_fonts(), pdf_standards=[STANDARD], timestamp=0))


@lru_cache(maxsize=1)
def _load_fonts() -> Any:
    """Our own fonts, and those that the library holds for formulas and other scripts; none of the system."""
    import typst

    return typst.Fonts(include_system_fonts=False, font_paths=[str(templates_folder() / "fonts")])


def _read_places(pdf: bytes) -> CompiledPages:
    """Count the pages, and find those that the template has named."""
    import pikepdf

    with pikepdf.open(io.BytesIO(pdf)) as opened:
        places = {page.obj.objgen: number for number, page in enumerate(opened.pages)}
        names = pikepdf.NameTree(opened.Root.Names.Dests)
        found = {
            int(name.removeprefix(_FIRST)): places[target[0].objgen]
            for name, target in names.items()
            if name.startswith(_FIRST)
        }
        return CompiledPages(pdf, len(places), tuple(found[number] for number in sorted(found)))
