"""The title of a column: its words, however they are written, and the unit that it tells."""

import re

_WITH_UNIT = re.compile(r"(.+?)\s*(?:\(([^()]+)\)|\[([^\[\]]+)\]|, ([^,]+))")


def fold_title(title: str) -> str:
    """A title in small letters, with single blanks for underscores, by which it is known again."""
    return " ".join(title.casefold().replace("_", " ").split()).rstrip(".")


def split_unit(title: str) -> tuple[str, str]:
    """A title and the unit behind it: `Width (ft)`, `Width, ft`; no unit where there is none."""
    found = _WITH_UNIT.fullmatch(title)
    return (found[1], next(filter(None, found.groups()[1:]))) if found else (title, "")
