"""A deck ledger is flashed before the board goes on.

Why: the ledger is fastened through the water-resistive barrier and carries the water of the deck along the wall.
What rots there holds up the deck.

passes
    details: {D1: {kind: deck_ledger, flashing: yes}}
fails WAT-06a at details.D1.flashing
    details: {D1: {kind: deck_ledger, flashing: no}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-06",
    "Deck ledger flashing",
    remedy="Flash over and behind the ledger, lapped under the WRB, before board is set.",
    steps="flashings",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "The deck ledger has no flashing, so deck water enters the wall.",
    when="water_detail.kind = deck_ledger and water_detail.flashing = no",
    found="",
    basis="wall_flashing",
    lift="never",
)
