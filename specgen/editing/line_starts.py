"""Where the lines of a text begin, found at once for any place in it."""

import re
from bisect import bisect_right

_LINE_END = re.compile("\r\n|\r|\n")


class LineStarts:
    """The lines of a text; line ends of every kind may stand beside each other."""

    def __init__(self, source: str) -> None:
        self.source = source
        self.starts = [0, *(end.end() for end in _LINE_END.finditer(source))]
        if self.starts[-1] == len(source) > 0:
            self.starts.pop()

    def start(self, index: int) -> int:
        """Where the line of a place begins."""
        return self.starts[bisect_right(self.starts, index) - 1]

    def behind(self, index: int) -> int:
        """Where the next line begins; the end of the text behind the last one."""
        line = bisect_right(self.starts, index)
        return self.starts[line] if line < len(self.starts) else len(self.source)

    def above(self, start: int) -> int:
        """Where the line above one that begins at `start` begins; -1 above the first."""
        line = bisect_right(self.starts, start) - 2
        return self.starts[line] if line >= 0 else -1

    def line(self, start: int) -> str:
        """The text of the line that begins at `start`, without its end."""
        return self.source[start : self.behind(start)].rstrip("\r\n")
