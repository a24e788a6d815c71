"""A season's sun: as the brief states it, else of the poorest month of the sites it names."""

import pytest

from coachwright.actions.opening import complete
from coachwright.catalogue.loading import Catalogue
from coachwright.electrics.model import Season
from coachwright.electrics.stage import stage
from coachwright.electrics.stage_budget import season_sun
from coachwright.errors import BuildFileError
from coachwright.model.build import Build
from coachwright.model.site import poorest_month
from tests.support.builds import sheet
from tests.support.electrics import CONTROLLER, LFP, PANEL, fitted, load

FITTED = (
    ("bank", "battery", LFP),
    ("lamp", "dc_load", load("10 W")),
    ("sun", "solar_panel", PANEL),
    ("charger", "solar_controller", CONTROLLER),
)


def build(*sites: str, **changes: str | None) -> Build:
    paths = {f"brief__climate__{name}": value for name, value in changes.items()}
    written = sheet(fitted(*FITTED, brief__climate__sites=list(sites), **paths))
    return complete(written, "test.toml", Catalogue())


NONE = {"summer_sun": None, "winter_sun": None}


def test_what_the_brief_states_is_not_touched() -> None:
    stated = season_sun(build("london-gb"), Season.WINTER)
    assert stated is not None
    assert (stated.sun_h_per_day, stated.source, stated.caution) == (1.0, "brief.climate", "")
    assert stage(build("london-gb")).winter == stage(build()).winter


def test_a_site_fills_in_what_is_left_out() -> None:
    found = season_sun(build("london-gb", **NONE), Season.WINTER)
    assert found is not None
    assert found.source == "London, synthetic year, mean of December"
    assert found.sun_h_per_day == build("london-gb").sites[0].sun_h_per_day[11]
    assert found.caution.startswith("Synthetic")
    assert "CC-BY-4.0" in found.caution
    made = stage(build("london-gb", **NONE))
    assert made.winter.missing == ""
    assert made.winter.sun_working is not None
    (given,) = [each for each in made.winter.sun_working.given if each.symbol == "h"]
    assert given.source == found.source
    assert "Synthetic" in made.winter.sun_working.note


def test_the_poorest_of_several_sites_counts() -> None:
    both = season_sun(build("miami-fl", "oslo-no", **NONE), Season.WINTER)
    summer = season_sun(build("miami-fl", "oslo-no", **NONE), Season.SUMMER)
    assert both is not None
    assert summer is not None
    assert both.source.startswith("Oslo")
    assert summer.source == "Oslo, synthetic year, mean of September"


def test_the_south_has_its_winter_in_june() -> None:
    (sydney,) = build("sydney-au").sites
    cold = poorest_month([sydney], warm=False)
    warm = poorest_month([sydney], warm=True)
    assert cold is not None
    assert warm is not None
    assert cold.month == "June"
    assert warm.month in ("October", "March")
    assert cold.sun_h_per_day < warm.sun_h_per_day


def test_without_sites_nothing_is_known() -> None:
    assert season_sun(build(**NONE), Season.WINTER) is None
    assert poorest_month([], warm=True) is None


def test_a_site_that_is_not_there_is_a_fault_of_the_file() -> None:
    with pytest.raises(BuildFileError, match=r"brief\.climate\.sites\[0\]") as caught:
        build("londn-gb")
    (fault,) = caught.value.faults
    assert "london-gb" in fault.allowed


def test_a_build_without_sites_keeps_its_digest_form() -> None:
    assert "sites" not in build().model_dump(exclude={"brief"})
    assert build("london-gb").digest != build("oslo-no").digest
