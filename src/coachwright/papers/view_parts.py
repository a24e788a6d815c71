"""The parts list: position numbers, mass, price, and the sum as far as it is known."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.model.build import FinishLayer, Fitted, Mounting
from coachwright.model.money import Money
from coachwright.model.part import Part
from coachwright.papers.frame import FrameView, frame
from coachwright.papers.table import Pair
from coachwright.papers.wording import (
    MOUNTING_WORDS,
    NONE,
    positions,
    show,
    words_of,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class PartRow:
    """One fitting or finish."""

    position: str
    part: str
    reference: str
    fixed: str
    mass: str
    mass_from: str
    price: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PartsView:
    """Everything on the parts list."""

    frame: FrameView
    rows: tuple[PartRow, ...]
    finishes: tuple[PartRow, ...]
    sheets: str
    totals: tuple[Pair, ...]


def parts_view(assessment: Assessment) -> PartsView:
    """Return the parts list of a build."""
    build = assessment.build
    currency = assessment.wishes.price.currency
    number = positions(build)
    return PartsView(
        frame=frame(build, title="Parts list", cautions=("price", "load")),
        rows=tuple(
            _fitted(assessment, fitted, number[fitted.name], currency) for fitted in build.fittings
        ),
        finishes=tuple(
            _finish(assessment, layer, f"finish.{place}", currency)
            for place, layer in enumerate(build.finishes, start=1)
        ),
        sheets=_sheets(assessment),
        totals=tuple(_totals(assessment)),
    )


def price_of(part: Part, currency: str) -> Money | None:
    """Return a part's price to the customer in one currency; None where it is not known."""
    prices = part.price.price if part.price else ()
    return next((money for money in prices if money.currency == currency), None)


def _price(part: Part, currency: str) -> str:
    money = price_of(part, currency)
    return money.shown() if money else "unknown"


def _fitted(assessment: Assessment, fitted: Fitted, position: str, currency: str) -> PartRow:
    added_kg = assessment.weights.added_by_kg(fitted.name)
    return PartRow(
        position=position,
        part=fitted.part.name,
        reference=words_of(fitted.name),
        fixed=MOUNTING_WORDS[fitted.fitting.mounting],
        mass=NONE if added_kg is None else show(added_kg, "kg", assessment.build.brief.units),
        mass_from="not counted" if added_kg is None else _mass_from(fitted),
        price=_price(fitted.part, currency),
    )


def _mass_from(fitted: Fitted) -> str:
    if fitted.fitting.mounting is Mounting.WHEELS:
        return "over the vehicle's own"
    if fitted.fitting.measured_mass_kg is not None:
        return "weighed here"
    return fitted.part.body.source


def _finish(assessment: Assessment, layer: FinishLayer, item: str, currency: str) -> PartRow:
    system = assessment.build.brief.units
    return PartRow(
        position="",
        part=layer.part.name,
        reference=layer.finish.surface,
        fixed=show(layer.finish.area_m2, "m2", system),
        mass=show(assessment.weights.added_by_kg(item), "kg", system),
        mass_from="",
        price=_price(layer.part, currency),
    )


def _sheets(assessment: Assessment) -> str:
    """Return how many sheets of each finish are in the sum."""
    names = {layer.part.id: layer.part.name for layer in assessment.build.finishes}
    counted = ", ".join(
        f"{item.count} of {names[item.name]}"
        for item in assessment.wishes.price.items
        if item.name in names and item.count
    )
    return f"Whole sheets in the sum: {counted}." if counted else ""


def _totals(assessment: Assessment) -> Iterator[Pair]:
    price, system = assessment.wishes.price, assessment.build.brief.units
    known = Money(amount_minor=price.known_minor, currency=price.currency)
    unknown = len(price.without_price)
    yield Pair(
        label="Mass added by the conversion", value=show(assessment.weights.added_kg, "kg", system)
    )
    yield Pair(
        label="Sum of the prices that are known",
        value=known.shown(),
        note="without vehicle, labour, consumables, tax and delivery",
    )
    yield Pair(
        label="Prices unknown",
        value=str(unknown),
        note=", ".join(words_of(name) for name in price.without_price),
    )
    yield Pair(
        label="Sum of all",
        value="unknown while a price is missing" if unknown else known.shown(),
    )
    if price.budget_minor is not None:
        budget = Money(amount_minor=price.budget_minor, currency=price.currency)
        yield Pair(label="Budget of the brief", value=budget.shown())
