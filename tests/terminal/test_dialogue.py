"""The questions of the verdict stage: what is asked, what is taken, what is said. Behavior of ours, retyped here."""

from collections.abc import Mapping

import pytest

from specgen.model.field import Path, dotted_path
from specgen.model.finding import Judgment, Verdict
from specgen.model.project import Project
from specgen.pipeline import judge_project
from specgen.reading.draft import Told
from specgen.reading.schema import project_schema
from specgen.terminal.dialogue import Dialogue

# What a wall that may be built is answered, in the order of the questions; the path is what each one fills in.
SOUND = {
    "project.name": "Harbor Clinic",
    "walls.W1.substrate.kind": "7",
    "walls.W1.substrate.condition": "none",
    "walls.W1.insulation.kind": "EPS",
    "walls.W1.insulation.thickness": "2 in",
    "walls.W1.attachment.method": "2",
    "walls.W1.attachment.ribbon_direction": "1",
    "code.model": "ibc",
    "code.edition": "2021",
    "code.local_fasteners_required": "n",
    "code.construction_type": "vb",
    "code.occupancy_groups": "R-2, B",
    "walls.W1.drainage.kind": "adhesive ribbons",
    "walls.W1.wrb.kind": "fluid-applied",
    "walls.W1.framing.kind": "cold-formed steel",
    "building.eifs_top": "31 ft",
}
# The stops that the fewest answers settle, when the stage is told.
FURTHER = {
    "walls.W1.drainage.efficiency": "94",
    "contract.inspection_level": "3",
    "walls.W1.insulation.c578_type": "I",
    "walls.W1.insulation.e2430": "y",
    "walls.W1.insulation.aged": "y",
    "aesthetic_joint.depth": "1/2 in",
    "walls.W1.insulation.rasp_allowance": "1/16 in",
}
OLD_COATING = ("base", "condition", "coating_removed", "lead_tested", "asbestos_tested")


def judge(project: Project) -> Judgment:
    return judge_project(project).judgment


def begin(given: Mapping[Path, Told] | None = None, width: int = 80) -> Dialogue:
    purpose = {("package", "purpose"): "design_draft"}
    return Dialogue(project_schema(), judge, purpose | dict(given or {}), width=width)


def waiting(dialogue: Dialogue) -> str:
    return dotted_path(dialogue.waiting or ())


def told_as(*lines: str, dialogue: Dialogue | None = None) -> Dialogue:
    dialogue = dialogue or begin()
    for line in lines:
        dialogue.take(line)
    return dialogue


def up_to(path: str, answers: Mapping[str, str] = SOUND) -> Dialogue:
    """A dialogue in which all is answered before the question of a path."""
    dialogue = begin()
    while waiting(dialogue) != path:
        dialogue.take(answers.get(waiting(dialogue), ""))
    return dialogue


def test_about_twenty_are_asked_the_substrate_first_and_what_decides_least_last() -> None:
    dialogue, asked = begin(), []
    while dialogue.waiting is not None:
        asked.append(waiting(dialogue))
        reply = dialogue.take((SOUND | FURTHER)[asked[-1]])
        assert not reply.wrong, reply.lines
    assert asked == [*SOUND, *FURTHER]


def test_what_is_answered_is_typed_as_a_file_has_it() -> None:
    dialogue = told_as(*SOUND.values())
    assert {dotted_path(path): text for path, text in dialogue.list_answers().items()} == SOUND | {
        "walls.W1.substrate.kind": "glass_mat_gypsum",
        "walls.W1.substrate.condition": "[]",
        "walls.W1.insulation.kind": "eps",
        "walls.W1.attachment.method": "adhesive_notched_trowel",
        "walls.W1.attachment.ribbon_direction": "vertical",
        "code.local_fasteners_required": "no",
        "code.construction_type": "VB",
        "code.occupancy_groups": "[R-2, B]",
        "walls.W1.drainage.kind": "adhesive_ribbons",
        "walls.W1.wrb.kind": "fluid_applied",
        "walls.W1.framing.kind": "cold_formed_steel",
    }


def test_a_question_that_an_answer_makes_due_is_asked_and_one_that_no_longer_applies_is_not() -> None:
    dialogue = told_as("Clinic", "existing coated wall")
    asked = []
    while waiting(dialogue).startswith("walls.W1.substrate"):
        asked.append(waiting(dialogue).rpartition(".")[2])
        dialogue.take("")
    assert asked == [*OLD_COATING]
    dialogue = told_as("Clinic", "12", "", "", "", "yes", "no", "yes", "no")
    assert [path[-1] for path in dialogue.asked[-5:]] == ["coating_removed", "lead_tested", "lead_found"] + [
        "asbestos_tested",
        "asbestos_found",
    ]
    while dialogue.waiting is not None:
        dialogue.take("")
    assert ("building", "built_year") in dialogue.asked
    assert ("building", "built_year") not in told_as(*SOUND.values()).asked


def test_homes_under_the_residential_code_have_no_construction_type() -> None:
    dialogue = up_to("walls.W1.drainage.kind", SOUND | {"code.model": "irc"})
    assert ("code", "edition") in dialogue.asked
    assert ("code", "construction_type") not in dialogue.asked


@pytest.mark.parametrize("line", ["", "   ", "tbd", "TBD"])
def test_an_empty_line_leaves_a_field_out_and_goes_on(line: str) -> None:
    dialogue = told_as(line)
    assert (waiting(dialogue), dialogue.list_answers()) == ("walls.W1.substrate.kind", {})


@pytest.mark.parametrize("line", ["mechanical", "MECHANICAL", "4", " 4 ", "Mechanical "])
def test_a_choice_is_taken_by_number_and_by_word(line: str) -> None:
    dialogue = up_to("walls.W1.attachment.method")
    dialogue.take(line)
    assert dialogue.list_answers()["walls", "W1", "attachment", "method"] == "mechanical"


@pytest.mark.parametrize("line", ["notched-trowel adhesive", "adhesive_notched_trowel", "Adhesive notched trowel"])
def test_a_choice_is_taken_as_it_is_shown_and_as_the_file_has_it(line: str) -> None:
    dialogue = up_to("walls.W1.attachment.method")
    dialogue.take(line)
    assert dialogue.list_answers()["walls", "W1", "attachment", "method"] == "adhesive_notched_trowel"


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        ("4", "[damp]"),
        ("1, 4", "[laitance, damp]"),
        ("damp, 1", "[damp, laitance]"),
        ("[damp, form release]", "[damp, form_release]"),
        ("damp; oil;", "[damp, oil]"),
        ("none", "[]"),
        ("0", "[]"),
        ("[]", "[]"),
    ],
)
def test_several_choices_are_taken_with_commas_between_them(line: str, typed: str) -> None:
    dialogue = up_to("walls.W1.substrate.condition")
    dialogue.take(line)
    assert dialogue.list_answers()["walls", "W1", "substrate", "condition"] == typed


def test_an_edition_is_taken_by_its_year_and_by_its_number() -> None:
    for line in ("2021", "7"):
        dialogue = up_to("code.edition")
        dialogue.take(line)
        assert dialogue.list_answers()["code", "edition"] == "2021"


@pytest.mark.parametrize(
    ("path", "line", "said"),
    [
        ("walls.W1.insulation.thickness", "2", "'2' has no unit (write 2 in or 2 mm)"),
        ("walls.W1.insulation.thickness", "2 lb", "'lb' is not known"),
        ("walls.W1.insulation.thickness", "900 in", "outside the range of this field"),
        (
            "walls.W1.attachment.method",
            "7",
            "'7' is not one of the choices; type a number 1 to 6 or a word of the list",
        ),
        (
            "walls.W1.attachment.method",
            "0",
            "'0' is not one of the choices; type a number 1 to 6 or a word of the list",
        ),
        (
            "walls.W1.substrate.condition",
            "damp, wet paint",
            "'damp, wet paint' is not one of the choices; type a number 0 to 12",
        ),
        ("code.local_fasteners_required", "maybe", "'maybe' is not one of the choices; type a number 1 to 2"),
        ("project.name", "Clinic \x1b[2J", "character U+001B is not allowed: it cannot be seen on paper"),
        ("project.name", "x" * 301, "the text is longer than 300 characters"),
    ],
)
def test_a_bad_answer_is_told_as_of_a_file_and_the_question_waits_on(path: str, line: str, said: str) -> None:
    dialogue = up_to(path)
    before = dialogue.list_answers()
    reply = dialogue.take(line)
    assert said in " ".join(reply.lines)
    assert (reply.wrong, reply.asks) == (True, False)
    assert (waiting(dialogue), dialogue.list_answers()) == (path, before)
    assert not dialogue.take("").wrong


def test_a_question_that_finds_no_answer_is_left_open_after_five_tries() -> None:
    dialogue = told_as("Clinic", *["yes"] * 4)
    assert waiting(dialogue) == "walls.W1.substrate.kind"
    reply = dialogue.take("yes")
    assert reply.lines[-1] == "Substrate: left open after 5 answers"
    assert (reply.wrong, reply.asks, waiting(dialogue)) == (True, True, "walls.W1.substrate.condition")
    # The tries are those of one question.
    assert told_as(*["yes"] * 4, dialogue=dialogue).waiting == dialogue.waiting
    assert waiting(dialogue) == "walls.W1.substrate.condition"


@pytest.mark.parametrize("word", ["<", "back", "BACK"])
def test_back_forgets_the_last_answer_and_asks_again(word: str) -> None:
    dialogue = told_as("Clinic", "concrete", "none")
    assert dialogue.take(word).lines == ["Back; the answer was: none; Enter keeps it, - clears it"]
    assert waiting(dialogue) == "walls.W1.substrate.condition"
    assert dialogue.take(word).lines == ["Back; the answer was: concrete; Enter keeps it, - clears it"]
    assert (waiting(dialogue), len(dialogue.list_answers())) == ("walls.W1.substrate.kind", 1)
    dialogue.take(word)
    assert dialogue.take(word).lines == ["This is the first question."]
    assert dialogue.list_answers() == {}
    assert dialogue.take("Pier").lines == []
    assert dialogue.list_answers() == {("project", "name"): "Pier"}


def test_enter_keeps_the_answer_gone_back_to_and_a_hyphen_clears_it() -> None:
    dialogue = told_as("Clinic", "concrete", "none", "<", "")
    assert waiting(dialogue) == "walls.W1.insulation.kind"
    assert dialogue.list_answers()["walls", "W1", "substrate", "condition"] == "[]"
    told_as("<", "<", "", dialogue=dialogue)
    assert waiting(dialogue) == "walls.W1.substrate.condition"
    assert dialogue.list_answers()["walls", "W1", "substrate", "kind"] == "concrete"
    told_as("<", "-", dialogue=dialogue)
    assert ("walls", "W1", "substrate", "kind") not in dialogue.list_answers()


def test_a_word_of_the_trade_is_told_as_it_was_read() -> None:
    assert told_as("Clinic").take("CMU").lines[0] == "Read as concrete masonry."
    assert told_as("Clinic").take("2").lines == []
    assert told_as("Clinic").take("concrete masonry").lines == []


def test_what_may_be_two_things_is_told_with_both() -> None:
    said = up_to("walls.W1.insulation.kind").take("polystyrene").lines
    assert " ".join(said).startswith("'polystyrene' may be eps or xps; type a number 1 to 5")


def test_a_wall_that_nothing_speaks_against_says_so_at_the_end() -> None:
    dialogue = begin()
    while dialogue.waiting is not None:
        dialogue.take((SOUND | FURTHER).get(waiting(dialogue), ""))
    said = " ".join(" ".join(dialogue.tell_verdict()).split())
    assert said.startswith("W1: not yet known; nothing known so far speaks against it; still to be shown: ")


def test_back_over_a_condition_asks_for_what_the_new_answer_makes_due() -> None:
    dialogue = told_as("1", dialogue=up_to("walls.W1.attachment.ribbon_direction"))
    told_as("<", "<", "adhesive_full_bed", dialogue=dialogue)
    assert waiting(dialogue) == "code.model"
    assert "vertical" not in dialogue.list_answers().values()


def test_the_manual_page_is_shown_and_the_question_put_again() -> None:
    dialogue = up_to("walls.W1.attachment.ribbon_direction")
    reply = dialogue.take("?")
    assert reply.lines[0] == "walls.*.attachment.ribbon_direction  Adhesive ribbon direction"
    assert "  only if   walls.*.attachment.method = adhesive_notched_trowel" in reply.lines
    assert (reply.wrong, reply.asks, waiting(dialogue)) == (False, True, "walls.W1.attachment.ribbon_direction")


def test_the_verdict_is_told_when_it_changes_and_only_then() -> None:
    dialogue = told_as("Clinic", "concrete", "none", "eps", "2 in")
    reply = dialogue.take("mechanical")
    assert reply.lines[0].startswith("W1: no (ATT-01a): ")
    assert any(line.startswith("   What to do: ") for line in reply.lines)
    assert dialogue.take("ibc").lines == []
    told_as("<", "<", dialogue=dialogue)
    assert dialogue.standing.verdict is Verdict.NOT_YET_KNOWN
    assert dialogue.take("adhesive_full_bed").lines == []


def test_each_stop_and_measure_is_told_once_and_all_stops_at_the_end() -> None:
    dialogue = told_as("Clinic", "concrete")
    assert [line[:19] for line in dialogue.take("damp").lines if line.startswith("W1")] == ["W1: no (ATT-06h): S"]
    assert [line[:24] for line in dialogue.take("xps").lines if line.startswith("W1")] == ["W1: measure (INS-02a): I"]
    dialogue.take("2 in")
    assert [line[:17] for line in dialogue.take("mechanical").lines if line.startswith("W1")] == ["W1: no (ATT-01a):"]
    told = [line[:17] for line in dialogue.tell_verdict() if line.startswith("W1")]
    assert told == ["W1: no (ATT-01a):", "W1: no (ATT-06h):"]


def test_no_question_beyond_the_stage_is_asked_of_a_wall_that_cannot_be() -> None:
    dialogue = begin()
    while dialogue.waiting is not None:
        dialogue.take((SOUND | {"walls.W1.attachment.method": "mechanical"}).get(waiting(dialogue), ""))
    assert dialogue.standing.verdict is Verdict.NO
    assert not {dotted_path(path) for path in dialogue.asked} & {*FURTHER}


def test_a_stop_that_waits_for_what_is_not_known_is_not_asked_about() -> None:
    dialogue = up_to("aesthetic_joint.depth", SOUND | FURTHER)
    dialogue.take("")
    assert dialogue.waiting is None


def test_all_unknown_ends_after_the_questions_of_the_stage_and_what_one_answer_settles() -> None:
    dialogue = begin()
    while dialogue.waiting is not None:
        dialogue.take("")
    assert len(dialogue.asked) <= 24
    assert dialogue.list_answers() == {}
    assert dialogue.tell_verdict()[0].startswith("W1: not yet known; pending: ")


@pytest.mark.parametrize("width", [40, 80])
def test_nothing_is_wider_than_the_terminal(width: int) -> None:
    dialogue = begin(width=width)
    lines = dialogue.greet()
    while dialogue.waiting is not None:
        lines += [*dialogue.ask(), *dialogue.take("?").lines]
        lines += dialogue.take("no such answer at all, whatever anybody may say or ask of it here").lines
        lines += dialogue.take((SOUND | FURTHER).get(waiting(dialogue), "")).lines
    assert [line for line in lines if len(line) > width] == []


def test_a_question_says_why_it_is_asked_of_whom_and_what_may_be_answered() -> None:
    assert up_to("walls.W1.attachment.ribbon_direction").ask() == [
        "7. Adhesive ribbon direction",
        "   Why: only vertical ribbons let water run down (EIFS manufacturer)",
        "    1 vertical",
        "    2 horizontal",
    ]
    assert up_to("building.eifs_top").ask()[-1] == "   Such as 31 ft"


def test_metric_work_is_shown_metric_examples() -> None:
    dialogue = Dialogue(project_schema(), judge, {("package", "purpose"): "design_draft"}, "si")
    while waiting(dialogue) != "building.eifs_top":
        dialogue.take("")
    assert dialogue.ask()[-1] == "   Such as 9.4 m"
