"""What each value that is not given holds up: the rules that wait for it, else the sums and documents that lack it."""

from collections import defaultdict
from collections.abc import Iterator

from specgen.documents.calculations import gather_calculations
from specgen.documents.code_edition import name_weather_sections
from specgen.documents.context import DocumentContext
from specgen.documents.deciding import bears_on_wall, is_undecided
from specgen.documents.required_documents import list_pending
from specgen.documents.standing_walls import BARRIER, list_unconfirmed
from specgen.documents.views._energy import asks_requirement
from specgen.documents.views._fields import OF_ASCE_7, ask_by_code
from specgen.judging.verdict import list_pending as list_pending_clauses
from specgen.model.field import Path, dotted_path
from specgen.model.finding import NotJudged

# Where the calculations are printed.
_SUMS = "D06"
# These name whoever owes something.
_TELL_WHO = ("D00", "D19")
# What a set that is issued may not lack.
_COMPLETE = "SUB-09"
# A rule that goes on to read a list once it has what it waits for.
_READS_NEXT = {"AIR-06": "instruments"}
_WIND_SPEED = "site.wind_speed"
_JURISDICTION, _CODE = ("code", "jurisdiction"), "COD"
# What bears on the decision on a wall without a rule that reads it, and what it bears on: the reports on bond and fire
# name the materials, the coats of the finish too; the fasteners of the sheathing are scheduled for the sheathing; a
# color is measured on the coats that it is made of; the letter on fasteners and the adoption of the code are the
# authority's.
_FIRE = "COD-03"
_REPORTED = ("ATT-07", _FIRE)
_MEASURED = ("HEA-01",)
_BEARS: dict[Path, tuple[str, ...]] = {
    ("parties", "wrb_source", "name"): _REPORTED,
    ("walls", "*", "wrb", "product"): _REPORTED,
    ("walls", "*", "wrb", "standard"): _REPORTED,
    ("walls", "*", "attachment", "adhesive_kind"): _REPORTED,
    ("walls", "*", "attachment", "product"): _REPORTED,
    ("walls", "*", "insulation", "product"): (_FIRE,),
    ("walls", "*", "base_coat", "kind"): (_FIRE,),
    ("walls", "*", "base_coat", "product"): (_FIRE,),
    ("walls", "*", "base_coat", "class"): (_FIRE,),
    ("walls", "*", "substrate", "standard"): ("ATT-09", _FIRE),
    ("walls", "*", "substrate", "thickness"): ("ATT-09", _FIRE),
    ("smoothing", "product"): (_FIRE,),
    ("primer", "product"): (_FIRE,),
    ("gloss", "product"): (_FIRE,),
    ("primer", "dry_film"): _MEASURED,
    ("gloss", "dry_film"): _MEASURED,
    ("colors", "*", "number"): _MEASURED,
    ("colors", "*", "kind"): _MEASURED,
    ("schedule", "color_sample_order_on"): _MEASURED,
    _JURISDICTION: ("ATT-03",),
    ("code", "name"): ("COD-02", _FIRE),
    ("code", "edition"): ("COD-02", _FIRE),
}
# Where what the reports name is given.
_OF_REPORTS = ("walls", "colors", "primer", "gloss", "smoothing")
# What a wall without drainage is accepted on.
_FLASHED = (("elevations", "*", "grade_clearance"), ("elevations", "*", "openings"), ("details",))
# Whether vapor condenses in a wall is known before it is decided on.
_VAPOR = "INS-05"
# Held against what the energy code requires, which is asked for with it.
_BOARD_R = ("walls", "*", "insulation", "r_value")
# What a joint serves: the opening that it goes around, or a place that moves.
_SERVES, _AROUND, _PLACES = ("joints", "*", "serves"), "opening_perimeter", ("floor_lines", "joint_needs")
# So many signs of a clause are the code of its rule.
_RULE = len("ATT-07")


def find_held(context: DocumentContext) -> dict[str, set[str]]:
    """The codes of the rules that wait for a value, by its dotted path."""
    return context.remember(_find_held)


def find_lacking(context: DocumentContext) -> dict[Path, set[str]]:
    """The ids of the documents that lack a value, by the path of its field: D06 for what a sum waits for."""
    return context.remember(_find_lacking)


def tell_rules(context: DocumentContext, dotted: str) -> set[str]:
    """The rules that a value holds up: those that wait for it, else those that it bears on."""
    pattern, held = find_pattern(context, dotted), find_held(context)
    if dotted_path(pattern) in OF_ASCE_7 and dotted not in held:
        dotted = _WIND_SPEED
    bears = set(_BEARS.get(pattern, ())) & context.remember(_list_waiting)
    if pattern == _JURISDICTION:
        bears.add(_CODE)
    if pattern == _BOARD_R and asks_requirement(context):
        bears.add(_VAPOR)
    return held.get(dotted) or bears


def tell_held(context: DocumentContext, dotted: str) -> set[str]:
    """What a value holds up: rules, else sums and documents, else the set that is to lack none; empty for nothing."""
    rules = tell_rules(context, dotted)
    return (
        rules
        or find_lacking(context).get(find_pattern(context, dotted))
        or context.remember(_find_owed).get(dotted, set())
    )


def is_needed(context: DocumentContext, dotted: str) -> bool:
    """Whether a rule, a sum or a document waits for a value, of this member or of another like it.

    What a joint serves that stands at its own place is asked once there is a place that it could serve.
    """
    if find_pattern(context, dotted) == _SERVES and _stands_by_itself(context, tuple(dotted.split("."))[:2]):
        return dotted in context.remember(_find_owed)
    return bool(tell_held(context, dotted)) or find_pattern(context, dotted) in context.remember(_find_patterns)


def _stands_by_itself(context: DocumentContext, joint: Path) -> bool:
    """Whether a joint goes around no opening, and no place that moves is named on its elevation."""
    project = context.project
    on = project.get((*joint, "elevation"))
    marks = project.members.get(("elevations",), ()) if on is None else (str(on),)
    named = any(project.members.get(("elevations", mark, places)) for mark in marks for places in _PLACES)
    return project.get((*joint, "kind")) not in (None, _AROUND) and not named


def bears_on_decision(context: DocumentContext, dotted: str) -> bool:
    """Whether a value bears on a question that can rule a wall out."""
    deciding, pattern = context.remember(_find_deciding), find_pattern(context, dotted)
    if dotted in deciding:
        return True
    if not is_undecided(context):
        return False
    if pattern in _FLASHED and any(entry.name == BARRIER for entry in list_pending(context)):
        return True
    if _VAPOR in find_held(context).get(dotted, ()) or (pattern == _BOARD_R and asks_requirement(context)):
        return True
    if dotted_path(pattern) in OF_ASCE_7:
        return not deciding.isdisjoint(OF_ASCE_7)
    return not context.remember(_list_waiting).isdisjoint(_BEARS.get(pattern, ()))


def list_reported(context: DocumentContext) -> Iterator[Path]:
    """The fields of what the reports name that walls wait for; each document asks for them alike.

    No rule reads them, so that a document that is composed before the others would not know them to be lacking.
    """
    waiting = context.remember(_list_waiting) if is_undecided(context) else set()
    for pattern, bears in _BEARS.items():
        if pattern[0] in _OF_REPORTS and not waiting.isdisjoint(bears):
            marks = context.project.members.get(pattern[:1], ()) if "*" in pattern else ("",)
            yield from (tuple(mark if part == "*" else part for part in pattern) for mark in marks)
    if asks_requirement(context):
        yield from (tuple(mark if part == "*" else part for part in _BOARD_R) for mark in context.judgment.walls)


def find_pattern(context: DocumentContext, dotted: str) -> Path:
    """The path of the field or collection that a value is of, with stars for marks."""
    path = tuple(dotted.split("."))
    try:
        return context.project.schema.node(path).path
    except KeyError:
        return path


def _list_bearing(context: DocumentContext) -> Iterator[NotJudged]:
    """The clauses not judged that can rule a wall out, or are settled with the decision on it."""
    for mark in context.judgment.walls:
        for clause in list_pending_clauses(context.judgment, mark):
            if bears_on_wall(clause.rule, clause.code):
                yield clause


def _find_deciding(context: DocumentContext) -> frozenset[str]:
    needs = [need for one in _list_bearing(context) for need in one.needs]
    return frozenset(ask_by_code(context, [*needs, *_list_bases(context)]))


def _list_bases(context: DocumentContext) -> Iterator[str]:
    """What lies behind the old coating of each wall without a barrier: the code asks for one unless it is masonry."""
    yield from (f"walls.{mark}.substrate.base" for mark in list_unconfirmed(context))


def _list_waiting(context: DocumentContext) -> set[str]:
    """The rules that can rule a wall out and wait for a value or a document."""
    waiting = {clause.rule for clause in _list_bearing(context)}
    return waiting | {entry.code[:_RULE] for entry in list_pending(context)}


def _find_held(context: DocumentContext) -> dict[str, set[str]]:
    held: dict[str, set[str]] = defaultdict(set)
    for clause in context.judgment.not_judged:
        for need in clause.needs:
            held[need].add(clause.rule)
    for item in context.judgment.open_items:
        held[item.path].update(code[:_RULE] for code in item.holds_up)
    waiting = {clause.rule for clause in context.judgment.not_judged}
    for rule, collection in _READS_NEXT.items():
        if rule in waiting and (collection,) not in context.project.members:
            held[collection].add(rule)
    for base in _list_bases(context):
        held[base].add(f"{_CODE} {name_weather_sections(context)}")
    return {path: rules for path, rules in held.items() if rules}


def _find_owed(context: DocumentContext) -> dict[str, set[str]]:
    """The values owed for this submittal, which may be open in none that is issued; a design draft owes none."""
    drafted = context.project.value(("package", "purpose")) == "design_draft"
    return {} if drafted else {item.path: {_COMPLETE} for item in context.judgment.open_items}


def _find_patterns(context: DocumentContext) -> set[Path]:
    """The fields of which a rule waits for any."""
    return {find_pattern(context, dotted) for dotted in find_held(context)}


def _find_lacking(context: DocumentContext) -> dict[Path, set[str]]:
    lacking: dict[Path, set[str]] = defaultdict(set)
    for dotted, document in context.rest.asked:
        if document not in _TELL_WHO:
            lacking[find_pattern(context, dotted)].add(document)
    for calculation in gather_calculations(context):
        for waiting in calculation.waiting:
            for path in waiting.paths:
                lacking[find_pattern(context, dotted_path(path))].add(_SUMS)
    return lacking
