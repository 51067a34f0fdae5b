"""The places in a workbook of questions, or of one table: who writes one and who reads it back go by the same names.

Rows are counted from 1, as a spreadsheet shows them; columns stand in the order of these tuples. A choice is offered as
`words` of `model/value_text.py` tells it, which differ within a field; several stand with commas between.
"""

from typing import NamedTuple

# The sheets of a workbook of questions.
PROJECT, QUESTIONS, DOCUMENTS, CHOICES = "Project", "Questions", "Documents", "Choices"
SHEETS = (QUESTIONS, DOCUMENTS, PROJECT, CHOICES)  # DOCUMENTS stands only where documents are owed

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

# Sheet `Project`: labels in column 1, values in column 2.
PROJECT_FIRST = 3  # the row of the first label
PROJECT_NAME, PROJECT_NUMBER, PROJECT_FILE = "Project", "Project number", "Project file"
PARTY, PARTY_ROLE, FORMAT = "Party", "Party code", "Format"  # in words; as `owed_by` has it; of the workbook
RETURN_TO, RETURN_BY = "Return to", "Return by"
ANSWERED_BY, ANSWERED_ON = "Answered by", "Date"  # filled in by whoever answers, the date as year-month-day
PROJECT_LABELS = (
    PROJECT_NAME,
    PROJECT_NUMBER,
    PROJECT_FILE,
    PARTY,
    PARTY_ROLE,
    FORMAT,
    RETURN_TO,
    RETURN_BY,
    ANSWERED_BY,
    ANSWERED_ON,
)
FORMAT_VERSION = "1"

# A table: one sheet named as the table, as text. Column 1 is the mark; where the members of all elevations stand in one
# table, column 2 is the mark of the elevation. The name of each other column is that of its field below the member.
MARK, MARK_NAME = "Mark", "mark"
OWNER, OWNER_NAME = "Elevation", "elevation"
TABLE_HEAD = 1  # the row of the labels
TABLE_NAMES = 2  # the row of the names: `mark`, `width`, `layout.mode`
TABLE_FIRST = 3  # the row of the first member; a CSV file has the same rows


class Table(NamedTuple):
    """A table: its name on the command line and on its sheet, and the collection that it lists."""

    name: str
    collection: tuple[str, ...]  # ends in a star
    owned: bool  # whether each row names the elevation that its member belongs to


TABLES = (
    Table("openings", ("elevations", "*", "openings", "*"), True),
    Table("elevations", ("elevations", "*"), False),
    Table("joints", ("joints", "*"), False),
    Table("attachments", ("attachments", "*"), False),
    Table("people", ("people", "*"), False),
)
