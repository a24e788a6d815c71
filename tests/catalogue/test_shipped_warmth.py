"""What shipped parts say of heat, sun and air agrees with itself."""

import pytest

from coachwright.living.fridge import duty_frac
from coachwright.model.part import Part
from tests.catalogue.shipped import having


@having("fridge")
def test_the_winter_duty_of_a_cold_box_lies_on_its_line(part: Part) -> None:
    """A heated cabin in winter is 16 to 20 degC; a freezer's lies a little below its line."""
    load, fridge = part.dc_load, part.fridge
    assert load is not None
    assert fridge is not None
    duties = {mode.name: mode.duty_frac for mode in load.modes}
    found = duty_frac(
        around_degc=18.0,
        inside_degc=fridge.inside_degc,
        stated_frac=duties["summer"],
        stated_degc=fridge.around_degc,
    )
    assert found == pytest.approx(duties["winter"], abs=0.06)


@having("opening")
def test_every_window_and_hatch_says_its_pane(part: Part) -> None:
    opening = part.opening
    assert opening is not None
    assert opening.pane is not None
    assert (opening.pane == "opaque") is (opening.kind in ("vent", "door"))
    assert (opening.pane == "double acrylic") is part.description.startswith("Double acrylic")
    assert opening.own_blind is ("blind" in part.description)


@having("warm_air_outlet")
def test_an_outlet_takes_the_smaller_part_of_the_heat(part: Part) -> None:
    assert part.warm_air_outlet is not None
    assert 0.05 <= part.warm_air_outlet.share_frac <= 0.5


@having("blind")
def test_a_blind_shuts_the_sun_out(part: Part) -> None:
    assert part.blind is not None
    assert part.blind.passes_frac <= 0.1
    assert part.blind.insulance_m2k_per_w <= 1.0


@having("cab_divider")
def test_a_divider_keeps_warmth_in(part: Part) -> None:
    assert part.cab_divider is not None
    assert 0.1 <= part.cab_divider.insulance_m2k_per_w <= 2.0


@having("enclosure")
def test_a_stall_has_thin_walls(part: Part) -> None:
    """At most 15 mm of poplar ply: 0.12 m2 K/W by EN 12524."""
    assert part.enclosure is not None
    assert part.enclosure.insulance_m2k_per_w <= 0.12
