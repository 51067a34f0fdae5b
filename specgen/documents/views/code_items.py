"""Code requirements for the walls: section of the adopted edition, whether due, why, and how each is met."""

from collections.abc import Iterator
from typing import Any, cast

from specgen.computing.code.special_inspection_due import COATING, list_exempt
from specgen.computing.substrates import MASONRY
from specgen.documents.code_edition import assumes_edition, name_weather_sections
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.contract_first import name_settler
from specgen.documents.deciding import is_undecided
from specgen.documents.drainage_asked import OF_EACH, tell_who_asks
from specgen.documents.fire_reports import SYSTEM
from specgen.documents.members import span_marks
from specgen.documents.standing_walls import (
    list_bare,
    list_barriers,
    list_covered,
    list_solid,
    list_standing,
    list_undrained,
)
from specgen.documents.views import _combustible_barrier as combustible_barrier
from specgen.documents.views import _energy as energy
from specgen.documents.views import _fire_tests as fire_tests
from specgen.documents.views import _foam_plastic as foam_plastic
from specgen.documents.views import _wind_row as wind_row
from specgen.documents.views._cells import cite_section, join_cells
from specgen.documents.views._inspection import find_section
from specgen.documents.views.reports import find_reports
from specgen.model.absence import Absent
from specgen.model.field import Path
from specgen.model.working import Lookup
from specgen.resolving.answer_sources import answer_source
from specgen.standards import find_source

CODES = {"ibc": "International Building Code", "irc": "International Residential Code"}
_IF_DUE = "; if required, {walls} not suitable as designed"
_UNNAMED = "authority to name"
_ASKED = "letter of the authority pending, see D19"
_EXEMPT = "exempt: "
_DRAINED: Path = ("drainage", "kind")
_FASTENERS: Path = ("code", "local_fasteners_required")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """EIFS section, drainage of each wall, foam plastic, fire tests, inspection, insulation, local fasteners."""
    model = context.project.get(("code", "model"))
    edition = read_edition(context) if model == "ibc" else {}
    lines: list[tuple[Any, ...]]
    if model == "other":
        lines = [(subject, _UNNAMED, "pending", why) for subject, why in _list_local(context)]
    else:
        walls = context.project.members[("walls",)]
        drained = [("Drained wall", mark, _tell_drainage(context, edition, mark)) for mark in walls]
        lines = [*_tell_system(context, edition, walls), *_tell_barrier(context), *fire_tests.join_walls(drained)]
        lines += [*foam_plastic.rows(context), *fire_tests.rows(context)]
        lines += [*combustible_barrier.rows(context), *wind_row.rows(context)] if model == "ibc" else []
        lines += _tell_inspections(context, edition)
        lines += _tell_existing(context, model)
    lines += [*_tell_lot_line(context), *energy.rows(context)]
    lines.append(("Fasteners, local code", *_tell_fasteners(context)))
    return TableView(("Subject", "Section", "Required", "Reason, and how met"), tuple(lines), (21, 11, 9, 59))


def _list_local(context: DocumentContext) -> Iterator[tuple[str, str]]:
    """What a code that is not read here may require, each with what is known of it."""
    undrained = span_marks(list_undrained(context))
    refused = f"{_ASKED}; {undrained} without drainage, not suitable if a drained wall is required"
    yield "Drained wall", refused if undrained else "no wall without drainage"
    yield "Fire class and tests of the walls", _ASKED
    yield "Special inspection", _ASKED


def code_name(context: DocumentContext) -> Any:
    """The adopted code in words, or an open value if the project does not name it."""
    model = str(context.project.get(("code", "model")))
    return CODES.get(model) or context.display(("code", "name" if model == "other" else "model"))


def tell_who_adopts(context: DocumentContext) -> str:
    """On whose word a code stands whose authority is not named; empty while its edition is open."""
    if assumes_edition(context):
        return "assumed"
    return "according to the applicator" if context.project.is_given(("code", "edition")) else ""


def read_edition(context: DocumentContext) -> dict[str, Any]:
    """The sections of the adopted edition of the building code; none if it is not given."""
    return context.standards.editions.get(str(context.project.get(("code", "edition"))), {})


def _tell_system(context: DocumentContext, edition: dict[str, Any], walls: tuple[str, ...]) -> list[tuple[Any, ...]]:
    """What the section on EIFS requires; no row where the edition has none."""
    if "eifs_section" not in edition:
        return []
    section = cite_section(edition["eifs_section"], edition["eifs_source"], "EIFS")
    reports = find_reports(context, SYSTEM)
    tested = _tell_tested(context, reports, walls)
    report = f"report {', '.join(reports)}{tested}" if reports else "report required from the EIFS manufacturer"
    met = f"system to {SYSTEM}, {report}; installed per the manufacturer's written instructions"
    return [("EIFS", section, "yes", f"EIFS on {span_marks(walls)}: {met}")]


def _tell_tested(context: DocumentContext, reports: tuple[str, ...], walls: tuple[str, ...]) -> str:
    """`, tested on W1; W2 has the same board, base coat, and mesh`: why a report serves the walls it does not name."""
    assemblies = (context.project.get(("attachments", mark, "assembly")) for mark in reports)
    tested = {wall.mark for wall in assemblies if wall is not None}
    same = {_read_system(context, mark) for mark in tested}
    others = [mark for mark in walls if mark not in tested]
    if not tested or not others or any(_read_system(context, mark) not in same for mark in others):
        return ""
    have = "has" if len(others) == 1 else "have"
    return f", tested on {span_marks(tested)}; {span_marks(others)} {have} the same board, base coat, and mesh"


def _read_system(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    """The products of board, base coat, and mesh of a wall."""
    layers = ("walls", mark, "mesh", "layers")
    paths: list[Path] = [("walls", mark, part, "product") for part in ("insulation", "base_coat")]
    paths += [(*layers, layer, "product") for layer in context.project.members.get(layers, ())]
    return tuple(context.project.get(path) for path in paths)


def _tell_drainage(context: DocumentContext, edition: dict[str, Any], mark: str) -> tuple[Any, ...]:
    """Section, answer, and reason for a wall, and how it is drained all the same."""
    section = f"{edition['eifs_section']}.4.1" if "eifs_section" in edition else "1403.2" if edition else ""
    try:
        found: Lookup = context.resolve(("walls", mark), "drainage-due")
    except Absent as absent:
        return section or "pending", *fire_tests.answer_open(context, absent)
    number = section or ("R703.9" if context.project.get(("code", "model")) == "irc" else "1407.4.1")
    why: list[Any] = [found.why]
    kind = context.project.get(("walls", mark, *_DRAINED))
    if kind not in (None, "none"):
        how = "provided by " if found.result else f"drained {tell_who_asks(context, mark)}: "
        why += ["; ", how, *_tell_ribbons(context, mark), context.display(("walls", mark, *_DRAINED))]
        why += [", drainage efficiency minimum ", context.limit("drainage.efficiency")]
        why += [] if found.result else [f", as {OF_EACH}"]
    elif mark in context.remember(list_barriers):
        why += ["; barrier wall, which does not drain water behind it: architect to accept in writing"]
    return cite_section(number, found.source[0], "drainage"), "yes" if found.result else "no", why


def _tell_ribbons(context: DocumentContext, mark: str) -> list[Any]:
    """`vertical ` of a wall that drains between its ribbons of adhesive: others hold the water."""
    way = ("walls", mark, "attachment", "ribbon_direction")
    ribbons = context.project.get(("walls", mark, *_DRAINED)) == "adhesive_ribbons"
    return [context.display(way), " "] if ribbons and context.project.is_given(way) else []


def _tell_inspections(context: DocumentContext, edition: dict[str, Any]) -> list[tuple[Any, ...]]:
    """One row; while the answer waits for some walls, another for those that are exempt whatever the others are."""
    cells = _tell_inspection(context, edition)
    exempt = list_exempt(cast(Any, context.project.root())) if cells[1] == "pending" else []
    if not exempt:
        return [("Special inspection", *cells)]
    others = [mark for mark in context.project.members[("walls",)] if mark not in exempt]
    solid = [mark for mark in exempt if mark in context.remember(list_solid)]
    sure = [mark for mark in exempt if mark not in solid]
    told = [(sure, "no", "")] if sure else []
    told += [(solid, "pending", "; architect to confirm")] if solid else []
    no = [
        (f"Special inspection, {span_marks(marks)}", cells[0], due, _tell_exemption(context, marks) + open_still)
        for marks, due, open_still in told
    ]
    return [*no, *([(f"Special inspection, {span_marks(others)}", *cells)] if others else [])]


def _tell_exemption(context: DocumentContext, walls: list[str]) -> str:
    """Why none of these walls is inspected: what lies behind their boards, or the drainage over their barrier."""
    kinds = {context.project.get(("walls", mark, "substrate", "kind")) for mark in walls}
    solid = {kind in MASONRY or kind == "existing_coated" for kind in kinds}
    if solid == {True}:
        return f"{_EXEMPT}installed over concrete or masonry"
    return f"{_EXEMPT}{'' if solid == {False} else 'over concrete or masonry, or '}drained over a WRB"


def _tell_barrier(context: DocumentContext) -> list[tuple[Any, ...]]:
    """Rows for the walls that are told to get no water-resistive barrier, and for those whose barrier is open."""
    bare, solid = list_bare(context), list_solid(context)
    section = cite_section(name_weather_sections(context), find_source("ibc_weather_memory"), "weather protection")
    lines = []
    for mark in bare:
        kind, base = (context.project.get(("walls", mark, "substrate", name)) for name in ("kind", "base"))
        cells: tuple[Any, ...] = ("yes", "no WRB: required unless the wall is tested to ASTM E331")
        if mark in solid:
            cells = (
                "pending",
                f"exempt over concrete or masonry designed to the code; {name_settler(context)} to confirm the wall",
            )
        elif kind == "existing_coated" and base is None:
            cells = fire_tests.answer_open(context, Absent(("walls", mark, "substrate", "base")))
        lines.append(("Water-resistive barrier", mark, (section, *cells)))
    for mark in list_covered(context):
        lines.append(("Water-resistive barrier", mark, (section, "yes", _name_barrier(context, mark))))
    return fire_tests.join_walls(lines)


def _name_barrier(context: DocumentContext, mark: str) -> list[Any]:
    """`fluid-applied: Barrier 12, ASTM E2570`; what is not given is asked for."""
    kind, product, standard = (
        context.display(("walls", mark, "wrb", name)) for name in ("kind", "product", "standard")
    )
    return [kind, ": ", product, ", ", standard]


def _tell_existing(context: DocumentContext, model: Any) -> list[tuple[Any, ...]]:
    """A row where a wall of the building stands already."""
    standing = list_standing(context) if model == "ibc" else []
    why = "International Existing Building Code: not known whether it is adopted and governs; architect to confirm"
    subject = f"Existing building, {span_marks(standing)}"
    return [(subject, "IEBC", "pending", why)] if standing else []


def _tell_lot_line(context: DocumentContext) -> list[tuple[Any, ...]]:
    """A row while a wall that stands is decided on: board on its face may reach past the lot line."""
    standing = list_standing(context) if is_undecided(context) else []
    boards = [[f"{mark} ", context.display(("walls", mark, "insulation", "thickness"))] for mark in standing]
    section = "Chapter 32, local code" if context.project.get(("code", "model")) == "ibc" else "local code"
    asked = "distance from the wall, and permission where the EIFS reaches past the line: owner to state; board alone, "
    why = [f"{asked}to which adhesive and coats are added: ", *join_cells(boards)]
    return [(f"Lot line, {span_marks(standing)}", section, "pending", why)] if standing else []


def _tell_inspection(context: DocumentContext, edition: dict[str, Any]) -> tuple[Any, ...]:
    """Section, answer, and reason, and who inspects how often where it is due."""
    number, level = edition.get("inspection_section", ""), ("contract", "inspection_level")
    cell: Any = cite_section(number, edition["inspection_source"], "special inspection") if number else ""
    try:
        found: Lookup = context.resolve((), "special-inspection-due")
    except Absent as absent:
        return cell, *fire_tests.answer_open(context, absent)
    why = found.why
    if found.source == (COATING,) and number:
        cell = cite_section(*find_section(context, edition, found), "special inspection")
        why += _tell_without_coating(context, number) if str(cell) != number else ""
    if not found.result:
        return cell, "no", why
    agency = context.project.get(("parties", "inspector", "name"))
    by = [" by ", context.display(("parties", "inspector", "name"))] if agency else []
    engaged = ("contract", "inspector_engaged_by")
    by += [", engaged by the ", context.display(engaged)] if context.project.is_given(engaged) else []
    return cell, "yes", [why, "; ", context.display(level), *by]


def _tell_without_coating(context: DocumentContext, number: str) -> str:
    """Why the section itself asks for no inspection, where the paragraph on barrier coatings does."""
    walls = list(context.project.members[("walls",)])
    kinds = {mark: context.project.get(("walls", mark, *_DRAINED)) for mark in walls}
    coated = [mark for mark in walls if context.project.get(("walls", mark, "wrb", "kind")) == "fluid_applied"]
    if any(kinds[mark] in (None, "none") for mark in coated):
        return ""
    told: dict[str, list[str]] = {}
    for mark in walls:
        told.setdefault(_tell_exemption(context, [mark]).removeprefix(_EXEMPT), []).append(mark)
    named = [f"{span_marks(marks)} {why}" for why, marks in told.items()] if len(told) > 1 else told
    return f"; {number} itself not due: {', '.join(named)}"


def _tell_fasteners(context: DocumentContext) -> tuple[Any, ...]:
    """Whether local code wants fasteners and above which height, who says so, and the answers for single elevations.

    An answer of an authority that nobody has named is none.
    """
    project, above = context.project, ("code", "local_fasteners_above")
    authority, basis = ("code", "jurisdiction"), ("code", "local_fasteners_basis")
    if project.get(authority) is None:
        return "local code", "pending", [*_tell_unlettered(context, "not named"), _tell_if_due(context)]
    named = context.display(authority)
    due: list[Any] = [context.display(_FASTENERS)]
    if project.get(above) is not None and project.get(_FASTENERS) is not False:
        due += [", above ", context.display(above)]
    settled = project.get(basis) or project.get(_FASTENERS)
    lettered = [named, ": ", context.display(basis)] if project.get(basis) else []
    said = [*(lettered or _tell_unlettered(context, named)), "" if settled else _tell_if_due(context)]
    if not settled:
        due = ["pending"]
    paths = [("elevations", mark, "local_fasteners_required") for mark in project.members.get(("elevations",), ())]
    given = [[f"{path[1]}: ", context.display(path)] for path in paths if project.get(path) is not None]
    return "local code", due, join_cells([said, *given])


def _tell_if_due(context: DocumentContext) -> str:
    """`; if required, W1 is not suitable as designed`."""
    walls = context.project.members[("walls",)]
    return _IF_DUE.format(walls=f"{span_marks(walls)} {'is' if len(walls) == 1 else 'are'}")


def _tell_unlettered(context: DocumentContext, authority: Any) -> list[Any]:
    """`not required, according to the applicator; letter of the authority, City of Ambry, pending`: no letter yet."""
    required = context.project.get(_FASTENERS)
    answered = answer_source(context.project, _FASTENERS)
    by = answered.reference if answered else "the applicator"
    said = "not confirmed" if required is None else f"{'' if required else 'not '}required, according to {by}"
    return [f"{said}; letter of the authority, ", authority, ", pending"]
