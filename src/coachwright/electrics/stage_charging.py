"""Take the chargers out of a build: what each source can put into the bank."""

from coachwright import reference
from coachwright.electrics.charging import (
    ChargeTime,
    ShoreSupply,
    alternator_share_a,
    charge_time,
    converter_input_a,
    converter_output_a,
    limited,
    shore_supply,
)
from coachwright.electrics.model import Bank, ChargeLimit, LoadPeak, Season, ShoreDemand, Supply
from coachwright.electrics.stage_array import outputs
from coachwright.electrics.stage_loads import season_peak_w
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.facets import DcdcCharger, ShoreCharger
from coachwright.model.working import Given, Working

SUN, DRIVING, HOOKUP = "sun", "driving", "hook-up"
FULL_FRAC = 1.0
_COLD = "too cold to charge"


def converters(build: Build) -> list[DcdcCharger]:
    """Return the DC-DC chargers of a build."""
    return [
        fitted.part.dcdc_charger
        for fitted in build.having("dcdc_charger")
        if fitted.part.dcdc_charger is not None
    ]


def shore_chargers(build: Build) -> list[ShoreCharger]:
    """Return the shore chargers of a build."""
    return [
        fitted.part.shore_charger
        for fitted in build.having("shore_charger")
        if fitted.part.shore_charger is not None
    ]


def alternator_a(build: Build) -> float:
    """Return what the vehicle's alternator can spare for the house [A]."""
    alternator = build.vehicle.alternator
    return alternator_share_a(
        rated_a=alternator.rated_a,
        share_frac=reference.limit("electrics.alternator-share").value,
        cruise_frac=alternator.cruise_frac,
        vehicle_load_a=alternator.vehicle_load_a,
    )


def converter_demand_a(build: Build, bank: Bank | None) -> float:
    """Return what all DC-DC chargers together take from the vehicle at full current [A]."""
    return sum(
        converter_input_a(
            output_a=one.charge_limit_a,
            output_v=bank.nominal_v if bank else one.battery_v,
            input_v=build.vehicle.alternator.system_v,
            efficiency_frac=one.efficiency_frac,
        )
        for one in converters(build)
    )


def supply(build: Build) -> ShoreSupply:
    """Return the shore supply taken for a build; its own inlet is not in the record."""
    current, voltage = "electrics.shore-current-europe", "electrics.shore-voltage-europe"
    if build.brief.jurisdiction is Jurisdiction.US:
        current, voltage = "electrics.shore-current-us", "electrics.shore-voltage-us"
    return shore_supply(
        current_a=reference.limit(current).value,
        voltage_v=reference.limit(voltage).value,
        continuous_factor=reference.limit("electrics.continuous-factor").value,
    )


def shore_demand(build: Build, peaks: tuple[LoadPeak, ...], bank: Bank | None) -> ShoreDemand:
    """Return shore supply against chargers and alternating-current loads at once."""
    found = supply(build)
    charging = sum(
        converter_input_a(
            output_a=one.charge_limit_a,
            output_v=bank.charge_v if bank else one.battery_v,
            input_v=1.0,
            efficiency_frac=one.efficiency_frac,
        )
        for one in shore_chargers(build)
    )
    loads = max(
        sum(season_peak_w(peak, season) for peak in peaks if peak.supply is not Supply.DC)
        for season in Season
    )
    return ShoreDemand(
        supply_w=found.supply_w,
        continuous_w=found.continuous_w,
        demand_w=charging + loads,
        working=_demand_working(charging, loads),
    )


def _demand_working(charging_w: float, loads_w: float) -> Working:
    return Working(
        expression="P = P_charge + ΣP_ac",
        given=(
            Given(
                symbol="P_charge",
                meaning="shore chargers at full current",
                value=charging_w,
                unit="W",
                source="shore chargers",
            ),
            Given(
                symbol="ΣP_ac",
                meaning="alternating-current loads of one season at once",
                value=loads_w,
                unit="W",
                source="parts' modes",
            ),
        ),
        result=charging_w + loads_w,
        unit="W",
        references=("nec-210",),
        note="Volt-amperes counted as watts; every such load in its largest mode.",
    )


def charge_limits(build: Build, bank: Bank, season: Season) -> tuple[ChargeLimit, ...]:
    """Return what sun, driving and hook-up can put into the bank in one season."""
    return (
        _sun(build, bank, season),
        _driving(build, bank, season),
        _hookup(build, bank, season),
    )


def _sun(build: Build, bank: Bank, season: Season) -> ChargeLimit:
    given = outputs(build, bank, season, with_folding=True).values()
    if not given:
        return _limit(bank, season, SUN, {"no panel on a charge controller": 0.0}, charger_a=0.0)
    offers = {
        "panels": sum(one.offered_w for one in given) / bank.nominal_v,
        "charge controller": sum(one.power_w for one in given) / bank.nominal_v,
    }
    charger = sum(
        fitted.part.solar_controller.charge_limit_a
        for fitted in build.having("solar_controller")
        if fitted.part.solar_controller is not None
    )
    return _limit(bank, season, SUN, offers, charger_a=charger)


def _driving(build: Build, bank: Bank, season: Season) -> ChargeLimit:
    found = converters(build)
    if not found:
        return _limit(bank, season, DRIVING, {"no DC-DC charger": 0.0}, charger_a=0.0)
    charger = sum(one.charge_limit_a for one in found)
    offers = {
        "alternator": converter_output_a(
            input_a=alternator_a(build),
            output_v=bank.nominal_v,
            input_v=build.vehicle.alternator.system_v,
            efficiency_frac=min(one.efficiency_frac for one in found),
        ),
        "DC-DC charger": charger,
    }
    return _limit(bank, season, DRIVING, offers, charger_a=charger)


def _hookup(build: Build, bank: Bank, season: Season) -> ChargeLimit:
    found = shore_chargers(build)
    if not found:
        return _limit(bank, season, HOOKUP, {"no shore charger": 0.0}, charger_a=0.0)
    charger = sum(one.charge_limit_a for one in found)
    offers = {
        "shore supply": converter_output_a(
            input_a=supply(build).continuous_w,
            output_v=bank.nominal_v,
            input_v=1.0,
            efficiency_frac=min(one.efficiency_frac for one in found),
        ),
        "shore charger": charger,
    }
    return _limit(bank, season, HOOKUP, offers, charger_a=charger)


def _limit(
    bank: Bank, season: Season, source: str, offers_a: dict[str, float], *, charger_a: float
) -> ChargeLimit:
    first = next(iter(offers_a.values()))
    all_offers = offers_a | {"battery": bank.charge_limit_a}
    if season is Season.WINTER and bank.charge_locked:
        all_offers[_COLD] = 0.0
    found = limited(offers_a=all_offers)
    full = _full_charge(bank, found.current_a)
    given = tuple(
        Given(symbol=f"I{number}", meaning=name, value=value, unit="A")
        for number, (name, value) in enumerate(all_offers.items(), start=1)
    )
    return ChargeLimit(
        source=source,
        season=season,
        offered_a=first,
        charger_a=charger_a,
        current_a=found.current_a,
        power_w=found.current_a * bank.nominal_v,
        limited_by=found.limited_by,
        full_charge_h=full.time_h if full else None,
        full_charge_working=full.working if full else None,
        working=Working(
            expression=f"I = min({', '.join(one.symbol for one in given)})",
            given=given,
            result=found.current_a,
            unit="A",
            references=("part-maker-data", "shop-practice-electrics"),
            note=f"Held back by: {found.limited_by}.",
        ),
    )


def _full_charge(bank: Bank, current_a: float) -> ChargeTime | None:
    if current_a <= 0.0:
        return None
    return charge_time(
        capacity_ah=bank.capacity_ah,
        from_frac=reference.limit("electrics.charge-from").value,
        to_frac=FULL_FRAC,
        charge_a=current_a,
        efficiency_frac=bank.charge_efficiency_frac,
    )
