"""Pipe friction, against an independent fluid-mechanics library."""

import math

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.pipe import (
    LAMINAR_TO_RATIO,
    colebrook_friction_factor,
    hazen_williams,
    pipe_loss,
    static_kpa,
)


@pytest.mark.parametrize("roughness_ratio", [0.0, 1e-5, 1.5e-4, 1e-3, 0.01, 0.05])
@pytest.mark.parametrize("reynolds_ratio", [4000.0, 20_722.0, 1e5, 1e6, 1e7])
def test_the_friction_factor_is_colebrooks(reynolds_ratio: float, roughness_ratio: float) -> None:
    # fluids solves Colebrook's equation exactly by Lambert's W
    expected = fluids.friction.Colebrook(reynolds_ratio, roughness_ratio)
    found = colebrook_friction_factor(
        reynolds_ratio=reynolds_ratio, roughness_ratio=roughness_ratio
    )
    assert found == pytest.approx(expected, rel=1e-9)


@given(st.floats(LAMINAR_TO_RATIO + 1, 1e8), st.floats(0.0, 0.05))
def test_the_friction_factor_solves_the_equation(reynolds: float, roughness: float) -> None:
    factor = colebrook_friction_factor(reynolds_ratio=reynolds, roughness_ratio=roughness)
    x = 1 / math.sqrt(factor)
    assert x == pytest.approx(-2 * math.log10(roughness / 3.7 + 2.51 * x / reynolds), rel=1e-9)


@pytest.mark.parametrize("reynolds_ratio", [1.0, 500.0, 2000.0])
def test_slow_flow_is_laminar(reynolds_ratio: float) -> None:
    found = colebrook_friction_factor(reynolds_ratio=reynolds_ratio, roughness_ratio=1e-4)
    assert found == pytest.approx(fluids.friction.friction_laminar(reynolds_ratio))


def test_the_loss_is_darcys() -> None:
    loss = pipe_loss(flow_l_per_min=6, bore_mm=8, length_mm=5000)
    head_m = fluids.core.head_from_P(loss.loss_kpa * 1000, 998.2)
    resistance = fluids.core.K_from_f(loss.friction_factor, L=5.0, D=0.008)
    assert head_m == pytest.approx(fluids.core.head_from_K(resistance, loss.speed_m_per_s))


def test_hazen_and_williams_are_a_second_opinion_on_darcy() -> None:
    # Two methods for a smooth hose; hand calculation for one case gives 42.3 and 39.2 kPa
    for flow in (6, 10, 14):
        darcy = pipe_loss(flow_l_per_min=flow, bore_mm=10.2, length_mm=8000)
        trade = hazen_williams(flow_l_per_min=flow, bore_mm=10.2, length_mm=8000)
        assert trade.loss_kpa == pytest.approx(darcy.loss_kpa, rel=0.12)


def test_still_water_loses_nothing() -> None:
    assert pipe_loss(flow_l_per_min=0, bore_mm=10, length_mm=1000).loss_kpa == 0


@given(st.floats(0.01, 60), st.floats(1.0, 2.0))
def test_more_flow_loses_more(flow: float, factor: float) -> None:
    less = pipe_loss(flow_l_per_min=flow, bore_mm=10, length_mm=4000)
    more = pipe_loss(flow_l_per_min=flow * factor, bore_mm=10, length_mm=4000)
    assert more.loss_kpa >= less.loss_kpa


def test_a_metre_of_water_is_a_tenth_of_a_bar() -> None:
    assert static_kpa(rise_mm=10_000) == pytest.approx(97.89, rel=1e-4)


@pytest.mark.parametrize(
    ("name", "call"),
    [
        ("reynolds_ratio", lambda: colebrook_friction_factor(reynolds_ratio=0, roughness_ratio=0)),
        (
            "roughness_ratio",
            lambda: colebrook_friction_factor(reynolds_ratio=5000, roughness_ratio=0.06),
        ),
        ("bore_mm", lambda: pipe_loss(flow_l_per_min=1, bore_mm=0, length_mm=1)),
        ("length_mm", lambda: pipe_loss(flow_l_per_min=1, bore_mm=1, length_mm=0)),
        ("flow_l_per_min", lambda: pipe_loss(flow_l_per_min=-1, bore_mm=1, length_mm=1)),
        ("bore_mm", lambda: hazen_williams(flow_l_per_min=1, bore_mm=0, length_mm=1)),
        (
            "smoothness_factor",
            lambda: hazen_williams(flow_l_per_min=1, bore_mm=1, length_mm=1, smoothness_factor=0),
        ),
    ],
)
def test_what_cannot_be_is_refused_by_name(name: str, call: object) -> None:
    assert callable(call)
    with pytest.raises(OutOfRange, match=f"^{name} is .*; allowed: "):
        call()
