"""Run the workbench on loopback."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from entremetry.errors import StoreError

if TYPE_CHECKING:
    import socket

HOST = "127.0.0.1"


def serve(port: int = 0, open_browser: bool = True, home: Path | None = None) -> None:
    """Print the address, then answer on it until interrupted; port 0 takes a free one.

    Raises
    ------
    StoreError
        If the port is taken or the library cannot be opened.
    """
    import uvicorn

    from entremetry.web.app import build_app
    from entremetry.web.tidying import search_seldom

    app = build_app(home)
    search_seldom()
    with listening(port) as loopback:
        address = f"http://{HOST}:{loopback.getsockname()[1]}/"
        _print_first(address)
        if open_browser:
            _open_soon(address)
        settings = uvicorn.Config(
            app, log_level="warning", access_log=False, server_header=False, proxy_headers=False
        )
        with suppress(KeyboardInterrupt):
            uvicorn.Server(settings).run(sockets=[loopback])


def listening(port: int) -> socket.socket:
    """Socket that listens on loopback alone; StoreError if the port cannot be had."""
    import socket

    loopback = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    loopback.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        loopback.bind((HOST, port))
    except (OSError, OverflowError) as error:
        loopback.close()
        why = getattr(error, "strerror", None) or error
        raise StoreError(f"port {port} cannot be used: {why}; choose another, or 0") from error
    loopback.listen(128)
    return loopback


def _print_first(address: str) -> None:
    import sys

    sys.stdout.write(f"{address}\n")
    sys.stdout.flush()


def _open_soon(address: str) -> None:
    import threading
    import webbrowser

    threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
