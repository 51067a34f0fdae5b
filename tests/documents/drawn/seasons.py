"""What is told of seasons whose record has gaps and readings out of order: the example, its entries changed by seed."""

import csv
import io
import random
import shutil
from collections import defaultdict
from collections.abc import Iterator
from contextlib import chdir, redirect_stderr, redirect_stdout
from pathlib import Path
from tempfile import TemporaryDirectory

from specgen.cli import main
from tests.documents.drawn.sentences import list_fresh
from tests.support import EXAMPLES

SEEDS = range(9)
CHANGED, BLANK, GROWN = 0.1, 0.4, 0.7  # shares of the cells; of those changed blank, or another's of the column
FITTING = ("wind", "gust", "ended_at", "elevation", "step", "date")  # which would not fit what stands beside them
CALLS = (
    ("record", "project.yaml"),
    ("record", "project.yaml", "--out", "reports", "--formats", "txt"),
    ("status", "project.yaml", "--at", "2027-07-20T10:00"),
    ("status", "project.yaml"),
    ("build", "project.yaml", "--formats", "txt", "--only", "D00,D17", "--draft", "--out", "built"),
)


def season_texts() -> dict[str, str]:
    """The sentences by command and by document, each below the season that tells it first."""
    told: dict[str, list[str]] = {}
    known: dict[str, set[str]] = defaultdict(set)
    for seed in SEEDS:
        for name, page in _tell(seed):
            fresh = list(list_fresh(page, known[name]))
            told.setdefault(name, [name]).extend([f"\n[season {seed}]", *fresh] if fresh else [])
    return {f"season-{name}.txt": "\n".join((*lines, "")) for name, lines in told.items()}


def _tell(seed: int) -> Iterator[tuple[str, str]]:
    """What each command prints of a season, and what it writes."""
    with TemporaryDirectory() as folder:
        place = Path(folder) / "season"
        shutil.copytree(EXAMPLES / "season", place)
        chance = random.Random(seed)  # noqa: S311  (no secret)
        for file in sorted((place / "records").glob("*.csv")):
            file.write_text(_spoil(file.read_text("utf-8"), chance), "utf-8")
        for words in CALLS:
            said = io.StringIO()
            with chdir(place), redirect_stdout(said), redirect_stderr(said):
                main(words)
            yield words[0], said.getvalue()
        for file in sorted(place.rglob("*.txt")):
            yield file.stem, file.read_text("utf-8")


def _spoil(text: str, chance: random.Random) -> str:
    """A table with some cells blank, of another row, or a third higher."""
    head, *rows = csv.reader(io.StringIO(text))
    for row in rows:
        for column, title in enumerate(head):
            if chance.random() < CHANGED and not title.startswith(FITTING):
                row[column] = _change(row[column], [other[column] for other in rows], chance)
    made = io.StringIO()
    csv.writer(made, lineterminator="\n").writerows([head, *rows])
    return made.getvalue()


def _change(cell: str, column: list[str], chance: random.Random) -> str:
    drawn = chance.random()
    if drawn < BLANK:
        return ""
    if drawn < GROWN or not cell.replace(".", "", 1).isdigit():
        return chance.choice(column)
    return str(round(float(cell) * 1.3)) if cell.isdigit() else f"{float(cell) * 1.3:.1f}"
