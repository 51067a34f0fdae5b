"""Writes the table of advances from the font files: `python -m tests.documents.figures.advances`."""

import json
from pathlib import Path

from fontTools.ttLib import TTFont

from tests.support import ROOT

FONTS = ROOT / "templates" / "fonts"
TABLE = ROOT / "specgen" / "documents" / "figures" / "advances.json"


def read_advances(file: Path) -> dict[str, int]:
    font = TTFont(file)
    widths = font["hmtx"].metrics
    return {chr(code): widths[glyph][0] for code, glyph in sorted(font.getBestCmap().items())}


def make_table() -> str:
    regular, bold = (read_advances(FONTS / f"SheetSans-{style}.ttf") for style in ("Regular", "Bold"))
    units = TTFont(FONTS / "SheetSans-Regular.ttf")["head"].unitsPerEm
    table = {"units": units, "regular": regular, "bold": bold}
    return json.dumps(table, ensure_ascii=False, separators=(",", ":")) + "\n"


if __name__ == "__main__":
    TABLE.write_text(make_table(), "utf-8")
