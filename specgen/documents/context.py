"""What documents are written from, and tables as data."""

from dataclasses import dataclass
from typing import Any

from specgen.documents.display_values import Sight
from specgen.model.finding import Judgment
from specgen.model.standard import Standards
from specgen.resolving.provider import Resolver


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
