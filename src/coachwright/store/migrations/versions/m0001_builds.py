"""Builds as appended events, with snapshots and named revisions."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables of builds."""
    op.create_table(
        "build",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("customer", sa.Text, nullable=False),
        sa.Column("created_at", sa.String(27), nullable=False),
        sa.Column("created_by", sa.Text, nullable=False),
        sa.Column("changed_at", sa.String(27), nullable=False),
        sa.Column("archived_at", sa.String(27)),
        sa.Column("head", sa.Integer, nullable=False),
        sa.Column("exported", sa.Integer),
        sa.PrimaryKeyConstraint("id", name="pk_build"),
        sqlite_autoincrement=True,
    )
    _make_events()
    op.create_table(
        "snapshot",
        sa.Column("build_id", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("number", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("build_id", "number", name="pk_snapshot"),
        sa.ForeignKeyConstraint(
            ["build_id", "number"],
            ["event.build_id", "event.number"],
            name="fk_snapshot_build_id_number",
        ),
    )
    op.create_table(
        "revision",
        sa.Column("build_id", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("name", sa.String(80), nullable=False),
        sa.Column("event", sa.Integer, nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("build_id", "name", name="pk_revision"),
        sa.ForeignKeyConstraint(
            ["build_id", "event"],
            ["event.build_id", "event.number"],
            name="fk_revision_build_id_event",
        ),
    )


def _make_events() -> None:
    op.create_table(
        "event",
        sa.Column("build_id", sa.Integer, nullable=False),
        sa.Column("number", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.Column("deed", sa.String(16), nullable=False),
        sa.Column("about", sa.Integer),
        sa.Column("splices", sa.Text, nullable=False),
        sa.Column("places", sa.Text, nullable=False),
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("undo_next", sa.Integer),
        sa.Column("redo_next", sa.Integer),
        sa.PrimaryKeyConstraint("build_id", "number", name="pk_event"),
        sa.ForeignKeyConstraint(["build_id"], ["build.id"], name="fk_event_build_id"),
    )
    op.create_index("ix_event_build_id_actor_number", "event", ["build_id", "actor", "number"])
