"""The summary for review in a browser: whole, open to all readers, sorted and filtered by keyboard alone.

What is asked of a page is from memory of the HTML standard (WHATWG), of the Web Content Accessibility Guidelines (W3C,
WCAG 2.2) and of the Content Security Policy (W3C, Level 3); what goes beyond them is behavior of ours.
"""

import base64
import hashlib
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import html5lib
import pytest
from lxml import html as parser
from playwright.sync_api import Browser

from specgen import building
from specgen.documents.catalogue import templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.documents.review_page import compose_review_page
from specgen.formats.review_page import write_review_page
from specgen.model.block import Document, Link, Part, Table, Text
from tests.documents.support import context_of_example
from tests.formats.browser import DESK, PHONE, Opened, chromium, opened
from tests.formats.test_awkward_text import STRINGS, spaced
from tests.support import EXAMPLES, SMALL, merged, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
INDEX = "index.html"
Drafts = Callable[[str], Path]


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as started:
        yield started


def tree_of(folder: Path) -> Any:
    return parser.document_fromstring((folder / INDEX).read_text("utf-8"))


def rows_under(tree: Any, heading: str) -> list[list[str]]:
    """The cells of the table below a heading."""
    rows = tree.xpath(f"//h2[.='{heading}']/following-sibling::div[1]//tbody/tr")
    return [[spaced(cell.text_content()) for cell in row] for row in rows]


# Every example.


@pytest.mark.parametrize("width", [PHONE, DESK])
@pytest.mark.parametrize("example", NAMES)
def test_the_page_of_an_example_is_quiet_fits_its_window_and_is_open_to_all(
    example: str, width: int, draft_of: Drafts, browser: Browser
) -> None:
    with opened(browser, draft_of(example) / INDEX, width) as shown:
        assert shown.said == []
        assert shown.asked == []
        assert not shown.is_wider_than_its_window()
        assert shown.find_faults() == []


@pytest.mark.parametrize("example", NAMES)
def test_a_strict_parser_finds_no_error_in_the_page_of_an_example(example: str, draft_of: Drafts) -> None:
    html5lib.HTMLParser(strict=True).parse((draft_of(example) / INDEX).read_text("utf-8"))


@pytest.mark.parametrize("example", NAMES)
def test_each_link_finds_its_file_and_its_place_and_each_file_has_a_link(example: str, draft_of: Drafts) -> None:
    folder = draft_of(example)
    links = {unquote(link) for link in tree_of(folder).xpath("//main//a/@href")}
    files = {link.partition("#")[0] for link in links} - {""}
    assert files == {file.name for file in folder.iterdir()} - {INDEX}
    for link in links:
        name, _, place = link.partition("#")
        page = (folder / (name or INDEX)).read_text("utf-8") if place else ""
        assert not place or f' id="{place}"' in page


def test_the_documents_of_an_example_are_open_to_all(draft_of: Drafts, browser: Browser) -> None:
    for file in sorted(draft_of("clean").glob("D*.html")):
        with opened(browser, file, PHONE) as shown:
            assert (file.name, shown.find_faults(), shown.said) == (file.name, [], [])


def test_the_checker_would_find_a_serious_fault(tmp_path: Path, browser: Browser) -> None:
    page = "<!DOCTYPE html><html><title>T</title><main><h1>T</h1><input><p style='color:#ccc'>pale</p></main></html>"
    (tmp_path / "a.html").write_text(page, "utf-8")
    with opened(browser, tmp_path / "a.html") as shown:
        assert {fault.split(":")[0] for fault in shown.find_faults()} >= {"color-contrast", "html-has-lang", "label"}


# What it tells: the examples are described in the README, and the values retyped from their files.


@pytest.mark.parametrize(
    ("example", "told"),
    [
        ("clean", {"W1": "Yes", "W2": "Yes"}),
        ("stops", {"W1": "No", "W2": "Yes, with measures"}),
        ("first-look", {"W1": "Not yet known"}),
    ],
)
def test_the_verdict_of_each_wall_stands_first(example: str, told: dict[str, str], draft_of: Drafts) -> None:
    tree = tree_of(draft_of(example))
    assert tree.xpath("string(//main//h2)") == "Suitability of walls for the finish"
    rows = rows_under(tree, "Suitability of walls for the finish")
    assert {row[0]: row[2] for row in rows} == told


def test_a_stop_stands_with_its_measure_its_party_and_the_documents_it_affects(draft_of: Drafts) -> None:
    rows = rows_under(tree_of(draft_of("stops")), "Findings")
    (row,) = (row for row in rows if row[1] == "BAS-01b")
    assert row[0] == "Stop"
    assert row[2] == "W1 OSB"
    assert row[3].startswith("Base coat dry thickness is 3/64 in; minimum 1/16 in")
    assert row[4] == "Apply the base coat to a minimum dry thickness of 1/16 in."
    assert row[5] == "Applicator, before base coat"
    assert row[6].split(", ")[0] == "D08"
    order = [row[0] for row in rows]
    assert order == sorted(order, key=["Stop", "Caution", "Note"].index)


def test_a_package_that_is_sent_has_no_word_of_a_draft_and_lists_what_is_still_to_be_done(clean_package: Path) -> None:
    tree = tree_of(clean_package)
    assert "draft" not in tree.xpath("string(//body/@class)").split()
    assert "Draft" not in tree.xpath("string(//main)")
    facts = dict(zip(tree.xpath("//header//dt/text()"), tree.xpath("//header//dd"), strict=True))
    told = {label: spaced(facts[label].text_content()) for label in ("Submittal", "Revision", "Date", "Purpose")}
    assert told == {
        "Submittal": "07 24 00-002",
        "Revision": "0",
        "Date": "March 1, 2027",
        "Purpose": "Submittal, work",
    }
    assert rows_under(tree, "Open items by party")[0] == [
        "Action on items I1 to I4, I9 to I11",
        "Architect (Lintel and Quoin Architects)",
        "order of the sample color, March 22, 2027",
    ]
    assert tree.xpath("//h2[.='Figures not verified against a published text']")


def test_a_draft_says_so_and_tells_what_it_leaves_out(tmp_path: Path) -> None:
    building.build(EXAMPLES / "stops" / "project.yaml", tmp_path / "out", ("html", "txt"), draft=True)
    tree = tree_of(tmp_path / "out")
    assert "draft" in tree.xpath("string(//body/@class)").split()
    assert tree.xpath("string(//main/p[@role='note']/strong)") == "Draft."
    rows = {row[0]: row for row in rows_under(tree, "Documents")}
    assert rows["D05"][4] == "Web page, Text"
    assert rows["D08"][4] == "not included, under 90% of values known"


def test_the_drawings_are_small_and_lead_to_their_place(draft_of: Drafts, browser: Browser) -> None:
    with opened(browser, draft_of("clean") / INDEX) as shown:
        figures = shown.page.locator("figure")
        assert [spaced(text) for text in shown.page.locator("figcaption").all_text_contents()] == [
            "D07, Figure 2. Elevation E1 South face",
            "D07, Figure 3. Elevation E2 West face",
            "D07, Figure 4. Elevation E3 Stack house",
        ]
        box = figures.first.locator("svg").bounding_box()
        assert box is not None
        assert 200 < box["width"] < 400
        # A click on the drawing itself follows the link of its caption.
        figures.first.click(position={"x": 50, "y": 50})
        assert "D07-" in shown.page.url
        caption = shown.page.locator("figure:target figcaption").inner_text()
        assert spaced(caption) == "Figure 2. Elevation E1 South face"


def test_a_package_of_one_document_lists_that_one(tmp_path: Path, browser: Browser) -> None:
    building.build(written(tmp_path, SMALL), tmp_path / "out", ("docx", "html"), ("D05",))
    names = {file.name for file in (tmp_path / "out").iterdir()}
    assert INDEX in names
    rows = rows_under(tree_of(tmp_path / "out"), "Documents")
    assert [(row[0], row[1], row[4]) for row in rows] == [
        ("D05", "Warnings and limitations", "Word, Web page"),
        ("All", "List of files", "manifest.json"),
    ]
    with opened(browser, tmp_path / "out" / INDEX, PHONE) as shown:
        assert (shown.said, shown.asked, shown.find_faults()) == ([], [], [])
        assert shown.page.locator("h2:text-is('Drawings')").count() == 0


def test_a_package_without_findings_says_what_was_evaluated(tmp_path: Path) -> None:
    building.build(written(tmp_path, SMALL), tmp_path / "out", ("html",), draft=True)
    tree = tree_of(tmp_path / "out")
    said = tree.xpath("string(//h2[.='Findings']/following-sibling::*[1])")
    assert said.startswith("No finding in the rules evaluated; rules not evaluated: see D02.")
    assert tree.xpath("local-name(//h2[.='Findings']/following-sibling::*[2])") == "h2"


def test_there_is_no_page_without_web_pages(tmp_path: Path) -> None:
    building.build(written(tmp_path, SMALL), tmp_path / "out", ("txt",), ("D05",))
    assert not (tmp_path / "out" / INDEX).exists()


# By keyboard alone.


def tab_to(shown: Opened, wanted: str, most: int = 200) -> None:
    """Press Tab until what has the focus fits a selector."""
    for _ in range(most):
        shown.page.keyboard.press("Tab")
        if shown.page.evaluate("wanted => document.activeElement.matches(wanted)", wanted):
            return
    raise AssertionError(f"Tab does not lead to {wanted}")


def column(shown: Opened, place: int, table: int = 0) -> list[str]:
    """The texts of a column as they stand, of the rows that show."""
    cells = f"main table >> nth={table} >> tbody tr:visible > :nth-child({place})"
    return [spaced(cell.inner_text()) for cell in shown.page.locator(cells).all()]


def status(shown: Opened, table: int = 0) -> str:
    return shown.page.locator("[role=status]").nth(table).inner_text()


def page_of(folder: Path, header: tuple[str, ...], rows: list[tuple[str, ...]], title: str = "Trial") -> Path:
    """A page with one table."""
    cells = tuple(tuple((Text(text),) if text else () for text in row) for row in rows)
    share = 100 // len(header)
    table = Table(tuple((Text(name),) for name in header), cells, (share,) * len(header))
    blocks = (Part((Text(title),)), table)
    document = Document(id="Package", title="Trial", project="Trial", facts=(), blocks=blocks, legend=())
    (folder / INDEX).write_bytes(write_review_page(document, templates_folder()))
    return folder / INDEX


HEADER = ("Mark", "Count", "Length", "Date", "Section")
ROWS = [
    ("J10", "1,200", "1-1/2 in", "March 2, 2027", "09 24 23"),
    ("J2", "90", "3/4 in", "December 30, 2026", "07 92 00"),
    ("W1", "", "7 in", "", ""),
    ("j1", "2.5", "0.8 in", "March 10, 2027", "09 24 00"),
    ("J9", "-3", "12 in", "January 5, 2028", "9 24 24"),
]
# Each column in rising order as a person would set it; what is empty comes last either way.
RISING = [
    ["j1", "J2", "J9", "J10", "W1"],
    ["-3", "2.5", "90", "1,200", ""],
    ["3/4 in", "0.8 in", "1-1/2 in", "7 in", "12 in"],
    ["December 30, 2026", "March 2, 2027", "March 10, 2027", "January 5, 2028", ""],
    ["07 92 00", "09 24 00", "09 24 23", "9 24 24", ""],
]


@pytest.mark.parametrize("width", [PHONE, DESK])
@pytest.mark.parametrize("place", range(len(HEADER)), ids=HEADER)
def test_a_column_is_sorted_by_what_it_holds_with_the_keyboard_alone(
    place: int, width: int, tmp_path: Path, browser: Browser
) -> None:
    wanted, falling = RISING[place], [*reversed([text for text in RISING[place] if text])]
    falling += [""] * (len(wanted) - len(falling))
    with opened(browser, page_of(tmp_path, HEADER, ROWS), width) as shown:
        tab_to(shown, f"th:nth-child({place + 1}) button")
        assert shown.page.evaluate("document.activeElement.getBoundingClientRect().width > 20")
        head = shown.page.locator(f"th[scope=col]:nth-child({place + 1})")
        steps = [("Enter", "ascending", wanted), ("Space", "descending", falling)]
        steps.append(("Enter", "none", [row[place] for row in ROWS]))
        for key, way, order in steps:
            shown.page.keyboard.press(key)
            texts = shown.page.locator(f"tbody tr > :nth-child({place + 1})").all_text_contents()
            assert list(map(spaced, texts)) == order
            assert head.get_attribute("aria-sort") == way
            others = shown.page.locator(f"th[scope=col]:not(:nth-child({place + 1}))")
            assert {other.get_attribute("aria-sort") for other in others.all()} == {"none"}
            said = "First order." if way == "none" else f"Sorted by {HEADER[place]}, {way}."
            assert status(shown) == f"5 of 5 rows shown. {said}"


@pytest.mark.parametrize("width", [PHONE, DESK])
def test_typing_shows_the_rows_that_hold_all_words(width: int, tmp_path: Path, browser: Browser) -> None:
    with opened(browser, page_of(tmp_path, HEADER, ROWS), width) as shown:
        assert shown.page.get_by_label("Filter: Trial").count() == 1
        tab_to(shown, "input[type=search]")
        shown.page.keyboard.type("MARCH 2027 in")
        assert column(shown, 1) == ["J10", "j1"]
        assert status(shown) == "2 of 5 rows shown."
        tab_to(shown, "th:first-child button")
        shown.page.keyboard.press("Enter")
        assert column(shown, 1) == ["j1", "J10"]
        shown.page.keyboard.press("Shift+Tab")
        shown.page.keyboard.type(" nowhere")
        assert column(shown, 1) == []
        assert status(shown) == "0 of 5 rows shown."
        shown.page.keyboard.press("Control+A")
        shown.page.keyboard.press("Delete")
        assert column(shown, 1) == ["j1", "J2", "J9", "J10", "W1"]


def test_what_is_filtered_out_is_printed_all_the_same(tmp_path: Path, browser: Browser) -> None:
    with opened(browser, page_of(tmp_path, HEADER, ROWS)) as shown:
        shown.page.get_by_label("Filter: Trial").fill("j10")
        assert len(column(shown, 1)) == 1
        shown.page.emulate_media(media="print")
        assert len(column(shown, 1)) == 5
        assert not shown.page.get_by_label("Filter: Trial").is_visible()


def test_the_findings_of_a_project_are_filtered_and_sorted(draft_of: Drafts, browser: Browser) -> None:
    with opened(browser, draft_of("stops") / INDEX) as shown:
        every = len(column(shown, 2, 1))
        shown.page.get_by_label("Filter: Findings").fill("BAS-02")
        assert column(shown, 2, 1) == ["BAS-02a", "BAS-02b", "BAS-02c", "BAS-02d"]
        assert status(shown, 1) == f"4 of {every} rows shown."
        tab_to(shown, "th:nth-child(2) button")
        shown.page.keyboard.press("Enter")
        shown.page.keyboard.press("Enter")
        assert column(shown, 2, 1) == ["BAS-02d", "BAS-02c", "BAS-02b", "BAS-02a"]


@pytest.mark.parametrize("example", ["clean", "stops"])
def test_the_page_is_whole_without_its_script(example: str, draft_of: Drafts, browser: Browser) -> None:
    file = draft_of(example) / INDEX
    with opened(browser, file) as shown:
        told = [column(shown, place, 1) for place in range(1, 8)]
    with opened(browser, file, script=False) as plain:
        assert [column(plain, place, 1) for place in range(1, 8)] == told
        assert plain.page.locator("button, input, [role=status], [aria-sort]").count() == 0
        assert plain.said == []


# Many rows, and hostile ones.


def test_a_thousand_findings_have_a_row_each(tmp_path: Path, browser: Browser) -> None:
    context = context_of_example("stops")
    (one,) = (finding for finding in context.judgment.findings if finding.code == "BAS-05a")
    (told,) = one.told
    marks = [f"E{n}" for n in range(1000, 0, -1)]
    many = tuple(one._replace(subjects=(mark,), told=(told._replace(subjects=(mark,)),)) for mark in marks)
    context = replace(context, judgment=replace(context.judgment, findings=many))
    made = ComposedSet(documents=(), context=context, templates=templates_folder())
    (tmp_path / INDEX).write_bytes(write_review_page(compose_review_page(made, ()), templates_folder()))
    with opened(browser, tmp_path / INDEX) as shown:
        shown.page.get_by_role("button", name="Where").click()
        cells = shown.page.locator("main table >> nth=1 >> tbody td:nth-child(3)").all_text_contents()
        assert [spaced(cell).split()[0] for cell in cells] == [*reversed(marks)]
        shown.page.get_by_label("Filter: Findings").fill("e777")
        assert status(shown, 1) == "1 of 1000 rows shown."


def test_a_thousand_rows_are_sorted_and_filtered(tmp_path: Path, browser: Browser) -> None:
    rows = [(f"E{n * 7 % 1000 + 1}", "Stop", f"Board {n * 11 % 1000 + 1} in too thick.", "D08") for n in range(1000)]
    with opened(browser, page_of(tmp_path, ("Where", "Kind", "Finding", "Affects"), rows), PHONE) as shown:
        tab_to(shown, "th:first-child button")
        shown.page.keyboard.press("Enter")
        texts = shown.page.locator("tbody th").all_text_contents()
        assert texts == [f"E{n}" for n in range(1, 1001)]
        shown.page.get_by_label("Filter: Trial").fill("e1000")
        assert column(shown, 1) == ["E1000"]
        assert status(shown) == "1 of 1000 rows shown."
        assert not shown.is_wider_than_its_window()


def test_hostile_text_is_shown_as_text(tmp_path: Path, browser: Browser) -> None:
    rows = [(str(n), text) for n, text in enumerate(STRINGS)]
    with opened(browser, page_of(tmp_path, ("No.", "Text"), rows, "</script><script>alert(1)</script>")) as shown:
        texts = shown.page.locator("tbody td").all_text_contents()
        assert [*map(spaced, texts)] == [spaced(text) for _, text in rows]
        assert shown.page.get_by_label("Filter: </script><script>alert(1)</script>").count() == 1
        shown.page.get_by_label("Filter").fill("<script>")
        tab_to(shown, "th:nth-child(2) button")
        shown.page.keyboard.press("Enter")
        assert (shown.said, shown.asked) == ([], [])


def test_a_hostile_name_of_a_project_and_of_its_parties_is_shown_as_text(tmp_path: Path, browser: Browser) -> None:
    name = "\"><img src=x onerror=alert(1)> $style '</title><script>alert(2)</script>"
    change = {"project": {"name": name}, "parties": {"applicator": {"name": name}}}
    building.build(written(tmp_path, merged(SMALL, change)), tmp_path / "out", ("html",), draft=True)
    with opened(browser, tmp_path / "out" / INDEX) as shown:
        assert shown.page.title() == f"{name}: Summary for review"
        assert shown.page.locator(".firm").inner_text() == name
        assert (shown.said, shown.asked, shown.page.locator("img").count()) == ([], [], 0)


def test_a_link_to_a_file_with_signs_of_addresses_in_its_name_leads_there(tmp_path: Path, browser: Browser) -> None:
    name = 'D05-100% "a" & b#1 é.html'
    (tmp_path / name).write_text("<!DOCTYPE html><title>There</title>", "utf-8")
    table = Table(((Text("File"),),), (((Link("there", name),),),), (100,))
    document = Document(id="A", title="T", project="T", facts=(), blocks=(Part((Text("T"),)), table), legend=())
    (tmp_path / INDEX).write_bytes(write_review_page(document, templates_folder()))
    with opened(browser, tmp_path / INDEX) as shown:
        shown.page.get_by_text("there").click()
        assert shown.page.title() == "There"


# The policy of the page.


def policy_of(tree: Any) -> dict[str, list[str]]:
    (content,) = tree.xpath("//meta[@http-equiv='Content-Security-Policy']/@content")
    return {part.split()[0]: part.split()[1:] for part in content.split("; ")}


def test_the_policy_allows_the_script_by_its_digest_and_nothing_else(clean_package: Path) -> None:
    tree = tree_of(clean_package)
    (script,) = tree.xpath("//script")
    assert script.attrib == {}
    digest = base64.b64encode(hashlib.sha256(script.text.encode()).digest()).decode()
    policy = policy_of(tree)
    assert policy["script-src"] == [f"'sha256-{digest}'"]
    assert policy["default-src"] == ["'none'"]
    assert set(policy) == {"default-src", "script-src", "style-src", "img-src"}
    assert "unsafe-inline" not in str(policy)


def test_another_script_in_the_page_does_not_run(clean_package: Path, tmp_path: Path, browser: Browser) -> None:
    page = (clean_package / INDEX).read_text("utf-8")
    for piece in ("<script>document.title = 'taken'</script>", "<img src=x onerror=\"document.title = 'taken'\">"):
        (tmp_path / INDEX).write_text(page.replace("</main>", f"{piece}</main>"), "utf-8")
        with opened(browser, tmp_path / INDEX) as shown:
            assert "Content Security Policy" in "".join(shown.said)
            assert shown.page.title() == "Wickerwell Branch Library: Summary for review"


def test_a_firm_s_own_frame_and_style_are_those_of_the_page(tmp_path: Path, browser: Browser) -> None:
    own = tmp_path / "words"
    own.mkdir()
    frame, style = ((templates_folder() / name).read_text("utf-8") for name in ("page.html", "style.css"))
    frame = frame.replace("<header>", '<p id="us" style="color: rgb(1, 2, 3)">Our firm &amp; yours</p><header>')
    (own / "page.html").write_text(frame, "utf-8")
    (own / "style.css").write_text(f"{style}\nh1 {{ color: rgb(9, 8, 7); }}\n", "utf-8")
    building.build(written(tmp_path, SMALL), tmp_path / "out", ("html",), ("D05",), templates=own)
    with opened(browser, tmp_path / "out" / INDEX) as shown:
        assert shown.said == []
        colors = [
            shown.page.evaluate("tag => getComputedStyle(document.querySelector(tag)).color", tag)
            for tag in ("#us", "h1")
        ]
        assert colors == ["rgb(1, 2, 3)", "rgb(9, 8, 7)"]
        assert shown.page.locator("button").count() > 4
