"""The tests of the work in place: one matrix of test, standard, frequency, limit, by whom, form."""

from collections.abc import Iterable, Iterator
from functools import partial
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.sentences import Sentences
from specgen.documents.template_functions import Function
from specgen.documents.views._film import reads_film_each
from specgen.documents.views._inspection import name_inspection_section
from specgen.documents.views._not_shown import name_not_shown
from specgen.documents.views._sealant_tests import count_sealant_tests
from specgen.model.standard import FieldTest, Sentence
from specgen.recording.acceptance_lines import count_asked, list_lines, names_mean
from specgen.scheduling.applying import applies


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each test that the work on any wall needs, in the order of the work; none without a limit."""
    tests = list_tests(Sentences(context, composer), "field_tests", context.standards.field_tests.values())
    header = ("Test", "Method", "Frequency", "Limit", "By", "Form")
    return TableView(header, tuple(line for _, line in tests), (17, 20, 15, 29, 11, 8))


def list_tests(
    sentences: Sentences, table: str, tests: Iterable[FieldTest]
) -> Iterator[tuple[FieldTest, tuple[Any, ...]]]:
    """Each test that the work on any wall needs, with its cells: test, method, frequency, limit, by, form."""
    context = sentences.context
    sentences.names |= {
        "special_inspection": name_inspection_section(context),
        "sealant_tests": count_sealant_tests(context),
        "not_on_mockup": name_not_shown(context),
        "readings_of": Function(
            "readings_of", ("a criterion",), run=lambda criterion: str(count_readings(context, criterion))
        ),
        "film_each": reads_film_each(context),
        "mean_of": Function("mean_of", ("a criterion",), run=partial(is_of_mean, context)),
    }
    walls = context.project.members[("walls",)]
    for test in tests:
        conditions = (context.standards.steps[test.step].when, test.when)
        taking = [wall for wall in walls if all(applies(one, context.project, wall) for one in conditions)]
        if taking and (line := _line(sentences, f"{table}.yaml: {test.name}", test, taking))[3]:
            yield test, line


def count_readings(context: DocumentContext, criterion: str) -> int:
    """How often the acceptance form reads a criterion, by which the wall is read too; with what the project adds."""
    lines, standard = list_lines(context.project, context.standards), context.standards.criteria[criterion]
    return count_asked(standard) + next((line.extra for line in lines if line.criterion == criterion), 0)


def is_of_mean(context: DocumentContext, criterion: str) -> bool:
    """Whether the project judges a criterion of the mockup by the mean of its readings, and so the wall."""
    lines = list_lines(context.project, context.standards)
    return any(names_mean(own) for line in lines if line.criterion == criterion for own in line.own)


def _line(sentences: Sentences, place: str, test: FieldTest, walls: list[str]) -> tuple[Any, ...]:
    def cell(sentence: Sentence) -> Any:
        said = sentences.lines(place, sentence, walls)
        return sentences.composer.inlines("; ".join(said))

    return (
        test.test,
        cell(Sentence(test.standard)),
        cell(Sentence(test.frequency)),
        cell(test.limit),
        _maker(sentences.context, test),
        test.form,
    )


def _maker(context: DocumentContext, test: FieldTest) -> str:
    """Who makes a test: the applicator where nobody inspects."""
    nobody = context.project.get(("contract", "inspection_level")) == "none"
    return "applicator" if nobody and not context.project.get(("parties", "inspector", "name")) else test.by
