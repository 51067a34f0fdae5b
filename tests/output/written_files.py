"""The files that commands write of the examples, as text: what a reader of them has in hand, a line for each part."""

import io
import json
import re
import zipfile
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import chdir, redirect_stderr, redirect_stdout
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import openpyxl

from specgen.cli import main
from specgen.formats.pdf.face import read_face
from specgen.formats.pdf.set_data import describe_set
from tests.formats.docx.letterheads import firm, kept
from tests.formats.pdf.support import set_of
from tests.page_text import page_text
from tests.support import EXAMPLES

# Each call, and the files of it that are read here.
CALLS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("season", "record", ("D10-*.html", "D12-E3-*.html", "D21-*.html", "D22-*.html")),
    ("season", "record --blank weather", ("blank.csv", "blank.yaml", "blank.xlsx")),
    ("clean", "weather --hours hours.csv", ("weather-E2.svg", "weather.json")),
    ("metric", "ask", ("*.docx", "*.xlsx")),
    ("metric", "ask --table openings", ("*.xlsx",)),
    ("gable-hall", "layout --elevation E2", ("*.dxf", "*.csv", "layout.json")),
    ("metric", "build --draft --only D00,D10 --formats docx --letterhead firm.docx", ("D*.docx",)),
    ("clean", "build --only D03,D07,D19 --formats csv,xlsx", ("*.csv", "*.xlsx")),
    ("clean", "build --only D01 --formats docx", ("D01*.docx",)),
)
# Calls of which each element of a page is read, with its attributes and the rules of its style.
PAGES = (("clean", "build --only D01,D15 --formats html", ("D*.html",)),)
_SET = ("D01", "D10")  # a table of facts, and a form


def file_texts() -> dict[str, str]:
    """The text of each file, by the example and the name of the file."""
    texts = {name: text for example, call, files in CALLS for name, text in written_by(example, call, files)}
    for example, call, files in PAGES:
        texts |= {name: in_lines(text) for name, text in written_by(example, call, files, Path.read_text)}
    return texts | {"clean-set.json": set_text()}


def written_by(
    example: str, call: str, files: tuple[str, ...], read: Callable[[Path], str] | None = None
) -> Iterator[tuple[str, str]]:
    """The texts of these files of a call, as `read` reads them."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        letterhead = str(kept(folder, firm()))
        words = [letterhead if word == "firm.docx" else word for word in call.split()]
        outs = [folder / file for file in files] if "--blank" in words else [folder / "out"]
        for out in outs:
            run([words[0], "project.yaml", *words[1:], "--out", str(out)], EXAMPLES / example)
        place = folder if "--blank" in words else folder / "out"
        for file in sorted(path for pattern in files for path in place.glob(pattern)):
            yield f"{example}-{file.name}.txt", (read or text_of)(file)


def run(words: list[str], folder: Path) -> None:
    """Run a command in a folder, and let it tell nobody."""
    silent = io.StringIO()
    with chdir(folder), redirect_stdout(silent), redirect_stderr(silent):
        ended = main(words)
    assert ended in (0, 1), silent.getvalue()


def text_of(file: Path) -> str:
    """A file as text, each of its parts in a line."""
    return READERS[file.suffix](file.read_bytes())


def read_page(content: bytes) -> str:
    """What a page says, and the strokes of its drawings."""
    drawings = re.findall(r"<svg.*?</svg>", content.decode(), re.DOTALL)
    return page_text(content) + "".join(map(in_lines, drawings))


def in_lines(text: str) -> str:
    """Elements, each in a line of its own."""
    return text.replace("><", ">\n<") + "\n"


def read_word_file(content: bytes) -> str:
    """The elements of body, header, and footer of a Word file, each once with how often it stands there."""
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        names = [
            name for name in sorted(zipped.namelist()) if re.fullmatch(r"word/(document|header|footer).*xml", name)
        ]
        return "".join(f"{name}\n{count_elements(zipped.read(name).decode())}" for name in names)


def count_elements(text: str) -> str:
    """Each element with how often it stands, in the order in which they come."""
    return "".join(f"{number:>4} {line}\n" for line, number in Counter(in_lines(text).splitlines()).items())


def read_workbook(content: bytes) -> str:
    """The sheets of a workbook as a second library reads them: pages, columns, cells with their looks, choices."""
    return "".join(line + "\n" for page in openpyxl.load_workbook(io.BytesIO(content)) for line in list_page(page))


def list_page(page: Any) -> Iterator[str]:
    """A sheet: how it prints, how wide its columns are, its cells, and what may be chosen where."""
    head, foot, setup = page.oddHeader, page.oddFooter, page.page_setup
    parts = (part.text for side in (head, foot) for part in (side.left, side.center, side.right))
    yield f"== {page.title}: {page.sheet_state}, panes {page.freeze_panes}, titles {page.print_title_rows}"
    yield f"{setup.orientation}, paper {setup.paperSize}, {setup.fitToWidth} wide; {' | '.join(map(str, parts))}"
    yield "widths " + ", ".join(f"{name} {column.width:g}" for name, column in sorted(page.column_dimensions.items()))
    for row in page.iter_rows():
        for cell in row:
            if cell.value not in (None, ""):
                look = (
                    f"{cell.number_format}{' bold' if cell.font.b else ''}{'' if cell.protection.locked else ' open'}"
                )
                yield f"{cell.coordinate} [{look}] {cell.value!r}"
    for rule in page.data_validations.dataValidation:
        yield f"choice {rule.sqref}: {rule.formula1}; {rule.prompt}; {rule.errorTitle}; {rule.error}"


def set_text() -> str:
    """Two documents of a set as they are handed to the typesetter, on the paper of a firm."""
    with TemporaryDirectory() as folder:
        face = read_face(kept(Path(folder), firm()))
        return (
            json.dumps(describe_set(set_of("clean", *_SET), (), face), indent=1, default=str, ensure_ascii=False) + "\n"
        )


READERS: dict[str, Callable[[bytes], str]] = {
    ".html": read_page,
    ".docx": read_word_file,
    ".xlsx": read_workbook,
    **dict.fromkeys((".csv", ".yaml", ".json", ".dxf"), lambda content: content.decode("utf-8-sig")),
    ".svg": lambda content: in_lines(content.decode()),
}
