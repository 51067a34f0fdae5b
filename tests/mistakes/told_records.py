"""What is told of site records: faults, and remarks on what is read all the same."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from specgen.model.record import Records
from tests.asking.workbooks import written_by_xlsxwriter
from tests.mistakes.telling import in_file, tell
from tests.reading.records import faulty, test_forms
from tests.reading.records.support import read, survey

MOST_TOLD = 12


def tell_records() -> Iterator[str]:
    """Tables and texts of a record."""
    with TemporaryDirectory() as name:
        here = Path(name)
        for about, text in faulty.TABLES.items():
            yield tell_found(about, read(here, text))
        for about, (text, change) in faulty.CHANGED.items():
            yield tell_found(about, read(here, text, change=change))
        for about, text in faulty.TEXTS.items():
            yield tell_found(about, read(here, text, "w.yaml"))
        yield tell_found("letters of a page of codes", read(here, "date,area\n2027-06-15,café\n".encode("cp1252")))
        yield tell_found("a file of another kind", read(here, "hello", "log.txt"))
        book = written_by_xlsxwriter({"log": [["date", "elevation", "humidity"], ["2027-06-15", "E9", "=50+8"]]})
        yield tell_found("a workbook", read(here, book, "log.xlsx"))
        yield tell_found("half a workbook", read(here, book[: len(book) // 2], "log.xlsx"))
        settings = {"a.csv": "gun,water\nG1,6\n", "b.yaml": "format: 1\naccepted: {water: 7}\n"}
        yield tell_found("two settings", survey(here, {**settings}, {"guns": {"G1": {}}}).records)


def tell_forms() -> Iterator[str]:
    """Filled forms."""
    forms = {
        "faults of rows": test_forms.filled("D12", test_forms.WRONG),
        "a sheet of the mockup": test_forms.filled("D12", test_forms.OF_MOCKUP),
        "no fields": test_forms.no_form(),
        "a form of somebody else": test_forms.other_form(),
        "a form in itself": test_forms.form_in_itself(),
        **{f"broken {number}": content for number, content in enumerate(test_forms.BROKEN, 1)},
    }
    with TemporaryDirectory() as name:
        for about, content in forms.items():
            yield tell_found(about, test_forms.read(Path(name), content))


def tell_found(about: str, records: Records) -> str:
    """What is told of a record; of many faults the first ones and the last."""
    faults, remarks = (list(map(in_file, found)) for found in (records.faults, records.remarks))
    remarks = [(f"remark: {message}", hint) for message, hint in remarks]
    return tell(about, *shorten(faults), *shorten(remarks))


def shorten(told: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """The first ones and the last where they are many."""
    return told if len(told) <= MOST_TOLD else [*told[:2], told[-1]]
