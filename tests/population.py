"""Many bodies through one setting: what came out, and the table of it.

A setting is one torso with its sleeve: each length with each place of the bust dart, and the close
top in a knit that stretches 50 %. Tests hand their rows to pytest as properties of the report, so
that the table of all of them can be printed at the end, from every worker process.
"""

from __future__ import annotations

import statistics
import time
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.checks import check_draft, check_pattern
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import drafted
from drafting.draft.walk import notched
from drafting.fabric import Fabric
from drafting.finish import finish
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.blocks.figures import pair_block

PROPERTY = "population"
"""Name of the report property that carries a test's outcomes to the end of the run."""

KNIT = Fabric(
    title="knit of 50 %, invented",
    weave="knit",
    stretch_across=0.50,
    stretch_along=0.25,
    recovery=0.95,
    eases="little",
)


@dataclass(frozen=True)
class Setting:
    """One way to draft torso and sleeve: a block, choices that differ, the cloth."""

    block: str
    choices: Mapping[str, Any]
    fabric: Fabric | None = None

    @property
    def kind(self) -> Block:
        return pair_block() if self.block == "pair" else block_named(self.block)


def _settings() -> dict[str, Setting]:
    words = {c.name: c.words for c in all_blocks()["bodice"].choices}
    found = {
        f"{length}, {dart}": Setting("pair", {"length": length, "bust_dart": dart})
        for length in words["length"]
        for dart in words["bust_dart"]
    }
    return found | {"close top": Setting("close-top", {}, KNIT)}


SETTINGS = _settings()


@dataclass(frozen=True)
class Outcome:
    """What came of one body in one setting; `ms` is drafting alone, without checks and finish."""

    setting: str
    title: str
    refused: str = ""
    errors: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    ms: float = 0.0
    finished: bool = False

    @property
    def troubles(self) -> list[str]:
        said = [f"refused: {self.refused}"] if self.refused else list(self.errors)
        return [f"{self.setting}: {self.title}: {one}" for one in said]


def outcome(body: Body, name: str, finished: bool = False) -> Outcome:
    """Draft `body` in the setting `name`, check it, and if `finished` its cut lines too."""
    setting = SETTINGS[name]
    kind = setting.kind
    given = {choice: Given(value) for choice, value in setting.choices.items()}
    start = time.perf_counter()
    try:
        chosen = choose(kind, given, body_scale(body), Origin())
        draft = notched(drafted(body, setting.fabric, kind, chosen))
    except DraftError as refusal:
        return Outcome(name, body.title, refused=str(refusal))
    ms = 1000 * (time.perf_counter() - start)
    found: list[Finding] = [*draft.findings, *check_draft(draft, body)]
    if finished:
        pattern = finish(draft, name, "shell", chosen.finish)
        found = [*pattern.findings, *check_draft(draft, body), *check_pattern(pattern)]
    errors = tuple(f"{f.check}: {f.where}: {f.message}" for f in found if f.level == "error")
    warnings = tuple(f.check for f in found if f.level == "warning")
    return Outcome(
        setting=name, title=body.title, refused="", errors=errors, warnings=warnings, ms=ms, finished=finished
    )


def outcomes(bodies: Iterable[Body], name: str, finished: bool = False) -> list[Outcome]:
    return [outcome(body, name, finished) for body in bodies]


def plain(found: Sequence[Outcome]) -> list[dict[str, Any]]:
    """Return outcomes as plain data, as a report property has to be."""
    return [{**asdict(one), "errors": list(one.errors), "warnings": list(one.warnings)} for one in found]


def table(rows: Sequence[Mapping[str, Any]]) -> list[str]:
    """Return the summary of plain outcomes as the lines of a Markdown table, one row a setting."""
    head = "| torso and sleeve | bodies | refused | errors | finished too | warnings | draft, median |"
    lines = [head, "|---|---|---|---|---|---|---|"]
    for name in SETTINGS:
        own = [row for row in rows if row["setting"] == name]
        if own:
            lines.append(_row(name, own))
    return lines


def _row(name: str, own: Sequence[Mapping[str, Any]]) -> str:
    kinds = Counter(kind for row in own for kind in set(row["warnings"]))
    said = ", ".join(f"{kind} {n}" for kind, n in kinds.most_common()) or "none"
    times = [row["ms"] for row in own if not row["refused"]]
    cells = (
        name,
        f"{len(own):,}",
        sum(bool(row["refused"]) for row in own),
        sum(bool(row["errors"]) for row in own),
        sum(row["finished"] for row in own),
        said,
        f"{statistics.median(times or [0.0]):.0f} ms",
    )
    return f"| {' | '.join(str(cell) for cell in cells)} |"
