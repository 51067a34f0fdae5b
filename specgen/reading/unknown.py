"""Values that are written but not known: empty, null or `tbd`."""

_NULLS = {"", "~", "null", "Null", "NULL"}


class Missing:
    """Stands for a value that is written but not known."""

    def __repr__(self) -> str:
        return "tbd"


TBD = Missing()


def is_unknown(text: str) -> bool:
    """Whether a value that stands in no quotes says that it is not known."""
    return text in _NULLS or text.lower() == "tbd"
