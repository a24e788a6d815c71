"""TLS: a bench with a certificate, reached by a program that verifies it; files that are wrong."""

import shutil
import ssl
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import httpx
import pytest

from coachwright.actions.admitting import make_account
from coachwright.store.records import Role
from coachwright.web.door.rules import SESSION_COOKIE
from tests.web.benches import bench_in, lay
from tests.web.serving import serving

PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
COMMAND = str(Path(sys.executable).parent / "coachwright")


@dataclass(frozen=True, kw_only=True)
class Pair:
    """A certificate of this machine and its key."""

    certificate: Path
    key: Path

    @property
    def trust(self) -> ssl.SSLContext:
        return ssl.create_default_context(cafile=self.certificate)


def made(folder: Path, name: str) -> Pair:
    """Make a certificate for this machine alone, good for a day."""
    program = shutil.which("openssl")
    assert program is not None, "these tests want the openssl command: install it"
    pair = Pair(certificate=folder / f"{name}.pem", key=folder / f"{name}.key")
    words = [program, "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1"]
    words += ["-nodes", "-days", "1", "-subj", "/CN=bench", "-keyout", str(pair.key)]
    words += ["-addext", "subjectAltName=IP:127.0.0.1,DNS:localhost", "-out"]
    subprocess.run([*words, str(pair.certificate)], check=True, capture_output=True)
    return pair


@pytest.fixture(scope="module")
def pair(tmp_path_factory: pytest.TempPathFactory) -> Pair:
    return made(tmp_path_factory.mktemp("pair"), "bench")


@pytest.fixture(scope="module")
def encrypted(tmp_path_factory: pytest.TempPathFactory, pair: Pair) -> Iterator[str]:
    """Return where a bench with accounts speaks TLS."""
    folder = tmp_path_factory.mktemp("encrypted")
    (folder / "coachwright").mkdir()
    bench = bench_in(folder / "coachwright")
    with bench.store:
        lay(bench)
        make_account(
            bench,
            "olga",
            Role.OWNER,
            PASSWORD,
            salt=b"s" * 16,
            actor="test",
            at=datetime.now(UTC),
        )
    words = ("--certificate", str(pair.certificate), "--key", str(pair.key))
    with serving(folder, *words, trust=pair.trust) as served:
        yield served


def test_somebody_signs_in_over_tls_and_the_cookies_never_leave_it(
    encrypted: str, pair: Pair
) -> None:
    with httpx.Client(base_url=encrypted, verify=pair.trust) as client:
        given = {"name": "olga", "password": PASSWORD, "next": "/"}
        answer = client.post("/sign-in", data=given)
        assert answer.status_code == 303
        assert answer.headers["strict-transport-security"] == "max-age=31536000"
        page = client.get("/")
        assert page.status_code == 200
        kept = {each.name: each for each in client.cookies.jar}
        assert SESSION_COOKIE in kept
        assert len(kept) == 2  # the session, and what tells browsers apart
        for name, each in kept.items():
            assert each.secure, name


def test_a_program_that_trusts_others_alone_does_not_talk_to_it(encrypted: str) -> None:
    with pytest.raises(httpx.ConnectError, match="CERTIFICATE_VERIFY_FAILED"):
        httpx.get(encrypted, verify=ssl.create_default_context())


def test_nothing_is_said_in_plain_words(encrypted: str) -> None:
    with pytest.raises(httpx.HTTPError):
        httpx.get(encrypted.replace("https:", "http:"), timeout=10)


def _refused(tmp_path: Path, certificate: Path | None, key: Path | None) -> str:
    words = [COMMAND, "serve", "--no-open"]
    words += ["--certificate", str(certificate)] if certificate else []
    words += ["--key", str(key)] if key else []
    environment = {"XDG_DATA_HOME": str(tmp_path), "PATH": "", "COLUMNS": "400"}
    done = subprocess.run(
        words, env=environment, capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 2, done.stderr
    assert "Traceback" not in done.stderr
    return " ".join(done.stderr.split())


def test_both_files_are_given_or_none(tmp_path: Path, pair: Pair) -> None:
    assert "go together" in _refused(tmp_path, pair.certificate, None)
    assert "go together" in _refused(tmp_path, None, pair.key)


def test_a_missing_file_is_told(tmp_path: Path, pair: Pair) -> None:
    said = _refused(tmp_path, pair.certificate, tmp_path / "none.key")
    assert "none.key is not there" in said


def test_the_key_of_another_certificate_is_told(tmp_path: Path, pair: Pair) -> None:
    other = made(tmp_path, "other")
    said = _refused(tmp_path, pair.certificate, other.key)
    assert "is not the one of the certificate" in said


@pytest.mark.parametrize(("which", "what"), [("pem", "certificate"), ("key", "private key")])
def test_a_file_that_holds_something_else_is_told(
    tmp_path: Path, pair: Pair, which: str, what: str
) -> None:
    wrong = tmp_path / f"wrong.{which}"
    wrong.write_text("nothing of the kind", encoding="utf-8")
    files = (wrong, pair.key) if which == "pem" else (pair.certificate, wrong)
    said = _refused(tmp_path, *files)
    assert f"wrong.{which} holds no {what} in PEM form" in said


def test_a_damaged_key_is_told(tmp_path: Path, pair: Pair) -> None:
    damaged = tmp_path / "damaged.key"
    lines = pair.key.read_text(encoding="utf-8").splitlines()
    damaged.write_text("\n".join([lines[0], "AAAA", lines[-1]]), encoding="utf-8")
    assert "is damaged" in _refused(tmp_path, pair.certificate, damaged)


def test_a_locked_key_is_told_and_asks_for_nothing(tmp_path: Path, pair: Pair) -> None:
    program = shutil.which("openssl")
    assert program is not None
    locked = tmp_path / "locked.key"
    words = ["pkcs8", "-topk8", "-in", str(pair.key), "-out", str(locked), "-passout", "pass:word"]
    subprocess.run([program, *words], check=True, capture_output=True)
    assert "locked with a password" in _refused(tmp_path, pair.certificate, locked)
