"""Weather files of every form are read; odd ones are mended and it is said, or refused and why."""

from collections.abc import Callable

import numpy as np
import pytest
from pvlib import iotools

from coachwright.climate.model import Weather
from coachwright.climate.read_logger import LoggerMap
from coachwright.climate.reading import read_weather
from coachwright.errors import WeatherFileError
from tests.climate import files
from tests.climate.years import PACKAGED, measured, packaged

LINES = list[str]


def read(text: str | bytes | LINES, **options: object) -> Weather:
    if isinstance(text, list):
        text = "\n".join(text) + "\n"
    data = text if isinstance(text, bytes) else text.encode()
    return read_weather(data=data, file="odd", **options)  # type: ignore[arg-type]


def refusal(text: str | bytes | LINES, **options: object) -> str:
    with pytest.raises(WeatherFileError) as caught:
        read(text, **options)
    (fault,) = caught.value.faults
    assert fault.found
    assert fault.allowed
    assert fault.action
    return fault.sentence()


def same(found: Weather, *, but: tuple[str, ...] = (), within: float = 2e-3) -> bool:
    return all(
        np.abs(column - files.year().columns[name]).max() < within * (100.0 if "pa" in name else 1)
        for name, column in found.columns.items()
        if name not in but
    )


LOGGED = LoggerMap.model_validate(files.logger_map())
UNLOGGED = ("wind_m_per_s", "pressure_pa", "dni_w_per_m2", "dhi_w_per_m2", "dew_degc")


@pytest.mark.parametrize(
    "make",
    [files.epw, files.psm, files.pvgis_tmy_csv, files.pvgis_json, files.tmy3],
    ids=["EPW", "PSM", "PVGIS CSV", "PVGIS JSON", "TMY3"],
)
def test_every_form_gives_back_the_year_it_was_made_of(make: Callable[[], LINES | str]) -> None:
    found = read(make())
    assert same(found, but=("dew_degc",))
    assert found.dew_degc == pytest.approx(files.year().dew_degc, abs=0.05)
    assert found.place.latitude_deg == pytest.approx(files.year().place.latitude_deg)
    assert found.place.zone_h == files.year().place.zone_h
    assert found.sun_min == 30.0


def test_the_packaged_years_are_what_the_library_reads() -> None:
    # pvlib 0.16.1, iotools.read_tmy3: an independent reader of the same file
    from importlib import resources  # noqa: PLC0415

    path = resources.files("pvlib") / "data" / PACKAGED["greensboro"]
    theirs, about = iotools.read_tmy3(str(path), map_variables=True, coerce_year=1990)
    ours = measured("greensboro")
    for name, column in (
        ("ghi_w_per_m2", "ghi"),
        ("dni_w_per_m2", "dni"),
        ("dhi_w_per_m2", "dhi"),
        ("air_degc", "temp_air"),
        ("wind_m_per_s", "wind_speed"),
    ):
        assert ours.columns[name] == pytest.approx(theirs[column].to_numpy(), abs=1e-9)
    assert ours.place.latitude_deg == about["latitude"]
    assert ours.repairs == ()


def test_a_tmy2_year_has_its_place_and_its_name() -> None:
    year = measured("miami-tmy2")
    assert year.title == "Miami, FL"
    assert year.place.longitude_deg == pytest.approx(-80.267, abs=1e-3)
    assert year.place.zone_h == -5.0


# ---- odd files that are mended ---------------------------------------------------------------


def test_an_epw_of_32_fields_is_read_by_position() -> None:
    found = read(files.epw(fields=32))
    assert same(found, but=("dew_degc",))
    assert found.repairs == ("rows of 32 fields instead of 35: read by position",)


def test_latin_1_is_read_and_said() -> None:
    found = read("\n".join(files.epw(city_name="São Tomé")).encode("latin-1"))
    assert found.title.startswith("São Tomé")
    assert found.repairs == ("text in Latin-1 instead of UTF-8",)


def test_short_gaps_are_filled_and_counted() -> None:
    lines = files.epw()
    for at in (100, 101, 102, 4000):
        cells = lines[files.HEAD_LINES + at].split(",")
        cells[6], cells[13] = "99.9", "9999"
        lines[files.HEAD_LINES + at] = ",".join(cells)
    del lines[files.HEAD_LINES + 6000]
    found = read(lines)
    assert found.repairs[0].startswith("gaps filled: temperature 5 h")
    assert found.air_degc[4000] == pytest.approx(
        (files.year().air_degc[3999] + files.year().air_degc[4001]) / 2, abs=1e-3
    )
    around = files.year().ghi_w_per_m2[[4000 - 24, 4000 + 24]].mean()
    assert found.ghi_w_per_m2[4000] == pytest.approx(around, abs=1e-3)


def test_a_leap_day_is_left_out() -> None:
    found = read(files.psm(leap=True))
    assert same(found, but=("dew_degc",))
    assert "29 February left out" in found.repairs


def test_half_hours_become_hours() -> None:
    found = read(files.psm(half_hours=True))
    assert same(found, but=("dew_degc",))
    assert found.repairs == ("means of 2 rows in each hour",)
    assert found.sun_min == 30.0


def test_kelvin_and_millibars_are_turned() -> None:
    lines = files.epw()
    for at in range(files.HEAD_LINES, len(lines)):
        cells = lines[at].split(",")
        cells[6] = f"{float(cells[6]) + 273.15:.4f}"
        cells[7] = f"{float(cells[7]) + 273.15:.4f}"
        cells[9] = f"{float(cells[9]) / 100:.4f}"
        lines[at] = ",".join(cells)
    # in an EPW 99.9 and more means "missing", so that kelvin can only come by other forms
    assert "temperature: no" in refusal(lines) or "temperature" in refusal(lines)
    psm = files.psm()
    for at in range(3, len(psm)):
        cells = psm[at].split(",")
        cells[5], cells[6] = f"{float(cells[5]) + 273.15}", f"{float(cells[6]) + 273.15}"
        psm[at] = ",".join(cells)
    found = read(psm)
    assert same(found, but=("dew_degc",))
    assert found.repairs == ("temperatures in kelvin: turned into degC",)


def test_pvgis_hours_lack_humidity_and_pressure_and_this_is_said() -> None:
    for text in (files.pvgis_hourly_csv(), files.pvgis_json(hourly=True)):
        found = read(text)
        assert same(found, but=UNLOGGED, within=2e-2) or same(found, but=UNLOGGED[1:], within=2e-2)
        assert any("no humidity" in said for said in found.repairs)
        assert any("no pressure" in said for said in found.repairs)


def test_one_of_several_years_can_be_chosen() -> None:
    lines = files.pvgis_hourly_csv(years=(2018, 2019))
    assert "2018, 2019" in refusal(lines)
    assert same(read(lines, year=2019), but=UNLOGGED[1:], within=2e-2)
    assert "one of 2018, 2019" in refusal(lines, year=2030)


def test_light_that_is_missing_is_made_of_the_others() -> None:
    lines = files.psm()
    short = [",".join(line.split(",")[:9] + line.split(",")[10:]) for line in lines[2:]]
    assert "no column GHI" in refusal([*lines[:2], *short])
    without_dni = [",".join(line.split(",")[:8] + line.split(",")[9:]) for line in lines[2:]]
    found = read([*lines[:2], *without_dni])
    assert any("sun alone from the difference" in said for said in found.repairs)
    day = files.year().ghi_w_per_m2 > 100.0
    off = np.abs(found.dni_w_per_m2 - files.year().dni_w_per_m2)[day]
    assert off.mean() < 5.0
    without_dhi = [",".join(line.split(",")[:7] + line.split(",")[8:]) for line in lines[2:]]
    found = read([*lines[:2], *without_dhi])
    assert found.dhi_w_per_m2 == pytest.approx(files.year().dhi_w_per_m2, abs=1e-2)


def test_a_logger_is_read_by_its_map() -> None:
    found = read(files.logger(), logger=LOGGED)
    assert same(found, but=UNLOGGED)
    assert found.dew_degc == pytest.approx(files.year().dew_degc, abs=0.05)
    assert found.title == "The yard"
    assert any("Erbs" in said for said in found.repairs)


def test_a_logger_may_stamp_the_end_write_commas_and_count_in_other_units() -> None:
    changed = files.logger_map(
        time={"heading": "when", "form": "%d.%m.%Y %H:%M", "stamp": "end"},
        delimiter=";",
        decimal=",",
    )
    found = read(files.logger(hours_off=1, german=True), logger=LoggerMap.model_validate(changed))
    assert same(found, but=UNLOGGED)
    fahrenheit = files.logger_map(
        columns=[
            {"quantity": "air", "heading": "T", "unit": "degF"},
            {"quantity": "ghi", "heading": "sun", "unit": "W/m2"},
        ]
    )
    found = read(files.logger(), logger=LoggerMap.model_validate(fahrenheit))
    assert found.air_degc.mean() == pytest.approx(
        (files.year().air_degc.mean() - 32.0) * 5.0 / 9.0, abs=1e-3
    )


def test_quarter_hours_of_a_logger_become_hours() -> None:
    changed = files.logger_map(time={"heading": "when", "stamp": "start", "every_h": 0.25})
    found = read(files.logger(minutes=15), logger=LoggerMap.model_validate(changed))
    assert same(found, but=UNLOGGED)


# ---- odd files that are refused --------------------------------------------------------------


def test_what_is_no_weather_file_is_refused_with_the_forms_that_are() -> None:
    assert "EPW, TMY2, TMY3" in refusal("hello\nworld\n")
    assert "found nothing" in refusal("")


def test_a_long_gap_is_refused_with_where_it_begins() -> None:
    lines = files.epw()
    del lines[files.HEAD_LINES + 31 * 24 : files.HEAD_LINES + 31 * 24 + 48]
    assert "48 together from 1 February 00:00" in refusal(lines)


def test_half_a_year_is_refused() -> None:
    assert "hours without a value" in refusal(files.epw()[:4000])


def test_stamps_that_end_the_hour_where_the_map_says_start_are_refused() -> None:
    said = refusal(files.logger(hours_off=1), logger=LOGGED)
    assert "found 1 h late" in said
    assert "stamps begin or end the hour" in said


def test_universal_time_that_is_not_said_is_refused() -> None:
    assert "7 h late" in refusal(files.logger(hours_off=7), logger=LOGGED)


def test_kilowatts_and_kilojoules_are_refused() -> None:
    kilowatts, kilojoules = (
        files.logger_map(
            columns=[
                {"quantity": "air", "heading": "T", "unit": "degC"},
                {"quantity": "ghi", "heading": "sun", "unit": unit},
            ]
        )
        for unit in ("kW/m2", "kJ/m2/h")
    )
    assert "light on the flat, " in refusal(
        files.logger(), logger=LoggerMap.model_validate(kilowatts)
    )
    assert "of what clear skies give" in refusal(
        files.logger(), logger=LoggerMap.model_validate(kilojoules)
    )


def test_fahrenheit_that_is_not_said_is_refused() -> None:
    lines = files.psm()
    for at in range(3, len(lines)):
        cells = lines[at].split(",")
        cells[5] = f"{float(cells[5]) * 1.8 + 32.0}"
        lines[at] = ",".join(cells)
    assert "temperature, " in refusal(lines)


def test_a_cell_that_is_no_number_is_refused_with_its_line() -> None:
    lines = files.epw()
    lines[files.HEAD_LINES + 9] = lines[files.HEAD_LINES + 9].replace(",60,?,", ",60,?,x")
    assert "line 18, dry bulb" in refusal(lines)


def test_a_row_that_was_cut_is_refused_with_its_line() -> None:
    lines = files.epw()
    lines[-1] = lines[-1][:30]
    assert f"line {len(lines)}" in refusal(lines)


def test_light_on_a_slope_is_refused() -> None:
    assert "slope: found 30 deg" in refusal(files.pvgis_hourly_csv(slope=30.0))
    assert "slope: found 35 deg" in refusal(files.pvgis_json(hourly=True, slope=35.0))


def test_units_of_a_heading_that_are_not_ours_are_refused() -> None:
    assert '"mj/m2"' in refusal(files.psm(unit="MJ/m2"))


def test_a_year_twice_in_one_file_is_refused() -> None:
    lines = files.epw()
    assert "rows in an hour" in refusal([*lines, *lines[files.HEAD_LINES : 3000]])


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("39.74", "139.74", "latitude"),
        ("39.74", "north", "latitude"),
        ("2019,1,1,1,", "2019,13,1,1,", "a date of the calendar"),
    ],
)
def test_a_heading_or_a_stamp_that_cannot_be_is_refused(old: str, new: str, said: str) -> None:
    assert said in refusal("\n".join(files.epw()).replace(old, new, 1))


def test_headings_that_were_cut_are_refused() -> None:
    assert "LOCATION with 10 fields" in refusal("LOCATION,a,b\n")
    assert "a row for each hour" in refusal(files.epw()[: files.HEAD_LINES])
    assert "line 1" in refusal("7,A\nDate (MM/DD/YYYY),Time (HH:MM)\n")
    tmy3 = files.tmy3()
    assert 'no column "GHI' in refusal([tmy3[0], tmy3[1].replace("GHI", "ABC"), *tmy3[2:]])
    assert "no Latitude" in refusal(["Source,Elevation", "NSRDB,5", "Year,Month,Day,Hour"])
    assert "KeyError" in refusal('{"inputs": {}}')
    assert "no stamps" in refusal(files.pvgis_tmy_csv()[:18])
    assert "no column time" in refusal("Latitude (decimal degrees): 45\nnothing\n")


def test_a_map_that_does_not_fit_is_refused() -> None:
    lines = files.logger()
    for changes, said in (
        ({"time": {"heading": "then", "stamp": "start"}}, 'no column "then"'),
        (
            {"columns": [{"quantity": "air", "heading": "T", "unit": "furlong"}]},
            "one of degC, degF, K",
        ),
        ({"columns": [{"quantity": "air", "heading": "T", "unit": "degC"}]}, "light: found no"),
        ({"columns": [{"quantity": "ghi", "heading": "sun", "unit": "W/m2"}]}, "temperature"),
        ({"time": {"heading": "when", "form": "%H", "stamp": "start"}}, "a stamp as %H"),
    ):
        mapped = LoggerMap.model_validate(files.logger_map(**changes))
        assert said in refusal(lines, logger=mapped)
    assert "found nothing" in refusal("", logger=LOGGED)


def test_packaged_bytes_are_read_as_they_are() -> None:
    assert packaged("sand-point").startswith(b"703165")
