"""From tape to costume: draft, check and print fitted pieces true to scale.

    Body + Fabric -> Draft -> Pattern -> Findings -> Sheet -> file

`drafting.costume.make.make` runs the whole flow and is the page to read first. What stands in `__all__` is
what programs and blocks of other people may rely on; each of it is loaded when it is asked for, so
that `import drafting` costs nothing, and a body can be read without loading what draws and prints.

>>> import drafting
>>> made = drafting.make(drafting.read_costume(drafting.demo_costume()))
>>> drafting.worst(made.findings) == "error"
False
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from drafting.public import *

    __version__: str

__all__ = [
    # what a maker writes
    "Body",
    "CostumeFile",
    "DIMENSIONS",
    "Fabric",
    "demo_costume",
    "read_bodies",
    "read_body",
    "read_costume",
    "read_fabric",
    # from there to pieces, lays, a plan and files
    "Finding",
    "Made",
    "MadeGarment",
    "Pattern",
    "check_all",
    "checked",
    "draft_garment",
    "finish_draft",
    "finished",
    "laid_out",
    "make",
    "plan_sentence",
    "planned",
    "shopping_csv",
    "strips_pdf",
    "treating_steps",
    "typed_repair",
    "unsound",
    "worst",
    "write_output",
    # what cannot be done, said to the maker
    "DraftError",
    "Fault",
    "InputError",
    # blocks, and what they are written with
    "BodyFrame",
    "BodyHeight",
    "Chain",
    "Choice",
    "Draft",
    "Edge",
    "EdgeKind",
    "Girth",
    "InnerDart",
    "Level",
    "Limb",
    "Notch",
    "Notion",
    "Path",
    "Piece",
    "Placement",
    "Seam",
    "SeamNotch",
    "all_blocks",
    "arc",
    "body_scale",
    "choice",
    "line",
    "smooth",
    "solve",
    "turn",
    "use_blocks",
]


if not TYPE_CHECKING:  # a type checker would take any name for one of ours

    def __getattr__(name: str) -> Any:
        """Return a public name, loaded now (PEP 562); `__version__` is what the installed package says."""
        if name == "__version__":
            from drafting.ground.shipped import kit_version

            return kit_version()
        if name not in __all__:
            raise AttributeError(f"module 'drafting' has no attribute {name!r}")
        module, own = _homes()[name]
        globals()[name] = getattr(import_module(module), own)  # asked for once
        return globals()[name]


def _homes() -> dict[str, tuple[str, str]]:
    """Return where each public name stands: module, and name there, as `public.py` imports them."""
    import ast
    from pathlib import Path

    text = Path(__file__).with_name("public.py").read_text("utf-8")
    lines = (node for node in ast.parse(text).body if isinstance(node, ast.ImportFrom))
    return {a.asname or a.name: (str(line.module), a.name) for line in lines for a in line.names}


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__, "__version__"])
