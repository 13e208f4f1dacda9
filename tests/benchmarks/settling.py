"""How long garments take to come to rest, and what share a warm answer takes: python -m tests.benchmarks.settling

CPU seconds of one process, form and mesh not counted. `warm`: the next draft, 1 cm wider, from the last answer.
"""

from __future__ import annotations

from drafting.body import wearer
from drafting.worn.form import wearers_form
from drafting.worn.placed import placed
from drafting.worn.settled import Limits, at_rest, from_coarse
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import PLIES, chart_body, drafted

BLOCKS = ("bodice", "close-top", "shirt", "trousers", "tailcoat")
LIMITS = Limits(steps=1000)


def main() -> None:
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
