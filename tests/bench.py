"""Measures speed as ratios in one run: `python -m tests.bench`. Never collected as a test.

Each figure is printed beside its goal; the machine's own speed cancels out.
"""

import gc
import io
import re
import resource
import subprocess
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable
from pathlib import Path
from xml.sax.saxutils import escape

import yaml

from specgen import pipeline
from specgen.vocabulary.block import Document, Item, Table, Text
from specgen.writing import docx, html
from specgen.writing.catalogue import templates_folder

ROOT = Path(__file__).parents[1]
CLEAN = ROOT / "project_examples" / "clean" / "project.yaml"
LARGE = ROOT / "project_examples" / "large" / "project.yaml"
TABLES, ROWS, ITEMS = 25, 1330, 400


def content(times: int) -> Document:
    """The measured content: 1,330 table rows in 25 tables and 400 list items; `times` multiplies the rows."""
    rows = ROWS * times // TABLES
    blocks = []
    for table in range(TABLES):
        header = tuple((Text(f"Column {n}"),) for n in range(4))
        body = tuple(tuple((Text(f"cell {table} {row} {n}, some words"),) for n in range(4)) for row in range(rows))
        blocks.append(Table(header, body, (25, 25, 25, 25)))
        blocks += [
            Item((Text(f"Item {n} of list {table}, a sentence of usual length for a step."),), 0, table, f"{n}.")
            for n in range(ITEMS // TABLES)
        ]
    return Document("D99", "Measured", "Measured", (("Project", "Measured"),), tuple(blocks), ())


def floor(document: Document) -> bytes:
    """The same package as plain XML text, zipped at level 6: as little as any writer of this content can do."""
    parts = []
    for block in document.blocks:
        if isinstance(block, Item):
            parts.append(
                f'<w:p><w:pPr><w:pStyle w:val="Item1"/><w:numPr><w:ilvl w:val="0"/><w:numId w:val="2"/></w:numPr>'
                f'</w:pPr><w:r><w:t xml:space="preserve">{escape(block.content[0].text)}</w:t></w:r></w:p>'
            )
            continue
        parts.append("<w:tbl>")
        for row in (block.header, *block.rows):
            parts.append("<w:tr><w:trPr><w:cantSplit/></w:trPr>")
            for cell in row:
                parts.append(
                    f'<w:tc><w:tcPr><w:tcW w:w="2340" w:type="dxa"/></w:tcPr><w:p><w:pPr><w:pStyle w:val="TableText"/>'
                    f'</w:pPr><w:r><w:t xml:space="preserve">{escape(cell[0].text)}</w:t></w:r></w:p></w:tc>'
                )
            parts.append("</w:tr>")
        parts.append("</w:tbl>")
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as zipped:
        zipped.writestr("word/document.xml", "".join(parts), compresslevel=6)
    return made.getvalue()


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """The least processor time of several runs."""
    best = float("inf")
    for _ in range(times):
        start = time.process_time()
        work()
        best = min(best, time.process_time() - start)
    return best


def process(*command: str, times: int = 7) -> float:
    """The least processor time of a whole process."""
    best = float("inf")
    for _ in range(times):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)  # noqa: S603
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        best = min(best, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return best


def doubled(text: str) -> str:
    """The large example with every elevation and joint twice, the second under another mark."""
    head, rest = text.split("elevations:\n")
    elevations, joints = rest.split("joints:\n")
    again = [re.sub(r"(?m)^  ([EJ])(\d+):", r"  \1x\2:", part) for part in (elevations, joints)]
    return f"{head}elevations:\n{elevations}{again[0]}joints:\n{joints}{again[1]}"


def plain_load(text: str) -> None:
    """A plain load by the C loader, the cyclic collector off."""
    gc.disable()
    yaml.load(text, Loader=yaml.CSafeLoader)
    gc.enable()


def checking() -> None:
    """What a check of the large example costs beyond the start of the process."""
    text = LARGE.read_text("utf-8")
    with tempfile.TemporaryDirectory() as folder:
        twice = Path(folder) / "project.yaml"
        twice.write_text(doubled(text), "utf-8")
        pipeline.check(LARGE)
        once, both = seconds(lambda: pipeline.check(LARGE)), seconds(lambda: pipeline.check(twice))
    said("check of large / plain load of it", once / seconds(lambda: plain_load(text)), 12)
    said("check of twice the elevations / of once", both / once, 2.1)


def said(what: str, ratio: float, goal: float) -> None:
    """One line of the report."""
    print(f"{what:<58} {ratio:6.2f}  goal {goal:g}  {'met' if ratio <= goal else 'NOT MET'}")


def main() -> None:
    """Print every ratio."""
    start = process(sys.executable, "-c", "import yaml, cerberus")
    said(
        "check of clean / start of yaml and cerberus",
        process(sys.executable, "-m", "specgen", "check", str(CLEAN)) / start,
        4,
    )
    checking()
    one, sixteen = content(1), content(16)
    paper = templates_folder() / "letterhead.docx"
    small, large = seconds(lambda: docx.written(one, paper)), seconds(lambda: docx.written(sixteen, paper), 2)
    said("DOCX writer x1 / floor", small / seconds(lambda: floor(one)), 4)
    said("DOCX writer x16 / floor", large / seconds(lambda: floor(sixteen), 2), 4)
    said(
        "HTML writer x1 / floor",
        seconds(lambda: html.written(one, templates_folder())) / seconds(lambda: floor(one)),
        4,
    )


if __name__ == "__main__":
    main()
