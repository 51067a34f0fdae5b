"""The editions a project goes by, in citations: `{ibc}, {eifs}.4.1` is International Building Code 2021, 1407.4.1."""

import re

from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.value_text import words

_ASKED = re.compile(r"\{(ibc|irc|wind|eifs|inspection)\}")
_CODES = {"ibc": "International Building Code", "irc": "International Residential Code"}
_SECTIONS = {"eifs": "EIFS section", "inspection": "special inspections"}


def fill_editions(text: str, project: Project, standards: Standards) -> str:
    """The citation with the adopted code, its edition, its sections, and the wind standard in their places.

    An edition that the project does not name is left out, and a section that moves between editions named in words.
    """
    year = str(project.get(("code", "edition")) or "")
    model = project.get(("code", "model"))
    edition = standards.editions.get(year, {}) if model == "ibc" else {}

    def fill(asked: re.Match[str]) -> str:
        name = asked[1]
        if name in _CODES:
            return f"{_CODES[name]} {year if name == model else ''}".rstrip()
        if name in _SECTIONS:
            return str(edition.get(f"{name}_section", _SECTIONS[name]))
        standard = project.get(("code", "wind_standard")) or edition.get("wind_standard")
        return words(standard) if standard else "ASCE 7"

    return re.sub(r"(EIFS section|special inspections)\.[\d.]+", r"\1", _ASKED.sub(fill, text))
