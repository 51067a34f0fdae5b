"""No figure of the coating manufacturer is looser than a published limit.

Why: the source's own figure comes before common practice, but not before a published text: a cup read
outside its range measures nothing, and a gun held nearer than any manual allows leaves its mark.
Below, `coating` stands for the content of the coating system file.

passes
    spray: {distance: 16 in}
fails FIN-12a at primer.cup_least
    coating: {primer: {cup: zahn_4, cup_least: 18 s}}
fails FIN-12c at spray.distance
    coating: {spray: {distance: 5 in}}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.typed_views import Description
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "FIN-12",
    "Manufacturer's figures within published limits",
    remedy="Get the coating manufacturer's reason in writing, and prove the figure on the mockup.",
    steps="setup primer gloss",
    documents="D05 D08",
)
SAY = "The coating manufacturer allows {found}; a published text has {wanted}."
ZAHN_2_TO_5 = ("zahn_2", "zahn_3", "zahn_4", "zahn_5")


@RULE.test(
    "a",
    CAUTION,
    SAY,
    at="primer.cup_least",
    limit="cup.zahn_range_least",
    step="setup",
)
def shorter_than_the_cup_is_read(project: Description, limit: Quantity) -> Violations:
    """The window of the source opens below the range of the cup."""
    for coat in ("primer", "gloss"):
        figure = project.project.maker.get((coat, "cup_least"))
        if figure is not None and _cup(project, coat) in ZAHN_2_TO_5 and less(figure, limit):
            yield violation(figure, wanted=limit, at=(coat, "cup_least"))


@RULE.test(
    "b",
    CAUTION,
    SAY,
    at="primer.cup_most",
    limit="cup.zahn_range_most",
    step="setup",
)
def longer_than_the_cup_is_read(project: Description, limit: Quantity) -> Violations:
    """The window of the source closes above the range of the cup."""
    for coat in ("primer", "gloss"):
        figure = project.project.maker.get((coat, "cup_most"))
        if figure is not None and _cup(project, coat).startswith("zahn_") and more(figure, limit):
            yield violation(figure, wanted=limit, at=(coat, "cup_most"))


@RULE.test(
    "c",
    CAUTION,
    SAY,
    at="spray.distance",
    limit="spray.distance_published",
    step="primer",
)
def nearer_than_a_manual_allows(project: Description, limit: Quantity) -> Violations:
    """The source allows the gun nearer than a published paint manual."""
    figure = project.project.maker.get(("spray", "distance"))
    if figure is not None and less(figure, limit):
        yield violation(figure, wanted=limit)


def _cup(project: Description, coat: str) -> str:
    """The cup the source's figures of a coat are read in: its own where it names one, else that of the job."""
    return str(project.project.maker.get((coat, "cup")) or project[coat].cup)
