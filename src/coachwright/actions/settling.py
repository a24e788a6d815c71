"""Two persons changed the same: what each way on comes down to."""

from coachwright.actions.benching import Bench
from coachwright.store.merging import overruling
from coachwright.store.records import Conflict, WholeSheet


def mine_over(bench: Bench, found: Conflict) -> WholeSheet:
    """Return the sheet that has mine where both collide, and theirs everywhere else.

    Raises
    ------
    CannotEdit
        Where the form of their sheet does not take it.
    """
    base = bench.store.sheet(found.theirs.build_id, found.base_event)
    return WholeSheet(text=overruling(base.text, found.mine, found.theirs.text))
