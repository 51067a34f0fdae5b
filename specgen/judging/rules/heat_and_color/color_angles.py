"""A flake finish is read at several angles and shown in a light, a middle and a dark sample.

Why: flakes change with the angle they are seen from, and no two panels are quite alike. One reading and one
sample promise an evenness that nobody can give.

passes
    colors: {C1: {metallic: yes, angles: [15, 45, 110], range_samples: 3}}
fails HEA-07a at colors.C1.angles
    colors: {C1: {metallic: yes, angles: [45]}}
fails HEA-07b at colors.C1.range_samples
    colors: {C1: {metallic: yes, range_samples: 1}}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Color, Number
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-07",
    "Angles and range samples of a metallic finish",
    remedy="Measure the color at a minimum of {color.angles} angles.",
    steps="mockup acceptance",
    documents="D09 D10",
)


@RULE.test(
    "a",
    CAUTION,
    "Measuring angles of a metallic finish: {found}; minimum {wanted}.",
    at="color.angles",
    basis="aama_view",
    limit="color.angles",
)
def few_angles(color: Color, limit: Number) -> Violations:
    """The color of a flake finish is read at too few angles."""
    if all_known(lambda: color.metallic, lambda: less(len(set(color.angles)), limit)):
        yield violation(len(set(color.angles)), wanted=limit)


RULE.clause(
    "b",
    CAUTION,
    "Range samples of a metallic finish: {found}; minimum {wanted}, as even color cannot be promised.",
    when="color.metallic = yes and color.range_samples < limit",
    basis="aama_view",
    limit="color.range_samples",
    remedy="Submit light, middle, and dark range samples, viewed at {view.distance}.",
)
