"""Panes: what they lose, what sun they let in, and what a shut blind does."""

from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import UnknownName

NO_BLIND_FRAC = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Glazing:
    """One row of the table of glazing; see `living.given_body.Window`."""

    u_w_per_m2k: float
    shgc_frac: float
    transmitted_frac: float
    panes: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Shade:
    """What a shut blind does to a pane."""

    passes_frac: float
    insulance_m2k_per_w: float


@cache
def glazing(pane: str) -> Glazing:
    """Return what a kind of pane loses and lets in.

    Raises
    ------
    UnknownName
        Where the table has no such pane.

    Notes
    -----
    Fixed, upright, at the handbook's winter and summer films; frames are counted as pane.  The
    gain of acrylic is not in the handbook: that of glass of the same transmittance is taken.

    References
    ----------
    [ashrae-fenestration], [iso-6946]

    Examples
    --------
    >>> glazing("double glass").u_w_per_m2k
    2.73
    """
    rows = {row["pane"]: row for row in reference.table("glazing")}
    if pane not in rows:
        raise UnknownName("pane", pane, sorted(rows))
    row = rows[pane]
    return Glazing(
        u_w_per_m2k=float(row["u_w_per_m2k"]),
        shgc_frac=float(row["shgc_frac"]),
        transmitted_frac=float(row["transmitted_frac"]),
        panes=int(row["panes"]),
    )


def framed_frac(*, gain_frac: float, clear_m2: float, face_m2: float) -> float:
    """Return the gain of a pane with its frame, over the whole face.

    Parameters
    ----------
    gain_frac
        Of the pane alone.
    clear_m2
        That light comes through. [m2]
    face_m2
        Cut out of the shell. [m2]

    Notes
    -----
    g A_clear / A_face, at most g: the frame lets no sun through.

    Examples
    --------
    >>> framed_frac(gain_frac=0.6, clear_m2=0.1, face_m2=0.15)
    0.4
    """
    return gain_frac * min(1.0, clear_m2 / face_m2)


def sun_gain_w(
    *, area_m2: float, shgc_frac: float, sun_w_per_m2: float, passes_frac: float
) -> float:
    """Return the sun's gain through a pane at straight incidence [W].

    Parameters
    ----------
    area_m2
        Of the pane. [m2]
    shgc_frac
        Solar heat gain.
    sun_w_per_m2
        On the pane. [W/m2]
    passes_frac
        Share that passes the blind; 1 without one.

    Notes
    -----
    Q = A g I b.

    References
    ----------
    [ashrae-fenestration]

    Examples
    --------
    >>> round(sun_gain_w(area_m2=1.5, shgc_frac=0.54, sun_w_per_m2=600, passes_frac=1.0), 6)
    486.0
    """
    return area_m2 * shgc_frac * sun_w_per_m2 * passes_frac


def screened_w_per_m2k(*, u_w_per_m2k: float, insulance_m2k_per_w: float) -> float:
    """Return the U-value of a pane with its blind shut [W/m2/K].

    Parameters
    ----------
    u_w_per_m2k
        Of the pane. [W/m2/K]
    insulance_m2k_per_w
        That the blind adds. [m2 K/W]

    Notes
    -----
    1 / (1 / U + R).

    References
    ----------
    [iso-6946]

    Examples
    --------
    >>> round(screened_w_per_m2k(u_w_per_m2k=5.0, insulance_m2k_per_w=0.2), 2)
    2.5
    """
    return 1.0 / (1.0 / u_w_per_m2k + insulance_m2k_per_w)


def best_shade(shades: tuple[Shade, ...]) -> Shade:
    """Return the blind that is used where there are several: the darkest, its insulance with it.

    Without any, one that does nothing.
    """
    nothing = Shade(passes_frac=NO_BLIND_FRAC, insulance_m2k_per_w=0.0)
    return min(shades, key=lambda each: each.passes_frac, default=nothing)
