"""The start page without its code, for those who would rather not see any.

Needs the extra `app` (voila), which shows a notebook as a page: its cells run, their code stays away.
"""

from __future__ import annotations

import importlib.util
from pathlib import Path

from drafting.commands.lab import START, hand_on_blocks, hand_on_folder, root_folder
from drafting.ground.errors import Fault, InputError

PORT = 8866
"""Where the page is served if no other port is asked for (voila's usual one)."""


IDLE = 600
"""Seconds after which a kernel that no page is open to is stopped (ours: a page that is read again finds it)."""


def open_app(folder: Path, *, port: int | None = None, browser: bool = True, blocks: Path | None = None) -> None:
    """Serve the start page on this computer alone until it is stopped.

    Raises InputError where voila is not installed, or where `folder`, `port` or the folder of the
    maker's own `blocks` cannot be used.
    """
    if importlib.util.find_spec("voila") is None:
        right = 'install it with: python -m pip install "drafting-kit[app]"'
        raise InputError([Fault("the page without code needs the extra app", right)])
    root = root_folder(folder, port)
    hand_on_blocks(blocks)
    hand_on_folder()
    serve(app_flags(root, port=port, browser=browser))


def serve(flags: list[str]) -> None:
    """Serve the page that these flags describe until it is stopped; its address, token and all, is printed."""
    from drafting.commands.app_server import StartPage

    StartPage.launch_instance(argv=flags)


def app_flags(root: Path, *, port: int | None, browser: bool) -> list[str]:
    """Return voila's flags: the start page, this computer only, behind a token, no code shown."""
    flags = [
        str(root / START),
        f"--Voila.root_dir={root}",  # what is written and linked lies in it
        "--Voila.ip=127.0.0.1",
        f"--port={PORT if port is None else port}",
        "--strip_sources=True",
        "--Voila.auto_token=True",
        f"--MappingKernelManager.cull_idle_timeout={IDLE}",
        f"--MappingKernelManager.cull_interval={IDLE // 10}",
        "--VoilaConfiguration.file_allowlist=.*\\.(png|svg|pdf|dxf|html|csv|json)",
    ]
    if port is not None:
        flags.append("--Voila.port_retries=0")
    if not browser:
        flags.append("--no-browser")
    return flags
