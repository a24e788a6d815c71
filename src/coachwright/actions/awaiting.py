"""Bring the years of a build that lies open; they are awaited while the rest is shown."""

from dataclasses import dataclass, replace

from coachwright.actions.benching import Bench, OnBench
from coachwright.actions.checking import verdict
from coachwright.assess import assess
from coachwright.living.model import Living


def with_years(bench: Bench, seen: OnBench) -> OnBench | None:
    """Compute the years of a build that lies open and are awaited: it takes a moment.

    Parameters
    ----------
    bench
        With an almanac.
    seen
        The build as it was shown.

    Returns
    -------
    OnBench or None
        The same build with its years; None where it was edited meanwhile, or nothing is awaited.
    """
    if bench.almanac is None or not seen.assessment.living.is_awaited:
        return None
    made = assess(seen.build, almanac=bench.almanac).living
    lying = bench.lying(seen.build_id)
    with lying.lock:
        now = lying.now
        if now is None or now.event != seen.event:
            return None
        if now.assessment.living.is_awaited:
            handed = replace(bench.almanac, shelf=_Handed(made=made))
            whole = assess(now.build, lying.stages, handed)
            lying.now = replace(now, assessment=whole, verdict=verdict(whole))
        return lying.now


@dataclass(frozen=True, kw_only=True, slots=True)
class _Handed:
    """A shelf that holds the one year that was just computed."""

    made: Living

    def take(self, key: str) -> Living | None:
        return self.made if key else None

    def put(self, key: str, made: Living) -> None:
        assert key
        assert made is self.made
