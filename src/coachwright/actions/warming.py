"""Make the bench ready before anybody waits for it."""

import contextlib

from coachwright.actions.benching import Bench
from coachwright.actions.demos import demos
from coachwright.actions.opening import complete
from coachwright.assess import assess
from coachwright.errors import CoachwrightError
from coachwright.store.editing import read_sheet


def make_ready(bench: Bench) -> None:
    """Compute the year of a demonstration build, where it is not kept: nobody waits for it then.

    The first year after an install also compiles the loop of the year, which takes half a minute
    and lets nothing else of the process run: no page must be open by then.

    Parameters
    ----------
    bench
        With an almanac; without one there is nothing to make ready.
    """
    if bench.almanac is None:
        return
    for demo in demos()[:1]:
        with contextlib.suppress(CoachwrightError):  # a shop's own parts may not suit the demo
            build = complete(read_sheet(demo.text), demo.id, bench.catalogue)
            assess(build, almanac=bench.almanac)
