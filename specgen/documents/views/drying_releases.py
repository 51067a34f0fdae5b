"""The release of each step that dries on an area: the least hours in force beside the blanks."""

from collections.abc import Iterator
from typing import Any, Literal

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import take_stricter
from specgen.documents.drying import tell_least_hours
from specgen.documents.marks import list_marks
from specgen.documents.standing_walls import list_standing
from specgen.documents.steps import StepPage, steps
from specgen.documents.views._record_blanks import WHERE_USED, bracket, make_blank
from specgen.model.block import CheckBox
from specgen.model.evaluation import evaluate

_FORM = "D12d"
# The steps whose releases ask for a dry wall of even look.
_LOOKED_AT = ("smoothing_2", "primer")
_LEVELING = "second_pass"
_OF_STANDING = ("kind", "coating_removed", "condition")
_METERED = ("substrate", "primer")
_SEALANT, _NOTHING = "sealant", "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A line for each step of the work that dries before the next."""
    pages = steps(context, composer)
    holds = {page.name: page.hold for page in pages if page.release_form == _FORM}
    # The release of the primer is a step of its own, and is told at the primer.
    of_others = {page.name: context.standards.steps[page.name].releases for page in pages}
    holds |= {released: holds[name] for name, released in of_others.items() if released and name in holds}
    taken = [page for page in pages if _dries(context, page)]
    lines = tuple(_line(context, page, holds.get(page.name, 0)) for page in taken)
    if any(page.name == _SEALANT for page in pages):
        lines += (_line_of_sealant(context),)
    header = (
        "Step",
        "Minimum",
        "Finished on, at",
        "Hours",
        "Meter",
        "Wall dry",
        "Even look",
        "Faults",
        "Date",
        "Time",
        "By",
    )
    return TableView(header, lines, (23, 16, 9, 6, 6, 6, 6, 7, 7, 5, 9))


def _dries(context: DocumentContext, page: StepPage) -> bool:
    """Whether a step is released here; of the substrate a wall that stands already."""
    if page.name == "substrate":
        return bool(list_standing(context))
    return _FORM in page.forms and not context.standards.steps[page.name].releases


def _line(context: DocumentContext, page: StepPage, hold: int) -> tuple[Any, ...]:
    if page.name == "substrate":
        title = f"Existing wall: {'; '.join(_list_prepared(context))}"
        least: list[Any] = ["released by the EIFS manufacturer"]
    else:
        title, least = page.title, tell_least_hours(context, page.name)
        if page.name == _LEVELING and evaluate("walls.*.base_coat.passes is not given", context.project):
            title = f"{title}, {WHERE_USED}"
    moisture = context.display(("primer", "release_moisture"))
    if page.name == "primer":
        least = [*least, "; meter maximum ", bracket(moisture, "moisture reading")]
    recoat = context.display(("primer", "most_recoat_hours"))
    if page.name == "primer" and not recoat.open:
        least = [*least, "; gloss within ", recoat]
    return (f"{title} (Hold Point {hold})" if hold else title, least, *_blanks(page))


def _line_of_sealant(context: DocumentContext) -> tuple[Any, ...]:
    """The cure of the beads before they are pulled by hand, which releases nothing by itself."""
    cures = [context.display(("sealants", mark, "pull_cure_days")) for mark in list_marks(context, "sealants")]
    given = [cure for cure in cures if not cure.open]
    least = take_stricter(True, *given) if given else context.limit("sealant.pull_cure")
    title = "Sealant, before its hand pull"

    def blank(label: str, field: str, kind: Literal["text", "date"] = "text") -> Any:
        return make_blank(f"{label}, {title}", f"form.{field}", f"d-{_SEALANT}", kind=kind)

    when = (blank("Date", "cured_on", "date"), blank("Time", "cured_at"), blank("By", "cured_by"))
    return (
        title,
        [least],
        blank("Finished at", "finished_at"),
        blank("Cured for", "hours_cured"),
        *(_NOTHING,) * 4,
        *when,
    )


def _list_prepared(context: DocumentContext) -> Iterator[str]:
    """What is done to the walls that stand already before they are released: `W1: joints repointed, mortar cured`."""
    done: dict[str, list[str]] = {}
    for mark in list_standing(context):
        facts = {name: context.project.get(("walls", mark, "substrate", name)) for name in _OF_STANDING}
        if facts["kind"] == "existing_coated":
            told = "coating removed, bare wall dry" if facts["coating_removed"] else "coating washed, dry"
        else:
            told = "joints repointed, mortar cured" if "open_joints" in (facts["condition"] or ()) else "cleaned, dry"
        done.setdefault(told, []).append(mark)
    yield from (f"{', '.join(marks)} {told}" for told, marks in done.items())


def _blanks(page: StepPage) -> Iterator[Any]:
    row = f"d-{page.name}"
    looked_at = page.name in _LOOKED_AT

    def blank(label: str, field: str) -> Any:
        return make_blank(f"{label}, {page.work}", field, row)

    yield blank("Finished at", "form.finished_at")
    yield blank("Hours dried", "release.hours_dry")
    yield blank("Moisture reading", "release.moisture_reading") if page.name in _METERED else "–"
    yield [CheckBox("yes", f"release.wall_dry.{row}", "yes")] if looked_at else "–"
    yield [CheckBox("yes", f"release.even_look.{row}", "yes")] if looked_at else "–"
    yield blank("Faults", "release.defects")
    yield make_blank(f"Date, {page.work}", "release.date", row, kind="date")
    yield blank("Time", "release.time")
    yield blank("Released by", "release.by")
