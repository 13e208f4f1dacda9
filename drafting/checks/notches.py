"""Do facing notches meet, stand where their seams say, and tell front from back? Has every long seam some?"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from drafting.checks.seams import sound_seams
from drafting.checks.words import edge_words, mm, plain, seam_words, verdict
from drafting.draft.balance import LONG, wants_notch
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole, Half, NotchKind
from drafting.draft.walk import Walk, marked, walk
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.lengths import told


def notches_meet(draft: Draft) -> Iterator[Finding]:
    """Do facing notches lie equally far apart on both chains wherever nothing is eased in?"""
    for seam in sound_seams(draft):
        if not seam.notches:
            continue
        walked = walk(draft, seam)
        names = ["start", *(n.name for n in seam.notches), "end"]
        places = [0.0, *(n.a for n in seam.notches), walked.a_length]
        for i, (a, b) in enumerate(walked.spans):
            between = f"{plain(names[i])} to {plain(names[i + 1])}"
            if min(a, b) < 0:
                said = f"{seam_words(seam)}: {between} runs backwards; a notch lies outside its seam"
                yield Finding("notch order", "error", seam.name, min(a, b), 0.0, said)
            elif not _is_eased(walked, places[i], places[i + 1]):
                holds = abs(a - b) <= tol.NOTCH_MATCH
                end = "they meet" if holds else f"they miss each other by {mm(abs(a - b))}"
                said = f"{seam_words(seam)}: {between} {mm(a)} and {mm(b)}, {end}"
                yield verdict("notches meet", holds, seam.name, a, b, said)


def _is_eased(walked: Walk, start: float, end: float) -> bool:
    """Return whether ease or gathers are meant to lie between two places on chain a."""
    seam = walked.seam
    if seam.eased is None:
        return bool(seam.ease) or walked.gather_ratio is not None
    return seam.eased[0] <= (start + end) / 2 <= seam.eased[1]


def notches_tell_front_from_back(draft: Draft) -> Iterator[Finding]:
    """Are front cap notches single and back ones double, so that no sleeve goes in wrong?"""
    for seam in sound_seams(draft):
        halves = {e.half for e in map(draft.edge, (*seam.a, *seam.b)) if e.role is EdgeRole.CAP}
        for half, count in ((Half.FRONT, 1), (Half.BACK, 2)):
            wrong = [n for n in seam.notches if n.count != count and n.kind is not NotchKind.CROWN]
            if half in halves and wrong:
                said = (
                    f"{seam_words(seam)}: front notches are single and back notches double, "
                    f"but {plain(wrong[0].name)} has {wrong[0].count} strokes"
                )
                yield verdict("front and back notches", False, seam.name, wrong[0].count, count, said)


def notches_in_place(draft: Draft) -> Iterator[Finding]:
    """Do the notches marked on the edges still stand where the seams say?"""
    sound = [seam for seam in sound_seams(draft) if seam.notches]
    fresh = marked(Draft(draft.pieces, tuple(sound)))
    for piece_name, edge_name in sorted({r for seam in sound for r in (*seam.a, *seam.b)}):
        now, then = draft.edge((piece_name, edge_name)), fresh.edge((piece_name, edge_name))
        right = {notch.name: notch.at for notch in then.notches}
        drawn = {notch.name: notch.at for notch in now.notches}
        for name in [n for n in right if abs(drawn.get(n, 1e9) - right[n]) > tol.EXACT]:
            at = f"stands {mm(drawn[name])} along" if name in drawn else "is missing from"
            said = (
                f"Notch {plain(name)} {at} the {edge_words((piece_name, edge_name))}, and its seam "
                f"says {mm(right[name])}: a length changed after the notches were placed"
            )
            where = f"{piece_name}.{edge_name}"
            yield Finding("notch place", "error", where, drawn.get(name), right[name], said)


def long_seams_notched(draft: Draft) -> Iterator[Finding]:
    """Does every long seam carry a notch, marked on both of its edges?"""
    for seam in sound_seams(draft):
        if not wants_notch(draft, seam):
            continue
        sides = _marks(draft, seam.a), _marks(draft, seam.b)
        few = min(sides, key=len)
        said = f"{seam_words(seam)}: {len(few)} {'notch' if len(few) == 1 else 'notches'} on its edges"
        if not few:
            chain = seam.a if few is sides[0] else seam.b
            said = (
                f"{seam_words(seam)} is {mm(walk(draft, seam).a_length)} long and has no notch on "
                f"{' and '.join(map(edge_words, chain))}: over {told(LONG)} the cloth shifts unseen"
            )
        yield verdict("notches on long seams", bool(few), seam.name, len(few), 1, said)


def _marks(draft: Draft, chain: tuple[EdgeRef, ...]) -> list[str]:
    """Return the names of the notches along a chain."""
    return [n.name for ref in chain for n in draft.edge(ref).notches]


def notches_apart(draft: Draft) -> Iterator[Finding]:
    """Does every edge have each of its notches in a place of its own?"""
    for piece in draft.pieces:
        for edge in piece.edges:
            notches = sorted(edge.notches, key=lambda n: n.at)
            for one, two in itertools.pairwise(notches):
                if two.at - one.at < tol.ONE_NOTCH:
                    where = f"{piece.name}.{edge.name}"
                    said = (
                        f"{edge_words((piece.name, edge.name))}: the notches {plain(one.name)} and "
                        f"{plain(two.name)} stand {mm(two.at - one.at)} apart and would be cut as one"
                    )
                    yield Finding("notches apart", "error", where, two.at - one.at, tol.ONE_NOTCH, said)
