"""A malformed rule is refused when it is loaded, with its file and clause, what is wrong and what would be right.

The words of the messages are this program's own.
"""

import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from specgen.judging import rules as rules_folder
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
    ({"when": "wall.insulation.kind = epz"}, "'epz' is not a choice for wall.insulation.kind: did you mean eps?"),
    ({"when": "wall.insulation.aged = maybe"}, "'maybe' is not a choice for wall.insulation.aged: known: yes, no"),
    ({"when": "joint.width < 3/4"}, "'3/4' has no unit"),
    ({"when": "joint.width < 3 psi"}, "'psi' is not a unit of length"),
    ({"when": "joint.width < joint.deepth"}, "joint.deepth: 'deepth' is not known here: did you mean depth?"),
    ({"when": "(joint.width < limit"}, "a parenthesis is not closed"),
    ({"when": "joint.width smaller limit"}, "'joint.width smaller limit' is no term of a condition"),
    (
        {"when": "joint.width < limit", "limit": "joint.widht_most"},
        "there is no limit 'joint.widht_most': did you mean",
    ),
    ({"when": "joint.width < limit", "basis": "memroy"}, "there is no source 'memroy': did you mean memory?"),
    ({"when": "joint.width < limit", "step": "bords"}, "there is no step 'bords': did you mean boards?"),
    ({"when": "joint.width < 1 in", "remedy": "Leave {joint.tow_bead}."}, "there is no limit 'joint.tow_bead': "),
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


@pytest.mark.parametrize("code", ["ATT-1", "ATT-001", "att-01", "ATT01", "ATT-01a", ""])
def test_a_rule_without_a_code_of_the_right_form_is_told(code: str) -> None:
    made = Rule(code, "Trial", remedy="Mend it.", steps="boards", documents="D08")
    made.clause("a", STOP, "Wrong.", when="joint.width < 1 in")
    with pytest.raises(RuleError, match="^trial.py: no RULE with a code like ATT-01 and at least one clause"):
        load_rule(file_of(made), BINDER)


def test_a_letter_used_twice_in_a_rule_is_told() -> None:
    made = rule()
    for width in ("1 in", "2 in"):
        made.clause("a", STOP, "Wrong.", when=f"joint.width < {width}")
    with pytest.raises(RuleError, match="^trial.py: clause a: ABC-01a is the code of another clause too"):
        load_rule(file_of(made), BINDER)


Load = Callable[[dict[str, str]], tuple[Rule, ...]]


@pytest.fixture
def load(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Load]:
    """Loads rule files by their names, in a folder that stands in place of the rules."""
    monkeypatch.setattr(rules_folder, "__path__", [str(tmp_path)])

    def loaded(files: dict[str, str]) -> tuple[Rule, ...]:
        (tmp_path / "trial_group").mkdir()
        for name, text in ({"__init__.py": ""} | files).items():
            (tmp_path / "trial_group" / name).write_text(text, "utf-8")
        return load_rules.__wrapped__()

    yield loaded
    for name in [name for name in sys.modules if "trial_group" in name]:
        del sys.modules[name]


FILE = """
from specgen.judging.rule import STOP, Rule

RULE = Rule("{code}", "Trial", remedy="Mend it.", steps="boards", documents="D08")
RULE.clause("a", STOP, "Wrong.", when="joint.width < 1 in", basis="memory")
"""


def test_rule_files_are_found_by_their_presence_and_come_in_the_order_of_their_codes(load: Load) -> None:
    found = load({"first.py": FILE.format(code="ABC-02"), "second.py": FILE.format(code="ABC-01")})
    assert [rule.code for rule in found] == ["ABC-01", "ABC-02"]


def test_a_code_of_two_files_is_told_with_the_second(load: Load) -> None:
    with pytest.raises(RuleError) as raised:
        load({"first.py": FILE.format(code="ABC-01"), "second.py": FILE.format(code="ABC-01")})
    told = "judging/rules/trial_group/second.py: ABC-01 is the code of another file too"
    assert str(raised.value) == told


def test_a_file_whose_rule_has_another_name_is_told(load: Load) -> None:
    with pytest.raises(RuleError, match="^judging/rules/trial_group/first.py: no RULE with a code like ATT-01"):
        load({"first.py": FILE.format(code="ABC-01").replace("RULE", "RULES")})


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
    assert caution.say == stop.say
    guide = "a guide only: the competent person confirms the local rule before work starts."
    assert caution.remedy == f"{stop.remedy} The U.S. rule cited is {guide}"
    assert stop.at == caution.at == ("tank", "relief_valve")
