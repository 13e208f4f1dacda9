"""Every garment, on many bodies, woven and stretch: each long seam carries its notches.

The demands are the kit's own (a seam over 250 mm; the level that crosses it; single in front, double
behind, common practice). Whether two edges meet at a notch is measured on the edges, not on the seam.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import pytest

from drafting.blocks import names
from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.roles import NotchKind, SeamKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from tests.bodies import ansur
from tests.drawn_bodies import drawn
from tests.population import KNIT

SAMPLE = 120
LONG = 250.0

MORE: Mapping[str, tuple[Mapping[str, Any], ...]] = {
    "bodice": (
        {"length": "hip", "bust_dart": "shoulder-princess"},
        {"bust_dart": "armhole-princess"},
        {"length": "hip", "bust_dart": "waist"},
    ),
    "trouser": ({"waist_finish": "casing"}, {"leg": "flared"}, {"leg": "tapered", "inseam_short": 6.0}),
    "tailcoat": ({"panels": 1}, {"flare_way": "godets"}),
}
"""Choices beside the default ones that bring other seams."""


def settings() -> Iterator[tuple[str, Mapping[str, Any]]]:
    for name in names(alone=True):
        yield name, {}
        yield from ((name, choices) for choices in MORE.get(name, ()))


def places(draft: Draft, chain: Sequence[EdgeRef], backwards: bool) -> list[float]:
    """Return where notches are marked along a chain, mm from the seam's start."""
    found, passed = [], 0.0
    for ref in chain:
        edge = draft.edge(ref)
        found += [passed + (edge.length - n.at if backwards else n.at) for n in edge.notches]
        passed += edge.length
    return sorted(found)


def troubles(draft: Draft, findings: Sequence[Finding]) -> list[str]:
    said = [f"{f.check}: {f.message}" for f in findings if f.level == "error" and "notch" in f.check]
    for seam in draft.seams:
        said += _troubles(draft, seam)
    for piece in draft.pieces:
        for edge in piece.edges:
            at = sorted(n.at for n in edge.notches)
            said += [
                f"{piece.name}.{edge.name}: two marks at {y:.1f}" for x, y in itertools.pairwise(at) if y - x < 3
            ]
    return said


def _troubles(draft: Draft, seam: Seam) -> list[str]:
    if seam.kind is SeamKind.DART:
        return []
    walked = walk(draft, seam)
    a, b = places(draft, seam.a, False), places(draft, seam.b, seam.b != seam.a)
    said = []
    if max(walked.a_length, walked.b_length) > LONG + 1 and not (a and b):
        said.append(f"{seam.name}: {walked.a_length:.0f} mm without a notch")
    if not seam.eased and not seam.ease and walked.gather_ratio is None:
        said += [f"{seam.name}: {n.name} has no partner" for n in seam.notches if min(abs(y - n.b) for y in b) > 3]
        said += [f"{seam.name}: {n.name} does not face" for n in seam.notches if abs(n.a - n.b) > 0.5]
    alone = len(seam.notches) == 1 and walked.a_length > LONG and seam.notches[0].kind is NotchKind.PLAIN
    if alone and seam.notches[0].name == "balance" and abs(seam.notches[0].a / walked.a_length - 0.5) < 0.05:
        said.append(f"{seam.name}: its one notch stands in the middle")
    return said


SETTINGS = [(name, choices, fabric) for name, choices in settings() for fabric in (None, KNIT)]


def refused_alike(garment: str, fabric: Fabric | None) -> bool:
    """Return whether a garment needs cloth that stretches, and has none."""
    return fabric is None and garment in ("close-top", "close-torso", "puffed-top")


def judged(bodies: Sequence[Body], garment: str, choices: Mapping[str, Any], fabric: Fabric | None) -> None:
    drawn, wrong = 0, []
    for body in bodies:
        try:
            made = draft_garment(body, fabric, garment, choices)
        except DraftError:
            continue
        drawn += 1
        wrong += [f"{body.title}: {one}" for one in troubles(made.draft, made.findings)]
    assert not wrong, "\n".join(wrong[:20])
    assert refused_alike(garment, fabric) or drawn > 0.9 * len(bodies)


@pytest.mark.parametrize("number", range(len(SETTINGS)), ids=lambda i: f"{SETTINGS[i][0]}-{i}")
def test_every_long_seam_of_every_garment_carries_notches_that_meet(number: int) -> None:
    judged(drawn(SAMPLE)[number :: len(SETTINGS)], *SETTINGS[number])


@pytest.mark.population
@pytest.mark.parametrize("number", range(len(SETTINGS)), ids=lambda i: f"{SETTINGS[i][0]}-{i}")
def test_long_seams_of_every_measured_body_carry_notches(number: int) -> None:
    judged(ansur(), *SETTINGS[number])
