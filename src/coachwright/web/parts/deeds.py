"""What a person does to fittings: the edits of an action, kept or refused with a sentence."""

from collections.abc import Callable, Sequence

from coachwright.actions.benching import OnBench
from coachwright.errors import CoachwrightError
from coachwright.model.build import Build, BuildSheet
from coachwright.store.edits import Edit
from coachwright.web.state import Here, change, refuse

Deed = Callable[[BuildSheet, Build, Sequence[str]], tuple[Edit, ...]]
"""An action on fittings told by their names."""


async def done(
    here: Here, make: Callable[[OnBench], tuple[Edit, ...]], *, seen: OnBench | None = None
) -> bool:
    """Keep what an action makes of a build; say whether anything was kept.

    Parameters
    ----------
    here
        The page.
    make
        The action.
    seen
        The build that the person saw when beginning it, where that may be another than now: what
        others did meanwhile is merged, or shown for a decision.
    """
    work = seen or here.work
    try:
        edits = make(work)
    except CoachwrightError as error:
        refuse(here, str(error))
        return False
    return bool(edits) and await change(here, edits, began_with=work.event)


async def to_picked(here: Here, deed: Deed) -> bool:
    """Do something to all fittings that are picked, as one edit."""
    names = here.all_picked
    return bool(names) and await done(here, lambda work: deed(work.sheet, work.build, names))
