"""Where the bench can listen: a port that nobody else has."""

import errno
import socket

from coachwright.errors import CallError

USUAL = 8710
"""Where the bench listens if nobody says otherwise."""
_MOST_TRIED = 20


def port_for(address: str, wanted: int | None) -> int:
    """Return the port to listen at: the one that is wanted, else the usual or the next free one.

    Parameters
    ----------
    address
        Of this machine.
    wanted
        As somebody has asked for; None for whichever is free.

    Raises
    ------
    CallError
        Where the wanted one is taken, none of the usual ones is free, or the address is not one
        of this machine.
    """
    if wanted is not None:
        if not _is_free(address, wanted):
            raise CallError(
                f"port {wanted} of {address} is taken by another program, perhaps by a bench that "
                "is open already; name another with --port, or leave it out for the next free one"
            )
        return wanted
    last = USUAL + _MOST_TRIED
    for port in range(USUAL, last):
        if _is_free(address, port):
            return port
    raise CallError(
        f"the ports {USUAL} to {last - 1} of {address} are all taken by other programs; "
        "name a free one with --port"
    )


def _is_free(address: str, port: int) -> bool:
    try:
        kind, *_, place = socket.getaddrinfo(address, port, type=socket.SOCK_STREAM)[0]
        with socket.socket(kind, socket.SOCK_STREAM) as probe:
            # as the server does: a port that was let go of a moment ago counts as free
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            probe.bind(place)
    except OSError as error:
        if error.errno == errno.EADDRINUSE:
            return False
        reason = error.strerror or str(error)
        raise CallError(f"cannot listen at {address}, port {port}: {reason.lower()}") from error
    return True
