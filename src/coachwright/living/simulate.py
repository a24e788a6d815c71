"""The coupled year of any body of rooms at any site: lay the arrays, walk, read the sums."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS, HOURS
from coachwright.errors import OutOfRange
from coachwright.living import handed
from coachwright.living import kernel_model as c
from coachwright.living.balance import Balance, balance
from coachwright.living.columns import EXTREMES, SUMS
from coachwright.living.given import Given
from coachwright.living.given_body import Window
from coachwright.living.modes import Modes, modes
from coachwright.living.network import Network, network
from coachwright.living.space import Space
from coachwright.living.steps import SiteSteps, Sky, keys_of, site_steps

Grid = NDArray[np.float64]

_MINUTES = (60.0, 30.0, 20.0, 15.0, 12.0, 10.0, 6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.0)
_MOST_PRECONDITION_D = 45
_BESIDES = ("charge_frac", "bank_in_w", "bus_w", "sun_most_w", "bank_around_degc")
"""What a series keeps of each step beside what is summed."""


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Prepared:
    """A design at a site, ready to be walked through again and again.

    Attributes
    ----------
    networks, modes
        With blinds open and shut; one alone where there are no blinds.
    """

    given: Given
    site: SiteSteps
    step_min: float
    networks: tuple[Network, ...]
    modes: tuple[Modes, ...]
    numbers: Any
    tables: Any
    matrices: Any
    hours: Any


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Run:
    """What one walk through the days gave.

    Attributes
    ----------
    months
        For each month a row of `columns.SUMS`; zeros for months not walked through.
    extremes
        For each month a row of `columns.EXTREMES`.
    frost_h
        For each month, hours below freezing of each tank or run in the order given.
    nodes_degc, rooms, flows_w
        With `series`, by name and step: temperatures (``outside``, ``bank``, each room,
        ``<room> glass``, ``<room> rib``, ``<room> lining``, each tank or run); vapour, carbon
        dioxide and water on faces of each room; `FLOWS`.
    draw_w, sun_w, around_degc
        With `off_grid`, what each stand walks along.
    balance
        How well heat, vapour, electricity and charge close.
    """

    given: Given
    step_min: float
    from_day: int
    days: int
    off_grid: bool
    months: Grid
    extremes: Grid
    frost_h: Grid
    balance: Balance
    nodes_degc: dict[str, Grid]
    rooms: dict[str, Grid]
    flows_w: dict[str, Grid]
    draw_w: Grid
    sun_w: Grid
    around_degc: Grid
    end_charge_frac: float
    end_air_degc: tuple[float, ...]

    def by_month(self, name: str) -> Grid:
        """Return a column of sums or extremes, one value for each month."""
        if name in SUMS:
            return np.asarray(self.months[:, SUMS.index(name)])
        if name in EXTREMES:
            return np.asarray(self.extremes[:, EXTREMES.index(name)])
        raise OutOfRange("name", name, "a name of columns.SUMS or columns.EXTREMES")

    def whole(self, name: str) -> float:
        """Return the sum of a column over the months walked through."""
        return float(self.by_month(name).sum())


def simulate(
    given: Given,
    sky: Sky,
    *,
    step_min: float = 10.0,
    series: bool = False,
    off_grid: bool = False,
    from_day: int = 0,
    days: int = DAYS,
    start_degc: float | None = None,
    start_charge_frac: float = 1.0,
    precondition_d: int | None = None,
    site: SiteSteps | None = None,
) -> Run:
    """Return the year (or some days of it) of a body of rooms.

    Parameters
    ----------
    given
        The body, its people, appliances, bank and sun.
    sky
        The site.
    step_min
        Length of a step; a part of an hour. [min]
    series
        Keep temperatures and flows of every step.
    off_grid
        Never driving, never on hook-up, and every load met: the series along which stands walk.
    from_day, days
        First day of the year, from 0, and how many; goes on past the end of December.
    start_degc
        Everything inside begins at this; None for days walked before the first. [degC]
    start_charge_frac
        Of the bank.
    precondition_d
        Days walked before the first; None for as many as the slowest part needs, up to 45.
    site
        Of `site_steps` for the same planes and heading, kept by the caller; None to make it.

    Notes
    -----
    See the manual for the physics.  Convective heat, fresh air and cooling enter at the room's
    air at the end of each step as a correction of the linear step, which is solved with them.

    References
    ----------
    [iso-6946], [iso-13788], [energyplus-coils]
    """
    ready = prepare(given, sky, step_min=step_min, site=site)
    return year(
        ready,
        series=series,
        off_grid=off_grid,
        from_day=from_day,
        days=days,
        start_degc=start_degc,
        start_charge_frac=start_charge_frac,
        precondition_d=precondition_d,
    )


def prepare(
    given: Given,
    sky: Sky,
    *,
    step_min: float = 10.0,
    site: SiteSteps | None = None,
    refined: int = 1,
    like: Prepared | None = None,
) -> Prepared:
    """Return a design at a site, ready to be walked through.

    Parameters
    ----------
    given
        The design.
    sky
        The site.
    step_min
        Length of a step; a part of an hour. [min]
    site
        Of `site_steps`; None to make it.
    refined
        Times as many cells through each layer.
    like
        Prepared before: where its body is the same one under the same wind, it is not made anew.
    """
    if step_min not in _MINUTES:
        raise OutOfRange("step_min", step_min, ", ".join(f"{each:g}" for each in _MINUTES))
    if site is None or site.lit != keys_of(given.body):
        site = site_steps(body=given.body, sky=sky, heading_deg=given.heading_deg)
    rooms = {room.name: place for place, room in enumerate(given.body.rooms)}
    blinds = any(_has_blind(each) for each in given.body.windows)
    numbers = handed.numbers(
        given=given,
        site=site,
        rooms=rooms,
        step_min=step_min,
        blinds=blinds,
        altitude_m=sky.weather.place.altitude_m,
    )
    if like is None or not _same_body(like, given, site, step_min):
        like = None
    networks = _networks(given, site, refined, blinds=blinds) if like is None else like.networks
    both = _modes(networks, step_min, numbers.thermostat) if like is None else like.modes
    return Prepared(
        given=given,
        site=site,
        step_min=step_min,
        networks=networks,
        modes=both,
        numbers=numbers,
        tables=handed.tables(
            given=given,
            site=site,
            rooms=rooms,
            step_min=step_min,
            seen_m2=networks[0].seen_area_m2,
        ),
        matrices=handed.matrices(both) if like is None else like.matrices,
        hours=c.Site(
            site.driving,
            site.humidity,
            site.dark,
            np.array(given.supply.sun_w, dtype=np.float64).reshape(HOURS),
        ),
    )


def _modes(networks: tuple[Network, ...], step_min: float, home: int) -> tuple[Modes, ...]:
    step_s = 60.0 * step_min
    return tuple(modes(network=one, step_s=step_s, radiant_room=home) for one in networks)


def _same_body(like: Prepared, given: Given, site: SiteSteps, step_min: float) -> bool:
    return (
        like.given.body is given.body
        and like.given.thermostat_room == given.thermostat_room
        and like.step_min == step_min
        and like.site.lit == site.lit
        and like.site.wind_m_per_s == site.wind_m_per_s
        and like.site.pressure_pa == site.pressure_pa
    )


def _has_blind(window: Window) -> bool:
    return window.blind_frac < 1.0 or window.blind_resistance_m2k_per_w > 0.0


def _networks(given: Given, site: SiteSteps, refined: int, *, blinds: bool) -> tuple[Network, ...]:
    return tuple(
        network(
            body=given.body,
            wind_m_per_s=site.wind_m_per_s,
            pressure_pa=site.pressure_pa,
            shut=shut,
            refined=refined,
        )
        for shut in ((False, True) if blinds else (False,))
    )


def year(
    ready: Prepared,
    *,
    series: bool = False,
    off_grid: bool = False,
    from_day: int = 0,
    days: int = DAYS,
    start_degc: float | None = None,
    start_charge_frac: float = 1.0,
    precondition_d: int | None = None,
) -> Run:
    """Walk a prepared design through some days; see `simulate`.

    Parameters
    ----------
    ready
        The design.
    series, off_grid, from_day, days, start_degc, start_charge_frac, precondition_d
        As for `simulate`.
    """
    if days < 1:
        raise OutOfRange("days", days, "at least 1")
    space = Space.of(ready, from_day=from_day, start_degc=start_degc)
    misc = space.state.misc
    misc[c.CHARGE] = start_charge_frac
    before_d = _precondition_d(ready, start_degc) if precondition_d is None else precondition_d
    if before_d > 0:
        _walk(ready, space, from_day - before_d, before_d, off_grid=off_grid, unlimited=1, keep=0)
        misc[c.CHARGE] = start_charge_frac
    keeps = series or off_grid
    space = space.again(ready, steps=days * round(1440.0 / ready.step_min) if keeps else 0)
    started = space.copied()
    unlimited = int(off_grid or ready.given.bank is None)
    keep = 2 if keeps else 1
    _walk(ready, space, from_day, days, off_grid=off_grid, unlimited=unlimited, keep=keep)
    months = space.sums.month[:, : len(SUMS)] * (ready.step_min / 60.0)
    extra = dict(zip(_BESIDES, space.kept.flows[:, c.SUMMED :].T, strict=True))
    return Run(
        given=ready.given,
        step_min=ready.step_min,
        from_day=from_day,
        days=days,
        off_grid=off_grid,
        months=months,
        extremes=space.sums.extreme,
        frost_h=space.sums.frost_h,
        balance=balance(
            ready=ready, months=months, started=started, ended=space.state, sums=space.sums
        ),
        nodes_degc=space.nodes(ready) if series else {},
        rooms=space.rooms(ready) if series else {},
        flows_w=space.flows() | extra if series else {},
        draw_w=np.ascontiguousarray(extra["bus_w"]),
        sun_w=np.ascontiguousarray(extra["sun_most_w"]),
        around_degc=np.ascontiguousarray(extra["bank_around_degc"]),
        end_charge_frac=float(misc[c.CHARGE]),
        end_air_degc=tuple(float(each) for each in space.state.air),
    )


def _precondition_d(ready: Prepared, start_degc: float | None) -> int:
    if start_degc is not None:
        return 0
    slowest_d = 1.0 / float(ready.modes[0].rate_per_s[0]) / 86400.0
    return int(np.clip(np.ceil(4.0 * slowest_d), 2, _MOST_PRECONDITION_D))


def _walk(
    ready: Prepared,
    space: Space,
    from_day: int,
    days: int,
    *,
    off_grid: bool,
    unlimited: int,
    keep: int,
) -> None:
    from coachwright.living import kernel  # noqa: PLC0415  # it takes long to load

    calendar = handed.calendar(
        given=ready.given,
        step_min=ready.step_min,
        from_day=from_day,
        days=days,
        off_grid=off_grid,
    )
    kernel.run(
        ready.numbers,
        ready.tables,
        ready.matrices,
        ready.hours,
        calendar,
        space.state,
        space.sums,
        space.kept,
        space.work,
        unlimited,
        keep,
    )
