"""Compiled: look-ups, wet bulb, cooling coil, bank; arrays and numbers in, numbers out."""

# ruff: noqa: PLR0917  # what is compiled takes its arguments by place

import math

from coachwright.living.compiling import compiled_in
from coachwright.living.kernel_model import BankNumbers, Grid, Numbers, Tables
from coachwright.living.vapour import HIGH_DEGC, LOW_DEGC, LOW_KJ, STEP_K, STEP_KJ

OCV_CELLS = 100
COLD_LOW_DEGC = -40.0
COLD_CELLS = 120
_PADS_ABOVE_K = 1.0
_SATURATED_LAST = (HIGH_DEGC - LOW_DEGC) / STEP_K - 1.0
_MOST_SAG_FRAC = 0.45
"""Of the open-circuit voltage: below half of it more current gives less power."""
_DRIEST_FRAC = 0.3
_LEAST_FACTOR = 0.01


@compiled_in
def saturated_ratio(table: Grid, at_degc: float) -> float:
    """Return the vapour in a kilogram of dry saturated air."""
    place = (at_degc - LOW_DEGC) * (1.0 / STEP_K)
    place = min(max(place, 0.0), _SATURATED_LAST)
    low = int(place)
    return float(table[low] + (place - low) * (table[low + 1] - table[low]))


@compiled_in
def saturated_degc(table: Grid, held_kj_per_kg: float) -> float:
    """Return the temperature of saturated air by its enthalpy."""
    place = (held_kj_per_kg - LOW_KJ) * (1.0 / STEP_KJ)
    place = min(max(place, 0.0), len(table) - 2.0)
    low = int(place)
    return float(table[low] + (place - low) * (table[low + 1] - table[low]))


@compiled_in
def wet_bulb_degc(
    saturated: Grid, by_enthalpy: Grid, inside_degc: float, vapour_ratio: float
) -> float:
    """Return the wet bulb: by the enthalpy, then two rounds on the psychrometer's equation."""
    held = 1.006 * inside_degc + vapour_ratio * (2501.0 + 1.86 * inside_degc)
    wet = saturated_degc(by_enthalpy, held)
    for _ in range(2):
        low = saturated_ratio(saturated, wet)
        slope = (saturated_ratio(saturated, wet + STEP_K) - low) / STEP_K
        miss = (2501.0 - 2.326 * wet) * low - 1.006 * (inside_degc - wet)
        miss -= vapour_ratio * (2501.0 + 1.86 * inside_degc - 4.186 * wet)
        wet -= miss / ((2501.0 - 2.326 * wet) * slope - 2.326 * low + 1.006 + 4.186 * vapour_ratio)
    return wet


@compiled_in
def cooling(
    k: Numbers, t: Tables, need_w: float, inside_degc: float, vapour_ratio: float, air_degc: float
) -> tuple[float, float, float, float]:
    """Return sensible and latent heat taken, input at full, and share of the step that it runs."""
    wet = wet_bulb_degc(t.saturated, t.by_enthalpy, inside_degc, vapour_ratio)
    x = min(max(wet, k.cooler_wet_low_degc), k.cooler_wet_high_degc)
    y = min(max(k.cooler_dry_low_degc, air_degc), k.cooler_dry_high_degc)
    c, e = t.capacity, t.input
    factor = c[0] + c[1] * x + c[2] * x * x + c[3] * y + c[4] * y * y + c[5] * x * y
    factor = max(factor, _LEAST_FACTOR)
    rate = e[0] + e[1] * x + e[2] * x * x + e[3] * y + e[4] * y * y + e[5] * x * y
    rate = max(rate, _LEAST_FACTOR)
    whole = k.cooler_rated_w * factor
    dry = 1.0
    if k.cooler_span_kj_per_kg > 0.0:
        span = factor * k.cooler_span_kj_per_kg
        held = 1.006 * inside_degc + vapour_ratio * (2501.0 + 1.86 * inside_degc)
        coil = saturated_degc(t.by_enthalpy, held - span)
        dry = (1.006 + 1.86 * vapour_ratio) * (inside_degc - coil) / span
        dry = min(max(dry, _DRIEST_FRAC), 1.0)
    load = min(need_w / (whole * dry), 1.0)
    running = min(load / (1.0 - k.cooler_cycling_frac * (1.0 - load)), 1.0)
    taken = load * whole
    return taken * dry, taken * (1.0 - dry), k.cooler_input_w * factor * rate, running


@compiled_in
def open_circuit_v(table: Grid, charge_frac: float) -> float:
    """Return the open-circuit voltage by charge."""
    place = min(max(charge_frac, 0.0), 1.0) * OCV_CELLS
    low = min(int(place), OCV_CELLS - 1)
    return float(table[low] + (place - low) * (table[low + 1] - table[low]))


@compiled_in
def cold_frac(table: Grid, at_degc: float) -> float:
    """Return the share of the capacity that a cold bank gives."""
    place = min(max(at_degc - COLD_LOW_DEGC, 0.0), COLD_CELLS - 1.0)
    low = int(place)
    return float(table[low] + (place - low) * (table[low + 1] - table[low]))


@compiled_in
def bank_gives_w(bank: BankNumbers, t: Tables, charge_frac: float, bank_degc: float) -> float:
    """Return the power that the bank can give through a step."""
    volts = open_circuit_v(t.charge_v, charge_frac)
    floor = 1.0 - cold_frac(t.cold_share, bank_degc) * (1.0 - bank.cut_off_frac)
    amps = min(bank.discharge_limit_a, max(charge_frac - floor, 0.0) * bank.step_a)
    if amps * bank.resistance_ohm > _MOST_SAG_FRAC * volts:
        amps = _MOST_SAG_FRAC * volts / bank.resistance_ohm
    return amps * (volts - amps * bank.resistance_ohm)


@compiled_in
def bank_step(
    bank: BankNumbers,
    open_v: float,
    charge_frac: float,
    bank_degc: float,
    around_degc: float,
    surplus_w: float,
) -> tuple[float, float, float, float, float, float, float]:
    """Return charge, temperature, power taken (given: below 0), pads, loss, locked, amperes.

    Power P into the bank at voltage U and resistance R: I = 2 P / (U + √(U² + 4 R P)).
    """
    power, pads, locked = surplus_w, 0.0, 0.0
    if surplus_w > 0.0:
        if bank_degc < bank.charge_from_degc + _PADS_ABOVE_K:
            pads = min(bank.pads_w, surplus_w)
        most = min(bank.charge_limit_a, (1.0 - charge_frac) * bank.step_a / bank.coulombic_frac)
        if bank_degc < bank.charge_from_degc:
            most, locked = 0.0, 1.0
        most = max(most, 0.0)
        power = min(surplus_w - pads, most * (open_v + most * bank.resistance_ohm))
    under = open_v * open_v + 4.0 * bank.resistance_ohm * power
    amps = 2.0 * power / (open_v + math.sqrt(max(under, 0.0)))
    stored = min(amps, amps * bank.coulombic_frac)
    loss = amps * amps * bank.resistance_ohm + (amps - stored) * open_v
    warmth = bank.held_w_per_k * bank_degc + bank.ua_w_per_k * around_degc + loss + pads
    return (
        charge_frac + stored * bank.empty_ratio,
        warmth * bank.warmed_ratio,
        power,
        pads,
        loss,
        locked,
        stored,
    )


@compiled_in
def solve_small(matrix: Grid, right: Grid, count: int) -> None:
    """Solve a small system in place; its diagonal is the greatest of each row."""
    for pivot in range(count):
        for below in range(pivot + 1, count):
            share = matrix[below, pivot] / matrix[pivot, pivot]
            for column in range(pivot, count):
                matrix[below, column] -= share * matrix[pivot, column]
            right[below] -= share * right[pivot]
    for pivot in range(count - 1, -1, -1):
        held = right[pivot]
        for column in range(pivot + 1, count):
            held -= matrix[pivot, column] * right[column]
        right[pivot] = held / matrix[pivot, pivot]
