"""What is told where a library that an extra installs is not there."""

import builtins
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

from specgen.formats import png
from specgen.formats.png import write_png
from specgen.reading.records.given import read_given
from specgen.reading.records.reading import survey_records
from specgen.reading.workbook_reading import read_workbook
from tests.commands import test_layout
from tests.mistakes.telling import FOLDER, call, in_file, tell, tell_refused
from tests.reading.records.support import site_of
from tests.reading.test_workbook_file import PLAIN
from tests.support import written

GONE = {"openpyxl", "pikepdf", "typst", "resvg_py", "ezdxf"}


@contextmanager
def libraries_gone() -> Iterator[None]:
    """Without the libraries of the extras."""
    load = builtins.__import__

    def refuse(name: str, *rest: Any, **named: Any) -> Any:
        if name.split(".")[0] in GONE:
            raise ImportError(name)
        return load(name, *rest, **named)

    write_png.cache_clear()  # another call may have drawn the same
    with patch.object(builtins, "__import__", refuse), patch.object(png, "can_write", lambda: False):
        yield


def tell_libraries() -> Iterator[str]:
    """Calls that need a library."""
    with TemporaryDirectory() as name, libraries_gone():
        folder = Path(name)
        file = str(written(folder, test_layout.PROJECT))
        (folder / "a.xlsx").write_bytes(PLAIN)
        yield tell_refused("a workbook", lambda _: read_workbook(folder / "a.xlsx", "a.xlsx"))
        (folder / "a.pdf").write_bytes(b"%PDF-1.7\n")
        survey = survey_records(site_of(folder), [read_given(folder / "a.pdf", "a.pdf")])
        yield tell("a form", *map(in_file, survey.records.faults))
        file = str(written(folder, test_layout.PROJECT))
        for words in ("layout", "build --draft --formats docx --only D07"):
            told = call(words.split()[0], file, *words.split()[1:], "--out", str(folder / words.split()[0]))
            yield f"{words}\n{told[1]}".replace(name, FOLDER)
