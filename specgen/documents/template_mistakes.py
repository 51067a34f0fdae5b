"""A mistake in a template, in the words of the documents it writes."""

import re

from jinja2 import TemplateError, TemplateSyntaxError

from specgen.model.suggest import suggest

MEND = "mend this line of it"
_TAGS = ("for", "if", "elif", "else", "set", "macro", "call", "filter", "with", "raw")
_ENDS = ("endfor", "endif", "endset", "endmacro", "endcall", "endfilter", "endwith", "endraw")
# What each kind of sign that does not fit is called; the first group of the pattern is the sign itself.
_SIGNS = (
    re.compile(r"got '(.+)'", re.S),
    re.compile(r"unexpected char '(.+)' at", re.S),
    re.compile(r"unexpected '(.+?)'", re.S),
)
_PLACES = {
    "end of print statement": "the end of {{ }}",
    "end of statement block": "the end of {% %}",
    "begin of print statement": "{{",
    "begin of statement block": "{%",
    "end of template": "the end of the template",
}


class Mistake(TemplateError):
    """What is wrong in a template, and what would be right; `line` counts from its first line, 0 where not yet known.

    `word` is a name that is not known, for a suggestion from the names that are.
    """

    def __init__(self, message: str, hint: str = MEND, line: int = 0, word: str = "") -> None:
        super().__init__(message)
        self.hint, self.line, self.word = hint, line, word


def explain_syntax(error: TemplateSyntaxError) -> Mistake:
    """The mistake behind a text that is no template."""
    told = error.message or ""
    if tag := re.search(r"unknown tag '(\w+)'", told):
        return _explain_tag(tag[1], error.lineno)
    if end := re.search(r"needs to be closed is '(\w+)'", told):
        return Mistake(f"{{% {end[1]} %}} is not closed", f"write {{% end{end[1]} %}} after it", error.lineno)
    if told.startswith("unexpected end of template"):
        return Mistake("a bracket or tag is not closed before the template ends", "close it", error.lineno)
    if "comment" in told:
        return Mistake("{# is not closed", "write #} after the remark", error.lineno)
    for pattern in _SIGNS:
        if sign := pattern.search(told):
            place = _PLACES.get(sign[1])
            what = f"{place} comes too early" if place else f"{sign[1]!r} does not fit here"
            return Mistake(what, "check the brackets, quotes and words before it", error.lineno)
    return Mistake("this line cannot be read", "check its brackets, quotes and tags", error.lineno)


def _explain_tag(tag: str, line: int) -> Mistake:
    if tag in (*_TAGS, *_ENDS):
        return Mistake(f"{{% {tag} %}} belongs to nothing that is open here", "check what is opened above it", line)
    return Mistake(f"there is no tag {tag!r}", suggest(tag, _TAGS), line)
