"""Begin a new build: a file with comments that already checks without faults."""

from pathlib import Path

from coachwright.actions.files import write_text
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import CallError, UnknownName
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import BuildSheet, Option
from coachwright.model.vehicle import BaseVehicle

_HEAD = """\
# A build: what the customer wants, the base vehicle, and every part that is fitted.
#
# Every value is text with its unit: "24 kg", "53 lb", "650 mm", "26 in", "2 ft 6 in".
# Axes: x runs rearwards from the front axle, y to the right, z up from the load floor.
# Check it as often as you like:  coachwright check {file}

format = 1
name = "{name}"
customer = ""
revision = "A"
story = \"\"\"
Who they are, what they want to do, and where.\"\"\"
"""
_METRIC = {
    "mass": "75 kg",
    "mass_two": "68 kg",
    "stature": "1800 mm",
    "stature_two": "1680 mm",
    "luggage": "15 kg",
    "cold": "-5 degC",
    "hot": "32 degC",
    "water": "12 L/day",
    "hot_water": "4 L/day",
    "size": '["900 mm", "500 mm", "400 mm"]',
    "locker": "18 kg",
    "contents": "20 kg",
    "limit": "40 kg",
    "zero": "0 mm",
    "frame": '["1950 mm", "1000 mm", "480 mm"]',
    "near": '["1950 mm", "20 mm", "480 mm"]',
    "far": '["0 mm", "980 mm", "0 mm"]',
    "frame_mass": "22 kg",
    "ticket": "2950 kg",
}
_CUSTOMARY = {
    "mass": "165 lb",
    "mass_two": "150 lb",
    "stature": "5 ft 11 in",
    "stature_two": "5 ft 6 in",
    "luggage": "33 lb",
    "cold": "23 degF",
    "hot": "90 degF",
    "water": "3 US gal/day",
    "hot_water": "1 US gal/day",
    "size": '["35 in", "20 in", "16 in"]',
    "locker": "40 lb",
    "contents": "45 lb",
    "limit": "90 lb",
    "zero": "0 in",
    "frame": '["76.75 in", "40 in", "19 in"]',
    "near": '["76.75 in", "0.75 in", "19 in"]',
    "far": '["0 in", "39.25 in", "0 in"]',
    "frame_mass": "49 lb",
    "ticket": "6500 lb",
}
_BRIEF = """
# ---- The brief: the customer's side -------------------------------------------------
[brief]
jurisdiction = "{jurisdiction}"   # us, eu or uk: whose rules apply
units = "{units}"          # metric or us: how figures are shown
must_have = []        # facets it must have, such as ["bed", "air_conditioner"]
# independence_wanted = "3 d"
# budget = "18000.00 {currency}"
# wanted = 2027-04-15

[brief.climate]
cold_night = "{cold}"  # the coldest night it must stand
hot_day = "{hot}"
summer_sun = "4 h/day"  # peak-sun hours on a flat roof in a poor summer month
winter_sun = "1 h/day"  # and in a poor winter month

[brief.stay]
parked = "3 d"          # days parked between drives
drive = "2 h/day"       # driving on a day between stays
hookup = "0 %"          # share of the nights with shore power

[brief.habits]
water = "{water}"  # for each person
hot_water = "{hot_water}"  # of that, warm
cooking = "500 Wh/day"  # heat into pots, for all

# [[brief.habits.devices]]
# name = "laptop"
# draw = "60 W"
# use = "4 h/day"

{travellers}
# [[brief.cargo]]
# name = "tool box"
# mass = "{contents}"
# centre = ["3200 mm", "0 mm", "200 mm"]
"""
_TRAVELLER = """\
[[brief.travellers]]
name = "{name}"
mass = "{mass}"
stature = "{stature}"
seat = "{seat}"
luggage = "{luggage}"
"""
_FITTINGS = """
# ---- The parts that are fitted -------------------------------------------------------
# 'coachwright parts list' shows what there is. `at` is the corner with the smallest x, y and z:
# lengths, or words such as "behind locker 20 mm", "against left wall", "above locker".

# Nothing floats: it stands on the floor, hangs on a wall or the ceiling, or `on` another fitting.

[[fittings]]
name = "bed-frame"
part = "first-bed-frame"
at = ["against rear doors", "centred on centreline", "against floor"]

[[fittings]]
name = "bed"
part = "bed-longitudinal-1950x1400"
at = ["flush rear bed-frame", "centred on bed-frame", "above bed-frame"]
on = "bed-frame"

[[fittings]]
name = "smoke-alarm"
part = "{alarm}"
at = ["{over_locker} mm", "centred on centreline", "against ceiling"]
mounting = "ceiling"

[[fittings]]
name = "extinguisher"
part = "{extinguisher}"
at = ["{by_cab} mm", "against {wall}", "against floor"]
mounting = "wall"

[[fittings]]
name = "locker"
part = "first-locker"
at = ["{over_locker} mm", "against {wall}", "against floor"]
contents = "{contents}"

# A part made for this build alone is written here; measured parts make the best figures.
[[own_parts]]
id = "first-locker"
name = "Locker with a lid"

[own_parts.body]
size = {size}     # length (x), width (y), height (z)
mass = "{locker}"
source = "estimated"

[own_parts.carcass]
contents_limit = "{limit}"

# Two boards on edge: a part of several boxes is drawn and judged by each of them.
[[own_parts]]
id = "first-bed-frame"
name = "Frame under the bed"

[own_parts.body]
size = {frame}
shape = "steps"
steps = [
  {{ from = ["{zero}", "{zero}", "{zero}"], to = {near} }},
  {{ from = {far}, to = {frame} }},
]
mass = "{frame_mass}"
source = "estimated"
"""
_STANDARD = """
# ---- The standard build and what differs from it -------------------------------------
{offers}

# [changes]
# removed = ["name of a fitting"]
#
# [[changes.moved]]
# fitting = "name of a fitting"
# at = ["2400 mm", "against left wall", "against floor"]
#
# [[changes.added]]
# name = "another-name"
# part = "id of a part"
# at = ["3000 mm", "against right wall", "against floor"]
"""
_TAIL = """
# ---- Later: what someone accepted, and what the weighbridge said ---------------------
# 'coachwright accept {file} RULE --role ... --reason ...' adds a decision.

# [ticket]
# date = 2027-03-01
# total = "{ticket}"
"""
_EXTINGUISHERS = {
    Jurisdiction.US: "extinguisher-10bc-us",
    Jurisdiction.EU: "extinguisher-powder-1kg",
    Jurisdiction.UK: "extinguisher-powder-1kg",
}
_CURRENCY = {Jurisdiction.US: "USD", Jurisdiction.EU: "EUR", Jurisdiction.UK: "GBP"}


def new_build(
    path: Path,
    catalogue: Catalogue,
    *,
    vehicle: str = "",
    jurisdiction: str = "",
    standard: str = "",
) -> None:
    """Write a starter build.

    Parameters
    ----------
    path
        The new file; its name ends in ``.toml``.
    catalogue
        Where the vehicle and the standard build are.
    vehicle
        Id of a base vehicle; one of the jurisdiction's market where not given.
    jurisdiction
        ``"us"``, ``"eu"`` or ``"uk"``; that of the standard build or the vehicle where not given.
    standard
        Id of a standard build that it starts from.

    Raises
    ------
    CallError
        Where the file's name is not fit.
    UnknownName
        Where there is no such vehicle or standard build.
    CannotWrite
        Where the file is there already, or cannot be written.
    """
    if path.suffix != ".toml" or not path.stem.strip():
        raise CallError(f"{path} is no name for a build; write a name that ends in .toml")
    write_text(path, starter(path, catalogue, vehicle, jurisdiction, standard), new_only=True)


def starter(
    path: Path, catalogue: Catalogue, vehicle: str, jurisdiction: str, standard: str
) -> str:
    """Return the text of a starter build; see `new_build`."""
    sheet = catalogue.standard(standard) if standard else None
    base = _vehicle(catalogue, vehicle, jurisdiction, sheet)
    where = Jurisdiction(
        jurisdiction or (sheet.brief.jurisdiction if sheet is not None else base.market.value)
    )
    words = _CUSTOMARY if where is Jurisdiction.US else _METRIC
    values = {
        **words,
        "file": path.name,
        "name": _name(path),
        "jurisdiction": where.value,
        "units": "us" if where is Jurisdiction.US else "metric",
        "currency": _CURRENCY[where],
        "wall": _wall(base),
        "by_cab": f"{base.shell.cab_line_mm + 40:.0f}",
        "over_locker": f"{base.shell.cab_line_mm + 200:.0f}",
        "alarm": "alarm-smoke-us" if where is Jurisdiction.US else "alarm-smoke-eu",
        "extinguisher": _EXTINGUISHERS[where],
        "travellers": _travellers(base, words),
        "offers": "" if sheet is None else _offers(sheet.offers),
    }
    lines = [_HEAD.format(**values)]
    if sheet is None or vehicle:
        lines.append(f"\nvehicle = \"{base.id}\"    # 'coachwright vehicles list' shows them\n")
    if sheet is not None:
        lines.append(f'\nstandard = "{standard}"\noptions = []\n')
    lines.append(_BRIEF.format(**values))
    lines.append((_FITTINGS if sheet is None else _STANDARD).format(**values))
    lines.append(_TAIL.format(**values))
    return "".join(lines)


def _vehicle(
    catalogue: Catalogue, vehicle: str, jurisdiction: str, sheet: BuildSheet | None
) -> BaseVehicle:
    if vehicle:
        return catalogue.vehicle(vehicle)
    if sheet is not None:
        return sheet.own_vehicle or catalogue.vehicle(sheet.vehicle)
    market = jurisdiction or "eu"
    for each in catalogue.vehicles():
        if each.market == market:
            return each
    raise UnknownName("base vehicle for the market", market, catalogue.vehicle_ids())


def _wall(vehicle: BaseVehicle) -> str:
    """Return the wall without a sliding door."""
    return "right wall" if any(door.wall == "left" for door in vehicle.apertures) else "left wall"


def _name(path: Path) -> str:
    """Return the file's name as the build's, fit to stand in quotes."""
    words = path.stem.replace("-", " ").replace("_", " ").split()
    name = " ".join(word.replace("\\", "").replace('"', "") for word in words)
    return name.capitalize() or "New build"


def _travellers(vehicle: BaseVehicle, words: dict[str, str]) -> str:
    seats = sorted(vehicle.seats, key=lambda seat: not seat.driver)
    people = (
        ("first", words["mass"], words["stature"]),
        ("second", words["mass_two"], words["stature_two"]),
    )
    return "\n".join(
        _TRAVELLER.format(
            name=name, mass=mass, stature=stature, seat=seat.name, luggage=words["luggage"]
        )
        for (name, mass, stature), seat in zip(people, seats, strict=False)
    )


def _offers(offers: tuple[Option, ...]) -> str:
    if not offers:
        return "# This standard build offers no options."
    listed = "\n".join(f"#   {option.name}: {option.title}" for option in offers)
    return f"# Options that may stand in the list `options` above:\n{listed}"
