"""Pages to bind in: the content of each in a frame of its own, with a stamp beside it that stands level as shown."""

from dataclasses import dataclass
from typing import Any, NamedTuple

from pikepdf import Array, Dictionary, Name, Pdf, Stream

from specgen.documents.figures.labels import measure
from specgen.formats.pdf.embedded_font import encode
from specgen.formats.pdf.page_tree import find_inherited

_SIZE = 7.0  # of the stamp, in points
_RISE, _SIDE = 10.0, 18.0  # of its baseline above the lower edge, and of its end from the right edge, in points
_PAD = 2.0
_BOXES = ("/MediaBox", "/CropBox", "/Rotate", "/UserUnit")


class Shown(NamedTuple):
    """The box of a page that is shown, in its own units, how far it is turned, and the points of a unit."""

    left: float
    low: float
    right: float
    high: float
    turned: int
    unit: float

    @property
    def width(self) -> float:
        """From left to right as shown, in points."""
        across, up = self.right - self.left, self.high - self.low
        return (up if self.turned % 180 else across) * self.unit

    @property
    def frame(self) -> str:
        """What turns points from the lower left as shown into the units of the page, as a PDF writes it."""
        k = 1 / self.unit
        turns = {
            0: (k, 0, 0, k, self.left, self.low),
            90: (0, k, -k, 0, self.right, self.low),
            180: (-k, 0, 0, -k, self.right, self.high),
            270: (0, -k, k, 0, self.left, self.high),
        }
        return " ".join(f"{number:.4f}".rstrip("0").rstrip(".") for number in turns[self.turned])


@dataclass(frozen=True)
class Stamper:
    """Makes pages of a set out of those of papers."""

    into: Pdf
    font: Any

    def make_page(self, source: Pdf, page: Any, words: str) -> Any:
        """The page of a source with a stamp, of the same size, for the set: its look, and nothing that acts."""
        shown = read_shown(page.obj)
        made = {name: value for name in _BOXES if (value := find_inherited(page.obj, name)) is not None}
        made |= {"/MediaBox": page.mediabox} | ({"/Rotate": shown.turned} if "/Rotate" in made else {})
        resources = {"/Font": Dictionary(Stamp=self.font)}
        content = _write_stamp(words, shown)
        look = self._copy_look(source, page)
        if look is not None:
            resources["/XObject"] = Dictionary(Paper=look)
            content = b"q /Paper Do Q\n" + content
        plain = {name: _copy_plain(value) for name, value in made.items()}
        drawn = self.into.make_indirect(Stream(self.into, content))
        about = {"/Type": Name.Page, **plain, "/Resources": Dictionary(resources), "/Contents": drawn}
        return self.into.make_indirect(Dictionary(about))

    def _copy_look(self, source: Pdf, page: Any) -> Any:
        """What a page shows, as one object of the set; None for an empty page."""
        contents = page.obj.get("/Contents")
        if contents is None:
            return None
        if not isinstance(contents, Stream) or contents.get("/DecodeParms") is not None or "/F" in contents:
            whole = page.as_form_xobject(handle_transformations=False)
            whole["/BBox"] = _copy_plain(page.mediabox)
            return self.into.copy_foreign(source.make_indirect(whole))
        about = {"/Type": Name.XObject, "/Subtype": Name.Form, "/BBox": _copy_plain(page.mediabox)}
        taken = {
            "/Filter": contents.get("/Filter"),
            "/Group": page.obj.get("/Group"),
            "/Resources": find_inherited(page.obj, "/Resources"),
        }
        about |= {name: self._copy(source, value) for name, value in taken.items() if value is not None}
        return self.into.make_indirect(Stream(self.into, contents.read_raw_bytes(), Dictionary(about)))

    def _copy(self, source: Pdf, value: Any) -> Any:
        """A value of a source in the set; the same one gives the same."""
        if not isinstance(value, (Array, Dictionary)):
            return value
        return self.into.copy_foreign(value if value.is_indirect else source.make_indirect(value))


def read_shown(page: Any) -> Shown:
    """What a page shows of itself: its crop box where it lies on the page, else its media box."""
    media = _sides(find_inherited(page, "/MediaBox"))
    crop = find_inherited(page, "/CropBox")
    shown = media
    if crop is not None:
        left, low, right, high = _sides(crop)
        cut = (max(left, media[0]), max(low, media[1]), min(right, media[2]), min(high, media[3]))
        shown = cut if cut[0] < cut[2] and cut[1] < cut[3] else media
    turned = int(find_inherited(page, "/Rotate") or 0) % 360
    unit = float(page.get("/UserUnit", 1))
    return Shown(*shown, turned - turned % 90, unit if unit > 0 else 1.0)


def _sides(box: Any) -> tuple[float, float, float, float]:
    """The left, lower, right and upper side of a box, whichever corners it names."""
    first, second, third, fourth = map(float, box)
    return min(first, third), min(second, fourth), max(first, third), max(second, fourth)


def _copy_plain(value: Any) -> Any:
    """A number or a list of four numbers, free of the document it was read from."""
    return Array([float(number) for number in value]) if isinstance(value, Array) else value


def _write_stamp(words: str, shown: Shown) -> bytes:
    """The stamp at the lower right as shown, on white, as an artifact."""
    width = measure(words, _SIZE)
    size = _SIZE * min(1.0, (shown.width - 2 * _PAD) / width)
    width *= size / _SIZE
    left = max(_PAD, shown.width - _SIDE - width)
    box = f"{left - _PAD:.2f} {_RISE - _PAD:.2f} {width + 2 * _PAD:.2f} {size + _PAD:.2f}"
    return (
        f"/Artifact <</Type /Pagination /Subtype /Footer>> BDC q {shown.frame} cm 1 g {box} re f 0 g "
        f"BT /Stamp {size:.2f} Tf {left:.2f} {_RISE:.2f} Td "
    ).encode() + (encode(words) + b" Tj ET Q EMC\n")
