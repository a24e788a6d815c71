"""Rules of the seats that people travel in."""

from collections.abc import Callable, Iterator

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.wishes.model import SittingPlace, Wishes
from coachwright.wishes.seats import regulations_named

_US = (Jurisdiction.US,)
_EU = (Jurisdiction.EU,)
_UK = (Jurisdiction.UK,)
_BRIEF = Source(key="customer-brief", clause="travellers")


def _enough(_build: Build, wishes: Wishes) -> Iterator[Case]:
    if wishes.belted_wanted > 0:
        figures = (f for f in wishes.figures if f.name == "wishes.belted-seats")
        yield Case(
            subject="seats",
            value=wishes.belted,
            limit=wishes.belted_wanted,
            unit="count",
            working=next(figures).working,
        )


def _each_belted(_build: Build, wishes: Wishes) -> Iterator[Case]:
    needed = limit("wishes.traveller-belts").value
    for place in wishes.places:
        if place.taken_by:
            yield Case(
                subject=place.taken_by,
                value=float(place.usable),
                limit=needed,
                unit="count",
                detail=f"{place.name}: belt {place.belt}, faces {place.facing}",
            )


def _travel_places(wishes: Wishes) -> Iterator[SittingPlace]:
    return (place for place in wishes.places if place.travel_seat and not place.factory)


def _side_seats(limit_id: str) -> Callable[[Build, Wishes], Iterator[Case]]:
    def cases(_build: Build, wishes: Wishes) -> Iterator[Case]:
        for place in _travel_places(wishes):
            yield Case(
                subject=place.name,
                value=float(place.facing == "side"),
                limit=limit(limit_id).value,
                unit="count",
                detail=f"faces {place.facing}",
            )

    return cases


def _belts(limit_id: str) -> Callable[[Build, Wishes], Iterator[Case]]:
    def cases(_build: Build, wishes: Wishes) -> Iterator[Case]:
        for place in _travel_places(wishes):
            yield Case(
                subject=place.name,
                value=float(place.belt != "none"),
                limit=limit(limit_id).value,
                unit="count",
                detail=f"belt: {place.belt}",
            )

    return cases


def _side_belts(_build: Build, wishes: Wishes) -> Iterator[Case]:
    needed = limit("wishes.belts-side-us").value
    for place in _travel_places(wishes):
        if place.facing == "side":
            yield Case(
                subject=place.name,
                value=float(place.belt != "none"),
                limit=needed,
                unit="count",
                detail=f"belt: {place.belt}",
            )


def _evidence(limit_id: str, wanted: tuple[str, ...]) -> Callable[[Build, Wishes], Iterator[Case]]:
    def cases(_build: Build, wishes: Wishes) -> Iterator[Case]:
        for place in _travel_places(wishes):
            missing = "" if place.evidence else f"evidence of UN {' and '.join(wanted)}"
            yield Case(
                subject=place.name,
                value=regulations_named(evidence=place.evidence, wanted=wanted),
                limit=limit(limit_id).value,
                unit="count",
                missing=missing,
                detail=place.evidence,
            )

    return cases


SEAT_RULES: tuple[Rule, ...] = (
    Rule(
        id="wishes.enough-belted-seats",
        title="There are as many seats with belts as travellers who want one",
        source=_BRIEF,
        severity=Severity.STOP,
        cases=_enough,
        holds=">=",
        remedy="fit a travel seat with belts and tested anchorages",
    ),
    Rule(
        id="wishes.traveller-belted",
        title="The seat of each traveller is a travel seat with a belt",
        source=_BRIEF,
        severity=Severity.STOP,
        cases=_each_belted,
        holds=">=",
        remedy="give the traveller another seat, or fit one with a belt",
    ),
    Rule(
        id="wishes.side-facing-seats",
        title="No travel seat faces sideways",
        source=limit("wishes.side-seats").source,
        severity=Severity.STOP,
        cases=_side_seats("wishes.side-seats"),
        remedy="turn the seat forwards or rearwards, or mark it as not for use in motion",
        jurisdictions=_EU,
    ),
    Rule(
        id="wishes.side-facing-seats-uk",
        title="No travel seat faces sideways, as government guidance advises",
        source=limit("wishes.side-seats-uk").source,
        severity=Severity.CAUTION,
        cases=_side_seats("wishes.side-seats-uk"),
        remedy="turn the seat forwards or rearwards, or mark it as not for use in motion",
        jurisdictions=_UK,
    ),
    Rule(
        id="wishes.side-facing-belts",
        title="A side-facing travel seat has belts",
        source=limit("wishes.belts-side-us").source,
        severity=Severity.STOP,
        cases=_side_belts,
        holds=">=",
        remedy="fit belts with anchorages of sufficient strength, or turn the seat",
        jurisdictions=_US,
    ),
    Rule(
        id="wishes.travel-seat-belts-us",
        title="A place that people may use in motion has a belt",
        source=limit("wishes.belts-us").source,
        severity=Severity.STOP,
        cases=_belts("wishes.belts-us"),
        holds=">=",
        remedy="fit belts with anchorages of sufficient strength",
        jurisdictions=_US,
    ),
    Rule(
        id="wishes.travel-seat-belts",
        title="A rear travel seat has at least a lap belt (German licensing regulations)",
        source=limit("wishes.belts-germany").source,
        severity=Severity.STOP,
        cases=_belts("wishes.belts-germany"),
        holds=">=",
        remedy="fit belts with tested anchorages, or mark the seat as not for use in motion",
        jurisdictions=_EU,
    ),
    Rule(
        id="wishes.travel-seat-belts-uk",
        title="A rear travel seat has at least a lap belt",
        source=limit("wishes.belts-uk").source,
        severity=Severity.STOP,
        cases=_belts("wishes.belts-uk"),
        holds=">=",
        remedy="fit belts with tested anchorages, or mark the seat as not for use in motion",
        jurisdictions=_UK,
    ),
    Rule(
        id="wishes.seat-evidence",
        title="The evidence of a retrofitted travel seat names UN R14 and UN R17 "
        "(German inspection)",
        source=limit("wishes.evidence-germany").source,
        severity=Severity.CAUTION,
        cases=_evidence("wishes.evidence-germany", ("R14", "R17")),
        holds=">=",
        remedy="ask the maker for the test reports of seat, console and anchorage",
        jurisdictions=_EU,
    ),
    Rule(
        id="wishes.seat-evidence-uk",
        title="The evidence of a retrofitted travel seat names a tested anchorage, UN R14",
        source=limit("wishes.evidence-uk").source,
        severity=Severity.CAUTION,
        cases=_evidence("wishes.evidence-uk", ("R14",)),
        holds=">=",
        remedy="ask the maker for the test report of the anchorage",
        jurisdictions=_UK,
    ),
)
