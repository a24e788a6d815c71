import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.overall_size import OutsideBox, OverallSize, overall_size


def box(**changes: float | bool | str) -> OutsideBox:
    given: dict[str, float | bool | str] = {
        "name": "box",
        "x_low_mm": 5000.0,
        "x_high_mm": 5300.0,
        "y_low_mm": -400.0,
        "y_high_mm": 400.0,
        "top_mm": 1500.0,
    }
    return OutsideBox(**(given | changes))  # type: ignore[arg-type]


def size(*boxes: OutsideBox) -> OverallSize:
    return overall_size(
        wheelbase_mm=4000,
        front_overhang_mm=950,
        length_mm=5990,
        width_mm=2050,
        height_mm=2650,
        boxes=boxes,
    )


def test_a_bare_vehicle_keeps_its_size() -> None:
    found = size()
    assert (found.length_mm, found.width_mm, found.height_mm) == (5990, 2050, 2650)
    assert found.rear_overhang_mm == 1040  # 5990 - 950 - 4000
    assert found.rear_overhang_frac == 0.26


def test_a_box_behind_lengthens_by_what_sticks_out() -> None:
    found = size(box())
    assert found.length_mm == 6250  # 5300 + 950
    assert found.length_working.given[0].meaning == "box"


def test_an_awning_on_one_side_widens_on_that_side_alone() -> None:
    found = size(box(y_low_mm=1000.0, y_high_mm=1140.0))
    assert found.width_mm == 2165  # 1025 + 1140


def test_the_highest_thing_gives_the_height() -> None:
    found = size(box(top_mm=2930.0, name="vent"))
    assert found.height_mm == 2930
    assert found.height_working.given[0].meaning == "vent"


def test_what_does_not_count_is_in_the_whole_but_not_in_the_counted_size() -> None:
    mast = box(top_mm=3100.0, y_high_mm=1200.0, in_length=False, in_width=False, in_height=False)
    found = size(mast)
    assert (found.length_mm, found.width_mm, found.height_mm) == (6250, 2225, 3100)
    assert (found.counted_length_mm, found.counted_width_mm) == (5990, 2050)
    assert found.counted_height_mm == 2650
    assert found.rear_overhang_mm == 1040


@pytest.mark.parametrize("name", ["wheelbase_mm", "length_mm", "width_mm", "height_mm"])
def test_lengths_must_be_positive(name: str) -> None:
    given = {
        "wheelbase_mm": 4000.0,
        "front_overhang_mm": 950.0,
        "length_mm": 5990.0,
        "width_mm": 2050.0,
        "height_mm": 2650.0,
    }
    with pytest.raises(OutOfRange, match=name):
        overall_size(**(given | {name: 0.0}), boxes=())


@given(
    x=st.floats(-2000, 7000),
    y=st.floats(-1500, 1500),
    top=st.floats(0, 4000),
    counts=st.booleans(),
)
def test_a_fitting_never_makes_the_vehicle_smaller(
    x: float, y: float, top: float, counts: bool
) -> None:
    bare, fitted = (
        size(),
        size(
            box(
                x_low_mm=x,
                x_high_mm=x + 300,
                y_low_mm=y,
                y_high_mm=y + 200,
                top_mm=top,
                in_length=counts,
            )
        ),
    )
    assert fitted.length_mm >= fitted.counted_length_mm >= bare.length_mm
    assert fitted.width_mm >= bare.width_mm
    assert fitted.height_mm >= bare.height_mm
