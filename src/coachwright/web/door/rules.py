"""What the door lets in: which hosts and origins, which paths without signing in, how much."""

from dataclasses import dataclass
from urllib.parse import urlsplit

from starlette.datastructures import Headers
from starlette.types import Scope

LOOPBACK = frozenset({"127.0.0.1", "localhost", "::1"})
SESSION_COOKIE = "coachwright_session"
SIGN_IN = "/sign-in"
SIGN_OUT = "/sign-out"
INTERFACE = "/api/v1"
DESCRIPTION = f"{INTERFACE}/openapi.json"
MOST_BYTES = 25_000_000
"""Of one request: a price list of the largest size, with its wrapping."""
MOST_INTERFACE_BYTES = 4_000_000
"""Of one request of another program: a sheet is some hundred thousand at most."""
_SAFE = frozenset({"GET", "HEAD", "OPTIONS"})
_FREE = ("/coachwright/static/", "/coachwright/fonts/", "/favicon.ico")
_LIBRARY = "/_nicegui/"
"""Below it are scripts of the library, the same for everybody, and what pages hand in."""
_PAGES_OWN = ("/_nicegui/client/", "/_nicegui/auto/")


@dataclass(frozen=True, kw_only=True, slots=True)
class House:
    """How the server stands.

    Attributes
    ----------
    hosts
        Names and addresses by which it may be called.
    guarded
        People sign in.
    encrypted
        It speaks TLS itself.
    """

    hosts: frozenset[str] = LOOPBACK
    guarded: bool = False
    encrypted: bool = False


def host_of(value: str) -> str:
    """Return the name of a host without its port, as it may stand in a list.

    Examples
    --------
    >>> host_of("[::1]:8710"), host_of("Localhost:80"), host_of("")
    ('::1', 'localhost', '')
    """
    try:
        return (urlsplit(f"//{value}").hostname or "").lower()
    except ValueError:
        return ""


def refused(house: House, scope: Scope) -> tuple[int, str] | None:
    """Return why a request stays outside, whoever makes it; None where it may come in.

    A page of another site can make a browser call this server.  Its requests bear another origin,
    or a name under which the server does not go.
    """
    headers = Headers(scope=scope)
    if host_of(headers.get("host", "")) not in house.hosts:
        return 421, "this server does not go by that name"
    origin = headers.get("origin")
    if origin is not None:
        asked = urlsplit(origin).netloc if "://" in origin else ""
        if asked.lower() != headers.get("host", "").lower():
            return 403, "a page of another site asked for this"
        return None
    if scope["type"] == "websocket":
        return 403, "a page has an origin"
    if scope["method"] not in _SAFE and headers.get("sec-fetch-site", "none") not in (
        "same-origin",
        "none",
    ):
        return 403, "a page of another site asked for this"
    return None


def is_free(path: str) -> bool:
    """Say whether a path may be read without signing in: what is the same for everybody."""
    if path in (SIGN_IN, DESCRIPTION) or path.startswith(_FREE):
        return True
    return path.startswith(_LIBRARY) and not path.startswith(_PAGES_OWN)


def is_interface(path: str) -> bool:
    """Say whether a path is of the interface for other programs."""
    return path == INTERFACE or path.startswith(f"{INTERFACE}/")


def most_bytes(path: str) -> int:
    """Return how many bytes a request may have."""
    return MOST_INTERFACE_BYTES if is_interface(path) else MOST_BYTES


def landing(path: str) -> str:
    """Return where somebody goes who has signed in: a page of this server, and no other.

    Examples
    --------
    >>> landing("/build/3/board"), landing("//elsewhere.example/x"), landing("javascript:x")
    ('/build/3/board', '/', '/')
    """
    plain = path.startswith("/") and not path.startswith(("//", "/\\"))
    signs = all(sign.isprintable() and sign != "\\" for sign in path)
    return path if plain and signs and path != SIGN_IN else "/"
