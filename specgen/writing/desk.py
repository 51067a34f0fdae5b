"""What documents are written from, and tables as data."""

from dataclasses import dataclass
from typing import Any

from ..vocabulary.finding import Judgment
from ..vocabulary.provider import Resolver
from ..vocabulary.standard import Standards
from .values import Sight


@dataclass(frozen=True)
class Desk:
    """All that documents are written from."""

    sight: Sight
    judgment: Judgment
    resolve: Resolver

    @property
    def standards(self) -> Standards:
        """The rows of the trade."""
        return self.sight.standards


@dataclass(frozen=True)
class TableView:
    """Rows as data for a template to set: `{{ table(joints) }}`; a cell is a value, words, or a list of both.

    So is a head of a column."""

    header: tuple[Any, ...]
    rows: tuple[tuple[Any, ...], ...]
    widths: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.rows)
