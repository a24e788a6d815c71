"""How long a stand lasts, month by month: what nine, five and one of ten of them reach."""

from collections.abc import Callable, Iterator

from coachwright.drawing.axis import axis, ruled
from coachwright.drawing.chart import (
    LEFT_MM,
    Columns,
    Fill,
    Stroke,
    block,
    key,
    month_names,
    small,
)
from coachwright.drawing.scene import (
    Anchor,
    Layer,
    Line,
    Pattern,
    Point,
    Primitive,
    Scene,
    Style,
    Weight,
)
from coachwright.living.model import Stands
from coachwright.units import shown_number

_PLOT_MM = 44.0
_FOOT_MM = 23.0
_OVER_MM = 5.0
_BAR_MM = 6.0
_ROW_MM = 3.7
_KEY_MM = 5.2
_SMALL_MM = 2.3
_NEAR_D = 0.05
_NINE = Fill(letter="", words="nine of ten last at least this", layer=Layer.HEAVY)
_FIVE = Fill(letter="", words="five of ten", layer=Layer.BODY, pattern=Pattern.DIAGONAL)
_ONE = Stroke(words="one of ten", layer=Layer.BODY)
_WANTED = Stroke(words="wanted", layer=Layer.PLUMBING, weight=Weight.BOLD, style=Style.DASHED)


def month_stands(
    stands: tuple[Stands, ...],
    *,
    wanted_d: float | None,
    travelled: tuple[int, ...],
    system: str,
    paper_width_mm: float,
) -> Scene:
    """Return the days that stands last, by the month in which they begin.

    Parameters
    ----------
    stands
        Of the months; months left out stay empty.
    wanted_d
        Days that the brief asks for, as a line; None for none. [d]
    travelled
        Months, from 1, in which they travel: their names in the heavier type.
    system
        ``"metric"`` or ``"us"``.
    paper_width_mm
        Room on the sheet. [mm]
    """
    most_d = max((each.p90_d for each in stands), default=1.0)
    head = _FOOT_MM + _PLOT_MM
    days = axis(
        low=0.0,
        high=max(most_d, wanted_d or 0.0),
        unit="d",
        system=system,
        foot_mm=_FOOT_MM,
        head_mm=head,
    )
    columns = Columns(left_mm=LEFT_MM, right_mm=paper_width_mm)
    wish = () if wanted_d is None else (_WANTED,)
    primitives = [
        *ruled(days, left_mm=columns.left_mm, right_mm=columns.right_mm),
        *month_names(columns, _FOOT_MM - 4.0, travelled),
        *_row_names(),
        *key((_NINE, _FIVE, _ONE, *wish), (LEFT_MM, _KEY_MM), paper_width_mm - LEFT_MM),
    ]
    for each in stands:
        if each.month is not None:
            middle = columns.middle_mm(each.month)
            primitives += _bar(each, middle, days.place_mm)
            primitives += _figures(each, middle, system)
    if wanted_d is not None:
        primitives.append(_wish(days.place_mm(wanted_d), columns))
    return Scene(
        primitives=tuple(primitives),
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, head + _OVER_MM),
        scale_ratio=1.0,
    )


def _bar(stands: Stands, middle_mm: float, place: Callable[[float], float]) -> Iterator[Primitive]:
    left, right = middle_mm - _BAR_MM / 2, middle_mm + _BAR_MM / 2
    nine, five, one = (place(each) for each in (stands.p10_d, stands.p50_d, stands.p90_d))
    yield Line(start_mm=(middle_mm, five), end_mm=(middle_mm, one), layer=Layer.BODY)
    yield Line(start_mm=(middle_mm - 1.4, one), end_mm=(middle_mm + 1.4, one), layer=Layer.BODY)
    yield from block((left, nine), (right, five), _FIVE)
    yield from block((left, place(0.0)), (right, nine), _NINE)
    yield Line(start_mm=(left, nine), end_mm=(right, nine), layer=Layer.BODY, weight=Weight.BOLD)


def _figures(stands: Stands, middle_mm: float, system: str) -> Iterator[Primitive]:
    for index, days_d in enumerate((stands.p10_d, stands.p50_d, stands.p90_d)):
        number, _ = shown_number(days_d, "d", system)
        followed = days_d > stands.followed_d - _NEAR_D
        text = f"{number.partition('.')[0]}+" if followed else number
        yield small(text, _row_foot(middle_mm, index), strong=index == 0)


def _row_names() -> Iterator[Primitive]:
    for index, words in enumerate(("9 of 10", "5 of 10", "1 of 10")):
        yield small(words, _row_foot(0.0, index), Anchor.START, strong=index == 0)


def _row_foot(across_mm: float, row: int) -> Point:
    return across_mm, _FOOT_MM - 4.0 - _ROW_MM * (row + 1)


def _wish(high_mm: float, columns: Columns) -> Line:
    return Line(
        start_mm=(columns.left_mm, high_mm),
        end_mm=(columns.right_mm, high_mm),
        layer=_WANTED.layer,
        weight=_WANTED.weight,
        style=_WANTED.style,
    )
