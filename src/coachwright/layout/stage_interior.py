"""Take the inside of a build to the subjects about people and put their results together."""

from dataclasses import replace

from coachwright.layout.figures_interior import interior_figures
from coachwright.layout.model_interior import Interior
from coachwright.layout.room import room_of
from coachwright.layout.stage_beds import (
    bed_spaces_of,
    bedfellows_of,
    lying,
    sleepers_of,
)
from coachwright.layout.stage_exits import escapes_of, ways_out_of
from coachwright.layout.stage_living import headrooms_of, showers_of, tables_of, worktops_of
from coachwright.layout.stage_loading import loading_of
from coachwright.layout.stage_safety import (
    alarms_of,
    cookers_of,
    entry_of,
    extinguishers_of,
    vents_of,
)
from coachwright.layout.stage_seats import seats_of
from coachwright.layout.stage_toilet import toilets_of
from coachwright.layout.standing import Standing


def interior_of(here: Standing) -> Interior:
    """Return what the inside of a build gives the people in it.

    Parameters
    ----------
    here
        What stands where.
    """
    room = room_of(here)
    slept = lying(room)
    found = Interior(
        loading=loading_of(room),
        headrooms=headrooms_of(room),
        sleepers=tuple(sleepers_of(slept)),
        bedfellows=tuple(bedfellows_of(room, slept)),
        bed_spaces=tuple(bed_spaces_of(room)),
        toilets=tuple(toilets_of(room)),
        showers=tuple(showers_of(room)),
        worktops=tuple(worktops_of(room)),
        tables=tuple(tables_of(room)),
        seats=tuple(seats_of(room)),
        ways_out=tuple(ways_out_of(room)),
        escapes=tuple(escapes_of(room)),
        cookers=tuple(cookers_of(room)),
        vents=tuple(vents_of(room)),
        alarms=tuple(alarms_of(room)),
        extinguishers=tuple(extinguishers_of(room)),
        entry=entry_of(room),
    )
    return replace(found, figures=tuple(interior_figures(build=here.build, interior=found)))
