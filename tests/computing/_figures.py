"""What the tests of calculations share: a sum from keys, a line of it by symbol, a sum of a project."""

from argparse import Namespace
from pathlib import Path
from typing import Any

from specgen import computing, pipeline
from specgen.commands import calc
from specgen.computing.arguments import direct
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.support import case_of


def worked(name: str, keys: dict[str, str], **more: str) -> Working:
    return direct(computing.find(name), keys | more)


def line(working: Working, symbol: str) -> float:
    return next(float(step.value) for step in working.steps if step.symbol == symbol)


def resolver_of(folder: Path, change: Any) -> Resolver:
    return pipeline.make_resolver(case_of(folder, change).project)


def told_of(file: Path, name: str) -> tuple[str, Any]:
    """All of one name in a project as `calc NAME --from FILE --working` tells them: the sums, and the data."""
    answers, sums = (
        calc.run(Namespace(name=name, pairs=[], file=str(file), format="json", working=working, help=False))
        for working in (False, True)
    )
    assert sums.text.startswith(answers.text)
    return sums.text[len(answers.text) + 1 :], sums.data


def beside(working: Working) -> dict[str, float]:
    """The lines beside the result, by name."""
    return {step.name: float(step.value) for step in working.secondary_steps}
