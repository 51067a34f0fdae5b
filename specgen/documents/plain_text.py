"""The words of inline content, as they are read without their looks."""

from collections.abc import Iterable

from specgen.model.block import Emphasis, Inline, Letters, Strong


def plain_text(content: Iterable[Inline]) -> str:
    """The words of inline content, without the letters of sources."""
    return "".join(map(_plain, content))


def _plain(part: Inline) -> str:
    if isinstance(part, (Strong, Emphasis)):
        return plain_text(part.children)
    return "" if isinstance(part, Letters) else getattr(part, "text", "")
