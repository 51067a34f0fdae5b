"""The edition of the building code that a project goes by, and where it has what is cited."""

from specgen.documents.context import DocumentContext

# Weather protection and water-resistive barrier, before the chapter was numbered anew and since.
WIND = "ASCE 7"
_PROPAGATION = ("1403.5", "1402.5")  # of the wall with a combustible barrier
_WEATHER, _RENUMBERED = ("1403.2, 1404.2", "1402.2, 1403.2"), "2018"


def assumes_edition(context: DocumentContext) -> bool:
    """Whether the edition of the code is not given, and no authority is named whose adoption tells it."""
    project = context.project
    known = ("code", "edition") in project.values or project.get(("code", "edition")) is None
    return not known and project.get(("code", "jurisdiction")) is None


def name_weather_sections(context: DocumentContext) -> str:
    """`1402.2, 1403.2`: the sections on weather protection and the water-resistive barrier in the project's edition."""
    return _WEATHER[_is_renumbered(context)]


def name_propagation_section(context: DocumentContext) -> str:
    """`1402.5`: the section on walls with a combustible water-resistive barrier in the project's edition."""
    return _PROPAGATION[_is_renumbered(context)]


def _is_renumbered(context: DocumentContext) -> bool:
    return str(context.project.get(("code", "edition"))) >= _RENUMBERED


def name_wind_standard(context: DocumentContext) -> str:
    """`ASCE 7-16`: the standard that the project's code takes its wind from; without an edition where none is known."""
    return context.name_text(f"{WIND},").removesuffix(",")


def tell_code_data(context: DocumentContext) -> str:
    """`edition 2021, construction type IIB, occupancy B`: what the applicator gives of the code; empty for nothing."""
    project = context.project
    groups = ", ".join(map(str, project.get(("code", "occupancy_groups")) or ()))
    edition, kind = (project.get(("code", name)) for name in ("edition", "construction_type"))
    told = {"edition": edition, "construction type": kind, "occupancy": groups}
    return ", ".join(f"{name} {given}" for name, given in told.items() if given)
