"""What a starter says over its sections, and at its head."""

# A section of plain fields, in a few words; a collection says what it holds by its own label.
ABOUT = {
    "package": "The set that is sent, and what it is for",
    "project": "The job",
    "parties": "Who takes part, as the contract names them",
    "contract": "The contract: how submittals are reviewed, and what it asks for",
    "code": "The code that applies at the site",
    "site": "The site: wind, sun, and surroundings",
    "building": "The building",
    "climate": "Weather to design for",
    "aesthetic_joint": "Grooves cut into the face of the board",
    "panel_limits": "How large a panel may be",
    "finish": "How flat the base coat is, and how the finish is repaired",
    "gloss_target": "The gloss that is wanted",
    "smoothing": "Smoothing coat",
    "primer": "Primer",
    "gloss": "Gloss coat",
    "spray": "How the gun is set",
    "compressor": "Compressor",
    "tank": "Pressure tank",
    "safety": "Safety",
    "weather": "When spraying stops",
    "protection": "What is kept from overspray and wash water",
    "mockup": "The mockup and what it is accepted by",
    "schedule": "Dates and shifts",
}
# What every job has; of any other collection a job may have none.
ALWAYS = ("walls", "elevations", "sealants", "colors", "crews", "people", "guns", "instruments", "attachments")
MAY = "Optional; delete the # before a line to use it:"
_TYPING = (
    "Type each value after its colon, quantities with their unit: 2 in, 5 ft 6 in, 65 F.",
    "Leave empty what is not known yet. A text with a colon or a # in it stands in 'quotes'.",
    "To add another of a kind, copy its lines and give the copy its own mark.",
)
_METRIC = (_TYPING[0].replace("2 in, 5 ft 6 in, 65 F", "50 mm, 1.5 m, 18 C"), *_TYPING[1:])
_STAGES = {
    "verdict": "through the verdict on each wall",
    "mockup": "through the mockup submittal",
    "work": "through the work submittal",
    "closeout": "through closeout",
}
_SIDES = {
    "firm": "Firm file: people, equipment, instruments, and safety programs, kept from job to job.",
    "coating_system": "Coating system file: the finish manufacturer's own figures; they beat common practice.",
}


def project_head(stage: str, units: str) -> tuple[str, ...]:
    """The lines over a project file."""
    return (f"Project file, {_STAGES[stage]}.", *_list_typing(units))


def side_head(home: str, units: str) -> tuple[str, ...]:
    """The lines over a side file."""
    return (_SIDES[home], f"A project file names it by a line of its own: {home}: FILE", *_list_typing(units))


def tell_side_file(home: str, example: str) -> tuple[str, ...]:
    """The lines over the key that names a side file in a project file."""
    return (_SIDES[home], f"such as {example}, started by: specgen new {example} --file {home}")


def _list_typing(units: str) -> tuple[str, ...]:
    return _METRIC if units == "si" else _TYPING
