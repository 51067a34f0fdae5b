"""The drawing for other programs: opened and audited again, in real units, layers by what is on them."""

import builtins
import io

import ezdxf
import pytest
from ezdxf import recover

from specgen.formats.dxf import write_dxf
from specgen.model.problem import Refused
from tests.documents.figures.faces import draw_of, large_face


def opened(content):
    drawing, auditor = recover.read(io.BytesIO(content))
    assert auditor.errors == []
    assert auditor.fixes == []
    assert drawing.audit().errors == []
    return drawing


def on(drawing, layer, kind):
    return drawing.modelspace().query(f'{kind}[layer=="{layer}"]')


def extent(entities):
    points = [point for each in entities for point in each.get_points("xy")]
    return [max(point[side] for point in points) - min(point[side] for point in points) for side in (0, 1)]


def test_a_drawing_is_in_inches_and_its_layers_hold_what_they_say(tmp_path):
    layout, facts = draw_of(tmp_path)
    drawing = opened(write_dxf(layout, facts))
    assert drawing.units == ezdxf.units.IN
    assert extent(on(drawing, "WALL-EDGE", "LWPOLYLINE")) == pytest.approx([480, 288])
    assert len(on(drawing, "PANELS", "LWPOLYLINE")) == len(layout.panels) == 47
    assert extent(on(drawing, "OPENINGS", "LWPOLYLINE")) == pytest.approx([60, 48])
    marks = {text.dxf.text for text in on(drawing, "PANEL-MARKS", "TEXT")}
    assert {"E1-A1", "E1-K6"} <= marks
    assert [text.dxf.text for text in on(drawing, "OPENING-MARKS", "TEXT")] == ["A"]
    assert {text.dxf.text for text in on(drawing, "FLOOR-LINES", "TEXT")} == {"F2"}
    moving = on(drawing, "MOVEMENT-JOINTS", "LINE")
    floor = [line for line in moving if line.dxf.start.y == line.dxf.end.y == pytest.approx(144)]
    assert sum(abs(line.dxf.end.x - line.dxf.start.x) for line in floor) == pytest.approx(480)
    assert len(on(drawing, "AESTHETIC-JOINTS", "LINE")) > 0
    assert drawing.layers.get("MOVEMENT-JOINTS").dxf.linetype != drawing.layers.get("AESTHETIC-JOINTS").dxf.linetype
    assert {entity.dxf.layer for entity in drawing.modelspace()} <= {layer.dxf.name for layer in drawing.layers}


def test_water_details_lie_where_they_are_given(tmp_path):
    sides = {"x": "5 ft", "y": "9 ft", "width": "10 ft", "height": "2 ft"}
    details = {
        "RB1": {"kind": "roof_below", "elevation": "E1"} | sides,
        "PN1": {"kind": "penetration", "elevation": "E1", "x": "24 ft", "y": "2 ft"},
    }
    drawing = opened(write_dxf(*draw_of(tmp_path, more={"details": details})))
    roof, pipe = on(drawing, "WATER-DETAILS", "LWPOLYLINE")
    assert sorted(roof.get_points("xy")) == [(60, 108), (60, 132), (180, 108), (180, 132)]
    assert min(pipe.get_points("xy"), key=lambda point: point[1]) == (288, 24)
    assert {text.dxf.text for text in on(drawing, "WATER-DETAILS", "TEXT")} == {"RB1", "PN1"}


def test_metric_work_is_drawn_in_millimeters(tmp_path):
    layout, facts = draw_of(tmp_path, more={"package": {"purpose": "design_draft", "units": "si"}})
    drawing = opened(write_dxf(layout, facts))
    assert drawing.units == ezdxf.units.MM
    assert extent(on(drawing, "WALL-EDGE", "LWPOLYLINE")) == pytest.approx([12192, 7315.2])


def test_the_same_layout_gives_the_same_bytes(tmp_path):
    layout, facts = draw_of(tmp_path)
    assert write_dxf(layout, facts) == write_dxf(layout, facts)


def test_a_large_face_has_no_error(tmp_path):
    face, joints = large_face()
    layout, facts = draw_of(tmp_path, face, joints)
    assert len(on(opened(write_dxf(layout, facts)), "PANELS", "LWPOLYLINE")) == 2030


def test_where_the_library_is_not_installed_the_refusal_names_the_extra(tmp_path, monkeypatch):
    layout, facts = draw_of(tmp_path)
    load = builtins.__import__

    def refuse(name, *rest):
        if name.startswith("ezdxf"):
            raise ImportError(name)
        return load(name, *rest)

    monkeypatch.setattr(builtins, "__import__", refuse)
    with pytest.raises(Refused, match="its extra cad"):
        write_dxf(layout, facts)
