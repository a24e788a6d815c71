"""Compose the disciplines: everything computed from one build.

This is the only place that knows all disciplines.  `assess` is pure; a `Stages` keeps the results
of earlier calls by the digest of what each stage read, so that an edit computes only what it
touches.  The coupled year needs the weather of the build's sites: an `Almanac` gives it, and may
hand in a year that was computed before; without one the years are said to be missing.
"""

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, Protocol, TypeVar, cast

from pydantic_core import to_json

from coachwright.electrics import rules as electrics_rules
from coachwright.electrics import stage as electrics_stage
from coachwright.electrics.model import Electrics
from coachwright.errors import UnknownName
from coachwright.layout import rules as layout_rules
from coachwright.layout import stage as layout_stage
from coachwright.layout.model import Layout
from coachwright.living import rules as living_rules
from coachwright.living.model import AWAITED, NOT_ASKED, Living, without_years
from coachwright.living.reads import reads
from coachwright.model.build import Build
from coachwright.model.finding import Finding, Outcome, Rule, Severity, apply_rules
from coachwright.model.working import Figure
from coachwright.road import rules as road_rules
from coachwright.road import stage as road_stage
from coachwright.road.model import Road
from coachwright.water import rules as water_rules
from coachwright.water import stage as water_stage
from coachwright.water.model import Water
from coachwright.weights import rules as weights_rules
from coachwright.weights import stage as weights_stage
from coachwright.weights.model import Weights
from coachwright.wishes import rules as wishes_rules
from coachwright.wishes import stage as wishes_stage
from coachwright.wishes.model import Wishes

if TYPE_CHECKING:
    from coachwright.climate.arrays import SiteArrays
    from coachwright.living.site_year import AtSite

R = TypeVar("R")

HEADLINE: tuple[str, ...] = (
    "layout.aisle-cab-to-sliding-door",
    "weights.total-travelling",
    "weights.payload-left",
    "weights.front-axle-left",
    "weights.rear-axle-left",
    "weights.cg-height",
    "road.departure-angle",
    "electrics.usable-energy",
    "electrics.daily-balance-summer",
    "electrics.daily-balance-winter",
    "electrics.independence-summer",
    "electrics.independence-winter",
    "living.nine-of-ten-days",
    "living.five-of-ten-days",
    "water.days",
)
"""The figures that a designer keeps in view, in the order shown."""

_STEADY: frozenset[str] = frozenset(
    {"electrics.independence-summer", "electrics.independence-winter"}
)
_PROMISED: frozenset[str] = frozenset({"living.nine-of-ten-days", "living.five-of-ten-days"})
"""Stand in the headline in place of the steady estimate, as soon as there is a year."""


@dataclass(frozen=True, kw_only=True, slots=True)
class BuildSummary:
    """Which build was assessed."""

    name: str
    customer: str
    revision: str
    digest: str
    vehicle: str
    vehicle_name: str
    jurisdiction: str
    standard: str
    options: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Assessment:
    """Everything computed from one build.

    Attributes
    ----------
    findings
        Worst first: broken stops, broken cautions, broken notes, unknown, met, not applicable.
    figures
        Every figure of every discipline, in the order of the disciplines.
    headline
        Those of `HEADLINE`.
    """

    build: Build
    layout: Layout
    weights: Weights
    road: Road
    electrics: Electrics
    water: Water
    wishes: Wishes
    living: Living
    findings: tuple[Finding, ...]
    figures: tuple[Figure, ...]
    headline: tuple[Figure, ...]

    @property
    def summary(self) -> BuildSummary:
        """Which build this is."""
        build = self.build
        return BuildSummary(
            name=build.name,
            customer=build.customer,
            revision=build.revision,
            digest=build.digest,
            vehicle=build.vehicle.id,
            vehicle_name=build.vehicle.name,
            jurisdiction=str(build.brief.jurisdiction),
            standard=build.standard,
            options=build.options,
        )

    @property
    def figures_here(self) -> tuple[Figure, ...]:
        """The figures without the statements of other jurisdictions than the build's."""
        elsewhere = self.weights.of_elsewhere(str(self.build.brief.jurisdiction))
        return tuple(figure for figure in self.figures if figure.name not in elsewhere)

    def figure(self, name: str) -> Figure:
        """Return one figure.

        Raises
        ------
        UnknownName
            Where there is no such figure.
        """
        for figure in self.figures:
            if figure.name == name:
                return figure
        raise UnknownName("figure", name, [figure.name for figure in self.figures])


@dataclass(slots=True)
class Stages:
    """Results of earlier assessments, by stage and digest of what was read; the newest stay."""

    most: int = 64
    _kept: dict[str, Any] = field(default_factory=dict)

    def result(self, key: str, compute: Callable[[], R]) -> R:
        """Return the kept result under a key, or compute and keep it."""
        if key in self._kept:
            return cast("R", self._kept[key])
        made = compute()
        self._kept[key] = made
        while len(self._kept) > self.most:
            del self._kept[next(iter(self._kept))]
        return made

    def kept(self, key: str) -> Any:
        """Return what is kept under a key, or None."""
        return self._kept.get(key)


class Shelf(Protocol):
    """Where years are kept from one start of the program to the next."""

    def take(self, key: str) -> Living | None:
        """Return what is kept under a key, or None."""

    def put(self, key: str, made: Living) -> None:
        """Keep a result under a key."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Almanac:
    """What the coupled year needs from outside.

    Attributes
    ----------
    arrays_of
        Gives a site's arrays by its id.
    mark
        Of everything that the arrays rest on besides the site itself; another makes years anew.
    shelf
        Where years are kept; None for nowhere.
    wait
        Compute what is not kept; else say that it is awaited.
    began
        Called before something is computed that takes time.
    changes
        Say what some changes would do at the first site, too: five years more.
    """

    arrays_of: "Callable[[str], SiteArrays]"
    mark: str
    shelf: Shelf | None = None
    wait: bool = True
    began: Callable[[], None] = lambda: None
    changes: bool = False


RULES: dict[str, tuple[Rule, ...]] = {
    "layout": layout_rules.RULES,
    "weights": weights_rules.RULES,
    "road": road_rules.RULES,
    "electrics": electrics_rules.RULES,
    "water": water_rules.RULES,
    "wishes": wishes_rules.RULES,
    "living": living_rules.RULES,
}
"""Every rule, by discipline."""


def assess(
    build: Build, stages: Stages | None = None, almanac: Almanac | None = None
) -> Assessment:
    """Return everything computed from a build.

    Parameters
    ----------
    build
        With everything found.
    stages
        Kept results of earlier assessments; those of stages that read the same are used again.
    almanac
        Of the weather; without one there are no years.
    """
    keep = _keeper(build, stages)
    layout = keep("layout", lambda: layout_stage.stage(build))
    weights = keep("weights", lambda: weights_stage.stage(build))
    road = keep("road", lambda: road_stage.stage(build, weights))
    electrics = keep("electrics", lambda: electrics_stage.stage(build))
    water = keep("water", lambda: water_stage.stage(build))
    wishes = keep("wishes", lambda: wishes_stage.stage(build))
    results: dict[str, Any] = {
        "layout": layout,
        "weights": weights,
        "road": road,
        "electrics": electrics,
        "water": water,
        "wishes": wishes,
    }
    results["living"] = _living(build, results, stages, almanac)
    figures = tuple(figure for result in results.values() for figure in result.figures)
    by_name = {figure.name: figure for figure in figures}
    return Assessment(
        build=build,
        layout=layout,
        weights=weights,
        road=road,
        electrics=electrics,
        water=water,
        wishes=wishes,
        living=results["living"],
        findings=_findings(build, results),
        figures=figures,
        headline=_headline(by_name),
    )


def _headline(by_name: Mapping[str, Figure]) -> tuple[Figure, ...]:
    """Return the figures kept in view: the promise where there is a year, else the estimate."""
    promised = any(name in by_name and by_name[name].value is not None for name in _PROMISED)
    left_out = _STEADY if promised else _PROMISED
    return tuple(by_name[name] for name in HEADLINE if name in by_name and name not in left_out)


def _living(
    build: Build, results: Mapping[str, Any], stages: Stages | None, almanac: Almanac | None
) -> Living:
    """Return the coupled year: as kept in memory, from the shelf, or computed."""
    if almanac is None:
        return without_years(NOT_ASKED)
    read = to_json(reads(build, results["layout"], results["water"]), fallback=repr)
    asked = f"{almanac.mark} {almanac.changes}".encode()
    key = f"living:{hashlib.sha256(read + asked).hexdigest()}"
    kept: Living | None = None if stages is None else stages.kept(key)
    if kept is None and almanac.shelf is not None:
        kept = almanac.shelf.take(key)
    if kept is None and not almanac.wait:
        return without_years(AWAITED)
    made = kept or _computed(build, results, almanac, stages)
    if stages is not None:
        stages.result(key, lambda: made)
    if kept is None and almanac.shelf is not None:
        almanac.shelf.put(key, made)
    return made


def _computed(
    build: Build, results: Mapping[str, Any], almanac: Almanac, stages: Stages | None
) -> Living:
    """Compute the coupled year; its compiler and its arrays are loaded only now."""
    from coachwright.living import stage as living_stage  # noqa: PLC0415

    if build.sites:
        almanac.began()
    places = tuple(
        place_of(build, results["layout"], site.id, almanac, stages) for site in build.sites
    )
    electrics, water = results["electrics"], results["water"]
    made = living_stage.stage(build, electrics, water, places)
    if not almanac.changes or not places:
        return made
    return replace(made, changes=living_stage.what_if(build, electrics, water, places[0]))


def place_of(
    build: Build, layout: Layout, site_id: str, almanac: Almanac, stages: Stages | None = None
) -> "AtSite":
    """Return a site as the coupled year takes it: its arrays, its sun on the panels, its days.

    Parameters
    ----------
    build
        With everything found.
    layout
        Of that build.
    site_id
        The site.
    almanac
        Of the weather.
    stages
        Kept results; the sun on the panels is used again until the roof is another.
    """
    from coachwright.climate import design_day  # noqa: PLC0415
    from coachwright.climate import stage as climate_stage  # noqa: PLC0415
    from coachwright.living.site_year import AtSite  # noqa: PLC0415

    arrays = almanac.arrays_of(site_id)
    keep = Stages() if stages is None else stages
    panels = tuple(build.having("solar_panel"))
    roof = to_json((panels, layout.outside.panels, layout.outside.higher), fallback=repr)
    key = f"sun:{site_id}:{hashlib.sha256(roof + almanac.mark.encode()).hexdigest()}"
    return AtSite(
        site=site_id,
        sky=arrays,
        sun_w=keep.result(key, lambda: climate_stage.power_w(build, layout, arrays)),
        cold=design_day.cold_night(weather=arrays.weather),
        hot=design_day.hot_day(weather=arrays.weather),
    )


class _Keep(Protocol):
    def __call__(self, name: str, compute: Callable[[], R]) -> R: ...


def _keeper(build: Build, stages: Stages | None) -> _Keep:
    """Return a function that computes a stage, or finds it where results are kept."""
    if stages is None:
        return lambda _name, compute: compute()
    kept = stages
    digest = hashlib.sha256(to_json(_all_but_words(build), fallback=repr)).hexdigest()
    return lambda name, compute: kept.result(f"{name}:{digest}", compute)


def _all_but_words(build: Build) -> tuple[Any, ...]:
    """Return what the disciplines of this floor read: not names, stories and decisions."""
    return (
        build.brief,
        build.vehicle,
        build.vehicle_spare_removed,
        build.waivers,
        build.fittings,
        build.finishes,
        build.water_runs,
        build.waivers,
        build.ticket,
        build.conflicts,
        build.sites,
    )


def _findings(build: Build, results: dict[str, Any]) -> tuple[Finding, ...]:
    made = [
        finding
        for discipline, rules in RULES.items()
        for finding in apply_rules(rules, build, results[discipline])
    ]
    return tuple(sorted(made, key=_rank))


_OUTCOMES = (Outcome.BROKEN, Outcome.UNKNOWN, Outcome.MET, Outcome.NOT_APPLICABLE)
_SEVERITIES = (Severity.STOP, Severity.CAUTION, Severity.NOTE)


def _rank(finding: Finding) -> tuple[int, int]:
    return _OUTCOMES.index(finding.outcome), _SEVERITIES.index(finding.severity)
