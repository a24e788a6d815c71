"""Weather files made of a year, in every form and with every oddity."""

import datetime
import json
from collections.abc import Iterator
from functools import cache

from coachwright.climate.air import humidity_frac
from coachwright.climate.model import HOURS, Weather
from tests.climate.test_synthetic import city

START = datetime.datetime(2019, 1, 1)  # noqa: DTZ001  # a logger's clock has no zone
HEAD_LINES = 8


@cache
def year() -> Weather:
    """Return the year that the files are made of."""
    return city("denver-us")


def rows(weather: Weather | None = None) -> Iterator[dict[str, float]]:
    """Yield the hours of a year by plain names."""
    found = weather or year()
    humidity = humidity_frac(air=found.air_degc, dew=found.dew_degc)
    for at in range(HOURS):
        yield {
            "air": float(found.air_degc[at]),
            "dew": float(found.dew_degc[at]),
            "humidity": float(humidity[at]) * 100.0,
            "pressure": float(found.pressure_pa[at]),
            "ghi": float(found.ghi_w_per_m2[at]),
            "dni": float(found.dni_w_per_m2[at]),
            "dhi": float(found.dhi_w_per_m2[at]),
            "wind": float(found.wind_m_per_s[at]),
        }


def stamp(at: int) -> datetime.datetime:
    """Return when an hour begins."""
    return START + datetime.timedelta(hours=at)


def epw(fields: int = 35, city_name: str = "Some Town") -> list[str]:
    """Return the lines of an EPW file."""
    place = year().place
    head = (
        f"LOCATION,{city_name},XX,USA,TMY,000000,{place.latitude_deg},{place.longitude_deg},"
        f"{place.zone_h},{place.altitude_m}"
    )
    names = ("DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES")
    rest = [f"{name},0" for name in (*names, "HOLIDAYS/DAYLIGHT SAVINGS", "COMMENTS 1")]
    lines = [head, *rest, "COMMENTS 2", "DATA PERIODS,1,1,Data,Sunday,1/1,12/31"]
    for at, row in enumerate(rows()):
        when = stamp(at)
        cells = ["0"] * fields
        cells[:6] = [f"{when.year}", f"{when.month}", f"{when.day}", f"{when.hour + 1}", "60", "?"]
        cells[6:10] = [f"{row[name]:.4f}" for name in ("air", "dew", "humidity", "pressure")]
        cells[13:16] = [f"{row[name]:.4f}" for name in ("ghi", "dni", "dhi")]
        cells[20:22] = ["180", f"{row['wind']:.4f}"]
        lines.append(",".join(cells))
    return lines


def psm(*, half_hours: bool = False, leap: bool = False, unit: str = "w/m2") -> list[str]:
    """Return the lines of a file of the national solar radiation database."""
    place = year().place
    lines = [
        "Source,Location ID,Latitude,Longitude,Time Zone,Elevation,GHI Units,Version",
        (
            f"NSRDB,1,{place.latitude_deg},{place.longitude_deg},{place.zone_h:g},"
            f"{place.altitude_m},{unit},4.0.0"
        ),
        (
            "Year,Month,Day,Hour,Minute,Temperature,Dew Point,DHI,DNI,GHI,Pressure,"
            "Relative Humidity,Wind Speed"
        ),
    ]
    for at, row in enumerate(rows()):
        when = stamp(at)
        body = (
            f"{row['air']:.4f},{row['dew']:.4f},{row['dhi']:.4f},{row['dni']:.4f},"
            f"{row['ghi']:.4f},{row['pressure'] / 100:.4f},{row['humidity']:.4f},{row['wind']:.4f}"
        )
        minutes = (15, 45) if half_hours else (30,)
        lines += [
            f"2020,{when.month},{when.day},{when.hour},{minute},{body}" for minute in minutes
        ]
        if leap and (when.month, when.day) == (2, 28):
            lines += [f"2020,2,29,{when.hour},{minute},{body}" for minute in minutes]
    return lines


def _universal() -> Iterator[tuple[datetime.datetime, dict[str, float]]]:
    """Yield the hours in universal time from its own 1 January on."""
    listed = list(rows())
    shift = int(year().place.zone_h)
    for at in range(HOURS):
        yield stamp(at), listed[(at + shift) % HOURS]


def pvgis_tmy_csv() -> list[str]:
    """Return the lines of a typical year of PVGIS."""
    place = year().place
    lines = [
        f"Latitude (decimal degrees): {place.latitude_deg:.3f}",
        f"Longitude (decimal degrees): {place.longitude_deg:.3f}",
        f"Elevation (m): {place.altitude_m}",
        "Irradiance Time Offset (h): 0.5",
        "month,year",
        *(f"{month},2012" for month in range(1, 13)),
        "time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP",
    ]
    for when, row in _universal():
        lines.append(
            f"{when:%Y%m%d:%H%M},{row['air']:.3f},{row['humidity']:.3f},{row['ghi']:.3f},"
            f"{row['dni']:.3f},{row['dhi']:.3f},300.0,{row['wind']:.3f},180,{row['pressure']:.1f}"
        )
    return [*lines, "", "T2m: 2-m air temperature (degree Celsius)"]


def pvgis_json(*, hourly: bool = False, slope: float = 0.0) -> str:
    """Return a JSON file of PVGIS."""
    place = year().place
    location = {
        "latitude": place.latitude_deg,
        "longitude": place.longitude_deg,
        "elevation": place.altitude_m,
    }
    entries: list[dict[str, object]] = []
    for when, row in _universal():
        if hourly:
            entries.append(
                {
                    "time": f"{when:%Y%m%d:%H}30",
                    "G(i)": row["ghi"],
                    "H_sun": 0.0,
                    "T2m": row["air"],
                    "WS10m": row["wind"],
                    "Int": 0.0,
                }
            )
        else:
            entries.append(
                {
                    "time(UTC)": f"{when:%Y%m%d:%H%M}",
                    "T2m": row["air"],
                    "RH": row["humidity"],
                    "G(h)": row["ghi"],
                    "Gb(n)": row["dni"],
                    "Gd(h)": row["dhi"],
                    "WS10m": row["wind"],
                    "SP": row["pressure"],
                }
            )
    inputs: dict[str, object] = {"location": location}
    if hourly:
        inputs["mounting_system"] = {"fixed": {"slope": {"value": slope}}}
    else:
        location["irradiance_time_offset"] = 0.5
    return json.dumps(
        {"inputs": inputs, "outputs": {"hourly" if hourly else "tmy_hourly": entries}}
    )


def pvgis_hourly_csv(*, years: tuple[int, ...] = (2019,), slope: float = 0.0) -> list[str]:
    """Return the lines of hourly years of PVGIS."""
    place = year().place
    lines = [
        f"Latitude (decimal degrees):\t{place.latitude_deg:.3f}",
        f"Longitude (decimal degrees):\t{place.longitude_deg:.3f}",
        f"Elevation (m):\t{place.altitude_m}",
        "Radiation database:\tPVGIS-SARAH3",
        f"Slope: {slope} deg.",
        "Azimuth: 0 deg.",
        "time,Gb(i),Gd(i),Gr(i),H_sun,T2m,WS10m,Int",
    ]
    for number in years:
        lines += [
            f"{number}{when:%m%d:%H}30,{row['ghi'] - row['dhi']:.3f},{row['dhi']:.3f},0.0,0.0,"
            f"{row['air']:.3f},{row['wind']:.3f},0.0"
            for when, row in _universal()
        ]
    return [*lines, "", "H_sun: Sun height (degree)"]


def tmy3() -> list[str]:
    """Return the lines of a TMY3 file with the columns that count."""
    place = year().place
    lines = [
        (
            f'000000,"SOME TOWN",XX,{place.zone_h},{place.latitude_deg},{place.longitude_deg},'
            f"{place.altitude_m}"
        ),
        (
            "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),"
            "Dew-point (C),RHum (%),Pressure (mbar),Wspd (m/s)"
        ),
    ]
    for at, row in enumerate(rows()):
        when = stamp(at)
        lines.append(
            f"{when:%m/%d}/{1990 + when.month},{when.hour + 1:02d}:00,{row['ghi']:.3f},"
            f"{row['dni']:.3f},{row['dhi']:.3f},{row['air']:.3f},{row['dew']:.3f},"
            f"{row['humidity']:.3f},{row['pressure'] / 100:.3f},{row['wind']:.3f}"
        )
    return lines


def logger(*, minutes: int = 60, hours_off: int = 0, german: bool = False) -> list[str]:
    """Return the lines of the shop's own logger: stamps at the start of each row's time."""
    lines = ["when;T;sun;RH" if german else "when,T,sun,RH"]
    for at, row in enumerate(rows()):
        for minute in range(0, 60, minutes):
            when = stamp(at) + datetime.timedelta(minutes=minute, hours=hours_off)
            cells = [f"{row['air']:.3f}", f"{row['ghi']:.3f}", f"{row['humidity']:.3f}"]
            if german:
                commas = ";".join(cells).replace(".", ",")
                lines.append(f"{when:%d.%m.%Y %H:%M};{commas}")
            else:
                lines.append(",".join([f"{when:%Y-%m-%d %H:%M}", *cells]))
    return lines


def logger_map(**changes: object) -> dict[str, object]:
    """Return the map of the shop's own logger, as a program gives it."""
    place = year().place
    return {
        "place": {
            "name": "The yard",
            "latitude_deg": place.latitude_deg,
            "longitude_deg": place.longitude_deg,
            "altitude_mm": place.altitude_m * 1000.0,
            "zone_h": place.zone_h,
        },
        "time": {"heading": "when", "stamp": "start"},
        "columns": [
            {"quantity": "air", "heading": "T", "unit": "degC"},
            {"quantity": "ghi", "heading": "sun", "unit": "W/m2"},
            {"quantity": "humidity", "heading": "RH", "unit": "%"},
        ],
        **changes,
    }
