"""Edits that move, turn or mirror fittings, one or several as one, with what goes along.

Among those that are moved every relation stays true; towards what stays, a place told by something
else becomes a length where the fittings are moved.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from coachwright.actions.following import AXES, built_into, followers
from coachwright.actions.placing import (
    SAME_MM,
    Wanted,
    as_typed,
    edits_for,
    fitted_of,
    refuse_pinned,
    written_mm,
)
from coachwright.errors import CannotEdit
from coachwright.model.build import Build, BuildSheet, Fitted
from coachwright.model.placement import placed
from coachwright.model.position import Relation
from coachwright.store.edits import Edit
from coachwright.units import QuantityFault, parse, written

_QUARTER_DEG, _HALF_DEG, _WHOLE_DEG = 90.0, 180.0, 360.0
_LENGTHWAYS, _ACROSS = 0, 1
_TURNED_WORDS: tuple[dict[str, str], dict[str, str]] = (
    {
        "behind": "right of",
        "ahead of": "left of",
        "flush front": "flush left",
        "flush rear": "flush right",
        "centred on": "centred on",
    },
    {
        "right of": "ahead of",
        "left of": "behind",
        "flush left": "flush rear",
        "flush right": "flush front",
        "centred on": "centred on",
    },
)
"""By the old axis: what a relation says on the other axis after a quarter anticlockwise."""
_MIRRORED_WORDS = {
    "behind": "ahead of",
    "ahead of": "behind",
    "flush front": "flush rear",
    "flush rear": "flush front",
    "right of": "left of",
    "left of": "right of",
    "flush left": "flush right",
    "flush right": "flush left",
    "centred on": "centred on",
}
_HIGH_KINDS = frozenset({"ahead of", "left of", "flush rear", "flush right"})
_HIGH_FACES = frozenset({"rear doors", "right wall", "outside left", "outside front"})
_MIDDLE_FACES = frozenset({"centreline"})


def shift(
    sheet: BuildSheet, build: Build, names: Sequence[str], by_mm: Sequence[float]
) -> tuple[Edit, ...]:
    """Return the edits that move fittings by some millimetres along each axis.

    Raises
    ------
    UnknownName
        Where one is not there.
    CannotEdit
        Where one is pinned, or something that goes along.
    """
    wanted: Wanted = {}
    for axis in AXES:
        if abs(by_mm[axis]) < SAME_MM:
            continue
        for name in names:
            refuse_pinned(build, name, followers(build, name, axis))
        for fitted in _written_anew(build, names, axis):
            place = written_mm(fitted.at_mm[axis] + by_mm[axis])
            wanted.setdefault(fitted.name, {})[axis] = place
    return edits_for(sheet, build, wanted)


def shift_as_typed(
    sheet: BuildSheet, build: Build, names: Sequence[str], texts: Sequence[str]
) -> tuple[Edit, ...]:
    """Return the edits that move fittings by lengths as a person types them, none where empty.

    Raises
    ------
    CannotEdit
        Where a text is no length, or something is pinned.
    """
    by_mm = []
    for text in texts:
        found = parse(as_typed(build, text), "length") if text.strip() else 0.0
        if isinstance(found, QuantityFault):
            raise CannotEdit(f"{text!r} is no length; write it such as {found.allowed}")
        by_mm.append(found)
    return shift(sheet, build, names, by_mm)


def turn(sheet: BuildSheet, build: Build, names: Sequence[str]) -> tuple[Edit, ...]:
    """Return the edits that turn fittings by a quarter anticlockwise, with what is built in.

    Raises
    ------
    UnknownName
        Where one is not there.
    CannotEdit
        Where one is pinned, or something built into it.

    Notes
    -----
    One alone turns about its middle; on an axis where its place is told by something else it stays
    there, as against a wall.  Several turn as one body about their common middle.
    """
    body = _body(build, names)
    boxes = {each.name: _box_mm(each) for each in body.all}
    middle = body.middle_mm
    lows = {name: _turned_low_mm(box, middle) for name, box in boxes.items()}
    held = _held_axes(body, AXES[:2])
    off = [0.0, 0.0]
    for axis in held:
        off[axis] = _anchored_mm(body.leads[0], axis) - lows[names[0]][axis]

    def values(fitted: Fitted) -> Iterator[tuple[int | str, object]]:
        new_deg = (fitted.fitting.turn_deg + _QUARTER_DEG) % _WHOLE_DEG
        yield "turn", f"{new_deg:g} deg"
        for axis in AXES[:2]:
            if fitted in body.leads and axis in held:
                continue
            told = fitted.fitting.at_mm[1 - axis]
            if isinstance(told, Relation) and told.target in boxes:
                sense_factor = -1.0 if axis == _LENGTHWAYS else 1.0
                yield axis, _said(told, _TURNED_WORDS[1 - axis][told.kind], sense_factor)
            else:
                yield axis, written_mm(lows[fitted.name][axis] + off[axis])

    return _edits(sheet, build, body, values)


def mirror(sheet: BuildSheet, build: Build, names: Sequence[str]) -> tuple[Edit, ...]:
    """Return the edits that swap left and right of fittings, with what is built into them.

    Raises
    ------
    UnknownName
        Where one is not there.
    CannotEdit
        Where one is pinned, or something built into it.

    Notes
    -----
    One alone swaps its own left and right and stays where it is, so that one turned by a quarter
    is swapped lengthways.  Several are swapped across the vehicle as one body, about their middle.
    """
    body = _body(build, names)
    alone = len(body.leads) == 1
    turned = body.leads[0].fitting.turn_deg % _HALF_DEG != 0.0
    axis = _LENGTHWAYS if alone and turned else _ACROSS
    inside = {each.name for each in body.all}

    def values(fitted: Fitted) -> Iterator[tuple[int | str, object]]:
        old_deg = fitted.fitting.turn_deg
        new_deg = ((0.0 if axis == _ACROSS else _HALF_DEG) - old_deg) % _WHOLE_DEG
        yield "mirror", not fitted.fitting.mirror
        if new_deg != old_deg:
            yield "turn", f"{new_deg:g} deg"
        if alone and fitted in body.leads:
            return
        told = fitted.fitting.at_mm[axis]
        if isinstance(told, Relation) and told.target in inside:
            yield axis, _said(told, _MIRRORED_WORDS[told.kind], -1.0)
        else:
            high_mm = placed(fitted).high_mm[axis]
            yield axis, written_mm(2 * body.middle_mm[axis] - high_mm)

    return _edits(sheet, build, body, values)


def pin(
    sheet: BuildSheet, build: Build, names: Sequence[str], *, pinned: bool
) -> tuple[Edit, ...]:
    """Return the edits that pin fittings where they stand, or let go of them."""
    others = [name for name in names if fitted_of(build, name).fitting.pinned != pinned]
    return edits_for(sheet, build, {name: {"pinned": pinned} for name in others})


def all_pinned(build: Build, names: Sequence[str]) -> bool:
    """Say whether fittings are all pinned."""
    return all(fitted_of(build, name).fitting.pinned for name in names)


def leading(build: Build, names: Sequence[str], axis: int) -> tuple[str, ...]:
    """Return those of some fittings that follow none of the others along an axis."""
    along = {name: set(followers(build, name, axis)) for name in names}
    first = [
        name for name in along if not any(name in along[other] for other in along if other != name)
    ]
    reached = set(first).union(*(along[name] for name in first))
    for name, followed in along.items():  # those that stand by each other in a ring
        if name not in reached:
            first.append(name)
            reached |= {name, *followed}
    return tuple(first)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Body:
    """Fittings that are turned or mirrored as one.

    Attributes
    ----------
    leads
        Those that were chosen.
    all
        Those and what is built into them.
    middle_mm
        Middle of the box around the leads, along and across the vehicle.
    """

    leads: tuple[Fitted, ...]
    all: tuple[Fitted, ...]
    middle_mm: tuple[float, float]


def _body(build: Build, names: Sequence[str]) -> _Body:
    for name in names:
        refuse_pinned(build, name, built_into(build, name))
    leads = tuple(fitted_of(build, name) for name in dict.fromkeys(names))
    inside = dict.fromkeys(each for lead in leads for each in built_into(build, lead.name))
    others = tuple(fitted_of(build, each) for each in inside if each not in names)
    places = [placed(lead) for lead in leads]
    along, across = (
        (min(p.low_mm[axis] for p in places) + max(p.high_mm[axis] for p in places)) / 2
        for axis in AXES[:2]
    )
    return _Body(leads=leads, all=(*leads, *others), middle_mm=(along, across))


def _written_anew(build: Build, names: Sequence[str], axis: int) -> Iterator[Fitted]:
    """Yield what needs a new length when fittings are moved along an axis."""
    leads = leading(build, names, axis)
    moved = set(leads).union(*(followers(build, name, axis) for name in leads))
    for fitted in build.fittings:
        by_length = not isinstance(fitted.fitting.at_mm[axis], Relation)
        if fitted.name in leads or (fitted.name in moved and by_length):
            yield fitted


def _box_mm(fitted: Fitted) -> tuple[tuple[float, ...], tuple[float, ...]]:
    place = placed(fitted)
    return place.low_mm, place.high_mm


def _turned_low_mm(
    box_mm: tuple[tuple[float, ...], tuple[float, ...]], middle_mm: tuple[float, float]
) -> tuple[float, float]:
    """Return the smallest corner of a box that is turned by a quarter about a middle."""
    low, high = box_mm
    return (
        middle_mm[0] - (high[1] - middle_mm[1]),
        middle_mm[1] + (low[0] - middle_mm[0]),
    )


def _held_axes(body: _Body, axes: Sequence[int]) -> tuple[int, ...]:
    """Return the axes on which one that is turned alone keeps its place by something else."""
    if len(body.leads) > 1:
        return ()
    places = body.leads[0].fitting.at_mm
    return tuple(axis for axis in axes if isinstance(places[axis], Relation))


def _anchored_mm(lead: Fitted, axis: int) -> float:
    """Return the low side after a quarter turn that keeps the side which is told by a relation."""
    told = lead.fitting.at_mm[axis]
    low, high = _box_mm(lead)
    size_mm = high[1 - axis] - low[1 - axis]
    if not isinstance(told, Relation):
        return low[axis]
    if told.kind in _HIGH_KINDS or (told.kind == "against" and told.target in _HIGH_FACES):
        return high[axis] - size_mm
    if told.kind == "centred on" or told.target in _MIDDLE_FACES:
        return (low[axis] + high[axis] - size_mm) / 2
    return low[axis]


def _said(told: Relation, kind: str, sense_factor: float) -> str:
    """Return a relation with another word; a gap from a centre may change its sense."""
    gap = " ".join(told.text.split()).removeprefix(f"{told.kind} {told.target}").strip()
    if kind == "centred on" and sense_factor < 0.0 and told.gap_mm:
        gap = written(-told.gap_mm, "length")
    return f"{kind} {told.target} {gap}".rstrip()


def _edits(
    sheet: BuildSheet,
    build: Build,
    body: _Body,
    values: Callable[[Fitted], Iterator[tuple[int | str, object]]],
) -> tuple[Edit, ...]:
    return edits_for(sheet, build, {each.name: dict(values(each)) for each in body.all})
