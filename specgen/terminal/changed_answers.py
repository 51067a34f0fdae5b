"""The values that are no longer those that others have answered: they print as the project's own."""

from collections.abc import Iterator

from specgen.model.field import dotted_path
from specgen.model.project import Project
from specgen.model.value_text import raw_text
from specgen.quantities.quantity import Quantity
from specgen.resolving.answer_sources import describe_answer
from specgen.terminal.screen import Line

MOST_CHANGED = 8


def list_changed(project: Project) -> Iterator[Line]:
    """Each value that was changed since it was answered, with both; none where all stand."""
    changed = [(path, told) for path, told in project.answered.items() if not told.stands]
    if not changed:
        return
    yield Line()
    yield Line("Changed since they were answered; each prints as the project's own")
    for path, told in changed[:MOST_CHANGED]:
        value, field = project.values[path], project.schema.field_at(path)
        now = (value.text if isinstance(value, Quantity) else "") or raw_text(value, field, project.system)
        was = f"{told.text}, answered by {describe_answer(project, told.answer)}" if told.text else "not recorded"
        yield Line(f"  {dotted_path(path)}: now {now}; was {was}", 4)
    if len(changed) > MOST_CHANGED:
        yield Line(f"  and {len(changed) - MOST_CHANGED} more")
