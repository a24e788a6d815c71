"""A question about any draw is answered as for the loads that the build has."""

import pytest

from coachwright.actions.demos import demos
from coachwright.actions.opening import complete
from coachwright.actions.running import how_long
from coachwright.assess import Assessment, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.electrics.asking import asked
from coachwright.electrics.model import Supply
from coachwright.errors import BadInput, CallError, OutOfRange
from coachwright.store.editing import read_sheet
from tests.support.builds import build


@pytest.fixture(scope="module")
def assessment() -> Assessment:
    text = next(each.text for each in demos() if each.name == "Night watch")
    return assess(complete(read_sheet(text), "the sheet", Catalogue()))


def test_each_load_of_the_build_gets_the_answer_that_stands_in_its_list(
    assessment: Assessment,
) -> None:
    for run in assessment.electrics.runtimes:
        found = asked(
            assessment.build,
            assessment.electrics,
            draw_w=run.draw_w,
            duty_frac=run.duty_frac,
            supply=run.supply,
        )
        assert found.alone_h == pytest.approx(run.alone_h, rel=1e-12)
        assert found.cold_alone_h == pytest.approx(run.cold_alone_h, rel=1e-12)
        assert found.with_others_h <= run.with_others_h * (1 + 1e-12)


def test_a_draw_behind_the_inverter_runs_shorter(assessment: Assessment) -> None:
    direct = how_long(assessment, draw="100", duty="100", behind_inverter=False)
    socket = how_long(assessment, draw="0.1 kW", duty="100 %", behind_inverter=True)
    assert socket.draw_w == direct.draw_w == 100.0
    assert socket.alone_h < direct.alone_h


def test_half_the_duty_is_twice_the_time(assessment: Assessment) -> None:
    """t = usable charge over mean draw, where the battery's rate plays no part (lithium)."""
    whole = how_long(assessment, draw="50 W", duty="100", behind_inverter=False)
    half = how_long(assessment, draw="50 W", duty="50", behind_inverter=False)
    assert half.alone_h == pytest.approx(2 * whole.alone_h)


def test_what_cannot_be_read_is_said_of_both_fields(assessment: Assessment) -> None:
    with pytest.raises(BadInput) as told:
        how_long(assessment, draw="a lot", duty="often", behind_inverter=False)
    assert [fault.field for fault in told.value.faults] == ["draw", "duty"]


def test_nothing_drawn_and_more_than_always_are_refused(assessment: Assessment) -> None:
    with pytest.raises(OutOfRange):
        how_long(assessment, draw="0", duty="100", behind_inverter=False)
    with pytest.raises(OutOfRange):
        how_long(assessment, draw="10", duty="120", behind_inverter=False)


def test_a_build_without_a_battery_or_an_inverter_cannot_answer() -> None:
    bare = assess(build())
    for supply in (Supply.DC, Supply.INVERTER):
        with pytest.raises(CallError, match="no bank"):
            asked(bare.build, bare.electrics, draw_w=10.0, duty_frac=1.0, supply=supply)
