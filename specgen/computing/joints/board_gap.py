"""Gap between boards at a sealant joint: the finished joint, and the coats on each edge of board beside it."""

from fractions import Fraction
from math import ceil

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import if_given
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Joint
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

SOURCE = Source(Kind.COMPUTED, "finished width, and the coats on each edge of board")
NOTES = (
    "Sprayed coats on the edge are left out. Gaps on the wall are rounded up to {1/16 in|1 mm}; a thicker base coat "
    "takes a wider gap.",
)
AT_HEADS = "At jambs; at a head the bead joins frame and flashing."
BELOW_FLASHING = (
    "From the board below to the flashing; the open joint above it and the wrapped edge of the board above come on top."
)
# The joints beside which board stands on one side only.
ONE_SIDED = ("opening_perimeter", "penetration", "dissimilar_material")
ON_BASE_COAT = ("base_coat", "sealant_primer_on_base_coat")
NOTHING = Quantity.of(0, "in")


class GapInputs(Inputs):
    """A joint, the coats on an edge of board, and how many edges stand beside the joint."""

    width: Quantity = given_input("W", "joint width", "length", "joints.*.width", above=0)
    base_coat: Quantity = given_input(
        "t_b", "base coat on the edge", "length", "joints.*.elevation.wall.base_coat.dry_thickness", least=0
    )
    smoothing: Quantity = given_input(
        "t_s",
        "maximum smoothing on the edge",
        "length",
        "smoothing.total_thickness",
        "maximum smoothing on the edge; none where the sealant bonds to the base coat",
        least=0,
        span=("0 in", "1/4 in"),  # method's own: from no smoothing to the most its field takes
    )
    edges: Fraction = given_input(
        "n",
        "board edges",
        "number",
        default=2,
        origin="by kind of joint",
        about="board edges beside the joint",
        span=("1", "2"),
    )


def board_gap(inputs: GapInputs) -> Working:
    """Gap between boards, or from board to frame, in inches or millimeters."""
    working = WorkingBuilder(inputs.rows())
    working.step("G", "gap", "W + n * (t_b + t_s)", "in" if inputs.system == "ip" else "mm")
    return working.build("board-gap", "G", (SOURCE,), NOTES)


def round_up_gap(gap: float, unit: str) -> Quantity:
    """A gap up to a sixteenth of an inch or to a millimeter, as a rule shows it."""
    parts = 16 if unit == "in" else 1
    # What the rounding of the machine leaves over a whole step asks for no further one.
    return Quantity.of(Fraction(ceil(gap * parts - 1e-9), parts), unit)


def for_joint(joint: Joint, ask: Ask) -> Working:
    """The gap at a joint: one edge beside a frame or flashing, no smoothing where sealant bonds to the base coat."""
    edges = Fraction(1 if joint.kind in ONE_SIDED or _is_flashed(joint) else 2)
    more = {"smoothing": NOTHING} if joint.bond_face in ON_BASE_COAT else {}
    working = board_gap(GapInputs.from_project(joint, ask, edges=edges, **more))
    remark = AT_HEADS if _has_flashed_head(joint) else BELOW_FLASHING if _is_flashed(joint) else None
    return working._replace(notes=(*working.notes, remark)) if remark else working


def _has_flashed_head(joint: Joint) -> bool:
    """Whether the bead around an opening joins frame and flashing at its head, where no board stands beside it."""
    if joint.kind != "opening_perimeter":
        return False
    served = joint.get("serves") or ()
    openings = if_given(lambda: [one for one in joint.elevation.openings if one.mark in served]) or ()
    return any(one.get("head_flashing") for one in openings)


def _is_flashed(joint: Joint) -> bool:
    """Whether the bead bonds to a flashing at the top of the joint: it is level, and its wall is drained."""
    drained = if_given(lambda: joint.elevation.wall.drainage.kind != "none")
    return bool(drained) and joint.kind != "substrate_change" and if_given(lambda: joint.runs) == "horizontal"


PROVIDER = provide(
    "Board gap at sealant joints",
    GapInputs,
    board_gap,
    each=("joints",),
    for_member=for_joint,
    reads=("joints.*.kind", "joints.*.bond_face", "joints.*.runs", "joints.*.elevation.wall.drainage.kind"),
    columns=("G",),
    as_read=round_up_gap,
    order=40,
    example="width=3/4in base_coat=3/32in smoothing=1/32in",
)
