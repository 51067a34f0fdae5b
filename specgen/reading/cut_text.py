"""The lines of a file on which a `#` may have cut a text: `Job #2731` is `Job` to YAML, and the rest a comment."""

import re

# A comment on purpose has a blank behind its sign; the number of a job or a suite has none.
_CUT = re.compile(r"^(.*?\S)[ \t]+(#\w.*)", re.MULTILINE)
_LINE_END = re.compile("\r\n|[\r\n\x85\u2028\u2029]")


def split_lines(source: str) -> list[str]:
    """The lines of a text, as the parser counts them."""
    return _LINE_END.split(source)


def find_cut(source: str) -> dict[int, tuple[str, str]]:
    """By their numbers the lines with a comment joined to its sign: what stands before it, and the comment."""
    if not _CUT.search(source):
        return {}
    found = ((number, _CUT.match(line)) for number, line in enumerate(split_lines(source), 1))
    return {number: (cut[1], cut[2].strip()) for number, cut in found if cut is not None}
