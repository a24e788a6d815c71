"""What stands on every sheet: header, footer, cautions, list of sources."""

from dataclasses import dataclass

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.papers.wording import JURISDICTION_WORDS, PAPER_OF, SourceNumbers
from coachwright.reference.sources import references

_DIGEST_LETTERS = 10
_FOOT = (
    "Computed from the build as written; not a certificate, an approval or an inspection. "
    "Local codes and licensed practice govern."
)
_CODES = {
    Jurisdiction.US: "the state's vehicle code, the federal motor vehicle safety standards, the "
    "electrical and gas codes adopted where the vehicle is registered",
    Jurisdiction.EU: "the type-approval rules, the national registration rules and the "
    "installation standards of the country where the vehicle is registered",
    Jurisdiction.UK: "the construction-and-use and approval rules, and the installation "
    "standards in force where the vehicle is registered",
}
_CAUTIONS = {
    "electricity": "Electricity: a house battery can deliver thousands of amperes into a fault "
    "and start a fire; mains voltage kills. Conductors, overcurrent protection, earthing and "
    "shock protection are designed, installed and tested by a licensed electrician.",
    "gas": "Gas: LP gas burns, explodes and poisons. Gas work, ventilation and the leak test "
    "belong to a licensed gas fitter; carbon monoxide and gas alarms are kept working.",
    "load": "Load: the figures follow from declared and estimated masses. Only a weighbridge "
    "with the vehicle loaded as it travels shows the true axle loads; no rating on the "
    "vehicle's plate may be exceeded, whatever this sheet says.",
    "layout": "Layout: computed from boxes, openings and zones as they are entered. Measure in "
    "the vehicle before anything is cut; ways out of every bed stay free and open from inside.",
    "seats": "Seats: belted seats and their anchorages need tested parts and approved "
    "installation; nothing here replaces that evidence.",
    "certification": "Certification: this sheet prepares figures for the person who may "
    "certify, approve or inspect. A rule marked unknown has not been shown to be met, and rules "
    "not listed here have not been examined.",
    "water": "Water: tanks, hoses and heaters for drinking water are disinfected and flushed "
    "before use. Hot water scalds, stored lukewarm water breeds bacteria, and frost bursts "
    "what is not drained.",
    "weather": "Weather: a typical year is no forecast. Real years are colder, hotter and darker; "
    "what nine of ten stays last, one of ten does not. Nobody's life may hang on these figures: "
    "keep fuel, warm clothing and a way home in reserve.",
    "warmth": "Heat and cold: whatever burns fuel takes its air from outside and gives its "
    "exhaust outside, is installed and serviced as its maker and local codes say, and has a "
    "working carbon monoxide alarm beside it. Vents for fresh air are never closed. A parked "
    "vehicle in the sun grows hot enough to kill children and animals, and an air conditioner "
    "stops when the battery is empty.",
    "price": "Prices: as the catalogue gives them, without tax, labour or delivery; where a "
    "price is unknown it is not in the sum. This list is no quotation.",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class FrameView:
    """Header, footer and cautions of one sheet."""

    paper: str
    title: str
    project: str
    parties: str
    vehicle: str
    record: str
    foot: str
    caution_title: str
    cautions: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class SourceLine:
    """One entry of a sheet's list of sources."""

    number: str
    text: str


def frame(build: Build, *, title: str, cautions: tuple[str, ...]) -> FrameView:
    """Return the frame of a sheet.

    Parameters
    ----------
    build
        Whose sheet it is.
    title
        Name of the document.
    cautions
        Subjects of the cautions that belong to it, such as ``"electricity"``.
    """
    jurisdiction = build.brief.jurisdiction
    codes = (
        f"Governing here ({JURISDICTION_WORDS[jurisdiction]}): {_CODES[jurisdiction]}. "
        "Where they and this sheet differ, they hold."
    )
    return FrameView(
        paper=PAPER_OF[jurisdiction],
        title=title,
        project=build.name,
        parties=" · ".join(
            word for word in (build.customer, f"revision {build.revision}") if word
        ),
        vehicle=build.vehicle.name,
        record=f"record {build.digest[:_DIGEST_LETTERS]}",
        foot=_FOOT,
        caution_title="Caution" if len(cautions) == 1 else "Cautions",
        cautions=(*(_CAUTIONS[subject] for subject in cautions), codes),
    )


def source_lines(numbers: SourceNumbers) -> tuple[SourceLine, ...]:
    """Return the sources of a sheet with their full titles, in the order of their numbers."""
    known = references()
    return tuple(
        SourceLine(number=number, text=known[key].text() if key in known else _untitled(key))
        for number, key in numbers.listed()
    )


def _untitled(key: str) -> str:
    return f"{key} (title not in the list of sources)"
