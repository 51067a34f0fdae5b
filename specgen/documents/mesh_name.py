"""How mesh is called wherever it is named: by its kind, that of high impact as the steps of the work call it."""

from specgen.model.value_text import words

_CALLED = {"high_impact": "heavy"}


def name_mesh(kind: str) -> str:
    """`heavy mesh`, `standard mesh`."""
    return f"{_CALLED.get(kind, words(kind))} mesh"
