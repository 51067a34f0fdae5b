"""What is told of answers that were taken: each value with who gave it, and conflicts side by side."""

from collections.abc import Iterator

from specgen.asking.offers import Conflict, Offer
from specgen.asking.taking import Taken, list_members
from specgen.model.field import dotted_path
from specgen.model.value_text import count

_MOST_TOLD = 120  # characters of a value


def format_taken(taken: Taken) -> str:
    """The answers that were taken by workbook, or the members by table; then what was not."""
    blocks = list(_list_tables(taken) if taken.tables else _list_sheets(taken))
    blocks += [list(_list_notes(taken)), list(_list_conflicts(taken.conflicts)), [_tell_rest(taken)]]
    return "\n\n".join("\n".join(block) for block in blocks if any(block))


def _list_sheets(taken: Taken) -> Iterator[list[str]]:
    for number, (signer, name) in enumerate(taken.signers):
        offers = [offer for offer in taken.placed.taken if offer.sheet == number]
        if offers and signer is not None:
            yield [f"{name}: {count(len(offers), 'answer')} of {signer.name}", *map(_tell_offer, offers)]


def _tell_offer(offer: Offer) -> str:
    remark = f"  # {offer.remark}" if offer.remark else ""
    return f"  {dotted_path(offer.path)}: {_shorten(offer.text)}{remark}"


def _shorten(text: str) -> str:
    """A value as one line of an answer; what is longer stands in the file."""
    line = " ".join(text.split())
    return line if len(line) <= _MOST_TOLD else f"{line[: _MOST_TOLD - 3]}..."


def _list_tables(taken: Taken) -> Iterator[list[str]]:
    """The members of each table; its name stands above where there are several, or somebody signed it."""
    for number, (table, (signer, name)) in enumerate(zip(taken.tables, taken.signers, strict=True)):
        offers = [offer for offer in taken.placed.taken if offer.sheet == number]
        members = list_members(offers, len(table.collection))
        if members:
            head = f"{name}, {table.name}: " if len(taken.tables) > 1 or signer else ""
            by = f" of {signer.name}" if signer else ""
            told = [f"  {dotted_path(path)}: {', '.join(names)}" for path, names in members]
            yield [f"{head}{count(len(members), 'member')}, {count(len(offers), 'value')}{by}", *told]


def _list_notes(taken: Taken) -> Iterator[str]:
    """How values were taken that were not written as a project has them, and what else was remarked."""
    told = [f"{offer.place}: {'; '.join(offer.notes)}" for offer in taken.placed.taken if offer.notes]
    if told or taken.notes:
        yield "Notes"
    yield from (f"  {note}" for note in (*told, *taken.notes))


def _list_conflicts(conflicts: tuple[Conflict, ...]) -> Iterator[str]:
    """Each field with both values side by side, and who gave them; the project is left as it is there."""
    if conflicts:
        yield f"{count(len(conflicts), 'conflict')}, not taken; decide, and write the value in the file"
    for conflict in conflicts:
        own = [(conflict.place, _shorten(conflict.given), conflict.who)] if conflict.place else []
        rows = own + [(offer.place, _shorten(offer.text), offer.who) for offer in conflict.offers]
        wide = max(len(place) for place, *_ in rows)
        high = max((len(text) for _, text, who in rows if who), default=0)
        yield f"  {dotted_path(conflict.path)}"
        yield from (f"    {place:{wide}}  {text:{high}}  {who}".rstrip() for place, text, who in rows)


def _tell_rest(taken: Taken) -> str:
    """How much the project has already, and whether anything was added."""
    same = f"{count(len(taken.same), 'value')} in the project already" if taken.same else ""
    if taken.placed.taken:
        return same
    return f"Nothing was added; {same}." if same else "Nothing was added."
