"""A drawing as a PNG picture; the renderer is an extra, and is loaded when the first picture is asked for."""

from importlib.util import find_spec

from specgen.documents.catalogue import templates_folder

# What is installed to have pictures.
EXTRA = "specgen[pdf]"
_PAGE = """#set page(width: {width}mm, height: auto, margin: 0mm, fill: white)
#image(bytes(sys.inputs.svg), format: "svg", width: 100%)"""


def can_render() -> bool:
    """Whether a renderer is installed."""
    return find_spec("typst") is not None


def render_png(svg: str, width_mm: float, dpi: int = 220) -> bytes:
    """The picture of a drawing at its width on paper; raises LookupError where no renderer is installed."""
    if not can_render():
        raise LookupError("no renderer of drawings")
    import typst

    page = _PAGE.replace("{width}", f"{width_mm:.3f}").encode()
    fonts = typst.Fonts(font_paths=[templates_folder() / "fonts"])
    return typst.compile(page, format="png", ppi=float(dpi), sys_inputs={"svg": svg}, font_paths=fonts)
