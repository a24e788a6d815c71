"""Weights: what each axle carries in each state, what is left, and what the scales said."""

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import weight_sheet
from coachwright.papers.table import Table
from coachwright.papers.view_weights import StatementBlock
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change

_NO_TICKET = (
    "This build has no weighbridge ticket yet. Weigh it as it travels and write the readings into "
    "its sheet; the figures are then corrected by what the scales said."
)


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    room = box("stack")

    def draw(work: OnBench) -> None:
        room.clear()
        with room:
            _fill(work, here.system)

    on_change(here, draw)


def _fill(work: OnBench, system: str) -> None:
    view = weight_sheet(work.assessment, system)
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
    sheet.table(
        view.ticket or Table(heading="Weighbridge", names=("Reading",), rows=()),
        empty=_NO_TICKET,
    )
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
