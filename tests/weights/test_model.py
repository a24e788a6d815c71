"""What a result of the weights answers when it is asked."""

from coachwright.weights.model import Group
from coachwright.weights.stage import stage
from tests.support.builds import build, fitting, part

BOX = part("box", body={"size": ["1 m", "1 m", "1 m"], "mass": "9 kg"})


def test_a_fitting_adds_its_mass_without_its_contents() -> None:
    held = [fitting("chest", "box", at=["2 m", "0 m", "0 m"], contents="20 kg")]
    weights = stage(build({"own_parts": [BOX], "fittings": held}))
    assert weights.added_by_kg("chest") == 9


def test_what_is_not_weighed_adds_nothing_known() -> None:
    assert stage(build()).added_by_kg("chest") is None


def test_groups_of_many_things_are_told_as_many() -> None:
    assert (Group.FITTING.words, Group.FINISH.words) == ("fittings", "finishes")
    assert Group.FUEL.words == "fuel"
