"""The site under the sun: inputs shared by the sun on one wall and on the wall that gets most."""

from collections.abc import Mapping
from fractions import Fraction

from specgen.computing.heat import _clear_sky
from specgen.computing.inputs import Inputs, given_input, option_input
from specgen.model.dates import MONTHS
from specgen.model.typed_views import Description
from specgen.model.working import InputRow
from specgen.quantities.format import format_quantity
from specgen.quantities.parse import QuantityError
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.standards import find_source

SEA_LEVEL = Quantity.of("14.696", "psi")
FARTHEST = (Quantity.of(-66, "deg"), Quantity.of(66, "deg"))
AIR = (Quantity.of(5, "psi"), Quantity.of(16, "psi"))  # method's own: bounds, from above any land to below it
SUMMER, SOUTHERN_SUMMER = ("may", "jun", "jul", "aug", "sep"), ("jan", "feb", "mar", "nov", "dec")
TROPIC = 23.45  # degrees
HIGHS = "Months counted (mean high within {near} of the hottest month): {months}."
USUAL = "Months counted (monthly mean highs not given): {months}."
NOTES = (
    "Days are the 21st of the month; hours are solar time. An unusually clear sky exceeds these values.",
    "The design air temperature is taken at every hour.",
)


def read_months(text: str) -> tuple[str, ...]:
    """The months written as `jun, jul`. Raises QuantityError."""
    names = [part.strip().lower()[:3] for part in text.split(",")]
    if unknown := [name for name in names if name not in MONTHS]:
        raise QuantityError(f"{unknown[0]!r} is no month", "write jan to dec, such as jun,jul")
    return tuple(month for month in MONTHS if month in names)


class SunInputs(Inputs):
    """A site, the air over it, the ground before the wall, and the months whose sun counts."""

    latitude: Quantity = given_input(
        "L", "latitude of the site", "angle", "site.latitude", "degrees, minus south", bare="deg", within=FARTHEST
    )
    air: Quantity = given_input(
        "P_a",
        "air pressure at altitude, absolute",
        "pressure",
        computed="air-pressure",
        default=SEA_LEVEL,
        about="air pressure at altitude, absolute",
        within=AIR,
    )
    ground: Fraction | float = given_input(
        "g",
        "ground reflectance",
        "number",
        "site.ground_reflectance",
        "0 to 1",
        default=_clear_sky.GROUND,
        source=_clear_sky.GRASS,
        within=(0, 1),
    )
    months: tuple[str, ...] | None = option_input(
        "months whose sun counts, such as jun,jul; May to September, or the other half year in the south",
        read=read_months,
        default=None,
    )

    @property
    def counted(self) -> tuple[str, ...]:
        """The months whose sun counts."""
        return self.months or usual_months(self.latitude)

    def peak(self, facing: Quantity | None = None) -> _clear_sky.Peak:
        """When a wall of a facing gets most sun, or the wall that gets most of all."""
        share = self.air.number("psi") / SEA_LEVEL.number("psi")
        towards = None if facing is None else facing.number("deg")
        return _clear_sky.find_peak(self.latitude.number("deg"), share, float(self.ground), self.counted, towards)

    def sky_rows(self, peak: _clear_sky.Peak) -> tuple[InputRow, ...]:
        """The lines of the site and of the hour of the peak."""
        unit = "psi" if self.system == "ip" else "kPa"
        standard = find_source("standard_atmosphere")
        air = self.row("air")._replace(origin="site.altitude", source=standard)
        sea = InputRow(
            "P_0",
            "pressure at sea level, absolute",
            SEA_LEVEL.number(unit),
            unit,
            source=standard,
        )
        return (self.row("latitude"), air, sea, self.row("ground"), *_clear_sky.sky_rows(peak))


def usual_months(latitude: Quantity) -> tuple[str, ...]:
    """The months of hot air without weather figures: May to September, November to March south of the equator.

    Between the tropics, every month.
    """
    degrees = latitude.number("deg")
    if abs(degrees) <= TROPIC:
        return MONTHS
    return SUMMER if degrees > 0 else SOUTHERN_SUMMER


def months_by_highs(highs: Mapping[str, Quantity], near: Quantity) -> tuple[str, ...] | None:
    """The months with a mean high near that of the hottest; None unless every month has one."""
    if highs.keys() != set(MONTHS):
        return None
    least = max(highs.values()).amount - near.amount
    return tuple(month for month in MONTHS if highs[month].amount >= least)


def months_of(project: Description) -> tuple[str, ...] | None:
    """The months whose sun counts by the monthly figures of the project; None where they do not cover the year."""
    rows = project.climate.months
    highs: dict[str, Quantity] = {row.month: row.mean_max for row in rows} if rows.is_given() else {}
    return months_by_highs(highs, find_limit("heat.hot_months", project.project).value)


def tell_months(inputs: SunInputs) -> str:
    """Which months count, as a sentence."""
    names = ", ".join(month.capitalize() for month in inputs.counted)
    near = inputs.limits("heat.hot_months").value
    return (HIGHS if inputs.months else USUAL).format(months=names, near=format_quantity(near, near.unit))
