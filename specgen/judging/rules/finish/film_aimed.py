"""The sprayer aims at a film above the minimum, and below a maximum.

Why: readings scatter about the film aimed at. Where that is the minimum itself, half of them fall below it; and a
metallic coat without a maximum is sprayed on until it runs and its flakes drift.

passes
    gloss: {dry_film: 1.2 mil, target_dry_film: 1.4 mil, most_dry_film: 1.8 mil}
fails FIN-18a at gloss.target_dry_film
    gloss: {dry_film: 1.2 mil, target_dry_film: 1.2 mil, most_dry_film: 1.8 mil}
"""

from functools import partial

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import Description
from specgen.quantities.comparison import more

RULE = Rule(
    "FIN-18",
    "Dry film aimed at",
    remedy="Get target and maximum dry film of each coat from the finish manufacturer in writing.",
    steps="primer gloss",
    documents="D08 D10 D12a",
)

_FILMS = ("dry_film", "target_dry_film", "most_dry_film")


@RULE.test(
    "a",
    CAUTION,
    "The dry film aimed at is {found}, no more than the minimum of {wanted}.",
    at="primer.target_dry_film",
    basis="practice",
)
def aimed_at_the_minimum(project: Description) -> Violations:
    """Of a coat whose minimum or target is known, the rest is asked for; the target is above the minimum."""
    for coat, section in (("primer", project.primer), ("gloss", project.gloss)):
        least, aimed, most = (partial(getattr, section, name) for name in _FILMS)
        if if_given(least) is None and if_given(aimed) is None:
            continue
        least, aimed, _ = read_all(least, aimed, most)
        if not more(aimed, least):
            say = f"The {coat} dry film aimed at is {{found}}, no more than its minimum of {{wanted}}."
            yield violation(aimed, wanted=least, at=(*section.path, "target_dry_film"), say=say)
