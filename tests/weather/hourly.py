"""Hourly data for the tests: rows of a plain month of June, and the year that a registry package carries."""

from datetime import datetime, timedelta
from pathlib import Path

import pvlib

HEAD = "time,air F,humidity %,wind mph,rain in"
START = datetime(2027, 6, 14)
# Typical meteorological year 3 of Greensboro, North Carolina, as pvlib 0.16 (BSD-3-Clause) ships it in its data.
# National Solar Radiation Data Base, National Renewable Energy Laboratory, a work of the U.S. government in the public
# domain. Its months are of different years; its hours are told by their ends, 1 to 24.
PUBLIC_YEAR = Path(pvlib.__file__).parent / "data" / "723170TYA.CSV"


def plain_rows(hours: int, start: datetime = START, **changes: dict[int, str]) -> list[list[str]]:
    """Rows of fit weather, an hour apart; `changes` are cells by column and hour."""
    columns = ("time", "air", "humidity", "wind", "rain")
    rows = [[f"{start + timedelta(hours=hour):%Y-%m-%d %H:%M}", "65", "60", "5", "0"] for hour in range(hours)]
    for name, cells in changes.items():
        for hour, text in cells.items():
            rows[hour][columns.index(name)] = text
    return rows


def write_rows(folder: Path, rows: list[list[str]], head: str = HEAD, name: str = "hours.csv") -> Path:
    """A CSV file of these rows."""
    file = folder / name
    file.write_text("\n".join([head, *(",".join(row) for row in rows)]) + "\n", "utf-8")
    return file
