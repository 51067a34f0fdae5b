"""Renders a figure from its SVG template, which is the single source of its look.

These templates are ours alone, so they run without the meters of those that a firm may write. Whatever they print is
escaped; a name that is not given is an error of ours and never an empty place in a drawing.
"""

from functools import cache
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from specgen.documents.catalogue import templates_folder

# The family of the fonts under `templates/fonts`, as the files call themselves; without them a viewer takes its own.
FONT_FAMILY = "Sheet Sans"
FONTS = f"'{FONT_FAMILY}', Arial, Helvetica, sans-serif"


@cache
def _environment() -> Environment:
    loader = FileSystemLoader(templates_folder() / "figures")
    made = Environment(
        loader=loader,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.filters["mm"] = write_mm
    made.globals["fonts"] = FONTS
    return made


def write_mm(length: float) -> str:
    """A length on paper in millimeters, to a thousandth: `12.5`."""
    text = f"{length:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def render_figure(name: str, values: dict[str, Any]) -> str:
    """The SVG text of the figure `templates/figures/NAME.svg.j2` with these values."""
    return _environment().get_template(f"{name}.svg.j2").render(values)
