"""A store of each kind for every test that wants one."""

from collections.abc import Iterator
from itertools import count
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text

from coachwright.store.opening import open_store
from coachwright.store.store import Store
from tests.support import postgresql

KINDS = ("sqlite", "postgresql") if postgresql.programs() else ("sqlite",)
_NUMBERS = count(1)


@pytest.fixture(scope="session")
def server() -> Iterator[str]:
    """Run a PostgreSQL server; tests that want it exist only where it is installed."""
    with postgresql.server() as address:
        yield address


@pytest.fixture(params=KINDS)
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """Return the address of a store that is not there yet."""
    if request.param == "sqlite":
        return str(tmp_path / "bench.db")
    server_address: str = request.getfixturevalue("server")
    return new_database(server_address)


def new_database(server_address: str) -> str:
    name = f"bench{next(_NUMBERS)}"
    admin = server_address.replace("NAME", "postgres").replace(
        "postgresql:", "postgresql+psycopg:"
    )
    engine = create_engine(admin, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"CREATE DATABASE {name}"))
    engine.dispose()
    return server_address.replace("NAME", name)


@pytest.fixture
def store(address: str, tmp_path: Path) -> Iterator[Store]:
    """Open a new store."""
    with open_store(address, backups=tmp_path) as opened:
        yield opened
