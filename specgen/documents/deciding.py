"""The questions that can rule a wall out, in the order in which they are asked: the desk first, the site last."""

from specgen.documents.context import DocumentContext
from specgen.documents.standing_walls import BARRIER
from specgen.model.finding import Verdict

# What no rule asks of a wall that stands, and the code does.
BEHIND = "COD "
# The section on rated walls of the International Building Code, by which their report is asked for.
RATED = "COD 2603.5.1"
# Board goes on the outside of a wall that stands, which may stand on its lot line; no rule reads how far off that is.
LOT_LINE = "COD"
# Asked of each drained wall; who asks for its drainage differs.
DRAINAGE = "ATT-08c"
# Rule or clause, question, and the answer that rules the wall out. What keeps everybody off the wall comes first, then
# what is answered at the desk, what refuses most before the rest; last what waits for repair, wash and pull tests, the
# dearest.
QUESTIONS = (
    (
        "ATT-10",
        "Asbestos in the existing wall, lead in its coating",
        "asbestos is found and can be neither removed nor left undisturbed; lead alone rules no wall out, see Existing "
        "walls in D05",
    ),
    (
        BEHIND,
        "Wall behind the board: solid concrete or masonry to the code, or framed or veneer",
        "the wall is framed, a veneer, or neither designed to the code nor accepted by the authority, without "
        "a test to ASTM E331: a WRB is then required",
    ),
    (
        LOT_LINE,
        "Lot line beside the existing wall",
        "the EIFS reaches past the lot line, and neither the neighbor nor the authority over the street permits it",
    ),
    ("ATT-03", "Local rule on fasteners", "the local code requires fasteners through the board"),
    (
        "ATT-07",
        "Bond of the adhesive to the WRB",
        "no report shows a bond of this adhesive to this WRB of a minimum of {substrate.bond}",
    ),
    (BARRIER, "Barrier wall without drainage", "the architect does not accept in writing a wall without drainage"),
    ("COD-02", "Drained wall by the local code", "the local code requires a drained wall"),
    ("COD-03d", "Fire class by the local code", "the wall does not reach the class that the authority requires"),
    (
        "COD-03",
        "NFPA 285 and NFPA 268",
        "neither a report nor an engineer's extension accepted by the authority covers this wall with this finish",
    ),
    (
        RATED,
        "Rated wall",
        "the code rates the wall, and neither an ASTM E119 or UL 263 report nor an analysis accepted by the authority "
        "covers it with this EIFS",
    ),
    (
        "SUB-06a",
        "Finish of another manufacturer on this EIFS",
        "the EIFS manufacturer does not accept these coats in writing, or its warranty does not hold under them",
    ),
    (
        "HEA-02",
        "Heat at the board",
        "no lighter color is accepted, and the face temperature exceeds {board.softens}, the maximum use temperature "
        "of EPS",
    ),
    (
        "HEA-05",
        "Dark color over EPS",
        "the EIFS manufacturer refuses the color, and the architect accepts none with a light reflectance of a "
        "minimum of {color.lrv_least}",
    ),
    ("ATT-09", "Wind on the adhered wall", "the wind suction exceeds the tested load divided by the safety factor"),
    (
        DRAINAGE,
        "Drainage behind the board",
        "the drainage efficiency is below {drainage.efficiency} by ASTM E2273",
    ),
    (
        "ATT-05",
        "Bond of the existing surface",
        "the EIFS manufacturer does not accept the surface, or a pull is below {substrate.bond} or the engineer's "
        "figure where higher, and the surface is neither removed nor overlaid with fastened sheathing and WRB (a new "
        "wall type: drained, with its own NFPA 285 report and special inspection)",
    ),
)
# A clause by itself, where the others of its rule do not rule a wall out.
APART = {code for code, *_ in QUESTIONS if len(code) == len("COD-03d")}
_CODES = {code for code, *_ in QUESTIONS}
# Another product or detail meets these; they are settled with the decision on the wall all the same.
_SETTLED_WITH_IT = {"ATT-08", "INS-03"}


def is_undecided(context: DocumentContext) -> bool:
    """Whether a wall is still to be decided on."""
    return context.remember(_look_for_undecided)


def _look_for_undecided(context: DocumentContext) -> bool:
    return any(wall.verdict is Verdict.NOT_YET_KNOWN for wall in context.judgment.walls.values())


def bears_on_wall(rule: str, code: str) -> bool:
    """Whether a clause of a rule can rule a wall out, or is settled with the decision on it."""
    return rule in _CODES | _SETTLED_WITH_IT or code in _CODES
