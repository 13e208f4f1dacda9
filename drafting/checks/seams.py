"""Do the seams walk? Lengths, joined corners, and each edge in one seam."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from drafting.checks.words import capital, chain_words, degrees, edge_words, mm, seam_words, verdict
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.walk import Walk, walk
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding

SEWN = (EdgeKind.SEAM, EdgeKind.DART)


def seams_name_edges(draft: Draft) -> Iterator[Finding]:
    """Does every seam join edges that the pieces have?"""
    for seam in draft.seams:
        lost = [edge_words(ref) for ref in (*seam.a, *seam.b) if not _stands(draft, ref)]
        if lost or not seam.a or not seam.b:
            said = f"{seam_words(seam)}: there is no {', no '.join(lost) or 'edge on one side'}"
            yield Finding("seam names", "error", seam.name, ", ".join(lost), None, said)


def sewn_to_another(draft: Draft) -> Iterator[Finding]:
    """Is no edge of a piece that stands on one side only sewn to itself?

    What is cut twice is sewn to its other layer, and what lies on the fold to its other half.
    """
    for seam in sound_seams(draft):
        for ref in sorted(set(seam.a) & set(seam.b)):
            piece = draft[ref[0]]
            if piece.hand and piece.copies == 1 and piece.fold_edge is None:
                said = f"{seam_words(seam)}: {edge_words(ref)} is joined to itself, left has to meet right"
                yield Finding("left to right", "error", seam.name, edge_words(ref), None, said)


def edges_sewn_once(draft: Draft) -> Iterator[Finding]:
    """Does every edge of kind seam or dart stand in exactly one seam, on each hand of a pair?

    A lining's dart is sewn as that of the piece it lines, and stands in no seam of its own.
    """
    uses = _uses(draft)
    for piece in draft.pieces:
        for edge in piece.edges:
            times = uses[piece.name, edge.name]
            as_shell = edge.kind is EdgeKind.DART and any(uses[name, edge.name] == 1 for name in piece.lines)
            if edge.kind in SEWN and times != 1 and not (times == 0 and as_shell):
                where, name = f"{piece.name}.{edge.name}", edge_words((piece.name, edge.name))
                said = (
                    f"{capital(name)} is sewn to nothing"
                    if times == 0
                    else (f"{capital(name)} stands in {times} seams, one edge can be sewn only once")
                )
                yield Finding("sewn once", "error", where, float(times), 1.0, said)


def _uses(draft: Draft) -> Counter[EdgeRef]:
    """Count the seams of every edge; one of a pair may meet a left piece and a right one, once each."""
    uses: dict[str, Counter[EdgeRef]] = {"left": Counter(), "right": Counter()}
    for seam in draft.seams:
        refs = {*seam.a, *seam.b}
        hands = {draft[p].hand for p, _ in refs if p in draft} - {""}
        for side in uses if len(hands) != 1 else hands:
            uses[side].update(refs)
    return uses["left"] | uses["right"]


def seams_match(draft: Draft) -> Iterator[Finding]:
    """Is chain a as long as chain b plus the declared ease, darts closed and gathers pulled up?"""
    for seam in sound_seams(draft):
        walked = walk(draft, seam)
        holds = abs(walked.difference) <= tol.SEAM_MATCH
        found = walked.a_sewn - walked.b_sewn
        yield verdict("seam length", holds, seam.name, found, seam.ease, _lengths_said(walked, holds))


def _lengths_said(walked: Walk, holds: bool) -> str:
    seam, over = walked.seam, walked.difference
    a, b = chain_words(seam.a, seam.b), chain_words(seam.b, seam.a)
    sizes = f"{seam_words(seam)}: {a} {mm(walked.a_sewn)}, {b} {mm(walked.b_sewn)}"
    if walked.gather_ratio is not None:
        sizes += f", gathered {walked.gather_ratio:.2f} to 1"
    ease = mm(abs(seam.ease))
    eased = f"{ease} of the {a if seam.ease > 0 else b} eased in as chosen" if seam.ease else ""
    if holds:
        return f"{sizes}, {eased or 'they match'}"
    longer = a if over > 0 else b
    beside = f" beside {eased}" if eased else " and no ease is declared"
    return (
        f"{sizes}: {longer} is {mm(abs(over))} too long{beside} (tolerance {mm(tol.SEAM_MATCH)}); "
        "true the seam or declare the difference as ease"
    )


def corners_join(draft: Draft) -> Iterator[Finding]:
    """Do joined corners run on smoothly (180), and centre lines stand square (90)?"""
    for seam in sound_seams(draft):
        ends = zip(("start", "end"), (seam.start, seam.end), walk(draft, seam).angles, strict=True)
        for end, corner, angle in ends:
            if corner is None or angle is None:
                continue
            smooth = corner == "smooth"
            wanted, within = (180.0, tol.JOIN_ANGLE) if smooth else (90.0, tol.SQUARE_ANGLE)
            off = angle - wanted
            where = f"{seam.name}.{end}"
            refs = [seam.a[0], seam.b[0]] if end == "start" else [seam.a[-1], seam.b[-1]]
            who = " and ".join(dict.fromkeys(map(edge_words, refs if smooth else refs[:1])))
            said = f"{seam_words(seam)}, {end}: {who} make {degrees(angle)}"
            if abs(off) <= within:
                yield verdict("joined corner", True, where, angle, wanted, said)
            else:
                shape = "a dip" if off > 0 else "a peak"
                tail = f"{shape} of {degrees(abs(off))}; {wanted:.0f} is wanted within {within:.0f}"
                yield verdict("joined corner", False, where, angle, wanted, f"{said}, {tail}")


def sound_seams(draft: Draft) -> list[Seam]:
    """Return the seams whose edges all exist (the others are `seams_name_edges`' to report)."""
    return [
        seam
        for seam in draft.seams
        if seam.a and seam.b and all(_stands(draft, ref) for ref in (*seam.a, *seam.b))
    ]


def _stands(draft: Draft, ref: EdgeRef) -> bool:
    return ref[0] in draft and ref[1] in draft[ref[0]]
