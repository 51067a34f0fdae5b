"""How rules are named where a reader is to find them: `HEA-05 Dark color over EPS`."""

from collections.abc import Iterable

from specgen.judging.registry import load_rules


def name_rules(codes: Iterable[str]) -> list[str]:
    """The rules of these codes, each once, by code and title."""
    titles = {rule.code: rule.title for rule in load_rules()}
    return [f"{code} {titles[code]}" for code in dict.fromkeys(codes)]
