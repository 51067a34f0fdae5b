"""Texts of ours that say a figure in both unit systems: `up to {60 ft|18.3 m} high`."""

import re
from functools import partial

_PAIR = re.compile(r"\{([^{}|]+)\|([^{}|]+)\}")


def tell_in(text: str, system: str = "both") -> str:
    """The text with each figure in one system, `ip` or `si`, or in both: `up to 60 ft (18.3 m) high`."""
    return _PAIR.sub(partial(_choose, system), text)


def _choose(system: str, pair: re.Match[str]) -> str:
    ip, si = pair.groups()
    return {"ip": ip, "si": si}.get(system, f"{ip} ({si})")
