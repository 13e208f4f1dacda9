"""What is taken in or let out at one place changes there, on both edges of its seam, and nowhere else.

Widths are measured here on the edges themselves, by lines of their own, and not by the levels of the draft.
"""

from __future__ import annotations

import numpy as np
import pytest

from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, finished_garment
from drafting.draft.piece import Edge
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.note import AmountAs, AtEdge, FromEnd, Note
from drafting.fitting.strip import strips_between
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.fitting.test_followers import note
from tests.fitting.test_on_other_figures import figured


def garment(figure: str, block: str, *notes: Note, **choices: object) -> MadeGarment:
    body = figured(figure)
    kind = block_named(block)
    given = {name: Given(value) for name, value in choices.items()}
    chosen = choose(kind, given, body_scale(body), Origin())
    return finished_garment(body, None, kind, chosen, name=block, role="shell", notes=notes)


def out(edge: Edge, height: float) -> float:
    """Return how far from the middle (mm) an edge passes a height."""
    places = np.array(edge.path.evenly(4001))
    order = np.argsort(places.imag)
    return abs(float(np.interp(height, places.imag[order], places.real[order])))


def side(made: MadeGarment, piece: str) -> Edge:
    return next(e for e in made.draft[piece].edges if e.role is EdgeRole.SIDE)


def heights(made: MadeGarment, piece: str) -> dict[LevelKind, float]:
    """Return at which height each level of a piece ends at its side."""
    found = {}
    for level in made.draft[piece].levels:
        ends = [p for path in level.paths for p in (path.start, path.end)]
        found[level.kind] = max(ends, key=lambda p: abs(p.real)).imag
    return found


def changes(before: MadeGarment, after: MadeGarment, kind: LevelKind) -> list[float]:
    """Return by how much the side of front and back lies farther out at a level, mm."""
    found = []
    for piece in ("front", "back"):
        at = heights(before, piece)[kind]
        found.append(out(side(after, piece), at) - out(side(before, piece), at))
    return found


WAIST, HIP, KNEE = LevelKind.WAIST, LevelKind.HIP, LevelKind.KNEE


def test_a_waist_over_a_belly_is_taken_in_by_what_is_said() -> None:
    """The front's waist bends there: it was not measured anew, so that twice as much was taken."""
    before, after = garment("stout", "shirt"), garment("stout", "shirt", note("front.side", "take in", 40.0))
    assert changes(before, after, WAIST) == pytest.approx([-10.0, -10.0], abs=0.6)
    assert changes(before, after, HIP) == pytest.approx([0.0, 0.0], abs=0.6)
    level = next(lv for lv in after.draft["front"].levels if lv.kind is WAIST)
    edge = np.array(side(after, "front").path.evenly(4001))
    assert np.abs(edge - level.paths[0].end).min() < 0.2, "the line ends on the new edge"


@pytest.mark.parametrize(
    ("block", "where", "verb", "amount", "moved", "stays"),
    [
        ("trousers", "waist", "take in", 20.0, WAIST, (HIP, KNEE)),
        ("trousers", "hip", "let out", 20.0, HIP, (WAIST, KNEE)),
        ("shirt", "hip", "let out", 20.0, HIP, (WAIST,)),
        ("fitted-top", "hip", "let out", 20.0, HIP, (WAIST,)),
        ("skirt", "hip", "let out", 20.0, HIP, (WAIST,)),
    ],
)
@pytest.mark.parametrize("figure", ["stooped", "stout"])
def test_the_levels_beside_it_stay(
    figure: str, block: str, where: str, verb: str, amount: float, moved: LevelKind, stays: tuple[LevelKind, ...]
) -> None:
    """A waist of trousers took the hip in with it, a hip of a top let the waist out."""
    before, after = garment(figure, block), garment(figure, block, note(where, verb, amount))
    sign = 1.0 if verb == "let out" else -1.0
    assert sum(changes(before, after, moved)) == pytest.approx(sign * amount / 2, abs=0.6)
    for kind in stays:
        assert changes(before, after, kind) == pytest.approx([0.0, 0.0], abs=0.6), kind


def at_a_seam(piece: str, mm: float, place: float, end: str) -> Note:
    base = note("waist", "take in", mm)
    fields = {name: getattr(base, name) for name in base.__dataclass_fields__}
    return Note(**{**fields, "where": AtEdge(piece, "side"), "counted": AmountAs.SEAM, "at": FromEnd(place, end)})


@pytest.mark.parametrize("figure", ["stooped", "stout"])
@pytest.mark.parametrize("piece", ["front", "back"])
def test_a_place_near_the_hem_is_taken_in_alike_on_both_edges_and_the_waist_stays(figure: str, piece: str) -> None:
    """The other edge was taken in at the same height, beside the place: over a belly the front hangs higher."""
    before = garment(figure, "shirt")
    if "side" not in before.draft["front"]:
        pytest.skip("its side is parted by a dart")
    after = garment(figure, "shirt", at_a_seam(piece, 10.0, 40.0, "hem"))
    for name in ("front", "back"):
        one, two = side(before, name), side(after, name)
        low = [min((e.path.start, e.path.end), key=lambda p: p.imag) for e in (one, two)]
        assert abs(low[1].real) - abs(low[0].real) == pytest.approx(-10.0, abs=0.5), name
    assert changes(before, after, WAIST) == pytest.approx([0.0, 0.0], abs=0.6)
    front, back = side(after, "front").length, side(after, "back").length
    assert front - back == pytest.approx(side(before, "front").length - side(before, "back").length, abs=0.05)


@pytest.mark.parametrize("cut", ["straight", "gored"])
@pytest.mark.parametrize("hand", ["both", "left"])
def test_a_skirt_is_taken_in_at_its_waist_and_its_band_follows(cut: str, hand: str) -> None:
    """No note at all moved a skirt."""
    before = garment("stooped", "skirt", skirt_cut=cut)
    after = garment("stooped", "skirt", note("waist", "take in", 20.0, hand), skirt_cut=cut)
    assert after.done[0].carried, after.done[0].said

    def waist(made: MadeGarment) -> float:
        twice = {p.name: 2 if p.pair or p.fold_edge is not None else 1 for p in made.draft.pieces}
        return sum(
            e.length * twice[p.name]
            for p in made.draft.pieces
            if not p.material and p.name.startswith(("front", "back", "gore"))
            for e in p.edges
            if e.role is EdgeRole.WAIST
        )

    def band(made: MadeGarment) -> float:
        piece = made.draft["waistband"]
        twice = 2 if piece.fold_edge is not None else 1
        return twice * sum(e.length for e in piece.edges if e.name.startswith("waist"))

    assert waist(after) - waist(before) == pytest.approx(-20.0, abs=0.6)
    assert band(after) - band(before) == pytest.approx(-20.0, abs=0.6)


def test_a_back_with_a_pleat_under_its_yoke_takes_notes() -> None:
    """A line a thousandth of a mm beside the yoke's was measured without the pleat: every note was sent back."""
    made = garment(
        "stout", "shirt", note("hip", "let out", 20.0), back_shaping="yoke", back_pleat="box", tails="shaped"
    )
    assert made.done[0].carried, made.done[0].said


@pytest.mark.parametrize("figure", ["stooped", "stout"])
def test_trousers_taken_in_at_the_waist_get_a_strip_there(figure: str) -> None:
    """Old and new were laid on the corner of waist and side, which had moved: every line seemed to have."""
    before, after = (garment(figure, "trousers", *notes) for notes in ((), (note("waist", "take in", 20.0),)))
    for name in ("front", "back"):
        one, two = (next(p for p in made.pattern.pieces if p.piece.name == name) for made in (before, after))
        (strip,) = strips_between(one, two)
        assert set(strip.edges) <= {"side", "waist", "waist_side", "waist_centre"}
        assert strip.moved == pytest.approx(5.0, abs=0.7)
