"""The texts a project goes by, in citations: `{ibc}, {eifs}.4.1` is International Building Code 2021, 1407.4.1."""

import re
from collections.abc import Mapping

from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.value_text import words

_ASKED = re.compile(r"\{(\w+)\}")
_MODEL = ("code", "model")
_SECTIONS = {"eifs": "EIFS section", "inspection": "special inspections", "flashing": "flashing of exterior walls"}
# Texts that govern only where a field calls for them: their name, the field, and what it then says; None: not given.
_CALLED_FOR: Mapping[str, tuple[str, Path, frozenset[str | None]]] = {
    "ibc": ("International Building Code", _MODEL, frozenset({"ibc", None})),
    "irc": ("International Residential Code", _MODEL, frozenset({"irc", None})),
    "ufgs": ("Unified Facilities Guide Specification", ("contract", "procedure"), frozenset({"ufgs_013300"})),
    "ufc": ("Unified Facilities Criteria", ("contract", "procedure"), frozenset({"ufgs_013300"})),
    "osha": ("29 CFR", ("safety", "rules"), frozenset({"us_osha", None})),
}


def fill_editions(text: str, project: Project, standards: Standards) -> str:
    """The citation with the adopted code, its edition, its sections, and the wind standard in their places.

    An edition that the project does not name is left out, and a section that moves between editions named in words. A
    text that nothing in the project calls for is marked as a guide only.
    """
    model, year = project.get(_MODEL), str(project.get(("code", "edition")) or "")
    edition = standards.editions.get(year, {}) if model == "ibc" else {}
    text = text.replace("{code_flashing}", "{irc}, R703.4" if model == "irc" else "{ibc}, {flashing}")

    def fill(asked: re.Match[str]) -> str:
        name = asked[1]
        if name in _CALLED_FOR:
            return f"{_CALLED_FOR[name][0]} {year if name == model else ''}".rstrip()
        if name in _SECTIONS:
            return str(edition.get(f"{name}_section", _SECTIONS[name]))
        standard = project.get(("code", "wind_standard")) or edition.get("wind_standard")
        return words(standard) if standard else "ASCE 7"

    said = re.sub(r"(EIFS section|special inspections)\.[\d.]+", r"\1", _ASKED.sub(fill, text))
    return f"{said}, guide only" if any(_is_guide(name, project) for name in _ASKED.findall(text)) else said


def name_edition(text: str, project: Project, standards: Standards) -> str:
    """The text by its edition in the project; any section of the code as one to look up in its edition."""
    if text.startswith("ASCE 7,"):
        return text.replace("ASCE 7", fill_editions("{wind}", project, standards), 1)
    of_code = text.startswith(("section numbers of the", "International Building Code,"))
    return "International Building Code, section numbers" if of_code else text


def _is_guide(name: str, project: Project) -> bool:
    """Whether nothing in the project calls for a text."""
    if name not in _CALLED_FOR:
        return False
    _, path, calls = _CALLED_FOR[name]
    return project.get(path) not in calls
