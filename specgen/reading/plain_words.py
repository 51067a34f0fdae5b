"""Words that say there is none, or that something is not known yet, as people write them in place of a value."""

_NONE = {
    "none",
    "no",
    "ok",
    "okay",
    "nothing",
    "nil",
    "clean",
    "sound",
    "good",
    "fine",
    "none known",
    "not any",
    "0",
    "-",
}
_NOT_KNOWN = {
    "n/a",
    "na",
    "n.a.",
    "?",
    "??",
    "???",
    "unknown",
    "not known",
    "t.b.d.",
    "tba",
    "t.b.a.",
    "-",
    "--",
    "---",
}
_NOT_KNOWN |= {
    "pending",
    "later",
    "open",
    "to be determined",
    "to be decided",
    "to be confirmed",
    "tbc",
    "tbd.",
    "not yet",
}
NOT_KNOWN_YET = "write tbd where it is not known yet, or leave the line out"


def says_none(text: str) -> bool:
    """Whether a text says that there is none of something."""
    return text.strip().lower() in _NONE


def says_not_known(text: str) -> bool:
    """Whether a text says that something is not known, or does not apply."""
    return text.strip().lower() in _NOT_KNOWN
