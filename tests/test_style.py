"""Linter, formatter and type checker, so that one command runs all checks."""

import re
import sys

import pytest

from tests.computing.test_inputs import ALL as DECLARED
from tests.running import run_process
from tests.support import ROOT

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover


@pytest.mark.parametrize(
    "command", [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)], ids=" ".join
)
def test_the_code_passes(command: tuple[str, ...]) -> None:
    assert run_process([sys.executable, "-m", *command]).code == 0


# What seems unused to a tool that reads only this package, and who uses it.
USED_ELSEWHERE = {
    "AIR_SPRAY": "the conditions of clauses, as air_spray",
    "BETWEEN_EIFS": "the conditions of clauses, as between_eifs",
    "POURED_OR_LAID": "the conditions of clauses, as poured_or_laid",
    "__getattr__": "whoever imports a typed view",
    "__init_subclass__": "Python, for each class below",
    "_action_max_length": "the parser of the standard library, when it prints help",
    "_negative_number_matcher": "the parser of the standard library, at each word with a minus",
    "_error": "the validator, at each of its errors",
    "_element": "the writer of Word files, as the content of the part",
    "ascend_resolver": "the YAML loader, at the end of each value",
    "conclusions": "the template of D06",
    "limit_checks": "the tests, which hold the statuses of D06 against the clauses",
    "call_unop": "the template engine, at each sign before a number",
    "descend_resolver": "the YAML loader, at the beginning of each value",
    "formatter_class": "the parser of the standard library, when it prints help",
    "formulas_of": "the template of D06",
    "init": "the type checker, at each limit declared",
    "intercepted_binops": "the template engine, as the sums it looks at first",
    "intercepted_unops": "the template engine, as the signs it looks at first",
    "mandatory_validations": "the validator, for every field",
    "priority_validations": "the validator, before the others",
    "similar": "the template of D06",
    "visit_CallBlock": "the template engine, at each part of this kind",
    "visit_Concat": "the template engine, at each part of this kind",
    "visit_CondExpr": "the template engine, at each part of this kind",
}


def test_nothing_is_declared_that_nobody_uses() -> None:
    done = run_process([sys.executable, "-m", "vulture"])
    assert done.err == ""
    # An input of a calculation that is a line of its working is read by its symbol, not by its name.
    lines = {name for _, name, one in DECLARED if one.symbol}
    assert set(re.findall(r"unused [\w ]+ '(\w+)'", done.out)) - lines == set(USED_ELSEWHERE), done


def test_ci_runs_the_test_command_of_the_readme() -> None:
    command = (ROOT / ".ci" / "run").read_text("utf-8").strip().splitlines()[-1]
    assert f"    {command}\n" in (ROOT / "README.md").read_text("utf-8")
