"""The address of files that are kept with builds."""

from typing import Annotated

from fastapi import FastAPI, Path, Response
from fastapi.responses import JSONResponse

from coachwright.actions.benching import Bench
from coachwright.actions.weighing import photograph
from coachwright.errors import UnknownName

_Digest = Annotated[str, Path(pattern="^[0-9a-f]{64}$")]
_Number = Annotated[int, Path(ge=1, le=2_147_483_647)]


def address(build_id: int, digest: str) -> str:
    """Return where a file of a build is."""
    return f"/build/{build_id}/attached/{digest}"


def declare(app: FastAPI, bench: Bench) -> None:
    """Let people have the files of a build; the door has asked who they are.

    Parameters
    ----------
    app
        The server.
    bench
        What keeps the files.
    """

    @app.get("/build/{build_id}/attached/{digest}", include_in_schema=False)
    def attached(build_id: _Number, digest: _Digest) -> Response:
        try:
            kept, content = photograph(bench, build_id, digest)
        except UnknownName:
            return JSONResponse({"detail": "there is no such file"}, status_code=404)
        ending = kept.media_type.rpartition("/")[2]
        return Response(
            content,
            media_type=kept.media_type,
            headers={
                "Content-Disposition": f'inline; filename="{digest[:12]}.{ending}"',
                "Cache-Control": "private, max-age=31536000, immutable",
            },
        )
