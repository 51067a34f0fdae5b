"""A mistake in a template is one message with its line, in the words of the trade's documents. The behavior is ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.problem import Problem, Refused
from tests.documents.support import written

# Words of other languages than that of the trade: none of them reaches the author of a template.
FOREIGN = ("jinja", "Jinja", "object", "argument", "attribute", "Error", "None", "tuple", "dict", "method", "loader")


def told(folder: Path, words: str, numbering: str = "plain") -> Problem:
    with pytest.raises(Refused) as refused:
        written(folder, words, numbering=numbering)
    (problem,) = refused.value.problems
    assert problem.file == "D99.md.j2"
    assert problem.hint
    assert not [word for word in FOREIGN if word in f"{problem.message} {problem.hint}"]
    return problem


# What the template says (its first line is line 6 of the file), what is told, the remedy, and the line.
MISTAKES: list[tuple[str, str, str, int]] = [
    ("text\n{{ project.name }\n", "'}' does not fit here", "brackets", 7),
    ("{% if stops %}\ntext\n", "{% if %} is not closed", "{% endif %}", 7),
    ("{{ project.name", "is not closed before the template ends", "close it", 6),
    ("text\n{# remark\n", "{# is not closed", "#}", 7),
    ("{{ 'x }}\n", "cannot be read", "quotes", 6),
    ("{% fro wall in walls %}\n", "there is no tag 'fro'", "did you mean for?", 6),
    ("{% endfor %}\n", "{% endfor %} belongs to nothing", "opened above", 6),
    ("{% for wall on walls %}{% endfor %}\n", "'on' does not fit here", "words before it", 6),
    ("text\n\n{{ projekt.name }}\n", "there is no 'projekt' here", "did you mean project?", 8),
    ("{{ project.nmae }}\n", "there is no 'nmae' here", "did you mean name?", 6),
    ("{{ walls.W9.mark }}\n", "there is no 'W9' here", "known: W1", 6),
    ("{{ view.joint }}\n", "there is no 'joint' here", "did you mean joints?", 6),
    ("{{ stops[3].code }}\n", "there is no 3 in a list of 0", "", 6),
    ("{{ project.name | uper }}\n", "nothing called 'uper' to write after |", "did you mean upper?", 6),
    ("{{ project.name is givn }}\n", "nothing called 'givn' to write after is", "did you mean given?", 6),
    ("{{ 'x' | upper(2) }}\n", "upper takes no value", "", 6),
    ("{{ ['x'] | join('a', 'b') }}\n", "join takes one value or none", "", 6),
    ("{{ limit() }}\n", "limit() takes the name of a limit", "limit('gloss.dry')", 6),
    ("{{ limit('gloss.dry', 2) }}\n", "limit() takes the name of a limit", "limit('gloss.dry')", 6),
    ("{{ limit('gloss.drry') }}\n", "there is no limit 'gloss.drry'", "did you mean gloss.dry?", 6),
    ("{{ figure(2) }}\n", "the name of a limit must be words", "quotes", 6),
    ("{{ computed('power-line') }}\n", "no calculation of the whole project 'power-line'", "power-line-distance", 6),
    ("{{ steps(1) }}\n", "steps() takes nothing", "steps()", 6),
    ("{{ sign('architekt') }}\n", "there is no party 'architekt'", "did you mean architect?", 6),
    ("{{ blank('Day', 'day') }}\n", "a blank is for text or for a date", "'date'", 6),
    ("{{ table(project) }}\n", "table() sets a view", "table(view.joints)", 6),
    ("{{ table(view.verdicts, 5) }}\n", "the caption of a table must be words", "quotes", 6),
    ("{{ table(view.verdicts, [1]) }}\n", "the caption of a table must be words", "quotes", 6),
    ("{{ table(view.verdicts, heading='x') }}\n", "table() takes view, caption if wanted", "", 6),
    ("Words {{ table(view.verdicts) }}\n", "a table stands within a line", "line of its own", 6),
    ("x\n\nA {{ page_break }} b\n", "a new page stands within a line", "line of its own", 8),
    ("{{ stops }}\n", "a list cannot be printed", "{% for", 6),
    ("{{ steps() }}\n", "a list cannot be printed", "{% for", 6),
    ("{{ steps()[0] }}\n", "a record cannot be printed", "name one of: name, work, title", 6),
    ("{{ steps }}\n", "steps without brackets cannot be printed", "steps(...)", 6),
    ("{{ project }}\n", "the section project cannot be printed", "name one of: name, number, address", 6),
    ("{{ walls }}\n", "a list cannot be printed", "{% for", 6),
    ("{{ view.joints }}\n", "a table cannot be printed", "table(view.NAME)", 6),
    ("{{ verdicts }}\n", "a list cannot be printed", "{% for", 6),
    ("{{ stops == cautions }}\n", "a list cannot be compared", "single values", 6),
    ("{{ 'a' < 5 }}\n", "these two have no order", "numbers with numbers", 6),
    ("{% for x in 5 %}{% endfor %}\n", "'5' has no entries", "such as walls", 6),
    ("{% for x in 'abc' %}{% endfor %}\n", "'abc' has no entries", "such as walls", 6),
    ("{% for a, b, c in verdicts.items() %}{% endfor %}\n", "does not come apart into 3 names", "whole", 6),
    ("{{ [] | first }}\n", "the list is empty", "{% if %}", 6),
    ("{{ project.name() }}\n", "'Trial' takes no brackets", "leave the brackets out", 6),
    ("{% macro m(a) %}{{ a }}{% endmacro %}\n{{ m(1, 2) }}\n", "the macro m does not fit", "stands: a", 7),
    ("{% macro m(a) %}{{ a }}{% endmacro %}\n{{ m() }}\n", "'a' is not given to this macro", "brackets", 6),
    ("{{ 1 // 0 }}\n", "divided by zero", "", 6),
    ("{{ weather.max_spray_wind * 2 }}\n", "* is for small numbers only", "computed()", 6),
    ("x\n{% include 'other' %}\n", "takes nothing from another file", "copy the words", 7),
    ("{% import 'os' as os %}\n", "takes nothing from another file", "copy the words", 6),
    ("{% block a %}{% endblock %}\n", "not for templates of documents", "leave it out", 6),
    ("{{ walls[1:2] }}\n", "not cut by [ : ]", "loop.index", 6),
    ("{{ limit(*stops) }}\n", "a star stands between brackets", "one by one", 6),
    ("x\n\n{{ ref('Weathr') }}\n\n# Weather\n", "refers to 'Weathr'", "did you mean Weather?", 8),
    ("1. a\n   1. b\n      1. c\n         1. d\n", "more than three levels deep", "less deep", 9),
    ("{{ '\ue0001\ue001' }}\n", "cannot be seen", "delete", 6),
    ("{{ '\\ud800' }}\n", "cannot be seen", "delete", 6),
    ("{{ ''.__class__.__mro__ }}\n", "there is no '__class__'", "", 6),
    ("{{ project.__init__.__globals__ }}\n", "there is no '__init__'", "known: name", 6),
    ("{{ cycler(1) }}\n", "there is no 'cycler' here", "", 6),
]


@pytest.mark.parametrize(("words", "said", "remedy", "line"), MISTAKES, ids=[m[0].strip()[:40] for m in MISTAKES])
def test_a_mistake_is_told_with_line_and_remedy(words: str, said: str, remedy: str, line: int, tmp_path: Path) -> None:
    problem = told(tmp_path, words)
    assert said in problem.message
    assert remedy in problem.hint
    assert problem.line == line


@pytest.mark.parametrize("words", ["1. one\n", "## Article\n", "1. a\n   1. b\n"])
def test_a_three_part_document_begins_with_a_heading(words: str, tmp_path: Path) -> None:
    assert "begins with no heading" in told(tmp_path, words, "three_part").message


GIVEN: dict[str, Any] = {"project": {"name": "**Mill** House"}}


def test_a_value_beside_a_rendered_piece_is_never_read_as_markup(tmp_path: Path) -> None:
    words = "{% set a %}{{ project.name }}{% endset %}{{ project.name ~ a }}\n"
    (block,) = written(tmp_path, words, GIVEN).blocks
    assert "".join(getattr(part, "text", "?") for part in block.content) == "**Mill** House**Mill** House"  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("words", "printed"),
    [
        ("{{ 1 < 2 }} {{ 'a' in 'b' }}\n", "yes no"),
        ("{% for mark, said in verdicts.items() %}{{ mark }}: {{ said }}{% endfor %}\n", "W1: not yet known"),
        ("{{ 'x' if walls | length > 5 }}.\n", "."),
        ("{% set n = namespace(count=1) %}{% set n.count = n.count + 2 %}{{ n.count }}\n", "3"),
        ("{% for n in range(1, 4) %}{{ n }}{{ loop.cycle('a', 'b') }}{% endfor %}\n", "1a2b3a"),
        (
            "{{ ['a'] | listed }}; {{ ['a', 'b'] | listed }}; {{ ['a', 'b', 'c'] | listed }}\n",
            "a; a and b; a, b, and c",
        ),
        ("{{ walls | join(', ') }} {{ walls['W1'] == 'W1' }} {{ 'W1' in walls }}\n", "W1 yes yes"),
        ("{% filter upper %}a{{ 'b' }}{% endfilter %}\n", "Ab"),
        ("{% macro m(a, b='y') %}{{ a }}{{ b }}{% endmacro %}{{ m('x') }}\n", "xy"),
    ],
)
def test_what_templates_may_do_is_done(words: str, printed: str, tmp_path: Path) -> None:
    (block,) = written(tmp_path, words).blocks
    assert "".join(getattr(part, "text", "?") for part in block.content) == printed  # type: ignore[union-attr]
