"""The cases of `cases/<group>/<rule>.yaml`: what the trade wants of each rule and clause, and projects that show it.

The line of a rule holds its remedy, its steps and its documents. `tells` of a clause holds its severity, what lifts
a stop, what it makes of a wall (`refused`, `waits` for a document, or goes with `measures`), the step that prints it if
not the first of the rule, its own remedy, and where it comes from: `basis` of its finding, `page` of its line in the
manual if that names other sources. A firing case may have a remedy or basis of its own, and a `message`.
A fragment of a text is written as the reader sees it; ` ... ` in it leaves words out.
"""

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

import pytest
import yaml

FILES = {
    file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.CSafeLoader)
    for file in sorted((Path(__file__).parent / "cases").rglob("*.yaml"))
}
STATED = {code: stated for entries in FILES.values() for code, stated in entries.items()}
RULES = {code: stated for code, stated in STATED.items() if code[-1].isdigit()}
CLAUSES = {code: stated for code, stated in STATED.items() if code not in RULES}
# Those of the open items are no members of a project that could be judged.
JUDGED = {code: stated for code, stated in CLAUSES.items() if "fires" in stated}

# The marks of a figure that no published text has, as the reader sees them.
_MARKS = {"practice": "common practice, no source", "memory": "from memory", "computed": "computed"}


class Told(NamedTuple):
    """What a clause is to tell: whole words, and fragments of texts."""

    severity: str
    lift: str
    wall: str
    remedy: str
    steps: tuple[str, ...]
    step: str
    documents: tuple[str, ...]
    basis: tuple[str, ...]
    page: tuple[str, ...]


def told_in(code: str, case: dict[str, Any] | None = None) -> Told:
    """What the files state of a clause, with what one firing case has of its own."""
    stated = {"lift": "none", "wall": ""} | RULES[code[:-1]] | CLAUSES[code]["tells"] | (case or {})
    steps = tuple(stated["steps"].split())
    basis = _listed(stated["basis"])
    return Told(
        severity=stated["severity"],
        lift=stated["lift"],
        wall=stated["wall"],
        remedy=stated["remedy"],
        steps=steps,
        step=stated.get("step", steps[0]),
        documents=tuple(stated["documents"].split()),
        basis=basis,
        page=_listed(stated["page"]) if "page" in stated else basis,
    )


def _listed(stated: str | list[str]) -> tuple[str, ...]:
    return (stated,) if isinstance(stated, str) else tuple(stated)


def holds(text: str, fragment: str) -> bool:
    """Whether a text has the words of a fragment, one after the other."""
    return re.search(".*".join(map(re.escape, fragment.split(" ... "))), text) is not None


def rests_on(sources: Sequence[str], basis: Sequence[str]) -> bool:
    """Whether sources as the reader sees them are those that a case states, one for one."""
    return len(sources) == len(basis) and all(map(_is_source, sources, basis))


def _is_source(source: str, stated: str) -> bool:
    return source == _MARKS[stated] if stated in _MARKS else holds(source, stated)


def each(outcome: str) -> list[Any]:
    """The cases of one outcome, each with the code of its clause."""
    return [
        pytest.param(code, case, id=f"{code}-{number}")
        for code, stated in JUDGED.items()
        for number, case in enumerate(stated.get(outcome, []))
    ]
