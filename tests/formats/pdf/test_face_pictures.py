"""The pictures of a letterhead as an older Word file places them, in the vector language of ECMA-376 part 4."""

import io
from types import SimpleNamespace
from typing import Any

import pytest
from lxml import etree
from PIL import Image

from specgen.formats.pdf.face_pictures import FacePictures

SHAPE = """
<w:pict xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main" xmlns:v="urn:schemas-microsoft-com:vml"
        xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">
  <v:shape style="width:{side};height:{side}"><v:imagedata r:id="rId1"/></v:shape>
</w:pict>"""


# ISO 80000-3: an inch is 25.4 mm; a point is 1/72 in, and a pixel 1/96 in (CSS Values, 6.2). Without a unit: points.
@pytest.mark.parametrize(
    ("side", "mm"),
    [("72pt", 25.4), ("1in", 25.4), ("12mm", 12), ("2.5cm", 25), ("48px", 12.7), ("36", 12.7)],
)
def test_a_picture_has_the_size_of_its_shape(side: str, mm: float) -> None:
    held = io.BytesIO()
    Image.new("RGB", (40, 40)).save(held, "PNG")
    part: Any = SimpleNamespace(rels={"rId1": SimpleNamespace(target_part=SimpleNamespace(blob=held.getvalue()))})
    (picture,) = FacePictures().read(etree.fromstring(SHAPE.format(side=side)), part, None)  # type: ignore[arg-type]
    assert (picture["width"], picture["height"]) == pytest.approx((mm, mm))
