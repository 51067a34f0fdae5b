"""The steps in the order of the work: each names the one it follows, so that a new one can be inserted."""

from specgen.model.standard import Step
from specgen.standards.rows import Wrong


def order_steps(steps: dict[str, Step]) -> dict[str, Step]:
    """The steps from first to last; raises Wrong where they do not form a single chain."""
    after: dict[str, str] = {}
    for name, step in steps.items():
        if step.follows == name:
            raise Wrong("a step cannot follow itself", "name the one before it", (name, "follows"))
        other = after.setdefault(step.follows, name)
        if other != name:
            message = f"{other} follows {step.follows or 'no step'}, too"
            raise Wrong(message, f"write follows: {other}, or another step", (name, "follows"))
    ordered: dict[str, Step] = {}
    last = ""
    while last in after:
        last = after[last]
        ordered[last] = steps[last]
    for name in steps:
        if name not in ordered:
            message = "the steps follow one another in a circle" if ordered else "no step is the first"
            raise Wrong(message, "leave follows out of the first step; lead every other back to it", (name, "follows"))
    return ordered
