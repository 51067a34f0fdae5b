"""The words of a question: what is asked of which member, why, in which form, and what waits for the answer."""

import re

from specgen.asking.proposals import tell_proposal
from specgen.asking.tables import Table, find_table
from specgen.documents.context import DocumentContext
from specgen.documents.field_units import name_unit
from specgen.documents.marks import name_member
from specgen.documents.members import span_marks
from specgen.documents.parties import name_role
from specgen.documents.question_text import list_answers, word_question
from specgen.judging.registry import load_rules
from specgen.model.field import Field, Path
from specgen.model.figure_text import fill_figures
from specgen.model.value_text import words
from specgen.terminal.field_lines import example_text

# So many names stand beside the mark of a wall, so many marks in the form of a reference.
_MOST_FACES, _MOST_MARKS = 4, 12
# So many documents are told beside the rules that wait.
_MOST_DOCUMENTS = 5
_FORMS = {
    "yes_no": "yes or no",
    "date": "date: year-month-day",
    "time": "time of day, 24 h",
    "bearing": "compass point, or degrees from north",
    "file": "name of the file",
    "text": "words",
}
_MARKS = re.compile(r"\(([A-Z]+\d+(?:, [A-Z]+\d+){2,})\)")
_SEVERAL = "comma between"
# Behind one of these the name of what a label counts has ended: `coats of primer`.
_ENDS = re.compile(r" (?:of|in|on|at|to|for|from|with|per|above|below|between|required) ")
_ASKING = re.compile(r"(?:Who|Which|What|How|When|Where|Why|Is|Are|Does|Do|Has|Have|Was|Were) ")


def ask(context: DocumentContext, field: Field, path: Path, proposed: str) -> str:
    """`Wall W1 (South face): What is the flame spread index of the board?`; with the figure proposed."""
    asked = word_question(context, field, path) or ask_by_label(field)
    member = tell_member(context, field, path)
    end = "" if asked.endswith("?") else "."
    confirm = f"{end} {tell_proposal(field, proposed)}" if proposed else ""
    return f"{member}: {asked}{confirm}" if member else f"{asked}{confirm}"


def ask_by_label(field: Field) -> str:
    """The label of a field as a question: `What is the gloss touch-dry time?`, `How many coats of primer?`."""
    label, lower = field.label, _lower(field.label)
    if _ASKING.match(label):
        return f"{label}?"
    if field.kind == "yes_no":
        return f"{label}: yes or no?"
    if field.kind in ("list", "reference"):
        return f"{label}: which?"
    if field.kind == "bearing":
        return f"{label}: which way?"
    if field.kind == "date":
        return f"What is the {lower}?" if "date" in lower else f"{label}: which date?"
    if field.kind in ("integer", "number") and lower.startswith("number of "):
        return f"How many {lower.removeprefix('number of ')}?"
    if _counts(lower):
        return f"How many {lower}?" if field.kind in ("integer", "number") else f"What are the {lower}?"
    return f"What is the {lower}?"


def _counts(label: str) -> bool:
    """Whether a label names more than one: `coats of primer`, `rain days in the month`."""
    named = _ENDS.split(label)[0].split()[-1]
    return named.endswith("s") and not named.endswith(("ss", "us", "is"))


def _lower(label: str) -> str:
    """The label within a sentence; an abbreviation keeps its letters."""
    return label if any(letter.isupper() for letter in label[1:].split()[0]) else label[:1].lower() + label[1:]


def tell_member(context: DocumentContext, field: Field, path: Path) -> str:
    """`Elevation E1 (South face), opening A`; empty for a field of the project."""
    told = []
    for depth, star in enumerate(field.path):
        if star == "*":
            told.append(_name(context, path[: depth + 1]))
    return ", ".join((told[0][:1].upper() + told[0][1:], *told[1:])) if told else ""


def _name(context: DocumentContext, member: Path) -> str:
    """The noun of a member, its mark or number, and what it is called."""
    collection = context.project.schema.node((*member[:-1], "*")[: len(member)][:-1]).collection
    assert collection is not None
    if collection.kind == "items":
        return f"{collection.one} {int(member[-1]) + 1}"
    if collection.keys:
        return f"{collection.one} {words(member[-1])}"
    called = _list_faces(context, member[-1]) if member[0] == "walls" and len(member) == 2 else ""
    if not called and len(member) == 2:
        called = name_member(context, *member).removeprefix(member[-1]).strip()
    return f"{collection.one} {member[-1]}{f' ({called})' if called else ''}"


def _list_faces(context: DocumentContext, wall: str) -> str:
    """The elevations of a wall by their names: `South face and Tower`; empty where they are many, or not named."""
    project, faces = context.project, list[str]()
    for mark in project.members.get(("elevations",), ()):
        of = project.get(("elevations", mark, "wall"))
        told = name_member(context, "elevations", mark).removeprefix(mark).strip()
        if of is not None and of.mark == wall and told:
            faces.append(told)
    if len(faces) > _MOST_FACES or len(faces) < 2:
        return faces[0] if len(faces) == 1 else ""
    return f"{', '.join(faces[:-1])}{',' if len(faces) > 2 else ''} and {faces[-1]}"


def tell_why(context: DocumentContext, field: Field, basis: str = "") -> str:
    """The reason as a sentence, and where a figure that is proposed comes from."""
    why = fill_figures(context.tell(field.why), context.figure)
    told = f"{why[:1].upper()}{why[1:]}{'' if why.endswith('.') else '.'}"
    return f"{told} Basis of the figure proposed: {context.tell(basis)}." if basis else told


def tell_form(context: DocumentContext, field: Field) -> str:
    """The unit in the project's system, the choices, or how the answer is written."""
    several = field.kind == "list"
    if field.values:
        choices = ", ".join(map(words, list_answers(context, field)))
        return f"any of: {choices}; {_SEVERAL}" if several else f"one of: {choices}"
    if field.to:
        marks = _list_marks(context, field)
        return f"{'marks' if several else 'mark'}: {marks}{f'; {_SEVERAL}' if several else ''}"
    if several:
        return f"one or more, {_SEVERAL}"
    unit = name_unit(field, context.first)
    if unit:
        return unit
    return _FORMS.get(field.kind) or ("whole number" if field.kind == "integer" else "number")


def _list_marks(context: DocumentContext, field: Field) -> str:
    """The members that a reference may name, as far as they are few; else what they are."""
    marks = context.project.members.get((field.to,), ())
    if 0 < len(marks) <= _MOST_MARKS:
        return ", ".join(name_member(context, field.to, mark) for mark in marks)
    collection = context.project.schema.node((field.to,)).collection
    assert collection is not None
    return f"as listed under {collection.label.lower()}"


def list_choices(context: DocumentContext, field: Field) -> tuple[str, ...]:
    """The answers that a drop-down offers; none where several may be given, or any words."""
    if field.kind == "choice":
        return tuple(map(words, list_answers(context, field)))
    if field.kind == "yes_no":
        return ("yes", "no")
    return context.project.members.get((field.to,), ()) if field.kind == "reference" else ()


def tell_example(context: DocumentContext, field: Field) -> str:
    """A valid answer as it would be written, a quantity in the project's system; none of few that are listed."""
    if field.kind in ("choice", "yes_no") or field.example.startswith("("):  # where it is found, and no answer
        return ""
    marks = context.project.members.get((field.to,), ()) if field.to else ()
    if marks:
        return marks[0]
    text = example_text(field, context.first).removeprefix("'").removesuffix("'").removeprefix("[").removesuffix("]")
    if '"' in text:  # entries that hold commas stand in quotes of their own
        return text
    return ", ".join(map(words, text.split(", "))) if field.of == "choice" else text


def tell_list(context: DocumentContext, name: str, dotted: str) -> str:
    """A list by its name, with the sheet of the workbook to enter it in."""
    return f"{name}; enter on the sheet {find_list(context, dotted).name} of the workbook, or send a list"


def find_list(context: DocumentContext, dotted: str) -> Table:
    """The table of the collection at a path of the project."""
    return find_table(context.project.schema.node(tuple(dotted.split("."))).path)


def name_party_file(party: str) -> str:
    """The name of the files of a party without ending: `eifs-manufacturer`."""
    return name_role(party).lower().replace(" ", "-")


def span_told(name: str) -> str:
    """The name with marks that follow each other as a span: `Impact zones (E1 to E8)`."""
    return _MARKS.sub(lambda found: f"({span_marks(found[1].split(', '))})", name)


def tell_holdup(before: str, rules: tuple[str, ...]) -> str:
    """`Mockup; SLT-07, SLT-08; D08, D10`: the work, the rules and the documents that wait."""
    affected = {name for rule in load_rules() if rule.code in rules for name in rule.documents}
    documents = span_marks(affected) if len(affected) <= _MOST_DOCUMENTS else ""
    return "; ".join(filter(None, (before[:1].upper() + before[1:], span_marks(dict.fromkeys(rules)), documents)))
