"""From a sheet, its vehicle and its parts to a build, with every fault as data."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from difflib import get_close_matches

from coachwright.errors import Fault
from coachwright.model.build import (
    Build,
    BuildSheet,
    Finish,
    FinishLayer,
    Fitted,
    Fitting,
    OptionConflict,
)
from coachwright.model.part import FACET_NAMES, Part
from coachwright.model.positioning import position_faults, solved_positions
from coachwright.model.vehicle import BaseVehicle

FindPart = Callable[[str], Part | None]


def part_ids(sheet: BuildSheet) -> tuple[str, ...]:
    """Return the ids of the parts that a sheet names and does not bring itself, sorted."""
    own = {part.id for part in sheet.own_parts}
    named = {fitting.part for fitting in sheet.fittings} | {f.part for f in sheet.finishes}
    return tuple(sorted(named - own))


def cross_faults(
    sheet: BuildSheet,
    *,
    file: str,
    vehicle: BaseVehicle | None,
    parts: Mapping[str, Part],
    known_parts: Iterable[str] = (),
) -> tuple[Fault, ...]:
    """Return every fault of what a sheet names: parts, seats, carriers, modes and the like.

    Parameters
    ----------
    sheet
        With nothing left to a standard build.
    file
        Name for the faults.
    vehicle
        The base vehicle; None where it could not be found, then seats are not checked.
    parts
        By id: at least those of `part_ids` that exist.
    known_parts
        Ids to suggest from where one is misspelt.
    """
    all_parts = dict(parts) | {part.id: part for part in sheet.own_parts}
    known = tuple(sorted(set(known_parts) | set(all_parts)))
    return (
        *_unknown_parts(sheet, file, all_parts, known),
        *_twice(sheet, file),
        *(() if vehicle is None else _seats(sheet, file, vehicle, all_parts)),
        *(() if vehicle is None else _spare(sheet, file, vehicle)),
        *_carriers(sheet, file),
        *position_faults(sheet, file, all_parts),
        *_modes(sheet, file, all_parts),
        *_wishes(sheet, file),
        *_runs(sheet, file),
        *_ticket(sheet, file),
        *_finishes(sheet, file, all_parts),
    )


def link(
    sheet: BuildSheet,
    *,
    file: str,
    vehicle: BaseVehicle,
    parts: Mapping[str, Part],
    known_parts: Iterable[str] = (),
    conflicts: tuple[OptionConflict, ...] = (),
) -> tuple[Build | None, tuple[Fault, ...]]:
    """Join a resolved sheet with its vehicle and parts.

    Parameters
    ----------
    sheet, file, vehicle, parts, known_parts
        As for `cross_faults`.
    conflicts
        Of the options chosen.

    Returns
    -------
    tuple
        The build and no faults, or None and every fault.
    """
    faults = cross_faults(sheet, file=file, vehicle=vehicle, parts=parts, known_parts=known_parts)
    if faults:
        return None, faults
    all_parts = dict(parts) | {part.id: part for part in sheet.own_parts}
    return _build(sheet, vehicle, all_parts, conflicts), ()


def _build(
    sheet: BuildSheet,
    vehicle: BaseVehicle,
    parts: Mapping[str, Part],
    conflicts: tuple[OptionConflict, ...],
) -> Build:
    low_mm = solved_positions(sheet, vehicle, parts)
    return Build(
        name=sheet.name,
        customer=sheet.customer,
        revision=sheet.revision,
        story=sheet.story,
        brief=sheet.brief,
        vehicle=vehicle,
        fittings=tuple(
            Fitted(fitting=f, part=parts[f.part], at_mm=low_mm[f.name]) for f in sheet.fittings
        ),
        finishes=tuple(FinishLayer(finish=f, part=parts[f.part]) for f in sheet.finishes),
        water_runs=sheet.water_runs,
        vehicle_spare_removed=sheet.vehicle_spare_removed,
        decisions=sheet.decisions,
        waivers=sheet.waivers,
        ticket=sheet.ticket,
        standard=sheet.standard,
        options=sheet.options,
        conflicts=conflicts,
    )


def _where(kind: str, index: int, name: str, field: str) -> str:
    return f"{kind}[{index}].{field} ({name})"


def _listed(names: Iterable[str], most: int = 8) -> str:
    listed = list(names)
    if not listed:
        return "none"
    text = ", ".join(listed[:most])
    return f"{text} and {len(listed) - most} more" if len(listed) > most else text


def _suggestion(name: str, known: Iterable[str]) -> str:
    close = get_close_matches(name, list(known), n=1, cutoff=0.5)
    return f"did you mean {close[0]!r}?" if close else "write one that exists"


def _unknown_parts(
    sheet: BuildSheet, file: str, parts: Mapping[str, Part], known: tuple[str, ...]
) -> Iterator[Fault]:
    named: list[tuple[str, int, str, str]] = [
        ("fittings", i, fitting.name, fitting.part) for i, fitting in enumerate(sheet.fittings)
    ] + [("finishes", i, finish.surface, finish.part) for i, finish in enumerate(sheet.finishes)]
    for kind, index, name, part in named:
        if part not in parts:
            yield Fault(
                file=file,
                field=_where(kind, index, name, "part"),
                found=f'"{part}"',
                allowed="the id of a part in the catalogue or in own_parts",
                action=_suggestion(part, known) + " ('coachwright parts list' shows them)",
            )


def _twice(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    groups: tuple[tuple[str, str, Iterable[str]], ...] = (
        ("fittings", "name", (f.name for f in sheet.fittings)),
        ("brief.travellers", "name", (t.name for t in sheet.brief.travellers)),
        ("water_runs", "name", (r.name for r in sheet.water_runs)),
        ("own_parts", "id", (p.id for p in sheet.own_parts)),
        ("brief.cargo", "name", (c.name for c in sheet.brief.cargo)),
    )
    for kind, field, names in groups:
        for name, count in Counter(names).items():
            if count > 1:
                yield Fault(
                    file=file,
                    field=f"{kind}.{field}",
                    found=f'"{name}" {count} times',
                    allowed="each name once",
                    action="rename all but one",
                )


def _seats(
    sheet: BuildSheet, file: str, vehicle: BaseVehicle, parts: Mapping[str, Part]
) -> Iterator[Fault]:
    places = [seat.name for seat in vehicle.seats]
    for fitting in sheet.fittings:
        part = parts.get(fitting.part)
        if part is not None and part.seat is not None:
            places += [f"{fitting.name}.{place.name}" for place in part.seat.places]
    taken: dict[str, str] = {}
    for index, traveller in enumerate(sheet.brief.travellers):
        where = _where("brief.travellers", index, traveller.name, "seat")
        if not traveller.seat:
            continue
        if traveller.seat not in places:
            yield Fault(
                file=file,
                field=where,
                found=f'"{traveller.seat}"',
                allowed=f"a seat of the vehicle or of a fitting: {_listed(places)}",
                action=_suggestion(traveller.seat, places),
            )
        elif traveller.seat in taken:
            yield Fault(
                file=file,
                field=where,
                found=f'"{traveller.seat}", where {taken[traveller.seat]} sits already',
                allowed="each seat for one traveller",
                action="give another seat",
            )
        taken.setdefault(traveller.seat, traveller.name)


def _carriers(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    names = [fitting.name for fitting in sheet.fittings]
    on = {fitting.name: fitting.on for fitting in sheet.fittings}
    for index, fitting in enumerate(sheet.fittings):
        for field, carrier in (("on", fitting.on), ("within", fitting.within)):
            if carrier and (carrier not in names or carrier == fitting.name):
                yield Fault(
                    file=file,
                    field=_where("fittings", index, fitting.name, field),
                    found=f'"{carrier}"',
                    allowed="the name of another fitting",
                    action=_suggestion(carrier, [n for n in names if n != fitting.name]),
                )
        if fitting.on != fitting.name and _carries_itself(fitting, on):
            yield Fault(
                file=file,
                field=_where("fittings", index, fitting.name, "on"),
                found=f'"{fitting.on}", which stands on {fitting.name} itself',
                allowed="fittings that do not carry each other in a ring",
                action="take one of them off the other",
            )
    yield from _waivers(sheet, names, file)


def _waivers(sheet: BuildSheet, names: list[str], file: str) -> Iterator[Fault]:
    for index, waiver in enumerate(sheet.waivers):
        if waiver.fitting not in names:
            yield Fault(
                file=file,
                field=f"waivers[{index}].fitting",
                found=f'"{waiver.fitting}"',
                allowed="the name of a fitting",
                action=_suggestion(waiver.fitting, names),
            )


def _carries_itself(fitting: Fitting, on: Mapping[str, str]) -> bool:
    seen: set[str] = set()
    here = fitting.on
    while here and here not in seen:
        if here == fitting.name:
            return True
        seen.add(here)
        here = on.get(here, "")
    return False


def _modes(sheet: BuildSheet, file: str, parts: Mapping[str, Part]) -> Iterator[Fault]:
    for index, fitting in enumerate(sheet.fittings):
        part = parts.get(fitting.part)
        if part is None:
            continue
        loads = [load for load in (part.dc_load, part.ac_load) if load is not None]
        modes = [mode.name for load in loads for mode in load.modes]
        for position, use in enumerate(fitting.use):
            if use.mode not in modes:
                yield Fault(
                    file=file,
                    field=_where("fittings", index, fitting.name, f"use[{position}].mode"),
                    found=f'"{use.mode}"',
                    allowed=f"a mode of the part {fitting.part}: {_listed(modes)}",
                    action=_suggestion(use.mode, modes),
                )


def _wishes(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    for index, facet in enumerate(sheet.brief.must_have):
        if facet not in FACET_NAMES:
            yield Fault(
                file=file,
                field=f"brief.must_have[{index}]",
                found=f'"{facet}"',
                allowed=f"a facet: {_listed(FACET_NAMES, most=len(FACET_NAMES))}",
                action=_suggestion(facet, FACET_NAMES),
            )


def _runs(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    names = [fitting.name for fitting in sheet.fittings]
    for index, run in enumerate(sheet.water_runs):
        if run.serves and run.serves not in names:
            yield Fault(
                file=file,
                field=_where("water_runs", index, run.name, "serves"),
                found=f'"{run.serves}"',
                allowed="the name of a fitting",
                action=_suggestion(run.serves, names),
            )


def _spare(sheet: BuildSheet, file: str, vehicle: BaseVehicle) -> Iterator[Fault]:
    if sheet.vehicle_spare_removed and not vehicle.tyre.spare_carried:
        yield Fault(
            file=file,
            field="vehicle_spare_removed",
            found="true, where the base vehicle carries no spare wheel",
            allowed="false, or a base vehicle whose tyre.spare_carried is true",
            action="leave the line out",
        )


def _ticket(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    if sheet.ticket is None:
        return
    names = [traveller.name for traveller in sheet.brief.travellers]
    for index, name in enumerate(sheet.ticket.aboard):
        if name not in names:
            yield Fault(
                file=file,
                field=f"ticket.aboard[{index}]",
                found=f'"{name}"',
                allowed=f"the name of a traveller: {_listed(names)}",
                action=_suggestion(name, names),
            )
    yield from _ticket_sums(sheet, file)


def _ticket_sums(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    ticket = sheet.ticket
    if ticket is None or ticket.front_kg is None or ticket.rear_kg is None:
        return
    axles_kg = ticket.front_kg + ticket.rear_kg
    allowed_kg = 3 * ticket.scale_error_kg
    if abs(axles_kg - ticket.total_kg) > allowed_kg:
        yield Fault(
            file=file,
            field="ticket.total",
            found=f"{ticket.total_kg:g} kg, where the axles add up to {axles_kg:g} kg",
            allowed=f"a total within {allowed_kg:g} kg of the sum of the axles",
            action="read the ticket again",
        )


def _finishes(sheet: BuildSheet, file: str, parts: Mapping[str, Part]) -> Iterator[Fault]:
    for index, finish in enumerate(sheet.finishes):
        part = parts.get(finish.part)
        if part is not None and part.insulation is None and part.lining is None:
            yield _no_sheet(file, index, finish)


def _no_sheet(file: str, index: int, finish: Finish) -> Fault:
    return Fault(
        file=file,
        field=_where("finishes", index, finish.surface, "part"),
        found=f'"{finish.part}", which has no insulation or lining facet',
        allowed="a part with the facet insulation or lining",
        action="name a sheet material, or place the part as a fitting",
    )
