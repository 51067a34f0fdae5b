"""D06: what is computed is printed, worked once for each form of a sum, with the origin of every figure.

The sums themselves are checked in tests/computing; these are rules of our own on how they are laid out.
"""

import dataclasses
import re
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen import computing, pipeline
from specgen.computing.working_builder import WorkingBuilder
from specgen.documents import document
from specgen.documents.calculations import gather_calculations
from specgen.documents.catalogue import templates, templates_folder
from specgen.documents.comparisons import conclude
from specgen.documents.context import DocumentContext
from specgen.documents.members import name_sheets
from specgen.documents.origins import Origin, find_origin, follow
from specgen.documents.plain_text import plain_text
from specgen.formats import html, text
from specgen.model.block import Article, Document, Letters, Paragraph, Part, Table
from specgen.model.problem import refuse
from specgen.model.source import MEMORY, PRACTICE
from specgen.model.working import METHOD, InputRow, Working
from specgen.quantities.comparison import Outcome
from specgen.resolving.provider import Provider, Resolver
from tests.documents.example import changed_clean, page_of
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
    """The context whose only calculations are these, and those that tell which reports and inspections are due."""
    asked = (computing.find(name) for name in ("fire-propagation-due", "radiant-heat-due", "special-inspection-due"))
    known: Mapping[str, Provider] = {p.name: p for p in (*providers, *asked)}
    return dataclasses.replace(context, resolve=Resolver(context.project, known.__getitem__, tuple(sorted(known))))


def trial(name: str, *rows: InputRow, **more: Any) -> Provider:
    """A calculation of the project that adds two to its first input."""

    def compute(view: Any, ask: Any) -> Working:
        working = WorkingBuilder(rows)
        working.step("y", "a trial", f"{rows[0].symbol} + 2", "in")
        return working.build(name, "y", (PRACTICE,))

    return Provider(name=name, title=f"Trial {name}", each=(), compute=compute, **more)


X = InputRow("x", "a length", 1.0, "in")


def members_of(made: Document) -> list[Table]:
    return [b for b in made.blocks if isinstance(b, Table) and plain_text(b.header[0]) == "For"]


def plain(made: Document) -> str:
    """The text with plain spaces between figures and units."""
    return text.write_text(made).replace("\u00a0", " ")


def titles(made: Document) -> list[str]:
    return [plain_text(b.title) for b in made.blocks if isinstance(b, (Part, Article))]


def test_the_document_stands_between_the_warnings_and_the_procedure() -> None:
    order = [t.id for t in templates()]
    assert order.index("D05") < order.index("D06") < order.index("D08")


# No power line is near these projects; the others are asked of old surfaces.
OF_NONE = ["power-line-distance"]
# Its local code names no wind standard: the engineer gives the suction, and no strip is computed.
OF_WIND = ["wind-corner-strip"]
# Look-ups of the code, which D02 prints.
OF_CODE = ["drainage-due", "fire-propagation-due", "radiant-heat-due", "special-inspection-due"]
OF_OLD_WALLS = ["bond-demand", "bond-pulls", *OF_NONE]


def test_every_calculation_there_is_stands_in_the_document_or_among_what_waits() -> None:
    for example, apart in (
        ("clean", OF_OLD_WALLS),
        ("metric", [*OF_OLD_WALLS, *OF_WIND]),
        ("stops", OF_OLD_WALLS),
        ("old-wall", OF_NONE),
    ):
        said = text.write_text(document_of(example, "D06", draft=True))
        printed = [p for p in map(computing.find, computing.names()) if p.compute is not None and p.printed]
        assert sorted(p.name for p in printed if p.title not in said) == sorted([*apart, *OF_CODE])


def test_groups_come_in_their_order_and_calculations_in_theirs(tmp_path: Path) -> None:
    made = [
        trial("a", X, group="moisture"),
        trial("b", X, group="coats", order=20),
        trial("c", X, group="coats", order=10),
        trial("d", X, group="heat"),
        trial("e", X, group="color"),
    ]
    found = [title for title in titles(d06(with_providers(context_of(tmp_path), *made))) if "Trial" in title]
    assert found == ["1. Trial d", "2. Trial c", "3. Trial b", "4. Trial a", "5. Trial e"]


def test_the_working_printed_is_the_one_computed() -> None:
    said = text.write_text(document_of("metric", "D06", draft=True))
    # 24 mm: rounded up from 23.322 mm to the next millimeter.
    working = pipeline.check(EXAMPLES / "metric" / "project.yaml").context.resolve(("joints", "J1"), "joint-width")
    assert "Width, rounded up | W_r = ceil(W / r) × r = ceil(23.32 / 1) × 1 | 24\u00a0mm" in said
    assert [step.symbol for step in working.steps if f"| {step.symbol} = " not in said] == []


@pytest.mark.no_cover
def test_two_hundred_joints_are_worked_once_and_stand_in_a_table(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path, joints(200)))
    assert text.write_text(made).count("| W_r = ceil") == 1
    (table,) = (b for b in members_of(made) if len(b.rows) == 200 and len(b.header) == 4)
    heads = ["For", "L, in", "Result W_r", "Width given, ratio, status"]
    assert [plain_text(head) for head in table.header] == heads
    assert sum(table.widths) == 100
    assert [plain_text(cell) for cell in table.rows[1][:2]] == ["J2", "202"]


def test_formulas_that_another_member_takes_stand_on_the_sheet(tmp_path: Path) -> None:
    change = joints(2)
    change["joints"]["J2"]["panel_length"] = "10 in"
    change["joints"]["J2"]["structural_shear"] = "1/32 in"
    said = text.write_text(d06(context_of(tmp_path, change)))
    assert "J1 opening perimeter governs; J2 similar." in said or "J1 governs; J2 similar." in said
    assert "Formulas for J2: bead stretch term q = 2 × S_e + S_e^2; width for opening with shear W_o = " in said


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
    }
    heads = [[plain_text(h) for h in b.header] for b in members_of(d06(context_of(tmp_path, change)))]
    assert ["For", "L, in", "d_c, in", "d_o, in", "C, in", "alpha, /°F", "k", "T_low, °F", "Result W_r"] in heads
    assert any(head[-1] == "Width given, ratio, status" and len(head) < 5 for head in heads)


def found_by(context: DocumentContext, row: InputRow, member: tuple[str, ...] = ("joints", "J1")) -> Origin:
    return find_origin(context, member, row)


def test_an_input_of_another_calculation_names_it_and_one_of_the_project_bears_no_mark(tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(1))
    rows = {row.symbol: row for row in context.resolve(("joints", "J1"), "joint-width").inputs}
    assert found_by(context, rows["L"]) == Origin()
    assert found_by(context, rows["T_hot"]) == Origin(calculation="face-heat")
    assert found_by(context, rows["r"]) == Origin(PRACTICE)
    said = text.write_text(d06(context))
    assert "Hot face temperature (calculation 2), T_hot | 145\u00a0°F" in said


def test_a_figure_taken_where_none_is_given_says_so_and_bears_its_source(tmp_path: Path) -> None:
    row = InputRow("t", "drying", 24.0, "h", "primer.dry_hours")
    assert found_by(context_of(tmp_path), row, ()) == Origin(PRACTICE, default=True)
    assert "Ground reflectance, default, g | 0.2[" in text.write_text(document_of("clean", "D06"))


def test_an_input_that_tells_no_origin_is_a_constant_whatever_it_equals(tmp_path: Path) -> None:
    # The shear of the joint is 1/16 in as well: an equal figure says nothing.
    context = context_of(tmp_path, joints(1, structural_shear="1/16 in"))
    assert found_by(context, InputRow("d_s", "structural shear", 0.0625, "in")) == Origin()
    assert found_by(context, InputRow("s", "a constant", 5.0, "", source=MEMORY)) == Origin(MEMORY)


def test_words_of_a_calculation_stand_as_they_are(tmp_path: Path) -> None:
    row = InputRow("x", "wind", 1.0, "in", "figure 30.3-1 of the standard")
    assert found_by(context_of(tmp_path), row, ()).words == "figure 30.3-1 of the standard"


def test_every_figure_a_project_gives_is_told_by_its_field() -> None:
    """Every input whose figure moves when the project moves says a field, a collection or a calculation, or how."""
    context = context_of_example("clean")
    rows = [row for one in gather_calculations(context) for working in one.workings.values() for row in working.inputs]
    silent = {(row.symbol, row.name) for row in rows if row.origin == METHOD and row.source is None}
    # What the method itself says without a source of its own: zero points of scales and figures of vapor.
    assert silent <= {("p", "spread between laboratories, of the mean"), ("q", "half of the tenth that prints")}
    assert len(rows) > 150


def test_constants_stand_on_the_sheet_that_uses_them_with_the_mark_of_their_source() -> None:
    made = document_of("clean", "D06")
    told = [b.content for b in made.blocks if isinstance(b, Paragraph) and "Constants: " in plain_text(b.content)]
    (face, *_) = (content for content in told if "Heat capacity constant, H\u00a0= 100" in plain_text(content))
    marks = [mark for part in face if isinstance(part, Letters) for mark in part.text.split(", ")]
    assert any(dict(made.legend)[mark].startswith("Proposed, not verified") for mark in marks)
    # ASTM E1980: 12 W/(m2 K) at medium wind, 5 at low wind; each stands on the sheet of its own.
    for film in ("12", "5"):
        assert sum(f"Convection coefficient, h\u00a0= {film}\u00a0W/" in plain_text(content) for content in told) == 1


# By hand: 240 in * 8e-6 * (145 - 40) / 0.5 + 0.125 = 0.528 in, up to 9/16 in; 145 is 95 °F and half of 100 °F.
@pytest.mark.parametrize(
    ("width", "said"),
    [
        ("3/4 in", "Required width 9/16 in ≤ 3/4 in width given; ratio 0.75; OK."),
        ("1/2 in", "Required width 9/16 in > 1/2 in width given; ratio 1.12; Exceeds (SLT-02a in D05)."),
    ],
)
def test_demand_and_limit_stand_with_sense_ratio_and_conclusion(width: str, said: str, tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(1, width=width, panel_length="20 ft"))
    assert said in plain(d06(context))
    (one,) = (c for c in context.judgment.limit_checks if c.code == "SLT-02a")
    assert (one.name, one.member, one.path) == ("joint-width", ("joints", "J1"), ("joints", "J1", "width"))
    assert one.outcome is (Outcome.WITHIN if "OK" in said else Outcome.OUTSIDE)


def test_a_capacity_stands_with_its_own_working() -> None:
    said = plain(document_of("clean", "D06"))
    # 180 psf / 3 = 60 psf; 23.48 psf on level ground by a topographic factor of 1.3 are 30.52 at 22 ft, and at the top
    # of the parapet, 24.75 ft, (24.75 / 22)^(2 / 9.5) = 1.0251 times that, 31.29; 31.29 / 60 = 0.5215.
    assert (
        "E1: outward wind pressure 31.3 psf ≤ 60 psf allowable load (180 psf tested strength / 3 safety factor); "
        "ratio 0.52; OK."
    ) in said


def test_statuses_agree_with_the_clauses_that_judge_the_same() -> None:
    compared = 0
    for example in ("clean", "metric", "stops", "own-face", "old-wall"):
        context = context_of_example(example)
        outcomes = {(c.name, c.member, c.code): c.outcome for c in context.judgment.limit_checks}
        raised = {(code, subject) for f in context.judgment.findings for code in (f.code,) for subject in f.subjects}
        for one in gather_calculations(context):
            for member in one.workings:
                for found in conclude(context, one.provider, member):
                    # What a stop tells, no caution tells beside it.
                    told = [code for code in found.check.codes if member and (code, member[-1]) in raised]
                    for code in told or found.check.codes:
                        outcome = outcomes.get((one.provider.name, member, code))
                        if found.comparison is not None and outcome not in (None, Outcome.MISSING):
                            compared += 1
                            assert found.comparison.outcome is outcome, (example, member, code)
    assert compared > 40


def test_a_width_that_is_not_given_is_not_compared(tmp_path: Path) -> None:
    change = joints(1)
    del change["joints"]["J1"]["width"]
    said = plain(d06(context_of(tmp_path, change)))
    assert "Required width against width given, [Joint width]; Not compared." in said


def test_what_waits_names_its_fields_and_no_figure_takes_their_place(tmp_path: Path) -> None:
    change = joints(3)
    for mark in ("J2", "J3"):
        del change["joints"][mark]["panel_length"]
    said = text.write_text(d06(context_of(tmp_path, change)))
    assert "Sealant joint width | J2, J3 | [Moving length at the joint; " in said


def test_a_project_that_allows_no_calculation_says_so(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path))
    assert "Pending calculations" in titles(made)
    assert "Wall face temperature | All | [Elevations]" in text.write_text(made)


def test_figures_that_do_not_fit_are_told_among_what_waits(tmp_path: Path) -> None:
    def compute(view: Any, ask: Any) -> Any:
        raise refuse("the hot face is colder than the cold one", "mend the climate")

    context = with_providers(
        context_of(tmp_path), Provider(name="a", title="Trial", each=(), compute=compute, group="heat")
    )
    assert "Trial | Project | [the hot face is colder than the cold one]" in text.write_text(d06(context))


def test_what_the_code_requires_of_the_walls_stands_in_one_place() -> None:
    said = text.write_text(document_of("clean", "D06"))
    assert "Code requirements of the walls: see D02." in said
    assert "1407.4.1" not in said


def test_the_calculations_name_who_made_and_who_checked_them(tmp_path: Path) -> None:
    change = joints(1) | {"package": {"calculated_by": "L. Birchall", "checked_by": "S. Ashlar, PE"}}
    said = text.write_text(d06(context_of(tmp_path, change)))
    assert "Calculated by | L. Birchall | ____ | ____" in said
    assert "Checked by | S. Ashlar, PE | ____ | ____" in said
    assert "| Seal" not in said
    assert "Calculated by | ____ | ____ | ____" in text.write_text(d06(context_of(tmp_path, joints(1))))


def test_an_engineer_seals_what_he_checks_once_it_is_verified(tmp_path: Path) -> None:
    engineer = "Checked by | S. Ashlar, PE, license 48213, Kingpost Engineering"
    said = page_of(changed_clean(tmp_path, {"package": {"calculated_on": "tbd", "checked_on": "tbd"}}), "D06")
    assert f"{engineer} | ____ | ____ | ____" in said
    assert "Sign, date, and seal before submittal, March 1, 2027." in said
    assert "The engineer signs after verifying" in said
    said = text.write_text(document_of("clean", "D06"))
    assert f"{engineer} | Signed | February 26, 2027 | Sealed" in said
    assert "Signed, dated, and sealed February 26, 2027; the sealed copy is submitted with this set." in said
    assert "The engineer verified, by paragraph, the methods and figures that D05 lists for the engineer." in said


def test_what_is_given_stands_in_a_formula_of_its_sheet() -> None:
    said = text.write_text(document_of("clean", "D06"))
    (sheet,) = re.findall(r"\n\d+\. Earliest start of work\n(.*?)\n\n", said, re.S)
    assert "work can start, after a resubmittal E_2 = M_2 + w + D" in sheet


def test_the_seal_names_the_calculations_that_it_covers() -> None:
    # What a licensed engineer answers for: common practice, no source. Quantities, air, and time are the applicator's.
    said = text.write_text(document_of("clean", "D06"))
    titles = dict(re.findall(r"\n(\d+)\. ([A-Z].*)\n", said))
    covered, answers = re.findall(r"The seal covers calculations ([^:]+): [^;]+; (.+?) for the others", said)[0]
    spans = [(*map(int, span.split(" to ")), 0)[:2] for span in covered.split(", ")]
    sealed = {titles[str(n)] for first, last in spans for n in range(first, (last or first) + 1)}
    assert {"Wall face temperature, still air", "Sealant joint width", "Sealant depth", "Wind pressure"} <= sealed
    assert not sealed & {"Coating quantity", "Spray gun pressure", "Earliest start of work"}
    assert answers == "Lark and Mallow Finishes answers"


def test_notes_that_sheets_share_stand_once() -> None:
    said = text.write_text(document_of("stops", "D06", draft=True))
    assert said.count("Conduction into the board is neglected") == 1  # face heat; the same in still air refers to it
    assert "Assumptions and limits: As calculations 1 and 3." in said


def test_each_calculation_names_its_sources_by_letter() -> None:
    made = document_of("clean", "D06")
    told = [
        b.content for b in made.blocks if isinstance(b, Paragraph) and "Assumptions and limits" in plain_text(b.content)
    ]
    marks = {m for content in told for part in content if isinstance(part, Letters) for m in part.text.split(", ")}
    assert len(told) > 20
    assert any("ASTM E1980" in dict(made.legend)[mark] for mark in marks)


def test_what_is_computed_for_each_member_is_asked_once(tmp_path: Path) -> None:
    context = context_of(tmp_path, joints(4))
    assert [list(one.workings) for one in gather_calculations(context) if one.provider.name == "joint-width"] == [
        [("joints", f"J{n}") for n in range(1, 5)]
    ]
    assert b"<math" in html.write_html(d06(context), templates_folder())


def summary(made: Document) -> list[list[str]]:
    table = next(b for b in made.blocks if isinstance(b, Table) and plain_text(b.header[-1]) == "Status")
    return [[plain_text(cell) for cell in row] for row in table.rows]


def test_the_summary_stands_first_apart_by_status(tmp_path: Path) -> None:
    change = joints(4)
    change["joints"]["J3"]["width"] = "1/4 in"
    del change["joints"]["J4"]["width"]
    made = d06(context_of(tmp_path, change))
    assert titles(made)[0] == "Summary of results"
    rows = [row for row in summary(made) if row[0] == "Sealant joint width"]
    assert [row[5] for row in rows] == ["OK", "Exceeds", "Not compared"]
    assert [row[1].split()[0] for row in rows] == ["J2", "J3", "J4"]
    assert rows[0][1].endswith("(of 2)")
    assert rows[2][3] == "[Joint width]"


@pytest.mark.no_cover
def test_the_summary_shows_the_member_that_governs(tmp_path: Path) -> None:
    made = d06(context_of(tmp_path, joints(40)))
    (row,) = (row for row in summary(made) if row[0] == "Sealant joint width")
    # By hand: the first of 224 in and more, 224 in * 8e-6 * 105 / 0.5 + 0.125 = 0.501 in, is the first at 9/16 in;
    # the longest of those that round to the same governs.
    assert (row[1].split()[0], row[2]) == ("J40", "9/16\u00a0in")
    assert row[1].endswith("(of 40)")


def test_what_nothing_is_compared_with_stands_apart_with_what_is_bought() -> None:
    said = text.write_text(document_of("clean", "D06"))
    # 2479.5 sq ft of faces, 3 % of returns (common practice, no source) and 14 by 10 ft of mockup. Joints, V of 3/4
    # in by 1/2 in: two sides of 5/8 in are 1/2 in wider than flat; 276 + 251.5 + 273 ft: 33.35 sq ft. 2727.24 sq ft.
    # Primer to its target: 1604 * 0.38 * 0.35 / 1.7 mil = 125.49 sq ft/gal, 2727.24 / 125.49 * 1.1 = 23.91 gal, in
    # pails of 5 gal. Gloss: 1604 * 0.36 * 0.35 / 1.4 mil = 144.36 sq ft/gal, 2727.24 / 144.36 * 2 coats * 1.12 = 42.32.
    # Smoothing: 2727.24 / 240 * 2 coats * 1.08 = 24.55 gal. Of each the mockup, 140 sq ft, takes a pail of its own;
    # the work takes 22.68 of primer, 40.15 of gloss, 23.29 gal of smoothing: 5, 9 and 5 pails.
    assert "Coating quantity | primer, gloss | primer 23.9\u00a0gal, use 6 whole pails; gloss 42.3\u00a0gal" in said
    assert "Smoothing coat quantity | Project | 24.5\u00a0gal, use 6 whole pails" in said
    # 936 + 789.75 + 756 sq ft.
    assert "Net elevation area | E1, E2, E3 | total 2480\u00a0sq\u00a0ft" in said
    assert "Sealant depth" not in said.partition("Other results:")[2].partition("CALCULATIONS")[0]


def test_each_sheet_that_adds_its_members_up_tells_the_sum_and_what_is_in_none_of_them() -> None:
    said = plain(document_of("clean", "D06"))
    # Length in inches by width by depth, by 231 cu in to the gallon, and a tenth of waste.
    # J1: 816 * 3/4 * 3/8 = 229.5 cu in are 1.093 gal; J2: 540 * 1 * 1/2, 1.286 gal; J3: 432 * 1 * 1/2, 1.029 gal;
    # J4: half of J1, 0.546 gal; J5: 396 * 5/8 * 3/8, 0.442 gal;
    # J6 to J9, 88 ft in all: 1056 * 1-3/16 * 1/2 = 627 cu in are 2.986 gal.
    assert "Result: total 7.38 gal. Assumptions and limits: " in said
    assert "The bead at PN1 is taken from the waste." in said
    assert "DR1: 4.5 ft × 8 ft; LV1: 4.5 ft × 4 ft" in said


def test_a_formula_of_an_earlier_sheet_is_not_worked_again() -> None:
    said = text.write_text(document_of("clean", "D06"))
    assert said.count("H = a × z / (a + z)") == 1
    assert "By the formulas of calculation 19 | H = 1850\u00a0ft; P_a = 13.74\u00a0psi" in said


def test_a_wall_is_one_table_of_its_layers() -> None:
    said = text.write_text(document_of("clean", "D06"))
    # Resistances 0.2, 1/30, 1/8, 1/1.7, 1/6, and 1/8 of the coating add up to 1.2382; 0.94657 of them lie inside the
    # outer face of the board: 999.7 Pa less 0.94657 / 1.2382 of 654.5 Pa are 499.3 Pa. That and 524.3 Pa by 3386.389 Pa
    # to the inch of mercury, and their ratio.
    assert re.search(r"EPS board \| 10\.6 \| 1\.7\[\w+\] \| 28\.7 \| 0\.147 \| 0\.155 \| 95%", said)
    assert re.search(r"Coating \| [^|]* \| 8\[", said)


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


def test_symbols_at_the_head_of_a_table_are_named() -> None:
    said = plain(document_of("clean", "D06"))
    assert (
        "By member: p wall facing; N day of the year; t solar time of the peak; A apparent solar irradiation;" in said
    )
    assert "By member: L moving length; d_c structural closing;" in said


def test_a_comparison_that_no_clause_judges_says_that_no_verdict_rests_on_it(tmp_path: Path) -> None:
    said = plain(d06(context_of(tmp_path, joints(1, depth="1/4 in"))))
    # Half of 3/4 in is 3/8 in; 3/8 over 1/4 is 1.5.
    told = "Minimum depth 3/8 in > 1/4 in depth given; ratio 1.50; Exceeds; outside the verdict in D02."
    assert told in said


def test_a_margin_is_the_difference_of_the_two_temperatures_beside_it() -> None:
    (row,) = (row for row in summary(document_of("metric", "D06", draft=True)) if row[0] == "Wall face temperature")
    face, limit, margin = (Fraction(text.split("\u00a0")[0]) for text in (row[2], row[3], row[4]))
    # 33 + 0.48 * 55.556 * 0.988 = 59.347 °C, which prints as 59.3.
    assert limit - face == margin == Fraction("14.7")


def test_a_constant_stands_with_the_figure_that_the_formulas_show() -> None:
    said = text.write_text(document_of("clean", "D06"))
    # 6,356,766 m by 0.3048 m to the foot: the radius of the standard atmosphere.
    assert said.count("20855531") > 2
    # An hour that is taken off between the coats, and a unit that is divided by, stand among the constants as well.
    assert "Cleanup and setup between coats, u_b\u00a0= 1\u00a0h" in said
    assert "One square foot, A_1\u00a0= 1\u00a0sq\u00a0ft" in said


def test_what_a_strength_is_divided_by_is_given_for_each_wall() -> None:
    (table,) = (b for b in members_of(document_of("clean", "D06")) if "S, psf" in map(plain_text, b.header))
    # 180 / 3 and 220 / 3, as the example gives them.
    cells = [[plain_text(cell).replace("\u00a0", " ") for cell in row] for row in table.rows]
    assert [(row[2], row[-1].split(",")[0]) for row in cells] == [("180", "60 psf"), ("220", "73.3 psf")]


def test_the_sheet_of_wind_gives_exposure_and_risk_category() -> None:
    said = plain(document_of("clean", "D06"))
    assert "Exposure category | C" in said
    assert "Risk category | III" in said


def test_what_a_minimum_asks_for_stands_as_required_and_what_there_is_as_provided() -> None:
    (row,) = (row for row in summary(document_of("clean", "D06")) if row[0].startswith("Remaining board"))
    # AWCI: 3/4 in stays; 3 in less 1/16 in rasped and a joint of 1/2 in.
    assert [cell.replace("\u00a0", " ") for cell in row[2:4]] == ["3/4 in minimum", "2-7/16 in"]


@pytest.mark.parametrize(
    ("numbers", "told"),
    [([3], "calculation 3"), ([3, 5], "calculations 3 and 5"), ([11, 12, 13], "calculations 11, 12, and 13")],
)
def test_other_sheets_are_named_as_a_sentence_does(numbers: list[int], told: str) -> None:
    assert name_sheets(numbers) == told
