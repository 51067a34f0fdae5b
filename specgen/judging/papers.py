"""The papers that clauses look for: what tells one among the attachments is what is typed to list it."""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from specgen.judging.choice_groups import SIGNED_DOCUMENTS
from specgen.judging.fire_tests import names_standard
from specgen.model.absence import if_given
from specgen.model.finding import ToAdd
from specgen.model.typed_views import Attachment, Color, Wall


class Trait(NamedTuple):
    """A property of a paper: how it is found at an attachment, and the fields that give it, as they are typed."""

    holds: Callable[[Attachment], bool]
    typed: tuple[tuple[str, str], ...]


Paper = tuple[Trait, ...]


def of_kind(kind: str) -> Trait:
    """A paper of a kind."""
    return Trait(lambda paper: paper.kind == kind, (("kind", kind),))


def by_standard(*designations: str) -> Trait:
    """A test report that names one of these standards."""
    typed = (("kind", "test_report"), ("standard", designations[0]))
    return Trait(lambda paper: any(names_standard(paper.standard, one) for one in designations), typed)


def of_wall(wall: Wall) -> Trait:
    """A report of this very wall."""
    return Trait(lambda paper: paper.assembly == wall, (("assembly", wall.mark),))


def of_color(color: Color) -> Trait:
    """A paper that speaks for a color."""
    return Trait(lambda paper: color in paper.colors, (("colors", f"[{color.mark}]"),))


def covering(material: str) -> Trait:
    """A paper that speaks for a material."""
    return Trait(lambda paper: material in paper.covers, (("covers", f"[{material}]"),))


def naming(*parties: str) -> Trait:
    """A letter that names all of these manufacturers."""
    return Trait(lambda paper: set(parties) <= set(paper.parties), (("parties", f"[{', '.join(parties)}]"),))


def is_signed(paper: Attachment) -> bool:
    """Whether an attachment counts as signed: it says so; a kind that takes no signature never does."""
    given = if_given(lambda: paper.signed)
    if given is not None:
        return given
    return paper.kind in SIGNED_DOCUMENTS and paper.signed


SIGNED = Trait(is_signed, (("signed", "yes"),))


def to_list(paper: Paper) -> ToAdd:
    """The attachment that answers for a paper: `attachments.X: {kind: test_report, standard: NFPA 285}`."""
    return to_enter("attachments", (pair for trait in paper for pair in trait.typed))


def to_enter(collection: str, typed: Iterable[tuple[str, str]]) -> ToAdd:
    """A new member of a collection with these fields."""
    values = ", ".join(f"{name}: {value}" for name, value in dict(typed).items())
    return ToAdd(f"{collection}.X", f"{{{values}}}")
