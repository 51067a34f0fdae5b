"""Exclusion, masking, and set-up before each sprayed coat, to be ticked in the order of the procedure."""

from collections.abc import Iterator
from itertools import chain

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.penetration_joints import list_bonded_to_primer
from specgen.model.block import CheckBox
from specgen.model.evaluation import evaluate

_ABREAST = 3
_FLAKE = "colors.*.metallic is not given or colors.*.metallic = yes"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Three checks in a line, read from left to right."""
    boxes = [
        (str(number), CheckBox(label, f"{field}.a", "yes")) for number, (field, label) in enumerate(_list(context), 1)
    ]
    abreast = [boxes[place : place + _ABREAST] for place in range(0, len(boxes), _ABREAST)]
    lines = tuple(tuple(chain(*some)) + ("", "") * (_ABREAST - len(some)) for some in abreast)
    return TableView(("No.", "Check") * _ABREAST, lines, (4, 28, 4, 30, 4, 30))


def _list(context: DocumentContext) -> Iterator[tuple[str, str]]:
    """The field and the words of each check, as the steps before spraying have them."""
    away = context.display(("protection", "exclusion"))
    distance = "out of reach" if away.open else f"minimum {away} away"
    yield "form.area_closed", f"People and vehicles {distance}, entries closed"
    yield "form.wind_watched", "One person watches the wind; permits on site, notices given"
    yield "form.masked", "Edges masked, films within the time of their tape"
    mesh = context.display(("spray", "strainer_mesh"))
    regulators = "Both regulators" if context.limit("tank.regulators").raw == 2 else "Regulators"
    yield "log.tank_clean", "Tank clean, dry, and free of rust"
    yield "log.tank_lined", "Tank lined with a fresh liner"
    yield "log.stirred", "Material stirred"
    yield "form.cup_read", "Cup and water on Form D12b"
    yield "log.strained", f"Material strained{'' if mesh.open else f', {mesh} mesh'}"
    yield "log.lid_tight", "Lid tight"
    yield "log.regulators_at_zero", f"{regulators} at zero"
    yield "form.compressor_on", "Compressor started, flow on its plate per Document D11"
    if evaluate(_FLAKE, context.project):
        stirred = "Agitator running slowly" if _has_agitator(context) else "Agitator slow, or tank swirled"
        yield "form.agitated", f"{stirred} (gloss)"
    yield "form.stream_straight", "Atomizing air off, fluid to straight stream"
    yield "form.air_restored", "Atomizing air on, both pressures recorded"
    yield "form.pattern_proven", "Pattern even over a pail, no spatter"
    if bonded := list_bonded_to_primer(context):
        yield "form.bond_faces_masked", f"Joint bond faces masked before gloss ({span_marks(bonded)})"


def _has_agitator(context: DocumentContext) -> bool:
    return bool(context.project.get(("tank", "agitation")) == "agitator")
