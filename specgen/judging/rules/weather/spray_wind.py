"""The wind at which spraying stops is set no higher than public painting specifications set it.

Why: wind bends the fan, dries the mist before it lands and carries the rest onto other people's cars. It
leaves stripes, mottle and a rough feel.

passes
    weather: {max_spray_wind: 8 mph}
fails WEA-03a at weather.max_spray_wind
    weather: {max_spray_wind: 20 mph}
fails WEA-03b at weather.max_spray_wind
    weather: {max_spray_wind: 12 mph}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "WEA-03",
    "Wind during spraying",
    remedy="Set the wind limit on the mockup; stop at the first tiger stripe.",
    steps="protection primer gloss",
    documents="D05 D08 D12c",
)

RULE.clause(
    "a",
    STOP,
    "The wind limit for spraying is {found}; public painting specifications allow a maximum of {wanted}.",
    when="weather.max_spray_wind > limit",
    limit="weather.wind_most",
    remedy="Lower the wind limit to {weather.wind_most} or less.",
)

RULE.clause(
    "b",
    CAUTION,
    "The wind limit for spraying is {found}; above {wanted} a metallic finish shows stripes and dry spray.",
    when="weather.max_spray_wind <= limit(weather.wind_most) and weather.max_spray_wind > limit",
    limit="weather.wind_usual",
    remedy=(
        "Lower the limit to {weather.wind_usual}, or prove the higher one on the mockup; stop at the first "
        "tiger stripe."
    ),
)
