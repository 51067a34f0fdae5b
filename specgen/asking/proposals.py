"""The figure that is proposed in a question, and how the answer that confirms it finds it there."""

import re

from specgen.model.field import Field
from specgen.reading.conversion import InvalidValue
from specgen.reading.rules import convert_checked

_PROPOSED, _CONFIRM = "Proposed: ", "; write it to confirm, or correct it."
_SAID = re.compile(rf"{re.escape(_PROPOSED)}(.+?){re.escape(_CONFIRM[:21])}")
_OTHER_UNITS = re.compile(r" \([^()]*\)$")


def tell_proposal(field: Field, proposed: str) -> str:
    """`Proposed: 1/8 in; write it to confirm, or correct it.`; of more than one figure it is asked which is used."""
    if field.kind == "list" or _find_value(field, proposed):
        return f"{_PROPOSED}{proposed}{_CONFIRM}"
    return f"Usual: {proposed}; write the one figure used."


def find_proposal(field: Field, question: str) -> str:
    """The value that the words of a question propose, as a file has it; empty where they propose none."""
    said = _SAID.search(question)
    return _find_value(field, said[1]) if said else ""


def _find_value(field: Field, proposed: str) -> str:
    """A proposed figure as a file has it, without the same in other units behind it; empty where it is not one."""
    for text in (proposed, _OTHER_UNITS.sub("", proposed)):
        try:
            convert_checked(field, text)
        except InvalidValue:
            continue
        return text
    return ""
