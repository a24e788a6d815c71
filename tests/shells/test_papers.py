"""The job pack: every document opens, is the same twice, and says what it must."""

import io
import re
import zipfile
from functools import cache

import openpyxl
import pytest

from coachwright.assess import Assessment, assess
from coachwright.errors import UnknownName
from coachwright.model.finding import Outcome, Severity, Source, Status
from coachwright.papers.frame import frame
from coachwright.papers.pack import DOCUMENTS, DRAWINGS, VIEWS, WORKBOOK, documents, job_pack
from coachwright.papers.purchase import neutral, purchase_lines
from coachwright.papers.render import TEMPLATES, CannotRender, Press, view_json
from coachwright.papers.view_compliance import ComplianceView, compliance_view
from coachwright.papers.view_energy import energy_view
from coachwright.papers.view_parts import parts_view
from coachwright.papers.view_water import water_view
from coachwright.papers.view_weights import weight_view
from coachwright.papers.wording import clause_of, subject_of
from tests.support.builds import Data, build
from tests.support.paper_build import PAPERS, PAPERS_US

BARE: Data = {}
BUILDS = {"eu": PAPERS, "us": PAPERS_US, "bare": BARE}


@cache
def _assessment(name: str) -> Assessment:
    return assess(build(BUILDS[name]))


@cache
def _pack(name: str) -> dict[str, bytes]:
    return {document.name: document.content for document in job_pack(_assessment(name))}


def _pages(pdf: bytes) -> int:
    counts = re.findall(
        rb"/Type\s*/Pages\b.*?/Count\s+(\d+)|/Count\s+(\d+).*?/Type\s*/Pages\b", pdf
    )
    return max((int(a or b) for a, b in counts), default=0)


@pytest.mark.parametrize("name", BUILDS)
def test_the_pack_has_every_document(name: str) -> None:
    assert tuple(_pack(name)) == DOCUMENTS


@pytest.mark.parametrize("name", BUILDS)
@pytest.mark.parametrize("document", VIEWS)
def test_a_document_is_a_pdf_with_pages(name: str, document: str) -> None:
    content = _pack(name)[document]
    assert content.startswith(b"%PDF-")
    assert content.rstrip().endswith(b"%%EOF")
    assert len(re.findall(rb"/Type\s*/Page\b", content)) >= 1 or _pages(content) >= 1


@pytest.mark.parametrize("name", BUILDS)
def test_the_same_build_gives_the_same_bytes(name: str) -> None:
    again = {document.name: document.content for document in job_pack(assess(build(BUILDS[name])))}
    assert again == _pack(name)


@pytest.mark.parametrize(("name", "size"), [("eu", (595, 842)), ("us", (612, 792))])
@pytest.mark.parametrize("document", VIEWS)
def test_the_paper_is_that_of_the_jurisdiction(
    name: str, size: tuple[int, int], document: str
) -> None:
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)", _pack(name)[document])
    assert boxes
    assert {(round(float(w)), round(float(h))) for w, h in boxes} == {size}


@pytest.mark.parametrize(("name", "size"), [("eu", (1191, 842)), ("us", (1224, 792))])
def test_the_drawings_are_on_a3_or_tabloid_lying(name: str, size: tuple[int, int]) -> None:
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)", _pack(name)[DRAWINGS])
    assert boxes
    assert {(round(float(w)), round(float(h))) for w, h in boxes} == {size}


def test_one_document_can_be_asked_for() -> None:
    made = list(documents(_assessment("bare"), ("parts-list.pdf", WORKBOOK)))
    assert [document.name for document in made] == ["parts-list.pdf", WORKBOOK]
    assert made[1].content == _pack("bare")[WORKBOOK]


def test_the_workbook_alone_needs_no_typesetter() -> None:
    assert [document.name for document in documents(_assessment("bare"), (WORKBOOK,))] == [
        WORKBOOK
    ]


def test_a_document_that_does_not_exist_is_refused() -> None:
    with pytest.raises(UnknownName, match=r"no document 'route-sheet\.pdf'"):
        list(documents(_assessment("bare"), ("route-sheet.pdf",)))


def test_what_the_typesetter_refuses_is_said() -> None:
    view = frame(build(), title="Broken", cautions=("load",))
    with pytest.raises(CannotRender, match="compliance"):
        Press().pdf("compliance", view)


def test_every_view_has_a_template() -> None:
    known = {path.stem for path in TEMPLATES.glob("*.typ")} - {"frame"}
    assert known == {"drawings", *(template for template, _ in VIEWS.values())}


def test_no_template_calls_for_a_package_or_the_day() -> None:
    for path in TEMPLATES.glob("*.typ"):
        text = path.read_text(encoding="utf-8")
        assert "@preview" not in text
        assert "datetime" not in text


# what the sheets say


def _compliance(name: str) -> ComplianceView:
    assessment = _assessment(name)
    return compliance_view(assessment.build, assessment.findings)


def _more(text: str) -> int:
    """Return how many other cases a row stands for."""
    found = re.search(r"and (\d+) more", text)
    return int(found[1]) if found else 0


@pytest.mark.parametrize("name", BUILDS)
def test_every_finding_is_counted_on_the_compliance_sheet(name: str) -> None:
    view = _compliance(name)
    told = [1 + _more(row.more) for group in view.groups for row in group.rows]
    idle = [1 + _more(row.why) for row in view.unused]
    assert sum(told) + sum(idle) == len(_assessment(name).findings)


@pytest.mark.parametrize("name", BUILDS)
def test_every_rule_is_on_the_compliance_sheet_with_its_outcome(name: str) -> None:
    view = _compliance(name)
    shown = {(row.title, row.outcome) for group in view.groups for row in group.rows}
    shown |= {(row.title, str(Outcome.NOT_APPLICABLE)) for row in view.unused}
    wanted = {(f.title, str(f.outcome)) for f in _assessment(name).findings}
    assert wanted == shown


@pytest.mark.parametrize("name", BUILDS)
def test_the_case_nearest_its_limit_stands_for_a_rule_that_is_met(name: str) -> None:
    findings = [f for f in _assessment(name).findings if f.outcome is Outcome.MET]
    (met,) = (group for group in _compliance(name).groups if group.heading == "Met")
    several = [row for row in met.rows if row.more]
    assert several
    for row in several:
        cases = [f for f in findings if f.title == row.title]
        nearest = min(cases, key=lambda finding: finding.margin or 0.0)
        assert row.applied_to.startswith(subject_of(_assessment(name).build, nearest.subject))
        assert row.more == f"and {len(cases) - 1} more, all met"


@pytest.mark.parametrize("name", BUILDS)
def test_what_is_broken_or_unknown_is_told_one_by_one(name: str) -> None:
    telling = (Outcome.BROKEN, Outcome.UNKNOWN)
    rows = [row for group in _compliance(name).groups for row in group.rows]
    told = [row for row in rows if row.outcome in {str(outcome) for outcome in telling}]
    assert len(told) == sum(f.outcome in telling for f in _assessment(name).findings)
    assert not any(row.more for row in told)


@pytest.mark.parametrize("name", BUILDS)
def test_stops_come_first_and_unknown_is_never_met(name: str) -> None:
    view = _compliance(name)
    for group in view.groups:
        ranks = [list(Severity).index(Severity(row.severity)) for row in group.rows]
        assert ranks == sorted(ranks)
    for group in view.groups:
        for row in group.rows:
            assert (row.mark == "met") == (row.outcome == "met")
            if row.outcome == "unknown":
                assert row.remarks[0].startswith("Missing: ")
                assert row.margin == "–"


def test_the_verdict_counts_broken_stops() -> None:
    broken = [
        finding
        for finding in _assessment("eu").findings
        if finding.outcome is Outcome.BROKEN and finding.severity is Severity.STOP
    ]
    view = _compliance("eu")
    assert view.verdict.startswith(f"{len(broken)} stop") == bool(broken)
    assert (view.verdict_mark == "broken") == bool(broken)


def test_a_build_without_a_broken_stop_is_not_called_compliant() -> None:
    assessment = _assessment("eu")
    kept = [
        finding
        for finding in assessment.findings
        if (finding.outcome, finding.severity) != (Outcome.BROKEN, Severity.STOP)
    ]
    met = [finding for finding in kept if finding.outcome is Outcome.MET]
    assert "examined here" in compliance_view(assessment.build, met).verdict
    unknown = [
        finding
        for finding in kept
        if finding.severity is Severity.STOP and finding.outcome is Outcome.UNKNOWN
    ]
    if unknown:
        assert "cannot be judged" in compliance_view(assessment.build, kept).verdict


def test_every_source_on_the_compliance_sheet_has_its_full_title() -> None:
    for name in BUILDS:
        for line in _compliance(name).sources:
            assert re.fullmatch(r"\[\d+\]", line.number)
            assert len(line.text) > 8
            assert "title not in the list" not in line.text


def test_a_decision_is_shown_with_role_reason_and_date() -> None:
    decision = _compliance("eu").decisions[0]
    assert decision.role == "workshop manager"
    assert decision.date == "2026-03-01"
    assert "hinge plate" in decision.reason


def test_a_clause_says_how_well_it_is_known() -> None:
    assert clause_of(Source(key="a", clause="S9.3", edition="2023")) == "S9.3, edition 2023; read"
    assert clause_of(Source(key="a", status=Status.MEMORY)) == "from memory"
    assert clause_of(Source(key="a", edition="as quoted", status=Status.PRACTICE)) == (
        "as quoted; common practice"
    )


def test_a_subject_is_given_in_words_with_its_position() -> None:
    made = _assessment("eu").build
    assert subject_of(made, "house-battery") == "house battery (pos. 1)"
    assert subject_of(made, "rear axle") == "rear axle"
    assert subject_of(made, "limited by grey-tank") == "limited by grey tank"


@pytest.mark.parametrize("name", BUILDS)
def test_every_document_carries_its_cautions(name: str) -> None:
    assessment = _assessment(name)
    for _, make in VIEWS.values():
        head = make(assessment).frame
        assert head.cautions
        assert "not a certificate" in head.foot
        assert "Governing here" in head.cautions[-1]
        assert assessment.build.digest[:10] in head.record


def test_electricity_gas_and_load_have_their_caution_in_place() -> None:
    assessment = _assessment("eu")
    assert any(c.startswith("Electricity:") for c in energy_view(assessment).frame.cautions)
    assert any(c.startswith("Gas:") for c in water_view(assessment).frame.cautions)
    assert any(c.startswith("Load:") for c in weight_view(assessment).frame.cautions)


def test_no_sheet_calls_the_vehicle_certified_or_safe() -> None:
    claim = re.compile(r"\b(?:is|are) (?:certified|approved|compliant|safe|legal)\b")
    for name in BUILDS:
        for _, make in VIEWS.values():
            assert not claim.search(view_json(make(_assessment(name))))


def test_the_side_view_carries_both_axle_loads() -> None:
    assessment = _assessment("eu")
    drawing = weight_view(assessment).drawing
    case = assessment.weights.case("travelling")
    assert drawing.startswith("<svg")
    for load in (case.front.nominal_kg, case.rear.nominal_kg):
        assert f"{load:,.0f}\N{NO-BREAK SPACE}kg" in drawing


def test_the_statements_are_those_of_the_jurisdiction() -> None:
    assert {s.title for s in weight_view(_assessment("eu")).statements}.isdisjoint(
        {s.title for s in weight_view(_assessment("us")).statements}
    )


def test_a_ticket_is_shown_only_where_there_is_one() -> None:
    assert weight_view(_assessment("bare")).ticket is None
    ticket = weight_view(_assessment("eu")).ticket
    assert ticket is not None
    assert ticket.rows[0][1] == "2,480\N{NO-BREAK SPACE}kg"


def test_a_build_without_battery_says_what_is_missing() -> None:
    view = energy_view(_assessment("bare"))
    assert not view.bank
    assert view.bank_missing


def test_unknown_prices_are_shown_and_counted() -> None:
    view = parts_view(_assessment("eu"))
    unknown = [row for row in (*view.rows, *view.finishes) if row.price == "unknown"]
    totals = {pair.label: pair.value for pair in view.totals}
    assert totals["Prices unknown"] == str(len(unknown))
    assert totals["Sum of all"] == "unknown while a price is missing"
    # 2 batteries, inverter, fridge and fresh tank at 1,250.00 EUR each
    assert totals["Sum of the prices that are known"] == "6,250.00 EUR"


def test_prices_stand_in_the_currency_of_the_build() -> None:
    assert parts_view(_assessment("us")).rows[0].price == "1,290.00 USD"


def test_a_part_weighed_in_the_shop_says_so() -> None:
    box = parts_view(_assessment("eu")).rows[-1]
    assert (box.mass, box.mass_from) == ("27.5\N{NO-BREAK SPACE}kg", "weighed here")


# the purchase list


def _sheet(name: str, *, values: bool = False) -> dict[str, object]:
    book = openpyxl.load_workbook(io.BytesIO(_pack(name)[WORKBOOK]), data_only=values)
    sheet = book.active
    assert sheet is not None
    return {cell.coordinate: cell.value for row in sheet.iter_rows() for cell in row}


def test_quantities_and_costs_can_be_reckoned_with() -> None:
    cells = _sheet("eu")
    row = next(k[1:] for k, v in cells.items() if v == "LFP battery 200 Ah")
    assert (cells[f"E{row}"], cells[f"G{row}"]) == (2, 900)
    assert cells[f"D{row}"] == "1, 2"
    assert cells[f"H{row}"] == f'=IF(OR(E{row}="",G{row}=""),"",E{row}*G{row})'
    assert cells[f"I{row}"] == 10


def test_the_sum_is_a_formula_over_every_line() -> None:
    cells = _sheet("eu")
    last = 4 + len(purchase_lines(_assessment("eu")))
    assert cells[f"H{last + 1}"] == f"=SUM(H5:H{last})"
    assert cells[f"H{last + 2}"] == f"=COUNTBLANK(H5:H{last})"


def test_an_unknown_cost_stays_empty() -> None:
    cells = _sheet("eu")
    row = next(k[1:] for k, v in cells.items() if v == "Induction hob")
    assert cells[f"G{row}"] is None


def test_text_that_looks_like_a_formula_is_neutralised() -> None:
    texts = [value for value in _sheet("eu").values() if isinstance(value, str)]
    assert "'=HYPERLINK(1)" in texts
    assert "'-North store" in texts
    formulas = [text for text in texts if text.startswith("=")]
    assert all(text.startswith(("=IF(OR(E", "=SUM(H5", "=COUNTBLANK(H5")) for text in formulas)


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_every_start_of_a_formula_is_neutralised(start: str) -> None:
    assert neutral(f"{start}1+1") == f"'{start}1+1"


def test_lines_stand_by_supplier_then_longest_lead_time() -> None:
    lines = purchase_lines(_assessment("eu"))
    order = [(line.supplier, -float(line.lead_time or 0)) for line in lines]
    assert order == sorted(order)


def test_finishes_are_bought_in_whole_sheets() -> None:
    wool = next(line for line in purchase_lines(_assessment("eu")) if line.unit == "sheet")
    # 9 m2 in sheets of 1.2 m x 0.6 m: 12.5, so 13
    assert wool.quantity == "13"


def test_a_bare_build_still_gives_a_purchase_list() -> None:
    cells = _sheet("bare")
    assert cells["A4"] == "Supplier"
    assert cells["H5"] == "=SUM(H5:H5)" or str(cells["H5"]).startswith("=SUM")


def test_the_workbook_holds_no_day_of_its_own() -> None:
    with zipfile.ZipFile(io.BytesIO(_pack("eu")[WORKBOOK])) as archive:
        core = archive.read("docProps/core.xml").decode()
    assert set(re.findall(r"\d{4}-\d{2}-\d{2}", core)) == {"2000-01-01"}
