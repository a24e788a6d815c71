"""The vehicle's length, width and height with everything outside fitted."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class OutsideBox:
    """The bounding box of something outside, and what counts it.

    Attributes
    ----------
    x_low_mm, x_high_mm
        From the front axle, rearwards.
    y_low_mm, y_high_mm
        From the centreline, to the right.
    top_mm
        Highest point above the ground.
    """

    name: str
    x_low_mm: float
    x_high_mm: float
    y_low_mm: float
    y_high_mm: float
    top_mm: float
    in_length: bool = True
    in_width: bool = True
    in_height: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class OverallSize:
    """The vehicle with everything outside fitted.

    Attributes
    ----------
    length_mm, width_mm, height_mm
        Everything; what a bridge, a ferry or a garage sees.
    counted_length_mm, counted_width_mm, counted_height_mm
        What the jurisdiction counts.
    rear_overhang_mm
        From the rear axle to the rearmost counted point.
    rear_overhang_frac
        That over the wheelbase.
    """

    length_mm: float
    width_mm: float
    height_mm: float
    counted_length_mm: float
    counted_width_mm: float
    counted_height_mm: float
    rear_overhang_mm: float
    rear_overhang_frac: float
    length_working: Working
    width_working: Working
    height_working: Working


def overall_size(
    *,
    wheelbase_mm: float,
    front_overhang_mm: float,
    length_mm: float,
    width_mm: float,
    height_mm: float,
    boxes: Sequence[OutsideBox],
) -> OverallSize:
    """Return the overall size of a vehicle with what hangs outside.

    Parameters
    ----------
    wheelbase_mm
        Between the axles. [mm]
    front_overhang_mm
        Of the vehicle alone, ahead of the front axle. [mm]
    length_mm
        Of the vehicle alone. [mm]
    width_mm
        Of the vehicle alone, without mirrors. [mm]
    height_mm
        Of the vehicle alone, on the fitted tyres. [mm]
    boxes
        Of the fittings outside.

    Returns
    -------
    OverallSize
        With everything, and as counted.

    Raises
    ------
    OutOfRange
        Where a length is not positive.

    Notes
    -----
    The span between the smallest and the largest coordinate of the vehicle and of every box.
    Unladen height; folded as driven.

    References
    ----------
    [eu-1230-2012], [us-23cfr658]

    Examples
    --------
    >>> box = OutsideBox(
    ...     name="rack", x_low_mm=5000, x_high_mm=5300, y_low_mm=-400, y_high_mm=400, top_mm=1500
    ... )
    >>> size = overall_size(
    ...     wheelbase_mm=4000,
    ...     front_overhang_mm=950,
    ...     length_mm=5990,
    ...     width_mm=2050,
    ...     height_mm=2650,
    ...     boxes=(box,),
    ... )
    >>> size.length_mm, size.rear_overhang_frac
    (6250, 0.325)
    """
    for name, value in (
        ("wheelbase_mm", wheelbase_mm),
        ("length_mm", length_mm),
        ("width_mm", width_mm),
        ("height_mm", height_mm),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    body = OutsideBox(
        name="vehicle",
        x_low_mm=-front_overhang_mm,
        x_high_mm=length_mm - front_overhang_mm,
        y_low_mm=-width_mm / 2,
        y_high_mm=width_mm / 2,
        top_mm=height_mm,
    )
    every = (body, *boxes)
    in_length = [box for box in every if box.in_length]
    rear = max(box.x_high_mm for box in in_length)
    long, wide = _span_x(every), _span_y(every)
    top = max(every, key=lambda box: box.top_mm)
    return OverallSize(
        length_mm=long.result,
        width_mm=wide.result,
        height_mm=top.top_mm,
        counted_length_mm=_span_x(in_length).result,
        counted_width_mm=_span_y([box for box in every if box.in_width]).result,
        counted_height_mm=max(box.top_mm for box in every if box.in_height),
        rear_overhang_mm=rear - wheelbase_mm,
        rear_overhang_frac=(rear - wheelbase_mm) / wheelbase_mm,
        length_working=long,
        width_working=wide,
        height_working=_height(top),
    )


def _span_x(boxes: Sequence[OutsideBox]) -> Working:
    first = min(boxes, key=lambda box: box.x_low_mm)
    last = max(boxes, key=lambda box: box.x_high_mm)
    return _span("x", first.name, first.x_low_mm, last.name, last.x_high_mm)


def _span_y(boxes: Sequence[OutsideBox]) -> Working:
    first = min(boxes, key=lambda box: box.y_low_mm)
    last = max(boxes, key=lambda box: box.y_high_mm)
    return _span("y", first.name, first.y_low_mm, last.name, last.y_high_mm)


def _span(axis: str, first: str, low_mm: float, last: str, high_mm: float) -> Working:
    return Working(
        expression=f"{axis}_max - {axis}_min",
        given=(
            Given(symbol=f"{axis}_max", meaning=last, value=high_mm, unit="mm"),
            Given(symbol=f"{axis}_min", meaning=first, value=low_mm, unit="mm"),
        ),
        result=high_mm - low_mm,
        unit="mm",
        references=("vehicle-maker-data", "part-maker-data"),
        note="everything outside, counted by the law or not; without mirrors of the vehicle",
    )


def _height(top: OutsideBox) -> Working:
    return Working(
        expression="H = highest point above the ground",
        given=(Given(symbol="H", meaning=top.name, value=top.top_mm, unit="mm"),),
        result=top.top_mm,
        unit="mm",
        references=("vehicle-maker-data", "part-maker-data"),
        note="unladen, on the fitted tyres; everything, counted by the law or not",
    )
