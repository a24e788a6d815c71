"""The inverter: what it must carry at once, and what it takes from the bank."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Demand:
    """All loads at once, with the worst single start on top.

    Attributes
    ----------
    worst
        Position of the load whose start adds most; −1 where there is none.
    """

    load_w: float
    surge_w: float
    worst: int
    load_working: Working
    surge_working: Working


def demand(*, draws_w: tuple[float, ...], surges_w: tuple[float, ...]) -> Demand:
    """Return what loads ask of an inverter when all run at once.

    Parameters
    ----------
    draws_w
        Of each load in its largest mode. [W]
    surges_w
        Of each load at start; not above its draw where it starts softly. [W]

    Returns
    -------
    Demand
        The sum, and the sum while the worst load starts, with workings.

    Notes
    -----
    P = Σ P_i; P_start = P + max(S_i − P_i).  All loads of a season run at once and one of them
    starts: more than most people switch on, less than two starts in the same instant.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> found = demand(draws_w=(18, 60, 75), surges_w=(0, 0, 300))
    >>> found.load_w, found.surge_w, found.worst
    (153, 378, 2)
    """
    load = sum(draws_w)
    steps = [max(0.0, surge - draw) for draw, surge in zip(draws_w, surges_w, strict=True)]
    step = max(steps, default=0.0)
    worst = steps.index(step) if steps else -1
    total = Given(symbol="ΣP", meaning="all loads at once", value=load, unit="W")
    start = Given(symbol="ΔS", meaning="the worst start above its own draw", value=step, unit="W")
    return Demand(
        load_w=load,
        surge_w=load + step,
        worst=worst,
        load_working=Working(
            expression="P = ΣP",
            given=(total,),
            result=load,
            unit="W",
            references=("off-grid-examples",),
            note="Every load of the season that needs most, each in its largest mode.",
        ),
        surge_working=Working(
            expression="P_start = ΣP + ΔS",
            given=(total, start),
            result=load + step,
            unit="W",
            references=("off-grid-examples",),
            note="One load starts while all others run.",
        ),
    )


def inverter_current_a(*, load_w: float, efficiency_frac: float, battery_v: float) -> float:
    """Return the current an inverter takes from the bank [A].

    Parameters
    ----------
    load_w
        At its output. [W]
    efficiency_frac
        At that load.
    battery_v
        At its input. [V]

    Raises
    ------
    OutOfRange
        Where the efficiency is not above 0 and at most 1.

    Notes
    -----
    I = P / (η · U): divided by the efficiency, not multiplied by one plus the loss.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> round(inverter_current_a(load_w=2000, efficiency_frac=0.9, battery_v=10.5), 2)
    211.64
    """
    if not 0.0 < efficiency_frac <= 1.0:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0 and at most 1")
    return load_w / (efficiency_frac * battery_v)


def bank_draw_a(
    *, dc_w: float, ac_w: float, inverter_w: float, efficiency_frac: float, battery_v: float
) -> float:
    """Return what direct-current loads and the inverter take from the bank at once [A].

    Parameters
    ----------
    dc_w
        Of the direct-current loads. [W]
    ac_w
        Of the loads behind the inverter. [W]
    inverter_w
        The most that the inverter gives; it cuts off above. [W]
    efficiency_frac
        Of the inverter.
    battery_v
        At the bank's terminals. [V]

    Notes
    -----
    I = (P_dc + min(P_ac, P_inverter) / η) / U.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> bank_draw_a(dc_w=120, ac_w=1000, inverter_w=900, efficiency_frac=0.9, battery_v=10)
    112.0
    """
    return (dc_w + min(ac_w, inverter_w) / efficiency_frac) / battery_v
