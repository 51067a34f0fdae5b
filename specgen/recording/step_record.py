"""What is recorded of a step on an elevation, as it is judged."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from specgen.recording.round_state import JudgedRound
from specgen.recording.rounds import Round
from specgen.recording.site_entries import Decision
from specgen.recording.step_facts import StepFacts


class Against(NamedTuple):
    """What stands against an entry: the nonconformances in words, and their clauses."""

    told: tuple[str, ...]
    codes: frozenset[str]


Failing = Mapping[tuple[str, int], Against]  # by the collection and number of an entry


@dataclass
class StepRecord:
    """What is recorded of a step on an elevation, as it is judged."""

    facts: StepFacts
    rounds: list[Round]
    decisions: Sequence[Decision]
    judged: list[JudgedRound] = field(default_factory=list)
    begun_later: bool = False  # whether a later step has begun
    is_passed: bool = False  # whether one has that is not carried out panel by panel

    @property
    def is_recorded(self) -> bool:
        """Whether anything is recorded of it: of one that only releases, whether it was released."""
        return bool(self.decisions) or (bool(self.rounds) and not self.facts.step.releases)

    @property
    def live(self) -> list[JudgedRound]:
        """Those rounds in whose place no later one stands."""
        return [one for one in self.judged if not one.work.superseded]
