"""One garment: choose, draft its parts, finish, check. Layer 5.

`draft_garment` is the short way for notebooks and sliders; `costume.make` does the same from files.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.checks import check_all
from drafting.chosen import Chosen, Origin, block_named, choose
from drafting.draft import Draft
from drafting.errors import DraftError
from drafting.fabric import Fabric
from drafting.findings import Finding
from drafting.finish import finish
from drafting.pattern import Pattern
from drafting.reading.given import Given
from drafting.scale import body_scale
from drafting.walk import notched


@dataclass(frozen=True)
class MadeGarment:
    """A garment drafted, finished and checked.

    `fabric` is the role of its cloth; `choices` every value used with its source ("file" or
    "default"); `findings` what rules settled and what the checks found; `seconds` by stage.
    """

    name: str
    block: str
    fabric: str
    draft: Draft
    pattern: Pattern
    choices: Mapping[str, tuple[Any, str]]
    findings: tuple[Finding, ...]
    seconds: Mapping[str, float] = field(default_factory=dict, compare=False)


def draft_garment(
    body: Body, fabric: Fabric | None, block: str, choices: Mapping[str, Any] | None = None,
    *, name: str = "", role: str = "shell",
) -> MadeGarment:  # fmt: skip
    """Return the garment of a block with these choices (mm, degrees, words); no files needed.

    Raises `InputError` for a block or choice that is not known or out of range, `DraftError` where
    these measures and choices cannot be drafted together.
    """
    kind = block_named(block)
    given = {choice: Given(value) for choice, value in (choices or {}).items()}
    chosen = choose(kind, given, body_scale(body), Origin())
    return make_garment(body, fabric, kind, chosen, name=name or block, role=role)


def make_garment(
    body: Body, fabric: Fabric | None, block: Block, chosen: Chosen, *, name: str, role: str
) -> MadeGarment:
    """Return the garment drafted, finished and checked; raises `DraftError`."""
    start = time.perf_counter()
    draft = notched(drafted(body, fabric, block, chosen))
    stands = time.perf_counter()
    pattern = finish(draft, name, role, chosen.finish)
    ready = time.perf_counter()
    findings = (*pattern.findings, *check_all(draft, pattern, body))
    seconds = {
        "draft": stands - start, "finish": ready - stands, "check": time.perf_counter() - ready,
    }  # fmt: skip
    return MadeGarment(
        name, block.name, role, draft, pattern, chosen.values, findings, seconds
    )  # fmt: skip


def drafted(body: Body, fabric: Fabric | None, block: Block, chosen: Chosen) -> Draft:
    """Return the parts of a garment drafted in order, each handed the edges it needs."""
    draft = Draft()
    for name, choices in chosen.parts.items():
        part = all_blocks()[name]
        lost = [
            ref for ref in part.needs.values() if ref[0] not in draft or ref[1] not in draft[ref[0]]
        ]
        if lost or part.draft is None:
            needed = " and ".join(" ".join(ref) for ref in lost)
            raise DraftError(
                f"the block {name} cannot be drafted here: it has to fit the {needed}",
                turn="take a block of a whole garment that has both, for example shirt",
            )
        edges = {argument: draft.edge(ref) for argument, ref in part.needs.items()}
        draft += part.draft(body, fabric, choices, **edges)
    return draft
