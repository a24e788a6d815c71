"""Many findings of one rule told as one: the case nearest its limit, and how many more there are.

A rule that judges each fitting is met dozens of times in one build.  Whoever shows it needs the
one case that could break first; the others are met with more to spare.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from coachwright.model.finding import Finding, Outcome

TOLD_TOGETHER = frozenset({Outcome.MET, Outcome.NOT_APPLICABLE})
"""Outcomes of which one case may stand for all; what is broken or unknown is told one by one."""


@dataclass(frozen=True, kw_only=True, slots=True)
class FindingGroup:
    """The findings of one rule with one outcome in one unit.

    Attributes
    ----------
    nearest
        The case with the smallest margin; of equal ones the first.  Where nothing was judged, the
        first.
    others
        The rest, in the order in which they were found.
    """

    nearest: Finding
    others: tuple[Finding, ...]

    @property
    def more(self) -> int:
        """How many cases there are besides the nearest."""
        return len(self.others)


def grouped(
    findings: Iterable[Finding], together: frozenset[Outcome] = TOLD_TOGETHER
) -> tuple[FindingGroup, ...]:
    """Return findings with those of one rule, outcome and unit told together.

    Parameters
    ----------
    findings
        In any order; each group stands where its first finding stood.
    together
        Outcomes of which one case stands for all; findings of other outcomes stay alone.

    Returns
    -------
    tuple of FindingGroup
        Every finding is in exactly one of them.

    Notes
    -----
    Margins in different units cannot be compared, so a rule that judges in two units makes two
    groups.  The margin is compared as it is, not as a share of the limit.
    """
    gathered: dict[tuple[object, ...], list[Finding]] = {}
    for number, finding in enumerate(findings):
        alone = finding.outcome not in together
        key = (finding.rule, finding.outcome, finding.unit, number if alone else -1)
        gathered.setdefault(key, []).append(finding)
    return tuple(_group(found) for found in gathered.values())


def _group(found: list[Finding]) -> FindingGroup:
    place = min(range(len(found)), key=lambda number: _nearness(found[number]))
    return FindingGroup(nearest=found[place], others=tuple(found[:place] + found[place + 1 :]))


def _nearness(finding: Finding) -> tuple[bool, float]:
    """Return what sorts the nearest first; a case without a margin stands behind the others."""
    return finding.margin is None, finding.margin or 0.0
