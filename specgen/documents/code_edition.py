"""The edition of the building code that a project goes by, and where it has what is cited."""

from specgen.documents.context import DocumentContext

# Weather protection and water-resistive barrier, before the chapter was numbered anew and since.
_WEATHER, _RENUMBERED = ("1403.2, 1404.2", "1402.2, 1403.2"), "2018"


def assumes_edition(context: DocumentContext) -> bool:
    """Whether the edition of the code is not given, and no authority is named whose adoption tells it."""
    project = context.project
    known = ("code", "edition") in project.values or project.get(("code", "edition")) is None
    return not known and project.get(("code", "jurisdiction")) is None


def name_weather_sections(context: DocumentContext) -> str:
    """`1402.2, 1403.2`: the sections on weather protection and the water-resistive barrier in the project's edition."""
    return _WEATHER[str(context.project.get(("code", "edition"))) >= _RENUMBERED]
