"""The torso below the bust: side seam, waist darts and lower edge, to the waist or to the hip.

Waist length: the waist meets the centre line, each dart leg and the side seam at right angles, so
the closed waist runs on smoothly; each side edge's lean is solved so that the stitched waist is exact.
Hip length: a curved side profile, upright at the hip; darts become diamonds. The front's side edge is
drawn as long as the back's. A waist larger than the bust is normal: no front dart, and under a belly
the front is let out: first by its bust dart, as much of it as is needed turned to the waist about the bust
point (common practice), so that the armhole knows nothing of it; then by its side edge, which leans outwards.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from drafting.draft.piece import InnerDart
from drafting.geometry import Path, curve_through, line, smooth, turn
from drafting.geometry.brent import brent_zero
from drafting.geometry.heights import x_at
from drafting.geometry.solve import root_near
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.torso.bust import bust_opening
from drafting.shaping.torso.diamonds import diamond_darts
from drafting.shaping.torso.plan import TorsoPlan
from drafting.shaping.torso.waist_shares import Share, waist_shares

FLAREST_SIDE = 45.0
"""degrees: a side seam that leans more than this is no side seam (ours; a large belly needs 26)."""

TRUED_OVER = 60.0
"""mm at adult scale: the stretch over which the waist turns to meet a seam or leg squarely."""

BACK_DIAMOND, FRONT_DIAMOND = 0.68, 0.50
"""How far the diamonds reach from waist to hip (ours)."""

SIDE_STARTS = 0.25
MOST_START = 5.0
"""The side seam to the hip starts off its chord by this share of its turn at the waist, against it,
and by at most so many degrees: so it bends one way from underarm to waist (ours)."""


UNSETTLED = 0.05
"""mm: a lower edge that is still so far off what it should be will not settle; the measures are refused."""

WIDENED = 8
"""How often the search for the side seam's start is widened before the measures are refused."""


@dataclass(frozen=True)
class HalfBottom:
    """One half's lower edge from centre to side: one path, or two with an open waist dart between.

    `tip` is that dart's tip; `inners` diamond darts instead, the one nearest the centre first; `waist` the
    waist's level line. `side` runs from underarm to lower edge, x as an offset from the half's own width at the
    bust line; `lean` is its lean at the underarm, degrees, inwards; `let` how much of the bust dart is turned to
    the waist, degrees; `hung` what it is wider at the hip than asked, mm.
    """

    hem: tuple[Path, ...]
    waist: tuple[Path, ...]
    side: Path
    lean: float
    tip: complex = 0j
    inners: tuple[InnerDart, ...] = ()
    let: float = 0.0
    hung: float = 0.0

    @property
    def inner(self) -> InnerDart | None:
        return self.inners[0] if self.inners else None

    @property
    def length(self) -> float:
        return sum(path.length for path in self.hem)


@dataclass(frozen=True)
class Bottom:
    """Back and front below the bust; their side edges are equally long.

    `hung` is what both halves are wider at the hip than asked, mm: a side hangs straight under a belly.
    """

    back: HalfBottom
    front: HalfBottom

    @property
    def hung(self) -> float:
        return self.back.hung + self.front.hung


@dataclass(frozen=True)
class _Half:
    """What one half is drawn from: its width at the bust line, its share at waist and hip, the upper tip
    of its dart and how far down from waist to hip a diamond dart reaches; whether a wide one `parts` in several.
    What lies beyond `pivot` turns outwards about it by `let` degrees."""

    width: float
    share: Share
    tip: complex
    reach: float
    pivot: complex = 0j
    let: float = 0.0
    parts: bool = False

    def turned(self, p: complex) -> complex:
        return self.pivot + (p - self.pivot) * turn(self.let)

    def side(self, path: Path) -> Path:
        """Return a side edge (x from the half's own width) as it lies turned."""
        return path.turned(self.pivot - self.width, turn(self.let))


def draw_bottom(plan: TorsoPlan, bust: float, to_hip: bool, tip_at_point: bool) -> Bottom:
    """Return the torso below the bust line; the stitched girth there is exact within 0.001 mm.

    `tip_at_point` lets the front waist dart run up to the bust point, as a panel seam wants it.
    """
    back, front = waist_shares(plan, bust)
    short = 0.0 if tip_at_point else plan.dart_short
    behind = _Half(plan.back, back, complex(0.48 * plan.back, plan.bust_line), BACK_DIAMOND, parts=True)
    draw = _to_hip if to_hip else _to_waist
    first = draw(plan, behind, None)
    long = first.side.length
    before = _Half(plan.front, front, plan.bust_point - 1j * short, FRONT_DIAMOND, plan.bust_point)
    foot = plan.waist if to_hip else plan.underarm - long
    return Bottom(first, draw(plan, replace(before, let=_let_out(plan, before, foot, bust)), long))


def _let_out(plan: TorsoPlan, half: _Half, foot: float, bust: float) -> float:
    """Return how far the bust dart is turned to the waist for a belly, degrees; `foot` is the y of the
    upright side's end at the waist. What would leave a sliver of a dart is all turned."""
    wanted = half.width - half.share.side
    if half.share.side >= 0 or plan.kappa == 0:
        return 0.0

    def over(let: float) -> float:
        return _waist_line(plan, replace(half, let=let), complex(half.width, foot)).length - wanted

    if over(plan.kappa) <= 0:
        return plan.kappa
    let = float(brent_zero(over, 0.0, plan.kappa, within=1e-9))
    return let if bust_opening(bust, plan.kappa - let) >= tol.LEAST_DART * plan.scale else plan.kappa


def _waist_line(plan: TorsoPlan, half: _Half, side: complex) -> Path:
    """Return the waist of a half that is let out, from the centre to `side`, which lies as if it were not."""
    return _run(complex(0, plan.waist), half.turned(side), 1 + 0j, turn(half.let))


def _too_far_apart(plan: TorsoPlan, reach: str) -> DraftError:
    return DraftError(
        "bust and waist are too far apart for the height between them",
        value=f"a half bust of {told(plan.half)}, a half waist of {told(plan.waist_half)}",
        reach=reach,
        turn="choose other bust or waist ease, or check both girths and the back waist length",
    )


# ------------------------------------------------------------------------------ to the waist


def _to_waist(plan: TorsoPlan, half: _Half, long: float | None) -> HalfBottom:
    """Return one half to the waist, its side edge `long` mm long (None: as the waist's level asks)."""
    wanted = half.width - half.share.dart - half.share.side
    side = 0.0 if half.let else half.share.side
    for _ in range(30):  # converges by about a factor of ten a step
        slope = side / (plan.bust_line - plan.waist)
        if abs(math.degrees(math.atan(slope))) > FLAREST_SIDE:
            break
        drawn = _half_waist(plan, half, slope, long)
        miss = drawn.length - wanted
        if abs(miss) < 1e-4:
            if min(path.length for path in drawn.hem) < tol.LEAST_EDGE * plan.scale + 0.1:
                raise _too_far_apart(plan, "waist darts that leave some waist beside them")
            return drawn
        side += miss
    raise _too_far_apart(plan, f"a side seam that leans up to {FLAREST_SIDE:.0f} degrees")


def _half_waist(plan: TorsoPlan, half: _Half, slope: float, long: float | None) -> HalfBottom:
    level, tip, dart = complex(0, plan.waist), half.tip, half.share.dart
    reach = TRUED_OVER * plan.scale
    under = complex(slope * (plan.underarm - plan.bust_line), plan.underarm)
    lean = math.atan(slope)
    y = plan.waist - slope * reach / 2 if long is None else plan.underarm - long * math.cos(lean)
    end = complex(-slope * (plan.bust_line - y), y)
    side, at_side = half.turned(half.width + end), turn(half.let - math.degrees(lean))
    seam, leans = half.side(line(under, end)), math.degrees(lean) - half.let
    if dart <= 0:
        whole = (_run(level, side, 1 + 0j, at_side),)
        return HalfBottom(whole, whole, seam, leans, let=half.let)
    height, fall, leg = tip.imag - plan.waist, 0.0, 0.0
    for _ in range(6):  # the mouth is lowered as the leg leans; settles at once
        leg = math.atan(dart / 2 / (height + fall))
        fall = math.tan(leg) * min(reach, 0.8 * (tip.real - dart / 2)) / 2
    mouth = complex(tip.real, plan.waist - fall)
    down, up = turn(-math.degrees(leg)), turn(math.degrees(leg))
    hem = (_run(level, mouth - dart / 2, 1 + 0j, down), _run(mouth + dart / 2, side, up, at_side))
    return HalfBottom(hem, hem, seam, leans, tip)


def _run(a: complex, b: complex, leave: complex, arrive: complex) -> Path:
    return Path((smooth(a, b, leave, arrive),))


# -------------------------------------------------------------------------------- to the hip


def _to_hip(plan: TorsoPlan, half: _Half, long: float | None) -> HalfBottom:
    """Return one half to the hip, its side edge `long` mm long (None: as the hip's level asks)."""
    waist, hip = _at_waist(plan, half)
    up, wider = 0.0, 0.0
    for _ in range(20):  # the hem is raised or lowered at the side, nearly one for one
        seam, lean = _profile(plan, half, waist.end, complex(half.width + hip + wider, plan.hip + up))
        low, end = complex(0, plan.hip), half.width + seam.end
        hem = line(low, end) if abs(up) < 1e-6 else _run(low, end, 1 + 0j, 1 + 0j)
        miss = seam.length - long if long is not None else 0.0
        over = hem.length - half.width - hip
        if max(abs(miss), abs(over)) < 1e-6 or abs(up) > plan.waist - plan.hip:
            break
        up, wider = up + miss, wider - over
    if max(abs(miss), abs(over)) > UNSETTLED:
        raise _too_far_apart(plan, "a side seam whose two edges can be made equally long")
    hung = hip - half.share.hip + half.share.hung
    if half.share.dart <= 0:
        return HalfBottom((hem,), (waist,), seam, lean, let=half.let, hung=hung)
    foot = plan.waist - half.reach * (plan.waist - plan.hip)
    inners = diamond_darts(plan, half.tip, half.share.dart, foot, waist.end.real, several=half.parts)
    legs = [leg.segments[0].end for dart in inners for leg in (dart.leg_a, dart.leg_b)]
    ends = [waist.start, *legs, waist.end]
    level = tuple(line(a, b) for a, b in zip(ends[::2], ends[1::2], strict=True))
    return HalfBottom((hem,), level, seam, lean, half.tip, inners, hung=hung)


def _at_waist(plan: TorsoPlan, half: _Half) -> tuple[Path, float]:
    """Return a half's waist from the centre to its side, and how much wider than the bust its hip is."""
    share, centre = half.share, complex(0, plan.waist)
    if not half.let:
        return line(centre, complex(half.width - share.side, plan.waist)), share.hip
    side = 0.0
    for _ in range(30):
        waist = _waist_line(plan, half, complex(half.width - side, plan.waist))
        miss = waist.length - half.width + share.side
        if abs(miss) < 1e-7:
            break
        side += miss
    return waist, max(share.hip - share.hung, waist.end.real - half.width)


def _profile(plan: TorsoPlan, half: _Half, waist: complex, hip: complex) -> tuple[Path, float]:
    """Return the side profile underarm - waist - hip that passes the half's width at the bust line, and
    its lean; x from that width. All as it lies once `half` is turned."""
    back = replace(half, let=-half.let)
    waist, hip = back.turned(waist) - half.width, back.turned(hip) - half.width
    down = -1j * turn(-half.let)

    def drawn(x: float) -> Path:
        start = complex(x, plan.underarm)
        bend = math.degrees(cmath.phase((hip - waist) / (waist - start)))
        off = max(-MOST_START, min(MOST_START, SIDE_STARTS * bend))
        return curve_through(start, waist, hip, (waist - start) * turn(-off), down)

    def off(x: float) -> float:
        return x_at(drawn(x).segments[0].as_cubic(), plan.bust_line)

    drop = plan.underarm - plan.bust_line
    near = -waist.real / (plan.bust_line - plan.waist) * drop
    spread = 0.6 * drop + 1.0
    start = root_near(off, near, (near - spread, near + spread), 1e-9)
    if start is None:
        for _ in range(WIDENED):
            if off(near - spread) * off(near + spread) <= 0:
                break
            spread *= 1.7
        else:
            raise _too_far_apart(plan, "a side seam that bends one way from underarm to waist")
        start = float(brent_zero(off, near - spread, near + spread, within=1e-9))
    path = drawn(start)
    return half.side(path), -math.degrees(cmath.phase(path.leave / -1j)) - half.let
