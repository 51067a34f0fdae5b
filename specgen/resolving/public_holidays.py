"""The public holidays of a country or a part of one, days observed in their place among them, from a library."""

from collections.abc import Container
from datetime import date
from functools import cache
from typing import Any

from specgen.model.problem import refuse
from specgen.model.suggest import suggest


@cache
def find_holidays(code: str) -> Container[date]:
    """The holidays of `US` or `US-CO`; raises Refused for another code, and where the library is not installed."""
    country, _, part = code.strip().upper().replace("_", "-").partition("-")
    library = _load_library(code)
    parts = library.list_supported_countries(include_aliases=False)
    if country not in parts:
        raise refuse(f"{code!r} is not the code of a country with known holidays", suggest(country, parts))
    if part and part not in parts[country]:
        known = [f"{country}-{name}" for name in parts[country]]
        hint = suggest(f"{country}-{part}", known) if known else f"write {country}"
        raise refuse(f"{code!r} is not the code of a part of {country} with known holidays", hint)
    found: Container[date] = library.country_holidays(country, subdiv=part or None)
    return found


def _load_library(code: str) -> Any:
    try:
        import holidays
    except ModuleNotFoundError:
        raise refuse(f"the holidays of {code} need a library", "pip install 'specgen[site]'") from None
    return holidays
