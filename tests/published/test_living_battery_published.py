"""The bank's year against BatteryStateful of NREL-PySAM.

Both are 200 Ah at 13.0 to 13.4 V with 20 milliohm, full at the start and dropped at a tenth; sun
of 400 W at Greensboro, a load by the clock, hour by hour; no ageing, no cold.  BatteryStateful
gives about 1 % less power than it is asked for (it goes by the voltage of the step before), so
that its bank stays a little fuller: that is what the tolerances are for.
"""

import numpy as np

from coachwright.climate.arrays import site_arrays
from coachwright.climate.panels import PanelSpec, panel_year
from coachwright.living.simulate import simulate
from tests.climate.years import measured
from tests.support.plain_box import BANK, LOAD_W, sunny_box
from tests.support.pysam import charge_frac

PANELS = PanelSpec(rated_w=400.0, coefficient_frac_per_k=-0.0035, bonded=False, coated=True)


def test_a_bank_s_year_is_the_one_of_the_open_battery_model() -> None:
    # NREL-PySAM 7.1.1, BatteryStateful; found: correlation 0.9987, 1.7 % of the capacity rms,
    # mean charge 0.6 % lower than theirs
    arrays = site_arrays(weather=measured("greensboro"))
    sun_w = panel_year(
        weather=arrays.weather, path=arrays.path, panel=PANELS, loss_frac=0.0
    ).power_w
    run = simulate(sunny_box(sun_w), arrays, step_min=60.0, series=True, precondition_d=0)
    ours = run.flows_w["charge_frac"]
    theirs = charge_frac(BANK, sun_w - np.tile(LOAD_W, 365))
    assert np.corrcoef(ours, theirs)[0, 1] > 0.998
    assert np.sqrt(((ours - theirs) ** 2).mean()) < 0.02
    assert abs(ours.mean() - theirs.mean()) < 0.01
    # hours at the cut-off, where loads are dropped
    assert abs((ours < 0.101).mean() - (theirs < 0.101).mean()) < 0.01
