"""What the optimisers hand on."""

from dataclasses import dataclass

from coachwright.arrange.solving import Proof
from coachwright.model.build import Build, Fitting


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelPlace:
    """One solar panel on the roof.

    Attributes
    ----------
    name, part
        Reference name in the proposal, and id of the part.
    low_mm, high_mm
        Corners from above, x and y in the vehicle's axes.
    face_mm
        Height of its upper face.
    value
        What it is worth to the search: its rated watts, or its energy in steps of 10 Wh.
    mass_kg
        With its mounting.
    """

    name: str
    part: str
    turned: bool
    low_mm: tuple[float, float]
    high_mm: tuple[float, float]
    rated_w: float
    face_mm: float
    value: int
    mass_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class ObstacleCost:
    """What the roof could carry more without one obstacle.

    Attributes
    ----------
    without_w
        Best found without it.
    cost_w
        More than the proposal; at least this where `proven` is false.
    cost_value
        The same in what the search counts.
    cost_wh
        The same as energy; None where the search counts watts.
    """

    name: str
    without_w: float
    cost_w: float
    cost_value: int
    proven: bool
    cost_wh: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofEnergy:
    """What the proposed panels give at a site, before their controller.

    Attributes
    ----------
    by
        What the search counted: ``"year"`` or ``"month"``.
    month
        Name of the month that it counted; empty where it counted the year.
    counted_wh
        What the search counted, of all panels.
    year_wh, month_wh
        Of the build as it would be, every panel under all that stands higher, panels too.
    free_wh
        Of the year without any shade.
    present_wh
        Of the year with the panels that are there now.
    attribution, caution
        Of the site's weather.
    """

    site: str
    by: str
    month: str
    counted_wh: float
    year_wh: float
    month_wh: tuple[float, ...]
    free_wh: float
    present_wh: float
    attribution: str
    caution: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofPlan:
    """Solar panels proposed for a roof.

    Attributes
    ----------
    present_w
        Rated power of the panels that the build has on its roof now.
    removed
        Names of the panels and their mountings that the proposal replaces.
    fittings
        The new ones, ready for the build file.
    build
        The build with them.
    faults
        What an independent check of that build found; such a plan may not be used.
    cautions
        What it breaks that the build as it is does not.
    notes
        What the designer should know.
    energy
        Where the search counted energy at a site.
    """

    panels: tuple[PanelPlace, ...]
    total_w: float
    proof: Proof
    mass_kg: float
    present_w: float
    removed: tuple[str, ...]
    fittings: tuple[Fitting, ...]
    build: Build
    obstacles: tuple[ObstacleCost, ...]
    faults: tuple[str, ...]
    cautions: tuple[str, ...]
    notes: tuple[str, ...]
    energy: RoofEnergy | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ModulePlace:
    """Where a module stands in a floor plan.

    Attributes
    ----------
    wall
        ``"left"``, ``"right"`` or ``"middle"``.
    from_mm, to_mm
        Its front and rear, along the van.
    moved
        It stands elsewhere than in the build.
    turned
        How it is turned against the build: mirrored "left to right" or "front to rear", "half
        turned", "by 90 deg"; empty where it is not.
    """

    name: str
    wall: str
    from_mm: float
    to_mm: float
    moved: bool
    turned: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorMeasures:
    """What a floor plan is ranked by, measured on the build as it would be.

    Attributes
    ----------
    aisle_mm
        Narrowest place on the way from its beginning to its end.
    axle_spare_kg
        Left on the axle that has less, travelling; None where unknown.
    plumbing_mm, cable_mm
        Runs from the pump or tank to what needs water, and from the battery to heavy loads, along
        and across the van.
    storage_l
        In the cabinets.
    counter_mm
        Longest free worktop, over cabinets side by side.
    room_mm
        Longest stretch of wall on which a further cabinet could stand; 0 where none is long
        enough.
    """

    aisle_mm: float
    axle_spare_kg: float | None
    plumbing_mm: float
    cable_mm: float
    storage_l: float
    counter_mm: float
    room_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorPlan:
    """One floor plan that passed its check.

    Attributes
    ----------
    points_count
        By which it is ranked.
    missing_points
        By so much a better plan could be ahead in what the solver counts; 0 where it is proven
        that there is none, apart from the plans found before it.
    fittings
        Those that are to be written otherwise, ready for the build file.
    build
        The build with them.
    cautions
        What it breaks that the build as it is does not.
    way_ends_mm
        Where its way through the van ends.
    present
        It is the build as it stands.
    """

    places: tuple[ModulePlace, ...]
    measures: FloorMeasures
    points_count: float
    missing_points: int
    proof: Proof
    fittings: tuple[Fitting, ...]
    build: Build
    cautions: tuple[str, ...]
    way_ends_mm: float
    present: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorProposal:
    """Floor plans for a build, best first, or the wishes that collide.

    Attributes
    ----------
    dropped
        For each plan that failed its check, what was found.
    conflict
        Wishes that cannot all be met, of which each is needed for that; empty where plans exist.
    complete
        There are no more clearly different plans.
    first_s, took_s
        Time to the first plan and altogether.
    """

    plans: tuple[FloorPlan, ...]
    dropped: tuple[tuple[str, ...], ...]
    conflict: tuple[str, ...]
    complete: bool
    first_s: float | None
    took_s: float
    notes: tuple[str, ...]
