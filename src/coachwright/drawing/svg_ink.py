"""Inks, tones and strokes of the SVG backend; every difference reads in black and white too."""

from coachwright.drawing.scene import Layer, Pattern, Style, Weight

_DARK = "#16212b"
_QUIET = "#56626d"
_PALE = "#8b96a0"
_WHITE = "#ffffff"

STROKE_MM = {Weight.FINE: 0.12, Weight.NORMAL: 0.22, Weight.BOLD: 0.45}

INK = {
    Layer.BODY: _DARK,
    Layer.GROUND: _QUIET,
    Layer.FITTING: _PALE,
    Layer.HEAVY: _DARK,
    Layer.LOAD: "#1d4e79",
    Layer.DIMENSION: _QUIET,
    Layer.CENTRE: _DARK,
    Layer.CENTRE_FILL: _DARK,
    Layer.VEHICLE: _PALE,
    Layer.SHELL: _DARK,
    Layer.FURNITURE: _DARK,
    Layer.ELECTRICAL: "#7a2e12",
    Layer.PLUMBING: "#1d4e79",
    Layer.GAS: "#6b4f00",
    Layer.AIR: "#5a2a63",
    Layer.ROOF: _DARK,
    Layer.OUTSIDE: "#23403a",
    Layer.INTERIOR: "#3a4550",
    Layer.ZONE: "#2f6b4f",
    Layer.LABEL: _DARK,
    Layer.FINDING: "#9c1f1f",
    Layer.SHEET: _DARK,
}

TONE = {
    Layer.BODY: _WHITE,
    Layer.GROUND: "none",
    Layer.FITTING: "#eef1f3",
    Layer.HEAVY: "#d5dde4",
    Layer.LOAD: "#1d4e79",
    Layer.DIMENSION: _QUIET,
    Layer.CENTRE: _WHITE,
    Layer.CENTRE_FILL: _DARK,
    Layer.VEHICLE: "#f6f7f8",
    Layer.SHELL: "#dfe3e7",
    Layer.FURNITURE: "#f5efe3",
    Layer.ELECTRICAL: "#f8e4d8",
    Layer.PLUMBING: "#dfeaf4",
    Layer.GAS: "#f7eebf",
    Layer.AIR: "#ece3f0",
    Layer.ROOF: "#e9edf0",
    Layer.OUTSIDE: "#e4ece8",
    Layer.INTERIOR: "#eff1f3",
    Layer.ZONE: "none",
    Layer.LABEL: _WHITE,
    Layer.FINDING: _WHITE,
    Layer.SHEET: _WHITE,
}

DASHES_MM = {Style.DASHED: "1.6 1.0", Style.DASH_DOT: "2.4 0.8 0.3 0.8"}

PATTERNS = {
    Pattern.DIAGONAL: (
        '<pattern id="diagonal" width="1.5" height="1.5" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="1.5" stroke="#16212b" '
        'stroke-width="0.22"/></pattern>'
    ),
    Pattern.CROSSED: (
        '<pattern id="crossed" width="1.8" height="1.8" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><path d="M0 0H1.8M0 0V1.8" stroke="#8b96a0" '
        'stroke-width="0.2"/></pattern>'
    ),
}
"""What a cut surface is filled with: on the paper, in mm."""
