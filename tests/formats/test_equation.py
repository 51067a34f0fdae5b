"""Formulas on paper: expressions to trees, trees to MathML and OMML, and the plain line that is read aloud."""

import io
import re
import zipfile
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree
from lxml import html as page_parser

from specgen import computing
from specgen.computing.arguments import direct
from specgen.documents import document
from specgen.documents.calculations import equation
from specgen.documents.catalogue import Template, templates_folder
from specgen.formats import html, text
from specgen.formats.docx import word_file as docx
from specgen.formats.equation import mathml, omml
from specgen.formats.equation.expression import (
    Applied,
    Fence,
    Node,
    Ratio,
    Root,
    Row,
    Script,
    Words,
    build_lines,
    parse_expression,
)
from specgen.model.block import Document, Equation, Formula, Table
from specgen.model.working import Step
from tests.computing.test_workings import ROWS
from tests.documents.support import context_of_example

M = f"{{{omml.SPACE}}}"
W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
DECLARED = f'xmlns:m="{omml.SPACE}" xmlns:w="{W[1:-1]}"'
STEPS = [step for name, keys in ROWS for step in direct(computing.find(name), keys).steps]
EXPRESSIONS = sorted({text for step in STEPS for text in (step.expression, step.substitution)})
LINE = Equation("width for closing", "W_c", "D_c / S_c", "0.16186 / 0.5", "0.32372", "in")

# How many children an element of MathML has, and how many at least; W3C MathML Core, sections 3.3 and 3.4. None
# stands for any number; the leaves hold text.
ARITY = {"mfrac": 2, "msub": 2, "msup": 2, "msubsup": 3, "mrow": None, "msqrt": None, "math": None}
ARITY |= {"mtable": None, "mtr": None, "mtd": None}
LEAVES = {"mi", "mn", "mo", "mtext"}
# The children of each element of Office Math in their order, those that may be left out in parentheses; ECMA-376
# part 1, section 22.1 and the schema shared-math.xsd of annex A, from memory. `*` is any row of math.
MODEL = {
    "oMathPara": ["(oMathParaPr)", "oMath"],
    "oMathParaPr": ["(jc)"],
    "f": ["(fPr)", "num", "den"],
    "fPr": ["(type)", "(ctrlPr)"],
    "sSub": ["(sSubPr)", "e", "sub"],
    "sSup": ["(sSupPr)", "e", "sup"],
    "sSubSup": ["(sSubSupPr)", "e", "sub", "sup"],
    "sSubPr": ["(ctrlPr)"],
    "sSupPr": ["(ctrlPr)"],
    "sSubSupPr": ["(alnScr)", "(ctrlPr)"],
    "rad": ["(radPr)", "deg", "e"],
    "radPr": ["(degHide)", "(ctrlPr)"],
    "d": ["(dPr)", "e"],
    "dPr": ["(begChr)", "(sepChr)", "(endChr)", "(grow)", "(shp)", "(ctrlPr)"],
    "func": ["(funcPr)", "fName", "e"],
    "funcPr": ["(ctrlPr)"],
    "ctrlPr": ["(w:rPr)"],
    "r": ["(rPr)", "(w:rPr)", "t"],
    "rPr": ["(lit)", "(nor)", "(sty)"],
}
ROWS_OF_MATH = {"oMath", "num", "den", "e", "sub", "sup", "deg", "fName"}
MATH = {"r", "f", "sSub", "sSup", "sSubSup", "rad", "d", "func"}
NOT_EMPTY = {"oMath", "num", "den", "e", "sub", "sup", "fName"}


def faults_of_mathml(element: Any) -> list[str]:
    """What is against the arity of MathML."""
    name = element.tag.split("}")[-1]
    if name in LEAVES:
        return [] if element.text and not len(element) else [f"{name} holds no text"]
    if name not in ARITY:
        return [f"{name} is not known"]
    own = [f"{name} has {len(element)} children"] if ARITY[name] not in (None, len(element)) else []
    return own + [fault for child in element for fault in faults_of_mathml(child)]


def faults_of_omml(element: Any) -> list[str]:
    """What is against the content model of Office Math."""
    if not element.tag.startswith(M):
        return []
    name = element.tag.removeprefix(M)
    children = [child.tag.replace(M, "").replace(W, "w:") for child in element]
    own: list[str] = []
    if name in ROWS_OF_MATH:
        own = [f"{name} holds {child}" for child in children if child not in MATH]
        own += [f"{name} is empty"] if name in NOT_EMPTY and not children else []
    elif name in MODEL:
        pattern = "".join(f"({re.escape(n.strip('()'))} ){'?' if n[0] == '(' else ''}" for n in MODEL[name])
        own = [] if re.fullmatch(pattern, "".join(f"{c} " for c in children)) else [f"{name}: {children}"]
    elif children:
        own = [f"{name} holds {children}"]
    return own + [fault for child in element for fault in faults_of_omml(child)]


def office(inner: str) -> Any:
    return etree.fromstring(f"<w:p {DECLARED}>{inner}</w:p>")


# Expression and its MathML without the attributes of the root; W3C MathML Core, sections 3.2 to 3.4.
SET = [
    ("D_c / S_c", "<mfrac><msub>D c</msub><msub>S c</msub></mfrac>"),
    ("D_o^2", "<msubsup>D o 2</msubsup>"),
    ("alpha", "α"),
    ("rho_a", "<msub>ρ a</msub>"),
    ("dT", "<mrow>Δ T</mrow>"),
    ("R1", "<msub>R 1</msub>"),
    ("T_a_max", "<msub>T a,max</msub>"),
    ("sqrt(a + b)", "<msqrt><mrow>a + b</mrow></msqrt>"),
    ("abs(a - b)", "<mrow>| <mrow>a − b</mrow> |</mrow>"),
    ("5.66961e-8", "<mrow>5.66961 × <msup>10 <mrow>− 8</mrow></msup></mrow>"),
    ("1e-9", "<msup>10 <mrow>− 9</mrow></msup>"),
    ("2e6", "<mrow>2 × <msup>10 <mrow>6</mrow></msup></mrow>"),
    ("a * b", "<mrow>a ⋅ b</mrow>"),
    ("28 - (-14)", "<mrow>28 − <mrow>( <mrow>− 14</mrow> )</mrow></mrow>"),
    ("a - (b + c)", "<mrow>a − <mrow>( <mrow>b + c</mrow> )</mrow></mrow>"),
    ("(1 - SR) * H", "<mrow><mrow>( <mrow>1 − SR</mrow> )</mrow> ⋅ H</mrow>"),
    ("(a + b) / c", "<mfrac><mrow>a + b</mrow>c</mfrac>"),
    ("(a / b)^2", "<msup><mrow>( <mfrac>a b</mfrac> )</mrow>2</msup>"),
    ("max(a, b)", "<mrow>max \u2061 <mrow>( <mrow>a , b</mrow> )</mrow></mrow>"),
]


@pytest.mark.parametrize(("expression", "wanted"), SET)
def test_an_expression_is_set_as_mathematics(expression: str, wanted: str) -> None:
    shape = re.sub(r"</?(mi|mn|mo|mtext)\b[^>]*>", " ", mathml.render_element(parse_expression(expression)))
    assert re.sub(r" *(<[^>]+>) *", r"\1", re.sub(" +", " ", shape)).strip() == re.sub(r" *(<[^>]+>) *", r"\1", wanted)


@pytest.mark.parametrize(("text_of", "kind"), [("a", "variable"), ("SR", "upright"), ("alpha", "variable")])
def test_one_letter_slants_and_several_stand_upright(text_of: str, kind: str) -> None:
    # ISO 80000-2: variables of one letter slant, words and names of functions stand upright; from memory.
    made = parse_expression(text_of)
    assert isinstance(made, Words)
    assert made.kind == kind
    sub = parse_expression(f"T_{text_of}")
    assert isinstance(sub, Script)
    assert isinstance(sub.below, Words)
    assert sub.below.kind == "upright"


@pytest.mark.parametrize("expression", ["a ** ", "a if b else c", "f(x=1)", "'a'", "a % b", "a.b", ""])
def test_what_no_working_prints_is_no_formula(expression: str) -> None:
    with pytest.raises(ValueError, match="no expression|no working prints"):
        parse_expression(expression)


def back(node: Node) -> str:
    """The tree as Python reads it: what a reader makes of the signs on paper."""
    match node:
        case Words(text=said):
            return {"\u2212": "-", "\u22c5": "*", "\u00d7": "*"}.get(said, said)
        case Row(parts):
            return "".join(map(back, parts))
        case Ratio(over, under):
            return f"(({back(over)})/({back(under)}))"
        case Script(base, None, above) if above is not None:
            return f"{back(base)}**({back(above)})"
        case Root(of):
            return f"sqrt({back(of)})"
        case Fence(of, "|", _):
            return f"abs({back(of)})"
        case Fence(of):
            return f"({back(of)})"
        case Applied(name, of):
            return back(name) + back(of)
    raise AssertionError(node)


LEAF = st.sampled_from(["a", "b", "c", "2", "0.5", "3e-2", "1e-1"])
EXPRESSION = st.recursive(
    LEAF,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda p: f"({p[0]}) {p[1]} ({p[2]})"),
        inner.map(lambda of: f"-({of})"),
        inner.map(lambda of: f"({of})^2"),
        inner.map(lambda of: f"sqrt(abs({of}))"),
        st.tuples(inner, inner).map(lambda p: f"max({p[0]}, {p[1]})"),
    ),
    max_leaves=8,
)


def computed(expression: str) -> Any:
    known = {"a": 1.75, "b": -0.625, "c": 3.5, "sqrt": lambda x: x**0.5, "max": max, "abs": abs}
    try:
        return eval(expression.replace("^", "**"), {"__builtins__": {}}, known)
    except (ZeroDivisionError, OverflowError):
        return None


@settings(max_examples=400)
@given(EXPRESSION)
def test_what_stands_on_paper_means_what_was_computed(expression: str) -> None:
    wanted, read = computed(expression), computed(back(parse_expression(expression)))
    assert (wanted is None) == (read is None)
    if wanted is not None:
        assert read == pytest.approx(wanted, rel=1e-9, abs=1e-9)


@given(EXPRESSION)
def test_any_expression_gives_sound_markup(expression: str) -> None:
    made = parse_expression(expression)
    assert faults_of_mathml(etree.fromstring(f"<math>{mathml.render_element(made)}</math>")) == []
    assert faults_of_omml(office(omml.render_inline(expression))) == []


def test_unsound_markup_would_be_found() -> None:
    assert faults_of_mathml(etree.fromstring("<math><mfrac><mi>a</mi></mfrac></math>")) == ["mfrac has 1 children"]
    wrong = office("<m:oMath><m:f><m:den/><m:num/></m:f><m:e/></m:oMath>")
    assert faults_of_omml(wrong[0]) == [
        "oMath holds e",
        "f: ['den', 'num']",
        "den is empty",
        "num is empty",
        "e is empty",
    ]


def test_there_are_expressions_of_every_calculation() -> None:
    assert {name for name, _ in ROWS} == {name for name in computing.names() if computing.find(name).direct}
    assert len(EXPRESSIONS) > 30


@pytest.mark.parametrize("step", STEPS, ids=lambda s: f"{s.symbol} = {s.substitution}"[:60])
@pytest.mark.no_cover
def test_every_line_of_every_calculation_is_set_in_both_markups(step: Step) -> None:
    made = equation(step)
    shown = etree.fromstring(mathml.render_display(made))
    assert faults_of_mathml(shown) == []
    paragraphs = [office(omml.render_display(line)) for line in build_lines(made)]
    assert [fault for p in paragraphs for child in p for fault in faults_of_omml(child)] == []
    for said in ("".join(shown.itertext()), "".join(t for p in paragraphs for t in p.itertext())):
        # A power of ten is set apart; every other figure stands as it is printed.
        for number in re.findall(r"(?<![\w.])\d+(?:\.\d+)?(?!\w|\.|e)", f"{step.expression} {made.substitution}"):
            assert number in said
        assert made.result.partition("e")[0].lstrip("-") in said
        assert made.unit in said


@pytest.mark.parametrize("step", STEPS[:20], ids=lambda s: s.symbol)
def test_what_is_read_aloud_is_the_plain_line(step: Step) -> None:
    made = equation(step)
    unit = f" {made.unit}" if made.unit else ""
    wanted = f"{step.symbol} = {step.expression} = {step.substitution} = {made.result}{unit}"
    assert made.plain == wanted
    shown = etree.fromstring(mathml.render_display(made))
    assert shown.get("alttext") == shown.get("aria-label") == wanted


def test_figures_that_are_the_result_stand_once() -> None:
    made = Equation("width", "W", "W_c", "2", "2", "in")
    assert made.plain == "W = W_c = 2 in"
    assert len(build_lines(made)) == 1
    assert len(build_lines(LINE)) == 2


def test_a_line_of_an_equation_in_word_fills_its_paragraph_at_the_left() -> None:
    for line in build_lines(LINE):
        whole = office(omml.render_display(line))[0]
        assert whole.tag == f"{M}oMathPara"
        assert whole.find(f"{M}oMathParaPr/{M}jc").get(f"{M}val") == "left"
    # Word sets equations in Cambria Math; common practice, no source.
    fonts = {font.get(f"{W}ascii") for font in whole.iter(f"{W}rFonts")}
    assert fonts == {"Cambria Math"}


def blocks_of(document: Document) -> tuple[list[Equation], int]:
    """The equations of a document, and how many symbols stand in its tables."""
    cells = [cell for b in document.blocks if isinstance(b, Table) for row in (b.header, *b.rows) for cell in row]
    symbols = sum(isinstance(part, Formula) for cell in cells for part in cell)
    return [block for block in document.blocks if isinstance(block, Equation)], symbols


# A firm's own page of calculations: each line as a display of its own, and the tables of members.
WORDS = """# Lines
{% for group in calculations() %}{% for sheet in group.sheets %}{% for line in sheet.lines %}

{{ line }}

{% endfor %}{% for view in sheet.members %}

{{ table(view) }}

{% endfor %}{% endfor %}{% endfor %}
"""


@pytest.fixture(scope="module")
def calculations() -> Document:
    template = Template(
        id="D99",
        title="Trial",
        order=1,
        numbering="plain",
        landscape=False,
        words=WORDS,
        file="D99.md.j2",
        first_line=6,
    )
    return document.compose_document(template, context_of_example("clean"), False)


def test_word_gets_native_equations_for_every_line_and_runs_for_a_symbol(calculations: Document) -> None:
    with zipfile.ZipFile(io.BytesIO(docx.write_docx(calculations, templates_folder() / "letterhead.docx"))) as zipped:
        body = etree.fromstring(zipped.read("word/document.xml"))
    equations, symbols = blocks_of(calculations)
    assert len(equations) > 10
    assert symbols > 10
    shown = list(body.iter(f"{M}oMathPara"))
    assert len(shown) == sum(len(build_lines(e)) for e in equations)
    assert len(list(body.iter(f"{M}oMath"))) == len(shown)
    lowered = [run for run in body.iter(f"{W}r") if run.find(f"{W}rPr/{W}vertAlign[@{W}val='subscript']") is not None]
    assert {"hot", "s", "c"} <= {"".join(run.itertext()) for run in lowered}
    assert [fault for math in body.iter(f"{M}oMath") for fault in faults_of_omml(math)] == []


def test_a_page_gets_mathml_for_every_line_and_symbol_and_asks_nothing_of_the_outside(calculations: Document) -> None:
    made = html.write_html(calculations, templates_folder()).decode()
    assert not re.search(r"""(src|href)\s*=\s*["'](?!#)|url\(|@import|<script""", made)
    equations, symbols = blocks_of(calculations)
    shown = page_parser.fromstring(made).xpath("//math")
    assert len(shown) == len(equations) + symbols
    assert [m.get("alttext") for m in shown if m.get("display") == "block"] == [e.plain for e in equations]
    assert [fault for math in shown for fault in faults_of_mathml(math)] == []


def test_plain_text_gets_the_plain_line(calculations: Document) -> None:
    said = text.write_text(calculations).splitlines()
    equations, _ = blocks_of(calculations)
    assert [f"{e.title}: {e.plain}" in said for e in equations] == [True] * len(equations)
