"""A program that calls the server: no browser, no socket, one request at a time."""

import asyncio
from dataclasses import dataclass, field
from typing import Any

import httpx
from fastapi import FastAPI


@dataclass(kw_only=True)
class Program:
    """Calls a server in this process.

    Attributes
    ----------
    cookies
        Kept from answer to request, as a browser does.
    """

    app: FastAPI
    base: str = "http://localhost/api/v1/"
    headers: dict[str, str] = field(default_factory=dict)
    cookies: httpx.Cookies = field(default_factory=httpx.Cookies)

    def get(self, path: str, **given: Any) -> httpx.Response:
        """Read something."""
        return self.ask("GET", path, **given)

    def post(self, path: str, **given: Any) -> httpx.Response:
        """Send something."""
        return self.ask("POST", path, **given)

    def put(self, path: str, **given: Any) -> httpx.Response:
        """Put something in the place of another."""
        return self.ask("PUT", path, **given)

    def ask(self, method: str, path: str, **given: Any) -> httpx.Response:
        """Make any request."""
        return asyncio.run(self._ask(method, path, given))

    async def _ask(self, method: str, path: str, given: dict[str, Any]) -> httpx.Response:
        transport = httpx.ASGITransport(self.app, raise_app_exceptions=True)
        headers = {**self.headers, **given.pop("headers", {})}
        async with httpx.AsyncClient(
            transport=transport, base_url=self.base, cookies=self.cookies
        ) as client:
            answer = await client.request(method, path, headers=headers, **given)
            self.cookies = client.cookies
            return answer
