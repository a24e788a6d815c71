"""Habits in plain words: what people bring, cook and wash with, as the brief holds it."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from coachwright import units
from coachwright.actions.benching import OnBench
from coachwright.errors import BadInput, Fault, UnknownName
from coachwright.reference import table
from coachwright.store.edits import Edit, Put, Take

WordSet = Literal["device", "hours", "cooking", "water", "warm"]
_TABLE = "plain_habits"
_HABIT: dict[str, tuple[str, str]] = {
    "cooking": ("cooking", "energy_use"),
    "water": ("water", "water_use"),
    "warm": ("hot_water", "water_use"),
}
"""Set of words → the field of the habits, and its kind of quantity."""
_FOR_ALL = frozenset({"cooking"})
"""Sets whose words are of one person where the brief counts all."""


@dataclass(frozen=True, kw_only=True, slots=True)
class NewTraveller:
    """What must be known of somebody who travels."""

    name: str
    mass: str
    stature: str


@dataclass(frozen=True, kw_only=True, slots=True)
class NewLoad:
    """What must be known of something heavy: weight and centre of mass, as files spell them."""

    name: str
    mass: str
    behind_axle: str
    right: str
    above_floor: str


def habit_words(wanted: WordSet) -> tuple[str, ...]:
    """Return the words that may be chosen, from little to much."""
    return tuple(row["name"] for row in table(_TABLE) if row["group"] == wanted)


def device_edits(work: OnBench, device: str, hours: str, count: int) -> tuple[Edit, ...]:
    """Return the edit that adds devices, such as two laptops all day.

    Raises
    ------
    UnknownName
        Where there are no such words.
    """
    row, used = _row("device", device), _row("hours", hours)
    name = _free(device, (each.name for each in work.sheet.brief.habits.devices))
    value = {
        "name": name,
        "draw": row["value"],
        "use": used["value"],
        "count": count,
        "supply": row["supply"],
    }
    return (Put(path=("brief", "habits", "devices", name), value=value),)


def habit_edits(work: OnBench, wanted: WordSet, words: str) -> tuple[Edit, ...]:
    """Return the edit that sets a habit by its words; cooking is for everybody who travels.

    Raises
    ------
    UnknownName
        Where there are no such words.
    """
    field, kind = _HABIT[wanted]
    each = units.parse(_row(wanted, words)["value"], kind)
    assert isinstance(each, float)  # a table of ours, held by its test
    people = len(work.sheet.brief.travellers) if wanted in _FOR_ALL else 1
    said = units.written(each * people, kind)
    return (Put(path=("brief", "habits", field), value=said),)


def traveller_edits(work: OnBench, new: NewTraveller) -> tuple[Edit, ...]:
    """Return the edit that adds somebody who travels.

    Raises
    ------
    BadInput
        Where the name has no letters.
    """
    there = (each.name for each in work.sheet.brief.travellers)
    name = _free(_word(new.name), there)
    value = {"name": name, "mass": new.mass, "stature": new.stature}
    return (Put(path=("brief", "travellers", name), value=value),)


def load_edits(work: OnBench, new: NewLoad) -> tuple[Edit, ...]:
    """Return the edit that adds something heavy.

    Raises
    ------
    BadInput
        Where it has no name.
    """
    plain = new.name.strip()
    if not plain:
        raise BadInput([_nameless(new.name)])
    name = _free(plain, (each.name for each in work.sheet.brief.cargo))
    centre = [new.behind_axle, new.right, new.above_floor]
    value = {"name": name, "mass": new.mass, "centre": centre}
    return (Put(path=("brief", "cargo", name), value=value),)


def usual_place(work: OnBench) -> str:
    """Return how far behind the front axle things usually stand: over the rear axle."""
    return units.written(work.build.vehicle.outside.wheelbase_mm, "length")


def without(path: tuple[str | int, ...]) -> tuple[Edit, ...]:
    """Return the edit that takes an entry out."""
    return (Take(path=path),)


def _row(wanted: str, words: str) -> dict[str, str]:
    for row in table(_TABLE):
        if (row["group"], row["name"]) == (wanted, words):
            return row
    known = [row["name"] for row in table(_TABLE) if row["group"] == wanted]
    raise UnknownName(wanted, words, known)


def _word(typed: str) -> str:
    """Return a name as the sheet holds them: small letters, digits and hyphens."""
    word = "-".join(re.findall(r"[a-z0-9]+", typed.lower()))
    if not word[:1].isalpha():
        raise BadInput([_nameless(typed)])
    return word


def _nameless(typed: str) -> Fault:
    return Fault(
        file="the brief",
        field="name",
        found=f'"{typed}"',
        allowed="a name that begins with a letter from a to z",
        action="write what it is called in this build",
    )


def _free(name: str, taken: Iterable[str]) -> str:
    """Return a name that nothing there has yet."""
    known = set(taken)
    number, free = 1, name
    while free in known:
        number += 1
        free = f"{name}-{number}"
    return free
