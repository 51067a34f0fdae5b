"""The code of a rule as a user writes it, for all commands that take one."""

import re

from specgen.judging.registry import load_rules
from specgen.model.problem import refuse
from specgen.model.suggest import suggest


def find_rule_code(code: str) -> str:
    """The code of a rule or clause as it is written; raises Refused with the nearest one."""
    known = {name.upper(): name for rule in load_rules() for name in (rule.code, *(c.code for c in rule.clauses))}
    if code.upper() not in known:
        # ATT-1 is meant as ATT-01, though ATT-10 is as near to it.
        padded = re.sub(r"-(?=\d(?!\d))", "-0", code)
        raise refuse(f"there is no rule {code!r}", suggest(padded, list(known.values())))
    return known[code.upper()]
