"""Open a build file: read it, find its vehicle and parts, apply standard and options."""

from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from coachwright.catalogue.loading import Catalogue, read_toml
from coachwright.catalogue.sites import site
from coachwright.errors import BuildFileError, CatalogueError, Fault, UnknownName
from coachwright.model.build import Build, BuildSheet, Changes
from coachwright.model.linking import cross_faults, link, part_ids
from coachwright.model.part import Part
from coachwright.model.reading import read_record
from coachwright.model.resolving import resolve
from coachwright.model.salvaging import salvaged
from coachwright.model.site import Site
from coachwright.model.vehicle import BaseVehicle


@dataclass(frozen=True, kw_only=True, slots=True)
class Opened:
    """A build, and the sheet it was opened from."""

    build: Build
    sheet: BuildSheet


def open_build(path: Path, catalogue: Catalogue) -> Opened:
    """Open a build file.

    Raises
    ------
    BuildFileError
        With every fault of the file and of what it names.
    """
    data, faults = read_toml(path)
    if data is None:
        raise BuildFileError(faults)
    sheet, faults = read_record(BuildSheet, data, str(path))
    if sheet is None:
        raise BuildFileError((*faults, *_more_faults(salvaged(data), str(path), catalogue)))
    return Opened(build=complete(sheet, str(path), catalogue), sheet=sheet)


def open_standard(sheet: BuildSheet, catalogue: Catalogue) -> Build | None:
    """Return the standard build that a sheet names, completed for the sheet's own brief.

    Raises
    ------
    BuildFileError
        With every fault of the standard build.
    """
    if not sheet.standard:
        return None
    bare = sheet.model_copy(
        update={"options": (), "changes": Changes(), "ticket": None, "decisions": ()}
    )
    return complete(bare, sheet.standard, catalogue)


def complete(sheet: BuildSheet, file: str, catalogue: Catalogue) -> Build:
    """Return the build of a sheet.

    Raises
    ------
    BuildFileError
        With every fault of the sheet and of what it names.
    """
    standard, faults = _standard(sheet, file, catalogue)
    if faults:
        raise BuildFileError(faults)
    resolved, faults = resolve(sheet, standard, file)
    if resolved is None:
        raise BuildFileError((*faults, *_named_faults(sheet, file, catalogue)))
    ordinary = resolved.sheet
    parts, part_faults = _parts(ordinary, catalogue)
    vehicle, vehicle_faults = _vehicle(ordinary, file, catalogue)
    if vehicle is None or part_faults:
        raise BuildFileError(_named_faults(ordinary, file, catalogue) or vehicle_faults)
    build, faults = link(
        ordinary,
        file=file,
        vehicle=vehicle,
        parts=parts,
        known_parts=catalogue.part_ids(),
        conflicts=resolved.conflicts,
    )
    sites, site_faults = _sites(ordinary, file, catalogue)
    if build is None or site_faults:
        raise BuildFileError((*faults, *site_faults))
    return build.model_copy(update={"sites": sites}) if sites else build


def _more_faults(sheet: BuildSheet, file: str, catalogue: Catalogue) -> tuple[Fault, ...]:
    """Return the faults of what a salvaged sheet names; its own faults are known already."""
    standard, faults = _standard(sheet, file, catalogue)
    if faults or standard is None:
        return (*faults, *_named_faults(sheet, file, catalogue))
    resolved, faults = resolve(sheet, standard, file)
    if resolved is None:
        return (*faults, *_named_faults(sheet, file, catalogue))
    return _named_faults(resolved.sheet, file, catalogue)


def _named_faults(sheet: BuildSheet, file: str, catalogue: Catalogue) -> tuple[Fault, ...]:
    """Return every fault of the vehicle and the parts that an ordinary sheet names."""
    parts, part_faults = _parts(sheet, catalogue)
    vehicle, vehicle_faults = _vehicle(sheet, file, catalogue)
    faulty = {Path(fault.file).stem for fault in part_faults}
    unknown = cross_faults(
        sheet,
        file=file,
        vehicle=vehicle,
        parts=parts,
        known_parts=catalogue.part_ids(),
    )
    return (
        *vehicle_faults,
        *(fault for fault in unknown if fault.found.strip('"') not in {*faulty, ""}),
        *part_faults,
        *_sites(sheet, file, catalogue)[1],
    )


def _standard(
    sheet: BuildSheet, file: str, catalogue: Catalogue
) -> tuple[BuildSheet | None, tuple[Fault, ...]]:
    if not sheet.standard:
        return None, ()
    try:
        return catalogue.standard(sheet.standard), ()
    except UnknownName as error:
        return None, (_unknown(file, "standard", error),)
    except CatalogueError as error:
        return None, error.faults


def _parts(sheet: BuildSheet, catalogue: Catalogue) -> tuple[dict[str, Part], tuple[Fault, ...]]:
    parts: dict[str, Part] = {}
    faults: list[Fault] = []
    for part_id in part_ids(sheet):
        try:
            parts[part_id] = catalogue.part(part_id)
        except UnknownName:
            continue  # cross_faults names it with the fitting that wants it
        except CatalogueError as error:
            faults.extend(error.faults)
    return parts, tuple(faults)


def _vehicle(
    sheet: BuildSheet, file: str, catalogue: Catalogue
) -> tuple[BaseVehicle | None, tuple[Fault, ...]]:
    if sheet.own_vehicle is not None:
        return sheet.own_vehicle, ()
    if not sheet.vehicle:
        return None, ()
    try:
        return catalogue.vehicle(sheet.vehicle), ()
    except UnknownName as error:
        return None, (_unknown(file, "vehicle", error),)
    except CatalogueError as error:
        return None, error.faults


def _sites(
    sheet: BuildSheet, file: str, catalogue: Catalogue
) -> tuple[tuple[Site, ...], tuple[Fault, ...]]:
    found: list[Site] = []
    faults: list[Fault] = []
    # a salvaged sheet holds only what could be read
    climate = getattr(sheet.brief, "climate", None)
    for at, site_id in enumerate(getattr(climate, "sites", ())):
        try:
            found.append(site(catalogue, site_id))
        except UnknownName as error:
            faults.append(_unknown_site(file, f"brief.climate.sites[{at}]", error))
        except CatalogueError as error:
            faults.extend(error.faults)
    return tuple(found), tuple(faults)


def _unknown_site(file: str, field: str, error: UnknownName) -> Fault:
    """Return the fault of a site that is not there: hundreds are, so that few are named."""
    close = get_close_matches(error.name, error.known, n=3, cutoff=0.5)
    return Fault(
        file=file,
        field=field,
        found=f'"{error.name}"',
        allowed="a site" + (f", such as {', '.join(close)}" if close else ""),
        action="see coachwright weather list, or bring its weather with coachwright weather add",
    )


def _unknown(file: str, field: str, error: UnknownName) -> Fault:
    return Fault(
        file=file,
        field=field,
        found=f'"{error.name}"',
        allowed=f"a {error.kind}: " + (", ".join(error.known) or "none is there"),
        action="write one that exists",
    )
