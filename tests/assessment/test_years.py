"""The coupled year among the other disciplines: when it runs, and when it is taken as kept."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from coachwright.actions.opening import complete
from coachwright.actions.year_shelf import YearShelf, almanac_of
from coachwright.assess import Almanac, Stages, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.layout.stage import stage as layout_of
from coachwright.living.model import AWAITED, Living
from coachwright.living.reads import reads
from coachwright.model.build import INSIDE, Build
from coachwright.store.editing import read_sheet
from coachwright.water.stage import stage as water_of
from tests.support.living import living

DEMOS = Path(__file__).parents[2] / "demos"


@cache
def demo(name: str = "winter-kit") -> Build:
    text = (DEMOS / f"{name}.toml").read_text(encoding="utf-8")
    return complete(read_sheet(text), name, Catalogue())


def reading(build: Build) -> str:
    return repr(reads(build, layout_of(build), water_of(build)))


class Shelf:
    """Holds what it is given, and counts."""

    def __init__(self) -> None:
        self.kept: dict[str, Living] = {}

    def take(self, key: str) -> Living | None:
        return self.kept.get(key)

    def put(self, key: str, made: Living) -> None:
        self.kept[key] = made


def no_arrays(_site: str) -> object:
    raise AssertionError("nothing may ask for the arrays of a site")


@pytest.fixture
def almanac() -> Almanac:
    return Almanac(arrays_of=no_arrays, mark="one", shelf=Shelf())  # type: ignore[arg-type]


def moved(build: Build, name: str, by_mm: float) -> Build:
    fittings = tuple(
        each.model_copy(update={"at_mm": (each.at_mm[0] + by_mm, *each.at_mm[1:])})
        if each.name == name
        else each
        for each in build.fittings
    )
    return build.model_copy(update={"fittings": fittings})


def test_a_cupboard_that_is_moved_makes_nothing_run_anew() -> None:
    build = demo()
    assert reading(moved(build, "overhead", 40.0)) == reading(build)


def test_mass_and_contents_and_what_stands_on_the_roof_are_read() -> None:
    build = demo()
    (overhead,) = [each for each in build.fittings if each.name == "overhead"]
    fuller = overhead.fitting.model_copy(update={"contents_kg": 30.0})
    heavier = build.model_copy(
        update={
            "fittings": tuple(
                each.model_copy(update={"fitting": fuller}) if each is overhead else each
                for each in build.fittings
            )
        }
    )
    assert reading(heavier) != reading(build)
    assert reading(moved(build, "roof-fan", 40.0)) != reading(build)


def test_names_prices_and_dates_are_not_read() -> None:
    build = demo()
    told = build.model_copy(update={"story": "another", "name": "Another", "decisions": ()})
    assert reading(told) == reading(build)


def test_without_an_almanac_there_are_no_years_and_it_says_so() -> None:
    made = assess(demo())
    assert made.living.years == ()
    assert "nobody has asked for" in made.living.missing
    assert "electrics.independence-winter" in {figure.name for figure in made.headline}


def test_what_is_not_kept_is_awaited_where_nobody_waits(almanac: Almanac) -> None:
    made = assess(demo(), almanac=replace(almanac, wait=False))
    assert made.living.is_awaited
    assert made.living.missing == AWAITED


def test_a_year_that_is_kept_is_taken_without_arrays(almanac: Almanac) -> None:
    first = Stages()
    shelf = almanac.shelf
    assert isinstance(shelf, Shelf)
    assess(demo(), first, replace(almanac, wait=False))
    wanted: list[str] = []
    shelf.take = wanted.append  # type: ignore[method-assign,assignment]
    assess(demo(), None, replace(almanac, wait=False))
    shelf.kept[wanted[0]] = living()
    del shelf.take
    made = assess(demo(), first, almanac)
    assert made.living == living()
    shelf.kept.clear()
    again = assess(moved(demo(), "overhead", 40.0), first, almanac)
    assert again.living is made.living


def test_another_mark_makes_years_anew(almanac: Almanac) -> None:
    stages = Stages()
    shelf = almanac.shelf
    assert isinstance(shelf, Shelf)
    keys: list[str] = []
    shelf.take = keys.append  # type: ignore[method-assign,assignment]
    for mark in ("one", "two"):
        assess(demo(), stages, replace(almanac, mark=mark, wait=False))
    assert len(set(keys)) == 2


def test_no_fitting_that_is_not_read_changes_what_a_run_is_given() -> None:
    """Whatever `reads` leaves out must not reach the kernel: each fitting inside is moved."""
    from coachwright.electrics.stage import stage as electrics_of  # noqa: PLC0415
    from coachwright.living.stage_given import given  # noqa: PLC0415

    build = demo()
    weather = almanac_of(Catalogue(), None).arrays_of(build.sites[0].id).weather
    sun = weather.ghi_w_per_m2 * 0.0

    def run_of(other: Build) -> str:
        made = given(other, electrics_of(other), water_of(other), weather, sun_w=sun)
        return repr(replace(made, supply=replace(made.supply, sun_w=sun[:1])))

    was, was_given = reading(build), run_of(build)
    for each in build.fittings:
        if each.fitting.mounting in INSIDE:
            other = moved(build, each.name, 35.0)
            if reading(other) == was:
                assert run_of(other) == was_given, each.name


def test_a_shelf_keeps_years_and_forgets_what_it_cannot_read(tmp_path: Path) -> None:
    shelf = YearShelf(folder=tmp_path)
    assert shelf.take("living:a") is None
    shelf.put("living:a", living())
    assert shelf.take("living:a") == living()
    (tmp_path / "years" / "a.json").write_text("{}")
    assert shelf.take("living:a") is None
    blocked = tmp_path / "file"
    blocked.write_text("")
    YearShelf(folder=blocked).put("living:a", living())
