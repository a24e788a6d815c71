"""The weight statement: load cases, axles against their ratings, payload, weighbridge."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.drawing.load_bars import LoadBar, load_bars
from coachwright.drawing.side_view import AxleNote, SideViewMeasures, SideViewNotes, side_view
from coachwright.drawing.svg import svg
from coachwright.model.finding import Status
from coachwright.papers.frame import FrameView, SourceLine, frame, source_lines
from coachwright.papers.table import Pair, Table, figure_pairs
from coachwright.papers.wording import (
    JURISDICTION_WORDS,
    NONE,
    STATUS_WORDS,
    SourceNumbers,
    both_bounds,
    positions,
    sentence,
    show,
    spoken,
)
from coachwright.weights.model import Group, LoadCase, MassBand, MassItem, Statement, Weights

_DRAWN_CASE = "travelling"
_DRAWING_MM = (174.0, 112.0)
_MOST_NUMBERED = 12
_BARS = (
    ("vehicle", "travelling"),
    ("front axle", "travelling"),
    ("front axle", "front-axle-worst"),
    ("rear axle", "travelling"),
    ("rear axle", "rear-axle-worst"),
)


@dataclass(frozen=True, kw_only=True, slots=True)
class StatementBlock:
    """One mass as a rule book defines it."""

    title: str
    value: str
    bounds: str
    status: str
    sources: str
    components: tuple[Pair, ...]
    note: str


@dataclass(frozen=True, kw_only=True, slots=True)
class WeightView:
    """Everything on the weight statement."""

    frame: FrameView
    headline: tuple[Pair, ...]
    drawing: str
    drawing_caption: str
    drawing_key: str
    heaviest: Table
    bars: str
    bars_caption: str
    cases: Table
    places: Table
    left: Table
    statements_heading: str
    statements: tuple[StatementBlock, ...]
    ticket: Table | None
    road_heading: str
    road_intro: str
    tyres: Table
    road: tuple[Pair, ...]
    notes: tuple[str, ...]
    sources: tuple[SourceLine, ...]


def weight_view(assessment: Assessment) -> WeightView:
    """Return the weight statement of a build."""
    build, weights = assessment.build, assessment.weights
    system = build.brief.units
    numbers = SourceNumbers()
    heavy = _heaviest(assessment)
    return WeightView(
        frame=frame(build, title="Weight statement", cautions=("load", "certification")),
        headline=figure_pairs(build, assessment.headline, "weights"),
        drawing=_drawing(assessment, heavy),
        drawing_caption=_caption(weights),
        drawing_key=_key(assessment, heavy),
        heaviest=_heaviest_table(assessment, heavy),
        bars=svg(load_bars(_bars(weights, system), paper_width_mm=_DRAWING_MM[0])),
        bars_caption="Bar: the load as computed. Bracket: its one-sided 95 % bounds from the "
        "tolerances of the masses. The heavy line is the vehicle maker's rating.",
        cases=_cases(weights, system),
        places=_places(weights, system),
        left=_left(weights, system),
        statements_heading=f"Mass statements: {JURISDICTION_WORDS[build.brief.jurisdiction]}",
        statements=tuple(
            _statement(statement, system, numbers)
            for statement in weights.statements
            if str(build.brief.jurisdiction) in statement.jurisdictions
        ),
        ticket=_ticket(weights, system),
        road_heading="On the road",
        road_intro="Tyres under the loads above; size, angles and stability with everything "
        "fitted; what hangs and stands outside.",
        tyres=_tyres(assessment),
        road=_road(assessment),
        notes=tuple(
            sentence(spoken(build, note)) for note in (*weights.notes, *assessment.road.notes)
        ),
        sources=source_lines(numbers),
    )


def _band(band: MassBand, system: str) -> str:
    return show(band.nominal_kg, "kg", system)


def _heaviest(assessment: Assessment) -> tuple[MassItem, ...]:
    fitted = (item for item in assessment.weights.items if item.group is Group.FITTING)
    by_mass = sorted(fitted, key=lambda item: item.mass_kg, reverse=True)
    return tuple(by_mass[:_MOST_NUMBERED])


def _heaviest_table(assessment: Assessment, heavy: tuple[MassItem, ...]) -> Table:
    system = assessment.build.brief.units
    number = positions(assessment.build)
    ordered = sorted(heavy, key=lambda item: int(number.get(item.name, "0")))
    return Table(
        heading="Heaviest fittings",
        names=("Pos.", "Fitting", "Mass", "Behind front axle", "Right of centre", "Above ground"),
        rows=tuple(
            (
                number.get(item.name, NONE),
                item.label,
                show(item.mass_kg, "kg", system),
                show(item.x_mm, "mm", system),
                show(item.y_mm, "mm", system),
                show(item.height_mm, "mm", system),
            )
            for item in ordered
        ),
        note="Position numbers as on the parts list; they stand at the centre of mass.",
    )


def _key(assessment: Assessment, heavy: tuple[MassItem, ...]) -> str:
    number = positions(assessment.build)
    ordered = sorted(heavy, key=lambda item: int(number.get(item.name, "0")))
    return " · ".join(f"{number.get(item.name, NONE)} {item.label}" for item in ordered)


def _caption(weights: Weights) -> str:
    case = weights.case(_DRAWN_CASE)
    return (
        f"Seen from the left, {case.label[:1].lower()}{case.label[1:]}. The quartered circle is "
        "the centre of gravity; the arrows are the axle loads against their ratings. The body "
        "is a plain outline, not for measuring."
    )


def _drawing(assessment: Assessment, heavy: tuple[MassItem, ...]) -> str:
    build, weights, road = assessment.build, assessment.weights, assessment.road
    system = build.brief.units
    case = weights.case(_DRAWN_CASE)
    number = positions(build)
    measures = SideViewMeasures(
        wheel_diameter_mm=road.tyres.dimensions.diameter_mm,
        centre_x_mm=case.cg_x.nominal_mm,
        centre_height_mm=case.cg_height.nominal_mm,
        length_mm=road.size.length_mm,
        height_mm=road.size.height_mm,
    )
    notes = SideViewNotes(
        front=_axle_note(weights, "front axle", case.front, system),
        rear=_axle_note(weights, "rear axle", case.rear, system),
        wheelbase=f"wheelbase {show(build.vehicle.outside.wheelbase_mm, 'mm', system)}",
        length=f"overall length {show(road.size.length_mm, 'mm', system)}",
        height=f"overall height {show(road.size.height_mm, 'mm', system)}",
        centre_x=show(case.cg_x.nominal_mm, "mm", system),
        centre_height=show(case.cg_height.nominal_mm, "mm", system),
    )
    scene = side_view(
        build,
        measures=measures,
        notes=notes,
        numbers={item.name: number[item.name] for item in heavy if item.name in number},
        paper_width_mm=_DRAWING_MM[0],
        paper_height_mm=_DRAWING_MM[1],
    )
    return svg(scene)


def _axle_note(weights: Weights, axle: str, load: MassBand, system: str) -> AxleNote:
    limit = weights.margin(axle, _DRAWN_CASE).limit_kg
    return AxleNote(
        name=axle,
        load=_band(load, system),
        limit=f"rating {show(limit, 'kg', system)}",
    )


def _load_of(case: LoadCase, subject: str) -> MassBand:
    return {"vehicle": case.total, "front axle": case.front, "rear axle": case.rear}[subject]


def _bars(weights: Weights, system: str) -> tuple[LoadBar, ...]:
    bars = []
    for subject, name in _BARS:
        case = weights.case(name)
        load, limit = _load_of(case, subject), weights.margin(subject, name).limit_kg
        bars.append(
            LoadBar(
                label=case.label
                if name.endswith("worst")
                else f"{subject.capitalize()}, {case.label.lower()}",
                value=f"{_band(load, system)} of {show(limit, 'kg', system)}",
                load_kg=load.nominal_kg,
                low_kg=load.low_kg,
                high_kg=load.high_kg,
                limit_kg=limit,
            )
        )
    return tuple(bars)


def _cases(weights: Weights, system: str) -> Table:
    return Table(
        heading="Load cases",
        names=("State", "Total", "at most", "Front axle", "at most", "Rear axle", "at most"),
        rows=tuple(
            (
                case.label,
                *(
                    text
                    for band in (case.total, case.front, case.rear)
                    for text in (_band(band, system), show(band.high_kg, "kg", system))
                ),
            )
            for case in weights.cases
        ),
        note="“At most” is the one-sided 95 % bound: one build in twenty may lie above it.",
    )


def _places(weights: Weights, system: str) -> Table:
    return Table(
        heading="Centre of gravity and sides",
        names=(
            "State",
            "Behind front axle",
            "Right of centre",
            "Above ground",
            "at most",
            "Front, right side",
            "Rear, right side",
        ),
        rows=tuple(
            (
                case.label,
                show(case.cg_x.nominal_mm, "mm", system),
                show(case.cg_y.nominal_mm, "mm", system),
                show(case.cg_height.nominal_mm, "mm", system),
                show(case.cg_height.high_mm, "mm", system),
                show(case.front_sides.right_frac, "frac", system),
                show(case.rear_sides.right_frac, "frac", system),
            )
            for case in weights.cases
        ),
        note="Side shares as for a rigid frame: share of the axle's load on its right side.",
    )


def _left(weights: Weights, system: str) -> Table:
    subjects = ("vehicle", "front axle", "rear axle")
    known = {(left.subject, left.case): left for left in weights.left}
    rows = []
    for case in weights.cases:
        bands = [known.get((subject, case.name)) for subject in subjects]
        if not any(bands):
            continue
        texts = [
            text
            for left in bands
            for text in (
                (_band(left.left, system), show(left.left.low_kg, "kg", system))
                if left
                else (NONE, NONE)
            )
        ]
        rows.append((case.label, *texts))
    return Table(
        heading="What is left under each rating",
        names=("State", "Vehicle", "at least", "Front axle", "at least", "Rear axle", "at least"),
        rows=tuple(rows),
        note="“At least” is what is left at the 95 % bound of the load; less than nothing means "
        "that the rating may be exceeded.",
    )


def _statement(statement: Statement, system: str, numbers: SourceNumbers) -> StatementBlock:
    mass = statement.mass
    toleranced = mass.low_kg != mass.high_kg
    return StatementBlock(
        title=statement.title,
        value=_band(mass, system),
        bounds=(both_bounds(mass.low_kg, mass.high_kg, "kg", system) if toleranced else ""),
        status=f"definition: {STATUS_WORDS[Status(statement.status)]}",
        sources=numbers.of_all(statement.working.references),
        components=(*_components(statement, system), *_axles(statement, system)),
        note=sentence(statement.note),
    )


def _components(statement: Statement, system: str) -> Iterator[Pair]:
    for part in statement.components:
        yield Pair(label=part.name, value=show(part.mass_kg, "kg", system))


def _axles(statement: Statement, system: str) -> Iterator[Pair]:
    for label, band in (
        ("of it on the front axle", statement.front),
        ("of it on the rear axle", statement.rear),
    ):
        if band is not None:
            yield Pair(label=label, value=_band(band, system))


def _ticket(weights: Weights, system: str) -> Table | None:
    check = weights.ticket
    if check is None:
        return None
    return Table(
        heading=f"Weighbridge of {check.date}",
        names=("Reading", "Weighed", "Computed", "Difference", "Allowed by tolerances", "Verdict"),
        rows=tuple(
            (
                row.subject.capitalize(),
                show(row.weighed_kg, "kg", system),
                show(row.predicted_kg, "kg", system),
                show(row.difference_kg, "kg", system),
                f"± {show(row.bound_kg, 'kg', system)}",
                "within" if row.within else "outside",
            )
            for row in check.rows
        ),
        note=sentence(check.applied),
    )


def _tyres(assessment: Assessment) -> Table:
    system = assessment.build.brief.units
    tyres = assessment.road.tyres
    return Table(
        heading=f"Tyres {tyres.size}, {tyres.kind}",
        names=("Axle", "Tyres", "Load index", "Capacity", "Worst load", "at most", "Pressure"),
        rows=tuple(
            (
                axle.axle.capitalize(),
                str(axle.tyres),
                "unknown" if axle.load_index is None else str(axle.load_index),
                show(axle.capacity_kg, "kg", system),
                show(axle.worst_kg, "kg", system),
                show(axle.worst_high_kg, "kg", system),
                show(axle.advised_pressure_kpa, "kPa", system),
            )
            for axle in assessment.road.axles
        ),
        note="Pressure: cold, for the axle's worst load; never below the placard.",
    )


_IN_THE_TYRE_TABLE = frozenset(
    f"road.{axle}-tyre-{what}" for axle in ("front", "rear") for what in ("capacity", "pressure")
)


def _road(assessment: Assessment) -> tuple[Pair, ...]:
    """Return the figures of the road but those that the table of the tyres has already."""
    rest = tuple(f for f in assessment.figures if f.name not in _IN_THE_TYRE_TABLE)
    return figure_pairs(assessment.build, rest, "road")
