"""Take the panels and their controllers out of a build."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright import reference
from coachwright.electrics.model import Bank, ControllerArray, Season
from coachwright.electrics.sizing import clipping
from coachwright.electrics.solar import (
    ArrayOutput,
    array_output,
    flat_power_w,
    vehicle_loss_frac,
    winter_day_degc,
)
from coachwright.electrics.strings import (
    ColdVoltage,
    circuit_current,
    cold_voltage_by_coefficient,
    cold_voltage_by_table,
    reverse_current_a,
    series_count,
)
from coachwright.errors import OutOfRange
from coachwright.model.build import Build, Fitted
from coachwright.model.facets import SolarController, SolarPanel


@dataclass(frozen=True, kw_only=True, slots=True)
class Group:
    """One controller and the panels dealt out to it."""

    name: str
    controller: SolarController
    panels: tuple[tuple[str, SolarPanel], ...]

    def in_strings(self, bank: Bank) -> "Strings":
        """Return how the panels are joined on a bank."""
        most = min((panel.rated_voltage_v for _, panel in self.panels), default=bank.charge_v)
        series = series_count(rated_v=most, charge_v=bank.charge_v)
        return Strings(
            series=series,
            parallel=len(self.panels) // series,
            spare=len(self.panels) % series,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Strings:
    """Panels in a string, strings side by side, panels left over."""

    series: int
    parallel: int
    spare: int

    def joined(self, panels: tuple[tuple[str, SolarPanel], ...]) -> tuple[SolarPanel, ...]:
        """Return the panels that stand in complete strings."""
        return tuple(panel for _, panel in panels[: self.series * self.parallel])


def panels(build: Build) -> Iterator[tuple[Fitted, SolarPanel]]:
    """Yield the panels of a build."""
    for fitted in build.having("solar_panel"):
        if fitted.part.solar_panel is not None:
            yield fitted, fitted.part.solar_panel


def groups(build: Build) -> tuple[Group, ...]:
    """Return the controllers with their panels, dealt out in turn in the order of the file."""
    controllers = [
        (fitted.name, fitted.part.solar_controller)
        for fitted in build.having("solar_controller")
        if fitted.part.solar_controller is not None
    ]
    dealt = [(fitted.name, panel) for fitted, panel in panels(build)]
    return tuple(
        Group(name=name, controller=controller, panels=tuple(dealt[at :: len(controllers)]))
        for at, (name, controller) in enumerate(controllers)
    )


def array_of(build: Build, group: Group, bank: Bank | None) -> ControllerArray:
    """Return the array on one controller."""
    joined = group.in_strings(bank) if bank else Strings(series=1, parallel=0, spare=0)
    counted = joined.joined(group.panels)
    factor = reference.limit("electrics.pv-current-factor").value
    short_a = max((panel.short_circuit_a for panel in counted), default=0.0)
    current = circuit_current(
        short_circuit_a=short_a, parallel_count=joined.parallel, factor=factor
    )
    rated_w = sum(panel.rated_w for panel in counted)
    wanted = bank and clipping(
        array_w=rated_w, system_v=bank.nominal_v, limit_a=group.controller.charge_limit_a
    )
    cold = _cold_voltage(counted, joined.series, build.brief.climate.cold_night_degc)
    fuses = [panel.series_fuse_a for panel in counted if panel.series_fuse_a is not None]
    volts = [panel.rated_voltage_v for panel in counted]
    return ControllerArray(
        controller=group.name,
        panels=tuple(name for name, _ in group.panels),
        rated_w=rated_w,
        series_count=joined.series,
        parallel_count=joined.parallel,
        spare_count=joined.spare,
        cold_open_circuit_v=cold.voltage_v if cold else None,
        by_maker=all(panel.voltage_coefficient_frac_per_k is not None for panel in counted),
        input_limit_v=group.controller.input_limit_v,
        circuit_current_a=current.most_a,
        reverse_current_a=reverse_current_a(
            short_circuit_a=short_a, parallel_count=joined.parallel, factor=factor
        ),
        series_fuse_a=min(fuses) if counted and len(fuses) == len(counted) else None,
        wanted_a=wanted.wanted_a if wanted else None,
        charge_limit_a=group.controller.charge_limit_a,
        unlike_frac=1.0 - min(volts) / max(volts) if volts else 0.0,
        voltage_working=cold.working if cold else None,
        current_working=current.working,
    )


def outputs(
    build: Build, bank: Bank, season: Season, *, with_folding: bool
) -> dict[str, ArrayOutput]:
    """Return what each controller gives in full sun, by its name."""
    loss = vehicle_loss_frac()
    found: dict[str, ArrayOutput] = {}
    for group in groups(build):
        counted = group.in_strings(bank).joined(group.panels)
        warm = sum(
            _warm_w(build, panel, season) for panel in counted if with_folding or not panel.folding
        )
        found[group.name] = array_output(
            warm_power_w=warm,
            loss_frac=loss,
            efficiency_frac=group.controller.efficiency_frac,
            limit_w=group.controller.charge_limit_a * bank.nominal_v,
        )
    return found


def _warm_w(build: Build, panel: SolarPanel, season: Season) -> float:
    climate = build.brief.climate
    air = climate.hot_day_degc
    if season is Season.WINTER:
        air = winter_day_degc(
            cold_night_degc=climate.cold_night_degc, hot_day_degc=climate.hot_day_degc
        )
    return flat_power_w(
        rated_w=panel.rated_w,
        air_degc=air,
        wind_m_per_s=reference.limit("electrics.design-wind").value,
        bonded=panel.bonded,
        coefficient_frac_per_k=panel.power_coefficient_frac_per_k,
    )


def _cold_voltage(
    counted: tuple[SolarPanel, ...], series: int, cold_degc: float
) -> ColdVoltage | None:
    """Return the highest cold voltage of any string; None where the table ends before."""
    found = []
    for panel in counted:
        coefficient = panel.voltage_coefficient_frac_per_k
        try:
            found.append(
                cold_voltage_by_table(
                    open_circuit_v=panel.open_circuit_v, series_count=series, cold_degc=cold_degc
                )
                if coefficient is None
                else cold_voltage_by_coefficient(
                    open_circuit_v=panel.open_circuit_v,
                    series_count=series,
                    coefficient_frac_per_k=coefficient,
                    cold_degc=cold_degc,
                )
            )
        except OutOfRange:
            return None
    return max(found, key=lambda one: one.voltage_v, default=None)
