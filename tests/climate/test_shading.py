"""Masks against a count of rays at random places, and what they take away."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.climate.shading import (
    ALTITUDES,
    BEARINGS,
    STEP_DEG,
    Face,
    Mask,
    Obstacle,
    beam_shaded_frac,
    mask,
    shade_of_hours,
    string_loss_frac,
)

PANEL = Face(low_mm=(1000.0, -500.0), high_mm=(2600.0, 500.0), z_mm=1900.0)
UNIT = Obstacle(name="unit", low_mm=(2700.0, -350.0, 1880.0), high_mm=(3700.0, 350.0, 2150.0))
FAN = Obstacle(name="fan", low_mm=(500.0, -200.0, 1880.0), high_mm=(900.0, 200.0, 2050.0))


def marched_frac(
    face: Face, obstacles: tuple[Obstacle, ...], bearing_deg: float, altitude_deg: float
) -> float:
    """Return the shaded share of a panel, counted at random places.

    Nothing of the program's own method: a place is shaded where the box's section at some height
    above the panel, moved back along the ray by that height, covers it; heights in 150 steps.
    """
    chance = np.random.default_rng(7)
    places = chance.uniform(face.low_mm, face.high_mm, size=(1500, 2))
    away = 1.0 / math.tan(math.radians(altitude_deg))
    step = np.array([-math.cos(math.radians(bearing_deg)), math.sin(math.radians(bearing_deg))])
    shaded = np.zeros(len(places), dtype=bool)
    for box in obstacles:
        low_mm, high_mm = max(box.low_mm[2], face.z_mm), box.high_mm[2]
        for height in np.linspace(low_mm - face.z_mm, high_mm - face.z_mm, 150):
            there = places + step * away * height
            inside = (there >= box.low_mm[:2]) & (there <= box.high_mm[:2])
            shaded |= inside.all(axis=1)
    return float(shaded.mean())


@pytest.mark.parametrize("altitude_at", [1, 3, 6, 9, 13])
@pytest.mark.parametrize("bearing_at", [0, 9, 18, 30, 36, 37, 54])
def test_a_mask_is_a_count_of_rays(bearing_at: int, altitude_at: int) -> None:
    # Brute force: 1,500 rays at random places of the panel against boxes cut into 150 sections;
    # within 7 % of the panel, half a field of the 8 by 8 points along each edge of the shadow
    made = mask(face=PANEL, obstacles=(UNIT, FAN))
    counted = marched_frac(
        PANEL, (UNIT, FAN), (bearing_at + 0.5) * STEP_DEG, (altitude_at + 0.5) * STEP_DEG
    )
    assert made.shaded_frac[bearing_at, altitude_at] == pytest.approx(counted, abs=0.07)


def test_the_sky_s_share_is_a_count_of_rays() -> None:
    # 250 directions drawn evenly over the flat sky (cosine law), 1,500 rays each: 1 % of the sky
    chance = np.random.default_rng(11)
    heights = np.degrees(np.arcsin(np.sqrt(chance.uniform(size=250))))
    bearings = chance.uniform(0.0, 360.0, size=250)
    counted = np.mean(
        [
            marched_frac(PANEL, (UNIT,), float(bearing), max(float(height), 0.5))
            for bearing, height in zip(bearings, heights, strict=True)
        ]
    )
    assert mask(face=PANEL, obstacles=(UNIT,)).sky_frac == pytest.approx(counted, abs=0.01)


def test_the_shadow_of_a_wall_is_the_one_on_paper() -> None:
    # A wall 400 mm high along the panel's rear edge, sun straight from behind at 22.5 deg: the
    # shadow reaches 400 / tan(22.5 deg) = 966 mm of the panel's 1600
    wall = Obstacle(name="wall", low_mm=(2600.0, -9e3, 1900.0), high_mm=(2610.0, 9e3, 2300.0))
    made = mask(face=PANEL, obstacles=(wall,))
    shaded = beam_shaded_frac(
        made=made,
        azimuth_deg=np.array([180.0, 0.0]),
        altitude_deg=np.array([22.5, 22.5]),
        heading_deg=0.0,
    )
    assert shaded[0] == pytest.approx(400.0 / math.tan(math.radians(22.5)) / 1600.0, abs=0.07)
    assert shaded[1] == 0.0


def test_what_lies_under_the_face_or_is_not_there_takes_nothing() -> None:
    low = Obstacle(name="rail", low_mm=(900.0, -600.0, 1800.0), high_mm=(990.0, 600.0, 1900.0))
    for made in (mask(face=PANEL, obstacles=()), mask(face=PANEL, obstacles=(low,))):
        assert not made.shaded_frac.any()
        assert made.sky_frac == 0.0


def test_a_lid_over_the_panel_takes_the_zenith() -> None:
    lid = Obstacle(name="lid", low_mm=(0.0, -2e3, 2000.0), high_mm=(4e3, 2e3, 2010.0))
    made = mask(face=PANEL, obstacles=(lid,))
    assert (made.shaded_frac[:, -1] == 1.0).all()
    assert made.sky_frac > 0.9


def test_left_and_right_and_the_turned_vehicle() -> None:
    right = Obstacle(name="box", low_mm=(1500.0, 600.0, 1900.0), high_mm=(2000.0, 900.0, 2200.0))
    made = mask(face=PANEL, obstacles=(right,))
    sun = {"azimuth_deg": np.array([90.0, 270.0]), "altitude_deg": np.array([15.0, 15.0])}
    north = beam_shaded_frac(made=made, heading_deg=0.0, **sun)
    south = beam_shaded_frac(made=made, heading_deg=180.0, **sun)
    assert north[0] > 0.1
    assert north[1] == 0.0
    assert south[::-1] == pytest.approx(north)
    turned = shade_of_hours(made=made, heading_deg=None, **sun)
    assert turned.area_frac[0] == pytest.approx(turned.area_frac[1])
    assert turned.area_frac[0] < north[0]
    assert (turned.string_frac >= turned.area_frac).all()


@settings(max_examples=25)
@given(
    st.floats(1.0, 500.0),
    st.floats(1.0, 500.0),
    st.floats(-600.0, 600.0),
)
def test_a_higher_neighbour_never_takes_less(one: float, more: float, y: float) -> None:
    def at_height(height: float) -> Mask:
        box = Obstacle(
            name="box", low_mm=(2650.0, y, 1900.0), high_mm=(2950.0, y + 300.0, 1900.0 + height)
        )
        return mask(face=PANEL, obstacles=(box,))

    low, high = at_height(one), at_height(one + more)
    assert low.sky_frac <= high.sky_frac
    assert (low.shaded_frac <= high.shaded_frac).all()
    assert low.shaded_frac.shape == (BEARINGS, ALTITUDES)


@given(st.floats(0.0, 1.0))
def test_sections_lose_at_least_the_area_and_at_most_all(share: float) -> None:
    lost = float(string_loss_frac(shaded_frac=np.array([share]))[0])
    assert lost <= 1.0
    assert lost >= share - 1e-9
    assert share < 0.01 or round(lost * 3) == pytest.approx(lost * 3)
