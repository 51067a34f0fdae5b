"""The summary for review as one HTML file, in the frame and style of the other pages, with a script of its own.

The script sorts and filters the tables, which are whole without it. Nothing else runs and nothing is fetched: the
policy of the page names the script and the styles it has by their digests.
"""

import base64
import hashlib
import re
from collections.abc import Iterable
from html import unescape
from pathlib import Path

from specgen.documents.template_overrides import frame_of, style_of
from specgen.formats.html import render_parts
from specgen.model.block import Document

_SHEET = re.compile(r"<style\b[^>]*>(.*?)</style>", re.DOTALL)
_ATTRIBUTE = re.compile(r'<[^>]*? style="([^"]*)"')


def write_review_page(document: Document, templates: Path, own: Path | None = None) -> bytes:
    """The whole page; frame and style may come from a firm's folder `own`, the style below that of tables sorted."""
    script, looks = ((templates / f"review.{ending}").read_text("utf-8") for ending in ("js", "css"))
    parts = render_parts(document)
    parts["body"] += f"\n<script>{script}</script>"
    parts["kind"] += " review"
    parts["style"] = f"{looks}{style_of(templates, own)}"
    frame = frame_of(templates, own)
    return frame.substitute(parts, policy=_set_policy(frame.substitute(parts, policy=""), script)).encode()


def _set_policy(page: str, script: str) -> str:
    """What the page allows, by the Content Security Policy of the W3C: its script, its sheets, its style attributes."""
    attributes = sorted({unescape(found) for found in _ATTRIBUTE.findall(page)})
    styles = _digest([*_SHEET.findall(page), *attributes])
    return f"default-src 'none'; script-src {_digest([script])}; style-src 'unsafe-hashes' {styles}; img-src data:"


def _digest(texts: Iterable[str]) -> str:
    digests = (base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in texts)
    return " ".join(f"'sha256-{digest}'" for digest in digests)
