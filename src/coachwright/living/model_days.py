"""Results for single days and things, such as the cold night; `model` hands them on."""

from dataclasses import dataclass

from coachwright.model.working import Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Picture:
    """Twenty-four hours (or a week) step by step, for a drawing; all tuples equally long.

    Attributes
    ----------
    flows_w
        By name, into the bank positive: ``sun``, ``drive``, ``hookup``, and uses negative.
    nodes_degc
        By name: ``outside``, ``cabin``, ``glass``, ``rib``, ``stall`` and whatever else there is.
    """

    title: str
    day: int
    step_min: float
    nodes_degc: dict[str, tuple[float, ...]]
    charge_frac: tuple[float, ...]
    flows_w: dict[str, tuple[float, ...]]
    humidity_frac: tuple[float, ...]
    co2_ppm: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class HeatingGrade:
    """A heating grade of the standard for motor caravans: the heater at full, nobody inside.

    Attributes
    ----------
    wanted
        The brief asks for this grade.
    reached_degc
        Inside, for good, with the mean loss.
    reached_low_degc
        The same with the greatest loss that the ribs may cause.
    heat_up_h
        From the temperature outside, for as many kelvin as the grade's test asks; None where it
        is never reached, or the grade has no such test.
    """

    grade: int
    wanted: bool
    outside_degc: float
    reached_degc: float
    reached_low_degc: float
    heat_up_h: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class FreshAir:
    """Fresh air while people are in, with windows and hatches shut.

    Attributes
    ----------
    open_m3_per_h
        Through what cannot be shut or is kept open, and through leaks.
    needed_m3_per_h
        That the standard for dwellings asks for.
    """

    people_count: int
    open_m3_per_h: float
    needed_m3_per_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class CoolerSupply:
    """What an air conditioner takes on the design hot day, and what can give it.

    Attributes
    ----------
    through_inverter
        Else it is fed by the bank directly.
    can_give_w
        The inverters' continuous power, or the bank's at its discharge limit; None where there is
        none.
    """

    name: str
    input_w: float
    through_inverter: bool
    can_give_w: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class InverterBay:
    """Where inverter and chargers lose their heat.

    Attributes
    ----------
    most_loss_w
        At the inverter's continuous power.
    flow_m3_per_h
        Of air that carries that heat away within the rise allowed.
    vent_m2
        Low and high openings together through which that air rises by itself.
    warmest_degc
        Of the room that it stands in, in the warmest hour of the year.
    """

    room: str
    names: tuple[str, ...]
    most_loss_w: float
    flow_m3_per_h: float
    vent_m2: float
    warmest_degc: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ColdNight:
    """The design cold night with the heater at work."""

    outside_degc: float
    need_w: float
    need_high_w: float
    heater_w: float
    reached_degc: float
    reached_low_degc: float
    heat_up_h: float | None
    fuel_l: float
    battery_wh: float
    picture: Picture
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class HotDay:
    """The design hot day with the air conditioner at work, from a full bank, without sun on it.

    Attributes
    ----------
    hours_h
        That a full bank holds it, sun counted; None where it holds through the day.
    hours_without_sun_h
        The same without any sun on the panels.
    duty_frac
        Share of the occupied hot hours that it runs.
    reached_degc
        Warmest in the cabin while it runs; `without_degc` the warmest with it off.
    mild_duty_frac
        Duty when 23.3 degC (74 degF) is held at 26.7 degC (80 degF) outside.
    """

    outside_degc: float
    hours_h: float | None
    hours_without_sun_h: float | None
    duty_frac: float
    reached_degc: float
    without_degc: float
    day_wh: float
    mild_duty_frac: float | None
    picture: Picture
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Drying:
    """Drying wet kit in the second room.

    Attributes
    ----------
    room_degc
        That the register brings it to on the design cold night's day and on a mild one.
    hours_h
        Until the load of water is gone; None where it never is.
    hot
        Warmer than 60 degC can be reached: shown with its caution.
    """

    room: str
    water_kg: float
    room_degc: float
    hours_h: float | None
    reachable_degc: float
    hot: bool
    working: Working
