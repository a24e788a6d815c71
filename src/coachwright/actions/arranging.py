"""Propose panels for a roof and plans for a floor, and write a build with a proposal in it."""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, fields
from pathlib import Path

from coachwright import units
from coachwright.actions.files import write_text
from coachwright.actions.opening import complete, open_build
from coachwright.actions.refitting import text_refitted
from coachwright.actions.site_shelf import arrays_of_site
from coachwright.actions.writing import record_text
from coachwright.arrange.floor import MOST_PLANS, propose_floor
from coachwright.arrange.floor_groups import FloorWish
from coachwright.arrange.model import FloorPlan, FloorProposal, RoofPlan
from coachwright.arrange.rebuilding import let_go
from coachwright.arrange.roof import propose_roof
from coachwright.arrange.roof_energy import RoofSite, propose_roof_at
from coachwright.arrange.roof_field import RoofWish, is_roof_panel
from coachwright.arrange.solving import Better, Search
from coachwright.catalogue.loading import Catalogue, parse_toml
from coachwright.errors import CallError, CannotWrite
from coachwright.model.build import Build, BuildSheet, Fitted, Fitting
from coachwright.model.part import Part
from coachwright.model.reading import read_record

_SAME_MM = 0.5
"""Two corners closer than this on every axis are the same place."""


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofQuestion:
    """What `arrange roof` was asked, as the command line spells it.

    Attributes
    ----------
    panels
        Ids of parts, or ``all`` of the catalogue.
    mount
        Id of the part under each rigid panel; ``none``; or empty: what is under them now.
    walkways
        ``FROM:TO`` along x, each a length with its unit.
    by
        ``year``, ``month`` or ``watts``; empty: the year where a site is known, else watts.
    site
        Id of the site; empty: the first that the brief names.
    """

    panels: tuple[str, ...] = ("all",)
    most: int | None = None
    most_kinds: int | None = None
    walkways: tuple[str, ...] = ()
    mount: str = ""
    by: str = ""
    site: str = ""


def arrange_roof(
    path: Path,
    catalogue: Catalogue,
    question: RoofQuestion,
    search: Search,
    *,
    shelf: Path | None = None,
    on_better: Better | None = None,
    on_obstacle: Callable[[str], None] = lambda _name: None,
) -> RoofPlan:
    """Return the panels that a build's roof can carry.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its parts and the panels are.
    question
        Panels to choose from, and what stays free.
    search
        Limits of each search.
    shelf
        Folder in which the arrays of sites are kept; None to compute them anew.
    on_better, on_obstacle
        Told what goes on.

    Raises
    ------
    BuildFileError
        Where the build has faults.
    CallError
        Where the question cannot be answered.
    UnknownName
        Where there is no such part or site.
    """
    build = open_build(path, catalogue).build
    site = _roof_site(build, catalogue, question, shelf)
    wish = RoofWish(
        panels=_panels(build, catalogue, question.panels),
        most=question.most,
        most_kinds=question.most_kinds,
        walkways_mm=tuple(_stretch_mm(text) for text in question.walkways),
        mount=_mount(build, catalogue, question.mount),
    )
    if site is None:
        return propose_roof(build, wish, search, on_better=on_better, on_obstacle=on_obstacle)
    return propose_roof_at(
        build, wish, search, site=site, on_better=on_better, on_obstacle=on_obstacle
    )


def _roof_site(
    build: Build, catalogue: Catalogue, question: RoofQuestion, shelf: Path | None
) -> RoofSite | None:
    """Return the site whose sun counts; None where watts count."""
    named = question.site or next(iter(build.brief.climate.sites), "")
    by = question.by or ("year" if named else "watts")
    if by == "watts":
        if question.site:
            raise CallError(
                "watts are the same at every site; leave --site out, or count --by year"
            )
        return None
    if not named:
        raise CallError(
            f"the brief names no site, so no {by} can be counted; name one with --site, or count "
            "--by watts"
        )
    arrays = arrays_of_site(catalogue, named, shelf)
    return RoofSite(arrays=arrays, by="year" if by == "year" else "month")


def _panels(build: Build, catalogue: Catalogue, ids: Sequence[str]) -> tuple[Part, ...]:
    if tuple(ids) == ("all",):
        listed = [*catalogue.parts(), *(f.part for f in build.fittings if is_roof_panel(f))]
        found = {part.id: part for part in listed}
        return tuple(
            part
            for part in found.values()
            if part.solar_panel is not None and not part.solar_panel.folding
        )
    own = {fitted.part.id: fitted.part for fitted in build.fittings}
    parts = tuple(own[each] if each in own else catalogue.part(each) for each in ids)
    for part in parts:
        if part.solar_panel is None or part.solar_panel.folding:
            raise CallError(f"{part.id} is no solar panel for a roof; name others, or all")
    return parts


def _mount(build: Build, catalogue: Catalogue, asked: str) -> Part | None:
    if asked == "none":
        return None
    if asked:
        return catalogue.part(asked)
    carriers = {f.fitting.on for f in build.fittings if is_roof_panel(f)}
    return next(
        (f.part for f in build.fittings if f.name in carriers and f.part.roof_rack is None),
        None,
    )


def _stretch_mm(text: str) -> tuple[float, float]:
    ends = [units.parse(each, "length") for each in text.split(":")]
    found = [end for end in ends if not isinstance(end, units.QuantityFault)]
    if len(ends) != 2 or len(found) != 2:  # noqa: PLR2004  # from and to
        raise CallError(f'{text!r} is no stretch; write it such as "2300 mm:2700 mm"')
    return found[0], found[1]


def fittings_text(fittings: Sequence[Fitting]) -> str:
    """Return fittings as they stand in a build file, to be pasted."""
    return "\n".join(f"[[fittings]]\n{record_text(fitting)}" for fitting in fittings)


def write_roof(path: Path, catalogue: Catalogue, plan: RoofPlan, target: Path) -> None:
    """Write a copy of a build file with a roof's panels exchanged.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its parts are.
    plan
        The proposal.
    target
        The new file; it may not be there yet.

    Raises
    ------
    CannotWrite
        Where the copy would not be the build that was proposed, or cannot be written.
    """
    if plan.faults:
        raise CannotWrite(f"the proposal failed its check: {plan.faults[0]}")
    opened = open_build(path, catalogue)
    _write(
        path,
        target,
        catalogue,
        opened.sheet,
        plan.build,
        removed=plan.removed,
        added=plan.fittings,
        changed=let_go(opened.build, plan.removed),
    )


def floor_wish(*, modules: str, pinned: str, freed: str, turned: str, aisle: str) -> FloorWish:
    """Return what is asked of a floor plan.

    Parameters
    ----------
    modules, pinned, freed, turned
        Names with commas between them.
    aisle
        A length with its unit; empty for the usual.

    Raises
    ------
    CallError
        Where the width of the way is no length.
    """
    width_mm = units.parse(aisle, "length") if aisle else None
    if isinstance(width_mm, units.QuantityFault):
        raise CallError(f"{aisle!r} is no width of a way; write it such as {'450 mm'!r}")
    return FloorWish(
        modules=_names(modules),
        pinned=_names(pinned),
        freed=_names(freed),
        turned=_names(turned),
        aisle_mm=width_mm,
    )


def _names(text: str) -> tuple[str, ...]:
    return tuple(name.strip() for name in text.split(",") if name.strip())


def chosen_plan(proposal: FloorProposal, number: int) -> FloorPlan:
    """Return one of the plans by its number, from 1.

    Raises
    ------
    CallError
        Where there is no such plan.
    """
    if number > len(proposal.plans):
        raise CallError(f"there is no plan {number}; there are {len(proposal.plans)}")
    return proposal.plans[number - 1]


def arrange_floor(
    path: Path,
    catalogue: Catalogue,
    wish: FloorWish,
    search: Search,
    *,
    most: int = MOST_PLANS,
    on_better: Better | None = None,
    on_plan: Callable[[str], None] = lambda _words: None,
) -> FloorProposal:
    """Return floor plans for a build, or the wishes that collide.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its parts are.
    wish
        What is placed, pinned, freed and turned.
    search
        Limits of all searches together.
    most
        So many plans at most.
    on_better, on_plan
        Told what goes on.

    Raises
    ------
    BuildFileError
        Where the build has faults.
    UnknownName
        Where a name is none of a module.
    CallError
        Where the build has no module.
    """
    build = open_build(path, catalogue).build
    return propose_floor(build, wish, search, most=most, on_better=on_better, on_plan=on_plan)


def write_floor(path: Path, catalogue: Catalogue, plan: FloorPlan, target: Path) -> None:
    """Write a copy of a build file with a floor plan in it.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its parts are.
    plan
        The proposal.
    target
        The new file; it may not be there yet.

    Raises
    ------
    CannotWrite
        Where the copy would not be the build that was proposed, or cannot be written.
    """
    opened = open_build(path, catalogue)
    changed = {fitting.name: fitting for fitting in plan.fittings}
    _write(path, target, catalogue, opened.sheet, plan.build, changed=changed)


def plan_data(plan: RoofPlan | FloorPlan) -> dict[str, object]:
    """Return a proposal as plain data, its fittings as a file spells them."""
    data = {field.name: getattr(plan, field.name) for field in fields(plan)}
    del data["build"]
    data["fittings"] = [
        fitting.model_dump(mode="json", by_alias=True, exclude_defaults=True)
        for fitting in plan.fittings
    ]
    return data


def proposal_data(proposal: FloorProposal) -> dict[str, object]:
    """Return floor plans as plain data."""
    data = {field.name: getattr(proposal, field.name) for field in fields(proposal)}
    return data | {"plans": [plan_data(plan) for plan in proposal.plans]}


def _write(
    path: Path,
    target: Path,
    catalogue: Catalogue,
    sheet: BuildSheet,
    wanted: Build,
    *,
    removed: Collection[str] = (),
    added: Sequence[Fitting] = (),
    changed: Mapping[str, Fitting],
) -> None:
    """Write the copy if it reads as the build that is wanted."""
    text = text_refitted(
        path.read_text(encoding="utf-8-sig"),
        sheet,
        removed=removed,
        added=added,
        changed=changed,
    )
    data, _ = parse_toml(text, str(target))
    read, _ = (None, ()) if data is None else read_record(BuildSheet, data, str(target))
    if read is None or not _same(complete(read, str(target), catalogue), wanted):
        raise CannotWrite(
            f"{target}: the proposal does not fit into the file's form; paste the fittings by hand"
        )
    write_text(target, text, new_only=True)


def _same(one: Build, other: Build) -> bool:
    first = {fitted.name: fitted for fitted in one.fittings}
    second = {fitted.name: fitted for fitted in other.fittings}
    return set(first) == set(second) and all(
        _same_fitted(first[name], second[name]) for name in first
    )


def _same_fitted(one: Fitted, other: Fitted) -> bool:
    apart_mm = max(abs(a - b) for a, b in zip(one.at_mm, other.at_mm, strict=True))
    plain = {"at_mm": (0.0, 0.0, 0.0)}
    return (
        apart_mm < _SAME_MM
        and one.part == other.part
        and one.fitting.model_copy(update=plain) == other.fitting.model_copy(update=plain)
    )
