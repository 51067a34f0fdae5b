"""Every page of every example: valid, whole in itself, and open to readers of all kinds.

The measures are those of the HTML standard (WHATWG) and of the Web Content Accessibility Guidelines (W3C, WCAG 2.2),
from memory; what goes beyond them is behavior of ours.
"""

import re
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import Any

import html5lib
import pytest
from html5lib.html5parser import ParseError
from lxml import etree
from lxml import html as parser

from specgen.documents.catalogue import templates, templates_folder
from specgen.formats import html as writer
from specgen.model.block import Document, Item, Text
from tests.support import EXAMPLES

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
# A closeout is part of no draft but its own.
PAGES = [(example, t.id) for example in NAMES for t in templates() if t.stage != "closeout"]
STYLE = (templates_folder() / "style.css").read_text("utf-8")
# What may stand directly in these, by their content models in the HTML standard.
CHILDREN = {
    "ol": {"li"},
    "ul": {"li"},
    "dl": {"div", "dt", "dd"},
    "table": {"caption", "colgroup", "thead", "tbody"},
    "thead": {"tr"},
    "tbody": {"tr"},
    "tr": {"th", "td"},
    "colgroup": {"col"},
}
PHRASES = {"a", "bdi", "em", "math", "span", "strong", "sup"}


@pytest.fixture(params=PAGES, ids="-".join)
def page(request: pytest.FixtureRequest, draft_of: Callable[[str], Path]) -> str:
    example, document = request.param
    (file,) = draft_of(example).glob(f"{document}-*.html")
    return file.read_text("utf-8")


@lru_cache(maxsize=4)
def parsed(page: str) -> Any:
    return parser.document_fromstring(page)


@pytest.fixture
def tree(page: str) -> Any:
    return parsed(page)


def test_a_strict_parser_of_the_html_standard_finds_no_error(page: str) -> None:
    html5lib.HTMLParser(strict=True).parse(page)


def test_a_strict_parser_would_find_an_error(page: str) -> None:
    with pytest.raises(ParseError):
        html5lib.HTMLParser(strict=True).parse(page.replace("<main", "</div><main", 1))


def misplaced(tree: Any) -> list[str]:
    """Elements that stand where their parent may not hold them."""
    found = [f"{c.tag} in {e.tag}" for e in tree.iter(*CHILDREN) for c in e if c.tag not in CHILDREN[e.tag]]
    phrases = tree.iter("p", "h1", "h2", "h3", "span", "sup", "em", "strong", "bdi", "a")
    return found + [f"{c.tag} in {e.tag}" for e in phrases for c in e if c.tag not in PHRASES]


def test_everything_stands_where_it_may(tree: Any) -> None:
    assert misplaced(tree) == []


def test_what_is_misplaced_would_be_found() -> None:
    # XML, since an HTML parser would put some of this right.
    tree = etree.fromstring("<main><ol><ol><li/></ol></ol><p><table><tr><td/></tr></table></p></main>")
    assert misplaced(tree) == ["ol in ol", "tr in table", "table in p"]


@pytest.mark.parametrize("levels", [(0, 1, 2, 0), (1, 0), (2,), (0, 2, 1), (0, 0, 1, 1, 0)])
def test_items_of_any_depth_make_lists_of_items(levels: tuple[int, ...]) -> None:
    items = tuple(Item((Text(f"word {n}"),), level, 0, f"{n}.") for n, level in enumerate(levels))
    made = writer.write_html(
        Document(id="D99", title="Trial", project="Trial", facts=(), blocks=items, legend=()), templates_folder()
    ).decode()
    html5lib.HTMLParser(strict=True).parse(made)
    tree = parser.document_fromstring(made)
    assert misplaced(tree) == []
    numbers = tree.xpath("//li/span[@class='n']")
    assert [(n.text, len(list(n.iterancestors("ol"))) - 1) for n in numbers] == [
        (f"{n}.", level) for n, level in enumerate(levels)
    ]


def test_the_page_asks_nothing_of_the_outside(page: str, tree: Any) -> None:
    assert not re.search(r"url\(|@import|@font-face", page)
    assert tree.xpath("//script | //link | //img | //iframe | //object | //embed | //video | //base | //form") == []
    assert tree.xpath("//@src | //@srcset | //@style[contains(., 'url')]") == []
    assert [link for link in tree.xpath("//@href") if not link.startswith("#")] == []


def test_names_within_the_page_are_single_and_every_link_finds_its_own(tree: Any) -> None:
    names = tree.xpath("//@id")
    assert len(names) == len(set(names))
    assert {link[1:] for link in tree.xpath("//@href")} <= set(names)


def test_the_page_tells_its_language_its_signs_and_its_title(tree: Any) -> None:
    assert tree.get("lang") == "en-US"
    assert tree.xpath("string(//meta/@charset)") == "utf-8"
    assert "width=device-width" in tree.xpath("string(//meta[@name='viewport']/@content)")
    assert "user-scalable" not in tree.xpath("string(//meta[@name='viewport']/@content)")
    assert tree.xpath("string(//title)").endswith(tree.xpath("string(//h1)"))


def test_headings_come_in_order_under_one_first(tree: Any) -> None:
    levels = [int(h.tag[1]) for h in tree.iter("h1", "h2", "h3", "h4", "h5", "h6")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in zip(levels, levels[1:], strict=False))
    assert all(h.text_content().strip() for h in tree.iter("h1", "h2", "h3"))


def test_landmarks_hold_everything_and_the_first_link_skips_to_the_text(tree: Any) -> None:
    (main,) = tree.xpath("//main")
    assert tree.xpath("//body/a[1]/@href") == [f"#{main.get('id')}"]
    assert len(tree.xpath("//header[not(ancestor::main)]")) == 1
    assert len(tree.xpath("//footer[not(ancestor::main)]")) == 1
    assert all(nav.get("aria-label") for nav in tree.iter("nav"))
    held = tree.xpath("//body//text()[normalize-space()][not(ancestor::header or ancestor::main or ancestor::footer)]")
    assert held == ["Skip to the text"]


def test_each_table_has_a_caption_of_its_own_and_scoped_headers(tree: Any) -> None:
    captions = [table.xpath("string(caption)").strip() for table in tree.iter("table")]
    assert all(captions)
    assert len(captions) == len(set(captions))
    assert {head.get("scope") for head in tree.xpath("//thead//th")} <= {"col"}
    assert {head.get("scope") for head in tree.xpath("//tbody//th")} <= {"row", "rowgroup"}
    assert tree.xpath("//th[not(normalize-space() or .//*[@aria-label])]") == []
    for table in tree.iter("table"):
        columns = len(table.xpath("thead/tr/th"))
        assert {sum(int(cell.get("colspan", 1)) for cell in row) for row in table.xpath("tbody/tr")} <= {columns}


def flat(text: str) -> str:
    """A title without what only typesetting adds: the low line of `SR_m` is a subscript on the page."""
    return text.replace("_", "").replace(",", "").replace(" ", "")


def test_a_cell_that_stands_as_a_card_carries_the_title_of_its_column(tree: Any) -> None:
    for table in tree.xpath("//table[contains(@class, 'many')]"):
        titles = ["".join(th.xpath(".//text()[not(ancestor::sup)]")).strip() for th in table.xpath("thead/tr/th")]
        for row in table.xpath("tbody/tr[not(th[@scope='rowgroup'])]"):
            labels = [flat(cell.get("data-label") or "") for cell in row]
            assert labels[1:] == [flat(title) for title in titles[1:]]
            assert labels[0] == flat(titles[0]) or (row[0].tag, len(row[0]), row[0].text) == ("td", 0, None)
    assert tree.xpath("//table[count(thead/tr/th) > 3][not(contains(@class, 'many'))]") == []


def test_signs_without_words_are_named(tree: Any) -> None:
    signs = tree.xpath("//*[@class='box' or @class='blank']")
    assert all(sign.get("role") == "img" and sign.get("aria-label", "").strip() for sign in signs)


def test_an_open_value_is_told_by_brackets_and_not_by_color_alone(tree: Any) -> None:
    texts = [span.text_content() for span in tree.xpath("//span[@class='open']")]
    assert [text for text in texts if not (text.startswith("[") and text.endswith("]"))] == []


def test_a_draft_says_so_in_its_words(tree: Any) -> None:
    assert tree.xpath("string(//main//*[@role='note']//strong)") == "Draft."


# The colors of the style.

SHEET = re.sub(r"/\*.*?\*/", "", STYLE, flags=re.S)
NAMED = dict(re.findall(r"--(\w+):\s*(#\w+)", SHEET))
RULES = [(selector.strip(), body) for selector, body in re.findall(r"([^{}]+)\{([^{}]*)\}", SHEET)]


def channels(color: str) -> list[int]:
    digits = color[1:] if len(color) == 7 else "".join(c * 2 for c in color[1:])
    return [int(digits[n : n + 2], 16) for n in (0, 2, 4)]


def luminance(color: str) -> float:
    """Relative luminance by WCAG 2.2."""
    parts = [c / 255 for c in channels(color)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio by WCAG 2.2."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_is_computed_as_the_guidelines_do() -> None:
    # From memory of WCAG and its techniques: black on white is 21:1; #767676 is the lightest gray that passes on white.
    assert contrast("#000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#fff") >= 4.5 > contrast("#777", "#fff")


def colors(body: str, name: str) -> list[str]:
    found = re.search(rf"(?:^|[;\s]){name}:\s*([^;]+)", body)
    return [NAMED.get(a, b) for a, b in re.findall(r"var\(--(\w+)\)|(#\w+)", found[1])] if found else []


def pairs() -> list[tuple[str, str, str]]:
    """Every color of text in the style over every ground that it may stand on."""
    grounds = sorted({c for _, body in RULES for c in colors(body, "background")})
    made = []
    for selector, body in RULES:
        own = colors(body, "background")
        for text in colors(body, "color"):
            # Text with a ground of its own stands on that; other text may stand on any light one.
            made += [(selector, text, g) for g in own or [g for g in grounds if luminance(g) > 0.5]]
        if own and not colors(body, "color"):
            made += [(selector, NAMED["ink"], g) for g in own]
    return made


def test_text_stands_out_from_its_ground() -> None:
    # WCAG 2.2, criterion 1.4.3: at least 4.5:1 for text of usual size.
    assert len(pairs()) > 10
    assert [(s, t, g, round(contrast(t, g), 2)) for s, t, g in pairs() if contrast(t, g) < 4.5] == []


def test_lines_of_forms_stand_out_from_the_paper() -> None:
    # WCAG 2.2, criterion 1.4.11: at least 3:1 for what is not text.
    lines = {color for _, body in RULES for color in colors(body, r"border(?:-bottom)?") if color != NAMED["shade"]}
    assert NAMED["line"] in lines
    assert [color for color in lines if contrast(color, "#fff") < 3] == []


def test_every_color_of_the_style_was_looked_at() -> None:
    used = set(re.findall(r"#[0-9a-f]{3,6}\b", SHEET))
    looked_at = {c for _, text, ground in pairs() for c in (text, ground)} | {NAMED["line"]}
    assert used <= looked_at
    # There is one scheme; a second one would need its own pairs.
    assert "prefers-color-scheme" not in STYLE
    assert not re.search(r"\b(rgb|hsl|color-mix|oklch)\(|opacity", SHEET)


def test_print_repeats_the_heads_of_tables_and_keeps_draft_marks_without_grounds() -> None:
    printed = SHEET.split("@media print", 1)[1]
    assert "thead { display: table-header-group; }" in printed
    assert re.search(r"hr\.break \{ break-after: page; \}", printed)
    assert re.search(r"a \{ color: inherit; text-decoration: none; \}", printed)
    mark = re.search(r"body\.draft::before \{([^}]*)\}", printed)
    assert mark
    assert "background: none" in mark[1]
    assert colors(mark[1], "color") == [NAMED["accent"]]
    assert "@page" in printed
