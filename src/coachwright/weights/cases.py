"""One state of the vehicle on the scales, with its one-sided 95 % bounds."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from coachwright.errors import OutOfRange
from coachwright.weights.model import AxleSides, LengthBand, Load, LoadCase, MassBand, MassItem
from coachwright.weights.moments import Balance, PointMass, balance, side_split
from coachwright.weights.tolerance import Ties, combine_tied, tie


@dataclass(frozen=True, kw_only=True, slots=True)
class Axles:
    """Where the axles stand."""

    wheelbase_mm: float
    track_front_mm: float
    track_rear_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Weighed:
    """What a weighbridge ticket fixes, so that only what changed since is uncertain.

    Attributes
    ----------
    shares
        How much of each item was aboard, by name; an item that is not named was not.
    axles_read
        Each axle was read; else the total alone, and the model's axle split stands.
    wheels_read
        Each wheel was read, so that the lateral moment is fixed too.
    front_frac
        Share of the total on the front axle as predicted.
    cg_y_mm, cg_height_mm
        As predicted; where the difference is placed.
    front_error_kg, rear_error_kg, total_error_kg
        Half-width of the 95 % band of each reading.
    """

    shares: dict[str, Load]
    axles_read: bool
    wheels_read: bool
    front_frac: float
    cg_y_mm: float
    cg_height_mm: float
    front_error_kg: float
    rear_error_kg: float
    total_error_kg: float


class _Effect(NamedTuple):
    """What one half-width does to the sums."""

    total_kg: float
    front_kg: float
    rear_kg: float
    moment_y_kg_mm: float
    moment_z_kg_mm: float
    systematic_frac: float = 0.0
    pool: str = ""


def load_case(
    *,
    name: str,
    label: str,
    items: Sequence[MassItem],
    shares_frac: Mapping[str, float],
    axles: Axles,
    weighed: Weighed | None = None,
    note: str = "",
) -> LoadCase:
    """Return one load case.

    Parameters
    ----------
    name, label
        Of the case.
    items
        Every mass, full or aboard, corrections of a ticket included.
    shares_frac
        How much of each item is aboard, by name; an item that is not named is not. [frac]
    axles
        Wheelbase and tracks.
    weighed
        What a ticket fixes.
    note
        For people.

    Returns
    -------
    LoadCase
        Nominal values by moment balance, bounds from the items' tolerances.

    Raises
    ------
    OutOfRange
        Where a share is negative or more than 1.

    Notes
    -----
    With cᵢ the sensitivity of a result to mᵢ, each item brings the deviation cᵢ·tᵢ:
    total cᵢ = sᵢ; rear cᵢ = sᵢ·xᵢ/WB; x of the centre of gravity cᵢ = (sᵢ·xᵢ - x·sᵢ)/W, and so
    for y and the height.  After a weighing the total's cᵢ is sᵢ less the share that was aboard
    then: what stayed aboard no longer counts, and the scale's error is added.  First order.

    References
    ----------
    [jcgm-100], [body-builder-manual-appendix-b]
    """
    for item, share_frac in shares_frac.items():
        if not 0 <= share_frac <= 1:
            raise OutOfRange(f"shares_frac[{item}]", share_frac, "0 to 1")
    aboard = [item for item in items if shares_frac.get(item.name, 0.0) != 0.0]
    found = balance(
        masses=[_point(item, shares_frac[item.name]) for item in aboard],
        wheelbase_mm=axles.wheelbase_mm,
    )
    effects = tuple(_effects(items, shares_frac, axles, weighed))
    ties = tie(
        systematic_frac=[effect.systematic_frac for effect in effects],
        pools=[effect.pool for effect in effects],
    )
    cg_x, cg_y, cg_height = _centre(found, effects, ties, axles)
    return LoadCase(
        name=name,
        label=label,
        loads=tuple(_load(item, shares_frac[item.name]) for item in aboard),
        total=_mass_band(found.total_kg, [effect.total_kg for effect in effects], ties),
        front=_mass_band(found.front_kg, [effect.front_kg for effect in effects], ties),
        rear=_mass_band(found.rear_kg, [effect.rear_kg for effect in effects], ties),
        front_sides=_sides(found.front_kg, found.cg_y_mm, axles.track_front_mm),
        rear_sides=_sides(found.rear_kg, found.cg_y_mm, axles.track_rear_mm),
        cg_x=cg_x,
        cg_y=cg_y,
        cg_height=cg_height,
        note=note,
    )


def _point(item: MassItem, share_frac: float) -> PointMass:
    return PointMass(
        mass_kg=item.mass_kg * share_frac,
        x_mm=item.x_mm,
        y_mm=item.y_mm,
        height_mm=item.height_mm,
    )


def _load(item: MassItem, share_frac: float) -> Load:
    return Load(
        item=item.name, group=item.group, share_frac=share_frac, mass_kg=item.mass_kg * share_frac
    )


def _sides(axle_kg: float, cg_y_mm: float, track_mm: float) -> AxleSides:
    split = side_split(axle_kg=axle_kg, cg_y_mm=cg_y_mm, track_mm=track_mm)
    return AxleSides(left_kg=split.left_kg, right_kg=split.right_kg, right_frac=split.right_frac)


def _effects(
    items: Sequence[MassItem],
    shares_frac: Mapping[str, float],
    axles: Axles,
    weighed: Weighed | None,
) -> Iterator[_Effect]:
    for item in items:
        now = shares_frac.get(item.name, 0.0)
        then = weighed.shares.get(item.name) if weighed is not None else None
        yield _item_effect(item, now, then.share_frac if then else 0.0, axles, weighed)
        if item.height_tolerance_mm and now:
            yield _moment_effect(moment_z_kg_mm=item.mass_kg * now * item.height_tolerance_mm)
        if item.x_tolerance_mm and now:
            read = then is not None and weighed is not None and weighed.axles_read
            moved = now - (then.share_frac if read and then else 0.0)
            rear_kg = item.mass_kg * moved * item.x_tolerance_mm / axles.wheelbase_mm
            yield _moment_effect(rear_kg=rear_kg)
    if weighed is not None:
        yield from _scale_effects(axles, weighed)


def _moment_effect(
    *, rear_kg: float = 0.0, moment_y_kg_mm: float = 0.0, moment_z_kg_mm: float = 0.0
) -> _Effect:
    """Return what leaves the total as it is."""
    return _Effect(
        total_kg=0.0,
        front_kg=-rear_kg,
        rear_kg=rear_kg,
        moment_y_kg_mm=moment_y_kg_mm,
        moment_z_kg_mm=moment_z_kg_mm,
    )


def _item_effect(
    item: MassItem, now_frac: float, then_frac: float, axles: Axles, weighed: Weighed | None
) -> _Effect:
    tolerance_kg = item.tolerance_kg
    rear_frac = item.x_mm / axles.wheelbase_mm
    then_rear_frac, then_y_mm, then_height_mm = rear_frac, item.y_mm, 0.0
    if weighed is not None:
        then_height_mm = weighed.cg_height_mm
        if not weighed.axles_read:
            then_rear_frac = 1 - weighed.front_frac
        if not weighed.wheels_read:
            then_y_mm = weighed.cg_y_mm
    return _Effect(
        total_kg=tolerance_kg * (now_frac - then_frac),
        front_kg=tolerance_kg * ((1 - rear_frac) * now_frac - (1 - then_rear_frac) * then_frac),
        rear_kg=tolerance_kg * (rear_frac * now_frac - then_rear_frac * then_frac),
        moment_y_kg_mm=tolerance_kg * (item.y_mm * now_frac - then_y_mm * then_frac),
        moment_z_kg_mm=tolerance_kg * (item.height_mm * now_frac - then_height_mm * then_frac),
        systematic_frac=item.systematic_frac,
        pool=item.pool,
    )


def _scale_effects(axles: Axles, weighed: Weighed) -> Iterator[_Effect]:
    if weighed.axles_read:
        readings = [(weighed.front_error_kg, 1.0), (weighed.rear_error_kg, 0.0)]
    else:
        readings = [(weighed.total_error_kg, weighed.front_frac)]
    for error_kg, front_frac in readings:
        yield _Effect(
            total_kg=error_kg,
            front_kg=error_kg * front_frac,
            rear_kg=error_kg * (1 - front_frac),
            moment_y_kg_mm=error_kg * weighed.cg_y_mm,
            moment_z_kg_mm=error_kg * weighed.cg_height_mm,
        )
    if weighed.wheels_read:
        track_mm = max(axles.track_front_mm, axles.track_rear_mm)
        error_kg = math.hypot(weighed.front_error_kg, weighed.rear_error_kg)
        yield _moment_effect(moment_y_kg_mm=error_kg * track_mm / 2)


def _centre(
    found: Balance, effects: Sequence[_Effect], ties: Ties, axles: Axles
) -> tuple[LengthBand, LengthBand, LengthBand]:
    total_kg, wheelbase_mm = found.total_kg, axles.wheelbase_mm
    x_mm, y_mm, height_mm = found.cg_x_mm, found.cg_y_mm, found.cg_height_mm
    along_mm = [(wheelbase_mm * e.rear_kg - x_mm * e.total_kg) / total_kg for e in effects]
    across_mm = [(e.moment_y_kg_mm - y_mm * e.total_kg) / total_kg for e in effects]
    up_mm = [(e.moment_z_kg_mm - height_mm * e.total_kg) / total_kg for e in effects]
    return (
        _length_band(x_mm, along_mm, ties),
        _length_band(y_mm, across_mm, ties),
        _length_band(height_mm, up_mm, ties),
    )


def _mass_band(nominal_kg: float, parts_kg: Sequence[float], ties: Ties) -> MassBand:
    margin_kg = combine_tied(value=parts_kg, ties=ties, unit="kg").margin
    return MassBand(
        nominal_kg=nominal_kg, low_kg=nominal_kg - margin_kg, high_kg=nominal_kg + margin_kg
    )


def _length_band(nominal_mm: float, parts_mm: Sequence[float], ties: Ties) -> LengthBand:
    margin_mm = combine_tied(value=parts_mm, ties=ties, unit="mm").margin
    return LengthBand(
        nominal_mm=nominal_mm, low_mm=nominal_mm - margin_mm, high_mm=nominal_mm + margin_mm
    )
