"""Settings for every test."""

import pytest
from hypothesis import settings

from tests.support import postgresql

# No deadline: a loaded machine must not make a test red.  The same examples each time: a red test
# stays red until it is mended.
settings.register_profile("coachwright", deadline=None, derandomize=True)
settings.load_profile("coachwright")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print what tests have measured, and whether the store was tried on a PostgreSQL server."""
    ran = [
        report
        for outcome in ("passed", "failed")
        for report in terminalreporter.getreports(outcome)
        if report.when == "call"
    ]
    figures = [value for each in ran for name, value in each.user_properties if name == "figure"]
    on_server = [each for each in ran if "[postgresql" in each.nodeid]
    on_file = [each for each in ran if "tests/store/" in each.nodeid]
    if not figures and not on_file:
        return
    terminalreporter.section("measured and tried")
    for figure in figures:
        terminalreporter.write_line(f"{figure}")
    if postgresql.programs() is None:
        terminalreporter.write_line(
            "NOT RUN: the store's tests on PostgreSQL, because no server is installed here "
            "(Debian: apt-get install postgresql); the store was tried on SQLite alone.",
            yellow=True,
        )
    elif on_server:
        terminalreporter.write_line(
            f"store on {postgresql.version()}: {len(on_server)} tests on a real server"
        )
