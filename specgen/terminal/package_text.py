"""The first lines of a report: whether the package can be built, of what it is, and the counts."""

from collections.abc import Iterator

from specgen.model.finding import Judgment, Severity
from specgen.model.project import Project
from specgen.model.value_text import words
from specgen.terminal.report_data import count_standing, lacks_documents_alone
from specgen.terminal.screen import Line

_PLURAL = {"clause not judged": "clauses not judged"}


def describe_package(project: Project, judgment: Judgment) -> Iterator[Line]:
    """Whether the package can be built, of what project and for what purpose it is, and the counts."""
    purpose = project.value(("package", "purpose"))
    if judgment.stopped:
        none = "; no exception that stops the work" if lacks_documents_alone(judgment) else ""
        yield Line(f"Package: stopped by {count_standing(judgment)}{none}", 2, style="stop")
    else:
        draft = "" if judgment.stops_when_open else " as a draft"
        yield Line(f"Package: ready to build{draft}", 2, style="good")
    yield Line(f"{project.value(('project', 'name'))}: {words(purpose)}", 2)
    yield Line(_format_counts(judgment), 2)


def _format_counts(judgment: Judgment) -> str:
    counts = [(len(judgment.of(s)), str(s)) for s in Severity]
    counts += [(len(judgment.open_items), "open item"), (len(judgment.not_judged), "clause not judged")]
    return ", ".join(f"{n} {word if n == 1 else _PLURAL.get(word, word + 's')}" for n, word in counts)
