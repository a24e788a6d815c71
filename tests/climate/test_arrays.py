"""A site's arrays: light on planes against pvlib, the sky's temperature, and what is kept."""

from pathlib import Path

import numpy as np
import pytest
from pvlib import irradiance

from coachwright.actions import site_shelf
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import packed, site_arrays, unpacked
from coachwright.climate.planes import plane_light
from coachwright.climate.sky import cloud_frac, sky_degc
from coachwright.errors import OutOfRange, UnknownName
from tests.climate.years import measured

ARRAYS = site_arrays(weather=measured("greensboro"))


@pytest.mark.parametrize(("wall", "bearing"), [("front", 30.0), ("right", 120.0), ("left", 300.0)])
def test_a_wall_s_light_is_the_library_s(wall: str, bearing: float) -> None:
    # pvlib 0.16.1 get_total_irradiance, Hay and Davies, called with its own arguments (1e-9)
    weather, path = ARRAYS.weather, ARRAYS.path
    wanted = irradiance.get_total_irradiance(
        90.0,
        bearing,
        90.0 - path.altitude_deg,
        path.azimuth_deg,
        np.where(path.altitude_deg > 0.0, weather.dni_w_per_m2, 0.0),
        weather.ghi_w_per_m2,
        weather.dhi_w_per_m2,
        dni_extra=path.extraterrestrial_w_per_m2,
        albedo=0.2,
        model="haydavies",
    )["poa_global"]
    found = ARRAYS.wall(wall, 30.0).whole_w_per_m2
    assert found == pytest.approx(np.nan_to_num(wanted), rel=1e-9, abs=1e-9)


def test_a_slope_s_light_is_the_library_s_too() -> None:
    # pvlib 0.16.1 get_total_irradiance, Hay and Davies (1e-9): a windscreen at 40 deg
    weather, path = ARRAYS.weather, ARRAYS.path
    found = plane_light(weather=weather, path=path, tilt_deg=40.0, bearing_deg=200.0)
    wanted = irradiance.get_total_irradiance(
        40.0,
        200.0,
        90.0 - path.altitude_deg,
        path.azimuth_deg,
        np.where(path.altitude_deg > 0.0, weather.dni_w_per_m2, 0.0),
        weather.ghi_w_per_m2,
        weather.dhi_w_per_m2,
        dni_extra=path.extraterrestrial_w_per_m2,
        albedo=0.2,
        model="haydavies",
    )
    for name, kind in (
        ("poa_direct", found.beam_w_per_m2),
        ("poa_sky_diffuse", found.sky_w_per_m2),
    ):
        assert kind == pytest.approx(np.nan_to_num(wanted[name]), rel=1e-9, abs=1e-9)


def test_anywhere_is_the_same_for_every_wall() -> None:
    walls = [ARRAYS.wall(wall, None).whole_w_per_m2 for wall in ("front", "right", "rear", "left")]
    for wall in walls[1:]:
        assert wall == pytest.approx(walls[0])
    turned = np.mean(
        [ARRAYS.wall("left", float(way)).whole_w_per_m2 for way in range(0, 360, 5)], 0
    )
    assert walls[0] == pytest.approx(turned, rel=2e-3, abs=0.5)


def test_the_roof_has_the_weather_s_own_light() -> None:
    assert ARRAYS.roof.whole_w_per_m2 == pytest.approx(ARRAYS.weather.ghi_w_per_m2)
    assert (ARRAYS.roof.beam_w_per_m2 >= 0.0).all()
    flat = plane_light(weather=ARRAYS.weather, path=ARRAYS.path, tilt_deg=0.0, bearing_deg=0.0)
    high = ARRAYS.path.altitude_deg > 1.0
    assert flat.sky_w_per_m2[high] == pytest.approx(ARRAYS.weather.dhi_w_per_m2[high])


def test_the_sky_is_colder_than_the_air_and_clouds_warm_it() -> None:
    assert (ARRAYS.sky_degc <= ARRAYS.weather.air_degc + 1e-9).all()
    air = np.full(8760, 10.0)
    clear = sky_degc(air=air, dew=air - 5.0, cloud=np.zeros(8760))
    covered = sky_degc(air=air, dew=air - 5.0, cloud=np.ones(8760))
    # Depressions of 15 to 20 K under clear skies and a few kelvin under clouds are common ground
    assert 12.0 < (air - clear)[0] < 22.0
    assert (air - covered)[0] < 6.0
    assert (cloud_frac(ghi=air, clear=np.zeros(8760)) == 0.5).all()


def test_what_is_kept_comes_back_to_the_bit() -> None:
    found = unpacked(packed(ARRAYS))
    assert found.weather.digest == ARRAYS.weather.digest
    assert (found.path.azimuth_deg == ARRAYS.path.azimuth_deg).all()
    assert (found.sky_degc == ARRAYS.sky_degc).all()
    assert found.weather.attribution == ARRAYS.weather.attribution
    with pytest.raises(OutOfRange, match="form"):
        unpacked({**packed(ARRAYS), "form": np.array([0])})
    with pytest.raises(OutOfRange, match="arrays as they were packed"):
        unpacked({})


def test_a_shelf_is_used_mended_and_done_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = tmp_path / "shelf"
    first = site_shelf.arrays_of_site(Catalogue(), "oslo-no", shelf)
    (kept,) = shelf.glob("*.npz")
    with monkeypatch.context() as without:
        without.setattr(site_shelf, "site_arrays", None)
        again = site_shelf.arrays_of_site(Catalogue(), "oslo-no", shelf)
    assert again.weather.digest == first.weather.digest
    kept.write_bytes(b"broken")
    assert site_shelf.arrays_of_site(Catalogue(), "oslo-no", shelf).weather.title == "Oslo"
    (tmp_path / "file").write_text("no folder")
    assert site_shelf.arrays_of_site(Catalogue(), "oslo-no", tmp_path / "file" / "x")
    assert site_shelf.arrays_of_site(Catalogue(), "oslo-no", None).weather.title == "Oslo"
    with pytest.raises(UnknownName):
        site_shelf.arrays_of_site(Catalogue(), "nowhere", shelf)
