"""Pack rectangles into a field with obstacles so that they are worth the most, with proof."""

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from coachwright.arrange.patterns import Axis, places_mm
from coachwright.arrange.solving import Better, Proof, Search, solve
from coachwright.errors import OutOfRange

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel, IntVar


@dataclass(frozen=True, kw_only=True, slots=True)
class Kind:
    """Rectangles of one kind.

    Attributes
    ----------
    name
        Unlike any other kind's.
    length_mm, width_mm
        Along x and y before it is turned.
    most
        How many of it may be taken.
    turns
        It may stand turned by a quarter.
    mass_g
        Of one.
    """

    name: str
    length_mm: int
    width_mm: int
    most: int
    turns: bool = True
    mass_g: int = 0


@dataclass(frozen=True, kw_only=True, slots=True)
class Block:
    """A part of the field that no rectangle may touch, or a platform that it may not half leave.

    Attributes
    ----------
    low_mm, high_mm
        Corners.
    platform
        Rectangles stand wholly on it or wholly beside it.
    """

    name: str
    low_mm: tuple[int, int]
    high_mm: tuple[int, int]
    platform: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Spot:
    """A rectangle at a place of the field.

    Attributes
    ----------
    low_mm, high_mm
        Its corners as it stands there.
    """

    kind: Kind
    turned: bool
    low_mm: tuple[int, int]
    high_mm: tuple[int, int]


Value = Callable[[Spot], int]
"""What a rectangle is worth at its place."""
Allowed = Callable[[Spot], bool]


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """What is packed into.

    Attributes
    ----------
    gap_mm
        Left free between two rectangles; not to the border or to blocks.
    stops_mm
        Lines along x, by their y, at which some kinds are held up as if by a border.
    most_kinds
        How many kinds may be mixed; None is any number.
    most_g
        Mass of all together; None is any.
    """

    length_mm: int
    width_mm: int
    gap_mm: int = 0
    blocks: tuple[Block, ...] = ()
    stops_mm: tuple[int, ...] = ()
    most_kinds: int | None = None
    most_g: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Packed:
    """A packing and how good it is."""

    spots: tuple[Spot, ...]
    proof: Proof


def pack(
    *,
    field: Field,
    kinds: Sequence[Kind],
    value_of: Value,
    search: Search,
    allowed: Allowed = lambda _spot: True,
    on_better: Better | None = None,
) -> Packed:
    """Return the packing that is worth most.

    Parameters
    ----------
    field
        Border, blocks, gap and what all together may be.
    kinds
        Rectangles to choose from.
    value_of
        What a rectangle is worth where it stands.
    search
        Time limit and seed.
    allowed
        Whether a rectangle may stand at a place, besides border and blocks.
    on_better
        Told of each better packing.

    Raises
    ------
    OutOfRange
        Where a size, a count or the gap is not positive.

    Notes
    -----
    Set packing: one variable for each spot of the normal patterns, at most one of those that cover
    a cell.  The proof holds over those spots.  No packing anywhere is worth more where the worth
    of a rectangle does not depend on its place and each kind is allowed either everywhere or
    between two of the stops.

    References
    ----------
    [beasley-1985], [cote-iori-2018]
    """
    from ortools.sat.python import cp_model  # noqa: PLC0415  # half a second

    for kind in kinds:
        if min(kind.length_mm, kind.width_mm, kind.most) <= 0:
            raise OutOfRange(kind.name, (kind.length_mm, kind.width_mm, kind.most), "above 0")
    spots = [spot for spot in _spots(field, kinds) if allowed(spot)]
    model = cp_model.CpModel()
    chosen = add_spots(model, spots)
    add_no_overlap(model, chosen, spots, field)
    add_most(model, chosen, spots)
    add_kinds(model, chosen, spots, field)
    add_mass(model, chosen, spots, field)
    add_value(model, chosen, spots, value_of)
    solver, proof = solve(model, search, on_better)
    taken = [
        spot
        for spot, choice in zip(spots, chosen, strict=True)
        if proof.found and solver.boolean_value(choice)
    ]
    return Packed(spots=tuple(sorted(taken, key=lambda spot: spot.low_mm)), proof=proof)


def _spots(field: Field, kinds: Sequence[Kind]) -> Iterator[Spot]:
    """Yield every spot of the normal patterns that is within the border and off the blocks."""
    poses = [(kind, turned, _size_mm(kind, turned=turned)) for kind, turned in _poses(kinds)]
    gap_mm = field.gap_mm
    on_axis = []
    for axis, whole_mm in enumerate((field.length_mm, field.width_mm)):
        sizes: dict[int, int] = defaultdict(int)
        for kind, _, size_mm in poses:
            sizes[size_mm[axis] + gap_mm] += kind.most
        edges = _edges_mm(field, axis)
        # a rectangle with the gap behind it may pass borders and blocks by the gap
        whole = Axis(
            size_mm=whole_mm + gap_mm,
            edges_low_mm=tuple(low + gap_mm for low, _ in edges),
            edges_high_mm=tuple(high for _, high in edges),
            sizes=sizes,
        )
        on_axis.append(places_mm(whole, tuple(sizes)))
    for kind, turned, size_mm in poses:
        for y_mm in on_axis[1][size_mm[1] + gap_mm]:
            for x_mm in on_axis[0][size_mm[0] + gap_mm]:
                low_mm, high_mm = (x_mm, y_mm), (x_mm + size_mm[0], y_mm + size_mm[1])
                if not any(_hits(low_mm, high_mm, block) for block in field.blocks):
                    yield Spot(kind=kind, turned=turned, low_mm=low_mm, high_mm=high_mm)


def _edges_mm(field: Field, axis: int) -> list[tuple[int, int]]:
    """Return pairs of edges that a rectangle can be pushed against from below and from above."""
    edges = [(block.low_mm[axis], block.high_mm[axis]) for block in field.blocks]
    # inside a platform it is pushed against the platform's own edges
    edges += [
        (block.high_mm[axis], block.low_mm[axis]) for block in field.blocks if block.platform
    ]
    stops = field.stops_mm if axis == 1 else ()
    return [*edges, *((stop, stop) for stop in stops)]


def _poses(kinds: Sequence[Kind]) -> Iterator[tuple[Kind, bool]]:
    for kind in kinds:
        yield kind, False
        if kind.turns and kind.length_mm != kind.width_mm:
            yield kind, True


def _size_mm(kind: Kind, *, turned: bool) -> tuple[int, int]:
    if turned:
        return kind.width_mm, kind.length_mm
    return kind.length_mm, kind.width_mm


def _hits(low_mm: tuple[int, int], high_mm: tuple[int, int], block: Block) -> bool:
    meets = all(
        low_mm[axis] < block.high_mm[axis] and high_mm[axis] > block.low_mm[axis]
        for axis in (0, 1)
    )
    within = block.platform and all(
        low_mm[axis] >= block.low_mm[axis] and high_mm[axis] <= block.high_mm[axis]
        for axis in (0, 1)
    )
    return meets and not within


def add_spots(model: "CpModel", spots: Sequence[Spot]) -> list["IntVar"]:
    """Add a variable for each spot: a rectangle of its kind stands there."""
    return [
        model.new_bool_var(
            f"{spot.kind.name}{'-turned' if spot.turned else ''}@{spot.low_mm[0]},{spot.low_mm[1]}"
        )
        for spot in spots
    ]


def add_no_overlap(
    model: "CpModel", chosen: Sequence["IntVar"], spots: Sequence[Spot], field: Field
) -> None:
    """Add for each cell that at most one rectangle, with the gap behind it, covers it.

    Notes
    -----
    Cells lie between the lower edges of spots: where two rectangles overlap they share the cell
    at the larger of their lower edges on each axis.  A cell whose spots all cover another is left
    out.
    """
    cuts = [sorted({spot.low_mm[axis] for spot in spots}) for axis in (0, 1)]
    covering: dict[tuple[int, int], set[int]] = defaultdict(set)
    for index, spot in enumerate(spots):
        ranges = [
            range(
                bisect_left(cuts[axis], spot.low_mm[axis]),
                bisect_left(cuts[axis], spot.high_mm[axis] + field.gap_mm),
            )
            for axis in (0, 1)
        ]
        for column in ranges[0]:
            for row in ranges[1]:
                covering[column, row].add(index)
    for number, cell in enumerate(_largest(covering)):
        model.add_at_most_one([chosen[index] for index in sorted(cell)]).with_name(
            f"cell-{number}"
        )


def _largest(covering: dict[tuple[int, int], set[int]]) -> list[set[int]]:
    """Return the cells' sets of more than one spot that are not part of a neighbour's."""
    kept = []
    for (column, row), cell in covering.items():
        neighbours = (
            covering.get((column + across, row + along), set())
            for across, along in ((-1, 0), (1, 0), (0, -1), (0, 1))
        )
        if len(cell) > 1 and not any(cell < other for other in neighbours):
            kept.append(cell)
    return list({frozenset(cell): cell for cell in kept}.values())


def add_most(model: "CpModel", chosen: Sequence["IntVar"], spots: Sequence[Spot]) -> None:
    """Add for each kind that no more than there are of it are taken."""
    for kind, choices in _by_kind(chosen, spots).items():
        model.add(sum(choices) <= kind.most).with_name(f"most-{kind.name}")


def add_kinds(
    model: "CpModel", chosen: Sequence["IntVar"], spots: Sequence[Spot], field: Field
) -> None:
    """Add that no more kinds are mixed than wanted."""
    if field.most_kinds is None:
        return
    used = []
    for kind, choices in _by_kind(chosen, spots).items():
        taken = model.new_bool_var(f"uses-{kind.name}")
        model.add_max_equality(taken, choices)
        used.append(taken)
    model.add(sum(used) <= field.most_kinds).with_name("kinds")


def add_mass(
    model: "CpModel", chosen: Sequence["IntVar"], spots: Sequence[Spot], field: Field
) -> None:
    """Add that all together weigh no more than they may."""
    if field.most_g is not None:
        masses = (spot.kind.mass_g * choice for spot, choice in zip(spots, chosen, strict=True))
        model.add(sum(masses) <= max(0, field.most_g)).with_name("mass")


def add_value(
    model: "CpModel", chosen: Sequence["IntVar"], spots: Sequence[Spot], value_of: Value
) -> None:
    """Add what is to be as large as possible: Σ worth of the rectangles taken."""
    model.maximize(
        sum(value_of(spot) * choice for spot, choice in zip(spots, chosen, strict=True))
    )


def _by_kind(chosen: Sequence["IntVar"], spots: Sequence[Spot]) -> dict[Kind, list["IntVar"]]:
    found: dict[Kind, list[IntVar]] = defaultdict(list)
    for spot, choice in zip(spots, chosen, strict=True):
        found[spot.kind].append(choice)
    return found
