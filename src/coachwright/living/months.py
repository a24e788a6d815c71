"""The months of the typical year, told from the sums of a run."""

from collections.abc import Iterator

from coachwright.living.columns import EXTREMES, SUMS, USES
from coachwright.living.given import AirHeater
from coachwright.living.model import MonthOfYear
from coachwright.living.simulate import Run

_IN = ("sun", "drive", "hookup")
_WET = ("glass", "rib", "lining")
_MJ_PER_WH = 0.0036
LPG_MJ_PER_KG = 46.35
"""Lower heating value of propane. [afdc-fuel-properties]"""


def months_of_year(run: Run) -> tuple[MonthOfYear, ...]:
    """Return the months of a run.

    Parameters
    ----------
    run
        Through a whole year.

    Notes
    -----
    Fuel by its lower heating value: V = Q / H.  The burner of kitchen and bath is told in
    kilograms of propane, whatever it burns.

    References
    ----------
    [afdc-fuel-properties]
    """
    return tuple(_months(run))


def fuel_l(*, burnt_wh: float, heater: AirHeater | None) -> float:
    """Return what a heater burns [L], or kilograms of a gas.

    Parameters
    ----------
    burnt_wh
        By the lower heating value. [Wh]
    heater
        With its fuel; None burns nothing.

    Notes
    -----
    V = Q / H.

    References
    ----------
    [afdc-fuel-properties]

    Examples
    --------
    >>> round(fuel_l(burnt_wh=2000 / 0.83, heater=AirHeater(name="heater", most_w=2000)), 4)
    0.2423
    """
    if heater is None or heater.electric_ac or heater.fuel_mj_per_l <= 0.0:
        return 0.0
    return burnt_wh * _MJ_PER_WH / heater.fuel_mj_per_l


def _months(run: Run) -> Iterator[MonthOfYear]:
    given = run.given
    names = [each.name for each in given.frost]
    columns = {name: run.by_month(name).tolist() for name in (*SUMS, *EXTREMES)}
    for place in range(12):
        row = {name: column[place] for name, column in columns.items()}
        occupied_h, hours_h, asleep_h = row["occupied_h"], row["hours_h"], row["asleep_h"]
        within_h = occupied_h - row["cold_h"] - row["hot_h"]
        unmet = {use: row[f"unmet.{use}_wh"] for use in USES}
        yield MonthOfYear(
            month=place + 1,
            in_wh={name: row[f"in.{name}_wh"] for name in _IN},
            out_wh={use: row[f"out.{use}_wh"] for use in USES},
            unmet_wh={use: lacked for use, lacked in unmet.items() if lacked > 0.0},
            spilled_wh=row["spilled_wh"],
            fuel_l=fuel_l(burnt_wh=row["fuel_wh"], heater=given.heater),
            burner_l=row["burner_wh"] * _MJ_PER_WH / LPG_MJ_PER_KG,
            comfort_frac=within_h / occupied_h if occupied_h else 1.0,
            occupied_h=occupied_h,
            cold_h=row["cold_h"],
            hot_h=row["hot_h"],
            heater_frac=row["heater_h"] / hours_h,
            cooler_frac=row["cooler_h"] / hours_h,
            wet_h={name: row[f"wet_{name}_h"] for name in _WET},
            frost_h=dict(zip(names, run.frost_h[place].tolist(), strict=True)),
            co2_most_ppm=row["co2_most_ppm"],
            co2_night_ppm=row["co2_asleep_ppm_h"] / asleep_h if asleep_h else 0.0,
            fullest_frac=row["fullest_frac"] if given.bank else 0.0,
            emptiest_frac=row["emptiest_frac"] if given.bank else 0.0,
            air_mean_degc=row["air_degc_h"] / hours_h,
            air_low_degc=row["air_low_degc"],
            air_high_degc=row["air_high_degc"],
            bank_low_degc=row["bank_low_degc"] if given.bank else None,
            bank_locked_h=row["locked_h"],
        )
