"""A drawing as a PNG: by the library of the PDF pages where it is installed, else by the smaller one.

Both are given our two fonts by their files and take none of the system, so that the same drawing gives the same picture
on every machine.
"""

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from specgen.documents.catalogue import templates_folder
from specgen.formats.page_fonts import load_fonts
from specgen.model.problem import Refused, refuse

PIXELS_PER_INCH = 200
_PAGE = """#set page(width: auto, height: auto, margin: 0pt, fill: white)
#image(bytes(sys.inputs.svg), format: "svg", width: eval(sys.inputs.width))
"""


@lru_cache(maxsize=64)  # a drawing that several documents show is one picture
def write_png(svg: str, width: float, ppi: int = PIXELS_PER_INCH) -> bytes:
    """The picture of an SVG that is `width` millimeters wide on paper; raises Refused where no library is installed."""
    return _find_writer()(svg, width, ppi)


def can_write() -> bool:
    """Whether one of the two libraries is installed."""
    try:
        _find_writer()
    except Refused:
        return False
    return True


def _find_writer() -> Callable[[str, float, int], bytes]:
    """The first of the two libraries that is installed; raises Refused."""
    for load in (_load_typst, _load_resvg):
        try:
            return load()
        except ImportError:
            continue
    raise refuse("a picture needs a library that is not installed", "install specgen with its extra picture or pdf")


def _font_folder() -> Path:
    return templates_folder() / "fonts"


def _load_typst() -> Callable[[str, float, int], bytes]:
    import typst

    fonts = load_fonts()

    def draw(svg: str, width: float, ppi: int) -> bytes:
        return typst.compile(
            _PAGE.encode(),
            font_paths=fonts,
            format="png",
            ppi=float(ppi),
            sys_inputs={"svg": svg, "width": f"{width}mm"},
        )

    return draw


def _load_resvg() -> Callable[[str, float, int], bytes]:
    import resvg_py

    def draw(svg: str, width: float, ppi: int) -> bytes:
        files = [str(file) for file in sorted(_font_folder().glob("*.ttf"))]
        return resvg_py.svg_to_bytes(
            svg_string=svg, dpi=float(ppi), background="#ffffff", skip_system_fonts=True, font_files=files
        )

    return draw
