"""Which ways out count, as NFPA 1192-2018 6.2.1.2 and 6.2.1.3 are quoted."""

import pytest

from coachwright.layout.exits import Exit, opens_at, ways_out
from coachwright.layout.passage import Patch

NEAR_MM = 609.6
LEAST_MM = (431.8, 609.6)


def patch(x: tuple[float, float], y: tuple[float, float]) -> Patch:
    return Patch(name="", low_mm=(x[0], y[0]), high_mm=(x[1], y[1]))


def way(
    name: str, place: Patch, *, door: bool = True, direct: bool = False, walked: bool = True
) -> Exit:
    return Exit(name=name, place=place, door=door, direct=direct, walked=walked)


BED = patch((3400, 5300), (-700, 700))
SLIDER = way("sliding door", patch((1300, 2500), (900, 900)))
CAB = way("cab doors", patch((1200, 1200), (-900, 900)))
REAR = way("rear doors", patch((5300, 5300), (-780, 780)), direct=True, walked=False)
WINDOW = way("window", patch((1300, 2200), (-920, -880)), door=False)


def test_the_cab_lies_behind_the_sliding_door() -> None:
    found = ways_out(bed=BED, exits=[CAB, SLIDER], near_mm=NEAR_MM)
    assert (found.exits, found.behind) == (("sliding door",), ("cab doors",))


def test_a_bed_at_an_exit_may_have_the_others_behind_it() -> None:
    found = ways_out(bed=BED, exits=[CAB, SLIDER, REAR], near_mm=NEAR_MM)
    assert found.exits == ("rear doors", "sliding door", "cab doors")


def test_what_opens_at_the_bed_counts_without_a_walk() -> None:
    far = way("hatch", patch((4000, 4600), (-300, 300)), door=False, direct=True, walked=False)
    assert ways_out(bed=BED, exits=[far], near_mm=NEAR_MM).exits == ("hatch",)


def test_nobody_is_stopped_by_a_window_on_the_way() -> None:
    found = ways_out(bed=BED, exits=[WINDOW, CAB], near_mm=NEAR_MM)
    assert found.exits == ("window", "cab doors")


def test_an_exit_that_cannot_be_reached_does_not_count() -> None:
    closed = way("sliding door", SLIDER.place, walked=False)
    assert ways_out(bed=BED, exits=[closed, CAB], near_mm=NEAR_MM).exits == ("cab doors",)


def test_a_bed_between_two_doors_has_both() -> None:
    middle = patch((2700, 3600), (-800, 0))
    far_rear = way("rear doors", REAR.place)
    found = ways_out(bed=middle, exits=[SLIDER, far_rear], near_mm=100.0)
    assert found.exits == ("sliding door", "rear doors")


def test_a_bed_before_the_door_has_the_rear_behind_it() -> None:
    front = patch((1200, 1290), (-800, 800))
    far_rear = way("rear doors", REAR.place)
    found = ways_out(bed=front, exits=[SLIDER, far_rear], near_mm=5.0)
    assert found.behind == ("rear doors",)


@pytest.mark.parametrize(
    ("clear_mm", "place", "opens"),
    [
        ((610, 432), REAR.place, True),
        ((432, 610), REAR.place, True),
        ((600, 600), REAR.place, False),
        ((430, 900), REAR.place, False),
        ((900, 900), patch((5950, 5950), (-780, 780)), False),
        ((900, -50), REAR.place, False),
    ],
)
def test_an_opening_at_the_bed_is_17_by_24_in(
    clear_mm: tuple[float, float], place: Patch, opens: bool
) -> None:
    found = opens_at(bed=BED, place=place, clear_mm=clear_mm, near_mm=NEAR_MM, least_mm=LEAST_MM)
    assert found is opens
