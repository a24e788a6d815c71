"""The calculation appendix: every figure with its full working, formulas told once."""

from collections.abc import Iterator
from functools import cache

import pytest

from coachwright.assess import Assessment, assess
from coachwright.model.working import Figure, Given, Working
from coachwright.papers.sharing import Shape, shared
from coachwright.papers.view_appendix import AppendixView, Entry, appendix_view
from coachwright.papers.wording import show, spoken
from tests.support.builds import Data, build
from tests.support.paper_build import PAPERS, PAPERS_US

BUILDS: dict[str, Data] = {"eu": PAPERS, "us": PAPERS_US, "bare": {}}


@cache
def _assessment(name: str) -> Assessment:
    return assess(build(BUILDS[name]))


def _view(name: str) -> AppendixView:
    assessment = _assessment(name)
    return appendix_view(assessment.build, assessment.figures_here)


def _entries(name: str) -> Iterator[Entry]:
    for group in _view(name).groups:
        yield from group.entries


def _labels(entry: Entry) -> list[str]:
    if entry.alone is not None:
        return [entry.alone.label]
    if entry.lines is not None:
        return [line.label for line in entry.lines.lines]
    return list(entry.columns.heads) if entry.columns is not None else []


@pytest.mark.parametrize("name", BUILDS)
def test_every_figure_is_in_the_appendix_once(name: str) -> None:
    assessment = _assessment(name)
    wanted = [spoken(assessment.build, figure.label) for figure in assessment.figures_here]
    shown = [label for entry in _entries(name) for label in _labels(entry)]
    assert sorted(shown) == sorted(wanted)
    headings = [group.heading for group in _view(name).groups]
    assert len(set(headings)) == len(headings)


def _values(entry: Entry, label: str) -> set[str]:
    """Return the values that were put in for one figure."""
    if entry.alone is not None:
        return {row.value for row in entry.alone.given}
    if entry.lines is not None:
        line = next(one for one in entry.lines.lines if one.label == label)
        return {row.value for row in entry.lines.symbols} | {cell.value for cell in line.cells}
    assert entry.columns is not None
    place = entry.columns.heads.index(label)
    return {row.cells[place].value for row in entry.columns.rows}


@pytest.mark.parametrize("name", BUILDS)
def test_every_figure_keeps_its_full_working(name: str) -> None:
    assessment = _assessment(name)
    made, system = assessment.build, assessment.build.brief.units
    by_label = {label: entry for entry in _entries(name) for label in _labels(entry)}
    for figure in assessment.figures_here:
        if figure.working is None:
            continue
        label = spoken(made, figure.label)
        put_in = {show(given.value, given.unit, system) for given in figure.working.given}
        assert put_in <= _values(by_label[label], label), figure.name


@pytest.mark.parametrize("name", ["eu", "us"])
def test_statements_of_elsewhere_are_left_out(name: str) -> None:
    assessment = _assessment(name)
    shown = {label for entry in _entries(name) for label in _labels(entry)}
    for statement in assessment.weights.statements:
        here = name in statement.jurisdictions
        assert (spoken(assessment.build, statement.title) in shown) == here
    assert {figure.name for figure in assessment.figures} >= {
        statement.figure for statement in assessment.weights.statements
    }


def test_the_run_times_of_all_loads_share_one_table() -> None:
    figures = _assessment("eu").figures_here
    runs = [figure for figure in figures if figure.name.startswith("electrics.runtime-of-")]
    tables = [entry.lines for entry in _entries("eu") if entry.lines is not None]
    (table,) = [one for one in tables if one.lines[0].label.startswith("A full bank runs")]
    assert len(table.lines) == len(runs) > 1
    assert runs[0].working is not None
    assert table.expression == runs[0].working.expression


def test_the_appendix_of_a_customary_build_gives_the_formulas_own_units() -> None:
    alone = [entry.alone for entry in _entries("us") if entry.alone is not None]
    rows = [row for block in alone for row in block.given]
    assert any(row.value.endswith("lb") and row.again.endswith("kg") for row in rows)
    columns = [entry.columns for entry in _entries("us") if entry.columns is not None]
    cells = [cell for table in columns for row in table.rows for cell in row.cells]
    assert any(cell.value.endswith("lb") and cell.again.endswith("kg") for cell in cells)
    for entry in _entries("eu"):
        assert not (entry.alone and any(row.again for row in entry.alone.given))
        assert not (entry.lines and any(c.again for ln in entry.lines.lines for c in ln.cells))


# which figures share a table


def _figure(name: str, *given: tuple[str, str, float], expression: str = "W = Σ m") -> Figure:
    working = Working(
        expression=expression,
        given=tuple(Given(symbol=s, meaning=m, value=v, unit="kg") for s, m, v in given),
        result=1.0,
        unit="kg",
    )
    return Figure(name=name, label=name, value=1.0, unit="kg", working=working)


def test_figures_that_put_the_same_symbols_in_stand_in_lines() -> None:
    one = _figure("a.one", ("V", "tank", 1.0), ("n", "people", 2.0), expression="d = V / n")
    two = _figure("a.two", ("V", "can", 3.0), ("n", "people", 2.0), expression="d = V / n")
    (found,) = shared([one, two])
    assert (found.shape, found.figures) == (Shape.LINES, (one, two))


def test_sums_of_the_same_kinds_stand_in_columns_and_others_alone() -> None:
    empty = _figure("a.empty", ("m", "vehicle", 1.0), ("m", "fittings, 3 items", 2.0))
    laden = _figure("a.laden", ("m", "vehicle", 1.0), ("m", "fittings, 4 items", 3.0))
    other = _figure("a.other", ("m", "seats", 1.0), ("m", "belts", 1.0))
    found = shared([empty, other, laden])
    assert [(one.shape, one.figures) for one in found] == [
        (Shape.COLUMNS, (empty, laden)),
        (Shape.ALONE, (other,)),
    ]


def test_a_figure_that_is_unknown_or_has_no_working_stays_alone() -> None:
    unknown = Figure(name="a.x", label="x", value=None, unit="kg", missing="the tank")
    bare = Figure(name="a.y", label="y", value=1.0, unit="kg")
    found = shared([unknown, bare, bare])
    assert [one.shape for one in found] == [Shape.ALONE] * 3


def test_the_same_formula_of_other_sources_is_told_apart() -> None:
    one = _figure("a.one", ("V", "tank", 1.0), expression="d = V")
    assert one.working is not None
    cited = Working(
        expression="d = V", given=one.working.given, result=1.0, unit="kg", references=("b",)
    )
    other = Figure(name="a.two", label="two", value=1.0, unit="kg", working=cited)
    assert len(shared([one, other])) == 2
