"""The questions to one party as a document, to be sent, printed, and filled in."""

from collections.abc import Iterator

from specgen.asking.questions import PartySheet, Question, Wanted
from specgen.documents.context import DocumentContext
from specgen.documents.document import facts
from specgen.documents.marks import tell_marks
from specgen.documents.numbering import number_blocks
from specgen.model.block import (
    Blank,
    Block,
    CheckBox,
    Document,
    Emphasis,
    Inline,
    Inlines,
    Paragraph,
    Part,
    Table,
    Text,
)
from specgen.model.value_text import long_date

_ID = "Questions"
_BEGINS_WORK = "applicator"  # the work that waits is its own
# The facts of the title block that an answer is given by; what is told of the submittal is not yet settled.
_FACTS = ("Project", "Project number", "Address", "Architect", "Contractor", "Date")
_QUESTIONS = ("No.", "Question", "Unit or form", "Example", "Holds up", "Answer")
_QUESTION_WIDTHS = (4, 36, 17, 11, 15, 17)
_WANTED = ("No.", "Document or information", "Holds up", "Sent, date")
_WANTED_WIDTHS = (4, 56, 24, 16)


def compose_questions(context: DocumentContext, sheet: PartySheet) -> Document:
    """The document of a party: whom it goes to, by when it is to be back, questions, and what is to be sent."""
    project, title = context.project, f"Questions for {_name_within(sheet.title)}"
    name = str(project.value(("project", "name")))
    number = project.get(("project", "number"))
    marks = tell_marks(context, "\n".join(one.name for one in sheet.wanted))
    blocks, legend = number_blocks(_list_blocks(sheet, marks), "plain", landscape=True)
    return Document(
        id=_ID,
        title=title,
        project=name,
        facts=_list_facts(context, sheet),
        blocks=blocks,
        legend=legend,
        firm=str(project.get(("parties", "applicator", "name")) or ""),
        running=(f"{name} | {number}" if number else name, title),
        foot=_ID,
        landscape=True,
    )


def _name_within(title: str) -> str:
    """A role within a title: `the architect`, `the EIFS manufacturer`."""
    return f"the {title if title[1:2].isupper() else title[:1].lower() + title[1:]}"


def _list_facts(context: DocumentContext, sheet: PartySheet) -> tuple[tuple[str, str], ...]:
    """The entries of the title block: the project, then who asks whom, and until when."""
    told = [(label, text) for label, text in facts(context) if label in _FACTS]
    told.append(("To", sheet.name or sheet.title))
    told.append(("Return to", sheet.return_to))
    if sheet.return_by:
        told.append(("Return by", long_date(sheet.return_by)))
    return tuple(told)


def _list_blocks(sheet: PartySheet, marks: str) -> Iterator[Block]:
    yield Paragraph((Text(_guide(sheet)),))
    yield Paragraph(tuple(_list_blanks(sheet)))
    if sheet.questions:
        yield Part((Text("Questions"),))
        rows = tuple(_set_question(number, one) for number, one in enumerate(sheet.questions, 1))
        yield Table(_head(_QUESTIONS), rows, _QUESTION_WIDTHS)
    if sheet.wanted:
        yield Part((Text("Documents and information to send"),))
        yield Table(
            _head(_WANTED),
            tuple(_set_wanted(number, one) for number, one in enumerate(sheet.wanted, 1)),
            _WANTED_WIDTHS,
        )
    if marks:
        yield Paragraph((Text(f"Marks: {marks}."),))


def _list_blanks(sheet: PartySheet) -> Iterator[Inline]:
    """Who answers and when; the day of return, where no date of the schedule tells it."""
    if sheet.return_by is None:
        yield from (Text("Return by: "), Blank("Return by", "date"), Text("  "))
    yield from (Text("Answered by: "), Blank("Answered by"), Text("  Date: "), Blank("Date of the answers", "date"))


def _guide(sheet: PartySheet) -> str:
    told = []
    if sheet.questions:
        told.append(
            "Answer in the last column, with the unit; leave blank what is not known. Holds up: the work that waits, "
            "and the rules and documents of the submittal by their codes."
        )
    if sheet.wanted:
        told.append("Send the documents and information listed with the answers.")
    if sheet.role == _BEGINS_WORK:
        told.append("Do not begin the work named under Holds up before the answer is received.")
    return " ".join(told)


def _head(titles: tuple[str, ...]) -> tuple[Inlines, ...]:
    return tuple((Text(title),) for title in titles)


def _set_question(number: int, one: Question) -> tuple[Inlines, ...]:
    """Number, question with its reason below it, form, example, what waits with the day, and the blank."""
    return (
        (Text(str(number)),),
        (Text(f"{one.question}\n"), Emphasis((Text(one.why),))),
        (Text(one.form),),
        (Text(one.example),),
        (Text(_tell_wait(one.holds_up, one)),),
        (Blank(f"Answer {number}", field=f"answer.{one.field}"),),
    )


def _set_wanted(number: int, one: Wanted) -> tuple[Inlines, ...]:
    return (
        (Text(str(number)),),
        (CheckBox(one.name),),
        (Text(_tell_wait(one.holds_up, one)),),
        (Blank(f"Sent {number}", "date"),),
    )


def _tell_wait(held: str, one: Question | Wanted) -> str:
    return f"{held}\nDue {long_date(one.due)}" if one.due else held
