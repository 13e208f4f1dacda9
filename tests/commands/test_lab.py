"""`drafting lab`: the maker's copy is never overwritten; the lab answers this computer only."""

from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from drafting.commands import lab
from drafting.ground.errors import InputError


@pytest.fixture
def wheel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Shipped folders as an installed kit has them, with one file each."""
    for name in ("notebooks/00_start_here.ipynb", "measurements/bodies/kite.toml"):
        path = tmp_path / "shipped" / name
        path.parent.mkdir(parents=True)
        path.write_text("shipped")
    monkeypatch.setattr(lab, "shipped", lambda name: tmp_path / "shipped" / name)
    return tmp_path


def test_a_copy_is_made_and_what_the_maker_changed_stays(wheel: Path) -> None:
    folder = lab.work_copy(wheel / "mine")
    note = folder / "notebooks" / "00_start_here.ipynb"
    assert note.read_text() == "shipped"
    note.write_text("mine")
    (folder / "measurements" / "bodies" / "kite.toml").unlink()
    lab.work_copy(wheel / "mine")
    assert note.read_text() == "mine"
    assert (folder / "measurements" / "bodies" / "kite.toml").read_text() == "shipped"


def test_a_file_in_the_way_and_a_wrong_port_are_refused(wheel: Path) -> None:
    (wheel / "mine").write_text("a letter")
    with pytest.raises(InputError, match="is a file"):
        lab.work_copy(wheel / "mine")
    with pytest.raises(InputError, match="70000 is no port"):
        lab.open_lab(wheel / "mine", port=70000)


def printed_token(log: Path, within: float = 60) -> str:
    """Return the token of the address that a server prints."""
    end = time.monotonic() + within
    while True:
        found = re.search(r"http://127\.0\.0\.1:\d+/\S*\?token=([0-9a-f]{32,})", log.read_text(errors="replace"))
        if found:
            return found[1]
        assert time.monotonic() < end, log.read_text(errors="replace")
        time.sleep(0.1)


def answer(url: str, within: float = 60) -> int:
    """Return the status that `url` answers with, waiting for the server to be up."""
    end = time.monotonic() + within
    while True:
        try:
            with urllib.request.urlopen(url, timeout=5) as got:
                return int(got.status)
        except urllib.error.HTTPError as refused:
            return refused.code
        except OSError:
            if time.monotonic() > end:
                raise
            time.sleep(0.1)


@pytest.mark.slow
@pytest.mark.parametrize("own", ["a1b2", ""])
def test_the_lab_answers_to_its_token_and_to_nobody_else(tmp_path: Path, own: str) -> None:
    """Without a token of the maker's own one is drawn, and stands whole in the address that is printed."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    home = {
        name: str(tmp_path)
        for name in ("HOME", "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR")
    }
    environment = {name: value for name, value in os.environ.items() if name != "JUPYTER_TOKEN"} | home
    if own:
        environment["JUPYTER_TOKEN"] = own
    asked = [sys.executable, "-m", "drafting", "lab", "--no-browser", "--port", str(port)]
    with (tmp_path / "log").open("wb") as log:
        server = subprocess.Popen(asked, stdout=log, stderr=log, env=environment)
    try:
        site = f"http://127.0.0.1:{port}/api"
        assert answer(f"{site}/contents/notebooks") == 403
        token = own or printed_token(tmp_path / "log")
        assert answer(f"{site}/contents/notebooks?token={token}") == 200
    finally:
        server.send_signal(signal.SIGTERM)
        server.wait(20)
    said = (tmp_path / "log").read_text(errors="replace")
    assert f"127.0.0.1:{port}/lab/tree/{lab.START}" in said
