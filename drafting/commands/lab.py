"""Open the notebooks in JupyterLab.

A checkout opens as it is. An installed kit first copies the shipped notebooks and measurements into
a folder of the maker's, and never overwrites what stands there.
"""

from __future__ import annotations

import os
import shutil
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import OWN_BLOCKS, PACKAGE, WORK_FOLDER, in_checkout, shipped

START = "notebooks/00_start_here.ipynb"


def open_lab(folder: Path, *, port: int | None = None, browser: bool = True, blocks: Path | None = None) -> None:
    """Run JupyterLab on the notebooks until it is stopped; its address, token and all, is printed.

    `folder` is where an installed kit keeps the maker's copy, `blocks` the folder of her own blocks.
    Raises InputError where either cannot be used or where `port` (1..65535) is no port.
    """
    root = root_folder(folder, port)
    hand_on_blocks(blocks)
    hand_on_folder()
    from jupyterlab.labapp import LabApp

    LabApp.launch_instance(argv=lab_flags(root, port=port, browser=browser))


def hand_on_blocks(folder: Path | None) -> None:
    """Have the notebooks draft with the blocks of this folder too, or with none from outside.

    A kernel inherits the environment; `drafting.notebook` reads it. Raises InputError, before any
    page opens, for what cannot be a block.
    """
    os.environ.pop(OWN_BLOCKS, None)
    if folder is not None:
        from drafting.blocks import use_blocks

        use_blocks(folder)
        os.environ[OWN_BLOCKS] = str(folder.resolve())


def hand_on_folder() -> None:
    """Tell the notebooks in which folder the maker works: her costumes are offered first."""
    os.environ.setdefault(WORK_FOLDER, str(Path.cwd()))


def root_folder(folder: Path, port: int | None) -> Path:
    """Return the folder that holds notebooks and measurements: the checkout, or the maker's copy.

    Raises InputError where `folder` cannot be used or where `port` (1..65535) is no port.
    """
    if port is not None and not 1 <= port <= 65535:
        raise InputError([Fault(f"{port} is no port", "a number from 1024 to 65535", "--port")])
    return PACKAGE.parent if in_checkout() else work_copy(folder)


def lab_flags(root: Path, *, port: int | None, browser: bool) -> list[str]:
    """Return JupyterLab's flags: this computer only, no news, no update check, first notebook open.

    With no `port`, the first free one from JupyterLab's usual one on is taken.
    """
    flags = [
        "--ServerApp.ip=127.0.0.1",
        f"--ServerApp.root_dir={root}",
        f"--LabApp.default_url=/lab/tree/{START}",
        "--LabApp.news_url=None",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
    ]
    if port is not None:
        flags += [f"--ServerApp.port={port}", "--ServerApp.port_retries=0"]
    if not browser:
        flags.append("--no-browser")
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        flags.append("--allow-root")
    return flags


def work_copy(folder: Path) -> Path:
    """Copy the shipped notebooks and measurements into `folder`, keeping what is there already.

    Returns the folder's absolute path. Raises InputError where a file stands in the way.
    """
    folder = folder.resolve()
    if folder.exists() and not folder.is_dir():
        raise InputError([Fault("is a file", "name a folder", "--folder", str(folder))])
    for name in ("notebooks", "measurements"):
        source = shipped(name)
        for path in sorted(path for path in source.rglob("*") if path.is_file()):
            copy = folder / name / path.relative_to(source)
            copy.parent.mkdir(parents=True, exist_ok=True)
            if not copy.exists():
                shutil.copyfile(path, copy)
    return folder
