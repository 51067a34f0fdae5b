"""Wet film that dries to the film wanted, as it is read with a comb while spraying."""

from fractions import Fraction
from math import ceil, floor

from specgen.computing.coats import _coats
from specgen.computing.inputs import Inputs, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.project import Project
from specgen.model.typed_views import Gloss, Primer
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

READ = "Targets on the wall are rounded up to {0.1 mil|1 µm}."


class WetFilmInputs(Inputs):
    """A coating, its dry film and the water added to it; solids and water in percent."""

    dft: Quantity = _coats.film_input("dry film")
    volume_solids: Fraction = _coats.solids_input()
    thinning: Fraction = _coats.thinning_input()
    most_water: Fraction | None = _coats.most_water_input()


def wet_film(inputs: WetFilmInputs) -> Working:
    """Wet film of one coat, in mil or µm, the film before water beside it. Raises Refused."""
    notes = _coats.tell_water(inputs.thinning, inputs.most_water)
    unit = "mil" if inputs.system == "ip" else "um"
    working = WorkingBuilder(inputs.rows())
    working.step("W_0", "wet film before water", "D / (V_s / 100)", unit)
    working.step("W", "wet film", "W_0 * (1 + T / 100)", unit)
    return working.build("wet-film", "W", (_coats.WET_FILM,), notes, secondary_results=("W_0",))


def find_wet_film(dry: float, solids: float, water: float) -> float:
    """The wet film that dries to a film, in its unit; solids and water in percent: the same sum as a plain number."""
    return dry / (solids / 100) * (1 + water / 100)


def for_coat(coat: Primer | Gloss, ask: Ask) -> Working:
    """The wet film of the primer or the gloss of a project, with the most water it may be thinned by."""
    working = wet_film(WetFilmInputs.from_project(coat, ask))
    return working._replace(notes=(*working.notes, _coats.MOST_WATER, READ))


def name_aimed(project: Project, coat: str) -> str:
    """The field of the dry film that is aimed at: the target, the minimum where there is none."""
    return _coats.AIMED if project.is_given((coat, _coats.AIMED)) else _coats.LEAST


def round_up_film(film: float, unit: str) -> Quantity:
    """A wet film up to a tenth of a mil or to a micrometer, so that it dries to the least film."""
    steps = _count_steps(unit)
    # What the rounding of the machine leaves over a whole step asks for no further one.
    return Quantity.of(Fraction(ceil(film * steps - 1e-9), steps), unit)


def round_down_film(film: float, unit: str) -> Quantity:
    """A wet film down to a tenth of a mil or to a micrometer: no gauge reads finer."""
    steps = _count_steps(unit)
    return Quantity.of(Fraction(floor(film * steps + 1e-9), steps), unit)


def _count_steps(unit: str) -> int:
    return 10 if unit == "mil" else 1


PROVIDER = provide(
    "Wet film thickness",
    WetFilmInputs,
    wet_film,
    for_member=for_coat,
    sections=_coats.SECTIONS,
    columns=("W_0", "W"),
    as_read=round_up_film,
    order=20,
    example="dft=1.5mil volume_solids=38%",
)
