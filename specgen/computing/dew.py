"""Dew point of moist air by the Magnus form as plain numbers; its source stands with the calculation `dew-point`."""

from math import exp, log

# Factor, and degrees Celsius, of the form over water and over ice.
OVER_WATER, OVER_ICE = (17.62, 243.12), (22.46, 272.62)


def find_dew_point(air: float, humidity: float) -> float:
    """The dew point over water, in °C, of air in °C with a relative humidity in percent, above 0."""
    factor, offset = OVER_WATER
    vapor = log(humidity / 100) + factor * air / (offset + air)
    return offset * vapor / (factor - vapor)


def find_humidity(air: float, dew_point: float) -> float:
    """The relative humidity, in percent, of air in °C with a dew point in °C."""
    factor, offset = OVER_WATER
    return 100 * exp(factor * dew_point / (offset + dew_point) - factor * air / (offset + air))
