"""Where a sewn garment starts on the wearer: from the draft and the form alone, outside the body."""

from drafting.worn.placed.place import placed

__all__ = ["placed"]
