"""The files of question sheets and of tables, by name."""

from collections.abc import Collection, Iterable
from importlib.util import find_spec

from specgen.asking.member_table import make_table
from specgen.asking.party_document import compose_questions
from specgen.asking.question_book import write_question_book
from specgen.asking.question_words import name_party_file
from specgen.asking.recipients import Recipient
from specgen.asking.table_book import write_table_book, write_table_csv
from specgen.asking.tables import find_table_named
from specgen.documents.catalogue import templates_folder
from specgen.documents.context import DocumentContext
from specgen.formats.docx.word_file import write_docx
from specgen.model.problem import refuse
from specgen.model.suggest import suggest

QUESTION_FORMATS = ("docx", "xlsx")
TABLE_FORMATS = ("xlsx", "csv")


def can_write_workbooks() -> bool:
    """Whether the library that writes them is installed."""
    return find_spec("xlsxwriter") is not None


def check_formats(formats: Iterable[str], known: tuple[str, ...]) -> None:
    """Raise Refused for a format that these files are not written in."""
    for name in formats:
        if name not in known:
            raise refuse(f"there is no format {name!r} here", suggest(name, known))


def make_question_files(
    context: DocumentContext, recipients: Iterable[Recipient], formats: Collection[str]
) -> dict[str, bytes]:
    """A document for each party, and a workbook for each recipient, of the formats asked for."""
    files: dict[str, bytes] = {}
    letterhead = templates_folder() / "letterhead.docx"
    for recipient in recipients:
        for sheet in recipient.sheets if "docx" in formats else ():
            files[f"{name_party_file(sheet.role)}.docx"] = write_docx(compose_questions(context, sheet), letterhead)
        if "xlsx" in formats:
            files[f"{recipient.file}.xlsx"] = write_question_book(context, *recipient.sheets)
    return files


def make_table_files(context: DocumentContext, name: str, formats: Collection[str]) -> dict[str, bytes]:
    """A table in every format asked for, with the members that exist; raises Refused for an unknown name."""
    table = find_table_named(name)
    made = make_table(context, table)
    files: dict[str, bytes] = {}
    if "xlsx" in formats:
        files[f"{table.name}.xlsx"] = write_table_book(context, made)
    if "csv" in formats:
        files[f"{table.name}.csv"] = write_table_csv(made)
    return files
