"""Finds the rule files and looks up what their clauses name; a malformed one fails at start with its file named."""

import importlib
import pkgutil
import re
from collections.abc import Iterator
from functools import lru_cache

from specgen import computing
from specgen.judging import rules as rules_folder
from specgen.judging.clause_condition import ClauseCondition, bind_condition, clause_condition
from specgen.judging.rule import ARGUMENTS, OF_OPEN_ITEMS, STOP, Clause, Declared, Rule, Violation
from specgen.judging.scope import RuleError, Scope
from specgen.model.condition import ConditionError, terms
from specgen.model.field import Schema
from specgen.model.project import View
from specgen.model.suggest import near_hint
from specgen.quantities.parse import QuantityError
from specgen.reading.schema import project_schema


@lru_cache(maxsize=1)
def load_rules() -> tuple[Rule, ...]:
    """Every rule in the order of its code; raises RuleError."""
    found: dict[str, Rule] = {}
    for group in pkgutil.iter_modules(rules_folder.__path__, rules_folder.__name__ + "."):
        package = importlib.import_module(group.name)
        for module in pkgutil.iter_modules(package.__path__, package.__name__ + "."):
            file = importlib.import_module(module.name)
            rule = getattr(file, "RULE", None)
            if not isinstance(rule, Rule) or not re.fullmatch(r"[A-Z]{3}-\d\d", rule.code) or not rule.declared:
                raise RuleError(f"{module.name}: no RULE with a code like ATT-01 and at least one clause")
            if rule.code in found:
                raise RuleError(f"{module.name}: {rule.code} is the code of another file too")
            rule.manual = file.__doc__ or ""
            rule.clauses = tuple(_bound(rule, clause, project_schema(), module.name) for clause in rule.declared)
            found[rule.code] = rule
    return tuple(found[code] for code in sorted(found))


def _bound(rule: Rule, clause: Declared, schema: Schema, file: str) -> Clause:
    """A declared clause with its paths looked up; raises RuleError with file and clause."""
    try:
        return bind(rule, clause, schema)
    except (RuleError, ConditionError, QuantityError, KeyError, ValueError) as error:
        raise RuleError(f"{file}: clause {clause.letter}: {error}") from error


def _named(clause: Declared) -> list[str]:
    """The fields that a clause names."""
    if clause.test is not None:
        return [clause.at]
    return [".".join(term.path) for term in terms(clause_condition(clause))]


def _run_apart(subject: View) -> Iterator[Violation]:
    raise AssertionError(f"open items are no members to be judged: {subject}")


def bind(rule: Rule, clause: Declared, schema: Schema) -> Clause:
    """A declared clause with its paths looked up in the schema; raises RuleError or ConditionError."""
    for name in clause.asks - ARGUMENTS:
        if name.replace("_", "-") not in computing.names():
            known = [*ARGUMENTS, *(known.replace("-", "_") for known in computing.names())]
            raise RuleError(f"a test cannot take {name!r}: {near_hint(name, known)}")
    scope = Scope(schema, tuple(clause.each.split("."))) if clause.each else Scope.of(schema, _named(clause))
    if scope.each == OF_OPEN_ITEMS:
        bound = ClauseCondition(_run_apart, (), ())
    elif clause.test is not None:
        bound = ClauseCondition(clause.test, scope.pattern(clause.at), ())
    else:
        bound = bind_condition(clause, scope)
    return Clause(
        rule=rule,
        letter=clause.letter,
        severity=clause.severity,
        say=clause.say,
        each=scope.each,
        basis=tuple(clause.basis.split()),
        limit=clause.limit,
        lift=clause.lift or ("deviation" if clause.severity is STOP else "none"),
        at=bound.at,
        step=clause.step or rule.steps[0],
        test=bound.test,
        asks=clause.asks,
        reads=bound.reads,
    )
