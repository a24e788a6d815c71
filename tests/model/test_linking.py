"""From a sheet to a build: every name that leads nowhere is found, all at once."""

import pytest

from coachwright.errors import Fault
from coachwright.model.build import OptionConflict
from coachwright.model.linking import link, part_ids
from coachwright.model.part import FACET_NAMES, Part
from tests.support.builds import Data, build, fitting, part, sheet

LAMP = part("lamp", dc_load={"modes": [{"name": "on", "draw": "5 W"}]})
BENCH = part(
    "bench",
    seat={
        "belt": "three-point",
        "places": [{"name": "left", "reference": ["200 mm", "200 mm", "450 mm"]}],
    },
)
FELT = part("felt", lining={"density": "0.1 kg/L", "thickness": "5 mm"})


def _faults(changes: Data, known_parts: tuple[str, ...] = ()) -> tuple[Fault, ...]:
    written = sheet(changes)
    assert written.own_vehicle is not None
    found, faults = link(
        written, file="b.toml", vehicle=written.own_vehicle, parts={}, known_parts=known_parts
    )
    assert found is None
    return faults


ONE_FAULT: tuple[tuple[str, Data, str, str, str], ...] = (
    (
        "part that does not exist",
        {"own_parts": [LAMP], "fittings": [fitting("reading-lamp", "lump")]},
        "fittings[0].part (reading-lamp)",
        '"lump"',
        "did you mean 'lamp'? ('coachwright parts list' shows them)",
    ),
    (
        "part unlike any other",
        {"fittings": [fitting("reading-lamp", "zzz")]},
        "fittings[0].part (reading-lamp)",
        '"zzz"',
        "write one that exists ('coachwright parts list' shows them)",
    ),
    (
        "spare taken off that was never there",
        {"vehicle_spare_removed": True, "own_vehicle.tyre.spare_carried": False},
        "vehicle_spare_removed",
        "true, where the base vehicle carries no spare wheel",
        "leave the line out",
    ),
    (
        "finish that does not exist",
        {"finishes": [{"part": "wool", "surface": "walls", "area": "10 m2"}]},
        "finishes[0].part (walls)",
        '"wool"',
        "write one that exists ('coachwright parts list' shows them)",
    ),
    (
        "finish that is no sheet",
        {
            "own_parts": [LAMP],
            "finishes": [{"part": "lamp", "surface": "walls", "area": "10 m2"}],
        },
        "finishes[0].part (walls)",
        '"lamp", which has no insulation or lining facet',
        "name a sheet material, or place the part as a fitting",
    ),
    (
        "two fittings of one name",
        {"own_parts": [LAMP], "fittings": [fitting("a", "lamp"), fitting("a", "lamp")]},
        "fittings.name",
        '"a" 2 times',
        "rename all but one",
    ),
    (
        "two travellers of one name",
        {"brief.travellers.1.name": "ada"},
        "brief.travellers.name",
        '"ada" 2 times',
        "rename all but one",
    ),
    (
        "two parts of one id",
        {"own_parts": [LAMP, LAMP]},
        "own_parts.id",
        '"lamp" 2 times',
        "rename all but one",
    ),
    (
        "seat that does not exist",
        {"brief.travellers.1.seat": "pasenger"},
        "brief.travellers[1].seat (ben)",
        '"pasenger"',
        "did you mean 'passenger'?",
    ),
    (
        "seat that is taken",
        {"brief.travellers.1.seat": "driver"},
        "brief.travellers[1].seat (ben)",
        '"driver", where ada sits already',
        "give another seat",
    ),
    (
        "carrier that does not exist",
        {"own_parts": [LAMP], "fittings": [fitting("a", "lamp", on="shelf")]},
        "fittings[0].on (a)",
        '"shelf"',
        "write one that exists",
    ),
    (
        "fitting that stands on itself",
        {"own_parts": [LAMP], "fittings": [fitting("a", "lamp", on="a")]},
        "fittings[0].on (a)",
        '"a"',
        "write one that exists",
    ),
    (
        "fittings that stand on each other",
        {
            "own_parts": [LAMP],
            "fittings": [
                fitting("a", "lamp", on="b"),
                fitting("b", "lamp", on="c"),
                fitting("c", "lamp", on="a"),
            ],
        },
        "fittings[1].on (b)",
        '"c", which stands on b itself',
        "take one of them off the other",
    ),
    (
        "mode that the part does not have",
        {
            "own_parts": [LAMP],
            "fittings": [
                fitting(
                    "a",
                    "lamp",
                    use=[{"mode": "of", "summer_use": "1 h/day", "winter_use": "2 h/day"}],
                )
            ],
        },
        "fittings[0].use[0].mode (a)",
        '"of"',
        "did you mean 'on'?",
    ),
    (
        "wish for a facet that does not exist",
        {"brief.must_have": ["bed", "air_conditionner"]},
        "brief.must_have[1]",
        '"air_conditionner"',
        "did you mean 'air_conditioner'?",
    ),
    (
        "pipe that serves nothing",
        {
            "water_runs": [
                {
                    "name": "cold",
                    "length": "2 m",
                    "bore": "10 mm",
                    "place": "heated",
                    "serves": "tap",
                }
            ]
        },
        "water_runs[0].serves (cold)",
        '"tap"',
        "write one that exists",
    ),
    (
        "stranger on the weighbridge",
        {"ticket": {"date": "2027-04-15", "total": "2500 kg", "aboard": ["ban"]}},
        "ticket.aboard[0]",
        '"ban"',
        "did you mean 'ben'?",
    ),
    (
        "axles that do not add up",
        {
            "ticket": {
                "date": "2027-04-15",
                "total": "2500 kg",
                "front": "1200 kg",
                "rear": "1400 kg",
            }
        },
        "ticket.total",
        "2500 kg, where the axles add up to 2600 kg",
        "read the ticket again",
    ),
)


@pytest.mark.parametrize(
    ("changes", "field", "found", "action"),
    [case[1:] for case in ONE_FAULT],
    ids=[case[0] for case in ONE_FAULT],
)
def test_a_fault_says_where_what_and_what_to_do(
    changes: Data, field: str, found: str, action: str
) -> None:
    faults = _faults(changes)
    assert (field, found, action) in [(f.field, f.found, f.action) for f in faults]
    assert {fault.file for fault in faults} == {"b.toml"}


def test_a_waiver_names_a_fitting() -> None:
    waiver = {"fitting": "bunk", "purpose": "entry", "role": "lead", "reason": "agreed"}
    changes = {"own_parts": [LAMP], "fittings": [fitting("bed", "lamp")], "waivers": [waiver]}
    (fault,) = _faults(changes)
    assert (fault.field, fault.found) == ("waivers[0].fitting", '"bunk"')


def test_a_traveller_need_not_have_a_seat() -> None:
    assert build({"brief.travellers.1.seat": ""}).brief.travellers[1].seat == ""


def test_all_faults_of_a_sheet_come_at_once() -> None:
    faults = _faults(
        {
            "brief.travellers.0.seat": "roof",
            "brief.must_have": ["wings"],
            "fittings": [fitting("a", "lump"), fitting("b", "lump", on="c")],
        }
    )
    assert [fault.field for fault in faults] == [
        "fittings[0].part (a)",
        "fittings[1].part (b)",
        "brief.travellers[0].seat (ada)",
        "fittings[1].on (b)",
        "brief.must_have[0]",
    ]


def test_a_wish_is_told_every_facet_that_there_is() -> None:
    (fault,) = _faults({"brief.must_have": ["wings"]})
    assert all(facet in fault.allowed for facet in FACET_NAMES)


def test_a_suggestion_may_come_from_the_catalogue() -> None:
    (fault,) = _faults({"fittings": [fitting("a", "lump")]}, known_parts=("lamp-small", "lump-1"))
    assert "did you mean 'lump-1'?" in fault.action


def test_a_part_without_loads_has_no_modes() -> None:
    use = [{"mode": "on", "summer_use": "1 h/day", "winter_use": "1 h/day"}]
    (fault,) = _faults({"own_parts": [FELT], "fittings": [fitting("a", "felt", use=use)]})
    assert fault.allowed == "a mode of the part felt: none"


def test_a_good_sheet_becomes_a_build() -> None:
    made = build(
        {
            "own_parts": [LAMP, BENCH, FELT],
            "fittings": [fitting("lamp", "lamp", on="bench"), fitting("bench", "bench")],
            "finishes": [{"part": "felt", "surface": "floor", "area": "5 m2"}],
            "brief.travellers.1.seat": "bench.left",
            "brief.must_have": ["seat"],
            "ticket": {
                "date": "2027-04-15",
                "total": "2500 kg",
                "front": "1200 kg",
                "rear": "1310 kg",
                "aboard": ["ada"],
            },
        }
    )
    assert [fitted.name for fitted in made.fittings] == ["lamp", "bench"]
    assert [fitted.name for fitted in made.having("dc_load")] == ["lamp"]
    assert made.finishes[0].part.id == "felt"
    bench = made.fitted("bench")
    assert bench is not None
    assert bench.part.facet_names() == ("body", "seat")
    assert made.fitted("stove") is None


def test_an_own_part_wins_over_the_catalogue() -> None:
    written = sheet({"own_parts": [LAMP], "fittings": [fitting("a", "lamp")]})
    assert written.own_vehicle is not None
    other = Part.model_validate(
        {"id": "lamp", "name": "other", "body": {"size_mm": (1.0, 1.0, 1.0), "mass_kg": 9.0}}
    )
    made, _ = link(written, file="f", vehicle=written.own_vehicle, parts={"lamp": other})
    assert made is not None
    assert made.fittings[0].part.name == "lamp"


def test_the_catalogue_is_asked_only_for_what_the_sheet_lacks() -> None:
    written = sheet(
        {
            "own_parts": [LAMP],
            "fittings": [fitting("a", "lamp"), fitting("b", "stove")],
            "finishes": [{"part": "felt", "surface": "floor", "area": "5 m2"}],
        }
    )
    assert part_ids(written) == ("felt", "stove")


def test_conflicts_of_options_travel_along() -> None:
    written = sheet()
    assert written.own_vehicle is not None
    conflict = OptionConflict(wish="a", other="b", cause="the same floor", kind="excluded")
    made, _ = link(written, file="f", vehicle=written.own_vehicle, parts={}, conflicts=(conflict,))
    assert made is not None
    assert made.conflicts == (conflict,)
