"""A figure as a picture of a Word document: a PNG, with the SVG beside it for word processors that read it."""

from docx.opc.constants import RELATIONSHIP_TYPE
from docx.opc.packuri import PackURI
from docx.opc.part import Part
from docx.parts.document import DocumentPart

from specgen.formats import png
from specgen.formats.xml_text import encode_xml, quote
from specgen.model.block import Figure

# English Metric Units in a millimeter, and in a twentieth of a point (ECMA-376 part 1, 20.1.2.1).
_EMU, _EMU_OF_TWENTIETH = 36_000, 635
_DRAWING = "http://schemas.openxmlformats.org/drawingml/2006"
# A word processor that reads the SVG does not show the PNG: it is as fine as an office printer shows.
_PPI = 150
# The extension of a picture that names its SVG ([MS-ODRAWXML] 2.4.2).
_SVG_EXTENSION = "{96DAC541-7B7A-43D3-8B79-37D633B846F1}"
_SVG_SPACE = "http://schemas.microsoft.com/office/drawing/2016/SVG/main"


class Pictures:
    """The pictures of one document, added to its package as they are met."""

    def __init__(self, part: DocumentPart, width: int) -> None:
        self.part, self.width, self.count = part, width, 0

    def render(self, figure: Figure) -> str:
        """The run that shows a figure, no wider than the text; empty where no renderer is installed."""
        if not png.can_write():
            return ""
        self.count += 1
        raster = self._add("png", "image/png", png.write_png(figure.svg, figure.width, _PPI))
        vector = self._add("svg", "image/svg+xml", encode_xml(figure.svg))
        scale = min(1.0, self.width * _EMU_OF_TWENTIETH / (figure.width * _EMU))
        size = f'cx="{round(figure.width * _EMU * scale)}" cy="{round(figure.height * _EMU * scale)}"'
        return _render_run(raster, vector, size, self._name(figure))

    def _add(self, ending: str, type_: str, content: bytes) -> str:
        """The id by which the document links to a new part."""
        name = PackURI(f"/word/media/figure{self.count}.{ending}")
        return self.part.relate_to(Part(name, type_, content, self.part.package), RELATIONSHIP_TYPE.IMAGE)

    def _name(self, figure: Figure) -> str:
        """What names a picture and says what it shows."""
        return f'id="{self.count}" name={quote(figure.number)} descr={quote(figure.alt)}'


def _render_run(raster: str, vector: str, size: str, named: str) -> str:
    svg = f'<asvg:svgBlip xmlns:asvg="{_SVG_SPACE}" r:embed="{vector}"/>'
    blip = f'<a:blip r:embed="{raster}"><a:extLst><a:ext uri="{_SVG_EXTENSION}">{svg}</a:ext></a:extLst></a:blip>'
    shape = f'<a:xfrm><a:off x="0" y="0"/><a:ext {size}/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom>'
    picture = (
        f'<pic:pic xmlns:pic="{_DRAWING}/picture"><pic:nvPicPr><pic:cNvPr {named}/><pic:cNvPicPr/></pic:nvPicPr>'
        f"<pic:blipFill>{blip}<a:stretch><a:fillRect/></a:stretch></pic:blipFill><pic:spPr>{shape}</pic:spPr></pic:pic>"
    )
    frame = f"<wp:extent {size}/><wp:docPr {named}/><wp:cNvGraphicFramePr/>"
    graphic = (
        f'<a:graphic xmlns:a="{_DRAWING}/main"><a:graphicData uri="{_DRAWING}/picture">{picture}'
        "</a:graphicData></a:graphic>"
    )
    return (
        f'<w:r><w:drawing><wp:inline xmlns:wp="{_DRAWING}/wordprocessingDrawing" distT="0" distB="0" '
        f'distL="0" distR="0">{frame}{graphic}</wp:inline></w:drawing></w:r>'
    )
