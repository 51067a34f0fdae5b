"""Saturation pressure of water vapor as ISO 13788 takes it, for every sum that needs it."""

from specgen.standards import find_source

SOURCE = find_source("iso_13788").quote("saturation pressure over water at and above {32 °F|0 °C}, over ice below")


def express_over_water(symbol: str, degree: str) -> str:
    """The expression of the pressure, in Pa, over water, from a temperature in °F or °C."""
    return _expression(symbol, degree, "17.269", "237.3")


def express_over_ice(symbol: str, degree: str) -> str:
    """The expression of the pressure, in Pa, over ice, from a temperature in °F or °C."""
    return _expression(symbol, degree, "21.875", "265.5")


def express_saturation(symbol: str, degree: str, value: float) -> str:
    """The expression that holds for a temperature of this value: over water, or below freezing over ice."""
    return (express_over_ice if value < (32 if degree == "F" else 0) else express_over_water)(symbol, degree)


def _expression(symbol: str, degree: str, a: str, b: str) -> str:
    if degree == "F":
        return f"610.5 * exp({a} * ({symbol} - 32) / ({b} * 1.8 + {symbol} - 32))"
    return f"610.5 * exp({a} * {symbol} / ({b} + {symbol}))"
