"""Python's clean-up of memory, kept from stopping a slider."""

from __future__ import annotations

import gc


def spare_what_stands() -> None:
    """Clean up now, and have later clean-ups pass over all that stands.

    A full clean-up looks at every object there is: some 80 ms once a notebook has loaded its libraries,
    and one came at every twentieth move of a slider (measured). What stood at the last call and has
    become rubbish since goes now.
    """
    gc.unfreeze()
    gc.collect()
    gc.freeze()
