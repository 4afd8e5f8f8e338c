"""A server whose only page says 'ok': the least that the same web stack can do."""

from __future__ import annotations

import socket

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.routing import Route


async def ok(_: Request) -> PlainTextResponse:
    """Say that all is well."""
    return PlainTextResponse("ok")


def main() -> None:
    """Serve on a free loopback port and print the address first."""
    with socket.create_server(("127.0.0.1", 0)) as listening:
        print(f"http://127.0.0.1:{listening.getsockname()[1]}/", flush=True)
        application = Starlette(routes=[Route("/", ok)])
        server = uvicorn.Server(uvicorn.Config(application, log_level="warning"))
        server.run(sockets=[listening])


if __name__ == "__main__":
    main()
