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
    value
        What it is worth to the search: its rated watts.
    mass_kg
        With its mounting.
    """

    name: str
    part: str
    turned: bool
    low_mm: tuple[float, float]
    high_mm: tuple[float, float]
    rated_w: float
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
    """

    name: str
    without_w: float
    cost_w: float
    proven: bool


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
