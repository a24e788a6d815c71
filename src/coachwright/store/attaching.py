"""Files kept with a build, told by their content."""

import hashlib
from datetime import datetime
from pathlib import PurePosixPath, PureWindowsPath

from sqlalchemy import Connection, insert, select

from coachwright.errors import NotAllowed, UnknownName
from coachwright.store import tables
from coachwright.store.chain import head_of
from coachwright.store.records import Attachment

MOST_BYTES = 10_000_000
"""A photograph of a telephone or a signed order of some pages."""

MOST_NAME = 120
"""Characters of a name that is shown."""

_BEGINNINGS: tuple[tuple[bytes, str], ...] = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"%PDF-", "application/pdf"),
)
"""First bytes → media type; what begins otherwise is refused.  Nothing here can hold a script
that a browser would run from its own page."""

_file, _held = tables.attachment.c, tables.attached.c


def media_type_of(content: bytes) -> str:
    r"""Return a file's type, told by its first bytes and not by its name.

    Raises
    ------
    NotAllowed
        Where it is none of the types that are kept.

    Examples
    --------
    >>> media_type_of(b"%PDF-1.7\n")
    'application/pdf'
    """
    for beginning, kind in _BEGINNINGS:
        if content.startswith(beginning):
            return kind
    if content[:4] == b"RIFF" and content[8:12] == b"WEBP":
        return "image/webp"
    raise NotAllowed("only JPEG, PNG and WebP pictures and PDF files can be attached")


def shown_name(given: str) -> str:
    """Return a name that can be shown: the last part of a path, without control characters.

    Examples
    --------
    >>> shown_name("photos/../ticket.jpg")
    'ticket.jpg'
    """
    last = PurePosixPath(PureWindowsPath(given).name).name
    plain = "".join(sign for sign in last if sign.isprintable()).strip()
    return plain[:MOST_NAME] or "attachment"


def attach(
    connection: Connection,
    build_id: int,
    content: bytes,
    *,
    name: str,
    note: str,
    actor: str,
    at: datetime,
) -> Attachment:
    """Keep a file with a build; the same file twice is kept once.

    Raises
    ------
    NotAllowed
        Where it is empty, too large, or of a type that is not kept.
    UnknownName
        Where there is no such build.
    """
    if not 0 < len(content) <= MOST_BYTES:
        raise NotAllowed(
            f"{shown_name(name)} has {len(content):,} bytes; "
            f"an attachment has 1 to {MOST_BYTES:,} bytes"
        )
    kind = media_type_of(content)
    head_of(connection, build_id, hold=True)
    digest = hashlib.sha256(content).hexdigest()
    if connection.execute(select(_file.digest).where(_file.digest == digest)).first() is None:
        connection.execute(
            insert(tables.attachment).values(
                digest=digest, media_type=kind, size=len(content), content=content
            )
        )
    for there in attachments(connection, build_id):
        if there.digest == digest:
            return there
    connection.execute(
        insert(tables.attached).values(
            build_id=build_id,
            digest=digest,
            name=shown_name(name),
            note=note,
            at=at,
            actor=actor,
        )
    )
    return next(each for each in attachments(connection, build_id) if each.digest == digest)


def attachments(connection: Connection, build_id: int) -> tuple[Attachment, ...]:
    """Return what is kept with a build, the first handed in first; without the bytes.

    Raises
    ------
    UnknownName
        Where there is no such build.
    """
    head_of(connection, build_id)
    rows = connection.execute(
        select(tables.attached, _file.media_type, _file.size)
        .join(tables.attachment, _file.digest == _held.digest)
        .where(_held.build_id == build_id)
        .order_by(_held.at, _held.digest)
    )
    return tuple(
        Attachment(
            digest=row.digest,
            name=row.name,
            media_type=row.media_type,
            size=row.size,
            note=row.note,
            at=row.at,
            actor=row.actor,
        )
        for row in rows
    )


def content_of(connection: Connection, build_id: int, digest: str) -> bytes:
    """Return the bytes of what is kept with a build.

    Raises
    ------
    UnknownName
        Where nothing of that digest is kept with this build.
    """
    known = [each.digest for each in attachments(connection, build_id)]
    if digest not in known:
        raise UnknownName("attachment", digest, known)
    found = connection.execute(select(_file.content).where(_file.digest == digest)).scalar_one()
    return bytes(found)
