"""What the writers cost."""

import math
import subprocess
import sys
import tempfile
from pathlib import Path

import markdown

from specgen.documents.catalogue import templates_folder
from specgen.formats import html
from specgen.formats.docx import word_file as docx
from tests.bench.content import as_markdown, content, floor
from tests.bench.measuring import at_least, at_most, peak, process, seconds
from tests.support import ROOT

CLEAN = ROOT / "project_examples" / "clean" / "project.yaml"
TIMES = 16


def measure() -> None:
    """Each writer against the floor, its growth, and the whole process against a general converter."""
    one, many = content(1), content(TIMES)
    words = templates_folder()
    paper = words / "letterhead.docx"
    small, large = seconds(lambda: docx.write_docx(one, paper)), seconds(lambda: docx.write_docx(many, paper), 2)
    at_most("DOCX writer x1 / floor", small / seconds(lambda: floor(one)), 4)
    at_most("DOCX writer x16 / floor", large / seconds(lambda: floor(many), 2), 4)
    at_most("DOCX writer, exponent of growth", math.log(large / small) / math.log(TIMES), 1.1)
    page = seconds(lambda: html.write_html(one, words))
    at_most("HTML writer x1 / floor", page / seconds(lambda: floor(one)), 4)
    through = seconds(lambda: markdown.markdown(as_markdown(one), extensions=["tables"]), 2)
    at_least("the same through Markdown / HTML writer", through / page, 15)
    at_most("PDF of `clean` / its bare compile", _time_pages("ours") / _time_pages("bare"), 1.2)
    with tempfile.TemporaryDirectory() as folder:
        _processes(Path(folder))
        _package(Path(folder))


def _package(folder: Path) -> None:
    """The whole package of `clean`: what a user waits for, and what it holds."""
    command = [sys.executable, "-m", "specgen", "build", str(CLEAN), "--formats", "docx,html,pdf,xlsx,svg", "-q"]
    used = min(process(*command, "--out", str(folder / f"package{number}"), times=1) for number in range(3))
    at_most("CPU seconds of the package of `clean`", used, 4)
    at_most("memory of the package of `clean`, MB", peak(*command, "--out", str(folder / "held")) / 1e6, 400)


def _time_pages(kind: str) -> float:
    """The least seconds of several processes that make the pages, or compile their content alone."""
    command = [sys.executable, "-m", "tests.bench.pages", kind]
    return min(float(subprocess.run(command, check=True, capture_output=True).stdout) for _ in range(3))


def _processes(folder: Path) -> None:
    ours = {times: [sys.executable, "-m", "tests.bench.content", str(times), str(folder)] for times in (1, TIMES)}
    held = {times: peak(*command) for times, command in ours.items()}
    bare = peak(sys.executable, "-c", "import docx, jinja2, markdown")
    more = {times: held[times] - bare for times in held}
    at_most("memory of DOCX and HTML, exponent of growth", math.log(more[TIMES] / more[1]) / math.log(TIMES), 1.1)
    try:
        import pypandoc
    except ImportError:
        print("a general converter: not measured, its package (pypandoc_binary) is not installed")
        return
    for times, goal in ((1, 4), (TIMES, 12)):
        text = folder / f"{times}.md"
        text.write_text(as_markdown(content(times)), "utf-8")
        other = [pypandoc.get_pandoc_path(), str(text), "-f", "markdown", "-o", str(folder / f"{times}.docx")]
        ratio = process(*other, times=2) / process(*ours[times], times=2)
        at_least(f"a general converter to DOCX / DOCX and HTML, whole process, x{times}", ratio, goal)
        least = peak(sys.executable, "-c", f"import subprocess; subprocess.run({other!r}, check=True)")
        at_most(f"memory of DOCX and HTML / of that converter, x{times}", held[times] / least, 1 / 3)
