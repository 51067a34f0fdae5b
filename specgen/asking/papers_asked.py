"""The documents that each party sends, one by one: what tells each as an attachment, and the field that names it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from typing import NamedTuple

import yaml

from specgen.asking.owed import GIVES_MARKS, Owed
from specgen.asking.question_words import tell_member
from specgen.documents.context import DocumentContext
from specgen.documents.parties import name_role
from specgen.judging.owners import find_owners, name_maker
from specgen.model.finding import Finding
from specgen.model.value_text import words
from specgen.reading.list_text import split_list
from specgen.reading.side_files import ATTACHMENTS

_NEW, _SIGNED = f"{ATTACHMENTS}.X", "signed"
# The kind of the document that a field names, by the end of its name.
_KINDS = {"instructions": "instructions", "report": "test_report", "schedule": "drawing", "letter": "letter"}
# What an attachment is for stands behind its kind in these fields, in this order.
_ABOUT = ("standard", "covers", "assembly", "colors", "parties")
_OF = {"assembly": "wall ", "colors": "color "}


class PaperAsked(NamedTuple):
    """A document that a party is to send: its name, the mark that it gets, and what its attachment has by itself."""

    mark: str
    name: str
    typed: tuple[tuple[str, str], ...]  # fields of the attachment, as they are typed
    field: str = ""  # the dotted path of the field that names it


def list_papers(context: DocumentContext, owed: Owed) -> dict[str, tuple[PaperAsked, ...]]:
    """The documents of each party by its role, what clauses look for before what fields name.

    The applicator, who gives the marks, lists his own in the table of attachments.
    """
    asked: dict[str, list[PaperAsked]] = defaultdict(list)
    for party, typed in dict.fromkeys(_list_wanted(context, owed)):
        # Whether it is signed is asked of who sends it.
        typed = tuple(pair for pair in typed if pair[0] != _SIGNED)
        asked[party].append(PaperAsked("", _name_paper(typed), typed))
    for path, party in _list_named(context, owed):
        asked[party].append(_name_by_field(context, path))
    asked.pop(GIVES_MARKS, None)
    return {party: tuple(_mark(context, party, papers)) for party, papers in asked.items()}


def _list_named(context: DocumentContext, owed: Owed) -> Iterator[tuple[str, str]]:
    """The dotted paths of the fields that name a document to be sent, each with the party that sends it."""
    named = {value.path: value.party for value in owed.named}
    for finding in context.judgment.findings:
        for one in finding.to_add:
            field = context.project.schema.field_at(tuple(one.path.split(".")))
            party = _find_owner(context, finding)
            if field is not None and field.to == ATTACHMENTS and _is_asked_now(owed, finding, party):
                named.setdefault(one.path, party)
    yield from named.items()


def _find_owner(context: DocumentContext, finding: Finding) -> str:
    return find_owners(context.project, finding)[0]


def _is_asked_now(owed: Owed, finding: Finding, party: str) -> bool:
    """Whether a document that a finding looks for is among those that its party is asked for at this stage."""
    return any(document.party == party and finding.rule in document.rules for document in owed.documents)


def _list_wanted(context: DocumentContext, owed: Owed) -> Iterator[tuple[str, tuple[tuple[str, str], ...]]]:
    """What clauses look for among the attachments and is asked for now, with the party that sends it."""
    for finding in context.judgment.findings:
        for one in finding.to_add:
            typed = read_typed(one.value) if one.path == _NEW else ()
            party = _find_sender(typed) or _find_owner(context, finding)
            if typed and _is_asked_now(owed, finding, party):
                yield party, typed


def _find_sender(typed: Iterable[tuple[str, str]]) -> str:
    """The manufacturer of the material that a document covers; empty where it covers none."""
    covers = dict(typed).get("covers", "")
    return name_maker(covers.strip("[]").split(",")[0].strip()) if covers else ""


def read_typed(text: str) -> tuple[tuple[str, str], ...]:
    """The fields of a flow mapping as they are typed: `{kind: letter, parties: [a, b]}`; none where it is no such."""
    try:
        data = yaml.load(text, yaml.BaseLoader)
    except yaml.YAMLError:
        return ()
    if not isinstance(data, dict):
        return ()
    return tuple((str(key), _write(value)) for key, value in data.items())


def _write(value: object) -> str:
    return f"[{', '.join(map(str, value))}]" if isinstance(value, list) else str(value)


def _name_by_field(context: DocumentContext, named: str) -> PaperAsked:
    path = tuple(named.split("."))
    field = context.project.schema.field_at(path)
    assert field is not None
    member = tell_member(context, field, path)
    kind = _KINDS.get(path[-1].rpartition("_")[2], "")
    typed = (("kind", kind),) if kind else ()
    return PaperAsked("", f"{member}: {field.label}" if member else field.label, typed, named)


def _name_paper(typed: tuple[tuple[str, str], ...]) -> str:
    """`Data sheet: adhesive`; `Test report: NFPA 285, wall W1`."""
    told = dict(typed)
    kind = words(told.get("kind", "document"))
    about = [f"{_OF.get(name, '')}{_tell(name, told[name])}" for name in _ABOUT if name in told]
    head = "Safety data sheet" if kind == "sds" else kind[:1].upper() + kind[1:]
    return f"{head}: {', '.join(about)}" if about else head


def _tell(name: str, text: str) -> str:
    entries = split_list(text)
    if name == "parties":
        first, *others = map(name_role, entries)
        return " and ".join((first, *(one if one[1:2].isupper() else one[:1].lower() + one[1:] for one in others)))
    return ", ".join(words(entry) if name == "covers" else entry for entry in entries)


def _mark(context: DocumentContext, party: str, papers: list[PaperAsked]) -> Iterator[PaperAsked]:
    """The documents with marks of their party that no other has: `EM1`, `EM2` of the EIFS manufacturer."""
    said = name_role(party).split()
    head = "".join(word[0] for word in said).upper() if len(said) > 1 else said[0][:2].upper()
    taken = {mark.casefold() for mark in context.project.members.get((ATTACHMENTS,), ())}
    number = 0
    for paper in papers:
        number = next(n for n in range(number + 1, number + len(taken) + 2) if f"{head}{n}".casefold() not in taken)
        yield paper._replace(mark=f"{head}{number}")


def write_entry(paper: PaperAsked) -> str:
    """What a sheet says of a document for the way back: `EM1 {kind: letter}`, `EM2 {} walls.W1.wrb.bond_report`."""
    typed = ", ".join(f"{name}: {text}" for name, text in paper.typed)
    return f"{paper.mark} {{{typed}}} {paper.field}".rstrip()
