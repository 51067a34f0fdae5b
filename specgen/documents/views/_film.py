"""Whether the least dry film of primer and gloss binds the mean of the readings or each of them."""

from specgen.documents.context import DocumentContext
from specgen.recording.acceptance_lines import binds_each, list_lines

_FILMS = ("film_dry", "film_gloss_dry")


def reads_film_each(context: DocumentContext) -> bool:
    """Whether the least film of both coats binds each reading on the mockup, and so on the work."""
    project = context.project
    films = [one for one in list_lines(project, context.standards) if one.criterion in _FILMS]
    return bool(films) and all(
        one.row is not None and any(binds_each(project, one.row, own) for own in one.own) for one in films
    )
