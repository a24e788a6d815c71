import pytest

from coachwright.road.what_counts import Kind, Place, what_counts


def counted(
    place: Place, kind: Kind, *, rear: float = 0.0, side: float = 0.0
) -> tuple[bool, bool, bool]:
    found = what_counts(
        place=place, kind=kind, beyond_rear_mm=rear, beyond_side_mm=side, allowance_mm=76.2
    )
    return found.in_length, found.in_width, found.in_height


@pytest.mark.parametrize("place", ["eu", "uk"])
def test_europe_leaves_antennas_out_of_the_height(place: Place) -> None:
    """German road traffic licensing regulations, section 32(2)."""
    assert counted(place, "antenna") == (True, True, False)


@pytest.mark.parametrize("kind", ["mirror", "lamp", "step"])
def test_europe_leaves_mirrors_lamps_and_steps_out_of_the_width(kind: Kind) -> None:
    """German road traffic licensing regulations, section 32(1)."""
    assert counted("eu", kind, side=200) == (True, False, True)


@pytest.mark.parametrize("kind", ["awning", "ladder", "other", "spray guard"])
def test_europe_counts_the_rest(kind: Kind) -> None:
    assert counted("eu", kind, rear=50, side=50) == (True, True, True)


@pytest.mark.parametrize("kind", ["mirror", "lamp", "spray guard"])
def test_the_united_states_never_count_mirrors_lamps_and_spray_guards(kind: Kind) -> None:
    """23 CFR 658.16."""
    assert counted("us", kind, rear=200, side=200) == (False, False, True)


def test_the_united_states_leave_out_a_device_without_load_up_to_three_inches() -> None:
    """23 CFR 658.16: up to 3 in at a side or the rear."""
    assert counted("us", "awning", side=76.2) == (True, False, True)
    assert counted("us", "awning", side=76.3) == (True, True, True)
    assert counted("us", "ladder", rear=70) == (False, True, True)
    assert counted("us", "other", rear=70, side=70) == (True, True, True)


def test_the_united_states_count_antennas_in_the_height() -> None:
    assert counted("us", "antenna") == (True, True, True)


def test_what_is_left_out_is_said() -> None:
    def why(place: Place, kind: Kind, side: float) -> str:
        return what_counts(
            place=place, kind=kind, beyond_rear_mm=0, beyond_side_mm=side, allowance_mm=76.2
        ).why_not

    assert why("eu", "antenna", 0) == "antenna: height"
    assert why("eu", "lamp", 0) == "lamp: width"
    assert why("us", "mirror", 0) == "mirror: length and width"
    assert why("us", "awning", 100) == ""
