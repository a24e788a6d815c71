"""What a fitting is fixed to, built into and carried by can be chosen, and the sheet says so."""

import pytest

from coachwright.actions.fixing import MOUNTINGS, build_into, carriers, fix_to, stand_on
from coachwright.actions.following import built_into
from coachwright.actions.stocking import add
from coachwright.actions.together import pin
from coachwright.errors import CannotEdit, UnknownName
from coachwright.model.build import Fitting, Mounting
from coachwright.model.position import Relation
from tests.web.test_edits_of_fittings import CATALOGUE, Laid, laid


def fitting(here: Laid, name: str) -> Fitting:
    found = here.build.fitted(name)
    assert found is not None
    return found.fitting


def spot(here: Laid, name: str, axis: int) -> str:
    place = fitting(here, name).at_mm[axis]
    return place.text if isinstance(place, Relation) else f"{place:g} mm"


@pytest.mark.parametrize("mounting", list(Mounting))
@pytest.mark.parametrize(("demo_id", "name"), [("night-watch", "galley"), ("four-seats", "bed")])
def test_every_mounting_can_be_chosen(demo_id: str, name: str, mounting: Mounting) -> None:
    here = laid(demo_id)
    if here.build.fitted(name) is None:
        name = here.build.fittings[0].name
    after = here.then(fix_to(here.sheet, here.build, name, mounting))
    assert fitting(after, name).mounting is mounting


@pytest.mark.parametrize(
    ("mounting", "expected"),
    [
        (Mounting.CEILING, "against ceiling"),
        (Mounting.ROOF, "against roof"),
        (Mounting.UNDERBODY, "against ground 350 mm"),
    ],
)
def test_it_stands_at_the_usual_height(mounting: Mounting, expected: str) -> None:
    here = laid("night-watch")
    after = here.then(fix_to(here.sheet, here.build, "galley", mounting))
    assert spot(after, "galley", 2) == expected
    assert spot(after, "galley", 0) == spot(here, "galley", 0)


def test_a_door_is_behind_the_vehicle_and_the_way_back_leads_before_the_doors() -> None:
    here = laid("night-watch")
    out = here.then(fix_to(here.sheet, here.build, "galley", Mounting.REAR_DOOR_LEFT))
    assert spot(out, "galley", 0) == "against outside rear"
    back = out.then(fix_to(out.sheet, out.build, "galley", Mounting.FLOOR))
    assert spot(back, "galley", 0) == "against rear doors"


def test_a_side_is_that_on_which_it_stood_and_a_wall_too() -> None:
    here = laid("night-watch")
    out = here.then(fix_to(here.sheet, here.build, "stall", Mounting.SIDE))
    assert spot(out, "stall", 1) == "against outside right"
    back = out.then(fix_to(out.sheet, out.build, "stall", Mounting.WALL))
    assert spot(back, "stall", 1) == "against right wall"


def test_what_leaves_the_living_space_is_built_into_nothing() -> None:
    here = laid("night-watch")
    assert fitting(here, "pump").within == "bench"
    after = here.then(fix_to(here.sheet, here.build, "pump", Mounting.UNDERBODY))
    assert fitting(after, "pump").within == ""


def test_a_carrier_and_a_host_are_chosen_and_taken_away() -> None:
    here = laid("night-watch")
    after = here.then(build_into(here.sheet, here.build, "pump", "galley"))
    assert fitting(after, "pump").within == "galley"
    free = after.then(build_into(after.sheet, after.build, "pump", ""))
    assert fitting(free, "pump").within == ""
    on = free.then(stand_on(free.sheet, free.build, "pump", "fresh-tank"))
    assert fitting(on, "pump").on == "fresh-tank"
    assert stand_on(on.sheet, on.build, "pump", "fresh-tank") == ()


def test_nothing_is_offered_that_is_built_into_the_fitting_itself() -> None:
    build = laid("night-watch").build
    offered = carriers(build, "bench")
    assert not {"bench", *built_into(build, "bench")} & set(offered)
    assert offered["galley"] == "galley"


def test_a_pinned_one_keeps_its_mounting() -> None:
    here = laid("night-watch")
    pinned = here.then(pin(here.sheet, here.build, ("galley",), pinned=True))
    with pytest.raises(CannotEdit, match="galley is pinned"):
        fix_to(pinned.sheet, pinned.build, "galley", Mounting.WALL)
    assert fix_to(pinned.sheet, pinned.build, "galley", Mounting.FLOOR) == ()


def test_a_carrier_that_is_not_there_is_told() -> None:
    here = laid("night-watch")
    with pytest.raises(UnknownName, match="sofa"):
        stand_on(here.sheet, here.build, "pump", "sofa")


@pytest.mark.parametrize("mounting", list(Mounting))
def test_a_part_can_be_put_in_with_any_mounting(mounting: Mounting) -> None:
    here = laid("night-watch")
    part = CATALOGUE.part("bench-side-1200")
    name, edits = add(here.sheet, here.build, part, mounting=mounting)
    assert fitting(here.then(edits), name).mounting is mounting
    assert str(mounting) in MOUNTINGS
