"""Read an assessment in a person's own units: the same sheets as in the job pack, as strings."""

import dataclasses

from coachwright.assess import Assessment
from coachwright.papers.view_climate import ClimateView, climate_view
from coachwright.papers.view_energy import EnergyView, energy_view
from coachwright.papers.view_layout import LayoutView, layout_view
from coachwright.papers.view_water import WaterView, water_view
from coachwright.papers.view_weights import WeightView, weight_view
from coachwright.papers.view_year import YearView, year_view
from coachwright.papers.wording import in_words


def read_in(assessment: Assessment, system: str) -> Assessment:
    """Return an assessment whose sheets are in a system of units; nothing is computed anew.

    Parameters
    ----------
    assessment
        Of a build whose brief may say other units.
    system
        ``"metric"`` or ``"us"``.
    """
    build = assessment.build
    if build.brief.units == system:
        return assessment
    brief = build.brief.model_copy(update={"units": system})
    return dataclasses.replace(assessment, build=build.model_copy(update={"brief": brief}))


def layout_sheet(assessment: Assessment, system: str) -> LayoutView:
    """Return what the layout sheet says, in a system of units."""
    return in_words(layout_view(read_in(assessment, system)), system)


def weight_sheet(assessment: Assessment, system: str) -> WeightView:
    """Return what the weight statement says, in a system of units."""
    return in_words(weight_view(read_in(assessment, system)), system)


def energy_sheet(assessment: Assessment, system: str) -> EnergyView:
    """Return what the energy sheet says, in a system of units."""
    return in_words(energy_view(read_in(assessment, system)), system)


def water_sheet(assessment: Assessment, system: str) -> WaterView:
    """Return what the water sheet says, in a system of units."""
    return in_words(water_view(read_in(assessment, system)), system)


def climate_sheet(assessment: Assessment, system: str) -> ClimateView:
    """Return what the climate sheet says, in a system of units."""
    return in_words(climate_view(read_in(assessment, system)), system)


def year_sheet(assessment: Assessment, system: str) -> YearView:
    """Return what the energy through the year says, in a system of units."""
    return in_words(year_view(read_in(assessment, system)), system)
