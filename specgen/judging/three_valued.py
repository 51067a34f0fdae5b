"""Questions asked by several rules, left open only if a missing value could change the answer."""

from collections.abc import Callable, Iterable
from functools import partial
from typing import TypeVar

from specgen.judging.applies import applicable
from specgen.judging.papers import Paper
from specgen.model.absence import Absent, all_known, any_of, if_given
from specgen.model.field import Path
from specgen.model.project import asked_once
from specgen.model.typed_views import Attachment, Description, MeansOfAccess, Person, Shading

Member = TypeVar("Member")


def members_where(members: Iterable[Member], test: Callable[[Member], bool]) -> tuple[Member, ...]:
    """The members a test holds for. Raises Absent if none is known and a missing value leaves one open."""
    held: list[Member] = []
    missing: list[Path] = []
    for member in members:
        try:
            if test(member):
                held.append(member)
        except Absent as absent:
            missing += absent.paths
    if missing and not held:
        raise Absent(*dict.fromkeys(missing))
    return tuple(held)


def attachments(project: Description) -> tuple[Attachment, ...]:
    """The attachments; empty if the project gives none, as a document that is not listed does not exist."""
    return tuple(project.attachments) if project.attachments.is_given() else ()


def is_documented(project: Description, paper: Paper, among: Iterable[Attachment] | None = None) -> bool:
    """Whether one attachment is such a paper; raises Absent if only a value that it owes could settle it.

    `among` are the ones that can be it, where those are known.
    """
    return any_of(attachments(project) if among is None else among, partial(_meets, paper))


def list_documents(project: Description, paper: Paper) -> list[Attachment]:
    """The attachments that are known to be such a paper."""
    return [document for document in attachments(project) if if_given(partial(_meets, paper, document))]


def _meets(paper: Paper, document: Attachment) -> bool:
    """Whether an attachment has all traits; a value that is neither given nor owed fails its test."""
    try:
        return all_known(*(partial(trait.holds, document) for trait in paper))
    except Absent as absent:
        if applicable(document.project, absent.path):
            raise
        return False


@asked_once
def is_held(project: Description, role: str) -> bool:
    """Whether a person is named for a role."""
    return any_of(project.people, partial(_has_role, role))


def _has_role(role: str, person: Person) -> bool:
    return person.role == role


def is_shaded(access: MeansOfAccess, project: Description, kinds: tuple[str, ...]) -> bool:
    """Whether the elevation of a means of access has shading of one of these kinds."""
    return any_of(shades_at(access, project), partial(_shades, access, kinds))


def shades_at(access: MeansOfAccess, project: Description) -> Iterable[Shading]:
    """The shading that can be at the elevation of a means of access: all of it while that is not known."""
    face = if_given(lambda: access.elevation)
    return project.shade if face is None else project.shade.find_referring("elevation", face.mark)


def _shades(access: MeansOfAccess, kinds: tuple[str, ...], shade: Shading) -> bool:
    return all_known(lambda: shade.kind in kinds, lambda: shade.elevation == access.elevation)
