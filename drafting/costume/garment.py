"""One garment: choose, draft its parts, finish, then check.

`draft_garment` is the short way for notebooks and tests; `costume.make.make` does the same from files.
What is checked is what stands: a picture may be shown of a garment before it is `checked`.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.body.body import SIDES
from drafting.body.sides import differing_measures, one_side, settled_middle
from drafting.checks import check_all
from drafting.checks.ease import ease_enough
from drafting.checks.shading import panels_shade
from drafting.checks.treatments import cloth_cannot_take
from drafting.costume.agreed import agreed_choices
from drafting.costume.choices import Chosen, block_named, choose, growing_height
from drafting.costume.put_together import left_open, refuse_unread_girths, sewn_up
from drafting.costume.wishes import GarmentWish, Misfit, altered, on_each_hand
from drafting.draft.chain import Chain, chain
from drafting.draft.draft import Draft
from drafting.draft.pattern import Pattern
from drafting.draft.two_sides import alike, both_hands
from drafting.draft.walk import notched
from drafting.fabric import Fabric
from drafting.finish import finish
from drafting.finish.hems import turned_up
from drafting.finish.unwashed import enlarged
from drafting.fitting.applied import fitted
from drafting.fitting.note import Done, Note, NoteSide
from drafting.ground.errors import DraftError, InputError
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.ground.scale import allowance_scale, body_scale
from drafting.reading.fullness import FullnessWish
from drafting.reading.given import Given, Origin
from drafting.reading.trimming import AppliqueWish, TrimWish

ROUNDS = 3
"""How often both hands are drafted again for one value of a choice: a yoke first, then how deep it is (ours)."""

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
    chosen = choose(kind, given, body_scale(body), Origin(), growing_height(body, fabric))
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
    fullness: tuple[FullnessWish, ...] = (),
    trims: tuple[TrimWish, ...] = (),
    appliques: tuple[AppliqueWish, ...] = (),
    cloths: Mapping[str, Fabric] = NO_CLOTHS,
    notes: tuple[Note, ...] = (),
) -> MadeGarment:
    """Return the garment drafted and finished, not yet checked; raises `DraftError`.

    `cloths` are those of linings and interfacings by their roles, `notes` what fittings ask of the line.
    An `InputError` names every wish that cannot be had, where it stands in its file.
    """
    start = time.perf_counter()
    draft, misfits, done = wished(body, fabric, block, chosen, (*fullness, *appliques, *trims), notes)
    if misfits:
        raise InputError([spot.fault(error.sentence) for spot, error in misfits])
    trims = tuple(one for trim in trims for one in on_each_hand(draft, trim))
    draft = turned_up(notched(draft), fabric, chosen.finish, allowance_scale(body_scale(body)))
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
        *cloth_cannot_take(made.draft, fabric, typed),
        *panels_shade(made.draft, fabric),
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
) -> tuple[Draft, list[Misfit], tuple[Done, ...]]:
    """Return the draft with what is noted and wished of it, each wish it cannot have, what notes moved.

    Notes are carried out first, on each hand. Where the two sides differ, fullness is let into each hand
    before they are joined; a wish that names what only the joined draft has (`front-left`) is met there.
    """
    hands, done, said = _fitted_hands(_hands(body, fabric, block, chosen), notes, body, fabric)
    if len(hands) == 1:
        draft, misfits = altered(hands[0], wishes, fabric)
    else:
        early = [w for w in wishes if isinstance(w, FullnessWish) and w.piece in hands[0]]
        (left, misfits), (right, _) = (altered(hand, early, fabric) for hand in hands)
        late = [w for w in wishes if w not in early]
        draft, more = altered(both_hands(left, right), late, fabric)
        misfits = [*misfits, *more]
    return replace(draft, findings=(*settled_middle(body), *draft.findings, *said)), misfits, done


def _fitted_hands(
    hands: list[Draft], notes: Sequence[Note], body: Body, fabric: Fabric | None
) -> tuple[list[Draft], tuple[Done, ...], tuple[Finding, ...]]:
    """Return the hands with their notes carried out, one for both where they still are alike.

    What each note moved is told once where both hands have it.
    """
    if not notes:
        return hands, (), ()
    apart = len(hands) > 1 or any(note.side != NoteSide.BOTH for note in notes)
    sides = SIDES if apart else SIDES[:1]
    each = [
        fitted(
            hand,
            [note for note in notes if note.side in (NoteSide.BOTH, side)],
            one_side(body, side) if apart else body,
            fabric,
        )
        for side, hand in zip(sides, (hands[0], hands[-1]), strict=False)
    ]
    drafts = [one.draft for one in each]
    if len(drafts) > 1 and alike(*drafts):
        drafts = drafts[:1]
    done = dict.fromkeys(one for hand in each for one in hand.done)
    return drafts, tuple(done), tuple(dict.fromkeys(one for hand in each for one in hand.findings))


def _hands(body: Body, fabric: Fabric | None, block: Block, chosen: Chosen) -> list[Draft]:
    """Return the draft of both hands, or one for each where they come out different."""
    if not differing_measures(body):
        return [_one_hand(body, fabric, block, chosen)]
    left, right = (_one_hand(one_side(body, side), fabric, block, chosen) for side in SIDES)
    if alike(left, right):
        return [_one_hand(body, fabric, block, chosen)]
    for _ in range(ROUNDS):
        agreed = agreed_choices(chosen, left, right)
        if agreed is chosen:
            break
        chosen = agreed
        left, right = (_one_hand(one_side(body, side), fabric, block, chosen) for side in SIDES)
    return [left, right]


def _one_hand(body: Body, fabric: Fabric | None, block: Block, chosen: Chosen) -> Draft:
    """Return the parts of a garment drafted in order, each handed the chains it needs."""
    draft = Draft()
    for name, choices in chosen.parts.items():
        part = all_blocks()[name]
        lost = [needed for needed in part.needs if needed not in draft.chains]
        if lost or part.draft is None:
            wanted = " and ".join(needed.replace("_", " ") for needed in lost)
            raise DraftError(
                f"the block {name} cannot be drafted here: it has to fit the {wanted}",
                turn="take a block of a whole garment that has both, for example shirt",
            )
        if part.alters and not draft.pieces:
            raise DraftError(
                f"the block {name} changes a garment, and makes none by itself",
                turn="take a block of a whole garment, for example shirt",
            )
        chains = {needed: chain(draft, needed) for needed in part.needs}
        if part.alters:
            draft = part.draft(draft, body, fabric, choices, **chains)
        else:
            values = tuple(vars(choices).items())
            asked = _Part(name, part.draft, fabric, values, tuple(chains.values()), choices)
            draft += _part(body, asked)
    refuse_unread_girths(draft)
    return left_open(sewn_up(draft))


@dataclass(frozen=True)
class _Part:
    """What a part is drafted from beside the body, as the key under which the answer is kept.

    Choices with other defaults are of another class: they are told apart by their `values` alone.
    """

    name: str
    draft: Callable[..., Draft]
    fabric: Fabric | None
    values: tuple[tuple[str, Any], ...]
    chains: tuple[Chain, ...]
    choices: Any = field(compare=False)

    def __hash__(self) -> int:
        return hash((self.name, self.values))


@remembered(32)
def _part(body: Body, asked: _Part) -> Draft:
    """Return one part; a slider moves the choices of few parts and leaves the others as they were."""
    needs = all_blocks()[asked.name].needs
    chains = dict(zip(needs, asked.chains, strict=True))
    return asked.draft(body, asked.fabric, asked.choices, **chains)
