"""A slow year never holds up the other figures: it is shown when it is ready."""

from pathlib import Path

import pytest

from coachwright.actions.awaiting import with_years
from coachwright.actions.benching import Bench, OnBench, edit, lay_open, set_up
from coachwright.assess import Almanac
from coachwright.catalogue.loading import Catalogue
from coachwright.living.model import Living
from coachwright.store.edits import Put
from tests.support.living import living
from tests.web.benches import NOW, lay


class Shelf:
    """Holds one year for every build, once it is given it."""

    def __init__(self) -> None:
        self.made: Living | None = None

    def take(self, _key: str) -> Living | None:
        return self.made

    def put(self, _key: str, made: Living) -> None:
        self.made = made


def no_arrays(_site: str) -> object:
    raise AssertionError("an edit may not wait for the arrays of a site")


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    almanac = Almanac(arrays_of=no_arrays, mark="one", shelf=Shelf())  # type: ignore[arg-type]
    return set_up(tmp_path / "builds.db", Catalogue(), almanac)


def give(bench: Bench) -> None:
    assert bench.almanac is not None
    assert isinstance(bench.almanac.shelf, Shelf)
    bench.almanac.shelf.made = living()


def shown(bench: Bench) -> OnBench:
    return lay_open(bench, lay(bench, "winter-kit"))


def test_the_other_figures_do_not_wait_for_the_year(bench: Bench) -> None:
    seen = shown(bench)
    assert seen.assessment.living.is_awaited
    assert "weights.total-travelling" in {figure.name for figure in seen.assessment.headline}


def test_the_year_comes_when_it_is_ready_and_only_once(bench: Bench) -> None:
    seen = shown(bench)
    give(bench)
    whole = with_years(bench, seen)
    assert whole is not None
    assert whole.event == seen.event
    assert whole.assessment.living == living()
    assert lay_open(bench, seen.build_id) is whole
    assert with_years(bench, whole) is None


def test_a_build_that_was_edited_meanwhile_is_left_alone(bench: Bench) -> None:
    seen = shown(bench)
    edit(
        bench,
        seen.build_id,
        seen.event,
        (Put(path=("name",), value="Another"),),
        actor="designer",
        at=NOW,
    )
    give(bench)
    assert with_years(bench, seen) is None


def test_without_an_almanac_nothing_is_awaited(tmp_path: Path) -> None:
    plain = set_up(tmp_path / "plain.db", Catalogue())
    seen = lay_open(plain, lay(plain, "winter-kit"))
    assert not seen.assessment.living.is_awaited
    assert with_years(plain, seen) is None
