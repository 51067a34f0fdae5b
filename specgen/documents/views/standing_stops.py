"""The stops that stand against the package, by the party that takes the measure."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.measures import list_measures, name_rules
from specgen.documents.members import marks
from specgen.documents.parties import name_party, name_role
from specgen.judging.owners import looks_for_document
from specgen.model.finding import Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party and work: `ATT-01a, ATT-02a (W1); AIR-01b`; missing documents are open items."""
    found = (f for f in context.judgment.of(Severity.STOP) if not looks_for_document(f))
    by_party: dict[str, dict[str, dict[tuple[str, ...], list[str]]]] = {}
    for one in list_measures(context.project, found):
        by_place = by_party.setdefault(one.by, {}).setdefault(one.before, {})
        by_place.setdefault(one.subjects, []).append(name_rules(one.codes))
    lines = [
        (name_role(party) if number else name_party(context, party), _tell(by_place), before)
        for party, by_work in by_party.items()
        for number, (before, by_place) in enumerate(by_work.items())
    ]
    return TableView(("By", "Stop", "Resolve before"), tuple(lines), (28, 50, 22))


def _tell(by_place: dict[tuple[str, ...], list[str]]) -> str:
    """The stops of each place, those of the whole project without one."""
    return "; ".join(
        ", ".join(codes) + ("" if place == ("project",) else f" ({marks(list(place))})")
        for place, codes in by_place.items()
    )
