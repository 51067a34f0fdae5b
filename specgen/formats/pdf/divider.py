"""The page before an attachment that is bound in."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Divider:
    """What the page before an attachment says of it.

    `lines` say what it is, and which register item and paragraph it answers. `pages` is the number of pages that
    follow, 0 where it could not be bound in.
    """

    mark: str
    title: str
    lines: tuple[str, ...] = ()
    pages: int = 0
