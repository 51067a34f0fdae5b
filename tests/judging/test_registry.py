"""A malformed rule is refused when it is loaded, with its file and clause, what is wrong and what would be right.

The words of the messages are this program's own.
"""

from types import ModuleType
from typing import Any

import pytest

from specgen.judging.binding import Binder
from specgen.judging.registry import RuleError, load_rule, load_rules
from specgen.judging.rule import STOP, Rule
from specgen.reading.schema import project_schema
from specgen.standards import load_standards

BINDER = Binder(project_schema(), load_standards())


def rule(**words: Any) -> Rule:
    return Rule("ABC-01", "Trial", **({"remedy": "Mend it.", "steps": "boards", "documents": "D08"} | words))


def file_of(made: Any) -> ModuleType:
    file = ModuleType("trial")
    file.RULE = made  # type: ignore[attr-defined]
    return file


def told_of(clause: dict[str, Any], **words: Any) -> str:
    made = rule(**words)
    made.clause("a", STOP, "Wrong.", **clause)
    with pytest.raises(RuleError) as raised:
        load_rule(file_of(made), BINDER)
    return str(raised.value)


FAULTS = [
    ({"when": "wall.insulation.knid = eps"}, "wall.insulation.knid: 'knid' is not known here: did you mean kind?"),
    ({"when": "wal.insulation.kind = eps"}, "wal.insulation.kind: 'wal' is not known here: did you mean walls?"),
    ({"when": "wall.insulation.kind = epz"}, "'epz' is no choice of wall.insulation.kind: did you mean eps?"),
    ({"when": "wall.insulation.aged = maybe"}, "'maybe' is no choice of wall.insulation.aged: known: yes, no"),
    ({"when": "joint.width < 3/4"}, "'3/4' has no unit"),
    ({"when": "joint.width < 3 psi"}, "'psi' is no unit of length"),
    ({"when": "joint.width < joint.deepth"}, "joint.deepth: 'deepth' is not known here: did you mean depth?"),
    ({"when": "(joint.width < limit"}, "a parenthesis is not closed"),
    ({"when": "joint.width smaller limit"}, "'joint.width smaller limit' is no term of a condition"),
    (
        {"when": "joint.width < limit", "limit": "joint.widht_most"},
        "there is no limit 'joint.widht_most': did you mean",
    ),
    ({"when": "joint.width < limit", "basis": "memroy"}, "there is no source 'memroy': did you mean memory?"),
    ({"when": "joint.width < limit", "step": "bords"}, "there is no step 'bords': did you mean boards?"),
    ({"when": "joint.width < limit", "at": "joint.wide"}, "joint.wide: 'wide' is not known here"),
    ({"when": "joint.width < limit", "found": "joint.wide.most"}, "joint.wide.most: 'wide' is not known here"),
]


@pytest.mark.parametrize(("clause", "message"), FAULTS, ids=[message for _, message in FAULTS])
def test_a_clause_that_names_what_there_is_not_is_told(clause: dict[str, Any], message: str) -> None:
    assert told_of(clause).startswith(f"trial.py: clause a: {message}")


def test_a_step_of_the_rule_that_there_is_not_is_told() -> None:
    assert "there is no step 'gloze': did you mean gloss?" in told_of({"when": "joint.width < 1 in"}, steps="gloze")


def test_a_test_that_takes_what_there_is_not_is_told() -> None:
    made = rule()

    @made.test("b", STOP, "Wrong.", at="joint.width")
    def narrow(joint: Any, joint_widht: Any) -> Any:
        yield from ()

    with pytest.raises(
        RuleError, match=r"^trial.py: clause b: there is no argument of a test 'joint_widht': did you mean"
    ):
        load_rule(file_of(made), BINDER)


@pytest.mark.parametrize("made", [None, "RULE", Rule("abc", "A", remedy="", steps="", documents=""), rule()])
def test_a_file_without_a_rule_is_told(made: Any) -> None:
    with pytest.raises(RuleError, match="^trial.py: no RULE with a code like ATT-01 and at least one clause"):
        load_rule(file_of(made), BINDER)


def test_a_clause_is_asked_of_the_members_its_fields_name() -> None:
    each = {clause.code: clause.each for rule in load_rules() for clause in rule.clauses}
    assert each["INS-03a"] == ("walls",)
    assert each["BAS-02b"] == ("walls", "*", "mesh", "layers")
    assert each["SCH-02a"] == ("colors",)
    assert each["SUB-01b"] == ()


def test_safety_clauses_stop_under_federal_rules_and_caution_elsewhere() -> None:
    made = rule()
    made.safety_clauses(("a", "b"), "The tank has no relief valve.", when="tank.relief_valve = no", basis="memory")
    stop, caution = load_rule(file_of(made), BINDER).clauses
    assert (stop.severity, stop.lift, stop.say) == ("stop", "never", "The tank has no relief valve.")
    assert (caution.severity, caution.lift) == ("caution", "none")
    assert caution.say == "The tank has no relief valve: local law governs, confirm."
    assert stop.at == caution.at == ("tank", "relief_valve")
