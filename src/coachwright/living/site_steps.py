"""A site's steps for the planes of a body, kept from one edit to the next."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from coachwright.living.given import Given
from coachwright.living.given_body import Body
from coachwright.living.steps import SiteSteps, Sky, keys_of, site_steps

_MOST = 16


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Looking:
    """A body as a site sees it: by its planes, its ground and where it heads."""

    body: Body
    seen: tuple[Any, ...]

    def __hash__(self) -> int:
        return hash(self.seen)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Looking) and self.seen == other.seen


def kept_steps(given: Given, sky: Sky) -> SiteSteps:
    """Return a site's steps for a design; those of a design with the same planes are kept.

    Parameters
    ----------
    given
        The design.
    sky
        The site: the very same object, or its steps are made anew.
    """
    body, heading_deg = given.body, given.heading_deg
    seen = keys_of(body), body.ground_degc, heading_deg
    return _steps(sky, _Looking(body=body, seen=seen), heading_deg)


@lru_cache(maxsize=_MOST)
def _steps(sky: Sky, looking: _Looking, heading_deg: float | None) -> SiteSteps:
    return site_steps(body=looking.body, sky=sky, heading_deg=heading_deg)
