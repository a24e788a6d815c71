"""A finding's figures for a reader: value and limit never look alike where they differ."""

from dataclasses import dataclass

from coachwright.model.finding import Finding
from coachwright.units import difference_unit, shown

_MOST_MORE_DIGITS = 3


@dataclass(frozen=True, kw_only=True, slots=True)
class Compared:
    """Value, limit and margin of a finding with their units; "unknown" where there is none."""

    value: str
    limit: str
    margin: str


def compared(finding: Finding, system: str) -> Compared:
    """Return a finding's figures with as many digits as tell its value and its limit apart.

    Parameters
    ----------
    finding
        Of any outcome.
    system
        ``"metric"`` or ``"us"``.

    Notes
    -----
    Nothing against 1 mm is 0.00 in against 0.04 in, and not 0.0 in against 0.0 in.  The margin has
    the same digits; that of two temperatures is a difference and has no zero point.
    """
    more_digits = _digits_wanted(finding, system)
    return Compared(
        value=shown(finding.value, finding.unit, system, more_digits=more_digits),
        limit=shown(finding.limit, finding.unit, system, more_digits=more_digits),
        margin=shown(
            finding.margin, difference_unit(finding.unit), system, more_digits=more_digits
        ),
    )


def _digits_wanted(finding: Finding, system: str) -> int:
    """Return how many digits more than usual tell value and limit apart; 0 where none do."""
    value, limit, unit = finding.value, finding.limit, finding.unit
    if value is None or limit is None or value == limit:
        return 0
    for more_digits in range(_MOST_MORE_DIGITS + 1):
        said = (shown(each, unit, system, more_digits=more_digits) for each in (value, limit))
        if len(set(said)) == 2:  # noqa: PLR2004  # the two of them
            return more_digits
    return 0
