"""How long a build's bank carries something that somebody asks about: any draw, at any duty."""

from coachwright.electrics.answers import how_long
from coachwright.electrics.model import Electrics, RunTime, Supply
from coachwright.electrics.stage_loads import inverters, planning_efficiency_frac
from coachwright.errors import CallError
from coachwright.model.build import Build


def asked(
    build: Build, electrics: Electrics, *, draw_w: float, duty_frac: float, supply: Supply
) -> RunTime:
    """Return how long a full bank carries a draw, as for each load of the build.

    Parameters
    ----------
    build
        For its inverters.
    electrics
        Of the build.
    draw_w
        At the load's own terminals while it draws. [W]
    duty_frac
        Share of the time that it draws.
    supply
        Direct current, or behind the inverter.

    Returns
    -------
    RunTime
        Alone, with what is always on, and alone in the design cold night.

    Raises
    ------
    CallError
        Where the build has no bank that can answer, or no inverter for a load that wants one.
    OutOfRange
        Where nothing is drawn, or the duty is no share.

    Notes
    -----
    As for the loads of the build: behind an inverter the draw is divided by its efficiency, and
    what the inverter itself draws while it is on comes on top.  What is always on is counted with
    every load of the build, also where one of them is the one asked about.
    """
    bank = electrics.bank
    if bank is None:
        raise CallError(f"no bank answers that: {electrics.bank_missing}")
    fitted = [inverter for _, inverter in inverters(build)]
    behind = supply is Supply.INVERTER
    if behind and not fitted:
        raise CallError("the build has no inverter; ask about a direct-current load")
    idle = sum(inverter.standby_w for inverter in fitted) if behind else 0.0
    draw = draw_w / planning_efficiency_frac(build) if behind else draw_w

    def runs_h(others_w: float, capacity_factor: float = 1.0) -> float:
        return how_long(
            bank=bank,
            draw_w=draw,
            duty_frac=duty_frac,
            others_w=others_w,
            capacity_factor=capacity_factor,
        ).clock_h

    alone = how_long(bank=bank, draw_w=draw, duty_frac=duty_frac, others_w=idle)
    return RunTime(
        subject="",
        mode="",
        supply=supply,
        draw_w=draw_w,
        duty_frac=duty_frac,
        alone_h=alone.clock_h,
        with_others_h=runs_h(max(idle, electrics.base_w)),
        cold_alone_h=runs_h(idle, bank.cold_factor) if bank.cold_factor > 0.0 else 0.0,
        working=alone.working,
    )
