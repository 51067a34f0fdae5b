"""The places in a workbook of questions, or of one table: who writes one and who reads it back go by the same names.

Rows are counted from 1, as a spreadsheet shows them; columns stand in the order of these tuples. A choice is offered as
`words` of `model/value_text.py` tells it, which differ within a field; several stand with commas between.
"""

# The sheets of a workbook of questions.
PROJECT, QUESTIONS, DOCUMENTS, SENT, CHOICES = "Project", "Questions", "Documents", "Documents sent", "Choices"
# DOCUMENTS stands only where documents are owed, SENT where one of them becomes an attachment.
SHEETS = (QUESTIONS, DOCUMENTS, SENT, PROJECT, CHOICES)


def name_page(sheet: str, part: int) -> str:
    """The name of a sheet: `Questions`; of the second party that a workbook asks `Questions 2`."""
    return sheet if part == 1 else f"{sheet} {part}"


def find_part(page: str) -> tuple[str, int]:
    """The sheet and the part that a page is of, by its name."""
    sheet, _, part = page.rpartition(" ")
    return (sheet, int(part)) if sheet and part.isdecimal() else (page, 1)


# Sheet `Questions`.
NUMBER, QUESTION, WHY, FORM, EXAMPLE = "No.", "Question", "Why it is asked", "Unit or form", "Example"
HOLDS_UP, DUE, ANSWER, REMARK, FIELD = "Holds up", "Due", "Answer", "Remark", "Field"
QUESTION_COLUMNS = (NUMBER, QUESTION, WHY, FORM, EXAMPLE, HOLDS_UP, DUE, ANSWER, REMARK, FIELD)
QUESTIONS_HEAD = 3  # the row of the titles; a title and a line of guidance stand above it
QUESTIONS_FIRST = 4  # the row of the first question; one row each, none between them

# Sheet `Documents`: what is to be sent, which answers no field.
DOCUMENT, SENT_ON = "Document", "Sent on"
DOCUMENT_COLUMNS = (NUMBER, DOCUMENT, HOLDS_UP, DUE, SENT_ON, REMARK)
DOCUMENTS_HEAD = 3
DOCUMENTS_FIRST = 4

# Sheet `Documents sent`: one row for each document, which becomes an attachment. The name of each column to fill in is
# that of the field of the attachment; where it asks nothing of a document of that kind, the cell holds a dash.
PAPER, ENTRY = "Document", "Entry"
PAPER_FIELDS = {
    "Type": "kind",
    "Materials covered": "covers",
    "Test standard": "standard",
    "Title": "title",
    "Date of document": "issued_on",
    "File name": "file",
    "Signed": "signed",
    "Lines that apply marked": "marked",
    "Names this project": "project_named",
}
PAPER_COLUMNS = (NUMBER, PAPER, *PAPER_FIELDS, REMARK, ENTRY)
PAPERS_HEAD = 3
PAPERS_FIRST = 4
NOT_ASKED = "-"

# Sheet `Project`: labels in column 1, values in column 2.
PROJECT_FIRST = 3  # the row of the first label
PROJECT_NAME, PROJECT_NUMBER, PROJECT_FILE = "Project", "Project number", "Project file"
TABLE = "Table"  # its name, in a workbook of one
PARTY, PARTY_ROLE, FORMAT = "Party", "Party code", "Format"  # in words; as `owed_by` has it; of the workbook
RETURN_TO, RETURN_BY = "Return to", "Return by"
ANSWERED_BY, ANSWERED_ON = "Answered by", "Date"  # filled in by whoever answers, the date as year-month-day
PROJECT_LABELS = (
    PROJECT_NAME,
    PROJECT_NUMBER,
    PROJECT_FILE,
    TABLE,
    PARTY,
    PARTY_ROLE,
    FORMAT,
    RETURN_TO,
    RETURN_BY,
    ANSWERED_BY,
    ANSWERED_ON,
)
FORMAT_VERSION = "1"

# A table: one sheet named as the table, as text, and a sheet `Project` that names it too. Column 1 is the mark, or the
# number of an item in its list; where the members of several others stand in one table, column 2 is the mark of the one
# that each belongs to. The name of each other column is that of its field below the member.
MARK, MARK_NAME = "Mark", "mark"
ITEM, ITEM_NAME = "No.", "no."
VALUE_NAME = "value"  # of a member that is a value by itself
NONE = "none"  # in place of a mark or number: there are no members; in place of a list: it is empty
TABLE_HEAD = 1  # the row of the labels
TABLE_NAMES = 2  # the row of the names: `mark`, `width`, `layout.mode`
TABLE_FIRST = 3  # the row of the first member; a CSV file has the same rows
