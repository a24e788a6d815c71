"""Write the monthly sun of src/coachwright/reference/sites.csv anew from its other columns."""

import csv

from coachwright.actions.weather import site_year
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.months import months
from coachwright.reference import table
from tests.support.source import SOURCE

PATH = SOURCE / "reference" / "sites.csv"


def sun(site_id: str) -> list[str]:
    """Return a site's peak-sun hours of each month, as the table holds them."""
    year = site_year(Catalogue(), site_id)
    return [f"{month.sun_h_per_day:.2f}" for month in months(weather=year)]


def main() -> None:
    """Write the table."""
    rows = [dict(row) for row in table("sites")]
    for row in rows:
        for number, hours in enumerate(sun(row["id"]), start=1):
            row[f"sun_{number:02d}_h_per_day"] = hours
    with PATH.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, fieldnames=list(rows[0]), lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)


if __name__ == "__main__":
    main()
