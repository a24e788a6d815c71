"""The order in which big parts come in, replayed step by step."""

from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.layout.loading import Gate, Order, Space, loading_order
from coachwright.model.placement import Point

DOOR_MM = (1500.0, 1700.0, 3000.0)


def gate(standing: dict[str, Space], fixed: tuple[Space, ...] = ()) -> Gate:
    return Gate(
        name="rear doors",
        width_mm=DOOR_MM[0],
        from_height_mm=0.0,
        to_height_mm=DOOR_MM[1],
        depth_mm=DOOR_MM[2],
        standing={name: (space,) for name, space in standing.items()},
        fixed=fixed,
    )


def size_mm(space: Space) -> Point:
    low, high = space.low_mm, space.high_mm
    return (high[0] - low[0], high[1] - low[1], high[2] - low[2])


def order_of(
    standing: dict[str, Space],
    carried_by: dict[str, frozenset[str]] | None = None,
    fixed: tuple[Space, ...] = (),
) -> Order:
    return loading_order(
        sizes_mm={name: size_mm(space) for name, space in standing.items()},
        gates=[gate(standing, fixed)],
        carried_by=carried_by or {},
    )


BED = Space(low_mm=(0, 700, 0), high_mm=(1500, 1500, 1900))
TALL = Space(low_mm=(0, 0, 2000), high_mm=(600, 1650, 2600))
DEEP = Space(low_mm=(0, 0, 2000), high_mm=(900, 1650, 2900))


def test_what_a_bed_shuts_out_goes_in_before_it() -> None:
    found = order_of({"bed": BED, "wardrobe": DEEP})
    assert [step.name for step in found.steps] == ["wardrobe", "bed"]
    assert found.steps[0].before == ("bed",)
    assert not found.stuck


def test_what_still_goes_under_a_bed_need_not_wait() -> None:
    found = order_of({"bed": BED, "wardrobe": TALL})
    assert all(step.before == () for step in found.steps)


def test_a_carrier_goes_in_first() -> None:
    box = Space(low_mm=(0, 0, 0), high_mm=(500, 500, 500))
    on_it = Space(low_mm=(0, 500, 0), high_mm=(500, 1000, 500))
    found = order_of({"top": on_it, "box": box}, {"top": frozenset({"box"})})
    assert [step.name for step in found.steps] == ["box", "top"]


def test_two_that_carry_each_other_are_stuck() -> None:
    box = Space(low_mm=(0, 0, 0), high_mm=(500, 500, 500))
    ring = {"a": frozenset({"b"}), "b": frozenset({"a"})}
    assert order_of({"a": box, "b": box}, ring).stuck == ("a", "b")


def test_a_wheel_arch_narrows_the_way() -> None:
    wide = Space(low_mm=(0, 0, 1000), high_mm=(1450, 1650, 2450))
    arches = (
        Space(low_mm=(-300, 0, 100), high_mm=(100, 300, 800)),
        Space(low_mm=(1400, 0, 100), high_mm=(1700, 300, 800)),
    )
    assert not order_of({"wide": wide}).stuck
    assert order_of({"wide": wide}, fixed=arches).stuck == ("wide",)


corners = st.tuples(st.integers(0, 15), st.integers(0, 17), st.integers(0, 30)).map(
    lambda low: tuple(100.0 * each for each in low)
)
extents = st.tuples(st.integers(3, 16), st.integers(3, 18), st.integers(3, 16)).map(
    lambda size: tuple(100.0 * each for each in size)
)


@st.composite
def spaces(draw: st.DrawFn) -> Space:
    low, size = draw(corners), draw(extents)
    return Space(
        low_mm=(low[0], low[1], low[2]),
        high_mm=(low[0] + size[0], low[1] + size[1], low[2] + size[2]),
    )


def room_at_some_point(size: Point, standing: list[Space]) -> bool:
    """Try every 100 mm of the door: all sizes are whole decimetres."""
    for along, up, inwards in permutations(size):
        if inwards > DOOR_MM[2]:
            continue
        for x in range(0, int(DOOR_MM[0] - along) + 1, 100):
            for z in range(0, int(DOOR_MM[1] - up) + 1, 100):
                if not any(
                    s.low_mm[0] < x + along
                    and s.high_mm[0] > x
                    and s.low_mm[1] < z + up
                    and s.high_mm[1] > z
                    and s.low_mm[2] < inwards
                    for s in standing
                ):
                    return True
    return False


@settings(max_examples=60)
@given(st.lists(spaces(), min_size=1, max_size=5))
def test_the_order_can_be_replayed(found: list[Space]) -> None:
    standing = {f"part-{index}": space for index, space in enumerate(found)}
    order = order_of(standing)
    inside = [standing[name] for name in order.stuck]
    for step in order.steps:
        assert room_at_some_point(size_mm(standing[step.name]), inside)
        inside.append(standing[step.name])
    for name in order.stuck:
        others = [standing[other] for other in order.stuck if other != name]
        assert not room_at_some_point(size_mm(standing[name]), others)


@settings(max_examples=60)
@given(st.lists(spaces(), min_size=2, max_size=5))
def test_leaving_a_part_out_never_makes_another_stick(found: list[Space]) -> None:
    standing = {f"part-{index}": space for index, space in enumerate(found)}
    stuck = set(order_of(standing).stuck)
    del standing["part-0"]
    assert set(order_of(standing).stuck) <= stuck
