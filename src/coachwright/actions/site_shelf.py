"""A site's arrays: computed once, then taken from the disk."""

import hashlib
import io
from pathlib import Path

import numpy as np

from coachwright import __version__
from coachwright.actions.files import write_all
from coachwright.actions.weather import SEED, site_year
from coachwright.catalogue import sites
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import FORM, SiteArrays, packed, site_arrays, unpacked
from coachwright.errors import CannotWrite, OutOfRange


def arrays_of_site(catalogue: Catalogue, site_id: str, shelf: Path | None) -> SiteArrays:
    """Return the arrays of a site.

    Parameters
    ----------
    catalogue
        Where sites are found.
    site_id
        Of the site.
    shelf
        Folder in which arrays are kept; None to compute anew.

    Raises
    ------
    UnknownName
        Where there is no such site.

    Notes
    -----
    Kept under a digest of the site, the seed, the version and the form.  What is kept and cannot
    be read is computed anew; a shelf that cannot be written to costs time and nothing else.
    """
    place = None if shelf is None else shelf / f"{_key(catalogue, site_id)}.npz"
    found = None if place is None else _taken(place)
    if found is not None:
        return found
    made = site_arrays(weather=site_year(catalogue, site_id))
    if place is not None:
        _put(place, made)
    return made


def _key(catalogue: Catalogue, site_id: str) -> str:
    found = sites.site(catalogue, site_id)
    parts = (
        found.model_dump_json(),
        f"{sites.sunshine_h(site_id)}",
        sites.station_file(site_id),
        f"{SEED} {FORM} {__version__}",
    )
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def _taken(place: Path) -> SiteArrays | None:
    try:
        with np.load(place, allow_pickle=False) as kept:
            return unpacked({name: kept[name] for name in kept.files})
    except (OSError, ValueError, EOFError, OutOfRange):
        return None


def _put(place: Path, made: SiteArrays) -> None:
    content = io.BytesIO()
    np.savez(content, **packed(made))  # type: ignore[arg-type]
    try:
        write_all({place: content.getvalue()})
    except CannotWrite:
        return
