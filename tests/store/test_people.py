"""Accounts, passwords, sessions and tokens; attachments; named revisions; the log."""

import hashlib

import argon2
import pytest

from coachwright.errors import NotAllowed, UnknownName
from coachwright.store import people
from coachwright.store.attaching import MOST_BYTES
from coachwright.store.records import Account, Purpose, Role
from coachwright.store.store import Store
from tests.store.sheets import NOW, SHEET, galley_to, later

SALT = bytes(range(16))
WORDS = "correct horse battery"
PNG = b"\x89PNG\r\n\x1a\n" + bytes(40)
PDF = b"%PDF-1.7\n" + bytes(40)


def _made(store: Store, name: str = "ann", role: Role = Role.OWNER) -> Account:
    return store.people.create(name, role, WORDS, salt=SALT, actor="setup", at=NOW)


def test_a_password_is_kept_as_an_argon2id_hash_alone(store: Store) -> None:
    """The hash is verified by the library itself, away from the store."""
    _made(store)
    with store._database.reading() as connection:
        kept = people.hash_of(connection, "ann")
    assert kept is not None
    assert kept.startswith("$argon2id$")
    assert WORDS not in kept
    assert argon2.PasswordHasher().verify(kept, WORDS)


def test_a_password_lets_in_and_a_wrong_one_does_not(store: Store) -> None:
    made = _made(store)
    assert store.people.verified(" ann ", WORDS) == made
    assert store.people.verified("ann", WORDS + " ") is None
    assert store.people.verified("eve", WORDS) is None
    assert store.people.verified("eve", "nobody") is None
    assert store.people.verified("ann", "x" * 100_000) is None


def test_a_password_has_a_length_and_a_salt(store: Store) -> None:
    for password in ("short", "x" * 201):
        with pytest.raises(NotAllowed, match="10 to 200 characters"):
            store.people.create("ann", Role.OWNER, password, salt=SALT, actor="", at=NOW)
    with pytest.raises(NotAllowed, match="16 bytes of chance"):
        store.people.create("ann", Role.OWNER, WORDS, salt=b"salt", actor="", at=NOW)
    assert store.people.accounts() == ()
    assert store.audit() == ()


def test_a_new_password_ends_every_session(store: Store) -> None:
    _made(store)
    store.people.begin_session("ann", "t" * 43, at=NOW, expires_at=later(60))
    store.people.set_password("ann", WORDS * 2, salt=SALT[::-1], actor="ann", at=NOW)
    assert store.people.holder("t" * 43, at=NOW) is None
    assert store.people.verified("ann", WORDS) is None
    assert store.people.verified("ann", WORDS * 2) is not None


@pytest.mark.parametrize("name", ["", "  ", "x" * 81, "a\nb"])
def test_a_name_must_be_one(store: Store, name: str) -> None:
    with pytest.raises(NotAllowed, match="a name of 1 to 80 characters"):
        _made(store, name)


def test_a_name_is_taken_whatever_its_letters_size(store: Store) -> None:
    _made(store)
    with pytest.raises(NotAllowed, match="already"):
        _made(store, "ANN")


def test_somebody_always_may_do_everything(store: Store) -> None:
    _made(store)
    with pytest.raises(NotAllowed, match="only owner"):
        store.people.close("ann", actor="ann", at=NOW)
    with pytest.raises(NotAllowed, match="only owner"):
        store.people.set_role("ann", Role.FLOOR, actor="ann", at=NOW)
    _made(store, "bob")
    assert store.people.set_role("ann", Role.FLOOR, actor="bob", at=NOW).role is Role.FLOOR
    with pytest.raises(NotAllowed, match="only owner"):
        store.people.close("bob", actor="bob", at=NOW)


def test_a_closed_account_is_out_and_can_come_back(store: Store) -> None:
    _made(store)
    _made(store, "bob", Role.DESIGNER)
    store.people.begin_session("bob", "t" * 43, at=NOW, expires_at=later(60))
    assert store.people.close("bob", actor="ann", at=later(1)).closed_at == later(1)
    assert store.people.holder("t" * 43, at=NOW) is None
    assert store.people.verified("bob", WORDS) is None
    with pytest.raises(NotAllowed, match="closed"):
        store.people.begin_session("bob", "u" * 43, at=NOW, expires_at=later(60))
    store.people.reopen("bob", actor="ann", at=later(2))
    assert store.people.verified("bob", WORDS) is not None


def test_a_session_ends_at_its_time_or_before(store: Store) -> None:
    made = _made(store)
    store.people.begin_session("ann", "t" * 43, at=NOW, expires_at=later(60))
    assert store.people.holder("t" * 43, at=later(59)) == made
    assert store.people.holder("t" * 43, at=later(60)) is None
    assert store.people.holder("u" * 43, at=later(1)) is None
    store.people.end_session("t" * 43, actor="ann", at=later(2))
    assert store.people.holder("t" * 43, at=later(3)) is None


def test_a_token_of_a_program_is_no_session(store: Store) -> None:
    made = _made(store)
    store.people.issue_token(
        "ann", "p" * 43, label="stock list", actor="ann", at=NOW, expires_at=later(60)
    )
    assert store.people.holder("p" * 43, at=NOW) is None
    assert store.people.holder("p" * 43, at=NOW, purpose=Purpose.PROGRAM) == made
    (entry,) = store.people.tokens(at=NOW)
    assert (entry.account, entry.label, entry.purpose) == ("ann", "stock list", Purpose.PROGRAM)
    assert entry.digest == hashlib.sha256(b"p" * 43).hexdigest()
    store.people.end_token(entry.digest, actor="ann", at=NOW)
    assert store.people.tokens(at=NOW) == ()


def test_nobody_has_no_account(store: Store) -> None:
    _made(store)
    with pytest.raises(UnknownName, match="no account 'an'; did you mean 'ann'"):
        store.people.set_role("an", Role.OWNER, actor="ann", at=NOW)


def test_an_attachment_is_kept_once_and_read_back_whole(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    name = "C:\\photos\\..\\the\x00 ticket <1>.png"
    made = store.attach(build, PNG, name=name, actor="ann", at=NOW, note="weighed")
    assert (made.name, made.media_type, made.size) == ("the ticket <1>.png", "image/png", 48)
    assert made.digest == hashlib.sha256(PNG).hexdigest()
    assert store.attachment(build, made.digest) == PNG
    assert store.attach(build, PNG, name="again.png", actor="bob", at=later(1)) == made
    other = store.create_build(SHEET, actor="ann", at=NOW).build_id
    assert store.attach(other, PNG, name="a.png", actor="bob", at=later(1)).name == "a.png"
    assert store.attachments(build) == (made,)


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "has 0 bytes; an attachment has 1 to 10,000,000 bytes"),
        (PNG + bytes(MOST_BYTES), "has 10,000,048 bytes"),
        (b"<svg onload='x'/>", "only JPEG, PNG and WebP pictures and PDF files"),
        (b"<html>", "only JPEG"),
        (b"PK\x03\x04", "only JPEG"),
    ],
)
def test_what_is_too_large_or_of_another_type_is_refused(
    store: Store, content: bytes, sentence: str
) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    with pytest.raises(NotAllowed, match=sentence):
        store.attach(build, content, name="a.png", actor="ann", at=NOW)
    assert store.attachments(build) == ()


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"\xff\xd8\xff\xe0" + bytes(9), "image/jpeg"),
        (PDF, "application/pdf"),
        (b"RIFF\x10\x00\x00\x00WEBPVP8 ", "image/webp"),
    ],
)
def test_a_type_is_told_by_the_first_bytes(store: Store, content: bytes, kind: str) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    assert store.attach(build, content, name="", actor="ann", at=NOW).media_type == kind
    assert store.attachments(build)[0].name == "attachment"


def test_an_attachment_is_given_only_to_its_own_build(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    other = store.create_build(SHEET, actor="ann", at=NOW).build_id
    made = store.attach(build, PDF, name="order.pdf", actor="ann", at=NOW)
    with pytest.raises(UnknownName, match="attachment"):
        store.attachment(other, made.digest)
    with pytest.raises(UnknownName, match="build"):
        store.attach(9, PDF, name="order.pdf", actor="ann", at=NOW)


def test_a_revision_is_a_named_point_that_stays(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    made = store.name_revision(build, 1, " A ", actor="ann", at=NOW, note="as ordered")
    store.append(build, 1, galley_to(1300), actor="ann", at=NOW)
    store.name_revision(build, 2, "B", actor="ann", at=later(1))
    assert made.name == "A"
    assert [each.name for each in store.revisions(build)] == ["A", "B"]
    assert store.build(build).revision == "B"
    assert store.sheet(build, store.revisions(build)[0].event).text == SHEET
    assert [each.place for each in store.compare(build, 1, 2)] == ["fittings.galley.at"]


@pytest.mark.parametrize(
    ("name", "sentence"),
    [("A", "already"), ("", "1 to 80 characters"), ("x" * 81, "1 to 80 characters")],
)
def test_a_revision_needs_a_name_of_its_own(store: Store, name: str, sentence: str) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.name_revision(build, 1, "A", actor="ann", at=NOW)
    with pytest.raises(NotAllowed, match=sentence):
        store.name_revision(build, 1, name, actor="ann", at=NOW)
    with pytest.raises(UnknownName, match="no event '2'"):
        store.name_revision(build, 2, "B", actor="ann", at=NOW)


def test_a_file_edited_outside_is_merged_with_what_was_edited_here(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    file = store.export_toml(build, actor="ann", at=NOW).text
    store.append(build, 1, galley_to(1300), actor="ann", at=NOW)
    outside = file.replace('"3 d"', '"5 d"')
    store.import_toml(build, outside, actor="bob", at=NOW)
    text = store.sheet(build).text
    assert '"1300 mm"' in text
    assert '"5 d"' in text


def test_the_log_says_who_did_what_and_can_be_read_in_pieces(store: Store) -> None:
    _made(store)
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.export_toml(build, actor="ann", at=later(1))
    store.note(actor="?", deed="login refused", about="eve", at=later(2))
    listed = [(each.actor, each.deed, each.about) for each in store.audit()]
    assert listed == [
        ("?", "login refused", "eve"),
        ("ann", "build exported", f"build {build}"),
        ("setup", "account made: owner", "ann"),
    ]
    first = store.audit(most=1)[0]
    assert [each.deed for each in store.audit(before=first.number, most=1)] == ["build exported"]
