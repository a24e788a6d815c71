"""The views by their names: what each draws, and the set for the job pack."""

import re
from collections.abc import Callable, Iterator

from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Draft
from coachwright.drawing.placing_findings import located
from coachwright.drawing.scene import Sheet
from coachwright.drawing.sheets import ALONE, Place, fits_together, sheet_of
from coachwright.drawing.tables import findings_sheet, setting_out, setting_out_pages
from coachwright.drawing.view_elevation import elevation
from coachwright.drawing.view_iso import isometric
from coachwright.drawing.view_levels import roof, under
from coachwright.drawing.view_outside import side
from coachwright.drawing.view_plan import NoBed, plan
from coachwright.drawing.view_rear import rear
from coachwright.drawing.view_section import section
from coachwright.errors import UnknownName
from coachwright.units import QuantityFault, parse

DRAFTS: dict[str, Callable[[Content], Draft]] = {
    "plan": lambda content: plan(content, "floor"),
    "plan@floor": lambda content: plan(content, "floor"),
    "plan@hip": lambda content: plan(content, "hip"),
    "plan@bed": lambda content: plan(content, "bed"),
    "left": lambda content: elevation(content, "left"),
    "right": lambda content: elevation(content, "right"),
    "rear": lambda content: rear(content, doors_open=False),
    "rear-open": lambda content: rear(content, doors_open=True),
    "roof": roof,
    "under": under,
    "side": lambda content: side(content, "left"),
    "side@right": lambda content: side(content, "right"),
    "iso": isometric,
}
TABLES: dict[str, Callable[[Content, Place], Sheet]] = {
    "setting-out": lambda content, place: setting_out(content, place=place),
    "findings": lambda content, place: findings_sheet(content, place=place),
}
SECTION = "section@x"
ALL = "all"
"""The whole set."""
VIEWS = (*DRAFTS, SECTION, *TABLES)
"""Every view that may be asked for; x is the distance behind the front axle."""

_SECTION_RATIO = 20.0
_REAR_RATIO = 25.0
"""Two drawings stand on one sheet where that does not make them smaller than this."""
_SECTION = re.compile(r"section@(?P<where>.+)")
_BARE = re.compile(r"-?\d+(?:\.\d+)?")


def known_view(view: str) -> None:
    """Do nothing where there is such a view.

    Parameters
    ----------
    view
        One of `VIEWS`, or `ALL`.

    Raises
    ------
    UnknownName
        Where there is none.
    """
    if view != ALL and view not in DRAFTS and view not in TABLES:
        _place_mm(view)


def draft_of(content: Content, view: str) -> Draft:
    """Return one drawing by its name.

    Parameters
    ----------
    content
        The build with its layout.
    view
        One of `DRAFTS`, or ``"section@"`` with a length behind the front axle: in mm, or with
        its unit.

    Raises
    ------
    UnknownName
        Where there is no such view.
    CallError
        Where the build has nothing to show in it.
    """
    if view in DRAFTS:
        return DRAFTS[view](content)
    return section(content, _place_mm(view))


def _place_mm(view: str) -> float:
    match = _SECTION.fullmatch(view)
    if match is None:
        raise UnknownName("view", view, (*VIEWS, ALL))
    where = match["where"]
    found = parse(f"{where} mm" if _BARE.fullmatch(where) else where, "length")
    if isinstance(found, QuantityFault):
        raise UnknownName("view", view, ("section@2400", 'section@"94 in"'))
    return found


def sheet(content: Content, view: str) -> Sheet:
    """Return one view on a sheet of its own.

    Parameters
    ----------
    content
        The build with its layout.
    view
        One of `VIEWS`.

    Raises
    ------
    UnknownName
        Where there is no such view.
    CallError
        Where the build has nothing to show in it.
    """
    if view in TABLES:
        return TABLES[view](content, ALONE)
    return sheet_of(content, (draft_of(content, view),), name=view)


def sheets(content: Content) -> Iterator[Sheet]:
    """Yield the set for the job pack: each sheet knows its number.

    Parameters
    ----------
    content
        The build with its layout.

    Notes
    -----
    Two sections stand on one sheet, and the rear with its doors closed and open.  A build without
    a bed has no plan at bed height, one without findings no sheet of findings.
    """
    drawn = _drafts(content)
    pages = setting_out_pages(content)
    listed = bool(located(content))
    count = len(drawn) + pages + int(listed)
    for number, (name, drafts) in enumerate(drawn, start=1):
        yield sheet_of(content, drafts, name=name, place=Place(number=number, count=count))
    for page in range(1, pages + 1):
        place = Place(number=len(drawn) + page, count=count)
        yield setting_out(content, page=page, place=place)
    if listed:
        yield findings_sheet(content, place=Place(number=count, count=count))


def _drafts(content: Content) -> list[tuple[str, tuple[Draft, ...]]]:
    found: list[tuple[str, tuple[Draft, ...]]] = []
    for name in ("plan@floor", "plan@hip", "plan@bed", "left", "right"):
        try:
            found.append((name, (draft_of(content, name),)))
        except NoBed:
            continue
    cuts = section_places_mm(content)
    for first in range(0, len(cuts), 2):
        pair = [
            (f"section@{x_mm:.0f}", section(content, x_mm)) for x_mm in cuts[first : first + 2]
        ]
        found += _together(content, pair, _SECTION_RATIO)
    rears = [(name, draft_of(content, name)) for name in ("rear", "rear-open")]
    found += _together(content, rears, _REAR_RATIO)
    found += [
        (name, (draft_of(content, name),))
        for name in ("side", "side@right", "roof", "under", "iso")
    ]
    return found


def _together(
    content: Content, named: list[tuple[str, Draft]], scale_ratio: float
) -> list[tuple[str, tuple[Draft, ...]]]:
    """Return drawings on one sheet where they fit it at a scale or a larger one, else apart."""
    drafts = tuple(draft for _, draft in named)
    apart: list[tuple[str, tuple[Draft, ...]]] = [(name, (draft,)) for name, draft in named]
    if fits_together(content, drafts, scale_ratio):
        return [(named[0][0], drafts)]
    return apart


def section_places_mm(content: Content) -> tuple[float, ...]:
    """Return where the set cuts the living space: four places, each through much furniture.

    Notes
    -----
    The living space is parted into four; in each part the middle of the largest standing fitting
    that begins there, else the middle of the part.  Whole millimetres.
    """
    shell = content.build.vehicle.shell
    step = (shell.rear_mm - shell.cab_line_mm) / 4
    places = []
    for part in range(4):
        low = shell.cab_line_mm + part * step
        inside = [
            thing
            for thing in content.things
            if thing.inside
            and thing.number
            and not thing.carriers
            and low <= (thing.low_mm[0] + thing.high_mm[0]) / 2 < low + step
        ]
        largest = max(inside, key=lambda thing: thing.size_mm[1] * thing.size_mm[2], default=None)
        middle = (
            low + step / 2 if largest is None else (largest.low_mm[0] + largest.high_mm[0]) / 2
        )
        places.append(float(round(middle)))
    return tuple(places)
