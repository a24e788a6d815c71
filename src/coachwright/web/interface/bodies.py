"""What other programs send, and what they get."""

from datetime import datetime
from typing import Annotated, Any, Literal

from fastapi import Path, Query
from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from coachwright.store.listing import MOST_NAME
from coachwright.store.records import Step

MOST_NUMBER = 2_147_483_647
"""The largest number that every database holds."""
_MOST_EDITS = 200
_MOST_STEPS = 12
_LEVELS = range(8)
MOST_TEXT = 250_000
"""Signs of a sheet; the largest of the demonstration builds has some twenty thousand."""


def _plain(text: str) -> str:
    """Refuse signs that no file or database can hold."""
    if "\0" in text or any("\ud800" <= sign <= "\udfff" for sign in text):
        raise ValueError("text without zero bytes and half signs")
    return text


def _writable(value: Any) -> Any:
    """Refuse what a TOML file cannot hold: nothing at all, and what nests too deeply."""
    _look(value, _LEVELS)
    return value


def _look(value: Any, levels: range) -> None:
    if value is None:
        raise ValueError("a value; take the place out instead of putting nothing there")
    if not levels:
        raise ValueError("a value that nests less deeply")
    if isinstance(value, str):
        _plain(value)
    elif isinstance(value, dict):
        for key, inner in value.items():
            _plain(key)
            _look(inner, levels[1:])
    elif isinstance(value, list):
        for inner in value:
            _look(inner, levels[1:])


Plain = Annotated[str, AfterValidator(_plain)]
Number = Annotated[int, Field(ge=1, le=MOST_NUMBER)]
BuildId = Annotated[int, Path(ge=1, le=MOST_NUMBER, description="Number of a build.")]
EventNumber = Annotated[int, Query(ge=1, le=MOST_NUMBER, description="Number of an event.")]
AtEvent = Annotated[
    int | None,
    Query(ge=1, le=MOST_NUMBER, description="After which event; the last where not given."),
]
PathStep = Annotated[Plain, Field(max_length=200)] | Annotated[int, Field(ge=0, le=10_000)]
Steps = Annotated[tuple[PathStep, ...], Field(min_length=1, max_length=_MOST_STEPS)]


class Body(BaseModel):
    """The base of what is sent: unknown fields are faults."""

    model_config = ConfigDict(extra="forbid")


class PutBody(Body):
    """Set a value at a path, or put an entry into a list."""

    do: Literal["put"]
    path: Steps = Field(examples=[["brief", "habits", "water"]])
    value: Annotated[Any, AfterValidator(_writable)] = Field(examples=["12 L/day"])
    follows: Annotated[Plain, Field(max_length=200)] | None = None


class TakeBody(Body):
    """Take out what stands at a path."""

    do: Literal["take"]
    path: Steps


class EditsBody(Body):
    """Edits of a build, made together, on the state after an event."""

    base_event: Number
    edits: Annotated[
        tuple[Annotated[PutBody | TakeBody, Field(discriminator="do")], ...],
        Field(min_length=1, max_length=_MOST_EDITS),
    ]


class SheetBody(Body):
    """A whole sheet that takes the place of another."""

    base_event: Number
    text: Annotated[Plain, Field(max_length=MOST_TEXT)]


class NewBuildBody(Body):
    """A new build: its sheet, as TOML."""

    text: Annotated[Plain, Field(max_length=MOST_TEXT)]


class RevisionBody(Body):
    """A name for the state after an event."""

    event: Number
    name: Annotated[Plain, Field(min_length=1, max_length=MOST_NAME)]
    note: Annotated[Plain, Field(max_length=2000)] = ""


class ReturnBody(Body):
    """Which event to go back to."""

    base_event: Number
    to_event: Number


class BuildAnswer(BaseModel):
    """One build in the list of all."""

    build_id: int
    name: str
    customer: str
    created_at: datetime
    created_by: str
    changed_at: datetime
    archived_at: datetime | None
    event: int
    revision: str


class SheetAnswer(BaseModel):
    """A sheet as it was after an event."""

    build_id: int
    event: int
    digest: str
    text: str


class FigureAnswer(BaseModel):
    """One figure, in internal units; no value where something is missing."""

    name: str
    label: str
    value: float | None
    unit: str
    low: float | None
    high: float | None
    missing: str


class KeptAnswer(BaseModel):
    """A build after an edit that was kept."""

    build_id: int
    event: int
    stops: int
    cautions: int
    unknown: int
    headline: tuple[FigureAnswer, ...]


class DifferenceAnswer(BaseModel):
    """One place at which two sheets differ."""

    place: str
    before: Any
    after: Any


class DisputeAnswer(BaseModel):
    """An edit that was not kept, because others have changed the same."""

    detail: str
    event: int
    actors: tuple[str, ...]
    mine: tuple[DifferenceAnswer, ...]
    theirs: tuple[DifferenceAnswer, ...]
    disputed: tuple[str, ...]
    faults: tuple[str, ...]


class RevisionAnswer(BaseModel):
    """A named state."""

    name: str
    event: int
    at: datetime
    actor: str
    note: str


class EventAnswer(BaseModel):
    """One line of a build's history."""

    number: int
    at: datetime
    actor: str
    deed: str
    about: int | None
    places: tuple[str, ...]


class TickBody(Body):
    """Something that the shop floor ticks off, or takes back."""

    thing: Annotated[Plain, Field(min_length=1, max_length=300)]
    step: Step
    done: bool = True


class MarkAnswer(BaseModel):
    """What was last ticked of one step; `changed` where it no longer holds."""

    done: bool
    by: str
    at: datetime | None
    changed: str


class ThingAnswer(BaseModel):
    """One thing that is to be fitted."""

    thing: str
    name: str
    part: str
    group: str
    where: tuple[str, ...]
    here: MarkAnswer
    fitted: MarkAnswer


class TickAnswer(BaseModel):
    """One tick, or that one was taken back."""

    number: int
    thing: str
    step: Step
    done: bool
    part: str
    place: str
    at: datetime
    actor: str


class FloorAnswer(BaseModel):
    """The shop floor's list of a build, and every tick, the last first."""

    things: tuple[ThingAnswer, ...]
    ticks: tuple[TickAnswer, ...]


class PaperAnswer(BaseModel):
    """One paper that can be printed."""

    name: str
    title: str
    about: str


class PartAnswer(BaseModel):
    """One part in a list."""

    id: str
    name: str
    mass_kg: float
    facets: tuple[str, ...]
    prices: tuple[str, ...]
    origin: str


class FaultAnswer(BaseModel):
    """One fault in what was sent."""

    file: str
    field: str
    found: str
    allowed: str
    action: str


class TroubleAnswer(BaseModel):
    """Why something was not done."""

    detail: str
    faults: tuple[FaultAnswer, ...] = ()
