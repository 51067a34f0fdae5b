"""What a page says, without its drawings."""

from lxml import html


def page_text(page: bytes) -> str:
    """Each heading, paragraph, and row of a table on a line."""
    body = html.fromstring(page).body
    for unread in [*body.iter("script", "style", "svg")]:
        unread.drop_tree()
    lines = []
    for part in body.iter("h1", "h2", "h3", "p", "li", "caption", "dt", "dd", "tr"):
        cells = list(part) if part.tag == "tr" else [part]
        lines.append(" | ".join(" ".join(cell.text_content().split()) for cell in cells))
    return "".join(f"{line}\n" for line in lines if line)
