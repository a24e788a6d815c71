"""The drawing board: one view of a build drawn for the screen, with what can be moved in it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from coachwright.actions.following import AXES, followers
from coachwright.actions.placing import as_written
from coachwright.assess import Assessment
from coachwright.drawing.atlas import draft_of
from coachwright.drawing.casting import Tag
from coachwright.drawing.composing import at_scale
from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Draft
from coachwright.drawing.lettering import text_width_mm
from coachwright.drawing.svg import svg
from coachwright.drawing.things import Thing
from coachwright.drawing.view_plan import NoBed
from coachwright.errors import CoachwrightError
from coachwright.layout.model import Layout
from coachwright.model.build import INSIDE, Build
from coachwright.model.placement import Point
from coachwright.model.shell import narrowest_half_width_mm

GRID_MM = 10.0
FINE_MM = 1.0
"""Steps of the arrow keys."""
LETTERS_MM = 2.4
"""Em square of the names in the fittings, on the paper of the screen."""
_ROOM_MM = (2000.0, 2000.0)
_SCREEN_RATIO = 45.0
"""Of the paper on the screen: lettering stands in a readable size beside the van."""
_THUMB_RATIO = 100.0


@dataclass(frozen=True, kw_only=True, slots=True)
class View:
    """One view that the board offers.

    Attributes
    ----------
    across_axis, across_factor, up_axis
        Which axis of the vehicle runs to the right on the paper, its sense, and which runs up.
    """

    name: str
    title: str
    across_axis: int
    across_factor: float
    up_axis: int


VIEWS: tuple[View, ...] = tuple(
    View(name=name, title=title, across_axis=across, across_factor=factor, up_axis=up)
    for name, title, across, factor, up in (
        ("plan@hip", "Plan, hip", 0, 1.0, 1),
        ("plan@floor", "Plan, floor", 0, 1.0, 1),
        ("plan@bed", "Plan, bed", 0, 1.0, 1),
        ("left", "Left inside", 0, -1.0, 2),
        ("right", "Right inside", 0, 1.0, 2),
        ("roof", "Roof", 0, 1.0, 1),
        ("rear", "Rear doors", 1, 1.0, 2),
        ("under", "Underbody", 0, 1.0, 1),
    )
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """A fitting on the board.

    Attributes
    ----------
    words
        Its name for people.
    part
        What it is.
    low_mm, high_mm
        Corners of the box around it.
    boxes_mm
        What it is made of.
    carriers
        What it is built into, the nearest first.
    follows
        For each axis, what moves along when it is moved.
    stops_mm
        For each axis, the faces of the shell that its near and far side can stand against.
    at
        Where it stands, as written.
    pinned
        Stays where it is.
    shown
        Whether this view draws it.
    label_mm
        Middle of the largest free place of its face on which its name finds room, as the view
        sees it; None where there is no room.
    """

    name: str
    words: str
    part: str
    low_mm: Point
    high_mm: Point
    boxes_mm: tuple[tuple[Point, Point], ...]
    carriers: tuple[str, ...]
    follows: tuple[tuple[str, ...], ...]
    stops_mm: tuple[tuple[float, ...], ...]
    at: tuple[str, ...]
    pinned: bool
    shown: bool
    label_mm: tuple[float, float] | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Zone:
    """An access zone, and what stands in it; a waived one is shown by nothing."""

    fitting: str
    purpose: str
    low_mm: Point
    high_mm: Point
    blocked_by: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Clash:
    """Two fittings in one place."""

    one: str
    other: str
    low_mm: Point
    high_mm: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Board:
    """One view on the screen.

    Attributes
    ----------
    drawing
        As SVG; one unit is one millimetre of paper.
    paper_mm
        Its width and height.
    low_mm
        The lower left corner of the paper, in mm of the vehicle as the view sees it.
    """

    view: View
    title: str
    drawing: str
    paper_mm: tuple[float, float]
    low_mm: tuple[float, float]
    scale_ratio: float
    grid_mm: float
    fine_mm: float
    letters_mm: float
    pieces: tuple[Piece, ...]
    zones: tuple[Zone, ...]
    clashes: tuple[Clash, ...]


class NotDrawn(CoachwrightError):
    """A view has no room for what is written in it."""


def view_named(name: str) -> View:
    """Return a view by its name; the first where there is no such one."""
    return next((view for view in VIEWS if view.name == name), VIEWS[0])


def views_of(build: Build) -> tuple[View, ...]:
    """Return the views that show something of a build."""
    beds = any(f.fitting.mounting in INSIDE for f in build.having("bed"))
    return tuple(view for view in VIEWS if beds or view.name != "plan@bed")


def board(assessment: Assessment, view: View, system: str) -> Board:
    """Return one view of a build for the screen.

    Parameters
    ----------
    assessment
        Of the build.
    view
        One of `VIEWS`.
    system
        Units of the dimensions.

    Raises
    ------
    NotDrawn
        Where what is written finds no room.
    """
    content = content_of(assessment)
    try:
        draft = draft_of(content, view.name)
    except NoBed:
        view = VIEWS[0]
        draft = draft_of(content, view.name)
    return _board(assessment, content, draft, view, system)


def view_showing(assessment: Assessment, name: str) -> View | None:
    """Return the first view that draws a fitting; None where none does."""
    content = content_of(assessment)
    for view in views_of(assessment.build):
        if any(tag.thing.name == name for tag in draft_of(content, view.name).tags):
            return view
    return None


def thumbnail(assessment: Assessment, system: str) -> str:
    """Return a small plan of a build without measures and labels, as SVG."""
    draft = draft_of(content_of(assessment), VIEWS[0].name)
    return _drawing(_bare(draft, chains=False), _THUMB_RATIO, system)[0]


def _board(
    assessment: Assessment, content: Content, draft: Draft, view: View, system: str
) -> Board:
    drawing, paper_mm, low_mm = _drawing(_bare(draft), _SCREEN_RATIO, system)
    layout = assessment.layout
    tags = {tag.thing.name: tag for tag in draft.tags}
    return Board(
        view=view,
        title=f"{draft.title}, {draft.subtitle}" if draft.subtitle else draft.title,
        drawing=drawing,
        paper_mm=paper_mm,
        low_mm=low_mm,
        scale_ratio=_SCREEN_RATIO,
        grid_mm=GRID_MM,
        fine_mm=FINE_MM,
        letters_mm=LETTERS_MM,
        pieces=tuple(_pieces(assessment.build, layout, content, tags)),
        zones=tuple(
            Zone(
                fitting=zone.fitting,
                purpose=zone.purpose,
                low_mm=zone.space.low_mm,
                high_mm=zone.space.high_mm,
                blocked_by=zone.blocked_by,
            )
            for zone in layout.zones
            if zone.waived is None
        ),
        clashes=tuple(
            Clash(
                one=clash.one,
                other=clash.other,
                low_mm=clash.overlap.where.low_mm,
                high_mm=clash.overlap.where.high_mm,
            )
            for clash in layout.clashes
        ),
    )


def content_of(assessment: Assessment) -> Content:
    """Return what is drawn of a build, whichever view draws it."""
    fittings = assessment.build.fittings
    return Content(
        build=assessment.build,
        layout=assessment.layout,
        findings=assessment.findings,
        numbers={fitted.name: str(place) for place, fitted in enumerate(fittings, start=1)},
        tyre_diameter_mm=assessment.road.tyres.dimensions.diameter_mm,
    )


def _bare(draft: Draft, *, chains: bool = True) -> Draft:
    """Return a draft without labels and marks.

    On the screen names stand in the fittings themselves, and what is in the way is hatched.
    """
    bare = replace(draft, tags=(), notes=(), marks=(), sizes=False)
    return bare if chains else replace(bare, chains=(), widths=())


def _drawing(
    draft: Draft, scale_ratio: float, system: str
) -> tuple[str, tuple[float, float], tuple[float, float]]:
    """Return a draft as SVG, the size of its paper, and where the paper's corner stands."""
    made = at_scale(draft, scale_ratio=scale_ratio, room_mm=_ROOM_MM, system=system)
    if made is None:
        raise NotDrawn(f"{draft.title}: what is written finds no room")
    scene = made.scene
    paper_mm = (
        (scene.high_mm[0] - scene.low_mm[0]) / scale_ratio,
        (scene.high_mm[1] - scene.low_mm[1]) / scale_ratio,
    )
    return svg(scene), paper_mm, scene.low_mm


def _pieces(
    build: Build, layout: Layout, content: Content, tags: Mapping[str, Tag]
) -> Iterator[Piece]:
    things = {thing.name: thing for thing in content.things}
    for fitted in build.fittings:
        thing = things.get(fitted.name)
        if thing is not None:
            yield Piece(
                name=fitted.name,
                words=thing.words,
                part=fitted.part.name,
                low_mm=thing.low_mm,
                high_mm=thing.high_mm,
                boxes_mm=thing.boxes_mm,
                carriers=thing.carriers,
                follows=tuple(followers(build, fitted.name, axis) for axis in AXES),
                stops_mm=_stops_mm(build, layout, thing),
                at=tuple(as_written(fitted)),
                pinned=fitted.fitting.pinned,
                shown=fitted.name in tags,
                label_mm=_label_mm(tags.get(fitted.name), thing.words),
            )


def _label_mm(tag: Tag | None, words: str) -> tuple[float, float] | None:
    """Return where a name stands in a fitting, on the largest free place that it fits."""
    if tag is None or not tag.free or not tag.seen:
        return None
    width_mm = (text_width_mm(words, LETTERS_MM) + LETTERS_MM) * _SCREEN_RATIO
    height_mm = LETTERS_MM * _SCREEN_RATIO
    for left, low, right, high in tag.places_mm:
        if right - left >= width_mm and high - low >= height_mm:
            return ((left + right) / 2, (low + high) / 2)
    return None


def _stops_mm(build: Build, layout: Layout, thing: Thing) -> tuple[tuple[float, ...], ...]:
    shell, finishes = build.vehicle.shell, layout.build_up
    if not thing.inside:
        return ((), (0.0,), ())
    half_mm = narrowest_half_width_mm(shell, thing.low_mm[2], thing.high_mm[2])
    wall_mm = half_mm - finishes.walls_mm
    return (
        (shell.cab_line_mm, shell.rear_mm - finishes.doors_mm),
        (-wall_mm, wall_mm),
        (finishes.floor_mm, shell.ceiling_mm - finishes.ceiling_mm),
    )
