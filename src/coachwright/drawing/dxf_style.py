"""Layers, line types and the dimension style of the DXF backend."""

from dataclasses import dataclass
from importlib import import_module
from typing import Any

from coachwright.drawing.dimensioning import LETTERS_MM
from coachwright.drawing.lettering import CAP_RATIO
from coachwright.drawing.scene import Layer, Style, Weight

TEXT_STYLE = "lettering"
DIMENSION_STYLE = "shop"
_FONT = "arial.ttf"
_MILLIMETRES = 4
_BY_LAYER = 256

WEIGHTS = {Weight.FINE: 13, Weight.NORMAL: 25, Weight.BOLD: 50}
"""In hundredths of a millimetre."""
PATTERNS_MM = {
    Style.DASHED: (1.6, -1.0),
    Style.DASH_DOT: (2.4, -0.8, 0.3, -0.8),
}


@dataclass(frozen=True, kw_only=True, slots=True)
class DxfLayer:
    """A layer of the file."""

    name: str
    colour: int


DXF_LAYERS = {
    "vehicle": DxfLayer(name="vehicle", colour=8),
    "shell": DxfLayer(name="shell", colour=7),
    "furniture": DxfLayer(name="furniture", colour=34),
    "electrical": DxfLayer(name="electrical", colour=1),
    "plumbing": DxfLayer(name="plumbing", colour=5),
    "gas": DxfLayer(name="gas", colour=40),
    "air": DxfLayer(name="air", colour=6),
    "roof": DxfLayer(name="roof", colour=4),
    "outside": DxfLayer(name="outside", colour=3),
    "interior": DxfLayer(name="interior", colour=9),
    "zones": DxfLayer(name="zones", colour=94),
    "dimensions": DxfLayer(name="dimensions", colour=252),
    "text": DxfLayer(name="text", colour=7),
    "findings": DxfLayer(name="findings", colour=1),
    "sheet": DxfLayer(name="sheet", colour=7),
}

LAYER_OF = {
    Layer.BODY: "vehicle",
    Layer.GROUND: "vehicle",
    Layer.VEHICLE: "vehicle",
    Layer.FITTING: "interior",
    Layer.HEAVY: "interior",
    Layer.LOAD: "text",
    Layer.DIMENSION: "dimensions",
    Layer.CENTRE: "text",
    Layer.CENTRE_FILL: "text",
    Layer.SHELL: "shell",
    Layer.FURNITURE: "furniture",
    Layer.ELECTRICAL: "electrical",
    Layer.PLUMBING: "plumbing",
    Layer.GAS: "gas",
    Layer.AIR: "air",
    Layer.ROOF: "roof",
    Layer.OUTSIDE: "outside",
    Layer.INTERIOR: "interior",
    Layer.ZONE: "zones",
    Layer.LABEL: "text",
    Layer.FINDING: "findings",
    Layer.SHEET: "sheet",
}
"""Layer of the scene → layer of the file."""


def line_type(style: Style, *, on_paper: bool) -> str:
    """Return the name of the line type of a style, in the model or on the paper."""
    if style is Style.SOLID:
        return "CONTINUOUS"
    return f"{style}-{'paper' if on_paper else 'model'}"


def library() -> Any:
    """Return the DXF library; it is heavy, and only who writes such a file waits for it."""
    return import_module("ezdxf")


def prepared(scale_ratio: float) -> Any:
    """Return an empty document in mm with layers, line types, text and dimension style.

    Parameters
    ----------
    scale_ratio
        Millimetres of the model for one of the paper: lettering and dashes are that much larger.
    """
    document = library().new("R2010", setup=False)
    document.units = _MILLIMETRES
    document.header["$MEASUREMENT"] = 1
    document.header["$LTSCALE"] = 1.0
    document.header["$PSLTSCALE"] = 0
    document.header["$LWDISPLAY"] = 1
    for style, pattern in PATTERNS_MM.items():
        for on_paper, factor in ((True, 1.0), (False, scale_ratio)):
            parts = [part * factor for part in pattern]
            document.linetypes.add(
                line_type(style, on_paper=on_paper),
                pattern=[sum(abs(part) for part in parts), *parts],
                description=f"{style}",
            )
    for layer in DXF_LAYERS.values():
        document.layers.add(layer.name, color=layer.colour)
    document.styles.add(TEXT_STYLE, font=_FONT)
    _dimension_style(document, scale_ratio)
    return document


def _dimension_style(document: Any, scale_ratio: float) -> None:
    style = document.dimstyles.duplicate_entry("Standard", DIMENSION_STYLE)
    style.update_dxf_attribs(
        {
            "dimtxsty": TEXT_STYLE,
            "dimscale": scale_ratio,
            "dimtxt": LETTERS_MM * CAP_RATIO,
            "dimasz": 0.8,
            "dimtsz": 0.8,
            "dimexo": 0.9,
            "dimexe": 1.0,
            "dimgap": 0.6,
            "dimtad": 1,
            "dimtih": 0,
            "dimtoh": 0,
            "dimdec": 0,
            "dimlunit": 2,
            "dimlfac": 1.0,
            "dimzin": 8,
            "dimtmove": 2,
            "dimtfill": 1,
            "dimlwd": WEIGHTS[Weight.FINE],
            "dimlwe": WEIGHTS[Weight.FINE],
            "dimclrd": _BY_LAYER,
            "dimclre": _BY_LAYER,
            "dimclrt": _BY_LAYER,
        }
    )
