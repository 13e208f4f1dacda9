"""Tails: the back's skirt with vent and pleat, and tails in bias-cut flare panels, sewn to the waist.

Flare is drafted as a bend: the waist edge and every seam keep their length, only the hem grows, by
exactly what is asked for at each seam. Panels are named from the back: `tail-1`, `tail-2`, ...

         waist          waist        pleat_top
        .-------.      .------.--.
       /       /      |       :  |
 front/       /back   |front  :  | pleat        (and the back runs on below the waist:
     /       /        |   fold:  |               vent, hem, pleat)
    '-._____/         '-------'--'
       hem               hem
       tail-2            tail-1
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import piece_as, the_edge
from drafting.draft.chain import chain
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, memory, ours, practice
from drafting.shaping.coat.skirt import WAYS, Tail, TailAsked, back_drop, draw_plain, seat_spring, settle_tail
from drafting.shaping.coat.tail_pieces import TailStyle, body_waist, skirt_of, tail_pieces, tail_seams, with_skirt
from drafting.shaping.coat.tail_remarks import cutaway_said, hang_of, knee_hollow, tail_findings
from drafting.shaping.details.buttons import Button, button_notion
from drafting.shaping.details.small_pieces import turned_under
from drafting.shaping.flare.grain import RULES, TRUE_BIAS
from drafting.shaping.shared_choices import VENT_WIDTH

AS_FLARE = -1.0
"""A seam's own flare that was not typed: the flare of all seams stands."""


BY_CLOTH = "by cloth"
"""The grain that nobody chose: the cloth decides."""


def _own(number: int) -> float:
    own: float = choice(
        AS_FLARE,
        "mm",
        f"extra hem at seam {number} from the back; below 0: as `flare` says",
        low=-10,
        high=400,
        step=10,
        group="flare",
        source=AS_ASKED,
    )
    return own


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the tails, in mm."""

    tail_length: float = choice(
        0.0,
        "mm",
        "from the nape to the hem; 0: to the hollow of the knee",
        low=0,
        high=2000,
        step=10,
        group="length",
        begins="nape",
        source=practice("tails end at the back of the knee"),
    )
    panels: float = choice(4.0, "count", "panels of each tail", low=1, high=6, group="flare", source=BY_EYE)
    flare: float = choice(
        80.0,
        "mm",
        "extra hem at every seam between two panels",
        low=0,
        high=400,
        step=10,
        scales=True,
        group="flare",
        grows=True,
        source=ours("reckoned, not tried on cloth: ⟨40⟩ to ⟨100⟩ hangs in a soft wave, ⟨200⟩ and more in folds"),
    )
    flare_1: float = _own(1)
    flare_2: float = _own(2)
    flare_3: float = _own(3)
    flare_4: float = _own(4)
    flare_5: float = _own(5)
    grain: str = choice(
        BY_CLOTH,
        "word",
        "where the warp lies: plumb on pile, nap, satin and other one-way cloth and alternate on any other, "
        "every other seam exactly on the bias, twice the panels "
        "and every flare seam so, none exact and none far off, as ordinary gores, as uncut cloth",
        words=(BY_CLOTH, *RULES),
        group="flare",
        source=(
            ours("plane geometry: a panel has one warp and two seams"),
            practice("pile runs one way on all panels, or each shades differently"),
        ),
    )
    flare_way: str = choice(
        "straight",
        "word",
        "straight seams, seams shaped from a depth down, godets let in, or no seam",
        words=WAYS,
        group="flare",
        source=ours("plane geometry: four ways to one hem"),
    )
    shaped_from: float = choice(
        0.35,
        "ratio",
        "where shaped seams start to swing out, from the waist",
        low=0,
        high=0.8,
        step=0.05,
        group="flare",
        source=BY_EYE,
    )
    godet_height: float = choice(
        0.6,
        "ratio",
        "how high godets reach, as a share of the seam",
        low=0.2,
        high=0.9,
        step=0.05,
        group="flare",
        source=BY_EYE,
    )
    tail_hem: str = choice(
        "seam length",
        "word",
        "every seam as long as in the plain tail, or level when held open",
        words=("seam length", "level"),
        group="length",
        source=ours("plane geometry: a tail held open is a cone"),
    )
    tail_width: float = choice(
        0.62,
        "ratio",
        "hem over waist of the plain tail, before it turns for the seat",
        low=0.3,
        high=1.2,
        step=0.02,
        group="style",
        source=BY_EYE,
    )
    vent_width: float = VENT_WIDTH
    pleat_width: float = choice(
        45.0,
        "mm",
        "depth of the side pleat at the hem",
        low=10,
        high=120,
        scales=True,
        group="style",
        grows=True,
        source=memory(),
    )
    front_bow: float = choice(
        14.0,
        "mm",
        "how far the tail's front edge bows outwards",
        low=0,
        high=60,
        scales=True,
        group="style",
        source=BY_EYE,
    )


def tails(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the coat with tails: its back lengthened, panels `tail-1` ... sewn to its waist.

    Raises `DraftError` where the draft has no coat body, for a tail that ends above the waist, and
    for a grain that cannot be had.
    """
    back = _coat_back(draft)
    scale = body_scale(body)
    waist = chain(draft, "coat_waist")
    edge = body_waist(waist.path)
    length = choices.tail_length or knee_hollow(body)
    foot = the_edge(back, EdgeRole.WAIST).path.mirrored().reversed()
    skirt = skirt_of(foot, back_drop(length, -foot.start.imag, scale))
    half, at, asked = (draft.facts[fact] for fact in ("waist_half", "tails_at", "tails_asked"))
    spring = seat_spring(body, half, edge.length)
    plain = draw_plain(edge, skirt.fold.length, choices.tail_width, spring)
    wanted = _asked(choices, fabric)
    tail = settle_tail(plain, wanted, math.pi * plain.width / half)
    style = TailStyle(
        vent=choices.vent_width,
        pleat=choices.pleat_width,
        bow=choices.front_bow,
        allowance=turned_under(scale),
        godet_warp=90.0 if wanted.grain == "plumb" else TRUE_BIAS,
    )
    pieces = tail_pieces(tail, style, choices.godet_height)
    side = draft.edge(waist.refs[-1]).length
    behind = skirt.longer(tail.longer)
    button = _button_of(draft)
    longer = draft.with_pieces([with_skirt(back, behind, style, button.diameter if button else 0.0)])
    longer = replace(longer, seams=tuple(_hooked(s, back.name) for s in draft.seams))
    hang = hang_of(body, length)
    return longer + Draft(
        _as_they_lie(pieces),
        tail_seams(pieces, back.name, waist.refs, side),
        (),
        (
            *cutaway_said(at, asked, half),
            *tail_findings(tail, hang, body["hip_girth"], abs(skirt.fold_end - skirt.low)),
        ),
        _facts(tail, length, spring),
        {"tail_hem": tuple((p.name, "hem") for p in pieces if p.role is PieceRole.TAIL)},
        notions=(button_notion(back.name, 2, button, HOOK, holes=False),) if button else (),
    )


HOOK = "one at the hook of each side pleat"
"""Where the buttons behind stand."""


def _button_of(draft: Draft) -> Button | None:
    """Return the button that the fronts are closed with, which stands behind too; None where they have none."""
    for notion in draft.notions:
        if notion.what == "button" and notion.size:
            return Button(notion.size, 0.0, notion.kind)
    return None


def _as_they_lie(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Return the panels in the order in which they lie on the left side: the front one first."""
    panels = [p for p in pieces if p.role is PieceRole.TAIL]
    return (*reversed(panels), *(p for p in pieces if p not in panels))


def _coat_back(draft: Draft) -> Piece:
    back = piece_as(draft, PieceRole.BACK)
    if "coat_waist" not in draft.chains or back is None:
        raise DraftError(
            "tails hang on a coat body, and this draft has none",
            turn="take the block tailcoat, or put coat-body before the tails",
        )
    return back


def _hooked(seam: Seam, back: str) -> Seam:
    """The back seam ends at the hook of the pleat: there is no smooth corner any more."""
    hooked = seam.kind is SeamKind.PANEL and seam.a[0][0] == back
    return replace(seam, end=None) if hooked else seam


def _asked(choices: Choices, fabric: Fabric | None) -> TailAsked:
    grain = choices.grain
    if grain == BY_CLOTH:
        grain = "plumb" if fabric and fabric.shades else "alternate"
    panels = round(choices.panels)
    own = (choices.flare_1, choices.flare_2, choices.flare_3, choices.flare_4, choices.flare_5)
    flare = tuple(choices.flare if f < 0 else f for f in own[: panels - 1])
    return TailAsked(
        panels=panels,
        flare=flare,
        grain=grain,
        way=choices.flare_way,
        shaped_from=choices.shaped_from,
        godet_height=choices.godet_height,
        level=choices.tail_hem == "level",
        width=choices.tail_width,
    )


def _facts(tail: Tail, length: float, spring: float) -> dict[str, float]:
    facts = {
        "tail_length": length,
        "tail_waist": tail.plain.width,
        "tail_sweep": tail.sweep,
        "tail_sweep_plain": tail.plain_sweep,
        "tail_turned": tail.turned,
        "tail_lean": tail.lean,
        "tail_longer": tail.longer,
        "seat_spring": spring,
    }
    for seam in tail.biases:
        facts[f"tail_seam_{seam.number}_bias_back"] = seam.back
        facts[f"tail_seam_{seam.number}_bias_front"] = seam.front
    return facts
