"""Every test method named is made for a wall like this one.

Why: a method made for steel or for roofs gives a number here too, and the number means nothing. Both sides
then argue about it.

passes
    mockup: {criteria: [{name: film, method: D4414 wet-film comb}, {name: film, method: D7091 on metal coupons}]}
    attachments: {A1: {kind: test_report, standard: ASTM D7234}}
fails COD-05a at mockup.criteria.0.method
    mockup: {criteria: [{name: film, method: D7091}]}
fails COD-05b at mockup.criteria.0.method
    mockup: {criteria: [{name: film, method: D4417}]}
fails COD-05c at mockup.criteria.0.method
    mockup: {criteria: [{name: adhesion, method: D4541}]}
fails COD-05d at mockup.criteria.0.method
    mockup: {criteria: [{name: film, method: D5957}]}
fails COD-05e at mockup.criteria.0.method
    mockup: {criteria: [{name: primer, method: DIN 53211}]}
fails COD-05f at mockup.criteria.0.method
    mockup: {criteria: [{name: color, method: E1980}]}
"""

from functools import partial

from specgen.judging.applies import applicable
from specgen.judging.fire_tests import names_standard
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.three_valued import attachments, members_where
from specgen.model.absence import Absent
from specgen.model.field import Path
from specgen.model.project import View
from specgen.model.typed_views import Description

FILM = "Measure wet film by ASTM D4414, or dry film by D6132, D4138, or metal coupons."

RULE = Rule(
    "COD-05",
    "Test methods suited to this wall",
    remedy=FILM,
    steps="mockup acceptance",
    documents="D10 D11",
)

# What is named and made for something else: letter, severity, method, what is said, what to do, where that stands.
MISPLACED = (
    ("a", CAUTION, "D7091", "D7091 measures film on metal, and this wall is not metal.", FILM, "astm_d7091"),
    (
        "b",
        CAUTION,
        "D4417",
        "D4417 measures the profile of blasted steel, and this wall is not steel.",
        FILM,
        "astm_d4417_memory",
    ),
    (
        "c",
        CAUTION,
        "D4541",
        "D4541 pulls coatings off metal, and this wall is not metal.",
        "Test adhesion by ASTM D7234 or D3359.",
        "adhesion_tests_memory",
    ),
    (
        "d",
        CAUTION,
        "D5957",
        "D5957 is a flood test of flat roofs and does not measure coverage.",
        "Delete it, and measure coverage by wet film, ASTM D4414.",
        "astm_d5957_memory",
    ),
    (
        "e",
        STOP,
        "DIN 53211",
        "DIN 53211 is withdrawn, so the cup time has no valid method.",
        "State the cup time by a flow cup in force: ISO 2431, or a dip cup to ASTM D4212.",
        "din_53211",
    ),
    (
        "f",
        STOP,
        "E1980",
        "E1980 covers flat and low-sloped surfaces; on a wall it is a relative index only.",
        "Delete it, and accept solar reflectance and emittance by their own tests.",
        "astm_e1980",
    ),
)


def names_method(method: str, project: Description) -> Violations:
    """The lines of the form and the reports that name a method, other than on coupons."""
    lines = project.mockup.criteria
    texts = [
        *(partial(_text, line, "method") for line in (lines if lines.is_given() else ())),
        *(partial(_text, paper, "standard") for paper in attachments(project)),
    ]
    naming = members_where(
        texts, lambda text: names_standard(text()[0], method) and "coupon" not in text()[0].casefold()
    )
    if not naming and not lines.is_given():
        raise Absent(lines.path)
    for text in naming:
        yield violation(text()[0], at=text()[1])


def _text(view: View, field: str) -> tuple[str, Path]:
    """The text of a field with its path; nothing for a field that the document does not owe."""
    path = (*view.path, field)
    owed = applicable(view.project, path)
    return str(view[field] if owed else view.get(field) or ""), path


for letter, severity, method, say, remedy, basis in MISPLACED:
    RULE.test(letter, severity, say, at="mockup.criteria.*.method", basis=basis, remedy=remedy)(
        partial(names_method, method)
    )
