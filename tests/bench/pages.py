"""The pages of `clean` as a process of its own, as the library keeps what it has set once.

`python -m tests.bench.pages ours` makes its PDF, `bare` compiles the same content untagged, `none` only prepares it.
"""

import json
import sys
from pathlib import Path

import typst

from specgen import pipeline
from specgen.documents import document
from specgen.documents.catalogue import templates, templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import DocumentContext
from specgen.formats.pdf.face import read_face
from specgen.formats.pdf.pages import write_pages
from specgen.formats.pdf.set_data import describe_set

CLEAN = Path(__file__).parents[2] / "project_examples" / "clean" / "project.yaml"


def main(kind: str) -> None:
    """Prepare the set, and do with it what is measured."""
    case = pipeline.check(CLEAN)
    context = DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)
    composed = [document.compose_document(t, context, False) for t in templates() if t.id != "D00"]
    made = ComposedSet(documents=tuple(composed), context=context, templates=templates_folder())
    if kind == "ours":
        write_pages(made)
        return
    data = describe_set(made, (), read_face(templates_folder() / "letterhead.docx"))
    files = {"main.typ": (templates_folder() / "set.typ").read_bytes(), "data.json": json.dumps(data).encode()}
    if kind == "bare":
        fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(templates_folder() / "fonts")])
        typst.compile(files, format="pdf", font_paths=fonts, pdf_tags=False)


main(*sys.argv[1:])
