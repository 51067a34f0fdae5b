"""What a reading can be at all: beyond these it is a fault of the instrument or of the file, and counts as missing.

Air: the coldest and hottest readings that the World Meteorological Organization keeps, -89.2 and 56.7 °C, rounded
outward. Wind and gust: its strongest gust, 113.2 m/s. Humidity up to 110 %, as files of weather data allow. The others
are bounds of our own.
"""

from specgen.quantities.format import format_decimal
from specgen.quantities.number import quote

BOUNDS = {
    "air": (-90.0, 57.0),
    "humidity": (0.1, 110.0),
    "wind": (0.0, 113.2),
    "gust": (0.0, 113.2),
    "rain": (0.0, 500.0),
    "surface": (-90.0, 120.0),
    "direct": (0.0, 1500.0),
    "diffuse": (0.0, 1500.0),
}
_MOST_TOLD = 5


class Faults:
    """Readings that cannot be, in the order in which they are met; the first few are told, the others counted."""

    def __init__(self) -> None:
        self.told: list[str] = []
        self.count = 0

    def add(self, row: int, column: str, written: str, why: str) -> None:
        """Keep one reading, as it is written in its row."""
        self.count += 1
        if self.count <= _MOST_TOLD:
            self.told.append(f"row {row}: {column} {quote(written)} {why}; the hour is not counted as fit")

    def notes(self) -> tuple[str, ...]:
        """What is told of them."""
        more = self.count - len(self.told)
        return (*self.told, *((f"and {more:,} more readings that are none",) if more else ()))


def tell_bounds(column: str, factor: float, offset: float, unit: str) -> str:
    """Between which figures a reading lies, in the unit of its column: `0 to 253 mph`."""
    least, most = ((bound - offset) / factor for bound in BOUNDS[column])
    return f"{format_decimal(round(least), 6)} to {format_decimal(round(most), 6)} {unit}"
