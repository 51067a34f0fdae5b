"""Which form an entry of the log goes on: by the fields that a form alone has."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from specgen.documents.records.form_sections import FormSection
from specgen.model.record import Entry

# These tell where and when, and stand on each form of an entry.
KEYS = ("date", "elevation", "area", "step", "started_at")
# These stand on each sheet of a pass over more panels than one sheet has room for.
ON_EACH = ("crew", "ended_at")
# It has no blank, as the row that an entry stands on tells it.
COAT = "coat"
# These tell of a pass of the gun only where the step is one that is sprayed.
_OF_A_PASS = ("crew", "ended_at")


@dataclass(frozen=True)
class Forms:
    """The forms of one collection by their letters, in the order of the page."""

    collection: str
    sections: Mapping[str, FormSection]

    @cached_property
    def _homes(self) -> dict[str, tuple[str, ...]]:
        """The letters of the forms that hold a field, by its last name."""
        homes: dict[str, tuple[str, ...]] = {}
        for letter, section in self.sections.items():
            for path in section.fields:
                collection, name = path.split(".")
                if collection == self.collection:
                    homes[name] = (*homes.get(name, ()), letter)
        return homes

    def find_homes(self, name: str) -> tuple[str, ...]:
        """The forms that have a place for a field."""
        return self._homes.get(name, ())

    def divide(self, entry: Entry) -> dict[str, tuple[str, ...]]:
        """The fields of an entry by the form they go on, its keys on each; none where no form is for it."""
        own = [name for name in entry.values if name != COAT and name not in KEYS and len(self.find_homes(name)) == 1]
        if not self._is_pass(entry, own):
            own = [name for name in own if name not in _OF_A_PASS]
        letters = {self.find_homes(name)[0] for name in own}
        if not letters and entry.get("step") in self._boxed_steps:
            letters = set(self.find_homes("step")[:1])
        chosen = {letter: list[str]() for letter in self.sections if letter in letters}
        for name in entry.values:
            self._choose(name, own, chosen)
        return {letter: tuple(names) for letter, names in chosen.items()}

    def _choose(self, name: str, own: list[str], chosen: dict[str, list[str]]) -> None:
        homes = [letter for letter in self.find_homes(name) if letter in chosen]
        if name in KEYS:
            for names in chosen.values():
                names.append(name)
        elif name == COAT and self.find_homes(_OF_A_PASS[0])[0] in chosen:
            chosen[self.find_homes(_OF_A_PASS[0])[0]].append(name)
        elif name in own:
            chosen[homes[0]].append(name)
        elif homes and len(self.find_homes(name)) > 1:  # on the narrowest of several forms
            chosen[homes[-1]].append(name)

    @cached_property
    def _boxed_steps(self) -> frozenset[str]:
        """The steps that the form of a pass has a box for: those that are sprayed."""
        boxes = (box for section in self.sections.values() if section.panels for box in section.boxes.items())
        return frozenset(
            value for name, values in boxes if name.startswith(f"{self.collection}.step.") for value in values
        )

    def _is_pass(self, entry: Entry, own: list[str]) -> bool:
        """Whether an entry tells of a pass of the gun, and not only who was there at a reading."""
        homes = self.find_homes(_OF_A_PASS[0])
        others = [name for name in own if name not in _OF_A_PASS]
        sprayed = entry.get("step") in self._boxed_steps
        return any(self.find_homes(name) == homes for name in others) or (
            sprayed and (_OF_A_PASS[1] in entry.values or not others)
        )
