"""What a template may use up is bounded before it is used: memory, work, size, depth. The bounds are ours."""

from pathlib import Path

import pytest

from specgen.documents import sandbox
from specgen.model.problem import Problem, Refused
from tests.documents.support import written

LOOP, END = "{% for a in range(1000) %}{% for b in range(1000) %}", "{% endfor %}{% endfor %}"
# A text of 65,536 letters, and a list of lists that has 2**1000 entries when it is looked through.
LONG = "{% set n = namespace(a='x') %}{% for i in range(16) %}{% set n.a = n.a ~ n.a %}{% endfor %}"
TREE = "{% set n = namespace(a=['x']) %}{% for i in range(1000) %}{% set n.a = [n.a, n.a] %}{% endfor %}"
WORK, LETTERS = "do more than a document can need", "makes more than 5,000,000 characters"

BOMBS = [
    ("{{ 'x'.center(1000000000) }}", "there is no 'center'"),
    ("{{ 'x'.ljust(1000000000) }}", "there is no 'ljust'"),
    ("{{ '{:>1000000000}'.format(1) }}", "there is no 'format'"),
    ("{{ '%1000000000d' % 5 }}", "% is for small numbers only"),
    ("{{ 'x' * 1000000000 }}", "* is for small numbers only"),
    ("{{ [1] * 1000000000 }}", "* is for small numbers only"),
    ("{{ ('x' | replace('x', 'xxxx')) }}", "nothing called 'replace'"),
    ("{{ 'x' | indent(1000000000) }}", "nothing called 'indent'"),
    ("{{ 'x' | batch(1000000000, 'x') }}", "nothing called 'batch'"),
    ("{{ 9 ** 9 ** 9 }}", "** is for small numbers only"),
    ("{{ 2000000000 }}", "a number is too large"),
    ("{{ 1" + "0" * 5000 + " }}", "a number is too long"),
    ("{% for i in range(100000) %}{% endfor %}", "more than 1,000 numbers"),
    ("{% set n = namespace(a='xx') %}{% for i in range(40) %}{% set n.a = n.a ~ n.a %}{% endfor %}", "joins more than"),
    ("{% set n = namespace(a='xx') %}{% for i in range(40) %}{% set n.a = n.a + n.a %}{% endfor %}", "joins more than"),
    ("{% set a %}words{% endset %}" + "{% set a %}{{ a }}{{ a }}{% endset %}" * 40, LETTERS),
    (TREE + "{{ n.a }}", "a list cannot be printed"),
    (TREE + "{{ n.a | string }}", "a list cannot be printed"),
    (TREE + "{{ n.a | join }}", "a list cannot be printed"),
    (TREE + "{{ n.a == n.a }}", "a list cannot be compared"),
    (TREE + "{{ n.a in [n.a] }}", "a list cannot be compared"),
    (LOOP + "{% for c in range(1000) %}{% endfor %}" + END, WORK),
    (LOOP + "{% if project.name %}{% endif %}" + END, WORK),
    (LOOP + "{% if limit('gloss.dry') %}{% endif %}" + END, WORK),
    (LOOP + "{% if steps() %}{% endif %}" + END, WORK),
    (LOOP + "{{ 1 }}" + END, "prints more than 100,000 values"),
    (LOOP + "y" * 10_000 + END, LETTERS),
    ("{% set z %}" + LOOP + "y" * 10_000 + END + "{% endset %}", LETTERS),
    (LONG + LOOP + "{% if n.a | upper %}{% endif %}" + END, LETTERS),
    (LONG + LOOP + "{% if 'y' in n.a %}{% endif %}" + END, WORK),
    (LOOP + "{% if 'x' in range(999) %}{% endif %}" + END, WORK),
    ("{% for i in range(1000) %}{% set t = table(view.references) %}" + "{{ t }}\n\n" * 200 + "{% endfor %}", "prints"),
    ("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "calls itself without end"),
    ("{% macro m(n) %}{% if n %}{{ m(n - 1) ~ m(n - 1) ~ m(n - 1) }}{% endif %}{% endmacro %}{{ m(18) }}", WORK),
    ("{% for w in walls recursive %}{{ loop(walls) }}{% endfor %}", "a loop does not call itself"),
    ("{{ 1 }}" * 200_000, "more than 300,000 characters"),
    ("{{a.b}}" * 20_000, "more than 30,000 parts"),
    ("{{ " + "(" * 3000 + "1" + ")" * 3000 + " }}", "nested too deep"),
    ("{{ " + "[" * 3000 + "]" * 3000 + " }}", "nested too deep"),
    ("{{ " + "not " * 3000 + "1 }}", "nested too deep"),
    ("{{ 1" + " + 1" * 3000 + " }}", "nested too deep"),
    ("{{ a" + ".b" * 3000 + " }}", "nested too deep"),
    ("{% if 1 %}" * 200 + "{% endif %}" * 200, "nested too deep"),
    ("{% for a in walls %}" * 30 + "{% endfor %}" * 30, "nested too deep"),
    ("{% if 0 %}" + "{% elif 0 %}" * 3000 + "{% endif %}", "{% elif %} follow one another"),
    ("- " * 3000 + "x\n", "nested too deep"),
    (LOOP + "\\" + END, "a paragraph is too long for the signs in it"),
    (LOOP + "x\n" + END, "makes more than 200,000 lines"),
]


def told(folder: Path, words: str) -> Problem:
    with pytest.raises(Refused) as refused:
        written(folder, words)
    (problem,) = refused.value.problems
    assert problem.file == "D99.md.j2"
    assert problem.hint
    return problem


@pytest.mark.parametrize(("words", "said"), BOMBS, ids=[words[:50] for words, _ in BOMBS])
def test_a_template_cannot_use_up_memory_or_time(
    words: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    if said == WORK:  # counted alike, and met sooner
        monkeypatch.setattr(sandbox, "MOST_WORK", sandbox.MOST_WORK // 10)
    assert said in told(tmp_path, words).message


# A macro that calls itself n times, and one that is called 30 times and is done each time.
DEEP = "{% macro deep(n) %}{% if n > 1 %}{{ deep(n - 1) }}{% endif %}{% endmacro %}"
DONE = "{% macro done() %}{% endmacro %}{% for i in range(30) %}{{ done() }}{% endfor %}"


def test_macros_run_within_one_another_twenty_deep_and_no_deeper_however_many_are_done(tmp_path: Path) -> None:
    assert written(tmp_path, f"{DEEP}{DONE}{{{{ deep(20) }}}}It is read.").blocks
    assert "calls itself without end" in told(tmp_path, f"{DEEP}{{{{ deep(21) }}}}").message
    assert "calls itself without end" in told(tmp_path, f"{DEEP}{DONE}{{{{ deep(21) }}}}").message


def test_a_text_that_is_refused_in_its_middle_changes_nothing_of_the_next(tmp_path: Path) -> None:
    words = "1. one\n   1. **two**\n\nthree"
    before = written(tmp_path, words).blocks
    assert [type(block).__name__ for block in before] == ["Item", "Item", "Paragraph"]
    told(tmp_path, "- " * 3000 + "x\n")
    assert written(tmp_path, words).blocks == before


def test_the_largest_template_does_a_hundredth_of_the_work_that_is_refused(tmp_path: Path) -> None:
    # The flashings of the largest example take 110,000 steps, measured once; the bound is ours.
    loop = "{% for a in range(11) %}{% for b in range(1000) %}" + "{% for c in range(10) %}{% endfor %}" + END
    assert written(tmp_path, f"{loop}It is read.").blocks
    assert WORK in told(tmp_path, LOOP + "{% for c in range(1000) %}{% endfor %}" + END).message
