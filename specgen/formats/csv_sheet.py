"""A sheet as comma-separated values (RFC 4180), which spreadsheets open as a table and programs read line by line.

UTF-8 with a byte order mark, by which spreadsheets know it; dates as ISO 8601 writes them. A spreadsheet runs a cell
that begins like a formula whether or not it stands in quotes, and no mark of the format keeps it from that. So such a
text gets an apostrophe in front, and so does one that has it already: who takes one apostrophe away before a sign of a
formula has every text again as it was. Figures are numbers and get none. All texts stand in quotes, so that a list
separator of another country does not split them either.
"""

import csv
import datetime
import io
import re

from specgen.formats.xml_text import remove_non_xml
from specgen.model.sheet import Sheet, SheetCell

# The signs a formula begins with, those of full width too, behind the spaces that a spreadsheet takes away.
_LIKE_FORMULA = re.compile(r"['\s\0]*[=+\-@＝＋－＠]|['\s]*[\t\r\n]")


def write_csv(sheet: Sheet) -> bytes:
    """Head and rows; what an empty sheet says, if anything, stands in its first cell."""
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, quoting=csv.QUOTE_NONNUMERIC)
    writer.writerow([column.title for column in sheet.columns])
    writer.writerows([_convert(cell) for cell in row] for row in sheet.rows)
    if not sheet.rows and sheet.empty:
        writer.writerow([sheet.empty])
    return stream.getvalue().encode("utf-8-sig")


def _convert(cell: SheetCell) -> str | int | float:
    if cell is None:
        return ""
    if isinstance(cell, datetime.date):
        return cell.isoformat()
    if not isinstance(cell, str):
        return cell
    text = remove_non_xml(cell)
    return f"'{text}" if _LIKE_FORMULA.match(text) else text
