"""DXF read back by its library: clean, in millimetres, at true size, on layers of the trades."""

import io
import itertools
from functools import cache
from typing import Any

import pytest
from ezdxf import recover
from ezdxf.filemanagement import read

from coachwright.drawing.atlas import DRAFTS, sheet
from coachwright.drawing.dxf import dxf
from coachwright.drawing.dxf_style import DXF_LAYERS, LAYER_OF
from coachwright.drawing.scene import Layer
from coachwright.drawing.sheets import sheet_of
from tests.drawing.demos import NAMES, demo

VIEWS = (*DRAFTS, "section@2500", "setting-out", "findings")
TRADES = {"shell", "furniture", "electrical", "plumbing", "gas", "roof", "dimensions", "text"}


@cache
def _bytes(name: str, view: str) -> bytes:
    content = demo(name)
    return dxf(sheet(content, view), content.system)


@cache
def _read(name: str, view: str) -> tuple[Any, Any]:
    document = read(io.StringIO(_bytes(name, view).decode()))
    return document, document.audit()


def _measured(name: str, view: str) -> list[float]:
    document, _ = _read(name, view)
    return [float(d.get_measurement()) for d in document.modelspace().query("DIMENSION")]


@pytest.mark.parametrize(
    ("name", "view"),
    [*(("troubled", view) for view in VIEWS), *((name, "plan") for name in NAMES)],
)
def test_a_file_opens_clean(name: str, view: str) -> None:
    document, auditor = _read(name, view)
    assert not auditor.errors
    assert not auditor.fixes
    assert document.units == 4  # millimetres
    assert document.header["$MEASUREMENT"] == 1


def test_a_reader_that_mends_faults_finds_none() -> None:
    _, auditor = recover.read(io.BytesIO(_bytes("four-seats", "plan")))
    assert not auditor.errors
    assert not auditor.fixes


def test_the_layers_are_named_by_trade() -> None:
    document, _ = _read("four-seats", "plan")
    names = {layer.dxf.name for layer in document.layers}
    assert names >= TRADES | {"findings"}
    assert names - {"0", "Defpoints"} == set(DXF_LAYERS)
    assert set(LAYER_OF) == set(Layer)


@pytest.mark.parametrize("name", NAMES)
def test_every_entity_is_on_a_named_layer(name: str) -> None:
    document, _ = _read(name, "plan")
    for layout in document.layouts:
        assert {entity.dxf.layer for entity in layout} <= {*DXF_LAYERS, "VIEWPORTS"}
    assert {entity.dxf.layer for entity in document.modelspace()} <= set(DXF_LAYERS)


@pytest.mark.parametrize("name", NAMES)
def test_twenty_dimensions_measure_back_to_a_tenth_of_a_millimetre(name: str) -> None:
    """Against the build's own records, not against what was drawn."""
    content = demo(name)
    vehicle, up = content.build.vehicle, content.layout.build_up
    rear = vehicle.outside.length_mm - vehicle.outside.front_overhang_mm
    edges = {
        vehicle.shell.cab_line_mm,
        vehicle.shell.rear_mm - up.doors_mm,
        -vehicle.outside.front_overhang_mm,
        0.0,
        vehicle.outside.wheelbase_mm,
        rear,
    }
    for body in (*content.layout.solids, *content.layout.arches):
        edges |= {body.bounds.low_mm[0], body.bounds.high_mm[0]}
    possible = {abs(b - a) for a, b in itertools.combinations(sorted(edges), 2)}
    flat = [
        float(d.get_measurement())
        for view in ("plan", "plan@hip")
        for d in _read(name, view)[0].modelspace().query("DIMENSION")
        if d.dimtype == 0 and abs(d.dxf.get("angle", 0.0)) < 1.0
    ]
    assert len(flat) >= 20
    for length in flat:
        assert min(abs(length - known) for known in possible) <= 0.1


def test_the_length_of_a_known_cabinet_measures_back() -> None:
    galley = demo("four-seats").thing("galley")
    lengths = _measured("four-seats", "plan")
    assert min(abs(length - galley.size_mm[0]) for length in lengths) <= 0.1


def test_a_drawing_is_at_true_size_in_model_space() -> None:
    content = demo("winter-kit")
    document, _ = _read("winter-kit", "plan")
    outline = max(
        (e for e in document.modelspace().query("LWPOLYLINE[layer=='vehicle']")),
        key=len,
    )
    xs = [point[0] for point in outline.get_points()]
    assert max(xs) - min(xs) == pytest.approx(content.build.vehicle.outside.length_mm, abs=0.01)


def test_a_metric_dimension_stays_alive_and_an_inch_is_written_out() -> None:
    metric, _ = _read("four-seats", "plan")
    assert "<>" in {d.dxf.text for d in metric.modelspace().query("DIMENSION")}
    inches, _ = _read("night-watch", "plan")
    assert all("<>" not in d.dxf.text for d in inches.modelspace().query("DIMENSION"))


def test_the_sheet_is_in_paper_space_with_a_window_at_its_scale() -> None:
    content = demo("four-seats")
    made = sheet(content, "plan")
    document, _ = _read("four-seats", "plan")
    paper = document.layout("plan")
    window = next(v for v in paper.query("VIEWPORT") if v.dxf.layer == "sheet")
    scale = window.dxf.view_height / window.dxf.height
    assert scale == pytest.approx(made.panes[0].scene.scale_ratio)
    said = {text.dxf.text for text in paper.query("TEXT")}
    assert content.build.name in said


def test_what_is_cut_is_hatched() -> None:
    document, _ = _read("four-seats", "plan")
    patterns = {h.dxf.pattern_name for h in document.modelspace().query("HATCH")}
    assert {"ANSI31", "ANSI37"} <= patterns


def test_two_drawings_of_one_sheet_stand_side_by_side() -> None:
    content = demo("winter-kit")
    drafts = (DRAFTS["rear"](content), DRAFTS["rear-open"](content))
    made = dxf(sheet_of(content, drafts, name="rear"), content.system)
    document, auditor = recover.read(io.BytesIO(made))
    assert not auditor.errors
    windows = [v for v in document.layout("rear").query("VIEWPORT") if v.dxf.layer == "sheet"]
    assert len(windows) == 2
    middles = [v.dxf.view_center_point[0] for v in windows]
    assert abs(middles[1] - middles[0]) > content.build.vehicle.outside.width_mm


@pytest.mark.parametrize("view", ["plan", "findings"])
def test_the_same_build_gives_the_same_bytes(view: str) -> None:
    content = demo("troubled")
    assert dxf(sheet(content, view), content.system) == _bytes("troubled", view)
