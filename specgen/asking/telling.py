"""What is told of answers that were taken: each value with who gave it, and conflicts side by side."""

from collections.abc import Iterator

from specgen.asking.offers import Conflict, Offer
from specgen.asking.taking import Taken, list_members
from specgen.model.field import dotted_path
from specgen.model.value_text import count


def format_taken(taken: Taken, depth: int = 0) -> str:
    """The answers that were taken by workbook, or the members of a table at this depth; then what was not."""
    blocks = [_list_table(taken, depth)] if depth else list(_list_sheets(taken))
    blocks += [_list_notes(taken), _list_conflicts(taken.conflicts)]
    if taken.same:
        blocks.append([f"{count(len(taken.same), 'value')} in the project already"])
    if not taken.placed.taken:
        blocks.append(["Nothing was added."])
    return "\n\n".join("\n".join(block) for block in blocks if block)


def _list_sheets(taken: Taken) -> Iterator[list[str]]:
    for number, (signer, name) in enumerate(taken.signers):
        offers = [offer for offer in taken.placed.taken if offer.sheet == number]
        if offers:
            yield [f"{name}: {count(len(offers), 'answer')} of {signer.name}", *map(_tell_offer, offers)]


def _tell_offer(offer: Offer) -> str:
    remark = f"  # {offer.remark}" if offer.remark else ""
    return f"  {dotted_path(offer.path)}: {offer.text}{remark}"


def _list_table(taken: Taken, depth: int) -> list[str]:
    members = list_members(taken.placed.taken, depth)
    head = f"{count(len(members), 'member')}, {count(len(taken.placed.taken), 'value')}"
    return [head, *(f"  {dotted_path(path)}: {', '.join(names)}" for path, names in members)] if members else []


def _list_notes(taken: Taken) -> list[str]:
    return ["Notes", *(f"  {note}" for note in taken.notes)] if taken.notes else []


def _list_conflicts(conflicts: tuple[Conflict, ...]) -> list[str]:
    """Each field with both values side by side, and who gave them; the project is left as it is there."""
    lines = []
    for conflict in conflicts:
        own = [(conflict.place, conflict.given, conflict.who)] if conflict.place else []
        rows = own + [(offer.place, offer.text, offer.who) for offer in conflict.offers]
        wide, high = (max(len(row[column]) for row in rows) for column in (0, 1))
        lines.append(f"  {dotted_path(conflict.path)}")
        lines += [f"    {place:{wide}}  {text:{high}}  {who}".rstrip() for place, text, who in rows]
    return (
        [f"{count(len(conflicts), 'conflict')}, not taken; decide, and write the value in the file", *lines]
        if lines
        else []
    )
