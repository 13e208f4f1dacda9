"""Seams that do not walk are found, with who is longer and by how much.

The troubles are those of makers' tutorials and question threads (common practice).
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from drafting.checks import check_draft, seams
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.walk import notched, walk
from drafting.geometry import Path, line, turn
from drafting.ground.findings import Finding
from tests.checks.figures import ADULT, CAP_EASE, NOTCH, sound, with_edge, with_seam


def errors(draft: Draft, check: str) -> list[Finding]:
    found = check_draft(draft, ADULT)
    return [f for f in found if f.level == "error" and f.check == check]


def sides(front: float, back: float, ease: float = 0.0) -> Draft:
    """Return two rectangles joined at their sides."""

    def box(name: str, height: float, other: bool = False) -> Piece:
        corners = (0j, 100 + 0j, 100 + height * 1j, height * 1j)
        path = Path.polygon(*corners).segments
        names = ("hem", "side", "top", "centre")
        kinds = (EdgeKind.HEM, EdgeKind.SEAM, EdgeKind.FREE, EdgeKind.FOLD)
        piece = Piece(name, tuple(Edge(n, Path((s,)), k) for n, s, k in zip(names, path, kinds, strict=True)))
        return piece.mirrored() if other else piece

    seam = Seam("side", (("front", "side"),), (("back", "side"),), ease)
    return Draft((box("front", front), box("back", back, True)), (seam,))


def test_se1_unequal_side_seams_are_flagged_with_the_longer_one_and_the_difference() -> None:
    (found,) = errors(sides(412, 404), "seam length")
    assert "front 412 mm, back 404 mm" in found.message
    assert "front is 8 mm too long" in found.message
    assert "tolerance 0.5 mm" in found.message
    assert not errors(sides(412, 404, ease=8), "seam length")


def test_se1_the_back_is_named_where_the_back_is_longer() -> None:
    (found,) = errors(sides(404, 412), "seam length")
    assert "back is 8 mm too long" in found.message


@pytest.mark.parametrize(("over", "holds"), [(0.4, True), (0.6, False), (-0.4, True), (-0.6, False)])
def test_k16_matched_seams_differ_by_stated_ease_only(over: float, holds: bool) -> None:
    # Common practice is 0.3 cm; ours is stricter: 0.5 mm.
    assert bool(errors(sides(400 + over, 400), "seam length")) is not holds


def shoulder_tip(front_angle: float, back_angle: float) -> Draft:
    """Return two pieces that meet at a shoulder 120 mm long with these angles at the armhole."""

    def piece(name: str, degrees: float, other: bool = False) -> Piece:
        tip, neck = 120 + 0j, 0j
        below = tip + 150 * turn(-180 + degrees) * -1 * -1
        corners = (below, tip, neck, below.conjugate().conjugate() - 120)
        path = Path.polygon(*corners).segments
        names = ("armhole", "shoulder", "rest", "under")
        kinds = (EdgeKind.FREE, EdgeKind.SEAM, EdgeKind.FREE, EdgeKind.FREE)
        whole = Piece(name, tuple(Edge(n, Path((s,)), k) for n, s, k in zip(names, path, kinds, strict=True)))
        return whole.mirrored() if other else whole

    seam = Seam("shoulder", (("front", "shoulder"),), (("back", "shoulder"),), end=None)
    return Draft((piece("front", front_angle), piece("back", back_angle, True)), (seam,))


def test_se3_a_shoulder_that_meets_the_armhole_at_97_and_96_degrees_is_flagged() -> None:
    (found,) = errors(shoulder_tip(97, 96), "joined corner")
    assert found.value == pytest.approx(193)
    assert "a dip of 13.0 degrees" in found.message


def test_se3_a_peak_is_called_a_peak_and_a_trued_shoulder_passes() -> None:
    (found,) = errors(shoulder_tip(85, 82), "joined corner")
    assert "a peak of 13.0 degrees" in found.message
    assert not errors(shoulder_tip(97, 83), "joined corner")
    assert not errors(shoulder_tip(97, 84.9), "joined corner")
    assert errors(shoulder_tip(97, 85.1), "joined corner")


def test_se3_underarm_neck_and_hem_are_looked_at_too() -> None:
    found = seams.corners_join(sound())
    assert {f.where for f in found} >= {
        "shoulder.start",
        "shoulder.end",
        "side.start",
        "side.end",
        "underarm.start",
    }


def dart_shoulder(back: float, dart: float, front: float) -> Draft:
    """Return a back shoulder with a dart in its middle, and a plain front shoulder."""
    half = (back - dart) / 2
    tip = complex(back / 2, -80)
    leg_a, leg_b = line(half + dart + 0j, tip), line(tip, half + 0j)
    back_piece = Piece(
        "back",
        (
            Edge("shoulder_armhole", line(back + 0j, half + dart + 0j)),
            Edge("shoulder_dart_a", leg_a, EdgeKind.DART),
            Edge("shoulder_dart_b", leg_b, EdgeKind.DART),
            Edge("shoulder_neck", line(half + 0j, 0j)),
            Edge("rest", line(0j, -300j, back - 300j, back + 0j), EdgeKind.FREE),
        ),
    )
    front_piece = Piece(
        "front",
        (
            Edge("shoulder", line(0j, -front + 0j)),
            Edge("rest", line(-front + 0j, -front - 300j, -300j, 0j), EdgeKind.FREE),
        ),
    )
    chain = (("back", "shoulder_armhole"), ("back", "shoulder_neck"))
    legs = (("back", "shoulder_dart_a"),), (("back", "shoulder_dart_b"),)
    return Draft(
        (back_piece, front_piece),
        (
            Seam("shoulder", chain, (("front", "shoulder"),), 3.0, None, None),
            Seam("shoulder_dart", *legs, start=None, end=None),
        ),
    )


def test_se4_and_i03_a_dart_is_no_seam_length() -> None:
    # Common practice: back 14.0 cm with a 1.5 cm dart on a front of 12.2 cm: 12.5 against 12.2, ease 0.3.
    draft = dart_shoulder(140, 15, 122)
    assert walk(draft, draft.seams[0]).a_sewn - walk(draft, draft.seams[0]).b_sewn == pytest.approx(3)
    assert not [f for f in check_draft(draft, ADULT) if f.level == "error"]
    said = next(f for f in seams.seams_match(draft) if f.where == "shoulder").message
    assert said == ("Shoulder seam: back 125 mm, front 122 mm, 3 mm of the back eased in as chosen")


def test_a_gathered_edge_is_compared_as_sewn_and_its_ratio_is_said() -> None:
    draft = sides(412, 404)
    side = replace(draft["front"]["side"], sewn=404.0)
    (found,) = seams.seams_match(with_edge(draft, "front", side))
    assert found.level == "ok"
    assert "gathered 1.02 to 1" in found.message


def test_no1_length_added_after_the_notches_were_placed_is_found() -> None:
    draft = sides(400, 400)
    draft = with_seam(draft, "side", notches=(SeamNotch("side", 180, 180),))
    marked = notched(draft)
    assert not errors(marked, "notch place")
    # 20 mm let in above the notch: the seam now says 200, the marks still stand at 180.
    longer = sides(420, 420)
    longer = with_seam(longer, "side", notches=(SeamNotch("side", 200, 200),))
    stale = longer.with_pieces(
        piece.with_edges(replace(piece["side"], notches=marked[piece.name]["side"].notches))
        for piece in longer.pieces
    )
    (found,) = errors(stale, "notch place")
    assert found.where == "front.side"
    assert "stands 180 mm along the front side, and its seam says 200 mm" in found.message
    assert not errors(notched(stale), "notch place")


def test_no1_a_notch_pair_that_misses_is_found_on_both_sides_of_it() -> None:
    draft = with_seam(sides(400, 400), "side", notches=(SeamNotch("side", 180, 182),))
    found = errors(notched(draft), "notches meet")
    assert len(found) == 2
    assert "they miss each other by 2 mm" in found[0].message


def test_no1_lengthening_at_the_hem_leaves_the_notch_where_it_was_from_the_underarm() -> None:
    def from_underarm(height: float) -> list[float]:
        at = height - 180
        draft = with_seam(sides(height, height), "side", notches=(SeamNotch("side", at, at),))
        marked = notched(draft)
        front, back = marked["front"]["side"], marked["back"]["side"]
        return [front.length - front.notches[0].at, back.notches[0].at]

    assert from_underarm(400) == pytest.approx([180, 180], abs=1)
    assert from_underarm(420) == pytest.approx([180, 180], abs=1)


def test_a_draft_notched_already_keeps_its_very_pieces() -> None:
    marked = notched(sound())
    assert marked["front"]["armhole"].notches
    pairs = zip(notched(marked).pieces, marked.pieces, strict=True)
    assert all(new is old for new, old in pairs)


def test_no2_front_single_back_double_and_both_as_far_from_the_underarm() -> None:
    draft = notched(sound())
    front, back = draft["front"]["armhole"], draft["back"]["armhole"]
    cap_front, cap_back = draft["sleeve"]["cap_front"], draft["sleeve"]["cap_back"]
    assert [e.notches[0].count for e in (front, cap_front, back, cap_back)] == [1, 1, 2, 2]
    reach = [
        front.notches[0].at,
        cap_front.length - cap_front.notches[0].at,
        back.length - back.notches[0].at,
        cap_back.notches[0].at,
    ]
    assert reach == pytest.approx([NOTCH] * 4, abs=1)


def test_no2_the_same_notch_count_front_and_back_is_an_error() -> None:
    draft = with_seam(sound(), "back_armhole", notches=(SeamNotch("back", NOTCH, NOTCH, 1),))
    found = errors(draft, "front and back notches")
    assert [f.where for f in found] == ["back_armhole"]
    assert "double" in found[0].message


def test_no2_ease_below_the_notch_is_found() -> None:
    moved = SeamNotch("back", NOTCH + CAP_EASE / 2, NOTCH, 2)
    draft = with_seam(sound(), "back_armhole", notches=(moved,))
    (found,) = errors(draft, "notches meet")
    assert "66 mm and 60 mm" in found.message


def test_a_notch_outside_its_seam_is_an_error() -> None:
    draft = with_seam(sides(400, 400), "side", notches=(SeamNotch("side", 420, 420),))
    assert errors(draft, "notch order")


def test_an_edge_sewn_to_nothing_and_one_sewn_twice_are_errors() -> None:
    draft = sides(400, 400)
    unsewn = errors(replace(draft, seams=()), "sewn once")
    assert {f.where for f in unsewn} == {"front.side", "back.side"}
    twice = replace(draft, seams=(*draft.seams, replace(draft.seams[0], name="again")))
    assert [f.value for f in errors(twice, "sewn once")] == [2.0, 2.0]


def test_a_pair_joined_to_its_own_mirror_image_is_sewn_once() -> None:
    draft = sides(400, 400)
    draft = replace(
        draft,
        seams=tuple(
            Seam(name, ((name, "side"),), ((name, "side"),), start="square", end="square")
            for name in ("front", "back")
        ),
    )
    assert [f for f in check_draft(notched(draft), ADULT) if f.level != "ok"] == []


def test_a_seam_that_names_no_edge_is_said_and_stops_nothing() -> None:
    draft = with_seam(sides(400, 400), "side", b=(("back", "sied"),))
    (found,) = errors(draft, "seam names")
    assert "there is no back sied" in found.message


def test_a_slanted_hem_is_found_at_the_side_seam() -> None:
    draft = sides(400, 400)
    piece = draft["front"]
    hem = line(0j, 100 - 100 * math.tan(math.radians(5)) * 1j)
    slanted = replace(
        piece,
        edges=(
            replace(piece["hem"], path=hem),
            replace(piece["side"], path=line(hem.end, 100 + 400j)),
            *piece.edges[2:],
        ),
    )
    (found,) = errors(draft.with_pieces([slanted]), "joined corner")
    assert found.where == "side.start"
    assert found.value == pytest.approx(175)
