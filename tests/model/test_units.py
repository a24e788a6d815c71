"""Quantities as people write them, and as they are shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.unit_table import KINDS
from coachwright.units import (
    QuantityFault,
    allowed_units,
    parse,
    shown,
    shown_number,
    strip_unit,
    told,
    unit_of,
    worded,
    written,
)

READ = (
    # Worth of each unit: tests/model/test_unit_table.py; here only how it may be written.
    ("24 kg", "mass", 24.0),
    ("53 lb", "mass", 53 * 0.45359237),
    ("5 lb 8 oz", "mass", 5.5 * 0.45359237),
    ("26 in", "length", 660.4),
    ("2 ft 6 in", "length", 762.0),
    ("3/8 in", "length", 9.525),
    ("1 1/2 in", "length", 38.1),
    ("2 ft 3 1/2 in", "length", 698.5),
    ("-120 mm", "length", -120.0),
    ("+120 mm", "length", 120.0),
    ("650mm", "length", 650.0),
    ("  650   mm ", "length", 650.0),
    ("1e3 mm", "length", 1000.0),
    ("1.5E-1 m", "length", 150.0),
    ("11000 BTU/h", "power", 11000 * 1055.05585262 / 3600),
    ("180 Ah", "charge", 180.0),
    ("25 %", "fraction", 0.25),
    ("55 %", "fraction", 0.55),
    ("14 US gal", "volume", 14 * 3.785411784),
    ("3 h/day", "time_use", 3.0),
    ("90 min/day", "time_use", 1.5),
    ("-12 degC", "temperature", -12.0),
    ("-40 degF", "temperature", -40.0),
    ("212 degF", "temperature", 100.0),
    ("18 delta degF", "temperature_difference", 10.0),
    ("-0.35 %/K", "temperature_coefficient", -0.0035),
)


@pytest.mark.parametrize(("text", "kind", "value"), READ, ids=[case[0] for case in READ])
def test_a_quantity_is_read(text: str, kind: str, value: float) -> None:
    assert parse(text, kind) == pytest.approx(value, rel=1e-15, abs=1e-15)


FORMS = {
    "mass": 'write a mass, such as "24 kg"',
    "length": 'write a length, such as "650 mm"',
    "temperature": 'write a temperature, such as "-12 degC"',
    "fraction": 'write a share in per cent, such as "25 %"',
    "energy_use": 'write an energy use, such as "1.2 kWh/day"',
}
NO_QUOTES = "a number needs its unit in quotes: "
NO_UNIT = "the unit is missing; "
LARGE_FIRST = "compound values go from large to small units; "
REFUSED = (
    (24, "mass", "the bare number 24", NO_QUOTES),
    (2.5, "mass", "the bare number 2.5", NO_QUOTES),
    (True, "mass", "the truth value true", ""),
    (["24 kg"], "mass", "a list", ""),
    ({"kg": 24}, "mass", "a table", ""),
    (None, "mass", "None", ""),
    ("", "mass", '""', ""),
    ("heavy", "mass", '"heavy"', ""),
    ("kg 24", "mass", '"kg 24"', ""),
    ("24", "mass", '"24"', NO_UNIT),
    ("2 ft 6", "length", '"2 ft 6"', NO_UNIT),
    ("24 mm", "mass", '"24 mm"', "mm is a unit of length; "),
    ("24 stone", "mass", '"24 stone"', "the unit 'stone' is not known; "),
    ("24 KG", "mass", '"24 KG"', "the unit 'KG' is not known; "),
    ("2,5 kg", "mass", '"2,5 kg"', "use a point, not a comma, for decimals; "),
    ("3/0 in", "length", '"3/0 in"', ""),
    ("6 in 2 ft", "length", '"6 in 2 ft"', LARGE_FIRST),
    ("2 in 2 in", "length", '"2 in 2 in"', LARGE_FIRST),
    ("2 ft -6 in", "length", '"2 ft -6 in"', LARGE_FIRST),
    ("20 degF 3 degC", "temperature", '"20 degF 3 degC"', LARGE_FIRST),
    ("1e999 kg", "mass", '"1e999 kg"', ""),
    ("9" * 400 + " kg", "mass", f'"{"9" * 400} kg"', ""),
    ("nan kg", "mass", '"nan kg"', ""),
    ("inf kg", "mass", '"inf kg"', ""),
    ("25", "fraction", '"25"', NO_UNIT),
    ("1 kWh", "energy_use", '"1 kWh"', "kWh is a unit of energy; "),
)


@pytest.mark.parametrize(
    ("given_value", "kind", "found", "hint"),
    REFUSED,
    ids=[str(case[0])[:20] for case in REFUSED],
)
def test_what_is_no_quantity_is_refused_in_words(
    given_value: object, kind: str, found: str, hint: str
) -> None:
    fault = parse(given_value, kind)
    assert isinstance(fault, QuantityFault)
    assert (fault.found, fault.action) == (found, hint + FORMS[kind])
    assert fault.allowed == f"a number with one of: {', '.join(allowed_units(kind))}"


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_the_example_of_a_kind_can_be_read(kind: str) -> None:
    assert isinstance(parse(KINDS[kind].example, kind), float)


UNIT_PLACES = [(kind, unit.symbol) for kind, each in KINDS.items() for unit in each.units]


@given(
    st.sampled_from(sorted(KINDS)),
    st.floats(min_value=-1e15, max_value=1e15, allow_subnormal=False),
)
def test_what_is_written_is_read_back_to_the_last_bit(kind: str, value: float) -> None:
    assert parse(written(value, kind), kind) == value


@given(st.sampled_from(UNIT_PLACES), st.decimals(-99999, 99999, places=3))
def test_any_unit_may_be_written_with_decimals(place: tuple[str, str], number: object) -> None:
    kind, symbol = place
    assert isinstance(parse(f"{number} {symbol}", kind), float)


@given(st.text(), st.sampled_from(sorted(KINDS)))
def test_any_text_is_read_or_refused(text: str, kind: str) -> None:
    assert isinstance(parse(text, kind), float | QuantityFault)


SHOWN = (
    (24.0, "kg", "metric", "24.0 kg"),
    (99.94, "kg", "metric", "99.9 kg"),
    (3499.6, "kg", "metric", "3,500 kg"),
    (1133.980925, "kg", "us", "2,500 lb"),
    (762.0, "mm", "us", "30.0 in"),
    (0.25, "frac", "metric", "25.0 %"),
    (-12.0, "degC", "metric", "-12.0 °C"),
    (100.0, "degC", "us", "212 °F"),
    (10.0, "K", "us", "18 °F difference"),
    (90.0, "deg", "metric", "90.0°"),
    (0.003, "ohm", "metric", "3.00 mΩ"),
    (2500.0, "kg mm", "metric", "2 kg·m"),
    (1.6, "1", "metric", "1.60"),
    (-0.004, "1", "metric", "0.00"),
    (0.25, "h/day", "metric", "0.25 h/day"),
    (0.0, "kg", "us", "0 lb"),
    (3.0, "d", "metric", "3.0 days"),
    (125050, "money EUR", "us", "1,250.50 EUR"),
    (-5, "money GBP", "metric", "-0.05 GBP"),
    (1000.0, "mL", "us", "33.8 US fl oz"),
    (None, "kg", "metric", "unknown"),
)


@pytest.mark.parametrize(("value", "unit", "system", "text"), SHOWN)
def test_a_value_is_shown_with_few_digits(
    value: float | None, unit: str, system: str, text: str
) -> None:
    assert shown(value, unit, system) == text


TOLD = (
    (2480.0, "kg", "2,480 kg", "5,467 lb"),
    (68.0, "kg", "68 kg", "150 lb"),
    (13.25, "kg", "13.2 kg", "29.2 lb"),
    (762.0, "mm", "762 mm", "30 in"),
    (-8.0, "degC", "−8 °C", "18 °F"),
    (25.0, "degC", "25 °C", "77 °F"),
    (100.0, "km/h", "100 km/h", "62 mph"),
    (12.5, "deg", "12.5°", "12.5°"),
    (0.001, "m2", "0.00 m²", "0.0 ft²"),
    (1e-05, "kg", "0.0 kg", "0.0 lb"),
    (10000, "money USD", "100.00 USD", "100.00 USD"),
)


@pytest.mark.parametrize(("value", "unit", "metric", "us"), TOLD)
def test_a_quantity_in_a_sentence_is_said_in_the_units_of_its_reader(
    value: float, unit: str, metric: str, us: str
) -> None:
    text = f"it is {told(value, unit)}, and {told(value, unit)} again"
    assert worded(text) == f"it is {metric}, and {metric} again"
    assert worded(text, "us") == f"it is {us}, and {us} again"
    assert worded(text, space="_") == f"it is {metric}, and {metric} again".replace(
        metric, metric.replace(" ", "_")
    )


@given(st.floats(-1e9, 1e9), st.sampled_from(["mm", "kg", "degC", "L", "km/h"]))
def test_nothing_that_is_told_stays_unsaid(value: float, unit: str) -> None:
    for system in ("metric", "us"):
        said = worded(told(value, unit), system)
        assert "⟦" not in said
        assert worded(said, system) == said


@given(st.floats(-1e9, 1e9), st.sampled_from(["mm", "kg", "frac", "degC", "Ah", "L", "kPa", "1"]))
def test_no_value_is_shown_with_more_than_three_decimals(value: float, unit: str) -> None:
    for system in ("metric", "us"):
        digits, _ = shown_number(value, unit, system)
        assert len(digits.partition(".")[2]) <= 3
        assert float(digits.replace(",", "")) != 0 or not digits.startswith("-")


def test_a_name_gives_its_unit_and_its_spelling_in_files() -> None:
    assert unit_of("draw_wh_per_day") == "Wh/day"
    assert unit_of("name") is None
    assert strip_unit("draw_wh_per_day") == "draw"
    assert strip_unit("mm") == "mm"
