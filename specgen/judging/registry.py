"""Finds the rule files; a malformed one fails at start with its file and clause named."""

import importlib
import pkgutil
import re
from functools import lru_cache
from types import ModuleType

from specgen.judging import rules as rules_folder
from specgen.judging.binding import Binder
from specgen.judging.rule import Clause, ClauseDeclaration, Rule
from specgen.model.problem import Problem, Refused
from specgen.model.value_text import words
from specgen.reading.schema import project_schema
from specgen.standards import load_standards


class RuleError(Refused):
    """A rule file is malformed; says which file and clause, what is wrong and what would be right."""

    def __init__(self, module: str, message: str, clause: str = "") -> None:
        file = f"{module.removeprefix('specgen.').replace('.', '/')}.py"
        super().__init__(Problem(message, path=clause, file=file))


@lru_cache(maxsize=1)
def load_rules() -> tuple[Rule, ...]:
    """Every rule in the order of its code; raises RuleError."""
    found: dict[str, Rule] = {}
    binder = Binder(project_schema(), load_standards())
    for group in pkgutil.iter_modules(rules_folder.__path__, rules_folder.__name__ + "."):
        package = importlib.import_module(group.name)
        for module in pkgutil.iter_modules(package.__path__, package.__name__ + "."):
            rule = load_rule(importlib.import_module(module.name), binder)
            if rule.code in found:
                raise RuleError(module.name, f"{rule.code} is the code of another file too")
            found[rule.code] = rule
    return tuple(found[code] for code in sorted(found))


def load_rule(file: ModuleType, binder: Binder) -> Rule:
    """The rule of a file, its clauses with every name looked up; raises RuleError."""
    rule = getattr(file, "RULE", None)
    if not isinstance(rule, Rule) or not re.fullmatch(r"[A-Z]{3}-\d\d", rule.code) or not rule.declared:
        raise RuleError(file.__name__, "no RULE with a code like ATT-01 and at least one clause")
    letters = [clause.letter for clause in rule.declared]
    twice = next((letter for letter in letters if letters.count(letter) > 1), None)
    if twice is not None:
        raise RuleError(file.__name__, f"{rule.code}{twice} is the code of another clause too", f"clause {twice}")
    rule.manual, folder = file.__doc__ or "", file.__name__.rpartition(".")[0]
    rule.group = words(folder.rpartition(".")[2])
    rule.clauses = tuple(_bind(binder, rule, clause, file.__name__) for clause in rule.declared)
    return rule


def _bind(binder: Binder, rule: Rule, clause: ClauseDeclaration, file: str) -> Clause:
    try:
        return binder.bind(rule, clause)
    except ValueError as error:
        raise RuleError(file, str(error), f"clause {clause.letter}") from error
