"""The modules of a floor plan: what stands on the floor, with all that moves with it."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from coachwright.errors import CallError, UnknownName
from coachwright.layout.solids import Box, bounds_of, solid_of
from coachwright.layout.support import LEAST_CONTACT_MM
from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.position import Relation
from coachwright.reference import limit

MODULE_FACETS = ("carcass", "bed", "seat", "toilet", "tank", "slide_out", "gas_store")
"""What stands on the floor and is one of these is a module; so is what others are built into."""
KEEPS_X = frozenset({"rear doors"})
"""Faces of the shell against which a module is put for its use: it stays there."""
_CENTRED_MM = 20.0
"""A module whose middle is closer to the centreline than this stands in the middle."""


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorWish:
    """What is asked of a floor plan.

    Attributes
    ----------
    modules
        Names of the fittings to place; empty is every module of the build.
    pinned
        Names that stay where they are.
    freed
        Names that may leave the rear doors, against which they stand.
    turned
        Names that may be turned by a quarter.
    aisle_mm
        Least width of the way through; None is the width below which a way is not passable.
    """

    modules: tuple[str, ...] = ()
    pinned: tuple[str, ...] = ()
    freed: tuple[str, ...] = ()
    turned: tuple[str, ...] = ()
    aisle_mm: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Group:
    """A module with all that keeps its place to it.

    Attributes
    ----------
    root
        What stands on the floor and carries or holds the others.
    members
        All of them, the root first.
    pinned
        Stays where it is.
    keeps_x
        Stays at its place along the van; it may change sides.
    turns
        May be turned by a quarter.
    """

    root: Fitted
    members: tuple[Fitted, ...]
    pinned: bool
    keeps_x: bool
    turns: bool

    @property
    def reverses(self) -> bool:
        """Whether it may be turned end for end: nobody travels on it."""
        return not self.keeps_x and not any(
            member.part.seat is not None and member.part.seat.travel_seat
            for member in self.members
        )

    @property
    def name(self) -> str:
        """Name of the root."""
        return self.root.name

    @property
    def names(self) -> frozenset[str]:
        """Names of all members."""
        return frozenset(member.name for member in self.members)

    @property
    def bounds(self) -> Box:
        """Box around the root where it stands now."""
        return solid_of(self.root).bounds

    @property
    def centred(self) -> bool:
        """Whether it stands in the middle, or from wall to wall: its mirror image is no other."""
        standing = [m for m in self.members if m.fitting.mounting is Mounting.FLOOR]
        bounds = bounds_of(tuple(solid_of(member).bounds for member in standing))
        return abs(bounds.low_mm[1] + bounds.high_mm[1]) / 2 < _CENTRED_MM

    @property
    def area_m2(self) -> float:
        """What the root takes of the floor."""
        low, high = self.bounds.low_mm, self.bounds.high_mm
        return (high[0] - low[0]) * (high[1] - low[1]) / 1e6


def groups_of(build: Build, wish: FloorWish) -> tuple[Group, ...]:
    """Return the modules of a build, in its order.

    Parameters
    ----------
    build
        As it is.
    wish
        Which of them are placed, pinned, freed and turned.

    Raises
    ------
    UnknownName
        Where a name is none of a module.
    CallError
        Where the build has no module, or one cannot be turned because something that moves with it
        hangs on a wall.

    Notes
    -----
    What is built into a module or stands on it moves with it, and so does what is placed along the
    van by one of these, and what else bears the bed that stands on it.  Everything else stays,
    with all that is not listed.
    """
    inside = {f.name: f for f in build.fittings if _is_inside(f)}
    holders = {name: _holder(fitted, inside) for name, fitted in inside.items()}
    holders |= _bearers(inside, holders)
    roots = [name for name, holder in holders.items() if not holder]
    held = {holder for holder in holders.values() if holder}
    modules = [name for name in roots if _is_module(inside[name], held)]
    if not modules:
        raise CallError("the build has nothing that stands on its floor and could be placed")
    _known(wish, modules)
    heads = {name: _head(name, inside, holders, frozenset(modules)) for name in inside}
    return tuple(_group(name, inside, heads, holders, wish) for name in modules)


def _is_inside(fitted: Fitted) -> bool:
    return fitted.fitting.mounting in INSIDE and fitted.fitting.mounting is not Mounting.CAB


def _holder(fitted: Fitted, inside: Mapping[str, Fitted]) -> str:
    holder = fitted.fitting.within or fitted.fitting.on
    return holder if holder in inside else ""


def _bearers(inside: Mapping[str, Fitted], holders: Mapping[str, str]) -> dict[str, str]:
    """Return what bears a bed that is said to stand on another: name → that other."""
    found = {}
    for bed in inside.values():
        holder = holders[bed.name]
        if bed.part.bed is None or not holder:
            continue
        for fitted in inside.values():
            alone = not holders[fitted.name] and fitted.name not in (holder, bed.name)
            if alone and _bears(solid_of(fitted).bounds, solid_of(bed).bounds):
                found[fitted.name] = holder
    return found


def _bears(lower: Box, upper: Box) -> bool:
    gap_mm = abs(upper.low_mm[2] - lower.high_mm[2])
    return gap_mm <= limit("layout.gap").value and all(
        min(lower.high_mm[axis], upper.high_mm[axis]) - max(lower.low_mm[axis], upper.low_mm[axis])
        > LEAST_CONTACT_MM
        for axis in (0, 1)
    )


def _is_module(fitted: Fitted, held: Collection[str]) -> bool:
    named = any(getattr(fitted.part, facet) is not None for facet in MODULE_FACETS)
    return fitted.fitting.mounting is Mounting.FLOOR and (named or fitted.name in held)


def _known(wish: FloorWish, modules: Sequence[str]) -> None:
    for name in (*wish.modules, *wish.pinned, *wish.freed, *wish.turned):
        if name not in modules:
            raise UnknownName("module", name, modules)


def _head(
    name: str,
    inside: Mapping[str, Fitted],
    holders: Mapping[str, str],
    modules: frozenset[str],
) -> str:
    """Return the module that a fitting moves with; empty where it stays."""
    here, seen = name, set[str]()
    while here and here not in seen:
        if here in modules:
            return here
        seen.add(here)
        position = inside[here].fitting.at_mm[0]
        told_by = position.target if isinstance(position, Relation) else ""
        here = holders[here] or (told_by if told_by in inside else "")
    return ""


def _group(
    name: str,
    inside: Mapping[str, Fitted],
    heads: Mapping[str, str],
    holders: Mapping[str, str],
    wish: FloorWish,
) -> Group:
    root = inside[name]
    if name in wish.turned:
        _can_turn(name, inside, heads)
    others = tuple(f for f in inside.values() if heads[f.name] == name and f.name != name)
    members = (root, *others)
    held = [f for f in members if f.name == name or _root_of(f.name, holders) == name]
    keeps_x = name not in wish.freed and any(_keeps_x(f) for f in held)
    placed = not wish.modules or name in wish.modules
    return Group(
        root=root,
        members=members,
        pinned=name in wish.pinned or not placed or any(f.fitting.pinned for f in members),
        keeps_x=keeps_x,
        turns=name in wish.turned,
    )


def _can_turn(name: str, inside: Mapping[str, Fitted], heads: Mapping[str, str]) -> None:
    hung = [
        fitted.name
        for fitted in inside.values()
        if heads[fitted.name] == name and fitted.fitting.mounting is Mounting.WALL
    ]
    if hung:
        raise CallError(f"{name} cannot be turned: {', '.join(hung)} would leave the wall with it")


def _root_of(name: str, holders: Mapping[str, str]) -> str:
    while holders[name]:
        name = holders[name]
    return name


def _keeps_x(fitted: Fitted) -> bool:
    position = fitted.fitting.at_mm[0]
    return isinstance(position, Relation) and position.target in KEEPS_X


def staying(build: Build, groups: Sequence[Group]) -> Iterator[Fitted]:
    """Yield what stands inside and belongs to no module that is placed."""
    moving = {name for group in groups if not group.pinned for name in group.names}
    for fitted in build.fittings:
        if _is_inside(fitted) and fitted.name not in moving:
            yield fitted
