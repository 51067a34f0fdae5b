"""The editions of ASCE 7 that wind on walls is computed by: what each says otherwise than the others."""

from typing import NamedTuple

from specgen.model.source import Source
from specgen.quantities.parse import QuantityError
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source


class Edition(NamedTuple):
    """One edition: its exposures as power and gradient height in ft, and where its factors stand."""

    title: str
    exposures: dict[str, tuple[float, int]]
    # Factor of the exposure coefficient at the gradient height.
    at_gradient: float
    # Height below which the wind on cladding is taken as even, by exposure.
    even_below: dict[str, Quantity]
    # Whether thinner air at altitude counts, and whether the directionality stands with the pressure, not in q.
    counts_altitude: bool
    directs_pressure: bool
    exposure: Source
    velocity: Source
    chart: Source
    inside: Source


_FEET_15 = Quantity.of(15, "ft")
_EVEN = dict.fromkeys("BCD", _FEET_15)
_TO_2016 = {"B": (7.0, 1200), "C": (9.5, 900), "D": (11.5, 700)}
EDITIONS = {
    "asce_7_10": Edition(
        "ASCE 7-10",
        _TO_2016,
        2.01,
        # Table 30.3-1, note 1, for components and cladding.
        _EVEN | {"B": Quantity.of(30, "ft")},  # method's own: the wind on cladding in exposure B
        counts_altitude=False,
        directs_pressure=False,
        exposure=find_source("wind_7_10_exposure"),
        velocity=find_source("wind_7_10_velocity"),
        chart=find_source("wind_7_10_chart"),
        inside=find_source("wind_memory"),
    ),
    "asce_7_16": Edition(
        "ASCE 7-16",
        _TO_2016,
        2.01,
        _EVEN,
        counts_altitude=True,
        directs_pressure=False,
        exposure=find_source("wind_7_16_exposure"),
        velocity=find_source("wind_7_16_velocity"),
        chart=find_source("wind_7_16_chart"),
        inside=find_source("wind_inside"),
    ),
    "asce_7_22": Edition(
        "ASCE 7-22",
        {"B": (7.5, 3280), "C": (9.8, 2460), "D": (11.5, 1935)},
        2.41,
        _EVEN,
        counts_altitude=True,
        directs_pressure=True,
        exposure=find_source("wind_7_22_exposure"),
        velocity=find_source("wind_memory"),
        chart=find_source("wind_7_22_chart"),
        inside=find_source("wind_inside"),
    ),
}
OTHERS = {"asce_7_02": "ASCE 7-02", "asce_7_05": "ASCE 7-05"}


def read_edition(text: str) -> str:
    """The edition that a key names; raises QuantityError, with what to do for one that is not computed."""
    name = text.strip().lower().replace(" ", "_").replace("-", "_")
    if name in EDITIONS:
        return name
    if name in OTHERS:
        raise QuantityError(
            f"{OTHERS[name]} is not computed: its wind speeds are not those of the later editions",
            "give the engineer's pressures as elevations.*.design_pressure_outward and design_pressure_inward",
        )
    raise QuantityError(f"{text!r} is no choice", f"one of {', '.join(EDITIONS)}")
