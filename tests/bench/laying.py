"""What lines proposed for a wall cost: openings all unlike, 10 in each column of 7 ft 6 in."""

import math
import random
import tempfile
from functools import partial
from pathlib import Path

from specgen import pipeline
from specgen.model.project import Project
from tests.bench.measuring import at_most, seconds
from tests.support import project_of

COLUMNS = (10, 20, 40)
WAYS: dict[str, dict[str, list[str]]] = {"": {}, ", jambs and heads wished for": {"align_to": ["jambs", "heads"]}}


def measure() -> None:
    """Seconds for a wall of 300 x 120 ft with 400 openings, and the exponent of growth with openings."""
    with tempfile.TemporaryDirectory() as folder:
        for way, wished in WAYS.items():
            costs = [_cost(Path(folder), columns, wished) for columns in COLUMNS]
            at_most(f"lines for 400 unlike openings, seconds{way}", costs[-1], 2)
            ratio = math.log(costs[-1] / costs[0]) / math.log(COLUMNS[-1] / COLUMNS[0])
            at_most(f"lines, exponent of growth with openings{way}", ratio, 1.5)


def _cost(folder: Path, columns: int, wished: dict[str, list[str]]) -> float:
    face = {
        "width": f"{7.5 * columns} ft",
        "height": "120 ft",
        "openings": _unlike(columns),
        "floor_lines": {},
        "layout": {"mode": "request"} | wished,
    }
    # A project remembers what was found for it.
    projects = [project_of(folder, {"elevations": {"E1": face}, "joints": {}}) for _ in range(3)]
    return min(seconds(partial(_propose, project), 1) for project in projects)


def _propose(project: Project) -> None:
    pipeline.make_resolver(project)(("elevations", "E1"), "layouts")


def _unlike(columns: int) -> dict[str, dict[str, str]]:
    chance, openings = random.Random(1), {}
    for column in range(columns):
        for row in range(10):
            width, height = chance.choice((36, 40, 44, 48, 52)), chance.choice((48, 54, 60, 66))
            openings[f"W{column}x{row}"] = {
                "kind": "window",
                "x": f"{column * 90 + chance.randrange(8, 84 - width)} in",
                "y": f"{row * 144 + chance.randrange(24, 132 - height)} in",
                "width": f"{width} in",
                "height": f"{height} in",
            }
    return openings
