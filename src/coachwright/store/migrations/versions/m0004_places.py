"""From where each thing in the log was done."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Let the log keep a place; of what was done before none is known."""
    op.add_column("audit", sa.Column("place", sa.Text, nullable=False, server_default=""))
