"""The classes of attack: each file holds `draw(chance)`, which gives one attempt; presence is registration."""

import importlib
import pkgutil
import random
from collections.abc import Callable

from tests.attack.attempt import Attempt

Draw = Callable[[random.Random], Attempt]


def load_classes() -> dict[str, Draw]:
    """What draws an attempt, by the name of its class."""
    names = sorted(module.name for module in pkgutil.iter_modules(__path__) if not module.name.startswith("_"))
    return {name: importlib.import_module(f"{__name__}.{name}").draw for name in names}
