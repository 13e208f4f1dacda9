"""What a cloth can take: fusing, starch, the iron, easing; each an answer, or an error with a way out.

Iron dots as on care labels: 1 up to 110, 2 up to 150, 3 up to 200 degrees Celsius (ISO 3758). What
each fibre bears is common practice, from memory; of a mixture the weakest counts.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from drafting.fabric.cloth import Fabric
from drafting.findings import Finding
from drafting.piece import Piece

BEARS: dict[str, int] = {
    "polypropylene": 0, "pvc": 0, "vinyl": 0, "acetate": 1, "triacetate": 1, "acrylic": 1,
    "polyamide": 1, "nylon": 1, "elastane": 1, "spandex": 1, "metallic": 1, "polyester": 2, "silk": 2,
    "wool": 2, "cashmere": 2, "mohair": 2, "viscose": 2, "rayon": 2, "modal": 2, "lyocell": 2,
    "cupro": 2, "leather": 1, "cotton": 3, "linen": 3, "hemp": 3,
}  # fmt: skip
"""Iron dots each fibre bears (common practice, from memory)."""

FUSING = 2
"""Iron dots that an ordinary fusible needs; a low-melting one does with 1 (common practice)."""

LOW_FUSING = 1

EASES: dict[str, float] = {"well": 60.0, "little": 15.0, "none": 5.0}
"""mm: the most that can be eased into one armhole (rows E01-E03; trouble SL4 for none: 0-5)."""


def iron_limit(fabric: Fabric) -> tuple[int | None, str]:
    """Return the iron dots a cloth bears and why; None where neither label nor fibre is known."""
    named = {fibre: dots for fibre, dots in BEARS.items() if fibre in _words(fabric.fibre)}
    weakest = min(named, key=named.__getitem__, default=None)
    if weakest is not None and (fabric.iron_dots is None or named[weakest] < fabric.iron_dots):
        return named[weakest], f"its {weakest} bears no more"
    return fabric.iron_dots, "its label says so"


def _words(fibre: str) -> set[str]:
    return {word.strip(" ,.;%()").lower() for word in fibre.replace(",", " ").split()}


def ironed(fabric: Fabric, dots: int, what: str = "pressing") -> tuple[Finding, ...]:
    """Return an error where a treatment wants a hotter iron than the cloth bears."""
    most, why = iron_limit(fabric)
    if most is None or dots <= most:
        return ()
    bears = f"an iron of {_dots(most)}" if most else "no iron at all"
    out = (
        f"press at {_dots(most)} through a cloth" if most else "finger-press it, or steam from afar"
    )
    return (_refused(
        fabric, "iron", most, dots,
        f"{fabric.title} bears {bears} ({why}) and {what} wants {_dots(dots)}: {out}, and try a scrap first.",
    ),)  # fmt: skip


def fused(fabric: Fabric, where: str = "interfacing") -> tuple[Finding, ...]:
    """Return an error where a cloth cannot be fused: it says so, or the iron would harm it."""
    way = (
        "baste a sewn-in interfacing to the wrong side instead, and name that cloth under [fabrics] with "
        "takes_fusible = false"
    )
    if not fabric.takes_fusible:
        said = f"{fabric.title} takes no fusible, and the {where} would be fused: {way}."
        return (_refused(fabric, "fusible", "takes none", where, said),)
    most, why = iron_limit(fabric)
    if most is None or most >= LOW_FUSING:
        return ()
    said = f"{fabric.title} bears no iron ({why}), so nothing can be fused to it: {way}."
    return (_refused(fabric, "fusible", most, FUSING, said),)


def starched(fabric: Fabric) -> tuple[Finding, ...]:
    """Return an error where a cloth takes no starch."""
    if fabric.takes_starch:
        return ()
    return (_refused(
        fabric, "starch", "takes none", "starch",
        f"{fabric.title} takes no starch: stiffen it with a sewn-in interfacing, or choose cotton or linen "
        "for this piece.",
    ),)  # fmt: skip


def eased(fabric: Fabric, ease: float, where: str = "cap") -> tuple[Finding, ...]:
    """Return an error where more is to be eased in (mm) than the cloth takes (trouble SL4)."""
    most = EASES[fabric.eases]
    if ease <= most:
        return ()
    how = {"well": "so much", "little": "only a little", "none": "not at all"}[fabric.eases]
    return (_refused(
        fabric, "ease", most, ease,
        f"{fabric.title} eases {how}: {ease:.0f} mm in the {where} would sew in as tucks. Draft at most "
        f"{most:.0f} mm, or gather or pleat it.",
    ),)  # fmt: skip


def treatments(
    fabric: Fabric | None, pieces: Iterable[Piece], said: Iterable[Finding] = (),
    interfacing: Fabric | None = None,
) -> tuple[Finding, ...]:  # fmt: skip
    """Return what a garment asks of its cloth that the cloth cannot take.

    Interfacing pieces are fused, unless their own cloth says `takes_fusible = false` (it is sewn
    in) or one of the findings `said` has settled that they are sewn in.
    """
    return () if fabric is None else tuple(_asked(fabric, pieces, said, interfacing))


def _asked(
    fabric: Fabric, pieces: Iterable[Piece], said: Iterable[Finding], interfacing: Fabric | None
) -> Iterator[Finding]:
    stiffened = [piece.name for piece in pieces if piece.material == "interfacing"]
    sewn_in = interfacing is not None and not interfacing.takes_fusible
    settled = any(f.check == "interfacing" and f.value == "sewn in" for f in said)
    if stiffened and not sewn_in and not settled:
        names = ", ".join(name.replace("-interfacing", "") for name in stiffened)
        yield from fused(fabric, f"interfacing of {names}")


def _refused(
    fabric: Fabric, check: str, value: float | str | None, wanted: float | str, message: str
) -> Finding:
    return Finding(f"cloth takes {check}", "error", fabric.title, value, wanted, message)


def _dots(dots: int) -> str:
    return f"{dots} dot{'' if dots == 1 else 's'}"
