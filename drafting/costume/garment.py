"""One garment: choose, draft its parts, finish, then check.

`draft_garment` is the short way for notebooks and tests; `costume.make.make` does the same from files.
What is checked is what stands: a picture may be shown of a garment before it is `checked`.
"""

from __future__ import annotations

import time
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from drafting.alter.sewn_in import sewn_in
from drafting.blocks import Block
from drafting.body import Body
from drafting.body.sides import settled_middle
from drafting.checks import check_all
from drafting.checks.ease import ease_enough
from drafting.checks.enclosed import enclosed_wide_enough
from drafting.checks.piping import piping_wide_enough
from drafting.checks.pulled_on import head_passes
from drafting.checks.seated import drafted_standing
from drafting.checks.shading import panels_shade
from drafting.checks.treatments import cloth_cannot_take
from drafting.costume.choices import Chosen, block_named, choose, sewn_so
from drafting.costume.hands.fitted import before_style, fitted_hands
from drafting.costume.walking_slit import AsWished, slit_settled
from drafting.costume.wishes import GarmentWish, altered, on_each_hand, on_one_pivot
from drafting.draft.draft import Draft
from drafting.draft.pattern import Pattern
from drafting.draft.two_sides import BODY_APART, STYLED_APART, both_hands
from drafting.draft.walk import notched
from drafting.fabric import Fabric
from drafting.finish import finish
from drafting.finish.hems import turned_up
from drafting.finish.unwashed import enlarged
from drafting.fitting.note import Done, Note
from drafting.ground.errors import DraftError, InputError
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.scale import allowance_scale, body_scale, style_growth
from drafting.reading.fullness import FullnessWish
from drafting.reading.given import Given, Origin
from drafting.reading.pockets import PocketWish
from drafting.reading.style import HANDS, CutWish, StyleWish
from drafting.reading.trimming import AppliqueWish, TrimWish

NO_CLOTHS: Mapping[str, Fabric] = MappingProxyType({})


@dataclass(frozen=True)
class MadeGarment:
    """A garment drafted, finished and checked.

    `fabric` is the role of its cloth; `choices` every value used with its source ("file",
    "notebook" or "default"); `findings` what rules settled and what the checks found; `seconds` by
    stage; `trims` what is sewn along its edges; `as_sewn` the pattern before cutting unwashed
    enlarged it (the same object where nothing is enlarged); `done` what each note of a fitting moved.
    """

    name: str
    block: str
    fabric: str
    draft: Draft
    pattern: Pattern
    as_sewn: Pattern
    choices: Mapping[str, tuple[Any, str]]
    findings: tuple[Finding, ...]
    seconds: Mapping[str, float] = field(default_factory=dict, compare=False)
    trims: tuple[TrimWish, ...] = ()
    done: tuple[Done, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "choices", "seconds")


def draft_garment(
    body: Body,
    fabric: Fabric | None,
    block: str,
    choices: Mapping[str, Any] | None = None,
    *,
    name: str = "",
    role: str = "shell",
) -> MadeGarment:
    """Return the garment of a block with these choices (mm, degrees, words); no files needed.

    Raises `InputError` for a block or choice that is not known or out of range, `DraftError` where
    these measures and choices cannot be drafted together.

    >>> from drafting.body import wearer
    >>> body = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})
    >>> bodice = draft_garment(body, None, "bodice", {"bust_ease": 100.0})
    >>> [piece.name for piece in bodice.draft.pieces], bodice.draft.girths[0].settled_ease
    (['back', 'front'], 100.0)
    """
    kind = block_named(block)
    given = {choice: Given(value) for choice, value in (choices or {}).items()}
    chosen = choose(kind, given, body_scale(body), Origin(), sewn_so(body, fabric), style_growth(body))
    return make_garment(body, fabric, kind, chosen, name=name or block, role=role)


def make_garment(body: Body, fabric: Fabric | None, block: Block, chosen: Chosen, **more: Any) -> MadeGarment:
    """Return the garment drafted, finished and checked; takes and raises what `finished_garment` does."""
    return checked_garment(finished_garment(body, fabric, block, chosen, **more), body, fabric)


def finished_garment(
    body: Body,
    fabric: Fabric | None,
    block: Block,
    chosen: Chosen,
    *,
    name: str,
    role: str,
    style: tuple[StyleWish, ...] = (),
    fullness: tuple[FullnessWish, ...] = (),
    trims: tuple[TrimWish, ...] = (),
    appliques: tuple[AppliqueWish, ...] = (),
    pockets: tuple[PocketWish, ...] = (),
    cloths: Mapping[str, Fabric] = NO_CLOTHS,
    notes: tuple[Note, ...] = (),
) -> MadeGarment:
    """Return the garment drafted and finished, not yet checked; raises `DraftError`.

    `cloths` are those of linings and interfacings by their roles, `notes` what fittings ask of the line.
    An `InputError` names every wish that cannot be had, where it stands in its file.
    """
    start = time.perf_counter()
    wishes = (*style, *fullness, *appliques, *pockets, *trims)
    draft, misfits, done = wished(body, fabric, block, chosen, wishes, notes)
    if misfits:
        raise InputError([spot.fault(error.sentence) for spot, error in misfits])
    trims = tuple(one for trim in trims for one in on_each_hand(draft, trim))
    draft = turned_up(notched(sewn_in(draft, fabric)), fabric, chosen.finish, allowance_scale(body_scale(body)))
    stands = time.perf_counter()
    sewn = finish(draft, name, role, chosen.finish, _stretches(fabric, cloths))
    pattern = enlarged(sewn, fabric) if chosen.finish.cut_unwashed else sewn
    seconds = {"draft": stands - start, "finish": time.perf_counter() - stands}
    return MadeGarment(
        name=name,
        block=block.name,
        fabric=role,
        draft=draft,
        pattern=pattern,
        as_sewn=sewn,
        choices=chosen.values,
        findings=pattern.findings,
        seconds=seconds,
        trims=trims,
        done=done,
    )


def checked_garment(made: MadeGarment, body: Body, fabric: Fabric | None) -> MadeGarment:
    """Return the garment with what the checks find in it; never raises."""
    start = time.perf_counter()
    found = check_all(made.draft, made.as_sewn, body)
    typed = {name: value for name, (value, source) in made.choices.items() if source != "default"}
    findings = (
        *made.pattern.findings,
        *found,
        *ease_enough(made.draft, body, fabric),
        *head_passes(made.draft, body, fabric),
        *drafted_standing(made.draft, body),
        *cloth_cannot_take(made.draft, fabric, typed),
        *panels_shade(made.draft, fabric),
        *enclosed_wide_enough(made.draft, made.pattern, body, fabric),
        *piping_wide_enough(made.pattern, made.trims),
    )
    seconds = {**made.seconds, "check": time.perf_counter() - start}
    return replace(made, findings=findings, seconds=seconds)


def _stretches(fabric: Fabric | None, cloths: Mapping[str, Fabric]) -> dict[str, float]:
    """Return for each material that stretches how many degrees off its warp it does so most."""
    own = {**cloths, **({"": fabric} if fabric else {})}
    return {role: at for role, cloth in own.items() if (at := cloth.stretches_at) is not None}


def drafted(body: Body, fabric: Fabric | None, block: Block, chosen: Chosen) -> Draft:
    """Return the garment's draft; where the body's two sides differ, one for each hand."""
    return wished(body, fabric, block, chosen, ())[0]


def wished(
    body: Body,
    fabric: Fabric | None,
    block: Block,
    chosen: Chosen,
    wishes: Sequence[GarmentWish],
    notes: Sequence[Note] = (),
) -> AsWished:
    """Return the draft with what is noted and wished of it, each wish it cannot have, what notes moved.

    Notes are carried out first, on each hand; what both moved is told once. Where the two sides differ,
    style and fullness are let into each hand before they are joined; a wish that names what only the joined
    draft has (`front-left`) is met there. A slit to walk in is settled by the hem as it comes out.
    """

    def once(chosen: Chosen) -> AsWished:
        return _wished(body, fabric, block, chosen, wishes, notes)

    return slit_settled(once(chosen), chosen, once)


def _wished(
    body: Body,
    fabric: Fabric | None,
    block: Block,
    chosen: Chosen,
    wishes: Sequence[GarmentWish],
    notes: Sequence[Note],
) -> AsWished:
    notes = [before_style(note, [w for w in wishes if isinstance(w, CutWish)]) for note in notes]
    noted = fitted_hands(body, fabric, block, chosen, notes)
    apart = any(isinstance(w, StyleWish) and w.hand for w in wishes)
    hands = noted.hands * 2 if apart and len(noted.hands) == 1 else noted.hands
    if len(hands) == 1:
        draft, misfits = altered(hands[0], wishes, fabric)
    else:
        made = {w.name for w in wishes if isinstance(w, CutWish)}
        first = [w for w in wishes if isinstance(w, StyleWish) or _let_in(w, hands[0], made)]
        early = on_one_pivot((hands[0], hands[1]), first, fabric)
        (left, misfits), (right, also) = (
            altered(hand, [w for w in early if not isinstance(w, StyleWish) or w.hand in ("", side)], fabric)
            for hand, side in zip(hands, HANDS, strict=True)
        )
        misfits = [*misfits, *(one for one in also if one[0] not in {place for place, _ in misfits})]
        late = [w for w in wishes if w not in first]
        why = STYLED_APART if len(noted.hands) == 1 else BODY_APART
        try:
            joined = both_hands(left, right, why)
        except DraftError as error:
            if not apart:
                raise
            alone = next(w for w in early if isinstance(w, StyleWish) and w.hand)
            return left, [*misfits, (alone.spot, _on_one_hand(error))], noted.done
        draft, more = altered(joined, late, fabric)
        misfits = [*misfits, *more]
    said = (*settled_middle(body), *draft.findings, *noted.findings)
    return replace(draft, findings=said), [*noted.misfits, *misfits], noted.done


def _on_one_hand(error: DraftError) -> DraftError:
    return DraftError(
        f"with this step on one hand alone {error.what}",
        value=error.value,
        turn="give it to both hands, or let the line end at an edge that is not the middle",
    )


def _let_in(wish: GarmentWish, hand: Draft, made: Collection[str]) -> bool:
    """Return whether a wish is for fullness of a piece that one hand has, or that style has made of one."""
    return isinstance(wish, FullnessWish) and (wish.piece in hand or wish.piece in made)
