"""A sheet as DXF: the drawing in model space at true size in mm, the frame in paper space.

Layers are named by trade.  Tones are left out; what is cut is hatched.
"""

import io
from collections.abc import Iterable
from typing import Any

from coachwright.drawing.dxf_style import DXF_LAYERS, LAYER_OF, library, prepared
from coachwright.drawing.dxf_writing import Writer
from coachwright.drawing.scene import Layer, Pane, Scene, Sheet

_BETWEEN_MM = 1000.0
"""In model space, between several drawings of one sheet."""


def dxf(sheet: Sheet, system: str) -> bytes:
    """Return a sheet as a DXF file; the same sheet gives the same bytes.

    Parameters
    ----------
    sheet
        A sheet; several drawings on it stand side by side in model space.
    system
        Units that dimensions are shown in; the drawing itself is always in mm.
    """
    options = library().options
    stream = io.StringIO()
    kept = options.write_fixed_meta_data_for_testing
    # else the file holds the moment of its making
    options.write_fixed_meta_data_for_testing = True
    try:
        document = drawing_of(sheet, system)
        document.write(stream)
    finally:
        options.write_fixed_meta_data_for_testing = kept
    return stream.getvalue().encode(document.output_encoding)


def drawing_of(sheet: Sheet, system: str) -> Any:
    """Return a sheet as a document of the DXF library.

    Parameters
    ----------
    sheet
        A sheet.
    system
        Units that dimensions are shown in.
    """
    scale = sheet.panes[0].scene.scale_ratio if sheet.panes else 1.0
    document = prepared(scale)
    model, paper = document.modelspace(), document.layout("Layout1")
    document.layouts.rename("Layout1", _layout_name(sheet.name))
    width, height = sheet.size_mm
    paper.page_setup(size=(width, height), margins=(0, 0, 0, 0), units="mm")
    Writer(paper, scale_ratio=1.0, system=system, on_paper=True).write(sheet.frame.primitives)
    shift = 0.0
    for pane in sheet.panes:
        scene = pane.scene
        writer = Writer(
            model,
            scale_ratio=scene.scale_ratio,
            system=system,
            shift_mm=shift - _left_mm(shift, scene),
        )
        writer.write(scene.primitives)
        _window(paper, pane, shift - _left_mm(shift, scene))
        shift += scene.high_mm[0] - scene.low_mm[0] + _BETWEEN_MM
    if not sheet.panes:
        Writer(model, scale_ratio=1.0, system=system, on_paper=True).write(sheet.frame.primitives)
    _zoom(document, sheet)
    return document


def _left_mm(shift_mm: float, scene: Scene) -> float:
    """Return what is taken off the shift: the first drawing keeps the vehicle's own axes."""
    return 0.0 if shift_mm == 0.0 else scene.low_mm[0]


def _layout_name(name: str) -> str:
    return "".join(letter if letter.isalnum() or letter in "-_ " else "_" for letter in name)


def _window(paper: Any, pane: Pane, shift_mm: float) -> None:
    scene = pane.scene
    width = (scene.high_mm[0] - scene.low_mm[0]) / scene.scale_ratio
    height = (scene.high_mm[1] - scene.low_mm[1]) / scene.scale_ratio
    middle = (
        (scene.low_mm[0] + scene.high_mm[0]) / 2 + shift_mm,
        (scene.low_mm[1] + scene.high_mm[1]) / 2,
    )
    window = paper.add_viewport(
        center=(pane.at_mm[0] + width / 2, pane.at_mm[1] + height / 2),
        size=(width, height),
        view_center_point=middle,
        view_height=height * scene.scale_ratio,
        status=2,
    )
    window.dxf.layer = DXF_LAYERS[LAYER_OF[Layer.SHEET]].name


def _zoom(document: Any, sheet: Sheet) -> None:
    """Let a viewer open the model on the drawing."""
    scenes: Iterable[Scene] = [pane.scene for pane in sheet.panes] or [sheet.frame]
    scene = next(iter(scenes))
    low, high = scene.low_mm, scene.high_mm
    document.set_modelspace_vport(
        height=(high[1] - low[1]) * 1.05,
        center=((low[0] + high[0]) / 2, (low[1] + high[1]) / 2),
    )
