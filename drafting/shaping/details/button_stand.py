"""A button stand and facing grown on, or sewn to, a centre front that opens. Half frame, mm.

The centre front stays on x = 0; beyond it lies the stand, `stand` wide, with the front edge on
x = -stand. A cut-on facing is the front's own mirror image beyond that edge, as far as it is wide; a
separate one the same shape as a strip, with a seam where the fold would be.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.brent import brent_zero
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.details.small_pieces import reflection_at

MOST_OF_NECK = 0.8
"""Share of the last neck edge, and of the first hem edge, that a facing may reach along (ours)."""


@dataclass(frozen=True)
class FrontLines:
    """What a front edge is built on: the `neck` down to the centre, the `hem` away from it.

    Both are the whole edges that end at the centre line.
    """

    neck: Path
    hem: Path

    @property
    def top(self) -> complex:
        return self.neck.end

    @property
    def low(self) -> complex:
        return self.hem.start

    def reach(self) -> float:
        """Return how far from the centre a facing can follow both edges, mm."""
        return MOST_OF_NECK * min(self.neck.start.real, self.hem.end.real)


def stand_edges(lines: FrontLines, stand: float, facing: float) -> tuple[Edge, ...]:
    """Return the edges that take the centre's place: stand, and facing grown on (`facing` > 0).

    They run from the centre at the neck round to the centre at the hem. Without a facing the front
    edge is a seam.
    """
    top, low = line(lines.top, lines.top - stand), line(lines.low - stand, lines.low)
    neck = Edge("stand_neck", top, EdgeKind.OPENING, role=EdgeRole.STAND_NECK)
    hem = Edge("stand_hem", low, EdgeKind.HEM, role=EdgeRole.STAND_HEM)
    if not facing:
        front = line(lines.top - stand, lines.low - stand)
        return neck, Edge("front_edge", front, role=EdgeRole.FRONT_EDGE), hem
    return neck, *front_facing_edges(lines, stand, facing, unfolded=True), hem


def front_facing_edges(lines: FrontLines, stand: float, width: float, *, unfolded: bool) -> tuple[Edge, ...]:
    """Return neck, inner edge and hem of the facing, `width` mm from the front edge, unfolded.

    `unfolded` False gives a strip of its own: the same shape, its ring closed by `front_edge`.
    """
    inner = width - stand
    turned = reflection_at(-stand)
    neck = Path.joined([line(lines.top - stand, lines.top), outward_path(lines.neck.reversed(), inner)])
    hem = Path.joined([line(lines.low - stand, lines.low), outward_path(lines.hem, inner)])
    neck, hem = neck.mapped(turned), hem.mapped(turned).reversed()
    edges = (
        Edge("facing_neck", neck, EdgeKind.OPENING, role=EdgeRole.FACING_NECK),
        Edge("facing", line(neck.end, hem.start), EdgeKind.FREE, role=EdgeRole.FACING),
        Edge("facing_hem", hem, EdgeKind.HEM, role=EdgeRole.FACING_HEM),
    )
    if unfolded:
        return edges
    return *edges, Edge("front_edge", line(hem.end, neck.start), role=EdgeRole.FRONT_EDGE)


def outward_path(path: Path, x: float) -> Path:
    """Return a path from the centre (x = 0) outwards, as far as `x` mm from it."""
    if abs(path.end.real - x) < 1e-9:
        return path
    at = float(brent_zero(lambda s: path.at(s).real - x, 0.0, path.length, within=1e-10))
    return path.split(at)[0]


def narrow_said(stand: float, button: float, least: float) -> tuple[Finding, ...]:
    """Warn of a stand narrower than its button's diameter; `least` is what would do. All mm."""
    if stand >= button:
        return ()
    return (
        Finding(
            "button stand",
            "warning",
            "front",
            stand,
            least,
            f"The stand beyond the centre front is only {told(stand, 'small')} wide and a button of "
            f"{told(button, 'small')} looks out beyond it: take {told(least, 'small')} or a smaller button.",
        ),
    )
