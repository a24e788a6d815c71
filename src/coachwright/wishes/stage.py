"""Take the build's seats, beds, prices and wishes to their subjects."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build, Fitted
from coachwright.model.facets import Price
from coachwright.model.working import Figure
from coachwright.reference import limit
from coachwright.wishes.beds import Bunk, berths, sleepers
from coachwright.wishes.model import (
    BedFit,
    PartsPrice,
    PricedPart,
    SittingPlace,
    WantedFacet,
    Wishes,
)
from coachwright.wishes.price import Item, sheets, total
from coachwright.wishes.seats import Count, belted_seats, facing

CURRENCIES = {Jurisdiction.US: "USD", Jurisdiction.EU: "EUR", Jurisdiction.UK: "GBP"}
"""Where the brief states no budget."""


def stage(build: Build) -> Wishes:
    """Return what the build gives of what its brief asks for.

    Parameters
    ----------
    build
        With everything found.

    Returns
    -------
    Wishes
        Results and headline figures.
    """
    places = (*_factory_places(build), *_fitted_places(build))
    usable = [place for place in places if place.usable]
    belted = belted_seats(
        factory=sum(place.factory for place in usable),
        fitted=sum(not place.factory for place in usable),
    )
    bunks = _bunks(build)
    slept = berths(bunks=bunks)
    return Wishes(
        figures=(
            _figure("wishes.belted-seats", "Seats with belts", belted),
            _figure("wishes.berths", "Berths", slept),
        ),
        places=places,
        belted_wanted=sum(bool(traveller.seat) for traveller in build.brief.travellers),
        belted=belted.count,
        berths_wanted=sum(traveller.berth_wanted for traveller in build.brief.travellers),
        berths=slept.count,
        beds=_beds(build, bunks),
        must_have=tuple(
            WantedFacet(facet=facet, count=len(tuple(build.having(facet))))
            for facet in build.brief.must_have
        ),
        price=_price(build),
        smoke_alarms=tuple(
            f.name for f in build.fittings if f.part.detector and "smoke" in f.part.detector.senses
        ),
        extinguishers=tuple(f.name for f in build.having("extinguisher")),
    )


def _figure(name: str, label: str, count: Count) -> Figure:
    return Figure(name=name, label=label, value=count.count, unit="count", working=count.working)


def _taken_by(build: Build, name: str) -> str:
    return next((t.name for t in build.brief.travellers if t.seat == name), "")


def _factory_places(build: Build) -> Iterator[SittingPlace]:
    for seat in build.vehicle.seats:
        yield SittingPlace(
            name=seat.name,
            factory=True,
            belt=seat.belt,
            facing="forward",
            travel_seat=True,
            usable=seat.belt != "none",
            evidence="the vehicle's own",
            taken_by=_taken_by(build, seat.name),
        )


def _fitted_places(build: Build) -> Iterator[SittingPlace]:
    for fitted in build.fittings:
        seat = fitted.part.seat
        if seat is None:
            continue
        way = facing(
            faces_deg=seat.faces_deg,
            turn_deg=fitted.fitting.turn_deg,
            mirror=fitted.fitting.mirror,
            tolerance_deg=limit("wishes.facing-tolerance").value,
        )
        barred = way == "side" and build.brief.jurisdiction is Jurisdiction.EU
        for place in seat.places:
            name = f"{fitted.name}.{place.name}"
            yield SittingPlace(
                name=name,
                factory=False,
                belt=seat.belt,
                facing=way,
                travel_seat=seat.travel_seat,
                usable=seat.travel_seat and seat.belt != "none" and not barred,
                evidence=seat.anchorage_evidence,
                taken_by=_taken_by(build, name),
            )


def _bunks(build: Build) -> tuple[Bunk, ...]:
    return tuple(
        Bunk(name=fitted.name, length_mm=bed.length_mm, berths=bed.berths)
        for fitted in build.fittings
        if (bed := fitted.part.bed) is not None
    )


def _beds(build: Build, bunks: tuple[Bunk, ...]) -> tuple[BedFit, ...]:
    statures_mm = [t.stature_mm for t in build.brief.travellers if t.berth_wanted]
    slept = sleepers(bunks=bunks, statures_mm=statures_mm)
    return tuple(
        BedFit(
            name=bunk.name,
            berths=bunk.berths,
            length_mm=bunk.length_mm,
            longest_stature_mm=sleeping.longest_stature_mm,
        )
        for bunk, sleeping in zip(bunks, slept, strict=True)
    )


def _price(build: Build) -> PartsPrice:
    budget = build.brief.budget
    currency = budget.currency if budget else CURRENCIES[build.brief.jurisdiction]
    items = (*_pieces(build, currency), *_sheet_goods(build, currency))
    summed = total(items=items)
    return PartsPrice(
        currency=currency,
        price_minor=summed.total_minor,
        known_minor=summed.known_minor,
        budget_minor=budget.amount_minor if budget else None,
        without_price=summed.without_price,
        items=tuple(
            PricedPart(name=item.name, count=item.count, price_minor=item.price_minor)
            for item in items
        ),
    )


def _price_minor(price: Price | None, currency: str) -> int | None:
    prices = price.price if price is not None else ()
    return next((money.amount_minor for money in prices if money.currency == currency), None)


def _pieces(build: Build, currency: str) -> Iterator[Item]:
    for fitted in build.fittings:
        yield _piece(fitted, currency)


def _piece(fitted: Fitted, currency: str) -> Item:
    return Item(name=fitted.name, count=1, price_minor=_price_minor(fitted.part.price, currency))


def _sheet_goods(build: Build, currency: str) -> Iterator[Item]:
    """Yield whole sheets of each finish's part, all its surfaces together."""
    parts = {layer.part.id: layer.part for layer in build.finishes}
    for part in parts.values():
        area_m2 = sum(f.finish.area_m2 for f in build.finishes if f.part.id == part.id)
        length_mm, width_mm, _ = part.body.size_mm
        priced = _price_minor(part.price, currency)
        if length_mm <= 0 or width_mm <= 0:
            yield Item(name=part.id, count=0, price_minor=None)
            continue
        count = sheets(area_m2=area_m2, length_mm=length_mm, width_mm=width_mm)
        yield Item(name=part.id, count=count, price_minor=priced)
