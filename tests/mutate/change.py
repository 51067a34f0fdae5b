"""A change of one place of one file."""

from pathlib import Path
from typing import NamedTuple


class Change(NamedTuple):
    """What stands at `start` of the text of `file`, a path in the checkout, and what is put in its place."""

    kind: str
    file: str
    start: int
    before: str
    after: str

    def applied_to(self, text: str) -> str:
        """The text of the file, changed."""
        assert text.startswith(self.before, self.start), self
        return text[: self.start] + self.after + text[self.start + len(self.before) :]

    def told(self, root: Path) -> str:
        """The change in one line, with its place."""
        line = (root / self.file).read_text("utf-8")[: self.start].count("\n") + 1
        return f"{self.kind:<9} {self.file}:{line}: {shown(self.before)} -> {shown(self.after)}"


def shown(text: str) -> str:
    """A piece of text short enough for a line."""
    flat = " ".join(text.split())
    return repr(flat if len(flat) <= 60 else f"{flat[:28]} ... {flat[-28:]}")
