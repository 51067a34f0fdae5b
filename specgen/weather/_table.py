"""Hourly data as CSV: the head wherever it stands, columns in any order and unit, decimal points or commas."""

import csv
from collections.abc import Callable
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.model.value_text import count
from specgen.quantities.number import quote
from specgen.weather._bounds import BOUNDS, Faults, tell_bounds
from specgen.weather._head import TIMES, ColumnPlace, add_unit, find_columns, tell_near
from specgen.weather._times import choose_reader, read_times, split_moments
from specgen.weather.hours import Column, Readings

_SIGNS = ",;\t"
_HEAD_WITHIN = 10  # rows in which the head stands, behind lines about the station
_GONE = {"", "-", "--", "na", "n/a", "nan", "null", "none", "m", "missing"}
# What files of weather data write where an instrument gave nothing.
_STANDS_FOR_NONE = {-9900.0, -999.0, -9999.0, -99999.0, 9999.0, 99999.0}
_YES, _NO = {"yes", "y", "true", "t", "trace", "rain"}, {"no", "n", "false", "dry"}
_TRACE = 0.01  # mm, which stands for rain that is not measured
_MOST_COLUMNS, _MOST_SHOWN = 500, 40

_MOST_WRONG = 20  # cells told of at once

Cells = list[str]
ReadCell = Callable[[str, int, str], float | None]  # a cell, its row, and the name of the file


class _Head(NamedTuple):
    columns: dict[str, ColumnPlace]
    row: int


def read_table(text: str, shown: str) -> Readings:
    """The readings of a table named `shown`; raises Refused with the row of what cannot be read."""
    rows, sign = _split(text, shown)
    head = _find_head(rows, shown)
    taken = [(number, cells) for number, cells in rows if number > head.row and any(map(str.strip, cells))]
    taken, cut = _leave_out_cut(taken, head, text)
    if not taken:
        raise Refused(Problem("the file has no hours below its head", "give one row for each hour", file=shown))
    _check_widths(taken, head, shown)
    days, hours = _list_times(taken, head, shown)
    numbers = [number for number, _ in taken]
    times = read_times(days, hours, numbers, shown)
    faults, wrong = Faults(), list[Problem]()
    comma = sign != ","
    columns: dict[str, Column] = {}
    for name, place in head.columns.items():
        if name not in TIMES:
            convert = _choose_number(add_unit(place, head.row, shown), comma, wrong)
            columns[name] = _read_column(add_unit(place, head.row, shown), taken, shown, convert, faults)
    if wrong:
        raise Refused(*sorted(wrong, key=lambda one: one.line)[:_MOST_WRONG])
    _check_shares(columns, head, shown)
    notes = (*times.notes, *cut, *faults.notes())
    return Readings(times.starts, numbers, columns, times.zones, None, notes)


def _split(text: str, shown: str) -> tuple[list[tuple[int, Cells]], str]:
    """The rows of a table with their numbers, and the sign between its cells."""
    lines = text.splitlines(keepends=True)
    first = lines[0].strip() if lines else ""
    told = first[-1] if first.lower().startswith("sep=") and len(first) == len("sep=;") else ""
    if told:
        lines[0] = "\n"
    sample = "".join(lines[: _HEAD_WITHIN + 1])
    sign = told or max(_SIGNS, key=lambda one: (sample.count(one), one == ","))
    if not told and sample.count(";") >= sample.count("\n") > 0:  # its commas are those of numbers
        sign = ";"
    rows: list[tuple[int, Cells]] = []
    reader = csv.reader(lines, delimiter=sign)
    try:
        rows.extend((reader.line_num, cells) for cells in reader)
    except csv.Error as error:
        raise Refused(
            Problem(f"the row is not CSV: {error}", "check its quotes", file=shown, line=reader.line_num)
        ) from None
    return rows, sign


def _find_head(rows: list[tuple[int, Cells]], shown: str) -> _Head:
    """The row that names most columns; raises Refused where time, air or humidity is not among them."""
    near = [(number, cells) for number, cells in rows if number <= _HEAD_WITHIN and len(cells) <= _MOST_COLUMNS]
    found = [(find_columns(cells), number, cells) for number, cells in near]
    columns, row, cells = max(found, key=lambda one: (len(one[0]), -one[1]), default=({}, 0, []))
    if len(columns) < 2:
        hint = "give a CSV file with columns such as time, air F, humidity %, wind mph, or an EPW file"
        raise Refused(Problem("the file has no hourly weather", hint, file=shown))
    for name in ("time", "air", "humidity"):
        there = choose_reader({one: place.at for one, place in columns.items()}) if name == "time" else name in columns
        if not there:
            wanted = {"air": "air F or air C", "humidity": "humidity %"}.get(name, name)
            hint = tell_near(cells, name) or f"name it {wanted}; there are: {_list_heads(cells)}"
            raise Refused(Problem(f"the head has no column {name}", hint, file=shown, line=row))
    return _Head(columns, row)


def _list_heads(cells: Cells) -> str:
    named = [cell.strip()[:_MOST_SHOWN] for cell in cells if cell.strip()]
    return ", ".join(named[:8]) + (", ..." if len(named) > 8 else "")


def _leave_out_cut(
    taken: list[tuple[int, Cells]], head: _Head, text: str
) -> tuple[list[tuple[int, Cells]], tuple[str, ...]]:
    """The rows without a last one that was still being written when the file was read."""
    last = max(place.at for place in head.columns.values())
    if not taken or text.endswith(("\n", "\r")) or len(taken[-1][1]) > last:
        return taken, ()
    return taken[:-1], (f"row {taken[-1][0]} is cut short and was left out: the file was still being written",)


def _check_widths(taken: list[tuple[int, Cells]], head: _Head, shown: str) -> None:
    last = max(place.at for place in head.columns.values())
    for number, cells in taken:
        if len(cells) <= last:
            message = f"the row has {count(len(cells), 'cell')}; it needs {last + 1}, as its head has"
            raise Refused(Problem(message, "keep the signs between its cells, empty ones too", file=shown, line=number))


def _list_times(taken: list[tuple[int, Cells]], head: _Head, shown: str) -> tuple[list[str], list[str]]:
    """The texts of day and hour of all rows."""
    read = choose_reader({name: place.at for name, place in head.columns.items()})
    if read is None:
        return [], []
    pairs = [read(cells) for _, cells in taken]
    days, hours = [day.strip() for day, _ in pairs], [hour.strip() for _, hour in pairs]
    if not any(hours):
        days, hours = split_moments(days)
    return days, hours


def _read_column(
    place: ColumnPlace, taken: list[tuple[int, Cells]], shown: str, convert: ReadCell, faults: Faults
) -> Column:
    """The readings of a column in our own unit; None for one that is missing or cannot be."""
    least, most = BOUNDS[place.name]
    at, factor, offset = place.at, place.factor, place.offset
    known: dict[str, float | None] = {}
    readings: Column = []
    for row, cells in taken:
        text = cells[at]
        if text in known:
            readings.append(known[text])
            continue
        number = convert(text, row, shown)
        value = None if number is None else number * factor + offset
        if value is not None and not least - 1e-9 <= value <= most + 1e-9:
            why = f"is not possible ({tell_bounds(place.name, factor, offset, place.unit)})"
            faults.add(row, place.name, text.strip(), why)
            value = None
        else:
            known[text] = value
        readings.append(value)
    return readings


def _choose_number(place: ColumnPlace, comma: bool, wrong: list[Problem]) -> ReadCell:
    """How a cell becomes a number; one that is none is noted in `wrong`."""

    def read(text: str, row: int, shown: str) -> float | None:
        plain = text.strip()
        try:
            number = float(plain)
        except ValueError:
            if plain.lower() in _GONE and not (place.name == "rain" and plain.lower() == "none"):
                return None
            value = _read_word(plain, place, comma)
            if value is None:
                hint = f"write a number{f' in {place.unit}' if place.unit else ''}, or leave the cell empty"
                message = f"{quote(plain)} is not a reading of {place.name}"
                wrong.append(Problem(message, hint, file=shown, line=row, column=place.at + 1))
            return value
        return None if number in _STANDS_FOR_NONE or number != number else number

    return read


def _read_word(plain: str, place: ColumnPlace, comma: bool) -> float | None:
    """The number of a cell that is none as it stands: with commas, or a word of rain; None for any other text."""
    if place.name == "rain" and plain.lower() in _YES | _NO | {"none"}:
        return _TRACE / place.factor if plain.lower() in _YES else 0.0
    told = plain.replace(",", ".") if comma and plain.count(",") == 1 and "." not in plain else plain.replace(",", "")
    try:
        return float(told.removesuffix("%").strip())
    except ValueError:
        return None


def _check_shares(columns: dict[str, Column], head: _Head, shown: str) -> None:
    """Raise Refused where humidity is told as a share and not in percent."""
    given = [value for value in columns["humidity"] if value is not None]
    if given and max(given) <= 1:
        place = head.columns["humidity"]
        message = "no humidity lies above 1 %"
        raise Refused(Problem(message, "write percent, such as 60", file=shown, line=head.row, column=place.at + 1))
