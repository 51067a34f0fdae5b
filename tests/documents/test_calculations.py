"""D06: what is computed is printed, worked once for each form of a sum, with the origin of every figure.

The sums themselves are checked in tests/computing; these are rules of our own on how they are laid out.
"""

import dataclasses
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from specgen import computing, pipeline
from specgen.computing.working_builder import WorkingBuilder
from specgen.documents import document
from specgen.documents.calculations import gather_calculations
from specgen.documents.catalogue import templates, templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.numbering import plain_text
from specgen.documents.origins import find_origin, follow
from specgen.formats import html, text
from specgen.model.block import Article, Document, Equation, Paragraph, Part, Table, Value
from specgen.model.problem import refuse
from specgen.model.source import MEMORY, PRACTICE
from specgen.model.working import METHOD, InputRow, Working
from specgen.quantities.comparison import Outcome
from specgen.resolving.provider import Provider, Resolver
from tests.documents.support import context_of, context_of_example, document_of
from tests.support import EXAMPLES

D06 = next(t for t in templates() if t.id == "D06")
NORTH = {
    "climate": {"hot_air": "95 F", "cold_air": "5 F", "peak_wall_irradiance": "800 W/m2"},
    "colors": {"C1": {"solar_reflectance": 0.5, "emittance": 0.6}},
    "elevations": {"E1": {"peak_irradiance": "800 W/m2", "reflecting_surface_near": False}},
    "sealants": {"S1": {"c920_class": 50}},
}
JOINT = {
    "elevation": "E1",
    "width": "3/4 in",
    "panel_length": "20 ft",
    "thermal_expansion": "8e-6 /F",
    "structural_closing": "0 in",
    "structural_opening": "0 in",
    "structural_shear": "0 in",
    "moisture_strain": 0,
    "tolerance": "1/8 in",
    "install_low": "40 F",
    "install_high": "90 F",
}


def joints(count: int, **change: Any) -> dict[str, Any]:
    """A job with so many joints, each an inch longer than the one before."""
    made = {f"J{n}": JOINT | {"panel_length": f"{200 + n} in"} | change for n in range(1, count + 1)}
    return NORTH | {"joints": made}


def d06(context: DocumentContext) -> Document:
    return document.compose_document(D06, context, False)


def with_providers(context: DocumentContext, *providers: Provider) -> DocumentContext:
    """The context whose only calculations are these."""
    known: Mapping[str, Provider] = {p.name: p for p in providers}
    return dataclasses.replace(context, resolve=Resolver(context.project, known.__getitem__, tuple(sorted(known))))


def trial(name: str, *rows: InputRow, **more: Any) -> Provider:
    """A calculation of the project that adds two to its first input."""

    def compute(view: Any, ask: Any) -> Working:
        working = WorkingBuilder(rows)
        working.step("y", "a trial", f"{rows[0].symbol} + 2", "in")
        return working.build(name, "y", (PRACTICE,))

    return Provider(name=name, title=f"Trial {name}", each=(), compute=compute, **more)


X = InputRow("x", "a length", 1.0, "in")


def titles(made: Document) -> list[str]:
    return [plain_text(b.title) for b in made.blocks if isinstance(b, (Part, Article))]


def test_the_document_stands_between_the_warnings_and_the_procedure() -> None:
    order = [t.id for t in templates()]
    assert order.index("D05") < order.index("D06") < order.index("D08")


# No power line is near these projects; the others are asked of old surfaces.
OF_NONE = ["power-line-distance"]
OF_OLD_WALLS = ["bond-demand", "bond-pulls", *OF_NONE]


def test_every_calculation_there_is_stands_in_the_document_or_among_what_waits() -> None:
    for example, apart in (
        ("clean", OF_OLD_WALLS),
        ("metric", OF_OLD_WALLS),
        ("stops", OF_OLD_WALLS),
        ("old-wall", OF_NONE),
    ):
        said = text.write_text(document_of(example, "D06", draft=True))
        printed = [p for p in map(computing.find, computing.names()) if p.compute is not None and p.printed]
        assert sorted(p.name for p in printed if p.title not in said) == apart


def test_groups_come_in_their_order_and_calculations_in_theirs(tmp_path: Path) -> None:
    made = [
        trial("a", X, group="moisture"),
        trial("b", X, group="coats", order=20),
        trial("c", X, group="coats", order=10),
        trial("d", X, group="heat"),
        trial("e", X, group="color"),
    ]
    found = titles(d06(with_providers(context_of(tmp_path), *made)))[2:]
    assert found == [
        "Heat",
        "Trial d",
        "Coats",
        "Trial c",
        "Trial b",
        "Moisture",
        "Trial a",
        "Color",
        "Trial e",
    ]


def test_the_working_printed_is_the_one_computed() -> None:
    case = pipeline.check(EXAMPLES / "metric" / "project.yaml")
    working = case.context.resolve(("joints", "J1"), "joint-width")
    made = document_of("metric", "D06", draft=True)
    said = [b for b in made.blocks if isinstance(b, Equation)]
    for step in working.steps:
        assert any(e.symbol == step.symbol and e.substitution == step.substitution for e in said)
    # 24 mm: rounded up from 23.432 mm to the next millimeter; metric first, as the project asks.
    assert "Result for J1: 24 mm (0.945 in), governed by closing." in text.write_text(made)


@pytest.mark.no_cover
def test_two_hundred_joints_are_worked_once_and_stand_in_a_table(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path, joints(200)))
    equations = [b for b in made.blocks if isinstance(b, Equation) and b.symbol == "W_r"]
    assert len(equations) == 1
    tables = [
        b for b in made.blocks if isinstance(b, Table) and plain_text(b.header[0]) == "For" and len(b.rows) == 200
    ]
    (table,) = (b for b in tables if "Held against" in map(plain_text, b.header))
    assert [plain_text(head) for head in table.header] == ["For", "L, in", "Result", "Governed by", "Held against"]
    assert sum(table.widths) == 100
    assert [plain_text(cell) for cell in table.rows[1][:2]] == ["J2", "202"]


def test_sums_with_other_lines_are_worked_apart(tmp_path: Path) -> None:
    change = joints(2)
    change["joints"]["J2"]["structural_shear"] = "1/4 in"
    said = text.write_text(d06(context_of(tmp_path, change)))
    assert "Worked in full for J1." in said
    assert "Worked in full for J2." in said


def test_many_inputs_that_differ_fill_tables_of_their_own(tmp_path: Path) -> None:
    change = joints(1)
    change["joints"]["J2"] = JOINT | {
        "panel_length": "10 ft",
        "thermal_expansion": "9e-6 /F",
        "structural_closing": "1/8 in",
        "structural_opening": "1/8 in",
        "moisture_strain": 0.0001,
        "tolerance": "1/4 in",
        "install_low": "45 F",
        "install_high": "85 F",
    }
    made = d06(context_of(tmp_path, change))
    heads = [
        [plain_text(h) for h in b.header]
        for b in made.blocks
        if isinstance(b, Table) and plain_text(b.header[0]) == "For"
    ]
    last = heads.index(["For", "T_high, °F", "Result", "Governed by", "Held against"])
    assert len(heads[last - 1]) == 8


def told(context: DocumentContext, row: InputRow, member: tuple[str, ...] = ("joints", "J1")) -> str:
    return find_origin(context, member, row).text


def test_an_input_is_told_by_the_field_and_file_it_comes_from(tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(1) | {"coating": {"primer": {"dry_hours": 20}}})
    rows = {row.symbol: row for row in context.resolve(("joints", "J1"), "joint-width").inputs}
    assert told(context, rows["L"]) == "Moving length at the joint (joints.J1.panel_length), project.yaml"
    assert told(context, rows["S_e"]) == "Movement class of the sealant (sealants.S1.c920_class), project.yaml"
    assert told(context, rows["T_hot"]) == "computed: hottest face of the wall, E1"
    assert told(context, rows["r"]) == METHOD
    assert told(context, InputRow("t", "drying", 20.0, "h", "primer.dry_hours")).endswith("coating.yaml")


def test_a_figure_taken_where_none_is_given_says_so_and_bears_its_source(tmp_path: Path) -> None:
    context = context_of(tmp_path)
    found = find_origin(context, (), InputRow("t", "drying", 24.0, "h", "primer.dry_hours"))
    assert found.text.endswith("(primer.dry_hours): not given, the usual value")
    assert found.source == PRACTICE


def test_an_input_that_tells_no_origin_is_a_figure_of_the_method_whatever_it_equals(tmp_path: Path) -> None:
    # The shear of the joint is 1/16 in as well: an equal figure says nothing.
    context = context_of(tmp_path, joints(1, structural_shear="1/16 in"))
    assert told(context, InputRow("d_s", "structural shear", 0.0625, "in")) == METHOD
    bearing = InputRow("s", "a constant", 5.0, "", source=MEMORY)
    assert (told(context, bearing), find_origin(context, (), bearing).source) == (METHOD, MEMORY)


def test_words_of_a_calculation_stand_as_they_are(tmp_path: Path) -> None:
    row = InputRow("x", "wind", 1.0, "in", "figure 30.3-1 of the standard")
    assert told(context_of(tmp_path), row, ()) == "figure 30.3-1 of the standard"


def test_every_figure_a_project_gives_is_told_by_its_field() -> None:
    """Every input whose figure moves when the project moves says a field, a collection or a calculation, or how."""
    context = context_of_example("clean")
    rows = [row for one in gather_calculations(context) for working in one.workings.values() for row in working.inputs]
    silent = {(row.symbol, row.name) for row in rows if row.origin == METHOD and row.source is None}
    # What the method itself says without a source of its own: zero points of scales and figures of vapor.
    assert silent <= {("p", "spread between laboratories, of the mean"), ("q", "print increment")}
    assert len(rows) > 150


def test_figures_of_memory_and_practice_bear_a_mark() -> None:
    made = document_of("clean", "D06")
    tables = [b for b in made.blocks if isinstance(b, Table) and plain_text(b.header[0]) == "Symbol"]
    inputs = next(table for table in tables if plain_text(table.rows[0][0]) == "T_a")
    marks = {plain_text(row[0]): [part.mark for part in row[2] if isinstance(part, Value)] for row in inputs.rows}
    assert marks["T_a"] == [""]
    assert marks["H"] != [""]
    assert dict(made.legend)[marks["H"][0]].startswith("from memory (ASTM C1472")


@pytest.mark.parametrize(("width", "said"), [("3/4 in", "met"), ("1/2 in", "not met")])
def test_the_result_is_held_against_what_a_rule_compares_it_with(width: str, said: str, tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(1, width=width, panel_length="20 ft"))
    assert f", {said} (SLT-02a)." in text.write_text(d06(context))
    (one,) = (c for c in context.judgment.limit_checks if c.code == "SLT-02a")
    assert (one.name, one.member, one.path) == ("joint-width", ("joints", "J1"), ("joints", "J1", "width"))
    assert one.outcome is {"met": Outcome.WITHIN, "not met": Outcome.OUTSIDE}[said]


def test_a_width_that_is_not_given_is_not_judged_yet(tmp_path: Path) -> None:
    change = joints(1)
    del change["joints"]["J1"]["width"]
    assert "Width of the joint: [Width of the joint], not judged yet (SLT-02a)." in text.write_text(
        d06(context_of(tmp_path, change))
    )


def test_what_waits_names_its_fields_and_no_figure_takes_their_place(tmp_path: Path) -> None:
    change = joints(3)
    for mark in ("J2", "J3"):
        del change["joints"][mark]["panel_length"]
    said = text.write_text(d06(context_of(tmp_path, change)))
    assert "Sealant joint width | J2, J3 | Moving length at the joint (joints.*.panel_length)" in said


def test_a_project_that_allows_no_calculation_says_so(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path))
    assert "Not computed yet" in titles(made)
    assert "Wall face temperature | all | Elevations (elevations)" in text.write_text(made)


def test_figures_that_do_not_fit_are_told_among_what_waits(tmp_path: Path) -> None:
    def compute(view: Any, ask: Any) -> Any:
        raise refuse("the hot face is colder than the cold one", "mend the climate")

    context = with_providers(
        context_of(tmp_path), Provider(name="a", title="Trial", each=(), compute=compute, group="heat")
    )
    assert "Trial | the project | the hot face is colder than the cold one" in text.write_text(d06(context))


def test_answers_of_the_code_stand_with_their_reason_and_a_local_code_is_not_read() -> None:
    assert "Drained wall due | W2 | no | the wall is not framed" in text.write_text(document_of("clean", "D06"))
    assert "Drained wall due | W1 | not read here |" in text.write_text(document_of("metric", "D06", draft=True))


def test_notes_that_differ_stand_with_their_member_and_shared_ones_once(tmp_path: Path) -> None:
    said = text.write_text(document_of("stops", "D06", draft=True))
    assert said.count("Conduction into the board is left out") == 2  # face heat, and the same in still air
    assert "licensed engineer" in said


def test_each_calculation_names_its_sources() -> None:
    made = document_of("clean", "D06")
    told_of = [
        plain_text(b.content) for b in made.blocks if isinstance(b, Paragraph) and plain_text(b.content)[:6] == "Source"
    ]
    assert len(told_of) > 10
    assert any("ASTM E1980" in told for told in told_of)


def test_what_is_computed_for_each_member_is_asked_once(tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(4))
    assert [list(one.workings) for one in gather_calculations(context) if one.provider.name == "joint-width"] == [
        [("joints", f"J{n}") for n in range(1, 5)]
    ]
    assert b"<math" in html.write_html(d06(context), templates_folder())


def in_short(made: Document) -> list[list[str]]:
    table = next(b for b in made.blocks if isinstance(b, Table) and plain_text(b.header[-1]) == "Limits")
    return [[plain_text(cell) for cell in row] for row in table.rows]


def test_the_results_stand_in_short_before_the_workings_apart_by_what_came_out(tmp_path: Path) -> None:
    change = joints(4)
    change["joints"]["J3"]["width"] = "1/4 in"
    del change["joints"]["J4"]["width"]
    made = d06(context_of(tmp_path, change))
    assert titles(made).index("Results in short") < titles(made).index("Movement joints")
    rows = [row for row in in_short(made) if row[0] == "Sealant joint width"]
    assert [row[1] for row in rows] == ["J1, J2", "J3", "J4"]
    assert [row[3] for row in rows] == ["met (SLT-02a)", "not met (SLT-02a)", "not judged yet (SLT-02a)"]


@pytest.mark.no_cover
def test_results_in_short_run_from_the_least_to_the_greatest(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path, joints(40)))
    row = next(row for row in in_short(made) if row[0] == "Sealant joint width")
    assert row[1] == "J1, J2, J3, J4, J5, J6 and 34 more"
    first, last = (in_short(d06(context_of(tmp_path, joints(n, panel_length=f"{200 + n} in")))) for n in (1, 40))
    ends = [next(row[2] for row in rows if row[0] == "Sealant joint width") for rows in (first, last)]
    assert row[2] == " to ".join(ends)


def test_what_nothing_is_held_against_says_none() -> None:
    rows = {row[0]: row[3] for row in in_short(document_of("clean", "D06"))}
    assert rows["Sealant depth"] == "none"
    assert rows["Wall face temperature"] == "met (HEA-02a, HEA-03a)"


def test_every_origin_of_an_input_is_a_field_a_collection_a_calculation_or_words() -> None:
    names, seen = computing.names(), 0
    for example in ("clean", "metric", "stops"):
        context = context_of_example(example)
        for one in gather_calculations(context):
            for member, working in one.workings.items():
                for row in working.inputs:
                    if row.origin not in names and " " not in row.origin:
                        seen += 1
                        path, project = tuple(row.origin.split(".")), context.project
                        assert follow(project, row.origin, member) or path in project.members, row.origin
    assert seen > 200
