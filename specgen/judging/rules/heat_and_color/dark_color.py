"""A dark color over EPS has the EIFS manufacturer's written acceptance.

Why: a dark face in the sun can grow so hot that the board softens and draws back from its skin. The manufacturer
knows what its board and base coat have stood elsewhere.

passes
    package: {purpose: mockup_submittal}
    colors: {C1: {lrv: 20}}
fails HEA-05a at colors.C1.lrv
    colors: {C1: {lrv: 14}}
fails HEA-05b at attachments.*.colors
    package: {purpose: mockup_submittal}
    colors: {C1: {lrv: 14}}
"""

from specgen.judging.papers import SIGNED, naming, of_color, of_kind, to_list
from specgen.judging.rule import CAUTION, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented
from specgen.model.absence import all_known
from specgen.model.typed_views import Color, Description, Number
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-05",
    "Dark color over EPS",
    remedy="Use a lighter color, or submit the EIFS manufacturer's letter for this color.",
    steps="gloss",
    documents="D02",
)

RULE.clause(
    "a",
    CAUTION,
    "Light reflectance is {found}%; usual minimum {wanted}% over EPS.",
    when="color.lrv < limit",
    limit="color.lrv_least",
    remedy="Compute the face temperature, maximum {board.softens} for EPS. Obtain the EIFS manufacturer's letter that "
    "accepts this color on this wall; the architect accepts the color. If the letter is refused, use a color with a "
    "light reflectance of a minimum of {wanted}%.",
)


@RULE.test(
    "b",
    CAUTION,
    "The EIFS manufacturer has not accepted this dark color in writing.",
    each="colors",
    at="attachments.*.colors",
    limit="color.lrv_least",
    remedy="Submit the EIFS manufacturer's signed letter naming this color, or use a lighter color.",
)
def dark_without_letter(color: Color, project: Description, limit: Number) -> Violations:
    """No signed letter of the EIFS manufacturer takes the dark color."""
    letter = (of_kind("letter"), of_color(color), naming("eifs_source"), SIGNED)
    if not is_draft(project) and all_known(lambda: less(color.lrv, limit), lambda: not is_documented(project, letter)):
        yield violation(to_add=to_list(letter))
