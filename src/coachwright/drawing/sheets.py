"""Drawings put on sheets: side by side where there are several, with frame, keys, title block."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.drawing.composing import ATTEMPTS, Composed, NoRoom, at_scale, composed
from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Draft
from coachwright.drawing.keys import keys
from coachwright.drawing.lettering import shortened
from coachwright.drawing.paper import MARGIN_MM, PAPER_OF, STRIP_MM, Paper, frame, words
from coachwright.drawing.placing_findings import Located, located
from coachwright.drawing.scene import Anchor, Pane, Point, Primitive, Scene, Sheet
from coachwright.drawing.title_block import SheetWords, title_block

_HEADING_MM = 6.0
"""Room for the heading of each of several drawings on one sheet."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """Which sheet of how many."""

    number: int
    count: int

    @property
    def words(self) -> str:
        """As the title block says it."""
        return f"{self.number} of {self.count}"


ALONE = Place(number=1, count=1)


def sheet_of(
    content: Content, drafts: Sequence[Draft], *, name: str, place: Place = ALONE
) -> Sheet:
    """Return drawings on a sheet, all at the largest usual scale at which each fits its part.

    Parameters
    ----------
    content
        The build.
    drafts
        Drawings, from left to right.
    name
        Of the view.
    place
        Which sheet of how many.

    Raises
    ------
    NoRoom
        Where one of them fits at no usual scale.
    """
    paper = PAPER_OF[content.build.brief.jurisdiction]
    made = _composed(drafts, paper, content.system)
    scenes = [each.scene for each in made]
    several = len(scenes) > 1
    pictorial = drafts[0].front == "none"
    primitives: list[Primitive] = list(frame(paper))
    panes = []
    part = paper.room_mm[0] / len(scenes)
    for index, (draft, scene) in enumerate(zip(drafts, scenes, strict=True)):
        left = MARGIN_MM + 1.0 + part * index
        panes.append(Pane(scene=scene, at_mm=_corner(scene, paper, left, part, several=several)))
        if several:
            at = (left + part / 2, MARGIN_MM + STRIP_MM + 2.6)
            heading = shortened(draft.title, 3.8, part - 4.0, strong=True)
            primitives.append(words(at, heading, 3.8, anchor=Anchor.MIDDLE, strong=True))
    marked = {mark.number for draft in drafts for mark in draft.marks}
    primitives += keys(
        content,
        paper,
        front=drafts[0].front,
        scale_ratio=None if pictorial else scenes[0].scale_ratio,
        findings=_marked(content, marked),
    )
    primitives += title_block(
        content,
        paper,
        SheetWords(
            title=" · ".join(draft.title for draft in drafts),
            subtitle=_subtitle(drafts[0], made),
            scale="–" if pictorial else f"1:{scenes[0].scale_ratio:g}",
            number=place.words,
        ),
    )
    return Sheet(
        name=name,
        title=" · ".join(draft.title for draft in drafts),
        size_mm=paper.size_mm,
        frame=framed(primitives, paper),
        panes=tuple(panes),
    )


def fits_together(content: Content, drafts: Sequence[Draft], scale_ratio: float) -> bool:
    """Return whether drawings fit one sheet at a scale."""
    paper = PAPER_OF[content.build.brief.jurisdiction]
    room = _part_mm(paper, len(drafts))
    return all(
        at_scale(draft, scale_ratio=scale_ratio, room_mm=room, system=content.system) is not None
        for draft in drafts
    )


def _part_mm(paper: Paper, count: int) -> Point:
    """Return the room of each of several drawings on one sheet."""
    return (paper.room_mm[0] / count - 2.0, paper.room_mm[1] - _HEADING_MM)


def framed(primitives: Sequence[Primitive], paper: Paper) -> Scene:
    """Return what stands on the paper itself as a scene."""
    return Scene(
        primitives=tuple(primitives), low_mm=(0.0, 0.0), high_mm=paper.size_mm, scale_ratio=1.0
    )


def _marked(content: Content, numbers: set[str]) -> tuple[Located, ...]:
    if not numbers:
        return ()
    return tuple(item for item in located(content) if item.number in numbers)


def _subtitle(draft: Draft, made: Sequence[Composed]) -> str:
    left_out = sum(each.left_out for each in made)
    if not left_out:
        return draft.subtitle
    return f"{left_out} labels found no room: see sheet “Setting out”; {draft.subtitle}"


def _composed(drafts: Sequence[Draft], paper: Paper, system: str) -> tuple[Composed, ...]:
    if len(drafts) == 1:
        return (composed(drafts[0], room_mm=paper.room_mm, system=system),)
    room = _part_mm(paper, len(drafts))
    for care, scale_ratio in ATTEMPTS:
        made = [
            at_scale(draft, scale_ratio=scale_ratio, room_mm=room, system=system, care=care)
            for draft in drafts
        ]
        found = tuple(each for each in made if each is not None)
        if len(found) == len(drafts):
            return found
    raise NoRoom(f"{drafts[0].title} and others do not fit one sheet at any of the usual scales")


def _corner(scene: Scene, paper: Paper, left_mm: float, part_mm: float, *, several: bool) -> Point:
    """Return where a scene's lower left corner stands so that it is in the middle of its part."""
    width = (scene.high_mm[0] - scene.low_mm[0]) / scene.scale_ratio
    height = (scene.high_mm[1] - scene.low_mm[1]) / scene.scale_ratio
    low = MARGIN_MM + STRIP_MM + 1.0 + (_HEADING_MM if several else 0.0)
    room = paper.room_mm[1] - (_HEADING_MM if several else 0.0)
    return (left_mm + (part_mm - width) / 2, low + (room - height) / 2)
