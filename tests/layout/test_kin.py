"""Which fittings belong together."""

from typing import Any

from coachwright.layout.kin import Kin, kin_of
from coachwright.model.build import Mounting
from tests.support.builds import build
from tests.support.vans import holding, thing

CUBE = (100.0, 100.0, 100.0)
AT = (2000.0, 0.0, 0.0)


def kin(**fields: dict[str, Any]) -> Kin:
    things = [thing(name, CUBE, AT, **given) for name, given in fields.items()]
    return kin_of(build(holding(*things)))


def test_what_is_built_in_is_nested_at_any_depth() -> None:
    found = kin(cabinet={}, drawer={"within": "cabinet"}, tray={"within": "drawer"}, other={})
    assert found.nested == {
        frozenset(pair)
        for pair in (("drawer", "cabinet"), ("tray", "drawer"), ("tray", "cabinet"))
    }
    assert found.carriers["tray"] == frozenset()
    assert found.related("tray", "cabinet")
    assert not found.related("tray", "other")


def test_what_carries_is_known_at_any_depth() -> None:
    found = kin(rack={}, box={"on": "rack"}, lamp={"on": "box"})
    assert found.carriers["lamp"] == {"box", "rack"}
    assert found.nested == frozenset()
    assert found.related("rack", "lamp")
    assert found.related("lamp", "rack")


def test_a_carrier_beyond_a_cabinet_carries_too() -> None:
    found = kin(plinth={}, cabinet={"on": "plinth"}, fridge={"within": "cabinet"})
    assert found.nested == {frozenset(("fridge", "cabinet"))}
    assert found.carriers["fridge"] == {"plinth"}


def test_a_ring_ends_where_it_closes() -> None:
    found = kin(one={"within": "two"}, two={"within": "one"})
    assert found.nested == {frozenset(("one", "two"))}


def test_what_a_door_carries_hangs_on_that_door() -> None:
    found = kin(
        carrier={"mounting": "rear door right"},
        box={"on": "carrier", "mounting": "rear door right"},
        lamp={"within": "box"},
        chest={},
    )
    assert dict(found.door) == dict.fromkeys(("carrier", "box", "lamp"), Mounting.REAR_DOOR_RIGHT)
