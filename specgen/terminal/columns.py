"""Rows as columns of text."""

from collections.abc import Iterable, Sequence


def align_columns(rows: Iterable[Sequence[str]]) -> str:
    """Rows as left-aligned columns, two spaces apart; the last column is not padded."""
    table = [list(row) for row in rows]
    widths = [max(len(row[n]) for row in table) for n in range(len(table[0]) - 1)] if table else []
    return "".join(
        "  ".join([*(f"{c:<{w}}" for c, w in zip(row, widths, strict=False)), row[-1]]).rstrip() + "\n" for row in table
    )
