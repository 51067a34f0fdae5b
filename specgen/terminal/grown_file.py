"""What `grow` prints: what was added to a project file, by section."""

import textwrap
from collections import Counter
from collections.abc import Iterator, Mapping

from specgen.editing.edit import Added, Edit

WIDTH = 100


def format_grown(edit: Edit, purposes: tuple[str, str], elsewhere: Mapping[str, int], kept: str) -> str:
    """What was added, what the package was and is for, what belongs in side files, and the name of the copy kept."""
    lines = [*_list_lines(edit, purposes, elsewhere), *([f"kept as it was: {kept}"] if kept else [])]
    return "".join(f"{textwrap.fill(line, WIDTH, subsequent_indent='  ', break_long_words=False)}\n" for line in lines)


def _list_lines(edit: Edit, purposes: tuple[str, str], elsewhere: Mapping[str, int]) -> Iterator[str]:
    keys = [one for one in edit.added if one.line and not one.text]
    noted = [one for one in edit.added if not one.line]
    old, new = purposes
    if keys:
        yield f"added {_count(len(keys))}: {_by_section(keys)}"
    if noted:
        are = "is" if len(noted) == 1 else "are"
        yield f"{_count(len(noted))} of sections in braces {are} told in comments below them: {_by_section(noted)}"
    if not keys and not noted:
        yield "nothing to add"
    yield f"package.purpose: {old}" + (", as it was" if new == old else f" becomes {new}")
    for name, count in elsewhere.items():
        yield f"not added: {_count(count)} of {name}, which grow leaves as it is"


def _by_section(added: list[Added]) -> str:
    counts = Counter(one.path[0] for one in added)
    return ", ".join(f"{section} {count}" for section, count in counts.items())


def _count(number: int) -> str:
    return f"{number} field{'' if number == 1 else 's'}"
