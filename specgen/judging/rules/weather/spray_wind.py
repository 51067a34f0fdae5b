"""The wind at which spraying stops is set no higher than public painting specifications set it.

Why: wind bends the fan, dries the mist before it lands and carries the rest onto other people's cars. It
leaves stripes, mottle and a rough feel.

passes
    weather: {max_spray_wind: 8 mph}
fails WEA-03a at weather.max_spray_wind
    weather: {max_spray_wind: 20 mph}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import more

RULE = Rule(
    "WEA-03",
    "Wind while spraying",
    remedy="Set a limit at the mockup; stop at the first tiger stripe.",
    steps="protection primer gloss",
    documents="D05 D08 D12c",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The spray limit for wind is {found}; {wanted} is the most that public painting specifications allow.",
    needs="weather.max_spray_wind",
    limit="weather.wind_most",
)
def windy_limit(project: Any, limit: Any) -> Iterator[Found]:
    """The project would spray in more wind than public specifications allow."""
    if more(project.weather.max_spray_wind, limit):
        yield found(project.weather.max_spray_wind, wanted=limit)
