"""The questions of the verdict stage, asked one by one: a line in, lines out; nothing here reads or writes.

What is asked next follows from the answers alone, so that going back is forgetting the last one.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from specgen.judging.asking_order import find_shortest_stop, list_due, order_fields
from specgen.judging.registry import load_rules
from specgen.model.field import Field, Path, Schema
from specgen.model.finding import Judgment, Verdict
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.reading.draft import Told, read_draft
from specgen.terminal.dialogue_question import format_question, read_line, wrap
from specgen.terminal.dialogue_verdict import Standing, find_standing, format_news, format_verdict
from specgen.terminal.field_page import field_page

WALL = "W1"
# About twenty questions; and how often one is asked that finds no answer, before the next one is.
MOST_ASKED, MOST_TRIES = 24, 5
_BACK, _MORE, _UNKNOWN = ("<", "back"), "?", ("", "tbd")


class Dialogue:
    """Asks about one wall and holds what is told; `asked` are the questions put, the one that waits not among them."""

    def __init__(
        self,
        schema: Schema,
        judge: Callable[[Project], Judgment],
        given: Mapping[Path, Told] = MappingProxyType({}),
        units: str = "ip",
        width: int = 80,
    ) -> None:
        """Begin with what is `given` without being asked, such as the purpose of the file."""
        self.schema, self.units, self.width = schema, units, width
        self.asked: list[Path] = []
        self.answers: dict[Path, Told] = {}
        self._judge, self._given, self._tries = judge, dict(given), 0
        self._rules = load_rules()
        self._papers = frozenset(c.code for rule in self._rules for c in rule.clauses if c.document)
        self._project = self._read({})
        self._judgment = judge(self._project)
        self._order = order_fields(schema, self._judgment, self._rules, WALL)
        self.waiting = self._find_next()

    @property
    def standing(self) -> Standing:
        """How the wall stands by what is told so far."""
        return find_standing(self._judgment, WALL)

    def greet(self) -> list[str]:
        """What stands above the first question."""
        keys = "Answer by number or word. Enter: not known. ?: more on it. <: back."
        opening = f"About twenty questions on one wall, {WALL}: those that decide whether it can take the finish."
        return [*wrap(opening, self.width), *wrap(keys, self.width), "", *self.tell_verdict(), "", *self.ask()]

    def ask(self) -> list[str]:
        """The question that waits; empty where none does."""
        if self.waiting is None:
            return []
        return format_question(self._field(self.waiting), len(self.asked) + 1, self.units, self.width)

    def tell_verdict(self) -> list[str]:
        """The verdict as it stands, in a line or two."""
        return format_verdict(self._judgment, WALL, self.schema, self.width, self._papers)

    def take(self, line: str) -> list[str]:
        """What is said to a typed line: news of the wall and the next question, or what was asked for or is wrong."""
        assert self.waiting is not None, "no question waits"
        text = line.strip()
        if text == _MORE:
            page = field_page(self._field(self.waiting)).splitlines()
            return [*(told for line in page for told in wrap(line, self.width) or [""]), "", *self.ask()]
        if text.lower() in _BACK:
            return self._go_back()
        if text.lower() in _UNKNOWN:
            return self._go_on(self.waiting)
        return self._take_answer(self.waiting, text)

    def _take_answer(self, path: Path, text: str) -> list[str]:
        told = self.answers | {path: read_line(self._field(path), text)}
        try:
            project = self._read(told)
        except Refused as refused:
            return self._refuse_answer(path, refused)
        self.answers = told
        before, self._project, self._judgment = self.standing, project, self._judge(project)
        news = format_news(self._judgment, WALL, before, self.width)
        if self.standing != before:
            news += self.tell_verdict()
        return [*news, *self._go_on(path)]

    def _refuse_answer(self, path: Path, refused: Refused) -> list[str]:
        """Say what is wrong, as of a file; the question waits on, unless it was put too often."""
        wrong = [f"{problem.message} ({problem.hint})" if problem.hint else problem.message for problem in refused.problems]
        said = [line for text in wrong for line in wrap(text, self.width)]
        self._tries += 1
        if self._tries < MOST_TRIES:
            return said
        return [*said, f"Left open after {MOST_TRIES} tries.", *self._go_on(path)]

    def _go_on(self, path: Path) -> list[str]:
        self.asked.append(path)
        self._tries, self.waiting = 0, self._find_next()
        return ["", *self.ask()] if self.waiting is not None else []

    def _go_back(self) -> list[str]:
        """Forget the last answer and ask for it again."""
        self._tries = 0
        if not self.asked:
            return ["This is the first question.", "", *self.ask()]
        self.waiting = self.asked.pop()
        was = self.answers.pop(self.waiting, None)
        self._project = self._read(self.answers)
        self._judgment = self._judge(self._project)
        shown = was if isinstance(was, str) or was is None else ", ".join(was) or "none"
        return ["", *self.ask(), *([f"   It was: {shown}"] if shown is not None else [])]

    def _find_next(self) -> Path | None:
        """The question to put next, or None where all that decide are put."""
        due = (path for path in list_due(self._project, self._order) if path not in self.asked)
        path = next(due, None)
        if path is not None or self.standing.verdict is not Verdict.NOT_YET_KNOWN:
            return path
        unknown = [path for path in self.asked if path not in self.answers]
        room = MOST_ASKED - len(self.asked)
        return next(
            iter(find_shortest_stop(self._project, self._judgment, self._rules, WALL, room, unknown)), None
        )

    def _read(self, told: Mapping[Path, Told]) -> Project:
        return read_draft(self._given | dict(told), (WALL,), self.schema)

    def _field(self, path: Path) -> Field:
        field = self.schema.field_at(path)
        assert field is not None
        return field
