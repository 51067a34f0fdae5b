"""Reads hourly weather data: CSV by the words of its head, or EPW by its first line."""

from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.reading.given_file import FileUse, read_given_file
from specgen.weather import _epw, _sequence, _table
from specgen.weather.hours import HourlyData

_USE = FileUse("the hourly data", "name a CSV or EPW file", 60_000_000, "give fewer years")
_MARKS = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_CODES = ("utf-8", "cp1252")


def read_hours(path: Path) -> HourlyData:
    """The hours of a file; raises Refused where it holds none, with the row of what cannot be read."""
    shown = str(path)
    text = _decode(read_given_file(path, _USE, shown), shown)
    if not text.strip():
        raise Refused(Problem("the file is empty", "give one row for each hour below a head", file=shown))
    read = _epw.read_epw if text.startswith(_epw.MARK) else _table.read_table
    return _sequence.put_in_order(read(text, shown), shown)


def _decode(content: bytes, shown: str) -> str:
    if b"\0" not in content[:4096] or content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        for code in (*(code for mark, code in _MARKS if content.startswith(mark)), *_CODES):
            try:
                return content.decode(code)
            except UnicodeDecodeError:
                continue
    raise Refused(Problem("the file is not text", "give a CSV or EPW file", file=shown))
