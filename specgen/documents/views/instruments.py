"""The test instruments of the job by what they measure, with their numbers and calibration dates."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_member
from specgen.model.value_text import value_text, words

CUPS = ("zahn_4_cup", "iso_cup", "other_cup")
# What a cup is read with: ASTM D4212, ASTM D1200, ISO 2431.
WITH_CUP = ("material_thermometer", "stopwatch")
_GROUPS = {
    "Plane and profile": ("long_straightedge", "short_straightedge", "feeler_gauge", "profile_gauge", "raking_lamp"),
    "Weather and surface": ("air_thermometer", "surface_thermometer", "hygrometer", "wind_meter"),
    "Mixing and pressure": (*CUPS, *WITH_CUP, "measuring_jug", "pressure_gauge", "ph_strips"),
    "Film and moisture": ("moisture_meter", "wet_film_comb", "film_gauge", "step_gauge", "micrometer"),
    "Gloss and color": ("gloss_meter", "color_meter"),
    "Adhesion": ("pull_tester",),
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each group that the firm has instruments of."""
    groups: dict[str, list[str]] = {name: [] for name in (*_GROUPS, "Other")}
    for mark in list_marks(context, "instruments"):
        kind = context.project.get(("instruments", mark, "kind"))
        groups[next((name for name, kinds in _GROUPS.items() if kind in kinds), "Other")].append(mark)
    lines = tuple(
        (name, "; ".join((*_name(context, marks), *_list_unnumbered(context, marks))), _calibration(context, marks))
        for name, marks in groups.items()
        if marks
    )
    return TableView(("Test equipment", "Number and instrument", "Calibrated through"), lines, (20, 56, 24))


def _name(context: DocumentContext, marks: list[str]) -> list[str]:
    return [name_member(context, "instruments", mark) for mark in marks]


def _list_unnumbered(context: DocumentContext, marks: list[str]) -> list[str]:
    """What the listed cups are read with and is not on the list itself."""
    kinds = {context.project.get(("instruments", mark, "kind")) for mark in marks}
    missing = [words(kind) for kind in WITH_CUP if kind not in kinds] if kinds & set(CUPS) else []
    return [f"{' and '.join(missing)}, numbered and in calibration before the first reading"] if missing else []


def _calibration(context: DocumentContext, marks: list[str]) -> Any:
    """The last day on which the calibration holds, by itself where it is that of all; open where one is required."""
    dates: dict[str, list[str]] = {}
    for mark in marks:
        path = ("instruments", mark, "calibrated_to")
        if not context.project.applies(path):
            continue
        date = context.project.get(path)
        if date is None:
            return context.display(path)
        dates.setdefault(value_text(date), []).append(mark)
    if not dates:
        return "not required"
    if dates.get(alone := next(iter(dates))) == marks:
        return alone
    return "; ".join(f"{date} ({', '.join(of)})" for date, of in dates.items())
