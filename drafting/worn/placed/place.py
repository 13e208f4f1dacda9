"""Where the vertices of a sewn garment start."""

from __future__ import annotations

from functools import cached_property

import numpy as np
from scipy.sparse.linalg import spsolve

from drafting.draft.frame import BodyHeight, Limb
from drafting.draft.roles import PieceRole
from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals, SewnMesh, Truth
from drafting.worn.placed.across import lap_across
from drafting.worn.placed.angle import hand_of_each, round_the_body, stiffness
from drafting.worn.placed.carried import carried, lapel_turned
from drafting.worn.placed.feet import drawn_close, round_foot
from drafting.worn.placed.hood import drawn_up, goes_over_head
from drafting.worn.placed.limbs import Tube, round_arm, round_leg, tube, under_fork
from drafting.worn.placed.outside import lifted_over, pushed_out
from drafting.worn.placed.pulled import pulled_down
from drafting.worn.placed.ridge import shoulders_seated
from drafting.worn.placed.stated import hung_by, lost
from drafting.worn.placed.top_edge import top_edges
from drafting.worn.placed.trunk import Wraps

BLEND = 90.0
"""mm above and below the crotch over which two legs become one trunk (ours)."""

DROP = 8.0
"""mm: how far below the crotch a crotch seam starts (ours)."""

ARM_LEVEL, LEG_LEVEL = 0.0, -5.0
"""mm over the armpit, and the crotch: above, no tube is closed."""


def placed(mesh: SewnMesh, form: Form) -> Reals:
    """Return where the sewn vertices start, (count, 3) mm: outside the form, near where they will lie.

    Raises `DraftError` where a piece does not say where on the body it lies.
    """
    start = Starting(mesh, form)
    start.trunk()
    start.legs()
    start.feet()
    start.arms()
    start.laps()
    start.lapels()
    start.bands()
    start.hoods()
    return pushed_out(mesh, lifted_over(mesh, start.points, form), form.distance)


class Starting:
    """Starting points as they are found, part by part; a seam lies in the mean of its pieces."""

    def __init__(self, mesh: SewnMesh, form: Form) -> None:
        self.mesh, self.form = mesh, form
        self.body = Wraps(form)
        self.points = np.zeros((mesh.count, 3))
        self.known: Truth = np.zeros(mesh.count, dtype=bool)
        self.hand = hand_of_each(mesh)

    def members(self, limb: Limb, hand: str | None = None) -> list[int]:
        """Return the pieces round a limb that say themselves at which height they lie, but those of the feet."""
        pieces = enumerate(self.mesh.pieces)
        return [
            i
            for i, piece in pieces
            if piece.limb is limb
            and piece.frame.ahead is None
            and (piece.frame.heights or limb is Limb.HANGS)
            and (hand is None or piece.hand == hand)
        ]

    def put(self, flats: list[np.ndarray], points: list[Reals]) -> None:
        """Put flat vertices where they start; those of several pieces in the mean, also with what was known."""
        sums, counts = np.zeros((self.mesh.count, 3)), np.zeros(self.mesh.count)
        for flat, at in zip(flats, points, strict=True):
            np.add.at(sums, self.mesh.merged[flat], at)
            np.add.at(counts, self.mesh.merged[flat], 1.0)
        new = counts > 0
        mean = sums[new] / counts[new][:, None]
        both = self.known[new][:, None]
        self.points[new] = np.where(both, (self.points[new] + mean) / 2, mean)
        self.known |= new

    def trunk(self) -> None:
        """Put the pieces of the trunk at their heights, and hang from them what hangs."""
        mesh = self.mesh
        upright, hanging = self.members(Limb.TRUNK), self.members(Limb.HANGS)
        if not upright and not hanging:
            return
        both = np.isin(mesh.piece, [*upright, *hanging])
        z = self._heights(upright)
        low = np.nan_to_num(z, nan=0.0)[mesh.sewn].max(axis=1) < self.form.levels["waist"]
        way = shoulders_seated(mesh, self.form, self.body, z, round_the_body(mesh, both, low), self.hand)
        at = np.flatnonzero(~np.isnan(z))
        self.points[at] = self.body.around(z[at], way[at], self.hand[at])
        self.known[at] = True
        waist = self.form.levels["waist"]
        low = at[z[at] < waist]
        if hanging and len(low):
            self.points[low] = self.body.hanging(waist, waist - z[low], way[low], self.hand[low])
        self._hang(hanging, way, z)

    def _heights(self, upright: list[int]) -> Reals:
        """Return the height over the floor of each sewn vertex of the upright pieces, NaN for the others."""
        mesh, levels = self.mesh, self.form.levels
        own = {i: hung_by(mesh.pieces[i], levels) for i in upright}
        nape = [
            levels["nape"] - place.imag - own[i]
            for i in upright
            if (place := mesh.pieces[i].frame.at(BodyHeight.NAPE)) is not None
        ]
        moved = float(np.mean(nape)) if nape else 0.0
        sums, counts = np.zeros(mesh.count), np.zeros(mesh.count)
        for index in upright:
            flat = np.unique(mesh.triangles[mesh.piece == index])
            np.add.at(sums, mesh.merged[flat], mesh.flat[flat, 1] + own[index] + moved)
            np.add.at(counts, mesh.merged[flat], 1.0)
        with np.errstate(invalid="ignore"):
            found: Reals = sums / counts
        return pulled_down(mesh, self.form, upright, found)

    def _hang(self, hanging: list[int], way: Reals, z: Reals) -> None:
        """Hang pieces from their top edges, as far down as their cloth is long; then what hangs in those."""
        mesh, left = self.mesh, hanging
        while left:
            for index in (ready := [i for i in left if self._has_top(i, z)]):
                flat = np.unique(mesh.triangles[mesh.piece == index])
                height, gaps = self._below(index, flat, z)
                down = np.zeros(mesh.count)
                down[mesh.merged[flat]] = gaps
                at = np.unique(mesh.merged[flat])
                at = at[~self.known[at]]
                self.points[at] = self.body.hanging(height, down[at], way[at], self.hand[at])
                self.known[at] = True
            if not ready:
                raise lost(mesh.pieces[left[0]])
            left = [index for index in left if index not in ready]
            z = np.where(np.isnan(z) & self.known, self.points[:, 2], z)

    def _has_top(self, index: int, z: Reals) -> bool:
        """Say whether a piece states a height, or is sewn to something whose height is known."""
        own = np.unique(self.mesh.sewn[self.mesh.piece == index])
        return bool(self.mesh.pieces[index].frame.heights) or not np.isnan(z[own]).all()

    def _below(self, index: int, flat: np.ndarray, z: Reals) -> tuple[float, Reals]:
        """Return the height a piece hangs from, and how far below its top each flat vertex lies."""
        mesh, piece = self.mesh, self.mesh.pieces[index]
        spots = mesh.flat[flat]
        if piece.frame.heights:
            top, held = self.form.levels[piece.frame.heights[0][0].value], top_edges(mesh, index)
        else:
            held = flat[~np.isnan(z[mesh.merged[flat]])]
            held = held[z[mesh.merged[held]] > np.nanmax(z[mesh.merged[held]]) - TOP]
            top = float(z[mesh.merged[held]].mean())
        gaps = np.linalg.norm(spots[:, None] - mesh.flat[held][None], axis=2).min(axis=1)
        return top, gaps

    # ------------------------------------------------------------------------------------- limbs

    def legs(self) -> None:
        """Put each leg round its own axis, its upper part round the trunk, the crotch seam between."""
        mesh, form = self.mesh, self.form
        for hand in dict.fromkeys(mesh.pieces[i].hand for i in self.members(Limb.LEG)):
            members = self.members(Limb.LEG, hand)
            leg = tube(mesh, members, BodyHeight.CROTCH, LEG_LEVEL, form.levels)
            side = -1.0 if hand == "right" else 1.0
            back = tuple(_is_behind(mesh, index) for index in members)
            low = round_leg(leg, form.leg, form.levels["crotch"], side, back)
            way = self._seat(members, leg)
            points, seams = [], np.full((mesh.count, 3), np.nan)
            for flat, up, at, behind in zip(leg.vertices, leg.up, low, back, strict=True):
                merged = mesh.merged[flat]
                seat = self.body.around(form.levels["crotch"] + up, np.nan_to_num(way[merged]), self.hand[merged])
                points.append(np.where((up > 0.0)[:, None], seat, at))
                middle = np.isin(merged, mesh.back if behind else mesh.front) & (up < BLEND)
                seams[merged[middle]] = under_fork(mesh.flat[flat[middle], 0], up[middle], seat[middle], self.fork)
            self.put(list(leg.vertices), points)
            fixed = ~np.isnan(seams[:, 0])
            self.points[fixed] = seams[fixed]
            self._blend(members, leg, fixed)

    def feet(self) -> None:
        """Put what is drawn as foot and leg are seen from the side round both."""
        mesh = self.mesh
        shaped = [i for i, piece in enumerate(mesh.pieces) if piece.frame.ahead is not None]
        for hand in dict.fromkeys(mesh.pieces[i].hand for i in shaped):
            self.put(*round_foot(mesh, [i for i in shaped if mesh.pieces[i].hand == hand], self.form))
        if shaped:
            self.points = drawn_close(
                mesh, pushed_out(mesh, self.points, self.form.distance), shaped, self.form.distance
            )

    @cached_property
    def fork(self) -> Reals:
        """Where the inside legs and the crotch seam meet: under the trunk, between the legs."""
        return np.array([0.0, self.form.leg[0][1], self.form.levels["crotch"] - DROP])

    def _blend(self, members: list[int], leg: Tube, fixed: Truth) -> None:
        """Spread the vertices about the crotch evenly between trunk, legs and crotch seam."""
        mesh = self.mesh
        loose = np.zeros(mesh.count, dtype=bool)
        for flat, up in zip(leg.vertices, leg.up, strict=True):
            loose[mesh.merged[flat[np.abs(up) < BLEND]]] = True
        loose &= ~fixed
        chosen = np.isin(mesh.piece, members)
        pull = stiffness(mesh, chosen, np.zeros(len(chosen), dtype=bool))
        if loose.any():
            rest = ~loose & (pull.diagonal() > 0)
            self.points[loose] = spsolve(pull[loose][:, loose].tocsc(), -pull[loose][:, rest] @ self.points[rest])

    def _seat(self, members: list[int], leg: Tube) -> Reals:
        """Return the way round the trunk of the vertices above the crotch."""
        mesh = self.mesh
        above = np.zeros(mesh.count, dtype=bool)
        for flat, up in zip(leg.vertices, leg.up, strict=True):
            above[mesh.merged[flat[up > 0.0]]] = True
        chosen = np.isin(mesh.piece, members) & above[mesh.sewn].all(axis=1)
        return round_the_body(mesh, chosen, np.zeros(len(chosen), dtype=bool))

    def arms(self) -> None:
        """Put each sleeve round its arm; a cap meets its armhole half way."""
        mesh = self.mesh
        for hand in dict.fromkeys(mesh.pieces[i].hand for i in self.members(Limb.ARM)):
            members = self.members(Limb.ARM, hand)
            sleeve = tube(mesh, members, BodyHeight.ARMPIT, ARM_LEVEL, self.form.levels)
            side = -1.0 if hand == "right" else 1.0
            self.put(list(sleeve.vertices), round_arm(mesh, sleeve, self.form.arm_of(hand), side))

    # ------------------------------------------------------------------------- carried, turned over

    def bands(self) -> None:
        """Put what is carried by pieces that stand, as often as something more can be put."""
        mesh = self.mesh
        elbow, wrist = self.form.arm[1:]
        along = (wrist - elbow) / np.linalg.norm(wrist - elbow)
        left = [i for i, p in enumerate(mesh.pieces) if not (p.frame.heights or p.limb is Limb.HANGS)]
        while left:
            known = self.known.copy()
            done = []
            for index in left:
                side = -1.0 if mesh.pieces[index].hand == "right" else 1.0
                points = carried(mesh, index, self.points, known, along * [side, 1.0, 1.0])
                if points is not None:
                    done.append(index)
                    flat = np.unique(mesh.triangles[mesh.piece == index])
                    new = ~known[mesh.merged[flat]]
                    self.put([flat[new]], [points[new]])
            if not done:
                raise lost(mesh.pieces[left[0]])
            left = [index for index in left if index not in done]

    def laps(self) -> None:
        """Lay what laps over the middle in front straight across it."""
        for index in range(len(self.mesh.pieces)):
            lap, points = lap_across(self.mesh, index, self.points)
            self.points[lap] = points

    def hoods(self) -> None:
        """Draw hoods up over the head; their neck edges stay where they are."""
        mesh = self.mesh
        for index in range(len(mesh.pieces)):
            if goes_over_head(mesh, index):
                flat = np.unique(mesh.triangles[mesh.piece == index])
                points = drawn_up(mesh, index, self.form.surface.points, self.form.levels["nape"])
                hood = [piece.role is PieceRole.HOOD for piece in mesh.pieces]
                own = ~np.isin(mesh.merged[flat], mesh.sewn[~np.array(hood)[mesh.piece]])
                self.points[mesh.merged[flat[own]]] = points[own]

    def lapels(self) -> None:
        """Turn lapels over their roll lines."""
        for index, piece in enumerate(self.mesh.pieces):
            if piece.rolls and piece.frame.heights:
                flat, points = lapel_turned(self.mesh, index, self.points)
                self.points[self.mesh.merged[flat]] = points


TOP = 60.0
"""mm: what hangs does so from what lies no farther below its highest seam (ours)."""


def _is_behind(mesh: SewnMesh, index: int) -> bool:
    """Return whether more of a piece lies on the middle behind than on the one in front."""
    own = mesh.sewn[mesh.piece == index]
    return bool(np.isin(mesh.back, own).sum() > np.isin(mesh.front, own).sum())
