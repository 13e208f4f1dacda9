"""The sewn mesh brought to rest: the place where cloth, weight, elastic and the form are in balance."""

from __future__ import annotations

from drafting.worn.settled.search import Limits
from drafting.worn.settled.settle import at_rest, from_coarse

__all__ = ["Limits", "at_rest", "from_coarse"]
