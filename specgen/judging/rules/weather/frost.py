"""Boards and base coat wait until frost has left the wall.

Why: adhesive and base coat are mixed with water. On a face that froze in the night they lose their bond
before they have set, and nobody sees it until the board comes off.

passes
    weather: {hours_after_frost: 36}
fails WEA-10a at weather.hours_after_frost
    weather: {hours_after_frost: 4}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WEA-10",
    "No boards or base coat on frost",
    remedy="Wait until air and wall are at {weather.least_eifs} and rising.",
    steps="boards mesh",
    documents="D05 D08 D12c",
)

RULE.clause(
    "a",
    STOP,
    "Boards or base coat are planned {found} h after frost on the wall; minimum {wanted} h without frost.",
    when="weather.hours_after_frost < limit",
    limit="weather.after_frost",
    lift="never",
)
