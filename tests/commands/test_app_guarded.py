"""`drafting app` answers its token, this computer's names and its own page; nobody else, and keeps no kernel."""

from __future__ import annotations

import asyncio
import http.client
import json
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from drafting.commands import app

pytest.importorskip("voila")

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("app")]

ROOT = Path(__file__).resolve().parents[2]

SERVES = "import json, sys; from drafting.commands.app import serve; serve(json.loads(sys.argv[1]))"

NOBODY = "0" * 8 + 3 * "-0000" + "-" + 12 * "0"
"""A kernel that there is not."""

IDLE = 20
"""Seconds after which this server stops a kernel that nobody uses."""


@dataclass(frozen=True)
class Served:
    """A running server: its port, its token, and the file of what it says."""

    port: int
    token: str
    log: Path

    def visit(self) -> str:
        """Open the page with the token, and leave it; return the kernel that it began."""
        assert self.status("/", token=self.token) == 200, self.log.read_text()
        return re.findall(r"Kernel started: ([0-9a-f-]{36})", self.log.read_text())[-1]

    def status(self, path: str, host: str = "", token: str = "") -> int:
        """Return the status that a plain request gets; `host` is the name it comes by."""
        asked = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        try:
            asked.putrequest("GET", path, skip_host=True)
            asked.putheader("Host", host or f"127.0.0.1:{self.port}")
            if token:
                asked.putheader("Authorization", f"token {token}")
            asked.endheaders()
            return asked.getresponse().status
        finally:
            asked.close()

    def opens(self, kernel: str, origin: str, token: str = "") -> bool:
        """Return whether a websocket to the kernel opens to a page of this origin; the browser sends a cookie."""
        from tornado.httpclient import HTTPClientError, HTTPRequest
        from tornado.websocket import websocket_connect

        async def tried() -> bool:
            url = f"ws://127.0.0.1:{self.port}/api/kernels/{kernel}/channels"
            headers = {"Origin": origin}
            if token:
                headers["Cookie"] = await asyncio.to_thread(self.cookie, token)
            try:
                connection = await websocket_connect(HTTPRequest(url, headers=headers, request_timeout=60))
            except HTTPClientError:
                return False
            connection.close()
            return True

        return asyncio.run(tried())

    def cookie(self, token: str) -> str:
        """Return the cookies of a browser that has opened an address with the token (one that starts nothing)."""
        asked = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        try:
            asked.request("GET", f"/voila/files/none.png?token={token}")
            answered = asked.getresponse()
            return "; ".join(row.partition(";")[0] for row in answered.headers.get_all("Set-Cookie") or ())
        finally:
            asked.close()


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A server with a page of one quick cell, to be visited with the token."""
    home = tmp_path_factory.mktemp("home")
    root = tmp_path_factory.mktemp("work")
    cell = {"cell_type": "code", "id": "a", "metadata": {}, "outputs": [], "execution_count": None}
    code = "import IPython\nprint(IPython.get_ipython().kernel.config.IPKernelApp.connection_file)"
    page = {
        "cells": [cell | {"source": code}],
        "metadata": {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}},
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    start = root / app.START
    start.parent.mkdir()
    start.write_text(json.dumps(page))
    (root / "hers.png").write_bytes(b"hers")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    flags = app.app_flags(root, port=port, browser=False)
    idle = [flag for flag in flags if "cull_" in flag]
    assert len(idle) == 2
    flags = [*(flag for flag in flags if flag not in idle)]
    flags += [f"--MappingKernelManager.cull_idle_timeout={IDLE}", "--MappingKernelManager.cull_interval=1"]
    own = ("HOME", "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR", "MPLCONFIGDIR")
    environment = {name: value for name, value in os.environ.items() if name != "JUPYTER_TOKEN"}
    environment |= dict.fromkeys(own, str(home)) | {"PYTHONPATH": str(ROOT)}
    with (home / "log").open("wb") as log:
        asked = [sys.executable, "-c", SERVES, json.dumps(flags)]
        server = subprocess.Popen(asked, stdout=log, stderr=log, cwd=root, env=environment)
    try:
        token = printed(home / "log", rf"http://127\.0\.0\.1:{port}/\?token=([0-9a-f]{{32,}})", server)
        yield Served(port, token, home / "log")
    finally:
        server.terminate()
        server.wait(30)


def printed(log: Path, pattern: str, server: subprocess.Popen[bytes]) -> str:
    end = time.monotonic() + 90
    while not (found := re.search(pattern, log.read_text(errors="replace"))):
        assert server.poll() is None and time.monotonic() < end, log.read_text(errors="replace")  # noqa: PT018
        time.sleep(0.1)
    return found[1]


@pytest.mark.parametrize("path", ["/", "/voila/files/hers.png", f"/api/kernels/{NOBODY}"])
def test_a_second_user_without_the_token_gets_nothing(served: Served, path: str) -> None:
    assert served.status(path) in (302, 403)  # to the login page, or nothing at all
    assert served.status(path, token="0" * 48) in (302, 403)


@pytest.mark.parametrize("host", ["evil.example", "evil.example:80", "192.0.2.7", "localhost.evil.example"])
def test_a_name_that_is_not_this_computers_is_refused_even_with_the_token(served: Served, host: str) -> None:
    assert served.status("/", host, served.token) == 403
    assert served.status("/voila/files/hers.png", host, served.token) == 403


def test_the_token_opens_the_makers_files_and_the_list_of_what_may_be_handed_out_holds(served: Served) -> None:
    assert served.status("/voila/files/hers.png", token=served.token) == 200
    assert served.status("/voila/files/notebooks/00_start_here.ipynb", token=served.token) == 403


def test_a_websocket_opens_to_the_servers_own_page_alone_and_a_kernel_that_nobody_uses_is_stopped(
    served: Served,
) -> None:
    kernel = served.visit()
    own = f"http://127.0.0.1:{served.port}"
    assert served.opens(kernel, own, served.token)
    assert not served.opens(kernel, "http://evil.example", served.token)
    assert not served.opens(kernel, "null", served.token)
    assert not served.opens(kernel, own)
    end = time.monotonic() + 120
    while served.status(f"/api/kernels/{kernel}", token=served.token) == 200:
        assert time.monotonic() < end
        time.sleep(0.2)
