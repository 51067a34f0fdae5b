"""What is told of files that are none of their kind: YAML, workbooks, tables, letterheads, papers, hourly data."""

from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import yaml

from specgen.formats.docx.letterhead import read_letterhead
from specgen.reading import positions
from specgen.reading.csv_reading import read_csv
from specgen.reading.given_file import FileUse, read_given_file
from specgen.reading.positions import read_text
from specgen.reading.workbook_reading import read_workbook
from specgen.weather.reading import read_hours
from tests.formats.docx import letterheads, test_letterhead_bounds, test_letterhead_outside, test_letterhead_refused
from tests.formats.docx.test_letterhead_outside import HEADER
from tests.formats.pdf import test_attachments, test_bind
from tests.formats.pdf.binding import open_as, papers_of
from tests.formats.pdf.made_papers import make_paper
from tests.mistakes.telling import FOLDER, noted, place, tell, tell_refused
from tests.reading import test_csv_reading, test_positions, test_workbook_file, test_yaml_faults
from tests.weather import test_epw, test_sequence, test_table

AS_WARM = ["60"] * len(test_sequence.TYPICAL)


def tell_yaml() -> Iterator[str]:
    """Texts that are no YAML, or that say what no project file may say."""
    for about, text, *_ in test_yaml_faults.SLIPS:
        yield tell_file(about, text.encode(), lambda file: read_text(file, file.name))
    tables = (test_positions.NO_YAML, test_positions.NO_PROJECT, test_positions.UNSEEN)
    texts: list[str | bytes] = [row[0] for table in tables for row in table]
    for content in (*texts, test_positions.MILLIONS, test_positions.MANY):
        made = content if isinstance(content, bytes) else content.encode()
        yield tell_file(content, made, lambda file: read_text(file, file.name))
    with patch.object(positions, "Loader", yaml.SafeLoader):
        yield tell_file("an escape", b'a: "\\UFFFFFFFF"\n', lambda file: read_text(file, file.name))
    readable = [text for text, *_ in (*test_positions.TWICE, *test_positions.IN_ITSELF)]
    with TemporaryDirectory() as name:
        for text in (*readable, test_positions.EMPTY_ENTRY):
            yield tell(text, *map(place, test_positions.read(Path(name), text).problems))


def tell_workbooks() -> Iterator[str]:
    """Files that are no workbook to be opened, by what the test asks of each: a packed file tells when it was made."""
    for content, asked in test_workbook_file.NO_WORKBOOK:
        yield tell_file(asked, content, lambda file: read_workbook(file, file.name))


def tell_tables() -> Iterator[str]:
    """Files that are no table."""
    for content, *_ in test_csv_reading.NO_TABLE:
        yield tell_file(content, content, lambda file: read_csv(file, file.name))


def tell_file(shown: str | bytes, content: bytes, read: Callable[[Path], object]) -> str:
    """A file of this content, and what is told of it."""

    def run(folder: Path) -> None:
        (folder / "file").write_bytes(content)
        read(folder / "file")

    return tell_refused(shown, run)


def tell_letterheads() -> Iterator[str]:
    """Files that cannot be a letterhead, and what is left out of one that can."""
    for about, content, *_ in (
        *test_letterhead_refused.REFUSED,
        ("a locked zip", test_letterhead_refused.locked_zip()),
    ):
        yield tell_file(about, content, read_letterhead)
    yield tell_refused("a folder", read_letterhead)
    for about in ("words", "tags", "depth", "attributes", "styles"):
        content = letterheads.firm(test_letterhead_bounds.LARGE[about][0]())
        yield tell_file(about, content, read_letterhead)
    outside = test_letterhead_outside
    changes = {
        kind: {HEADER: letterheads.header(piece), outside.RELS: outside.linked(("image", outside.FAR))}
        for kind, piece in outside.REMOTE.items()
    }
    for kind, content in outside.FOREIGN.items():
        changes[kind] = {HEADER: letterheads.header(letterheads.drawing()), "word/media/image1.png": content}
    with TemporaryDirectory() as name:
        for kind, change in changes.items():
            file = letterheads.kept(Path(name), letterheads.firm(change))
            yield noted(kind, read_letterhead(file).notes)


def tell_papers() -> Iterator[str]:
    """Attachments that cannot be bound in, and what is left out of one that can."""
    for content, asked in test_attachments.UNFIT:
        yield tell_paper(asked, lambda folder, content=content: keep_paper(folder, content))
    yield tell_paper("no file", lambda folder: "a.pdf")
    yield tell_paper("a picture of 48 megapixels", lambda folder: keep_paper(folder, test_bind.png(8000, 6000)))
    for make, *_ in test_attachments.LINKS:
        yield tell_paper(make.__name__, make)
    for change, *_ in test_bind.ACTIVE:
        yield noted(change.__name__, open_as("A1", make_paper(2, "Report", change=change)).left_out)


def keep_paper(folder: Path, content: bytes) -> str:
    """The name of a paper in a folder."""
    (folder / "a.pdf").write_bytes(content)
    return "a.pdf"


def tell_paper(shown: str, make: Callable[[Path], str]) -> str:
    """A paper, and what is told of it where it stands in its report."""
    with TemporaryDirectory() as name:
        folder = Path(name) / "project"
        folder.mkdir()
        [paper] = papers_of(folder, A1=make(folder))
        assert paper.problem is not None
        return tell(shown, place(paper.problem)).replace(name, FOLDER)


def tell_hours() -> Iterator[str]:
    """Hourly data that cannot be read, and what is told of some that can."""
    with TemporaryDirectory() as name:
        here = Path(name)
        for text in (*(text for text, *_ in test_table.REFUSED), test_table.NO_TEXT, test_table.NO_NUMBERS):
            yield tell_refused(text, lambda _, text=text: test_table.read(here, text))
        for rows, *_ in test_epw.NO_HOURS:
            yield tell_refused("\n".join(rows), lambda _, rows=rows: read_hours(test_epw.write(here, rows)))
        for first, *_ in test_epw.NO_PLACE:
            head = [first, *test_epw.HEAD[1:]]
            yield tell_refused(first, lambda _, head=head: read_hours(test_epw.write(here, [test_epw.row()], head)))
        for text in (*test_table.SAME, *test_table.NOTED):
            yield noted(text, test_table.read(here, text).notes)
        yield noted("a typical year", test_sequence.read(here, test_sequence.TYPICAL, AS_WARM).notes)
    yield tell_refused("no file", lambda folder: read_given_file(folder / "\0", FileUse("the file", "give one", 9)))
