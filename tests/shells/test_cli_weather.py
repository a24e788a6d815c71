"""`coachwright weather`: add, list, show."""

import json
from pathlib import Path

import pytest

from coachwright.actions.weather import site_year
from coachwright.actions.writing import record_text
from coachwright.catalogue.loading import Catalogue
from coachwright.catalogue.sites import site, site_ids, site_origin
from coachwright.climate.read_logger import LoggerMap
from coachwright.errors import CatalogueError, UnknownName, WeatherFileError
from coachwright.model.site import SiteOrigin
from tests.climate import files
from tests.shells.running import Runner


@pytest.fixture
def epw(tmp_path: Path) -> Path:
    path = tmp_path / "yard.epw"
    path.write_text("\n".join(files.epw(fields=32)))
    return path


def test_a_file_is_added_listed_shown_and_comes_back_to_the_bit(
    run: Runner, epw: Path, tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    added = run("--shop", shop, "weather", "add", epw, "--id", "yard")
    assert added.code == 0, added.err
    assert "named yard in a build" in added.out
    assert "mended: rows of 32 fields" in added.out
    listed = run("--shop", shop, "weather", "list", "--search", "yard")
    assert "imported" in listed.out
    shown = run("--shop", shop, "weather", "show", "yard")
    assert shown.code == 0
    assert "Mended: rows of 32 fields" in shown.out
    assert "Cold night, 99.6 % of the hours are warmer" in shown.out
    catalogue = Catalogue(shop)
    year = site_year(catalogue, "yard")
    assert year.digest == site(catalogue, "yard").digest
    assert year.origin is SiteOrigin.IMPORTED
    assert year.air_degc == pytest.approx(files.year().air_degc, abs=1e-3)
    again = run("--shop", shop, "weather", "add", epw, "--id", "yard")
    assert "takes the place" in again.out


def test_a_dry_run_writes_nothing(run: Runner, epw: Path, tmp_path: Path) -> None:
    ran = run("--shop", tmp_path / "shop", "weather", "add", epw, "--dry-run", "--json")
    assert ran.code == 0
    data = json.loads(ran.out)
    assert data["site"]["id"] == "some-town-xx-usa"
    assert data["written"] == []
    assert not (tmp_path / "shop").exists()
    said = run("--shop", tmp_path / "shop", "weather", "add", epw, "--dry-run")
    assert "Nothing was written" in said.out


def test_a_logger_needs_its_map_and_its_faults_are_said(run: Runner, tmp_path: Path) -> None:
    log = tmp_path / "log.csv"
    log.write_text("\n".join(files.logger()))
    refused = run("weather", "add", log)
    assert refused.code == 2
    assert "write a map and give it with --map" in refused.err
    wrong = tmp_path / "wrong.toml"
    wrong.write_text("[place]\nname = 'x'\n")
    assert run("weather", "add", log, "--map", wrong).code == 2
    right = tmp_path / "right.toml"
    right.write_text(record_text(LoggerMap.model_validate(files.logger_map())))
    ran = run("weather", "add", log, "--map", right)
    assert ran.code == 0, ran.err
    assert "named the-yard in a build" in ran.out


def test_a_file_that_is_not_there_is_said(run: Runner) -> None:
    ran = run("weather", "add", "none.epw")
    assert ran.code == 2
    assert "no such file" in ran.err


def test_a_shipped_site_is_shown_with_its_caution_and_who_must_be_named(run: Runner) -> None:
    shown = run("weather", "show", "london-gb", "--units", "us")
    said = " ".join(shown.out.split())
    assert "Synthetic: made from monthly temperature" in said
    assert "CC-BY-4.0" in said
    data = json.loads(run("weather", "show", "miami-fl", "--json").out)
    assert data["site"]["origin"] == "measured"
    assert len(data["months"]) == 12
    assert run("weather", "show", "nowhere").code == 2


def test_sites_are_found_by_words(run: Runner) -> None:
    rows = json.loads(run("weather", "list", "--json").out)
    assert len(rows) == len(site_ids(Catalogue())) == 272
    assert "No site is like that" in run("weather", "list", "--search", "atlantis").out
    assert "1 sites" in run("weather", "list", "--search", "denver").out


def test_hours_that_were_changed_are_refused(run: Runner, epw: Path, tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    run("--shop", shop, "weather", "add", epw, "--id", "miami-fl")
    catalogue = Catalogue(shop)
    assert site_origin(catalogue, "miami-fl") == "the shop's own, in place of a shipped one"
    (hours,) = (shop / "weather").glob("*.csv")
    whole = hours.read_text()
    hours.write_text(whole.replace("0.0000", "0.0001", 1))
    with pytest.raises(WeatherFileError, match="other hours than were added"):
        site_year(catalogue, "miami-fl")
    hours.write_text("a,b\nc,d\n")
    with pytest.raises(WeatherFileError, match="rows that are no numbers"):
        site_year(catalogue, "miami-fl")
    hours.unlink()
    with pytest.raises(WeatherFileError, match="no such file"):
        site_year(catalogue, "miami-fl")


def test_a_site_s_file_with_faults_is_said(tmp_path: Path) -> None:
    (tmp_path / "weather").mkdir()
    (tmp_path / "weather" / "yard.toml").write_text("id = 'yard'\n")
    with pytest.raises(CatalogueError):
        site(Catalogue(tmp_path), "yard")
    with pytest.raises(UnknownName):
        site(Catalogue(tmp_path), "yrad")
