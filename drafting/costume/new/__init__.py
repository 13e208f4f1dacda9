"""The four files of a new costume, with remarks: what `drafting new` writes."""

from __future__ import annotations

from drafting.costume.new.files import new_files

__all__ = ["new_files"]
