"""Accounts, tokens, attachments, and a log of what was done."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make the tables of people and of what they hand in."""
    _make_accounts()
    op.create_table(
        "attachment",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("media_type", sa.String(40), nullable=False),
        sa.Column("size", sa.BigInteger, nullable=False),
        sa.Column("content", sa.LargeBinary, nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_attachment"),
    )
    op.create_table(
        "attached",
        sa.Column("build_id", sa.Integer, nullable=False),
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("build_id", "digest", name="pk_attached"),
        sa.ForeignKeyConstraint(["build_id"], ["build.id"], name="fk_attached_build_id"),
        sa.ForeignKeyConstraint(["digest"], ["attachment.digest"], name="fk_attached_digest"),
    )
    op.create_table(
        "audit",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.Column("deed", sa.String(40), nullable=False),
        sa.Column("about", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_audit"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_audit_at", "audit", ["at"])


def _make_accounts() -> None:
    op.create_table(
        "account",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.String(80), nullable=False),
        sa.Column("role", sa.String(16), nullable=False),
        sa.Column("password_hash", sa.Text),
        sa.Column("created_at", sa.String(27), nullable=False),
        sa.Column("closed_at", sa.String(27)),
        sa.PrimaryKeyConstraint("id", name="pk_account"),
        sa.UniqueConstraint("name", name="uq_account_name"),
        sqlite_autoincrement=True,
    )
    op.create_table(
        "token",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("account_id", sa.Integer, nullable=False),
        sa.Column("purpose", sa.String(16), nullable=False),
        sa.Column("label", sa.Text, nullable=False),
        sa.Column("created_at", sa.String(27), nullable=False),
        sa.Column("expires_at", sa.String(27), nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_token"),
        sa.ForeignKeyConstraint(["account_id"], ["account.id"], name="fk_token_account_id"),
    )
    op.create_index("ix_token_account_id", "token", ["account_id"])
