"""What the shop floor has ticked off."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Make the table of ticks, which is only added to."""
    op.create_table(
        "tick",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("build_id", sa.Integer, nullable=False),
        sa.Column("thing", sa.Text, nullable=False),
        sa.Column("step", sa.String(16), nullable=False),
        sa.Column("done", sa.Integer, nullable=False),
        sa.Column("part", sa.Text, nullable=False),
        sa.Column("place", sa.Text, nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_tick"),
        sa.ForeignKeyConstraint(["build_id"], ["build.id"], name="fk_tick_build_id"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_tick_build_id", "tick", ["build_id"])
