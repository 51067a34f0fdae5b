"""Each pass is as thick while wet as the coat asks for with the water of its pail.

Why: the wet film is the last figure that can still be put right. A thin pass dries to a film that lets weather and the
color below through, and lays the flakes on edge; a thick one runs, dries slowly, and lets the flakes drift.

passes
    gloss: {dry_film: 1.2 mil, volume_solids: 36, max_water: 6}
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, water: 5, wet_film: 3.5 mil}]
fails FIN-17a at log.0.wet_film
    gloss: {dry_film: 1.2 mil, volume_solids: 36, max_water: 6}
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, water: 5, wet_film: 1 mil}]
fails FIN-17b at log.0.wet_film
    gloss: {dry_film: 1.2 mil, volume_solids: 36, max_water: 6}
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, water: 5, wet_film: 6 mil}]
"""

from typing import NamedTuple

from specgen.computing.coats.wet_film import find_wet_film, name_aimed, round_down_film, round_up_film
from specgen.judging.choice_groups import SPRAYED
from specgen.judging.entry_view import FoundFact, ask_fact
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.site_limits import sources_of
from specgen.model.absence import read_all
from specgen.model.source import Source
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, Number, SiteRecordEntry
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity
from specgen.recording.pails import find_pass_water
from specgen.resolving.limits_in_force import limit_in_force

RULE = Rule(
    "FIN-17",
    "Wet film of each pass",
    remedy="Read the wet film at once, and correct speed, distance, and fluid pressure before the next pass.",
    steps="primer gloss",
    documents="D12a",
)

_WATER = FoundFact(find_pass_water)


class _Coat(NamedTuple):
    """What a coat asks for: its dry film, its solids in percent, and where the two come from."""

    dry: Quantity
    solids: Number
    sources: tuple[Source, ...]

    def find_film(self, water: Number, share: int, unit: str) -> float:
        """A share in percent of the wet film of a pail with so much water, in a unit."""
        return find_wet_film(self.dry.number(unit), float(self.solids), float(water)) * share / 100


@RULE.test(
    "a",
    STOP,
    "The wet film is {found}; minimum {wanted} with this water, {film.least_share} of the film specified.",
    at="log.wet_film",
    limit="film.least_share",
    remedy=(
        "Stop at this area. Correct speed, distance, and fluid pressure. Measure the film once it is dry; where it is "
        "under {film.least_share} of the film specified, recoat to a natural break within the recoat time, and have "
        "the recoat accepted."
    ),
    why="a thin film lets weather and the color below through, and no later coat makes up for it by itself",
)
def thin_pass(log: SiteRecordEntry, project: Description, limit: int, standards: Standards) -> Violations:
    """A pass dries to less than the least share of the film specified, whatever water its pails hold."""
    if log.step not in SPRAYED:
        return
    film, coat = read_all(lambda: log.wet_film, lambda: _find_coat(log, project))
    unit, water = _unit_of(project), ask_fact(log, _WATER)

    def find_least(pail: Number) -> Quantity:
        return round_down_film(coat.find_film(pail, limit, unit), unit)

    least = find_least(water.least if water else 0)
    if less(film, least):
        row = limit_in_force(project.project, standards.limits["film.least_share"])
        yield violation(film, wanted=least, sources=(row.source, *coat.sources))
    elif water is None and less(film, find_least(project[log.step].max_water)):
        read_all(lambda: log.water)


@RULE.test(
    "b",
    CAUTION,
    "The wet film is {found}; maximum {wanted} with this water, {film.most_share} of the film aimed at.",
    at="log.wet_film",
    limit="film.most_share",
    remedy=(
        "Look for runs, sags, and drifted flakes against the mockup while the coat is wet. Let it dry longer before "
        "its release; sand and recoat to a natural break where it ran. Correct speed, distance, and fluid pressure."
    ),
    why="a thick film runs, dries slowly, and lets the flakes drift, so that the panel is darker than those beside it",
)
def thick_pass(log: SiteRecordEntry, project: Description, limit: int, standards: Standards) -> Violations:
    """A pass is far thicker than the film aimed at, whatever water its pails hold."""
    if log.step not in SPRAYED:
        return
    film, coat = read_all(lambda: log.wet_film, lambda: _find_coat(log, project, name_aimed(project.project, log.step)))
    unit, water = _unit_of(project), ask_fact(log, _WATER)

    def find_most(pail: Number) -> Quantity:
        return round_up_film(coat.find_film(pail, limit, unit), unit)

    if not more(film, find_most(water.most if water else 0)):
        return
    most = find_most(water.most if water else project[log.step].max_water)
    if more(film, most):
        row = limit_in_force(project.project, standards.limits["film.most_share"])
        yield violation(film, wanted=most, sources=(row.source, *coat.sources))
    else:
        read_all(lambda: log.water)


def _find_coat(log: SiteRecordEntry, project: Description, film: str = "dry_film") -> _Coat:
    dry, solids = read_all(lambda: project[log.step][film], lambda: project[log.step].volume_solids)
    paths = ((log.step, name) for name in (film, "volume_solids"))
    sources = dict.fromkeys(source for path in paths for source in sources_of(project.project, path))
    return _Coat(dry, solids, tuple(sources))


def _unit_of(project: Description) -> str:
    return "mil" if project.project.system == "ip" else "um"
