"""A cast made: a folder a wearer, and what stands over all of them.

    Cast -> `whole.write_cast` -> a `WearerJob` a wearer -> `engines` (here, in processes, on other machines)
         -> `job.done` (make, lay out, write, remember) -> records
         -> call sheets, shopping, lays, cast.html, cast.json

What is told of a wearer is taken from her record alone, so that nothing of her is held once she is made.
"""

from drafting.output.cast.whole import CastMade, write_cast

__all__ = ["CastMade", "write_cast"]
