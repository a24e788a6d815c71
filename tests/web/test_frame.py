"""The frame: the pages are listed, the order book opens builds."""

from nicegui.testing import User

from coachwright.actions.benching import Bench
from coachwright.web.navigation import PAGES
from tests.web.benches import lay


async def test_the_order_book_offers_the_demonstration_builds(user: User) -> None:
    await user.open("/")
    await user.should_see("Night watch")
    await user.should_see("Order book")


async def test_every_page_of_a_build_opens(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    for page in PAGES:
        await user.open(page.address(build_id))
        await user.should_see(page.title)


async def test_a_build_that_is_not_there_is_said(user: User) -> None:
    await user.open("/build/77/board")
    await user.should_see("no build")
    await user.should_see("To the order book")
