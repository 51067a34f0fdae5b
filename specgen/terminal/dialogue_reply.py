"""What is said to a typed answer: what a word was read as, and what is wrong, in the words of the question."""

from typing import Any

from specgen.model.field import Field
from specgen.model.problem import Problem
from specgen.model.value_text import words
from specgen.terminal.dialogue_question import choices_of, may_be_empty, read_line


def tell_reading(field: Field, text: str, value: Any) -> str:
    """`Read as concrete masonry.` for a word that is no choice of the question itself; else empty."""
    if not field.values:
        return ""
    entries = read_line(field, text)
    known = all(entry in field.values for entry in (entries if isinstance(entries, tuple) else (entries,)))
    read = ", ".join(words(str(one)) for one in (value if isinstance(value, tuple) else (value,)))
    return "" if known else f"Read as {read}."


def tell_fault(field: Field, text: str, problem: Problem) -> str:
    """What is wrong with an answer and what to type, without the place in a file that it does not have."""
    choices = choices_of(field)
    if not choices:
        return f"{problem.message} ({problem.hint})" if problem.hint else problem.message
    first = 0 if field.kind == "list" and may_be_empty(field) else 1
    several = ", several with commas between them" if field.kind == "list" else ""
    message = words(problem.message) if _MAY_BE in problem.message else f"{text!r} is not one of the choices"
    return f"{message}; type a number {first} to {len(choices)} or a word of the list{several}"


_MAY_BE = " may be "
