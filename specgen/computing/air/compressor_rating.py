"""The compressor that would do: rated so that what it gives at the site is the air the guns need."""

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

SCALED = Source(Kind.COMPUTED, "what a compressor gives at a site grows with its rating: rating by need over supply")
NOTES = ("For the air with leaks and reserve; a compressor of the same kind, at the same place.",)


class RatingInputs(Inputs):
    """The air that is needed, and a compressor by its rating and by what that gives at the site."""

    rated: Quantity = given_input(
        "V", "rated air flow", "flow", "compressor.air_flow", units=("cfm", "L/s"), bare="cfm", above=0
    )
    needed: Quantity = given_input(
        "Q", "required compressor flow, standard air", "flow", computed="air-demand", least=0
    )
    supplied: Quantity = given_input("Q_s", "site air flow, standard air", "flow", computed="air-supply", above=0)


def compressor_rating(inputs: RatingInputs) -> Working:
    """Rated flow of the least compressor that would do, in cfm or L/s. Raises Refused."""
    working = WorkingBuilder(inputs.rows())
    working.step("R", "rating of a compressor that does", "V * Q / Q_s", "cfm" if inputs.system == "ip" else "L/s")
    return working.build("compressor-rating", "R", (SCALED,), NOTES)


PROVIDER = provide(
    "Rating of a compressor that does",
    RatingInputs,
    compressor_rating,
    by_keys=False,
    order=40,
    printed=False,  # stands beside the demand in answers; the sheets hold what there is against what is needed
)
