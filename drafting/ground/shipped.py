"""What is shipped with the kit: its version, and where `measurements/` and `notebooks/` lie.

In a checkout they are the top-level folders, the one source; a wheel carries a copy inside the
package (pyproject.toml says so).
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal

PACKAGE = Path(__file__).resolve().parent.parent
INSTALLED = PACKAGE / "_shipped"

OWN_BLOCKS = "DRAFTING_BLOCKS"
"""The environment variable by which `drafting lab --blocks DIR` tells its notebooks the folder."""

OPEN_WITH = "DRAFTING_COSTUME"
"""The environment variable that names the costume file which pages open with."""

WORK_FOLDER = "DRAFTING_FOLDER"
"""The environment variable by which `drafting lab` and `app` tell their pages where the maker works."""


def in_checkout() -> bool:
    """Return whether the package runs from a checkout, not from an installed wheel."""
    return not INSTALLED.is_dir()


def shipped(folder: Literal["measurements", "notebooks"]) -> Path:
    """Return the absolute path of a shipped folder, which may only be read.

    >>> shipped("measurements").name
    'measurements'
    """
    return (PACKAGE.parent if in_checkout() else INSTALLED) / folder


def demo_costume() -> Path:
    """Return the costume file of the demo, the lamplighter (an invented figure).

    >>> demo_costume().name
    'lamplighter.toml'
    """
    return shipped("measurements") / "costumes" / "lamplighter.toml"


def kit_version() -> str:
    """Return the version of the installed package ("not installed" for a mere checkout)."""
    from importlib.metadata import PackageNotFoundError, version  # costs 30 ms: only when asked

    try:
        return version("drafting-kit")
    except PackageNotFoundError:
        return "not installed"
