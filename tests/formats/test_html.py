"""The page, parsed again and checked by its structure."""

import re
from pathlib import Path

from lxml import html as parser

from specgen.documents.catalogue import templates_folder
from specgen.formats import html as writer
from specgen.model.block import Document, Item, Table
from tests.documents.support import AWKWARD, document_of, written


def page(document: Document) -> str:
    return writer.write_html(document, templates_folder()).decode()


def test_the_page_asks_nothing_of_the_outside() -> None:
    made = page(document_of("clean", "D08"))
    assert not re.search(r"""(src|href)\s*=\s*["'](?!#)|url\(|@import|<script""", made)


def test_awkward_text_is_shown_as_text(tmp_path: Path) -> None:
    made = parser.fromstring(page(written(tmp_path, "1. {{ project.name }}\n", {"project": {"name": AWKWARD}})))
    assert AWKWARD in made.xpath("string(//main/ol/li)")


def test_headings_come_in_order_and_tables_have_marked_headers() -> None:
    made = parser.fromstring(page(document_of("clean", "D08")))
    levels = [int(h.tag[1]) for h in made.iter("h1", "h2", "h3")]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in zip(levels, levels[1:], strict=False))
    assert all(head.get("scope") == "col" for head in made.xpath("//thead//th"))
    assert made.getroottree().getroot().get("lang") == "en-US"


def test_each_table_and_item_of_the_tree_is_on_the_page() -> None:
    document = document_of("clean", "D08")
    made = parser.fromstring(page(document))
    assert len(made.xpath("//table")) == sum(isinstance(b, Table) for b in document.blocks)
    numbers = [n.text for n in made.xpath("//ol[@class='items']/li/span[@class='n']")]
    assert numbers == [b.number for b in document.blocks if isinstance(b, Item)]


def test_nested_lists_are_closed(tmp_path: Path) -> None:
    document = written(tmp_path, "1. one\n   1. deep\n   2. deeper\n2. two\n\nword\n")
    made = parser.fromstring(page(document))
    assert [li.xpath("string(span)") for li in made.xpath("//main/ol/li")] == ["1.", "2."]
    assert [li.xpath("string(span)") for li in made.xpath("//main/ol/li/ol/li")] == ["a.", "b."]


def test_a_draft_is_marked(tmp_path: Path) -> None:
    assert 'class="plain draft"' in page(written(tmp_path, "# A\n", draft=True))
    assert "draft" not in page(written(tmp_path, "# A\n")).split("<body", 1)[1].split(">", 1)[0]


def test_links_of_the_contents_lead_somewhere() -> None:
    made = parser.fromstring(page(document_of("clean", "D08")))
    ids = {node.get("id") for node in made.xpath("//*[@id]")}
    links = [a.get("href")[1:] for a in made.xpath("//nav//a")]
    assert links
    assert set(links) <= ids
