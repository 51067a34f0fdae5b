"""A drawing as a picture, by either library, with our own fonts."""

import builtins
import struct

import pytest

from specgen.formats import png
from specgen.model.problem import Refused

SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="50.8mm" height="25.4mm" viewBox="0 0 50.8 25.4">'
    '<text x="2" y="12" font-family="\'Sheet Sans\'" font-size="8">{}</text></svg>'
)


def without(monkeypatch, *names):
    load = builtins.__import__

    def refuse(name, *rest):
        if name in names:
            raise ImportError(name)
        return load(name, *rest)

    monkeypatch.setattr(builtins, "__import__", refuse)


def size_of(picture):
    assert picture[:8] == b"\x89PNG\r\n\x1a\n"
    return struct.unpack(">II", picture[16:24])


@pytest.mark.parametrize("missing", [(), ("typst",)], ids=["first", "fallback"])
def test_a_picture_has_its_size_and_its_text(missing, monkeypatch):
    without(monkeypatch, *missing)
    picture = png.write_png(SVG.format("A ½ → ″"), 50.8, ppi=100)
    assert size_of(picture) == (200, 100)
    assert len(picture) > len(png.write_png(SVG.format(""), 50.8, ppi=100)) + 300
    assert picture == png.write_png(SVG.format("A ½ → ″"), 50.8, ppi=100)


def test_where_neither_library_is_installed_the_refusal_names_the_extra(monkeypatch):
    without(monkeypatch, "typst", "resvg_py")
    with pytest.raises(Refused, match="its extra picture or pdf"):
        png.write_png(SVG.format("A"), 50.8)
