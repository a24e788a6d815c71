"""Choosing another part for what is picked: everything of its kind, beside what it is now."""

from collections.abc import Callable

from nicegui import ui

from coachwright.actions.exchanging import Offer, belong_together, offers, others_alike
from coachwright.actions.shelving import ShelfPart, shelf_part
from coachwright.actions.stocking import exchange
from coachwright.model.build import Fitted
from coachwright.web.parts.deeds import done
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, refuse

Fill = Callable[[ui.dialog], None]
_HEADS = ("Part", "Gives", "Mass each", "Size", "Price each")


def ask(here: Here, show: Callable[[Fill], None]) -> None:
    """Ask what shall stand in the place of the fittings that are picked.

    Parameters
    ----------
    here
        The page.
    show
        Opens a sheet and lets it be filled.
    """
    seen, names = here.work, here.all_picked
    fitted = seen.build.fitted(here.picked)
    if fitted is None:
        return
    currency = seen.assessment.wishes.price.currency
    found = offers(here.bench.catalogue, fitted, here.system, currency)
    if not found:
        said = fitted.name.replace("-", " ")
        refuse(here, f"the catalogue has nothing else that could stand for {said}")
        return
    others = others_alike(seen.build, names)

    def fill(dialog: ui.dialog) -> None:
        words(f"Exchange {_listed(names)}", tag="h2")
        with_others = _with_others(fitted, others)

        async def take(part_id: str) -> None:
            dialog.close()
            part = here.bench.catalogue.part(part_id)
            all_names = (
                (*names, *others) if with_others is not None and with_others.value else names
            )
            await done(
                here,
                lambda work: exchange(work.sheet, work.build, all_names, part),
                seen=seen,
            )

        _table(shelf_part(fitted.part, here.system, currency), found, take)
        tool("Leave it", dialog.close)

    show(fill)


def _with_others(fitted: Fitted, others: tuple[str, ...]) -> ui.checkbox | None:
    if not others:
        return None
    said = f"The others of the same part too: {_listed(others)}"
    return ui.checkbox(said, value=belong_together(fitted.part))


def _table(now: ShelfPart, found: tuple[Offer, ...], take: Callable[[str], object]) -> None:
    with box("plain offers", tag="table", label="What could stand there"):
        with box(tag="thead"), box(tag="tr"):
            for head in (*_HEADS, ""):
                words(head, tag="th").props("scope=col")
        with box(tag="tbody"):
            with box("now", tag="tr"):
                _cells(now, "", "")
                words("fitted now", "small quiet", tag="td")
            for offer in found:
                with box(tag="tr"):
                    _cells(offer.part, offer.heavier, offer.dearer)
                    with box(tag="td"):
                        part = offer.part
                        tool("Take", lambda part=part: take(part.id), label=f"Take {part.name}")


def _cells(part: ShelfPart, heavier: str, dearer: str) -> None:
    words(part.name, tag="th").props("scope=row")
    for text, more in (
        (part.gives, ""),
        (part.mass, heavier),
        (part.size, ""),
        (part.price, dearer),
    ):
        with box(tag="td"):
            words(text)
            if more:
                words(more, "small quiet more")


def _listed(names: tuple[str, ...]) -> str:
    return ", ".join(name.replace("-", " ") for name in names)
