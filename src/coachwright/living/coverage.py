"""Which part of a surface is covered by which finishes."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from coachwright.living.given_body import Layer

SLACK_M2 = 1e-6
SLIVER_FRAC = 0.03
"""Areas are told no closer than this share of a surface. [shop-practice-living]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Told:
    """A finish as the build tells it, on one kind of surface.

    Attributes
    ----------
    insulates
        Lies between the ribs, outside the linings.
    """

    area_m2: float
    layer: Layer
    insulates: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Covered:
    """A share of a surface with the same layers, from outside inwards."""

    share_frac: float
    insulation: tuple[Layer, ...]
    lining: tuple[Layer, ...]


def coverage(*, area_m2: float, told: Sequence[Told]) -> tuple[Covered, ...]:
    """Return how finishes cover a surface.

    Parameters
    ----------
    area_m2
        Of the surface, panes taken off. [m2]
    told
        Finishes in the order of the build.

    Returns
    -------
    tuple of Covered
        Shares that add up to 1: the best covered first, what is bare last.

    Notes
    -----
    What is told is laid from one corner: a finish of less area lies wholly under one of more.
    More area than there is counts as all of it.  What nothing covers is bare.  Strips of less
    than 3 % of the surface, closer than areas are told, count with the next worse covered part,
    or with the next better where there is none.

    Examples
    --------
    >>> foam = Told(area_m2=8, layer=Layer(name="foam"), insulates=True)
    >>> ply = Told(area_m2=9, layer=Layer(name="ply"), insulates=False)
    >>> [(round(each.share_frac, 2), len(each.insulation), len(each.lining))
    ...     for each in coverage(area_m2=10, told=[foam, ply])]
    [(0.8, 1, 1), (0.1, 0, 1), (0.1, 0, 0)]
    """
    if area_m2 <= SLACK_M2:
        return ()
    edges = sorted({0.0, area_m2, *(min(each.area_m2, area_m2) for each in told)})
    made = []
    for low, high in pairwise(edges):
        if high - low <= SLACK_M2:
            continue
        here = [each for each in told if each.area_m2 >= high - SLACK_M2]
        made.append(
            Covered(
                share_frac=(high - low) / area_m2,
                insulation=tuple(each.layer for each in here if each.insulates),
                lining=tuple(each.layer for each in here if not each.insulates),
            )
        )
    return tuple(_without_slivers(made))


def _without_slivers(made: list[Covered]) -> list[Covered]:
    """Return the shares, strips laid to the next part that is covered worse, or else better."""
    kept: list[Covered] = []
    strip_frac = 0.0
    for each in made:
        share = each.share_frac + strip_frac
        if share < SLIVER_FRAC:
            strip_frac = share
            continue
        kept.append(replace(each, share_frac=share))
        strip_frac = 0.0
    if strip_frac > 0.0:
        kept[-1] = replace(kept[-1], share_frac=kept[-1].share_frac + strip_frac)
    return kept
