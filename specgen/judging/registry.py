"""Finds the rule files; a malformed one fails at start with its file named."""

import importlib
import pkgutil
import re
from functools import lru_cache

from specgen.judging import rules as rules_folder
from specgen.judging.rule import Rule


class RuleError(Exception):
    """A rule file is malformed."""


@lru_cache(maxsize=1)
def load_rules() -> tuple[Rule, ...]:
    """Every rule in the order of its code; raises RuleError."""
    found: dict[str, Rule] = {}
    for group in pkgutil.iter_modules(rules_folder.__path__, rules_folder.__name__ + "."):
        package = importlib.import_module(group.name)
        for module in pkgutil.iter_modules(package.__path__, package.__name__ + "."):
            rule = getattr(importlib.import_module(module.name), "RULE", None)
            if not isinstance(rule, Rule) or not re.fullmatch(r"[A-Z]{3}-\d\d", rule.code) or not rule.clauses:
                raise RuleError(f"{module.name}: no RULE with a code like ATT-01 and at least one clause")
            if rule.code in found:
                raise RuleError(f"{module.name}: {rule.code} is the code of another file too")
            found[rule.code] = rule
    return tuple(found[code] for code in sorted(found))
