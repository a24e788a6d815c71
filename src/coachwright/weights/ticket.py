"""A weighbridge ticket against the model: difference, bound, correction."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from coachwright.weights.cases import Axles, Weighed, load_case
from coachwright.weights.model import (
    AxleSides,
    Group,
    LoadCase,
    MassBand,
    MassItem,
    TicketCheck,
    TicketRow,
)
from coachwright.weights.tolerance import ONE_SIDED_FACTOR, TWO_SIDED_FACTOR


@dataclass(frozen=True, kw_only=True, slots=True)
class Wheels:
    """A mass on each wheel (or pair)."""

    front_left_kg: float
    front_right_kg: float
    rear_left_kg: float
    rear_right_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Readings:
    """What the weighbridge said.

    Attributes
    ----------
    error_kg
        Half-width of the 95 % band of one reading.
    """

    total_kg: float
    front_kg: float | None
    rear_kg: float | None
    wheels: Wheels | None
    error_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class _Axle:
    """An axle's load, read or worked out, and its error."""

    load_kg: float
    error_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Applied:
    """A ticket's check, and what it fixes for every load case."""

    check: TicketCheck
    weighed: Weighed


def apply_ticket(
    *,
    readings: Readings,
    date: str,
    items: Sequence[MassItem],
    shares_frac: Mapping[str, float],
    axles: Axles,
    floor_height_mm: float,
) -> Applied:
    """Return a ticket's differences from the model, tested and turned into a correction.

    Parameters
    ----------
    readings
        Of the weighbridge.
    date
        Of the ticket.
    items
        Every mass of the model, without corrections.
    shares_frac
        How much of each item was aboard on the weighbridge, by name. [frac]
    axles
        Wheelbase and tracks.
    floor_height_mm
        Load floor above the ground. [mm]

    Returns
    -------
    Applied
        The rows, the correction items, and what the weighing fixes.

    Notes
    -----
    Difference d = weighed - predicted in the ticket's own state, tested against
    √(T_model² + e²), both half-widths of 95 % bands.  The correction is one mass at each wheel:
    with wheel readings each wheel's own difference; with axle readings each axle's difference,
    split as the model predicts its sides, so both axle differences are reproduced; with the total
    alone the difference is spread over the axles as the model predicts them.  Its height is that
    of the predicted centre of gravity: a weighbridge says nothing of heights.

    References
    ----------
    [jcgm-100]
    """
    predicted = load_case(
        name="ticket",
        label="On the weighbridge, as predicted",
        items=items,
        shares_frac=shares_frac,
        axles=axles,
    )
    read = _axles(readings)
    corrections = tuple(_corrections(readings, read, predicted, axles, floor_height_mm))
    check = TicketCheck(
        date=date,
        predicted=predicted,
        rows=tuple(_rows(readings, read, predicted, axles)),
        corrections=corrections,
        applied=_applied(readings, read is not None),
    )
    return Applied(check=check, weighed=_weighed(readings, read, predicted))


def _axles(readings: Readings) -> tuple[_Axle, _Axle] | None:
    error_kg = readings.error_kg
    if readings.wheels is not None:
        wheels, two_kg = readings.wheels, math.sqrt(2) * error_kg
        return (
            _Axle(load_kg=wheels.front_left_kg + wheels.front_right_kg, error_kg=two_kg),
            _Axle(load_kg=wheels.rear_left_kg + wheels.rear_right_kg, error_kg=two_kg),
        )
    front_kg, rear_kg = readings.front_kg, readings.rear_kg
    worked_out_kg = math.sqrt(2) * error_kg
    if front_kg is not None and rear_kg is not None:
        return (
            _Axle(load_kg=front_kg, error_kg=error_kg),
            _Axle(load_kg=rear_kg, error_kg=error_kg),
        )
    if front_kg is not None:
        rear = _Axle(load_kg=readings.total_kg - front_kg, error_kg=worked_out_kg)
        return _Axle(load_kg=front_kg, error_kg=error_kg), rear
    if rear_kg is not None:
        front = _Axle(load_kg=readings.total_kg - rear_kg, error_kg=worked_out_kg)
        return front, _Axle(load_kg=rear_kg, error_kg=error_kg)
    return None


def _applied(readings: Readings, axles_read: bool) -> str:
    if readings.wheels is not None:
        return "the difference of each wheel is placed at that wheel"
    if axles_read:
        return (
            "the difference of each axle is placed at that axle, on its sides as the model "
            "predicts them"
        )
    return (
        "only the total was weighed: its difference is spread over the axles as the model "
        "predicts them; the axle split itself stays unproven"
    )


def _corrections(
    readings: Readings,
    read: tuple[_Axle, _Axle] | None,
    predicted: LoadCase,
    axles: Axles,
    floor_height_mm: float,
) -> Iterator[MassItem]:
    front_kg, rear_kg = predicted.front.nominal_kg, predicted.rear.nominal_kg
    if read is not None:
        extra_kg = (read[0].load_kg - front_kg, read[1].load_kg - rear_kg)
    else:
        ratio = readings.total_kg / predicted.total.nominal_kg - 1
        extra_kg = (front_kg * ratio, rear_kg * ratio)
    places = (
        ("front", 0.0, axles.track_front_mm, predicted.front_sides, extra_kg[0]),
        ("rear", axles.wheelbase_mm, axles.track_rear_mm, predicted.rear_sides, extra_kg[1]),
    )
    for axle, x_mm, track_mm, sides, axle_kg in places:
        right_kg = _right_kg(readings.wheels, axle, sides, axle_kg)
        for side, mass_kg, y_mm in (
            ("left", axle_kg - right_kg, -track_mm / 2),
            ("right", right_kg, track_mm / 2),
        ):
            yield MassItem(
                name=f"ticket.{axle}-{side}",
                label=f"Weighbridge correction, {axle} {side} wheel",
                group=Group.CORRECTION,
                mass_kg=mass_kg,
                tolerance_kg=0.0,
                x_mm=x_mm,
                y_mm=y_mm,
                z_mm=predicted.cg_height.nominal_mm - floor_height_mm,
                height_mm=predicted.cg_height.nominal_mm,
                source="weighed less predicted",
            )


def _right_kg(wheels: Wheels | None, axle: str, sides: AxleSides, axle_kg: float) -> float:
    if wheels is None:
        return axle_kg * sides.right_frac
    weighed_kg = wheels.front_right_kg if axle == "front" else wheels.rear_right_kg
    return weighed_kg - sides.right_kg


def _rows(
    readings: Readings,
    read: tuple[_Axle, _Axle] | None,
    predicted: LoadCase,
    axles: Axles,
) -> Iterator[TicketRow]:
    total = predicted.total
    yield _row("vehicle", readings.total_kg, total.nominal_kg, _half_kg(total), readings.error_kg)
    if read is not None:
        for subject, band, axle in (
            ("front axle", predicted.front, read[0]),
            ("rear axle", predicted.rear, read[1]),
        ):
            yield _row(subject, axle.load_kg, band.nominal_kg, _half_kg(band), axle.error_kg)
    if readings.wheels is None:
        return
    wheels = readings.wheels
    half_y_mm = (predicted.cg_y.high_mm - predicted.cg_y.nominal_mm) * _TO_HALF_RATIO
    for subject, weighed_kg, band, track_mm, side_kg in (
        ("front left wheel", wheels.front_left_kg, predicted.front, axles.track_front_mm,
         predicted.front_sides.left_kg),
        ("front right wheel", wheels.front_right_kg, predicted.front, axles.track_front_mm,
         predicted.front_sides.right_kg),
        ("rear left wheel", wheels.rear_left_kg, predicted.rear, axles.track_rear_mm,
         predicted.rear_sides.left_kg),
        ("rear right wheel", wheels.rear_right_kg, predicted.rear, axles.track_rear_mm,
         predicted.rear_sides.right_kg),
    ):  # fmt: skip
        by_load_kg = _half_kg(band) * side_kg / band.nominal_kg
        by_side_kg = band.nominal_kg * half_y_mm / track_mm
        half_kg = math.hypot(by_load_kg, by_side_kg)
        yield _row(subject, weighed_kg, side_kg, half_kg, readings.error_kg)


_TO_HALF_RATIO = TWO_SIDED_FACTOR / ONE_SIDED_FACTOR


def _half_kg(band: MassBand) -> float:
    return (band.high_kg - band.nominal_kg) * _TO_HALF_RATIO


def _row(
    subject: str, weighed_kg: float, predicted_kg: float, half_kg: float, error_kg: float
) -> TicketRow:
    bound_kg = math.hypot(half_kg, error_kg)
    difference_kg = weighed_kg - predicted_kg
    return TicketRow(
        subject=subject,
        weighed_kg=weighed_kg,
        predicted_kg=predicted_kg,
        difference_kg=difference_kg,
        bound_kg=bound_kg,
        within=abs(difference_kg) <= bound_kg,
    )


def _weighed(readings: Readings, read: tuple[_Axle, _Axle] | None, predicted: LoadCase) -> Weighed:
    error_kg = readings.error_kg
    return Weighed(
        shares={load.item: load for load in predicted.loads},
        axles_read=read is not None,
        wheels_read=readings.wheels is not None,
        front_frac=predicted.front.nominal_kg / predicted.total.nominal_kg,
        cg_y_mm=predicted.cg_y.nominal_mm,
        cg_height_mm=predicted.cg_height.nominal_mm,
        front_error_kg=read[0].error_kg if read else error_kg,
        rear_error_kg=read[1].error_kg if read else error_kg,
        total_error_kg=error_kg,
    )
