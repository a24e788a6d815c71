"""The headline figures with their workings."""

from collections.abc import Callable, Iterator, Sequence

from coachwright.model.build import Build
from coachwright.model.working import Figure, Given, Working
from coachwright.weights.cases import Axles
from coachwright.weights.margins import right_side_frac
from coachwright.weights.model import (
    Group,
    LengthBand,
    LoadCase,
    MarginLeft,
    MassBand,
    MassItem,
    Statement,
)
from coachwright.weights.scales import Scales

STATICS = ("body-builder-manual-appendix-b",)
NAMED_CASES = ("as-delivered", "driver-only", "travelling", "grey-full")
"""Load cases whose total and axle loads are figures."""
_WORDS = {group: group.words for group in Group}


def figures(
    build: Build,
    cases: Sequence[LoadCase],
    left: Sequence[MarginLeft],
    stated: Sequence[Statement],
    scales: Scales,
) -> tuple[Figure, ...]:
    """Return every figure of the discipline."""
    by_name = {case.name: case for case in cases}
    items = {item.name: item for item in scales.items}
    wheelbase_mm = build.vehicle.outside.wheelbase_mm
    named = [by_name[name] for name in NAMED_CASES]
    return (
        *(figure for case in named for figure in _loads(case, items, wheelbase_mm)),
        *_worst(by_name, items, wheelbase_mm),
        *_margins(left),
        *(figure for case in named for figure in _centre(case, items)),
        _side_share(by_name["travelling"], scales.axles),
        *(_stated(statement) for statement in stated),
    )


def _mass_figure(name: str, label: str, band: MassBand, working: Working) -> Figure:
    return Figure(
        name=name,
        label=label,
        value=band.nominal_kg,
        unit="kg",
        working=working,
        low=band.low_kg,
        high=band.high_kg,
    )


def _loads(case: LoadCase, items: dict[str, MassItem], wheelbase_mm: float) -> Iterator[Figure]:
    label = case.label.lower()
    yield _mass_figure(
        f"weights.total-{case.name}", f"Total, {label}", case.total, _total_working(case)
    )
    yield _mass_figure(
        f"weights.front-axle-{case.name}",
        f"Front axle, {label}",
        case.front,
        _axle_working(case, items, wheelbase_mm, front=True),
    )
    yield _mass_figure(
        f"weights.rear-axle-{case.name}",
        f"Rear axle, {label}",
        case.rear,
        _axle_working(case, items, wheelbase_mm, front=False),
    )


def _worst(
    by_name: dict[str, LoadCase], items: dict[str, MassItem], wheelbase_mm: float
) -> Iterator[Figure]:
    for name, front in (
        ("front-axle-worst", True),
        ("rear-axle-worst", False),
        ("front-axle-least", True),
    ):
        case = by_name[name]
        yield _mass_figure(
            f"weights.{name}",
            case.label,
            case.front if front else case.rear,
            _axle_working(case, items, wheelbase_mm, front=front),
        )


def _groups(case: LoadCase, unit: str, value: Callable[[str, float], float]) -> tuple[Given, ...]:
    """Return one number for each group of what is aboard."""
    sums: dict[str, float] = {}
    counts: dict[str, int] = {}
    for load in case.loads:
        group = _WORDS[load.group]
        sums[group] = sums.get(group, 0.0) + value(load.item, load.mass_kg)
        counts[group] = counts.get(group, 0) + 1
    symbol = "m" if unit == "kg" else "m·d"
    return tuple(
        Given(
            symbol=symbol,
            meaning=group if counts[group] == 1 else f"{group}, {counts[group]} items",
            value=amount,
            unit=unit,
            source="items of the weight statement",
        )
        for group, amount in sums.items()
    )


def _total_working(case: LoadCase) -> Working:
    return Working(
        expression="W = Σ m",
        given=_groups(case, "kg", lambda _item, mass_kg: mass_kg),
        result=case.total.nominal_kg,
        unit="kg",
        references=STATICS,
        note=case.note,
    )


def _axle_working(
    case: LoadCase, items: dict[str, MassItem], wheelbase_mm: float, *, front: bool
) -> Working:
    def moment_kg_mm(item: str, mass_kg: float) -> float:
        x_mm = items[item].x_mm
        return mass_kg * ((wheelbase_mm - x_mm) if front else x_mm)

    return Working(
        expression=f"{'F' if front else 'R'} = Σ m·d / WB",
        given=(
            *_groups(case, "kg mm", moment_kg_mm),
            Given(symbol="WB", meaning="wheelbase", value=wheelbase_mm, unit="mm"),
        ),
        result=case.front.nominal_kg if front else case.rear.nominal_kg,
        unit="kg",
        references=STATICS,
        note=f"d is the distance from the {'rear' if front else 'front'} axle; {case.note}",
    )


def _margins(left: Sequence[MarginLeft]) -> Iterator[Figure]:
    for margin in left:
        if margin.case != "travelling":
            continue
        name, label, load = {
            "vehicle": ("payload-left", "Payload left, travelling", "total"),
            "front axle": ("front-axle-left", "Left on the front axle, travelling", "front-axle"),
            "rear axle": ("rear-axle-left", "Left on the rear axle, travelling", "rear-axle"),
        }[margin.subject]
        yield _mass_figure(
            f"weights.{name}",
            label,
            margin.left,
            Working(
                expression="left = limit - load",
                given=(
                    Given(
                        symbol="limit",
                        meaning=f"rating of the {margin.subject}",
                        value=margin.limit_kg,
                        unit="kg",
                        source="vehicle.ratings",
                    ),
                    Given(
                        symbol="load",
                        meaning=f"{margin.subject}, travelling",
                        value=margin.limit_kg - margin.left.nominal_kg,
                        unit="kg",
                        source=f"weights.{load}-travelling",
                    ),
                ),
                result=margin.left.nominal_kg,
                unit="kg",
                references=STATICS,
                note="low is what is left at the 95 % bound of the load",
            ),
        )


def _centre(case: LoadCase, items: dict[str, MassItem]) -> Iterator[Figure]:
    """Yield the centre of gravity; its name has no case where the vehicle is travelling."""
    ending = "" if case.name == "travelling" else f"-{case.name}"
    axes: tuple[tuple[str, str, LengthBand, Callable[[MassItem], float]], ...] = (
        ("cg-x", "Centre of gravity behind the front axle", case.cg_x, lambda i: i.x_mm),
        ("cg-y", "Centre of gravity to the right", case.cg_y, lambda i: i.y_mm),
        (
            "cg-height",
            "Centre of gravity above the ground",
            case.cg_height,
            lambda i: i.height_mm,
        ),
    )
    for name, label, band, along_mm in axes:
        yield Figure(
            name=f"weights.{name}{ending}",
            label=f"{label}, {case.label.lower()}",
            value=band.nominal_mm,
            unit="mm",
            working=_centre_working(case, items, band, along_mm),
            low=band.low_mm,
            high=band.high_mm,
        )


def _centre_working(
    case: LoadCase,
    items: dict[str, MassItem],
    band: LengthBand,
    along_mm: Callable[[MassItem], float],
) -> Working:
    total_kg = case.total.nominal_kg
    return Working(
        expression="d = Σ m·d / W",
        given=(
            *_groups(case, "kg mm", lambda item, mass_kg: mass_kg * along_mm(items[item])),
            Given(
                symbol="W",
                meaning="total",
                value=total_kg,
                unit="kg",
                source=f"weights.total-{case.name}",
            ),
        ),
        result=band.nominal_mm,
        unit="mm",
        references=STATICS,
        note=case.note,
    )


def _side_share(case: LoadCase, axles: Axles) -> Figure:
    def share_frac(cg_y_mm: float) -> float:
        return right_side_frac(
            front_kg=case.front.nominal_kg,
            rear_kg=case.rear.nominal_kg,
            cg_y_mm=cg_y_mm,
            track_front_mm=axles.track_front_mm,
            track_rear_mm=axles.track_rear_mm,
        )

    result_frac = share_frac(case.cg_y.nominal_mm)
    return Figure(
        name="weights.side-share",
        label="Share of the mass on the right wheels, travelling",
        value=result_frac,
        unit="frac",
        working=Working(
            expression="s = 0.5 + y · (F / T_f + R / T_r) / W",
            given=_side_givens(case, axles),
            result=result_frac,
            unit="frac",
            references=STATICS,
            note="rigid frame, at rest on level ground",
        ),
        low=share_frac(case.cg_y.low_mm),
        high=share_frac(case.cg_y.high_mm),
    )


def _side_givens(case: LoadCase, axles: Axles) -> tuple[Given, ...]:
    rows = (
        ("y", "centre of gravity to the right", case.cg_y.nominal_mm, "mm", "weights.cg-y"),
        ("F", "front axle", case.front.nominal_kg, "kg", f"weights.front-axle-{case.name}"),
        ("R", "rear axle", case.rear.nominal_kg, "kg", f"weights.rear-axle-{case.name}"),
        ("T_f", "front track", axles.track_front_mm, "mm", "vehicle.outside"),
        ("T_r", "rear track", axles.track_rear_mm, "mm", "vehicle.outside"),
        ("W", "total", case.total.nominal_kg, "kg", f"weights.total-{case.name}"),
    )
    return tuple(
        Given(symbol=symbol, meaning=meaning, value=value, unit=unit, source=source)
        for symbol, meaning, value, unit, source in rows
    )


def _stated(statement: Statement) -> Figure:
    return _mass_figure(
        statement.figure,
        statement.title,
        statement.mass,
        statement.working,
    )
