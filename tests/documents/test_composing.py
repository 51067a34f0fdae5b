"""Templates to trees: what is printed stays itself, what is wrong is told with template and line."""

from pathlib import Path

import pytest

from specgen.documents.catalogue import templates
from specgen.formats import text
from specgen.model.block import Article, Item, Letters, Note, Paragraph, Part, Table, Value
from specgen.model.problem import Refused
from specgen.model.source import Kind
from tests.documents.support import AWKWARD, written


def test_text_of_the_user_is_never_parsed_as_markup(tmp_path: Path) -> None:
    document = written(tmp_path, "# Head\n1. {{ project.name }}\n", {"project": {"name": AWKWARD}})
    item = document.blocks[1]
    assert isinstance(item, Item)
    assert item.content == (Value(AWKWARD, about="Project name"),)


def test_an_absent_value_prints_its_label_in_brackets(tmp_path: Path) -> None:
    document = written(tmp_path, "{{ weather.max_spray_wind }}\n")
    assert document.blocks == (
        Paragraph((Value("[Maximum wind while spraying]", open=True, asks="weather.max_spray_wind"),)),
    )


def test_a_default_names_common_practice_and_a_project_figure_nothing(tmp_path: Path) -> None:
    words = "{{ primer.dry_hours }} {{ gloss.dry_hours }}\n"
    document = written(tmp_path, words, {"primer": {"dry_hours": 20}})
    own, practice = (part for part in document.blocks[0].content if isinstance(part, Value))  # type: ignore[union-attr]
    assert (own.text, own.source) == ("20 h", None)
    assert practice.text == "24 h"
    assert practice.source is not None
    assert practice.source.kind is Kind.UNVERIFIED
    assert practice.source.behind is not None
    assert practice.source.behind.kind is Kind.PRACTICE
    assert document.blocks[0].content[-1] == Letters("p")  # type: ignore[union-attr]
    assert document.legend[0][0] == "p"


def test_open_values_are_equal_to_nothing_and_false(tmp_path: Path) -> None:
    words = "{% if mockup.kind == 'in_place' or mockup.kind or mockup.kind is given %}wrong{% else %}right{% endif %}\n"
    assert "right" in text.write_text(written(tmp_path, words))


def test_headings_lists_quotes_and_tables_become_their_blocks(tmp_path: Path) -> None:
    words = "# A\n## B\n1. one\n   1. deep\n2. two\n\n> said\n\n{{ table(view.verdicts) }}\n"
    kinds = [type(block) for block in written(tmp_path, words).blocks]
    assert kinds == [Part, Article, Item, Item, Item, Note, Table]


def test_a_three_part_document_is_numbered_as_specifications_are(tmp_path: Path) -> None:
    words = "# A\n## B\n1. one\n   1. deep\n\nword\n\n1. two\n## C\n1. three\n# D\n## E\n"
    document = written(tmp_path, words, numbering="three_part")
    numbers = [getattr(block, "number", "") for block in document.blocks[1:]]
    assert numbers == ["PART 1", "1.01", "A.", "1.", "", "B.", "1.02", "A.", "PART 2", "2.01"]


def test_a_reference_prints_the_number_of_its_article(tmp_path: Path) -> None:
    document = written(tmp_path, "# A\n## Weather\n1. See {{ ref('Weather') }}.\n", numbering="three_part")
    assert "See 1.01." in text.write_text(document)


@pytest.mark.parametrize(
    ("words", "line"),
    [
        ("# A\n{% if %}\n", 7),
        ("# A\n\n{{ nothing_there }}\n", 8),
        ("{{ weather.no_such_field }}\n", 6),
        ("{{ table(view.no_such_view) }}\n", 6),
        ("{{ limit('no.such') }}\n", 6),
        ("{% for x in 5 %}{% endfor %}\n", 6),
    ],
)
def test_a_mistake_in_a_template_is_told_with_template_and_line(words: str, line: int, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        written(tmp_path, words)
    assert refused.value.problems[0].file == "D99.md.j2"
    assert refused.value.problems[0].line == line


@pytest.mark.parametrize(
    "words", ["{{ project.__class__ }}\n", "{{ ''.__class__.__mro__ }}\n", "{{ project._sight.project }}\n"]
)
def test_a_template_sees_only_what_it_is_given(words: str, tmp_path: Path) -> None:
    with pytest.raises(Refused):
        written(tmp_path, words)


def test_raw_html_is_words(tmp_path: Path) -> None:
    assert "<b>bold</b>" in text.write_text(written(tmp_path, "<b>bold</b>\n"))


@pytest.mark.no_cover
def test_a_sentence_that_holds_for_one_wall_names_it(tmp_path: Path) -> None:
    walls = {"W2": {"substrate": {"kind": "plywood"}, "attachment": {"method": "adhesive_full_bed", "cure_hours": 48}}}
    document = written(
        tmp_path,
        "{% for s in steps() %}{% for t in s.items %}\n1. {{ t }}\n{% endfor %}{% endfor %}\n",
        {"walls": walls},
    )
    said = text.write_text(document)
    assert "Wall W2: Measure moisture of wood panels" in said
    assert said.count("Rasp and level the entire face.") == 1


def test_a_mark_leads_to_what_it_names(tmp_path: Path) -> None:
    words = "{{ elevations.E1.wall }} is of {{ elevations.E1.wall.substrate.kind }}.\n"
    assert "W1 is of concrete." in text.write_text(written(tmp_path, words, {"elevations": {"E1": {"wall": "W1"}}}))


def test_a_list_is_looked_through_and_told_one_by_one_and_an_open_one_is_empty(tmp_path: Path) -> None:
    words = "{% for part in mockup.includes %}[{{ part }}]{% endfor %}{{ 'sealant_joint' in mockup.includes }}\n"
    given = {"mockup": {"includes": ["sealant_joint", "opening"]}}
    said = text.write_text(written(tmp_path, words, given))
    assert "[sealant_joint][opening]yes" in said.replace("sealant joint", "sealant_joint")
    assert text.write_text(written(tmp_path, words)).endswith("no\n")


def test_a_value_is_compared_with_a_word_and_with_another_value(tmp_path: Path) -> None:
    words = "{{ a == 'concrete' }}, {{ a == 'plywood' }}, {{ a == walls.W2.substrate.kind }}\n"
    more = {"W2": {"substrate": {"kind": "concrete"}, "attachment": {"method": "adhesive_full_bed"}}}
    words = "{% set a = walls.W1.substrate.kind %}" + words
    assert "yes, no, yes" in text.write_text(written(tmp_path, words, {"walls": more}))


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("***\n", "the template makes a 'hr', which documents do not have"),
        (
            "**See {{ ref('Nowhere') }}**\n",
            "the template cannot be used: it refers to 'Nowhere', and the document has no such heading",
        ),
        ("- " * 3000 + "x\n", "the template cannot be used: its lists or marks are nested too deep"),
    ],
)
def test_what_no_document_can_hold_is_refused(words: str, said: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        written(tmp_path, words)
    assert [problem.message for problem in refused.value.problems] == [said]


def test_two_templates_of_one_id_are_refused_with_the_file(tmp_path: Path) -> None:
    (tmp_path / "documents").mkdir()
    for name in ("D01.md.j2", "D01.old.md.j2"):
        (tmp_path / "documents" / name).write_text("---\nid: D01\ntitle: Trial\norder: 1\n---\n", "utf-8")
    with pytest.raises(Refused) as refused:
        templates(tmp_path)
    (problem,) = refused.value.problems
    assert str(problem).endswith("two templates have the id D01 (give one another id)")
