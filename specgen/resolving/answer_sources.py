"""Who gave a value that was asked of another party, and when: what prints as where it comes from."""

import datetime
from collections.abc import Callable

from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.source import Kind, Source
from specgen.model.value_text import long_date, raw_text, words
from specgen.resolving.party_names import party_name_path


def answer_source(project: Project, path: Path) -> Source | None:
    """The answer that gave the value at a path, as a source; None where none did, or another value was answered."""
    told = project.answered.get(path)
    if told is None or not told.stands:
        return None
    mark = told.answer
    return project.remember(
        (answer_source, mark), lambda: Source(Kind.ANSWER, describe_answer(project, mark, long_date))
    )


def describe_answer(project: Project, mark: str, tell_day: Callable[[datetime.date], str] = raw_text) -> str:
    """Who answered and when, by the mark of the answer: `L. Ferrow, Graywether Wall Systems, 2027-02-01`."""
    party, by, on = (project.get(("answers", mark, name)) for name in ("party", "by", "on"))
    return name_answer(project, party or "", by or "", tell_day(on) if on else "") or f"answer {mark}"


def name_answer(project: Project, party: str, by: str, on: str) -> str:
    """`L. Ferrow, Graywether Wall Systems, 2027-02-01`: the party by its role where the project does not name it."""
    path = party_name_path(project.schema, party) if party else ()
    firm = str((project.get(path) if path else None) or words(party))
    return ", ".join(filter(None, (by, firm if firm.casefold() not in by.casefold() else "", on)))
