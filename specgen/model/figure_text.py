"""Texts that name a figure of the trade by its row: `under a {straightedge.long} straightedge`."""

import re
from collections.abc import Callable

_ASKED = re.compile(r"\{([a-z_0-9]+(?:\.[a-z_0-9]+)+)\}")


def figures_asked(text: str) -> list[str]:
    """The rows whose figures a text asks for."""
    return _ASKED.findall(text)


def split_figures(text: str) -> list[str]:
    """The words of a text and the rows whose figures stand between them, in turn."""
    return _ASKED.split(text)


def fill_figures(text: str, figure_of: Callable[[str], str]) -> str:
    """The text with each figure in its place; `figure_of` tells that of a row."""
    return _ASKED.sub(lambda asked: figure_of(asked[1]), text)
