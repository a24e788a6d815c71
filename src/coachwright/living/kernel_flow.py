"""Compiled parts of a step: what drives the modes, and how they move."""

# ruff: noqa: PLR0917  # what is compiled takes its arguments by place; halves are halves

from coachwright.living import kernel_model as c
from coachwright.living.compiling import compiled_in
from coachwright.living.kernel_model import Grid, Matrices, Numbers, Site, State, Sums, Work


@compiled_in
def across(matrix: Grid, row: Grid, first: int, last: int, into: Grid) -> None:
    """Set a vector to the sum of the matrix's rows, each times its share in a row of the site."""
    for place in range(into.shape[0]):
        into[place] = 0.0
    for column in range(first, last):
        share = row[column]
        if share != 0.0:
            for place in range(into.shape[0]):
                into[place] += share * matrix[column, place]


@compiled_in
def hour(m: Matrices, site: Site, w: Work, shut: int, last: int, here: int, then: int) -> None:
    """Make what drives the modes and outputs in an hour: air, sky and ground, then light."""
    matrix, columns = m.drive[shut], site.driving.shape[1]
    across(matrix, site.driving[last], 0, 3, w.before)
    across(matrix, site.driving[here], 0, 3, w.now)
    across(matrix, site.driving[then], 0, 3, w.after)
    across(matrix, site.driving[here], 3, columns, w.light)


@compiled_in
def half(w: Work, early: bool) -> None:
    """Lay the straight line along which the half of an hour is driven."""
    for place in range(w.base.shape[0]):
        if early:
            w.base[place] = w.before[place] + w.light[place]
            w.slope[place] = w.now[place] - w.before[place]
        else:
            w.base[place] = w.now[place] + w.light[place]
            w.slope[place] = w.after[place] - w.now[place]


@compiled_in
def count_hour(site: Site, s: Sums, w: Work, shut: int, last: int, here: int, then: int) -> None:
    """Sum what drove the steps since the last count, for the balance."""
    h = w.halves
    first = h[c.EARLY] - h[c.EARLY_BETWEEN]
    middle = h[c.EARLY_BETWEEN] + h[c.LATE] - h[c.LATE_BETWEEN]
    for column in range(3):
        s.driven[shut, column] += (
            first * site.driving[last, column]
            + middle * site.driving[here, column]
            + h[c.LATE_BETWEEN] * site.driving[then, column]
        )
    for column in range(3, site.driving.shape[1]):
        s.driven[shut, column] += (h[c.EARLY] + h[c.LATE]) * site.driving[here, column]
    for place in range(4):
        h[place] = 0.0


@compiled_in
def draw_blinds(k: Numbers, m: Matrices, state: State, w: Work, shut: int, want: int) -> None:
    """Go over to the modes of the other state; heat that these hold more or less is carried."""
    held = 0.0
    for place in range(state.modes.shape[0]):
        value = 0.0
        for other in range(state.modes.shape[0]):
            value += m.swap[shut, place, other] * state.modes[other]
        w.spare[place] = value
        held += m.held[shut, place] * state.modes[place] - m.held[want, place] * value
    for place in range(state.modes.shape[0]):
        state.modes[place] = w.spare[place]
    state.misc[c.CARRY_W] += held / k.step_s


@compiled_in
def free_step(m: Matrices, state: State, s: Sums, w: Work, shut: int, between_frac: float) -> None:
    """Let the modes fade and be driven, and show the outputs before anything is let in."""
    count = state.modes.shape[0]
    for place in range(count):
        s.modes[shut, place] += state.modes[place]
        state.modes[place] = (
            m.stay[shut, place] * state.modes[place]
            + w.base[place]
            + between_frac * w.slope[place]
        )
    for place in range(w.shown.shape[0]):
        value = w.base[count + place] + between_frac * w.slope[count + place]
        for other in range(count):
            value += m.shown[shut, place, other] * state.modes[other]
        w.shown[place] = value
