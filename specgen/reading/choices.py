"""A word to the choice it means, and what is told of a word that is no choice.

A choice is known in any case, with blanks or hyphens for underscores or without, with its unit sign, and with a word of
its own field beside it (`type VB`, `HVLP gun`). Words of the trade stand beside the choices in the schema.
"""

import re
from functools import cache

from specgen.model.field import Field, TradeWord
from specgen.model.suggest import find_slip
from specgen.reading.plain_words import NOT_KNOWN_YET, says_none, says_not_known

# A word with its type, grade or class behind it, which is given elsewhere.
_GRADED = re.compile(r"(.+?)[\s,-]+(?:type|grade|class)\b.*", re.IGNORECASE)
_PARTED = str.maketrans("", "", " _-")


def find_choice(field: Field, text: str) -> str:
    """The choice that a text means, as the schema spells it; a text that means none is returned unchanged."""
    if text in field.values:
        return text
    return _spellings(field).get(_fold(text)) or _spellings(field).get(_fold(_bare(field, text)), text)


def list_meant(field: Field, text: str) -> tuple[str, ...]:
    """The choices that a text may mean: one that it is certain to, several to be asked back, or none."""
    choice = find_choice(field, text)
    return (choice,) if choice in field.values else _may_mean(field, text)


def refuse_choice(field: Field, text: str) -> tuple[str, str]:
    """What is told of a text that is not a choice for a field, and all that are."""
    known = f"known: {', '.join(field.values)}"
    if not field.values:
        return f"{text!r} is not a choice for this field", ""
    if field.if_none and says_none(text):
        return f"{text!r} is not an entry of this list", f"write [] where {field.if_none}"
    if says_not_known(text):
        return f"{text!r} is not a choice for this field", f"{NOT_KNOWN_YET}; {known}"
    may_be = _may_mean(field, text)
    if may_be:
        hint = f"write {may_be[0]} if so" if len(may_be) == 1 else "write one of these"
        return f"{text!r} may be {_join(may_be)}", f"{hint}; {known}"
    near = _slip(field, text)
    return f"{text!r} is not a choice for this field", f"did you mean {near}? {known}" if near else known


def _fold(text: str) -> str:
    """A text in lower case, without blanks, hyphens, underscores, and a sign of percent or degrees behind it."""
    return text.lower().translate(_PARTED).rstrip("%°")


@cache
def _spellings(field: Field) -> dict[str, str]:
    certain = {_fold(word.word): word.choices[0] for word in field.means if word.certain}
    return certain | {_fold(choice): choice for choice in field.values}


def _bare(field: Field, text: str) -> str:
    """A text without a word before or behind it that only names the field, such as `type` or `gun`."""
    own = {word.rstrip("s") for name in field.path for word in name.split("_")} - {"*"}
    before = {word.rstrip("s") for word in field.path[-1].split("_")} if field.path else set[str]()
    words = text.lower().replace("_", " ").split()
    while len(words) > 1 and words[0].rstrip("s") in before:
        del words[0]
    while len(words) > 1 and words[-1].rstrip("s") in own:
        del words[-1]
    return " ".join(words)


def _may_mean(field: Field, text: str) -> tuple[str, ...]:
    """The choices a word of the trade may mean, which is asked back."""
    asked = {_fold(text), _fold(_bare(field, text))}
    return next((word.choices for word in field.means if _fold(word.word) in asked), ())


def _slip(field: Field, text: str) -> str:
    """The choices meant but for a slip of the pen, or written with a number behind it; empty where none is."""
    plain = "".join(word for word in text.split() if not word.isdigit())
    if plain != text and _fold(plain) in _spellings(field):
        return _spellings(field)[_fold(plain)]
    words: tuple[TradeWord, ...] = (*field.means, *(TradeWord(name, (name,), True) for name in field.values))
    graded = _GRADED.fullmatch(text)
    if graded is not None and _fold(graded[1]) in _spellings(field):
        return _spellings(field)[_fold(graded[1])]
    near = find_slip(text, [word.word for word in words])
    return next((_join(word.choices) for word in words if word.word == near), "") if near else ""


def _join(choices: tuple[str, ...]) -> str:
    return choices[0] if len(choices) == 1 else f"{', '.join(choices[:-1])} or {choices[-1]}"
