"""Weights: what each axle carries in each state, what is left, and what the scales said."""

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import weight_sheet
from coachwright.papers.view_weights import StatementBlock, WeightView
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.styled import styled
from coachwright.web.parts.weighing import Weighbridge
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    styled("forms")
    with box("stack"):
        above = box("stack")
        scales = Weighbridge(here)
        below = box("stack")

    def draw(work: OnBench) -> None:
        view = weight_sheet(work.assessment, here.system)
        above.clear()
        with above:
            _above(view)
        scales.draw(work)
        below.clear()
        with below:
            _below(work, view, here.system)

    on_change(here, draw)


def _above(view: WeightView) -> None:
    sheet.heading("Weights", "What the scales will show, state by state, and what is left.")
    with box("card"):
        sheet.pairs(view.headline)
    with sheet.section("Axle loads against their ratings"):
        sheet.drawing(view.bars, "Bars of the axle loads; the tables below hold every figure")
        words(view.bars_caption, "quiet small", tag="p")
    with sheet.section("Where the load stands"):
        sheet.drawing(view.drawing, "Side view with the axle loads and the centre of gravity")
        words(view.drawing_caption, "quiet small", tag="p")
        words(view.drawing_key, "quiet small", tag="p")
    sheet.table(view.left)
    sheet.table(view.cases)
    sheet.table(view.places)
    _statements(view.statements_heading, view.statements)


def _below(work: OnBench, view: WeightView, system: str) -> None:
    if view.ticket:
        sheet.table(view.ticket)
    sheet.table(view.heaviest)
    found = work.assessment
    figures(work.build, found.weights.figures, system, "Every figure, with its working")
    sheet.notes(view.notes)
    sheet.sources(view.sources)
    sheet.cautions(view.frame)


def _statements(title: str, blocks: tuple[StatementBlock, ...]) -> None:
    with sheet.section(title), box("statements"):
        for block in blocks:
            with box("statement", tag="section", label=block.title):
                with box("rowline"):
                    words(block.title, "strong grow", tag="h4")
                    words(block.value, "strong")
                said = (block.bounds, block.status, block.sources)
                words(" · ".join(each for each in said if each), "quiet small", tag="p")
                sheet.pairs(block.components)
                if block.note:
                    words(block.note, "quiet small", tag="p")
