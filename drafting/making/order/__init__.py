"""The order of work, from the seam graph and the treatments.

    garment -> Graph (what each seam is) -> Bench of parts -> Steps, each using parts that exist
    all steps -> in_waiting_time: what can be done while another waits is put into the waiting time

`seam_kinds` says what a seam is (dart, set-in, cuff, collar ...); `parts` keeps the parts and makes the
steps; `sewing` puts one garment together with `units` (small things), `revers` (a coat's collar),
`fitting`, `finishing` and `additions`; `placing` orders the whole costume; the room `rules` checks it.
"""

from drafting.making.order.fitting import toile_steps
from drafting.making.order.placing import in_waiting_time
from drafting.making.order.sewing import sewing_steps

__all__ = ["in_waiting_time", "sewing_steps", "toile_steps"]
