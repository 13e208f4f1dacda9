"""The start page without its code, for those who would rather not see any.

Needs the extra `app` (voila), which shows a notebook as a page: its cells run, their code stays away.
"""

from __future__ import annotations

import importlib.util
import os
import secrets
from pathlib import Path

from drafting.commands.lab import START, hand_on_blocks, hand_on_folder, root_folder
from drafting.ground.errors import Fault, InputError

PORT = 8866
"""Where the page is served if no other port is asked for (voila's usual one)."""


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
    os.environ.setdefault("VOILA_TOKEN", secrets.token_hex(16))
    from voila.app import Voila

    Voila.launch_instance(argv=app_flags(root, port=port, browser=browser))


def app_flags(root: Path, *, port: int | None, browser: bool) -> list[str]:
    """Return voila's flags: the start page, this computer only, no code shown."""
    flags = [
        str(root / START),
        f"--Voila.root_dir={root}",  # what is written and linked lies in it
        "--Voila.ip=127.0.0.1",
        f"--port={PORT if port is None else port}",
        "--strip_sources=True",
        "--VoilaConfiguration.file_allowlist=.*\\.(png|svg|pdf|dxf|html|csv|json)",
    ]
    if port is not None:
        flags.append("--Voila.port_retries=0")
    if not browser:
        flags.append("--no-browser")
    return flags
