"""The tests of the work in place: one matrix of test, standard, frequency, limit, by whom, form."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.sentences import Sentences
from specgen.documents.steps import applies
from specgen.model.standard import FieldTest, Sentence


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each test that the work on any wall needs, in the order of the work."""
    sentences = Sentences(context, composer)
    walls = context.project.members[("walls",)]
    lines = []
    for test in context.standards.field_tests.values():
        taking = [wall for wall in walls if applies(test.when, context, wall)]
        if taking:
            lines.append(_line(sentences, test, taking))
    header = ("Test", "Method", "Frequency", "Limit", "By", "Form")
    return TableView(header, tuple(lines), (23, 17, 20, 22, 11, 7))


def _line(sentences: Sentences, test: FieldTest, walls: list[str]) -> tuple[Any, ...]:
    def cell(sentence: Sentence) -> Any:
        said = sentences.lines(f"field_tests.yaml: {test.name}", sentence, walls)
        return sentences.composer.inlines("; ".join(said))

    return (
        test.test,
        cell(Sentence(test.standard)),
        cell(Sentence(test.frequency)),
        cell(test.limit),
        test.by,
        test.form,
    )
