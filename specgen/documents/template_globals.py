"""The names defined in every template: the project, its findings and steps, tables and form elements."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from specgen.documents.banner import tell_held_work, tell_standing
from specgen.documents.calculation_pages import calculation_pages
from specgen.documents.changes_words import changes_of, tell_issues
from specgen.documents.code_edition import tell_code_data
from specgen.documents.composing import Composer, to_inline
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.contract_first import name_contract, reads_first, tell_order
from specgen.documents.deciding import is_undecided
from specgen.documents.drafts import ALWAYS, ANSWER, LEAST_KNOWN
from specgen.documents.figures.drawings import draw_named, name_drawings
from specgen.documents.figures.record_trends import tell_not_drawn
from specgen.documents.finish_name import name_finish
from specgen.documents.layout_release import tell_layout_release
from specgen.documents.marks import tell_marks
from specgen.documents.measures import name_groups
from specgen.documents.mockup import tell_ready_day
from specgen.documents.parties import tell_contact, tell_route, tell_warrantors
from specgen.documents.pull_tests import find_moisture_limit, tell_pull_tests
from specgen.documents.qualifications import tell_crews
from specgen.documents.records.closeout import count_criteria
from specgen.documents.records.faults import list_faults, tell_counts
from specgen.documents.required_documents import count_pending, list_measured
from specgen.documents.review_boxes import review_boxes
from specgen.documents.seal import tell_seal
from specgen.documents.standing_walls import list_barriers, list_standing, list_wet
from specgen.documents.steps import steps
from specgen.documents.submission import is_reviewed, tell_days, tell_issue
from specgen.documents.template_functions import Function, check_words, figure_functions, known_name
from specgen.documents.template_mistakes import Mistake
from specgen.documents.template_views import Page, Views
from specgen.documents.transmittal import cite_procedure
from specgen.documents.views.code_items import code_name, tell_who_adopts
from specgen.documents.views.mockup_details import name_places
from specgen.documents.views.open_items import count_asked, count_values, tell_asked, tell_holds_key
from specgen.documents.views.package_documents import tell_forms_left_out
from specgen.documents.views.reply_dates import tell_undated
from specgen.documents.views.site_limits import find_stricter
from specgen.documents.views.to_verify import count_to_tick, verifies_pulls
from specgen.documents.views.who_verifies import tell_verifiers
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.judging.owners import looks_for_document
from specgen.model.absence import Absent
from specgen.model.block import (
    Blank,
    Break,
    CheckBox,
    Inline,
    Inlines,
    Ref,
    Signature,
    Table,
    Text,
)
from specgen.model.finding import Severity
from specgen.model.value_text import words


def template_globals(context: DocumentContext, composer: Composer) -> dict[str, Any]:
    """The names a template may use."""
    project = context.project
    root = Page(context, project.schema.root, ())
    names: dict[str, Any] = {name: getattr(root, name) for name, node in project.schema.root.children.items()}
    names |= {
        "stops": context.judgment.of(Severity.STOP),
        "cautions": list_measured(context),
        "notes": context.judgment.of(Severity.NOTE),
        "finish_name": name_finish(context),
        "contact": tell_contact(context),
        "reply_route": tell_route(context),
        "warrantors": tell_warrantors(context),
        "issues_compared": tell_issues(context),
        "changes_marked": changes_of(context).marked,
        "nothing_changed": changes_of(context).none,
        "verdicts": {mark: words(wall.verdict) for mark, wall in context.judgment.walls.items()},
        "code_name": code_name(context),
        "code_basis": tell_who_adopts(context),
        "marks": tell_marks(context, tell_asked(context)),
        "holds_key": tell_holds_key(context),
        "mockup_places": name_places(context),
        "is_draft": context.is_draft,
        "is_marked": context.is_marked,
        "always_included": ", ".join(name for name in ALWAYS if name != ANSWER),
        "least_known": LEAST_KNOWN,
        "view": Views(_name_views, lambda name: _build_view(name, context, composer)),
        "page_break": Break(),
        "warmer_coats": find_stricter(context, "least_dry_temperature", context.limit("weather.least_coats")),
        "drier_coats": find_stricter(context, "most_humidity", context.display(("weather", "most_humidity"))),
        "review_boxes": review_boxes(context),
        "crews_of_mockup": tell_crews(context),
        "procedure": cite_procedure(context),
        "seal_covers": tell_seal(context),
    }
    functions = {f.name: f for f in _page_functions(context, composer)}
    names |= _name_rules(context) | _tell_open(context)
    return names | tell_counts(context) | figure_functions(context) | functions


def _name_rules(context: DocumentContext) -> dict[str, Any]:
    """What the letters of rules stand for: of those that found something, and of those that found nothing."""
    return {
        "rule_groups": name_groups(_list_codes(context)),
        "rule_key": name_groups(
            (*(clause.rule for clause in context.judgment.not_judged), *list_waiting_rules(context))
        ),
    }


def _tell_open(context: DocumentContext) -> dict[str, Any]:
    """What is still open in the project, and what holds its work."""
    return {
        "documents_pending": count_pending(context),
        "asked_before": count_asked(context),
        "undecided": is_undecided(context),
        "values_asked": count_values(context),
        "stop_count": tell_standing(context),
        "held_work": tell_held_work(context),
        "code_data": tell_code_data(context),
        "contract_first": name_contract(context) if reads_first(context) else "",
        "contract_order": tell_order(context),
        "pull_tests": tell_pull_tests(context),
        "moisture_limit": find_moisture_limit(context),
        "undated_stages": tell_undated(context),
        "forms_left_out": tell_forms_left_out(context),
        "standing_walls": list_standing(context),
        "wet_walls": list_wet(context, list_barriers(context)),
        "contractor_reviews": is_reviewed(context),
        "issue_days": tell_issue(context),
        "decision_days": tell_days(context),
        "unverified": tuple(dict.fromkeys(context.name_text(text) for text in context.rest.to_check)),
    }


def _list_codes(context: DocumentContext) -> list[str]:
    """The codes of what is listed in D05: documents still required, and what stands with them, are open items."""
    listed = (*context.judgment.of(Severity.STOP), *list_measured(context), *context.judgment.of(Severity.NOTE))
    return [finding.code for finding in listed if not looks_for_document(finding)]


def _page_functions(context: DocumentContext, composer: Composer) -> tuple[Function, ...]:
    """Functions that make the parts of a page, and those that list what it is written from."""
    return (
        Function("steps", run=cache(lambda: steps(context, composer))),
        Function("calculations", run=cache(lambda: calculation_pages(context))),
        Function("faults", run=lambda: context.remember(list_faults)),
        Function("mockup_count", run=lambda: context.remember(count_criteria).tell()),
        Function("layout_release", run=lambda: tell_layout_release(context)),
        Function("mockup_ready", run=lambda: tell_ready_day(context)),
        Function("trends_not_drawn", run=lambda: tell_not_drawn(context)),
        Function("verifiers", run=cache(lambda: tell_verifiers(context))),
        Function("to_answer", run=cache(lambda: count_to_tick(context))),
        Function("verifies_pulls", run=cache(lambda: verifies_pulls(context))),
        Function("table", ("view",), ("caption",), _set_named_table, example="table(view.joints)"),
        Function(
            "drawing",
            ("name",),
            run=cache(lambda name: _draw(context, composer, name)),
            example="drawing('wall_section')",
        ),
        Function("sign", ("role",), run=lambda *roles: _sign(context, roles), many=True, example="sign('architect')"),
        Function("blank", ("label",), ("kind", "field"), _make_blank, example="blank('Date', 'date')"),
        Function("wanted", ("collection",), run=lambda path: _want(context, path), example="wanted('people')"),
        Function("check_box", ("label",), ("field", "value"), _make_box, example="check_box('Accepted')"),
        Function("ref", ("heading",), run=lambda heading: _refer(composer, heading)),
        Function("looked_up", ("name", "member"), run=lambda name, member: _look_up(context, name, member)),
    )


def _name_views() -> list[str]:
    """The names of all table views."""
    return [name for name in _view_modules() if hasattr(_load_view(name), "rows")]


@cache
def _view_modules() -> tuple[str, ...]:
    folder = import_module(f"{__package__}.views").__path__
    return tuple(module.name for module in iter_modules(folder) if not module.name.startswith("_"))


def _load_view(name: str) -> Any:
    return import_module(f"{__package__}.views.{name}")


def _build_view(name: str, context: DocumentContext, composer: Composer) -> TableView | None:
    """The view that `views/NAME.py` builds, or None if there is none."""
    if name not in _view_modules() or not hasattr(module := _load_view(name), "rows"):
        return None
    view: TableView = module.rows(context, composer)
    return view


def _set_named_table(view: Any, caption: Any = "") -> Table:
    if not isinstance(view, TableView):
        raise Mistake("table() sets a view, and this is none", "for example table(view.joints)")
    return set_table(view, check_words(caption, "the caption of a table"))


def _draw(context: DocumentContext, composer: Composer, name: Any) -> str:
    """The figures of a drawing, each on a line of its own; no words where there is none."""
    figures = draw_named(known_name(name, "drawing", name_drawings()), context)
    return "\n\n".join(map(composer.token, figures))


def _make_blank(label: Any, kind: Any = "text", field: Any = "") -> Blank:
    if kind not in ("text", "date"):
        raise Mistake("a blank is for text or for a date", "write 'text' or 'date'")
    return Blank(check_words(label, "the label of a blank"), kind, check_words(field, "the field of a blank"))


def _make_box(label: Any, field: Any = "", value: Any = "") -> CheckBox:
    of, chosen = (check_words(text, f"the {what} of a box") for text, what in ((field, "field"), (value, "value")))
    return CheckBox(check_words(label, "the label of a box"), of, chosen)


def _want(context: DocumentContext, path: Any) -> Any:
    """The name of a collection that is still to be given, in brackets."""
    known = [".".join(one[:-1]) for one in context.project.schema.collections if "*" not in one[:-1]]
    return context.ask(tuple(known_name(path, "collection", known).split(".")))


def _refer(composer: Composer, heading: Any) -> Ref:
    target = check_words(heading, "a heading")
    composer.lines.setdefault(target, composer.line_now())
    return Ref(target)


def _sign(context: DocumentContext, roles: tuple[Any, ...]) -> Signature:
    known = list(context.project.schema.root.children["parties"].children)
    return Signature(tuple(_party(context, known_name(role, "party", known)) for role in roles))


def set_table(view: TableView, caption: str = "") -> Table:
    """The table of a view."""
    rows = tuple(tuple(cell(entry) for entry in row) for row in view.rows)
    header = tuple(cell(title) for title in view.header)
    return Table(header, rows, view.widths, (Text(caption),) if caption else ())


def cell(entry: Any) -> Inlines:
    """The content of a table cell."""
    parts = entry if isinstance(entry, (list, tuple)) else (entry,)
    return tuple(part if isinstance(part, _READY) else to_inline(part) for part in parts if part not in ("", None))


_READY: Any = (Blank, CheckBox, Ref, *Inline.__args__)


def _party(context: DocumentContext, role: str) -> tuple[str, str]:
    """A role in words, and the name of the party or an empty text."""
    name = context.project.get(("parties", role, "name"))
    title = words(role)
    return title[:1].upper() + title[1:], name or ""


def _look_up(context: DocumentContext, name: Any, member: Any) -> Any:
    """The answer of a look-up for a member, or None if a field it needs is absent."""
    known = known_name(name, "look-up", context.resolve.names)
    if not isinstance(member, Page):
        raise Mistake("looked_up() asks for one member", "name a wall or another member after the comma")
    try:
        return context.resolve(member._path, known)
    except Absent:
        return None
    except KeyError:
        raise Mistake(f"{known} is not looked up for {member.dotted()}", "name another member") from None
