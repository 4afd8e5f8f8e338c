"""The workbench listens on loopback alone and says where."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from http.client import HTTPConnection
from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.web.serving import HOST, listening

CODE = "from entremetry.web import serve; serve(0, False)"


def test_address_is_the_first_line_and_answers(tmp_path: Path) -> None:
    environment = {**os.environ, "ENTREMETRY_HOME": str(tmp_path)}
    command = [sys.executable, "-c", CODE]
    with subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, text=True) as server:
        try:
            assert server.stdout is not None
            address = server.stdout.readline().strip()
            host = address.removeprefix("http://").removesuffix("/")
            assert host.startswith("127.0.0.1:")
            connection = HTTPConnection(host, timeout=30)
            connection.request("GET", "/sources")
            answer = connection.getresponse()
            body = answer.read()
            connection.close()
        finally:
            server.terminate()
            server.communicate(timeout=30)
    assert answer.status == 200
    assert b"Where the numbers come from" in body


def test_free_port_is_taken_on_loopback() -> None:
    with listening(0) as first:
        assert first.getsockname()[0] == HOST == "127.0.0.1"
        assert first.getsockname()[1] > 0


def test_taken_port_is_told() -> None:
    with socket.create_server((HOST, 0)) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(StoreError, match=f"port {port} cannot be used"):
            listening(port)


@pytest.mark.parametrize("port", [-1, 70_000])
def test_port_that_is_none_is_told(port: int) -> None:
    with pytest.raises(StoreError, match="cannot be used"):
        listening(port)


def test_room_is_light_to_import() -> None:
    code = (
        "import sys, entremetry.web\n"
        "print(sorted({'starlette', 'jinja2', 'sqlalchemy', 'uvicorn'} & set(sys.modules)))"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
