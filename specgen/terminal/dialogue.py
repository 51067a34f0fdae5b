"""The questions of the verdict stage, asked one by one: a line in, lines out; nothing here reads or writes.

What is asked next follows from the answers alone, so that going back is forgetting the last one.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import NamedTuple

from specgen.judging.asking_order import find_shortest_stop, list_due, order_fields
from specgen.judging.registry import load_rules
from specgen.model.field import Field, Path, Schema
from specgen.model.finding import Judgment, Verdict
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.model.value_text import raw_text
from specgen.reading.draft import Told, read_draft
from specgen.reading.unknown import is_unknown
from specgen.terminal.dialogue_question import choices_of, format_question, read_line, wrap
from specgen.terminal.dialogue_reply import tell_fault, tell_reading
from specgen.terminal.dialogue_verdict import Standing, find_standing, format_news, format_verdict
from specgen.terminal.field_page import field_page

WALL = "W1"
# About twenty questions; and how often one is asked that finds no answer, before the next one is.
MOST_ASKED, MOST_TRIES = 24, 5
_PURPOSE = ("package", "purpose")
# How far in the lines of the manual page run on, on a terminal of so many characters.
_WIDE, _NARROW, _ROOMY = " " * 12, " " * 4, 60
_BACK, _MORE, _CLEAR = ("<", "back"), "?", "-"


class Reply(NamedTuple):
    """What is said to a typed line: whether it tells of a fault, and whether the question is to be put after it."""

    lines: list[str]
    wrong: bool = False
    asks: bool = True


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
        self._kept: tuple[Path, Told] | None = None  # the answer gone back to, which Enter keeps
        self._judge, self._given, self._tries = judge, dict(given), 0
        self._rules = load_rules()
        self._papers = frozenset(c.code for rule in self._rules for c in rule.clauses if c.document)
        self._project = self._read({})
        self._judgment = judge(self._project)
        # The order is that of the verdict stage, whatever stage the file is for.
        draft = judge(self._read({_PURPOSE: "design_draft"}))
        self._order = order_fields(schema, draft, self._rules, WALL)
        self.waiting = self._find_next()

    @property
    def standing(self) -> Standing:
        """How the wall stands by what is told so far."""
        return find_standing(self._judgment, WALL, self._papers)

    def greet(self) -> list[str]:
        """What stands above the first question."""
        opening = f"About twenty questions on one wall, {WALL}: those that decide whether it can take the finish."
        keys = "Answer by number or word. Enter: not known. ?: more on it. <: back. Ctrl-D: end and write."
        return [*wrap(opening, self.width), *wrap(keys, self.width), "", *self.tell_verdict()]

    def ask(self) -> list[str]:
        """The question that waits; empty where none does."""
        if self.waiting is None:
            return []
        return format_question(self._field(self.waiting), len(self.asked) + 1, self.units, self.width)

    def tell_verdict(self) -> list[str]:
        """The verdict as it stands, in a line or two."""
        whole = self.waiting is None and 2 * len(self.answers) > len(self.asked)
        return format_verdict(self._judgment, WALL, self.standing, self.schema, self.width, whole=whole)

    def take(self, line: str) -> Reply:
        """What is said to a typed line: news of the wall, what was asked for, or what is wrong."""
        assert self.waiting is not None, "no question waits"
        text = line.strip()
        if text == _MORE:
            return Reply(self._show_page(self._field(self.waiting)))
        if text.lower() in _BACK:
            return self._go_back()
        if not text and self._kept is not None and self._kept[0] == self.waiting:
            return self._hold(self.waiting, self._kept[1])
        if text == _CLEAR or is_unknown(text):
            return self._go_on(self.waiting, [])
        return self._take_answer(self.waiting, text)

    def _show_page(self, field: Field) -> list[str]:
        """The manual page of a field; what runs on stands below the text it belongs to, where there is room."""
        below = _WIDE if self.width >= _ROOMY else _NARROW
        return [told for line in field_page(field).splitlines() for told in wrap(line, self.width, below=below) or [""]]

    def list_answers(self) -> dict[Path, str]:
        """What was answered, as it is typed in a file: choices by their names, a list in brackets."""
        return {path: self._spell(path, told) for path, told in self.answers.items()}

    def _spell(self, path: Path, told: Told) -> str:
        value = self._project.values[path]
        if isinstance(value, tuple):
            return f"[{', '.join(map(raw_text, value))}]"
        return raw_text(value) if choices_of(self._field(path)) else str(told)

    def _take_answer(self, path: Path, text: str) -> Reply:
        answer = read_line(self._field(path), text)
        try:
            reply = self._hold(path, answer)
        except Refused as refused:
            return self._refuse_answer(path, text, refused)
        read = tell_reading(self._field(path), text, self._project.values[path])
        return reply._replace(lines=[*wrap(read, self.width), *reply.lines])

    def _hold(self, path: Path, answer: Told) -> Reply:
        """Hold an answer and judge the wall by it; raises Refused for one that does not fit."""
        told = self.answers | {path: answer}
        project = self._read(told)
        before, self.answers = self.standing, told
        self._project, self._judgment = project, self._judge(project)
        return self._go_on(path, format_news(WALL, before, self.standing, self.width))

    def _refuse_answer(self, path: Path, text: str, refused: Refused) -> Reply:
        """Say what is wrong, as of a file or in the words of the choices; the question waits on, unless too often."""
        field = self._field(path)
        told = [tell_fault(field, text, one) for one in refused.problems]
        said = [line for one in told for line in wrap(one, self.width)]
        self._tries += 1
        if self._tries < MOST_TRIES:
            return Reply(said, wrong=True, asks=False)
        left = wrap(f"{field.label}: left open after {MOST_TRIES} answers", self.width)
        return self._go_on(path, said + left)._replace(wrong=True)

    def _go_on(self, path: Path, said: list[str]) -> Reply:
        self.asked.append(path)
        self._kept, self._tries, self.waiting = None, 0, self._find_next()
        return Reply(said)

    def _go_back(self) -> Reply:
        """Forget the last answer, so that it is asked for again."""
        self._tries = 0
        if not self.asked:
            return Reply(["This is the first question."])
        self.waiting = self.asked.pop()
        was = self.answers.pop(self.waiting, None)
        self._kept = (self.waiting, was) if was is not None else None
        self._project = self._read(self.answers)
        self._judgment = self._judge(self._project)
        shown = was if isinstance(was, str) or was is None else ", ".join(was) or "none"
        keys = f"; Enter keeps it, {_CLEAR} clears it" if was is not None else ""
        return Reply(wrap(f"Back; the answer was: {shown or 'not known'}{keys}", self.width))

    def _find_next(self) -> Path | None:
        """The question to put next, or None where all that decide are put."""
        due = (path for path in list_due(self._project, self._order) if path not in self.asked)
        path = next(due, None)
        if path is not None or self.standing.verdict is not Verdict.NOT_YET_KNOWN:
            return path
        unknown = [path for path in self.asked if path not in self.answers]
        room = MOST_ASKED - len(self.asked)
        return next(iter(find_shortest_stop(self._project, self._judgment, self._rules, WALL, room, unknown)), None)

    def _read(self, told: Mapping[Path, Told]) -> Project:
        return read_draft(self._given | dict(told), (WALL,), self.schema)

    def _field(self, path: Path) -> Field:
        field = self.schema.field_at(path)
        assert field is not None
        return field
