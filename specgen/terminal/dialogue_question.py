"""One question of the dialogue as lines, and what a typed line answers."""

import re
import textwrap
from collections.abc import Iterator

from specgen.model.field import Field
from specgen.model.value_text import words
from specgen.reading.draft import Told
from specgen.terminal.field_lines import ask_plainly, example_text

NONE = "none"
_SHORT = {"y": "yes", "n": "no"}
_YES_NO = ("yes", "no")
_MOST_IN_LINE = 6  # letters of choices that share lines: types, groups, editions


def format_question(field: Field, number: int, units: str, width: int) -> list[str]:
    """The question with its number, why it is asked and of whom, and the choices or an example."""
    lines = wrap(ask_plainly(field, units), width, f"{number}. ")
    lines += wrap(f"Why: {field.why} ({words(field.owed_by)})", width, "   ")
    return lines + [*_list_choices(field, width)] + wrap(_tell_form(field, units), width, "   ")


def wrap(text: str, width: int, sign: str = "", below: str | None = None) -> list[str]:
    """A text in lines of a width, the first behind a sign, the others behind `below`, or else under the first."""
    inner = " " * len(sign) if below is None else below
    return textwrap.wrap(text, width, initial_indent=sign, subsequent_indent=inner, break_on_hyphens=False)


def _list_choices(field: Field, width: int) -> Iterator[str]:
    """A choice a line with its number; short ones share lines."""
    choices = choices_of(field)
    numbered = [f"{number:>2} {words(choice)}" for number, choice in enumerate(choices, 1)]
    if field.kind == "list" and may_be_empty(field):
        numbered.insert(0, f" 0 {NONE}")
    if len(choices) > 2 and max(map(len, choices)) <= _MOST_IN_LINE:
        cell = max(map(len, numbered)) + 2
        in_line = max(1, (width - 3) // cell)
        rows = (numbered[at : at + in_line] for at in range(0, len(numbered), in_line))
        numbered = ["".join(f"{text:<{cell}}" for text in row).rstrip() for row in rows]
    yield from (line for text in numbered for line in wrap(text, width, "   "))


def choices_of(field: Field) -> tuple[str, ...]:
    """The choices of a field in the order of their numbers; empty where it has none."""
    return _YES_NO if field.kind == "yes_no" else field.values


def may_be_empty(field: Field) -> bool:
    """Whether a list may say that there is none."""
    return field.example == "[]" and NONE not in field.values


def _tell_form(field: Field, units: str) -> str:
    """How to answer, in a few words."""
    if not choices_of(field):
        return f"Such as {example_text(field, units)}"
    return "Several with commas between them" if field.kind == "list" else ""


def read_line(field: Field, line: str) -> Told:
    """What a typed line tells of a field: numbers of choices in words, a list in its entries, other text as it is."""
    if field.kind != "list":
        return _read_entry(field, line)
    inner = line.removeprefix("[").removesuffix("]").strip()
    if not inner or (may_be_empty(field) and inner.lower() in (NONE, "0")):
        return ()
    return tuple(_read_entry(field, entry.strip()) for entry in re.split("[,;]", inner) if entry.strip())


def _read_entry(field: Field, text: str) -> str:
    choices = choices_of(field)
    if choices == _YES_NO:
        text = _SHORT.get(text.lower(), text)
    if text in choices:
        return text
    by_sign = {str(number): choice for number, choice in enumerate(choices, 1)}
    by_sign |= {words(choice).lower(): choice for choice in choices}
    return by_sign.get(text.lower(), text)
