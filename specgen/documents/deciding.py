"""The questions that can rule a wall out, in the order in which they are asked; the decision waits for no other."""

from specgen.documents.standing_walls import BARRIER

# What no rule asks of a wall that stands, and the code does.
BEHIND = "COD, "
# Rule or clause, question, and the answer that rules the wall out; what is soonest asked and refuses most comes first.
QUESTIONS = (
    (
        "ATT-10",
        "Lead and asbestos in the existing wall",
        "asbestos is found and may be neither removed nor left undisturbed; lead does not decide, see D05",
    ),
    (
        BEHIND,
        "Wall behind the board: concrete or masonry designed to the code, or framed",
        "it is framed, or not designed to the code, and is not tested to ASTM E331: a WRB is then required",
    ),
    ("ATT-03", "Local rule on fasteners", "fasteners through the board are required"),
    ("ATT-07", "Bond of the adhesive to the WRB", "no bond report covers this adhesive on this WRB"),
    (
        "ATT-05",
        "Bond of the existing surface",
        "a pull is below the engineer's minimum, and the surface is neither removed nor overlaid with fastened "
        "sheathing and WRB (a new wall type: drained, with its own NFPA 285 report and special inspection)",
    ),
    (BARRIER, "Barrier wall without drainage", "the architect does not accept it in writing"),
    ("COD-02", "Drained wall by the local code", "a drained wall is required"),
    ("COD-03d", "Fire class by the local code", "the wall does not reach the class that the authority requires"),
    (
        "COD-03",
        "NFPA 285 and NFPA 268",
        "no report, and no engineer's extension accepted by the authority, covers this wall",
    ),
    (
        "HEA-02",
        "Heat at the board",
        "the face temperature exceeds {board.softens}, maximum use temperature of EPS, ASTM C578",
    ),
    ("ATT-09", "Wind on the adhered wall", "wind suction exceeds the tested load divided by the safety factor"),
    (
        "ATT-08",
        "Drainage behind the board",
        "drainage efficiency is below {drainage.efficiency} to ASTM E2273, or water has no outlet",
    ),
    ("INS-03", "EPS board for EIFS", "no aged board to ASTM E2430 is available"),
)
APART = {code for code, *_ in QUESTIONS if len(code) == len("COD-03d")}
_CODES = {code for code, *_ in QUESTIONS}


def rules_out(rule: str, code: str) -> bool:
    """Whether a clause of a rule can rule a wall out."""
    return rule in _CODES or code in _CODES
