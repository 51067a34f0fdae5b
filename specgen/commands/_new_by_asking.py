"""`new --ask`: what the starter of a project file begins with is asked for, one question at a time."""

from argparse import Namespace
from collections.abc import Mapping

from specgen.commands import Outcome, read_file_name
from specgen.editing.add_values import add_values
from specgen.editing.edit import Addition
from specgen.model.field import Path, Schema, dotted_path
from specgen.model.finding import Judgment
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.model.stage import PURPOSES
from specgen.model.value_text import count
from specgen.output.disk import refuse_unfit_new, write_new
from specgen.pipeline import judge_project
from specgen.reading.draft import Told
from specgen.reading.schema import project_schema
from specgen.terminal.dialogue import Dialogue
from specgen.terminal.dialogue_streams import hold_dialogue
from specgen.terminal.field_lines import format_field_lines
from specgen.terminal.next_command import quote
from specgen.terminal.starter import format_starter
from specgen.terminal.streams import find_width


def new_by_asking(args: Namespace) -> Outcome:
    """Ask, and write the starter with what was answered; raises Refused, or Stopped where nothing is written."""
    file, schema = read_file_name(args.file), project_schema()
    refuse_unfit_new(file)
    given: dict[Path, Told] = {("package", "purpose"): PURPOSES[args.stage], ("package", "units"): args.units}
    dialogue = Dialogue(schema, _judge, given, args.units, find_width())
    whole = hold_dialogue(dialogue, args.quiet)
    answers = dialogue.list_answers()
    starter = format_starter(schema, args.stage, args.units).encode()
    additions = [Addition(path, text, _comment(schema, path, args.units)) for path, text in answers.items()]
    edit = add_values(starter, additions, schema, args.file)
    try:
        write_new(file, edit.source.decode())
    except Refused as refused:
        raise Refused(*refused.problems, *_tell_lost(answers)) from None
    ended = () if whole else (f"the input ended at question {len(dialogue.asked) + 1}; what was answered is written",)
    wrote = f"wrote {args.file} with {count(len(answers), 'answer')}; next: specgen check {quote(args.file)}"
    return Outcome(text="\n".join(dialogue.tell_verdict()) + "\n", messages=(*ended, wrote))


def _judge(project: Project) -> Judgment:
    return judge_project(project).judgment


def _comment(schema: Schema, path: Path, units: str) -> str:
    """What the starter says above a field, for one that it does not ask for itself."""
    field = schema.field_at(path)
    assert field is not None
    *comment, _ = format_field_lines(field, path[-1], 0, units)
    return "\n".join(line.removeprefix("# ") for line in comment)


def _tell_lost(answers: Mapping[Path, str]) -> list[Problem]:
    """The answers as they are typed in a file, so that they need not be found again."""
    return [Problem(f"the answer was {text}", path=dotted_path(path)) for path, text in answers.items()]
