"""How long garments take to come to rest, and what share a warm answer takes: python -m tests.benchmarks.settling

CPU seconds of one process, form and mesh not counted. `warm`: the next draft, 1 cm wider, from the last answer.
`slider`: what page 09 does when a hand rests: meshed coarse, let fall from the last shape and measured, with the
mesh counted, as a share of the same cold. Wanted of it: `SLIDER` seconds on an idle machine.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace

from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.costume.wearing.worn import WornGarment, fallen_shape
from drafting.ground.shipped import demo_costume
from drafting.worn.form import wearers_form
from drafting.worn.placed import placed
from drafting.worn.settled import Limits, at_rest, from_coarse
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import PLIES, chart_body, drafted

BLOCKS = ("bodice", "close-top", "shirt", "trousers", "tailcoat")
LIMITS = Limits(steps=1000)
SLIDER = 1.5
"""s: a shape after a slider moved, at most."""


def main() -> None:
    at_rest_alone()
    after_a_slider()


def after_a_slider() -> None:
    """Print what a shape takes cold, and after the next draft from the last shape."""
    costume = read_costume(demo_costume())
    form = wearers_form(costume.wearer)
    taken = {name: costume.wearer[name] for name in costume.wearer.measures if costume.wearer.measured(name)}
    wider = wearer(taken | {name: taken[name] + 10.0 for name in ("bust_girth", "waist_girth", "hip_girth")})
    for garment in costume.garments:
        made = finished(replace(costume, garments=(garment,)))
        cold, shape = timed(lambda: fallen_shape(made, form))  # noqa: B023
        following = finished(replace(costume, garments=(garment,), wearer=wider))
        warm, _ = timed(lambda: fallen_shape(following, form, shape.rest))  # noqa: B023
        print(f"{garment.name}, slider: {warm:.2f} s, {warm / cold:.2f} of {cold:.2f} s cold (wanted {SLIDER} s)")


def timed(ask: Callable[[], WornGarment]) -> tuple[float, WornGarment]:
    start = time.process_time()
    found = ask()
    return time.process_time() - start, found


def at_rest_alone() -> None:
    """Print what each block takes to come to rest, cold and warm."""
    form = wearers_form(chart_body())
    wider = wearer({"height": 1700, "bust_girth": 910, "waist_girth": 726, "hip_girth": 978})
    for block in BLOCKS:
        draft, following = drafted(block), drafted(block, wider)
        coarse, fine = (sewn_mesh(draft, block, PLIES, mesh=mesh) for mesh in (40.0, 20.0))
        shape = at_rest(coarse, placed(coarse, form), form.distance, Limits(residual=0.5))
        cold = from_coarse(coarse, fine, placed(coarse, form), form.distance, LIMITS)
        warm = at_rest(sewn_mesh(following, block, PLIES), cold, form.distance, LIMITS)
        share = f"shape only {shape.seconds / cold.seconds:.2f} of it, warm {warm.seconds / cold.seconds:.2f}"
        left = f"residual {cold.residual:.3f} and {warm.residual:.3f}"
        print(f"{block}: {fine.count} vertices, cold {cold.seconds:.1f} s, {cold.steps} steps; {share}; {left}")


if __name__ == "__main__":
    main()
