"""`rules`, `fields` and `matrix` as data, and by words: keys as the help names them, values as the manual has them."""

import json
import re
from typing import Any

import pytest

from tests.running import run_main


def read_data(capsys: Any, *words: str) -> Any:
    done = run_main(capsys, *words, "--format", "json")
    assert (done.code, done.err) == (0, "")
    return json.loads(done.out)


def test_a_field_as_data_has_what_its_page_tells(capsys: Any) -> None:
    assert read_data(capsys, "fields", "joints.J1.at") == {
        "format": 1,
        "fields": [
            {
                "path": "joints.*.at",
                "label": "Joint position",
                "why": "distance from the lower left corner of the elevation",
                "kind": "quantity",
                "units": ["ft", "m"],
                "choices": [],
                "refers_to": None,
                "least": "0 ft",
                "most": "3000 ft",
                "stage": "work",
                "owed_by": "architect",
                "condition": "joints.*.runs != around_opening",
                "default": None,
                "file": "project",
                "example": "12 ft",
            }
        ],
    }


def test_the_help_names_each_key_of_the_data(capsys: Any) -> None:
    for verb, rows in (("fields", "fields"), ("rules", "rules")):
        with pytest.raises(SystemExit):
            run_main(capsys, verb, "--help")
        told = set(re.findall(r"\w+", capsys.readouterr().out))
        data = read_data(capsys, verb)
        one = data[rows][0]
        named = {*data, *one, *(key for clause in one.get("clauses", ()) for key in clause)}
        assert named <= told


def test_the_lists_as_data_are_those_of_the_text(capsys: Any) -> None:
    rules = run_main(capsys, "rules").out.splitlines()
    assert [f"{rule['code']}  {rule['title']}" for rule in read_data(capsys, "rules")["rules"]] == rules
    below = [line.split()[0] for line in run_main(capsys, "fields", "walls.*.framing").out.splitlines()]
    assert [field["path"] for field in read_data(capsys, "fields", "walls.*.framing")["fields"]] == below


def test_a_rule_as_data_has_its_clauses_with_severity_basis_and_remedy(capsys: Any) -> None:
    (rule,) = read_data(capsys, "rules", "att-01a")["rules"]
    assert (rule["code"], rule["title"]) == ("ATT-01", "Adhesive attachment only")
    clause = rule["clauses"][0]
    assert (clause["code"], clause["severity"]) == ("ATT-01a", "stop")
    assert clause["remedy"].startswith("Attach the board with adhesive only;")
    page = run_main(capsys, "rules", "ATT-01").out
    assert all(text in page for text in (rule["manual"], rule["remedy"], clause["says"], clause["basis"]))
    # A figure of the trade stands in its place, here as in the page.
    assert "straightedge.long" not in json.dumps(read_data(capsys, "rules"))


def test_words_are_looked_for_in_names_reasons_and_choices(capsys: Any) -> None:
    def paths(*words: str) -> set[str]:
        return {line.split()[0] for line in run_main(capsys, "fields", *words).out.splitlines() if line}

    assert "walls.*.attachment.adhesive_kind" in paths("FOAM")  # a choice
    assert "schedule.later_trades" in paths("window cleaning")  # a choice written with an underscore
    assert "schedule.weather_days" in paths("float")  # the reason
    assert "joints.*.at" in paths("joint", "position")  # the label
    assert paths("joint", "position") <= paths("position")


def test_words_are_looked_for_in_titles_manuals_and_remedies(capsys: Any) -> None:
    def codes(*words: str) -> set[str]:
        return {line.split()[0] for line in run_main(capsys, "rules", *words).out.splitlines()}

    assert "ATT-01" in codes("adhesive attachment")  # the title
    assert "ATT-05" in codes("weakest layer")  # the manual
    assert "ATT-04" in codes("glass-mat", "gypsum")  # the remedy
    listed = codes("ATT")
    assert {"ATT-01", "ATT-09"} <= listed


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("fields", "joints.*.widht"), "did you mean joints.*.width?"),
        (("fields", "xylophone", "orchestra"), "there is no field 'xylophone orchestra'"),
        (("rules", "ATT-1"), "did you mean ATT-01?"),
        (("rules", "XYL-99"), "there is no rule 'XYL-99'"),
        (("rules", "xylophone"), "no rule tells of 'xylophone'"),
    ],
)
def test_what_nothing_tells_of_is_answered_with_the_nearest(words: tuple[str, ...], hint: str, capsys: Any) -> None:
    done = run_main(capsys, *words)
    assert (done.code, done.out) == (2, "")
    assert hint in done.err


def test_the_matrix_as_data_has_each_pair_with_rule_and_measure(capsys: Any) -> None:
    made = read_data(capsys, "matrix")
    assert made["format"] == 1
    assert len(made["substrates"]) == 14
    assert {len(row) for row in made["substrates"].values()} == {6}
    assert made["substrates"]["concrete"]["adhesive_full_bed"] == {"answer": "yes", "rule": None, "measure": None}
    stopped = made["substrates"]["concrete"]["mechanical"]
    assert (stopped["answer"], stopped["rule"]) == ("no", "ATT-01a")
    # An old coating needs pull tests: a caution of the rule, and so a measure.
    coated = made["substrates"]["existing_coated"]["adhesive_full_bed"]
    assert (coated["answer"], coated["rule"]) == ("measure", "ATT-05e")
    assert "pull tests" in coated["measure"]


def test_the_matrix_says_what_a_measure_is_and_lists_each(capsys: Any) -> None:
    out = run_main(capsys, "matrix").out
    table, note, measures = out.split("\n\n")
    for word in ("yes", "measure", "no"):
        assert re.search(rf"^{word} ", note, re.M)
    named = set(re.findall(r"[A-Z]{3}-\d\d[a-z]", table))
    assert set(re.findall(r"^  ([A-Z]{3}-\d\d[a-z])  \S", measures, re.M)) == named
    assert max(map(len, (note + measures).splitlines())) <= 120
