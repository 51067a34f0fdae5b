"""The pages of `clean` in a process of their own, as the library keeps what it has set once.

`python -m tests.bench.pages ours` makes its PDF, `bare` compiles the same content without tags; each prints its
seconds, its libraries loaded.
"""

import json
import sys
import time
from pathlib import Path

import pikepdf  # noqa: F401 (loaded before the clock starts)
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
    data = describe_set(made, (), read_face(templates_folder() / "letterhead.docx"))
    files = {"main.typ": (templates_folder() / "set.typ").read_bytes()}
    for block in (block for one in data["documents"] for block in one["blocks"] if block["is"] == "figure"):
        block["file"] = f"figure{len(files)}.svg"
        files[block["file"]] = block.pop("svg").encode()
    files["data.json"] = json.dumps(data).encode()
    start = time.process_time()
    if kind == "ours":
        write_pages(made)
    else:
        fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(templates_folder() / "fonts")])
        typst.compile(files, format="pdf", font_paths=fonts, pdf_tags=False)
    print(time.process_time() - start)


main(*sys.argv[1:])
