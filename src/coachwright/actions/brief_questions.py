"""What a customer is asked: each answer with its place in the sheet and what it drives."""

from dataclasses import dataclass
from typing import Literal

from coachwright.actions.paths import Steps

AnswerKind = Literal[
    "quantity", "text", "long text", "truth", "money", "date", "whole", "choice", "seat", "texts"
]

_LOAD = ("weights.payload-left", "weights.front-axle-left", "weights.rear-axle-left")
_BALANCE = ("electrics.daily-balance-summer", "electrics.daily-balance-winter")
_STAND = ("electrics.independence-summer", "electrics.independence-winter")


@dataclass(frozen=True, kw_only=True, slots=True)
class Question:
    """One thing that a customer is asked.

    Attributes
    ----------
    steps
        Where the answer stands, from the sheet or from the entry that it belongs to.
    asks, hint
        For people.
    kind
        What is answered.
    quantity
        The kind of a quantity.
    choices
        What may be chosen: as the sheet has it, and for people.
    drives
        Figures and rules that follow from it, the most important first.
    optional
        May be left open.
    """

    steps: Steps
    asks: str
    kind: AnswerKind
    quantity: str = ""
    hint: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    drives: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Chapter:
    """Questions that belong together; asked once, or of each entry of a list.

    Attributes
    ----------
    each
        The list whose entries are asked about; empty where the questions are asked once.
    entry
        What one entry is called.
    """

    id: str
    title: str
    questions: tuple[Question, ...]
    each: Steps = ()
    entry: str = ""
    intro: str = ""


def _quantity(
    steps: Steps,
    quantity: str,
    asks: str,
    *drives: str,
    hint: str = "",
    optional: bool = False,
) -> Question:
    return Question(
        steps=steps,
        asks=asks,
        kind="quantity",
        quantity=quantity,
        hint=hint,
        drives=drives,
        optional=optional,
    )


_ORDER = Chapter(
    id="order",
    title="The order",
    questions=(
        Question(steps=("customer",), asks="Who is it for?", kind="text", optional=True),
        Question(steps=("name",), asks="What is the build called?", kind="text"),
        Question(
            steps=("story",),
            asks="What will they do with it?",
            kind="long text",
            hint="In their own words; printed in the quote.",
            optional=True,
        ),
        Question(
            steps=("brief", "jurisdiction"),
            asks="Where will it be registered?",
            kind="choice",
            choices=(
                ("us", "United States"),
                ("eu", "European Union"),
                ("uk", "United Kingdom"),
            ),
            drives=("wishes.seat-evidence", "wishes.smoke-alarm"),
            hint="Decides whose rules are applied, on every page.",
        ),
        Question(
            steps=("brief", "budget"),
            asks="What may the parts cost?",
            kind="money",
            hint="Without the base vehicle, labour and tax.",
            drives=("wishes.budget",),
            optional=True,
        ),
        Question(
            steps=("brief", "wanted"),
            asks="When should it be ready?",
            kind="date",
            optional=True,
            hint="Printed in the job pack.",
        ),
    ),
)

_PEOPLE = Chapter(
    id="people",
    title="Who travels",
    each=("brief", "travellers"),
    entry="traveller",
    questions=(
        _quantity(("mass",), "mass", "Weight, dressed", *_LOAD),
        _quantity(
            ("stature",), "length", "Height", "layout.sleeper-length", "layout.headroom-way"
        ),
        Question(
            steps=("seat",),
            asks="Seat while driving",
            kind="seat",
            drives=("wishes.traveller-belted", *_LOAD[1:]),
            optional=True,
        ),
        _quantity(("luggage",), "mass", "Luggage", *_LOAD, optional=True),
        Question(
            steps=("berth_wanted",),
            asks="Sleeps in the van",
            kind="truth",
            drives=("wishes.enough-berths", "layout.sleeper-length"),
        ),
        Question(steps=("child",), asks="Is a child", kind="truth"),
    ),
)

_WHERE = Chapter(
    id="where",
    title="Where and when they go",
    questions=(
        Question(
            steps=("brief", "climate", "sites"),
            asks="Places",
            kind="texts",
            hint="One a line; kept for the weather of the year.",
            optional=True,
        ),
        _quantity(
            ("brief", "climate", "cold_night"),
            "temperature",
            "Coldest night",
            "electrics.daily-balance-winter",
            "electrics.independence-winter",
            "water.frost-protected",
        ),
        _quantity(
            ("brief", "climate", "hot_day"),
            "temperature",
            "Hottest day",
            "electrics.daily-balance-summer",
        ),
        _quantity(
            ("brief", "climate", "summer_sun"),
            "time_use",
            "Sun in the warm half-year",
            "electrics.independence-summer",
            "electrics.daily-balance-summer",
            hint="Peak-sun hours of its poorest month that counts.",
            optional=True,
        ),
        _quantity(
            ("brief", "climate", "winter_sun"),
            "time_use",
            "Sun in the cold half-year",
            "electrics.independence-winter",
            "electrics.daily-balance-winter",
            hint="Peak-sun hours of its poorest month that counts.",
            optional=True,
        ),
    ),
)

_STAY = Chapter(
    id="stay",
    title="How they travel",
    questions=(
        _quantity(("brief", "stay", "parked"), "days", "Days in one place", *_BALANCE),
        _quantity(
            ("brief", "stay", "drive"),
            "time_use",
            "Driving on a day between",
            *_BALANCE,
            optional=True,
        ),
        _quantity(
            ("brief", "stay", "hookup"),
            "fraction",
            "Nights with a hook-up",
            *_BALANCE,
            optional=True,
        ),
        _quantity(
            ("brief", "independence_wanted"),
            "days",
            "Days wanted without any supply",
            "electrics.independence-wanted",
            "water.days-wanted",
            optional=True,
        ),
        _quantity(
            ("brief", "reserve"),
            "fraction",
            "Share of the battery never used",
            "electrics.usable-energy",
            *_STAND,
            optional=True,
        ),
    ),
)

_DAY = Chapter(
    id="day",
    title="What a day looks like",
    questions=(
        _quantity(
            ("brief", "habits", "water"), "water_use", "Water for each person", "water.days"
        ),
        _quantity(
            ("brief", "habits", "hot_water"),
            "water_use",
            "Of that, warm",
            "water.hot-energy-per-day",
            optional=True,
        ),
        _quantity(
            ("brief", "habits", "cooking"),
            "energy_use",
            "Heat into pots, for all",
            "water.gas-days",
            hint="An electric hob draws by its own hours of use, on the drawing board.",
            optional=True,
        ),
        _quantity(("brief", "habits", "day"), "temperature", "Warm enough by day", optional=True),
        _quantity(
            ("brief", "habits", "night"),
            "temperature",
            "Warm enough at night",
            "electrics.usable-energy-cold",
            "electrics.independence-winter",
            optional=True,
        ),
        _quantity(("brief", "habits", "most"), "temperature", "Too warm above", optional=True),
    ),
)

_DEVICES = Chapter(
    id="devices",
    title="What they bring that draws power",
    each=("brief", "habits", "devices"),
    entry="device",
    questions=(
        Question(
            steps=("count",),
            asks="How many",
            kind="whole",
            drives=("electrics.daily-use-summer", *_STAND),
        ),
        _quantity(("draw",), "power", "Each draws", "electrics.daily-use-summer", *_STAND),
        _quantity(("use",), "time_use", "In use", "electrics.daily-use-summer", *_STAND),
        Question(
            steps=("supply",),
            asks="Plugged into",
            kind="choice",
            choices=(("dc", "12 V or USB"), ("inverter", "a mains outlet")),
            drives=("electrics.daily-use-summer",),
        ),
    ),
)

_CARGO = Chapter(
    id="cargo",
    title="Heavy things that come along",
    each=("brief", "cargo"),
    entry="load",
    intro="Bicycles, tools, instruments: anything beside luggage and what is stowed in cabinets.",
    questions=(
        _quantity(("mass",), "mass", "Weight", *_LOAD),
        _quantity(("centre", 0), "length", "Behind the front axle", *_LOAD[1:]),
        _quantity(("centre", 1), "length", "Right of the middle", "weights.side-share"),
        _quantity(("centre", 2), "length", "Above the load floor", "weights.cg-height"),
        _quantity(
            ("tolerance",),
            "fraction",
            "How far the weight may be off",
            "weights.payload-left",
            optional=True,
        ),
    ),
)

CHAPTERS: tuple[Chapter, ...] = (_ORDER, _PEOPLE, _WHERE, _STAY, _DAY, _DEVICES, _CARGO)
"""In the order asked."""

MUST_HAVE: tuple[tuple[str, str], ...] = (
    ("bed", "A bed"),
    ("seat", "Seats in the living space"),
    ("table", "A table"),
    ("toilet", "A toilet"),
    ("water_heater", "Warm water"),
    ("heater", "Heating"),
    ("air_conditioner", "Air conditioning"),
    ("fan", "A fan"),
    ("opening", "Windows and hatches"),
    ("battery", "A battery of its own"),
    ("solar_panel", "Panels on the roof"),
    ("inverter", "Mains outlets off the hook-up"),
    ("shore_charger", "Charging at a hook-up"),
    ("awning", "An awning"),
    ("ladder", "A ladder"),
    ("rear_door_carrier", "A carrier on the rear door"),
    ("hitch_carrier", "A carrier on the hitch"),
    ("roof_rack", "A roof rack"),
)
"""Facets that customers ask for, in their words."""
