"""From a sheet that names a standard build and options to an ordinary sheet.

The options are applied in the order chosen, the customer's own changes last.  Where two wishes
collide the first stands, the second is left out, and the conflict names both and their common
cause; it becomes a finding.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches

from coachwright.errors import Fault
from coachwright.model.build import (
    BuildSheet,
    Changes,
    Fitting,
    Option,
    OptionConflict,
)

OWN_CHANGES = "the customer's own changes"
"""How the sheet's own changes are named as a wish."""
_OF_MOVES = ("at_mm", "turn_deg", "mirror", "mounting", "on", "within", "pinned")
"""What a moved fitting may have otherwise than in the standard build."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Resolved:
    """An ordinary sheet, and what collided on the way to it."""

    sheet: BuildSheet
    conflicts: tuple[OptionConflict, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class _Wish:
    name: str
    changes: Changes


def resolve(
    sheet: BuildSheet, standard: BuildSheet | None, file: str
) -> tuple[Resolved | None, tuple[Fault, ...]]:
    """Apply options and changes to a standard build.

    Parameters
    ----------
    sheet
        As written.
    standard
        The standard build that it names, if it names one.
    file
        Name for the faults.

    Returns
    -------
    tuple
        The ordinary sheet and no faults, or None and every fault.
    """
    base = sheet if standard is None else standard
    faults = tuple(_faults(sheet, standard, base, file))
    if faults:
        return None, faults
    offers = {option.name: option for option in base.offers}
    chosen = tuple(offers[name] for name in sheet.options)
    conflicts = list(_option_conflicts(chosen, offers))
    left_out = {conflict.wish for conflict in conflicts if conflict.kind == "excluded"}
    wishes = [
        _Wish(name=o.title, changes=o.changes) for o in chosen if o.title not in left_out
    ] + [_Wish(name=OWN_CHANGES, changes=sheet.changes)]
    fittings, collisions, unknown = _apply(wishes, base.fittings, file)
    if unknown:
        return None, unknown
    ordinary = _ordinary(sheet, base, fittings)
    return Resolved(sheet=ordinary, conflicts=(*conflicts, *collisions)), ()


def _ordinary(sheet: BuildSheet, base: BuildSheet, fittings: tuple[Fitting, ...]) -> BuildSheet:
    return sheet.model_copy(
        update={
            "vehicle": sheet.vehicle or base.vehicle,
            "own_vehicle": sheet.own_vehicle or base.own_vehicle,
            "changes": Changes(),
            "fittings": fittings,
            "finishes": sheet.finishes or base.finishes,
            "water_runs": sheet.water_runs or base.water_runs,
            "vehicle_spare_removed": sheet.vehicle_spare_removed or base.vehicle_spare_removed,
            "own_parts": (*base.own_parts, *sheet.own_parts)
            if base is not sheet
            else sheet.own_parts,
            "offers": (),
        }
    )


def _faults(
    sheet: BuildSheet, standard: BuildSheet | None, base: BuildSheet, file: str
) -> Iterator[Fault]:
    if standard is not None and sheet.fittings:
        yield Fault(
            file=file,
            field="fittings",
            found=f"{len(sheet.fittings)} fittings beside standard = {sheet.standard!r}",
            allowed="only what differs from the standard build",
            action="put them under changes.added, or take the standard out",
        )
    if standard is not None and standard.standard:
        yield Fault(
            file=file,
            field="standard",
            found=f'"{sheet.standard}", which itself names the standard "{standard.standard}"',
            allowed="a standard build that is complete in itself",
            action="name another standard build",
        )
    if not (sheet.vehicle or sheet.own_vehicle or base.vehicle or base.own_vehicle):
        yield Fault(
            file=file,
            field="vehicle",
            found="nothing",
            allowed="the id of a base vehicle, or a table own_vehicle",
            action="add it ('coachwright vehicles list' shows them)",
        )
    if sheet.vehicle and sheet.own_vehicle:
        yield Fault(
            file=file,
            field="vehicle",
            found=f'"{sheet.vehicle}" and a table own_vehicle',
            allowed="one of the two",
            action="take one out",
        )
    yield from _option_faults(sheet.options, base.offers, file)


def _option_faults(
    options: tuple[str, ...], offers: tuple[Option, ...], file: str
) -> Iterator[Fault]:
    names = [option.name for option in offers]
    for index, name in enumerate(options):
        if name not in names:
            close = get_close_matches(name, names, n=1)
            yield Fault(
                file=file,
                field=f"options[{index}]",
                found=f'"{name}"',
                allowed="an option of the standard build: " + (", ".join(names) or "none"),
                action=f"did you mean {close[0]!r}?" if close else "write one that exists",
            )
        elif name in options[:index]:
            yield Fault(
                file=file,
                field=f"options[{index}]",
                found=f'"{name}" a second time',
                allowed="each option once",
                action="take one out",
            )


def _option_conflicts(
    chosen: tuple[Option, ...], offers: dict[str, Option]
) -> Iterator[OptionConflict]:
    names = {option.name for option in chosen}
    for index, option in enumerate(chosen):
        for required in option.requires:
            if required not in names:
                other = offers[required].title if required in offers else required
                yield OptionConflict(
                    wish=option.title,
                    other=other,
                    cause=f"{option.title} needs {other}, which is not chosen",
                    kind="required",
                )
        for earlier in chosen[:index]:
            cause = _exclusion(option, earlier)
            if cause:
                yield OptionConflict(
                    wish=option.title, other=earlier.title, cause=cause, kind="excluded"
                )


def _exclusion(one: Option, other: Option) -> str:
    for option, name in ((one, other.name), (other, one.name)):
        for exclusion in option.excludes:
            if exclusion.option == name:
                return exclusion.cause
    return ""


def _apply(
    wishes: Iterable[_Wish], fittings: tuple[Fitting, ...], file: str
) -> tuple[tuple[Fitting, ...], tuple[OptionConflict, ...], tuple[Fault, ...]]:
    current: dict[str, Fitting] = {}
    for fitting in fittings:
        current.setdefault(fitting.name, fitting)
    # those whose name is taken stay, so that linking finds them and says so
    others = [fitting for fitting in fittings if current[fitting.name] is not fitting]
    changed_by: dict[str, str] = {}
    conflicts: list[OptionConflict] = []
    faults: list[Fault] = []
    for wish in wishes:
        for name, new in _steps(wish.changes, current):
            earlier = changed_by.get(name, "")
            if earlier and wish.name not in (earlier, OWN_CHANGES):
                conflicts.append(_same_fitting(wish.name, earlier, name))
            elif name not in current and not _adds(wish.changes, name):
                if earlier:
                    conflicts.append(_same_fitting(wish.name, earlier, name))
                else:
                    faults.append(_no_fitting(name, current, file))
            elif new in wish.changes.added and name in current:
                faults.append(_there_already(name, file))
            elif new is None:
                del current[name]
                changed_by[name] = wish.name
            else:
                current[name] = new
                changed_by[name] = wish.name
    return (*current.values(), *others), tuple(conflicts), tuple(faults)


def _steps(changes: Changes, current: dict[str, Fitting]) -> Iterator[tuple[str, Fitting | None]]:
    for name in changes.removed:
        yield name, None
    for move in changes.moved:
        here = current.get(move.fitting)
        told = {name: getattr(move, name) for name in _OF_MOVES}
        update = {name: value for name, value in told.items() if value is not None}
        yield move.fitting, here and here.model_copy(update=update)
    for exchange in changes.exchanged:
        here = current.get(exchange.fitting)
        changed: dict[str, object] = {"part": exchange.part}
        if exchange.at_mm is not None:
            changed |= {"at_mm": exchange.at_mm}
        yield exchange.fitting, here and here.model_copy(update=changed)
    for fitting in changes.added:
        yield fitting.name, fitting


def _adds(changes: Changes, name: str) -> bool:
    return any(fitting.name == name for fitting in changes.added)


def _same_fitting(wish: str, earlier: str, fitting: str) -> OptionConflict:
    return OptionConflict(
        wish=wish,
        other=earlier,
        cause=f"both change the fitting {fitting!r}",
        kind="same fitting",
    )


def _there_already(name: str, file: str) -> Fault:
    return Fault(
        file=file,
        field="changes.added",
        found=f'the fitting "{name}", which is there already',
        allowed="a name that no fitting has",
        action="rename it, or put it under changes.exchanged",
    )


def _no_fitting(name: str, current: dict[str, Fitting], file: str) -> Fault:
    close = get_close_matches(name, list(current), n=1)
    return Fault(
        file=file,
        field="changes",
        found=f'the fitting "{name}"',
        allowed="a fitting of the standard build",
        action=f"did you mean {close[0]!r}?" if close else "write one that exists",
    )
