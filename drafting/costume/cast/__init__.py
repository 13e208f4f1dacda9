"""A cast: one costume on many wearers.

cast file -> `file` (what differs) + `wearers` (a folder, a table, a list) -> `Cast`
Cast, wearer -> `differs.costume_for` -> CostumeFile: what `make` would read for her
"""

from drafting.costume.cast.differs import costume_for
from drafting.costume.cast.file import read_cast
from drafting.costume.cast.model import Cast, CastWearer

__all__ = ["Cast", "CastWearer", "costume_for", "read_cast"]
