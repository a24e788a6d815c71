"""Take the tanks and the toilet of a build to their subjects."""

from typing import Literal

from coachwright.model.build import Build
from coachwright.model.facets import Tank
from coachwright.model.working import Figure, Given, Working
from coachwright.water.assumptions import FLUSHES, WASTE_L_PER_DAY
from coachwright.water.model import Stores
from coachwright.water.tanks import (
    TankDays,
    WaterMass,
    grey_needed_l,
    tank_days,
    usable_l,
    waste_l_per_day,
    water_mass,
)

Taken = tuple[Stores, tuple[Figure, ...]]


def take_stores(build: Build) -> Taken:
    """Return the tanks taken together, with their figures."""
    fresh, grey = _tanks(build, "fresh"), _tanks(build, "grey")
    heater_l = sum(f.part.water_heater.volume_l for f in build.fittings if f.part.water_heater)
    fresh_l = _volume_l(fresh)
    mass = water_mass(volume_l=fresh_l or 0.0)
    days_fresh = _days(build, fresh, "fresh tanks")
    days_grey = _days(build, grey, "grey tanks")
    days_d, limiting = _limiting(days_fresh, days_grey)
    waste_l, days_toilet = _toilet(build)
    stores = Stores(
        fresh_l=fresh_l,
        fresh_usable_l=_usable_l(fresh),
        grey_l=_volume_l(grey),
        heater_l=heater_l,
        waste_l=waste_l,
        grey_needed_l=grey_needed_l(fresh_l=fresh_l or 0.0, heater_l=heater_l),
        days_fresh_d=days_fresh.days_d if days_fresh else None,
        days_grey_d=days_grey.days_d if days_grey else None,
        days_d=days_d,
        days_toilet_d=days_toilet.days_d if days_toilet else None,
        limiting=limiting,
        fresh_full_kg=mass.water_kg,
        water_full_kg=water_mass(volume_l=(fresh_l or 0.0) + heater_l).water_kg,
    )
    return stores, (
        *_days_figures(build, stores, days_fresh, days_grey, days_toilet),
        _mass_figure(mass, fitted=bool(fresh)),
    )


def _days_figures(
    build: Build,
    stores: Stores,
    fresh: TankDays | None,
    grey: TankDays | None,
    toilet: TankDays | None,
) -> tuple[Figure, ...]:
    no_use = "" if build.brief.habits.water_l_per_day > 0 else "water used in a day"
    figures = (
        _figure("water.days-fresh", "Days on fresh water", fresh, no_use or "fresh tank"),
        _figure("water.days-grey", "Days on the grey tank", grey, no_use or "grey tank"),
        _days_figure(stores, no_use or "fresh tank"),
    )
    if toilet is None:
        return figures
    return (*figures, _figure("water.days-toilet", "Days on the toilet", toilet, ""))


def _mass_figure(mass: WaterMass, *, fitted: bool) -> Figure:
    return Figure(
        name="water.fresh-mass",
        label="Fresh water when full",
        value=mass.water_kg if fitted else None,
        unit="kg",
        working=mass.working if fitted else None,
        missing="" if fitted else "fresh tank",
    )


def _tanks(build: Build, contents: Literal["fresh", "grey", "black"]) -> tuple[Tank, ...]:
    tanks = (fitted.part.tank for fitted in build.fittings)
    return tuple(tank for tank in tanks if tank is not None and tank.contents == contents)


def _volume_l(tanks: tuple[Tank, ...]) -> float | None:
    return sum(tank.volume_l for tank in tanks) if tanks else None


def _usable_l(tanks: tuple[Tank, ...]) -> float | None:
    if not tanks:
        return None
    return sum(usable_l(volume_l=t.volume_l, unusable_l=t.unusable_l) for t in tanks)


def _days(build: Build, tanks: tuple[Tank, ...], what: str) -> TankDays | None:
    volume_l = _usable_l(tanks)
    use_l_per_day = build.brief.habits.water_l_per_day
    if volume_l is None or use_l_per_day <= 0:
        return None
    return tank_days(
        usable_l=volume_l,
        travellers=len(build.brief.travellers),
        use_l_per_day=use_l_per_day,
        what=what,
    )


def _limiting(
    fresh: TankDays | None, grey: TankDays | None
) -> tuple[float | None, Literal["fresh", "grey", ""]]:
    if fresh is None:
        return None, ""
    if grey is None or fresh.days_d <= grey.days_d:
        return fresh.days_d, "fresh"
    return grey.days_d, "grey"


def _toilet(build: Build) -> tuple[float | None, TankDays | None]:
    toilets = [f.part.toilet for f in build.fittings if f.part.toilet is not None]
    if not toilets:
        return None, None
    black_l = _usable_l(_tanks(build, "black"))
    into_tank = any(toilet.kind == "flushing" for toilet in toilets) and black_l is not None
    own_l = sum(toilet.waste_l for toilet in toilets)
    waste_l = black_l if into_tank and black_l is not None else own_l
    days = tank_days(
        usable_l=waste_l,
        travellers=len(build.brief.travellers),
        use_l_per_day=waste_l_per_day(
            waste_alone_l_per_day=WASTE_L_PER_DAY,
            flush_l=max(toilet.flush_l for toilet in toilets),
            flushes=FLUSHES,
        ),
        what="toilet waste",
    )
    return waste_l, days


def _figure(name: str, label: str, days: TankDays | None, missing: str) -> Figure:
    return Figure(
        name=name,
        label=label,
        value=days.days_d if days else None,
        unit="d",
        working=days.working if days else None,
        missing="" if days else missing,
    )


def _days_figure(stores: Stores, missing: str) -> Figure:
    label = f"Days on water ({stores.limiting} tank ends them)" if stores.limiting else ""
    return Figure(
        name="water.days",
        label=label or "Days on water",
        value=stores.days_d,
        unit="d",
        working=_days_working(stores),
        missing="" if stores.days_d is not None else missing,
    )


def _days_working(stores: Stores) -> Working | None:
    if stores.days_d is None or stores.days_fresh_d is None:
        return None
    given = [
        Given(
            symbol="df",
            meaning="days on fresh water",
            value=stores.days_fresh_d,
            unit="d",
            source="water.days-fresh",
        )
    ]
    if stores.days_grey_d is not None:
        given.append(
            Given(
                symbol="dg",
                meaning="days on the grey tank",
                value=stores.days_grey_d,
                unit="d",
                source="water.days-grey",
            )
        )
    return Working(
        expression="d = min(df, dg)" if len(given) > 1 else "d = df",
        given=tuple(given),
        result=stores.days_d,
        unit="d",
        references=("shop-practice-water",),
        note="" if len(given) > 1 else "no grey tank is fitted: used water is not held",
    )
