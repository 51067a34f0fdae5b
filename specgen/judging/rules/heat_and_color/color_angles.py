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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-07",
    "Several angles and range samples of a flake finish",
    remedy="Several angles plus light, middle and dark limit samples seen at 10 ft.",
    steps="mockup acceptance",
    documents="D09 D10",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "{found} angles cannot judge a flake finish; {wanted} are due.",
    each="colors",
    needs="colors.*.metallic colors.*.angles",
    limit="color.angles",
    basis="aama_finishes",
)
def few_angles(color: Any, limit: Any) -> Iterator[Found]:
    """The color of a flake finish is read at too few angles."""
    if every(lambda: color.metallic, lambda: less(len(set(color.angles)), limit)):
        yield found(len(set(color.angles)), wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "{found} range samples cannot show what is to be accepted; {wanted} are due, since perfect evenness is not to "
    "be promised.",
    each="colors",
    needs="colors.*.metallic colors.*.range_samples",
    limit="color.range_samples",
    basis="aama_finishes",
)
def few_samples(color: Any, limit: Any) -> Iterator[Found]:
    """A flake finish is shown in too few samples."""
    if every(lambda: color.metallic, lambda: less(color.range_samples, limit)):
        yield found(color.range_samples, wanted=limit)
