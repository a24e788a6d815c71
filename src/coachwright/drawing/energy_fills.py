"""How sources and uses of energy are filled in charts, and which of them stand together."""

from coachwright.drawing.chart import Fill
from coachwright.drawing.scene import Layer, Pattern

SOURCES: dict[str, Fill] = {
    "sun": Fill(letter="S", words="sun", layer=Layer.GAS),
    "drive": Fill(letter="D", words="driving", layer=Layer.HEAVY, pattern=Pattern.DIAGONAL),
    "hookup": Fill(letter="H", words="hook-up", layer=Layer.AIR, pattern=Pattern.CROSSED),
}
"""Name of a source → how it is filled, from the foot."""

_HEATER = Fill(letter="W", words="heater", layer=Layer.ELECTRICAL, pattern=Pattern.DIAGONAL)
_COOLER = Fill(letter="A", words="air conditioner", layer=Layer.PLUMBING)
_FRIDGE = Fill(letter="F", words="fridge", layer=Layer.OUTSIDE, pattern=Pattern.CROSSED)
_LIGHT = Fill(letter="L", words="fans and light", layer=Layer.BODY)
_DIRECT = Fill(letter="B", words="other battery loads", layer=Layer.FITTING)
_MAINS = Fill(letter="M", words="behind the inverter, with its losses", layer=Layer.AIR)
_LOST = Fill(
    letter="X",
    words="standing by, pads, lost in the battery",
    layer=Layer.BODY,
    pattern=Pattern.DIAGONAL,
)

USES: dict[str, Fill] = {
    "heater": _HEATER,
    "cooler": _COOLER,
    "fridge": _FRIDGE,
    "fans": _LIGHT,
    "light": _LIGHT,
    "direct": _DIRECT,
    "alternating": _MAINS,
    "inverter": _MAINS,
    "standby": _LOST,
    "pads": _LOST,
    "bank": _LOST,
}
"""Name of a use → how it is filled; those filled alike stand together, from the zero line."""

UNMET = Fill(letter="", words="wanted and not given", layer=Layer.FINDING, pattern=Pattern.CROSSED)
SPILLED = Fill(letter="", words="sun left over", layer=Layer.BODY)


def gathered_wh(parts_wh: dict[str, float], fills: dict[str, Fill]) -> dict[Fill, float]:
    """Return the sum of what is filled alike, in the order of the fills; what is nothing is out.

    Parameters
    ----------
    parts_wh
        By name; a name that has no fill is out. [Wh]
    fills
        `SOURCES` or `USES`.
    """
    sums: dict[Fill, float] = {}
    for name, fill in fills.items():
        sums[fill] = sums.get(fill, 0.0) + parts_wh.get(name, 0.0)
    return {fill: each for fill, each in sums.items() if each != 0.0}
