"""The interrupt key ends a search with the best so far."""

import os
import random
import signal
import threading

import pytest
from ortools.sat.python import cp_model

from coachwright.arrange.roof import propose_roof
from coachwright.arrange.roof_field import RoofWish
from coachwright.arrange.solving import Search, solve
from tests.arrange.roofs import fan, panel, roof_build


@pytest.mark.slow
def test_a_search_that_is_stopped_gives_what_it_has() -> None:
    # a market split of fifty shops by six products: near splits are found soon, exact ones never
    chance = random.Random(1)  # noqa: S311  # only numbers without a pattern
    model = cp_model.CpModel()
    choices = [model.new_bool_var(f"x{number}") for number in range(50)]
    misses = []
    for number in range(6):
        weights = [chance.randrange(100) for _ in choices]
        missed = model.new_int_var(0, 5000, f"missed-{number}")
        off = sum(w * c for w, c in zip(weights, choices, strict=True)) - sum(weights) // 2
        model.add(missed >= off)
        model.add(missed >= -off)
        misses.append(missed)
    model.maximize(-sum(misses))
    timer = threading.Timer(4.0, os.kill, (os.getpid(), signal.SIGINT))
    timer.start()
    try:
        _, proof = solve(model, Search(limit_s=120))
    finally:
        timer.cancel()
    assert proof.stopped
    assert proof.found
    assert proof.gap_frac > 0


def test_an_interrupt_between_searches_keeps_the_panels() -> None:
    def stop(_name: str) -> None:
        raise KeyboardInterrupt

    fitting, part = fan("fan", 1825, -200)
    build = roof_build(fittings=[fitting], parts=[part])
    wish = RoofWish(panels=(panel("p", (770, 480), 60),))
    plan = propose_roof(build, wish, Search(limit_s=20), on_obstacle=stop)
    assert plan.total_w == 240
    assert plan.obstacles == ()
