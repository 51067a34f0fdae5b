"""The public holidays of a country or a part of one, days observed in their place among them, from a library."""

from collections.abc import Container
from datetime import date
from functools import cache
from typing import Any

from specgen.model.problem import refuse

_FORM = "write the letters of ISO 3166, such as US or US-CO"


@cache
def find_holidays(code: str) -> Container[date]:
    """The holidays of `US` or `US-CO`; raises Refused for another code, and where the library is not installed."""
    country, _, part = code.strip().upper().replace("_", "-").partition("-")
    library = _load_library(code)
    parts = library.list_supported_countries(include_aliases=False)
    if country not in parts:
        raise refuse(f"{code!r} is not the code of a country with known holidays", _find_country(library, country))
    if part and part not in parts[country]:
        raise refuse(
            f"{code!r} is not the code of a part of {country} with known holidays", _find_part(library, country, part)
        )
    found: Container[date] = library.country_holidays(country, subdiv=part or None)
    return found


def _find_country(library: Any, text: str) -> str:
    """What is meant by a code of three letters."""
    known = library.list_supported_countries(include_aliases=True)
    return f"write {library.country_holidays(text).country}" if text in known else _FORM


def _find_part(library: Any, country: str, text: str) -> str:
    """What is meant by the name of a part: Colorado."""
    names = library.country_holidays(country).subdivisions_aliases
    codes = {name.upper(): part for name, part in names.items()}
    return f"write {country}-{codes[text]}" if text in codes else _FORM


def _load_library(code: str) -> Any:
    try:
        import holidays
    except ModuleNotFoundError:
        raise refuse(f"the holidays of {code} need a library", "pip install 'specgen[site]'") from None
    return holidays
