"""Waistband: a straight band on a waist edge, half of it on the fold, with an underlap where it opens.

The sewn edge is as long as the waist with its darts closed; a waist turned over elastic has none.
Both ends have the underlap; on the side that lies on top it is cut off at the centre. The band sits
above a trouser or a skirt and below a bodice; it opens in front, or at the back where only that is
open.

    end                                   centre back
      .----------.---------------------------.
      |o   o     :          - - - fold - - - | on the fold
      '-underlap-'---------- waist ----------'
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground import tolerances as tol
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.band import Band, band_edges, band_grain, band_seams, fold_line, line_across_band
from drafting.shaping.details.buttons import Button, button_mark, button_notion, hole_mark
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion, turned_under
from drafting.shaping.shared_choices import BUTTON_SHAPE, BUTTON_THICKNESS, CLOSING

NEEDS = ("waist",)


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the waistband, in mm."""

    band_depth: float = choice(
        38.0,
        "mm",
        "finished depth of the waistband",
        low=10,
        high=200,
        scales=True,
        source=practice("⟨30⟩ to ⟨45⟩"),
        group="waistband",
    )
    band_underlap: float = choice(
        40.0,
        "mm",
        "how far the band runs on past the centre that opens",
        low=10,
        high=150,
        scales=True,
        source=practice("⟨30⟩ to ⟨50⟩"),
        group="waistband",
    )
    band_cut: str = choice(
        "folded",
        "word",
        "cut double and folded, or outside and inside cut apart",
        words=("folded", "seamed"),
        group="waistband",
        source=practice(),
    )
    band_button: float = choice(
        16.0,
        "mm",
        "diameter of the button that closes the band",
        low=6,
        high=60,
        scales=True,
        of_hand=True,
        source=practice("⟨15⟩ to ⟨18⟩"),
        group="waistband",
    )
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    closing: str = CLOSING


def waistband(body: Body, fabric: Fabric | None, choices: Choices, *, waist: Chain) -> Draft:
    """Return the waistband (half of it, on the fold) and its interfacing; none on a waist turned over elastic."""
    if waist.elastic:
        return Draft(findings=(_pulled_on(),))
    button = Button(choices.band_button, choices.button_thickness, choices.button_shape)
    band = Band(
        waist.sewn_length,
        choices.band_underlap,
        choices.band_depth,
        choices.band_cut == "folded",
        on_fold=True,
        turned=turned_under(body_scale(body)),
    )
    over, behind = waist.pieces[0] is PieceRole.BACK, opens_behind(waist)
    place = PLACES[over, behind]
    drawn = Piece(
        "waistband",
        band_edges(band, "waist", EdgeRole.WAIST),
        grain=band_grain(fabric),
        title="Waistband",
        placements=(*fold_line(band), *_marks(band, button, choices, behind)),
        copies=1 if band.folded else 2,
        role=PieceRole.WAISTBAND,
    )
    piece = place(drawn)
    flat = band_edges(replace(band, folded=False), "waist", EdgeRole.WAIST)
    # Firm along the band whatever the cloth's own grain, for it is buttoned (common practice).
    outside = place(replace(drawn, edges=flat, grain=0.0))
    stiff = interfacing(outside, bare=("lower",) if band.folded else ())
    marks = _notches(waist, "back" if behind else "front", at_end=over is behind)
    seam = Seam(
        "waistband",
        (("waistband", "waist"),),
        tuple(reversed(waist.refs)),
        start=None,
        end=None,
        kind=SeamKind.ATTACHED,
        notches=marks,
    )
    return Draft(
        (piece, stiff),
        (seam, *_own_seams(piece, band, marks, over is behind)),
        facts={"band_length": 2 * band.length},
        notions=(button_notion("waistband", 1, button), interfacing_notion(stiff, "its warp along the band")),
    )


def _pulled_on() -> Finding:
    said = (
        "The waist is turned over elastic and pulled on: its casing is turned down from the waist itself, so "
        "there is no waistband, and nothing to button."
    )
    return Finding("waistband", "note", "waist", None, None, said)


def opens_behind(waist: Chain) -> bool:
    """Return whether a waist opens at the back alone."""
    front, back = waist.opens[::-1] if waist.pieces[0] is PieceRole.BACK else waist.opens
    return back and not front


def _notches(waist: Chain, opens: str, *, at_end: bool) -> tuple[SeamNotch, ...]:
    """Return where the band meets the centre that opens and the seams between the waist's pieces.

    Along a gathered waist they lie as far as it is drawn flat, along the band as it is sewn.

    The centre that opens lies at the end of both chains, or at their start; the other is the band's fold,
    and marked as such.
    """
    refs = waist.refs[::-1]
    ends = list(zip(*(itertools.accumulate(each[::-1]) for each in (waist.lengths, waist.drawn)), strict=True))
    joins = [at for at, one, other in zip(ends, refs, refs[1:], strict=False) if one[0] != other[0]]
    names = ["side"] if len(joins) == 1 else [f"seam {i}" for i in range(1, len(joins) + 1)]
    seams = [SeamNotch(name, sewn, flat) for name, (sewn, flat) in zip(names, joins, strict=True)]
    sewn, flat = (length - tol.CLOSED if at_end else 0.0 for length in ends[-1])
    centre = SeamNotch(f"centre {opens}", sewn, flat)
    return (*seams, centre) if at_end else (centre, *seams)


def _own_seams(piece: Piece, band: Band, marks: tuple[SeamNotch, ...], mirrored: bool) -> Iterator[Seam]:
    """Yield the band's seams with itself; the edge of a band cut apart is marked as its waist is."""
    for seam in band_seams(piece, "waist"):
        if seam.a != (("waistband", "lower"),):
            yield seam
            continue
        places = [(mark.name, band.length - mark.a if mirrored else band.sewn - mark.a) for mark in marks]
        notches = [SeamNotch(name, at, at) for name, at in places]
        yield replace(seam, notches=tuple(sorted(notches, key=lambda notch: notch.a)))


def above(piece: Piece) -> Piece:
    """Return the band with its sewn edge below: it sits on a trouser."""
    return piece.mapped(lambda p: -p)


def below(piece: Piece) -> Piece:
    """Return the band with its sewn edge above and the centre back to the right: under a bodice."""
    return piece.mirrored()


def _turned_over(piece: Piece) -> Piece:
    """Return the band above, its centre front to the left and its opening behind."""
    return above(piece).mirrored()


def _as_drawn(piece: Piece) -> Piece:
    """Return the band below, its opening behind."""
    return piece


PLACES = {(True, False): above, (True, True): _turned_over, (False, False): below, (False, True): _as_drawn}
"""How a band is laid: whether it sits over its waist, and whether it opens behind."""


def _marks(band: Band, button: Button, choices: Choices, behind: bool) -> Iterator[Placement]:
    """Yield the centre that opens, the button on the underlap, and its hole on the side on top."""
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    middle = min(band.underlap / 2, band.sewn / 4)
    yield line_across_band(band, band.sewn, "centre_back" if behind else "centre_front", "centre")
    yield button_mark(f"button_{under}", band.corner(band.sewn + middle, 0.5), button.diameter, under)
    hole = band.corner(band.sewn - middle, 0.5)
    yield hole_mark(f"buttonhole_{over}", hole, 1 + 0j, button.hole, over)
