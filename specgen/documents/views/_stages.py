"""What a value or a document is needed before, in order: from any work on an old wall to closeout."""

from specgen.documents.context import DocumentContext

HAZARD = (0, "any work on the existing walls")
# Whoever is asked for anything is named before.
NAMING = (1, "first requests")
PULLS = (2, "repair and pull tests")
DECISION = (3, "decision on the walls")
SUBMITTAL = (4, "this submittal")
# The contractor reviews what is issued, and sends it on.
SENDING = (5, "sending to the architect")
START = (50, "start of work")
CLOSEOUT = (999, "closeout")
# The purposes of a package that comes before the mockup.
BEFORE_MOCKUP = ("design_draft", "mockup_submittal")
# The number of the first step; those that follow the mockup come after the start of work.
_FIRST_STEP = 6
_FIRST_OF_WORK = 60
# A wall is measured when it stands, before boards are adhered to it; a mockup may stand apart.
_WORKS = {"substrate": "boards"}


def find_next_package(context: DocumentContext) -> tuple[int, str]:
    """What is submitted next: the submittal in hand; behind a design draft, which submits nothing, the mockup."""
    if context.project.value(("package", "purpose")) != "design_draft":
        return SUBMITTAL
    return tell_step(list_titles(context), "mockup")


def find_last(context: DocumentContext, stage: str) -> int:
    """The order of the last work that a stage is asked for before: `verdict`, `mockup`, `work`, or `closeout`."""
    if stage == "mockup":
        return tell_step(list_titles(context), "mockup")[0]
    return {"verdict": DECISION[0], "work": CLOSEOUT[0] - 1, "closeout": CLOSEOUT[0]}[stage]


def list_titles(context: DocumentContext) -> dict[str, str]:
    """The title of each step, in the order of the work."""
    return {name: step.title for name, step in context.standards.steps.items()}


def tell_step(titles: dict[str, str], step: str) -> tuple[int, str]:
    """A step by its place in the order of the work and its title within a sentence."""
    work = _WORKS.get(step, step)
    order, title = list(titles), titles[work]
    first = _FIRST_STEP if order.index(work) <= order.index("mockup") else _FIRST_OF_WORK
    return first + order.index(work), title[:1].lower() + title[1:]
